/** The form of a new set: what of it becomes the set's content, and what is refused at which field. */
import { describe, expect, test } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { setContentSchema } from '#lib/server/sets/content.ts';
import { CELLS } from '#lib/scenario/schema.ts';
import { askedOf, fits, offerOf, SKILLS, skillsOf, usualRight, type Offer } from '../../../../../src/routes/crew/sets/choosing.ts';
import { contentOf, emptyEntry, entryOf, readEntry, type SetEntry } from '../../../../../src/routes/crew/sets/new/entry.ts';

const OFFERS: readonly Offer[] = shippedScenarios().map((one) => offerOf(one, 'en'));
const FILLED: SetEntry = { ...emptyEntry('metric'), name: 'Before the mast job', scenarios: ['bridge-bearing', 'telecom-mast'] };

function offerNamed(id: string): Offer {
	const found = OFFERS.find((one) => one.id === id);
	if (found === undefined) throw new Error(`no scenario ${id} is shipped`);
	return found;
}

function askedIn(scenario: string, skills: SetEntry['skills']): readonly string[] {
	return askedOf(offerNamed(scenario).asks, skills).map((ask) => ask.id);
}

function refusedFields(entry: Partial<SetEntry>): Readonly<Record<string, string>> {
	const chosen = contentOf({ ...FILLED, ...entry }, OFFERS);
	return chosen.kind === 'refused' ? chosen.problems.fields : {};
}

describe('what is asked of a scenario', () => {
	test('is all of it with no skill chosen, and the asks of the chosen cells else', () => {
		expect(askedIn('telecom-mast', [])).toEqual(['free-fall', 'required', 'available', 'decision']);
		expect(askedIn('telecom-mast', ['free-fall'])).toEqual(['free-fall']);
		expect(askedIn('telecom-mast', ['available-and-verdict', 'free-fall'])).toEqual(['free-fall', 'available']);
		expect(askedIn('telecom-mast', ['label-and-mass'])).toEqual([]);
	});

	test('has with a decision always the numbers that it rests on, in the scenario’s order', () => {
		for (const offer of OFFERS) {
			const asked = askedOf(offer.asks, ['decisions']);
			for (const ask of asked) if (ask.kind === 'decision') expect(asked.map((one) => one.id)).toEqual(expect.arrayContaining([...ask.with]));
			expect(asked.at(-1)?.kind).toBe('decision');
			expect(asked.map((one) => offer.asks.indexOf(one))).toEqual(asked.map((one) => offer.asks.indexOf(one)).toSorted((a, b) => a - b));
		}
	});

	test('can be asked of every cell that scenarios have', () => {
		expect([...SKILLS].sort()).toEqual([...CELLS].sort());
	});
});

describe('the list of scenarios', () => {
	test('is narrowed to one system of units, to a difficulty, and to those that ask for what is chosen', () => {
		const listed = (narrowing: Parameters<typeof fits>[1]) => OFFERS.filter((one) => fits(one, narrowing)).map((one) => one.id);
		const all = listed({ skills: [], units: 'all', difficulty: 'all' });
		expect(all).toEqual(OFFERS.map((one) => one.id));
		const [metric, us] = [listed({ skills: [], units: 'metric', difficulty: 'all' }), listed({ skills: [], units: 'us', difficulty: 'all' })];
		expect(metric).toContain('bridge-bearing');
		expect(us).toContain('yard-mast');
		expect(metric.filter((id) => us.includes(id))).toEqual([]);
		expect([...metric, ...us].sort()).toEqual([...all].sort());
		expect(listed({ skills: ['label-and-mass'], units: 'metric', difficulty: 'easy' })).toEqual(['stage-grid']);
	});
});

