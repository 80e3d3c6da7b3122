/** Every finding that there is comes up for what it is about, at the field to change. */
import { describe, expect, it } from 'vitest';
import { FINDING_CODES, inspect, inspectSteps, type FindingCode, type Inspection, type InspectProgress } from '#lib/scenario/index.ts';
import { scenarioWith, type Document } from './document.ts';
import { MUTATIONS } from './mutations.ts';

type Change = (document: Document) => object | undefined;

function inspected(change?: Change, draws = 40): Inspection {
	return inspect(scenarioWith(change), { draws });
}

/** Puts draws after those of the document. */
function drawing(...more: object[]): Change {
	return (document) => ({ ...document, draws: [...document.draws, ...more] });
}

const metres = (value: number) => ({ value, unit: 'm' });

/** What each finding that no named mutation brings about comes from, and where it is told. */
const CASES: readonly (readonly [FindingCode, string, Change])[] = [
	[
		'check-never-known',
		'base.rescue',
		(document) => ({ ...document, base: { ...document.base, rescue: 'unknown' }, aims: [{ fails: 'nothing', weight: 1 }] })
	],
	[
		'constraints-never-together',
		'constraints',
		(document) => ({
			...document,
			// Free fall, lanyard and rise hang together: any two of these bounds can be kept, all three cannot.
			constraints: [
				{ of: 'lanyardLength', atMost: metres(1.5) },
				{ of: 'rise', atLeast: metres(0.7) },
				{ of: 'freeFall', atLeast: metres(0.85) }
			]
		})
	],
	['constraint-never-binds', 'constraints.0', (document) => ({ ...document, constraints: [{ of: 'freeFall', atLeast: metres(-1) }] })],
	[
		'often-not-stated',
		'asks.1',
		(document) => ({
			...document,
			base: { ...document.base, absorber: { ...document.base.absorber, massMin: '100 kg' } },
			aims: [
				{ fails: 'nothing', weight: 1 },
				{ fails: 'capacity', weight: 3 }
			]
		})
	],
	[
		'ask-without-slips',
		'asks.0',
		(document) => ({
			...document,
			base: { ...document.base, absorber: { peakForce: '6 kN', elongation: '1.2 m' } },
			draws: [...document.draws, { sets: ['peakForce'], from: 3, to: 6, step: 0.1, unit: 'kN' }],
			asks: [{ id: 'force', cell: 'force-and-limits', kind: 'number', quantity: 'arrestForce', precision: { value: 0.1, unit: 'kN' } }]
		})
	],
	['narrow-answers', 'draws.2', (document) => ({ ...document, draws: document.draws.map((one) => (['lanyardLength', 'anchorageHeight'].includes(one.sets?.[0] ?? '') ? { ...one, to: (one.from ?? 0) + 0.05 } : one)) })],
	['slip-without-effect', 'asks.1', (document) => ({ ...document, base: { ...document.base, margin: '0 m' } })],
	[
		'state-never-drawn',
		'draws.7.among.0',
		(document) => ({ ...document, constraints: [...document.constraints, { of: 'availableClearance', atLeast: metres(9) }], draws: document.draws.map((one) => (one.sets?.[0] === 'lowerLevelDepth' ? { ...one, from: 9, to: 9.5 } : one)), aims: [{ fails: 'nothing', weight: 1 }] })
	],
	['unusual-value', 'draws.9.to', (document) => ({ ...document, draws: document.draws.map((one) => (one.sets?.[0] === 'lowerLevelDepth' ? { ...one, to: 30 } : one)) })],
	['decoy-counts', 'decoys.0', (document) => ({ ...document, decoys: [{ given: 'margin', value: metres(0.9) }] })],
	['slot-in-one-language', 'words.es.lead', (document) => ({ ...document, words: { ...document.words, en: { ...document.words.en, lead: '{name} stands {lowerLevelDepth} up.' } } })],
	['name-twice', 'people.3', (document) => ({ ...document, people: ['Ada', 'Bo', 'Cleo', 'ada'] })],
	['long-sentences', 'words.en.lead', longWords],
	['hard-words', 'words.en.lead', longWords]
];

function longWords(document: Document): undefined {
	document.words.en.lead = `{name} considers ${'interdependent organisational responsibilities '.repeat(9)}here.`;
	document.words.en.body = [document.words.en.lead];
	return undefined;
}

describe('a finding', () => {
	it.each(CASES)('%s is told at %s', (code, path, change) => {
		const { findings } = inspected(change);
		const told = findings.map((one) => `${one.code} ${one.path.join('.')}`);
		expect(told).toContain(`${code} ${path}`);
		expect(inspected().findings.map((one) => one.code)).not.toContain(code);
	});

	it('of each code is brought about by a case here or a mutation', () => {
		const tried = new Set<string>([...CASES.map(([code]) => code), ...MUTATIONS.map((one) => one.code)]);
		expect(FINDING_CODES.filter((code) => !tried.has(code))).toEqual([]);
		expect(new Set(FINDING_CODES).size).toBe(FINDING_CODES.length);
	});

	it('names the constraint by what the plans have, and the other one where two clash', () => {
		const never = inspected((document) => ({ ...document, constraints: [{ of: 'freeFall', atLeast: metres(9) }] })).findings.find((one) => one.code === 'constraint-never-met');
		expect(never?.detail['of']).toBe('freeFall');
		expect(Number(never?.detail['greatest'])).toBeLessThan(2);
		expect(Number(never?.detail['greatest'])).toBeGreaterThan(Number(never?.detail['least']));
		const clash = inspected((document) => ({
			...document,
			constraints: [
				{ of: 'freeFall', atLeast: metres(1) },
				{ of: 'lowerLevelDepth', atLeast: metres(3) },
				{ of: 'freeFall', atMost: metres(0.9) }
			]
		})).findings.filter((one) => one.code === 'constraints-clash');
		expect(clash.map((one) => [one.path.join('.'), one.detail['with']])).toEqual([
			['constraints.0', 2],
			['constraints.2', 0]
		]);
	});

	it('of constraints is none where problems are drawn', () => {
		expect(inspected(drawing(), 60).findings.filter((one) => one.code.startsWith('constraint') && one.severity === 'fault')).toEqual([]);
	});
});

describe('an inspection in steps', () => {
	function steps(change?: Change, draws = 20): { progress: InspectProgress[]; inspection: Inspection } {
		const progress: InspectProgress[] = [];
		const run = inspectSteps(scenarioWith(change), { draws });
		for (;;) {
			const step = run.next();
			if (step.done === true) return { progress, inspection: step.value };
			progress.push(step.value);
		}
	}

	it('ends with what an inspection in one go gives, and goes forward all the way', () => {
		const { progress, inspection } = steps();
		expect(inspection).toEqual(inspect(scenarioWith(), { draws: 20 }));
		expect(progress.length).toBeGreaterThan(20);
		expect(progress.at(-1)).toEqual({ done: 40, of: 40 });
		for (const [i, { done }] of progress.entries()) expect(done).toBeGreaterThanOrEqual(progress[i - 1]?.done ?? 0);
	});

	it('pauses within a draw that needs many tries, and gives up on a scenario that takes too many', () => {
		const { progress, inspection } = steps((document) => ({ ...document, constraints: [{ of: 'freeFall', atLeast: metres(9) }] }), 100);
		expect(inspection.draws).toBeLessThan(100);
		expect(inspection.drawn).toBe(0);
		expect(progress.filter(({ done }) => done === 0).length).toBeGreaterThan(50);
	});
});