describe('the form', () => {
	test('filled in makes a content that the schema takes', () => {
		const chosen = contentOf({ ...FILLED, skills: ['required-clearance'], count: ' 8 ', right: '7', same: 'alike', language: 'es' }, OFFERS);
		if (chosen.kind === 'refused') throw new Error(JSON.stringify(chosen.problems));
		expect(setContentSchema.parse(chosen.content)).toEqual({
			scenarios: [
				{ id: 'bridge-bearing', version: 1, asks: ['required'] },
				{ id: 'telecom-mast', version: 1, asks: ['required'] }
			],
			count: 8,
			rule: { right: 7, critical: 0 },
			sameForAll: true,
			language: 'es',
			aims: []
		});
	});

	test.each([
		[{ scenarios: [] }, { scenarios: 'no-scenario' }],
		[{ scenarios: ['bridge-bearing', 'own-never-was'] }, { scenarios: 'gone' }],
		[{ count: '' }, { count: 'not-whole' }],
		[{ count: '0', right: '1' }, { count: 'count-bounds', right: 'right-bounds' }],
		[{ count: '41' }, { count: 'count-bounds' }],
		[{ count: '1e1' }, { count: 'not-whole' }],
		[{ right: '7' }, { right: 'right-bounds' }],
		[{ right: '0' }, { right: 'right-bounds' }],
		[{ right: '-1' }, { right: 'not-whole' }],
		[{ unsafe: '7' }, { unsafe: 'unsafe-bounds' }],
		[{ unsafe: 'none' }, { unsafe: 'not-whole' }]
	] as const)('%j is refused at its field', (entry, problems) => {
		expect(refusedFields(entry)).toEqual(problems);
	});

	test('names the scenarios that ask for nothing that was chosen', () => {
		const chosen = contentOf({ ...FILLED, skills: ['label-and-mass'], scenarios: ['bridge-bearing', 'stage-grid'] }, OFFERS);
		expect(chosen).toEqual({ kind: 'refused', problems: { fields: {}, unfit: ['bridge-bearing'] } });
	});

	test('with more scenarios than a set has is refused', () => {
		const many = Array.from({ length: 31 }, (_, i) => ({ ...offerNamed('bridge-bearing'), id: `own-${String(i)}` }));
		const chosen = contentOf({ ...FILLED, scenarios: many.map((one) => one.id) }, many);
		expect(chosen.kind === 'refused' ? chosen.problems.fields : {}).toEqual({ scenarios: 'too-many' });
	});

	test('is read from an address as from a form; what is no choice stays as it was', () => {
		const sent = 'name=Mast&skill=free-fall&skill=no-skill&scenario=telecom-mast&scenario=telecom-mast&units=us&difficulty=very&count=4&same=alike&language=fr&aim=margin-left-out&aim=none';
		const entry = readEntry(new URLSearchParams(sent), emptyEntry('metric'));
		const form = new FormData();
		for (const [name, value] of new URLSearchParams(sent)) form.append(name, value);
		expect(readEntry(form, emptyEntry('metric'))).toEqual(entry);
		expect(entry).toEqual({
			...emptyEntry('metric'),
			name: 'Mast',
			skills: ['free-fall'],
			scenarios: ['telecom-mast'],
			units: 'us',
			count: '4',
			same: 'alike',
			aims: ['margin-left-out']
		});
	});

	test('that is endless or made of files is cut, and nothing of it is lost that counts', () => {
		const form = new FormData();
		form.append('name', 'n'.repeat(100_000));
		form.append('count', new File(['8'], 'eight.txt'));
		for (let i = 0; i < 5000; i += 1) form.append('scenario', `s${String(i)}`);
		const entry = readEntry(form, emptyEntry('us'));
		expect(entry.name.length).toBeLessThan(1000);
		expect(entry.count).toBe(emptyEntry('us').count);
		expect(entry.scenarios.length).toBeLessThan(1000);
	});

	test('of a copied set makes the same set again', () => {
		for (const skills of [[], ['required-clearance'], ['decisions', 'free-fall']] as const) {
			const first = contentOf({ ...FILLED, skills, aims: ['margin-left-out'], language: 'en' }, OFFERS);
			if (first.kind === 'refused') throw new Error(JSON.stringify(first.problems));
			const asked = new Map(first.content.scenarios.map((one) => [one.id, one.asks]));
			expect(contentOf(entryOf('Copy', first.content, skillsOf(OFFERS, asked)), OFFERS)).toEqual(first);
		}
	});
});

describe('the usual pass rule', () => {
	test.each([[1, 1], [4, 4], [5, 4], [6, 5], [8, 7], [10, 8], [40, 32]])('of %i problems asks for %i right', (count, right) => {
		expect(usualRight(count)).toBe(right);
	});
});
