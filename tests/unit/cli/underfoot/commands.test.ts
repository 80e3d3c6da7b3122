import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as z from 'zod';
import { SHIPPED_IDS } from '#lib/course/index.ts';
import { command } from '../../../../src/cli/underfoot/commands.ts';
import { jsonOf } from '../../../../src/cli/underfoot/outcome.ts';
import { FULL_PLAN, FULL_SCENARIO } from '../../../support/documents.ts';
import { withValue, type Path } from '../../../support/mutations.ts';

let folder: string;
beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), 'underfoot-cli-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function file(content: unknown, name = 'file.json'): string {
	const path = join(folder, name);
	writeFileSync(path, typeof content === 'string' || content instanceof Uint8Array ? content : JSON.stringify(content));
	return path;
}

const shape = z.looseObject({ kind: z.string() });

/** The output of a command that is done, as it is printed and read again. */
async function output(...line: string[]) {
	const outcome = await command(line);
	if (outcome.kind !== 'done') throw new Error(`not done: ${JSON.stringify(outcome)}`);
	return shape.parse(JSON.parse(jsonOf(outcome.output)));
}

async function problems(...line: string[]) {
	const outcome = await command(line);
	if (outcome.kind !== 'refused') throw new Error(`${line.join(' ')} was not refused`);
	return outcome.problems;
}

/** A plan in feet that leaves elongation, forces, slide and margin to class and practice table. */
const IN_FEET = {
	system: 'lanyard',
	rules: 'us-construction',
	practice: 'us-two-foot',
	worker: { stature: '5 ft 10 in', dRingHeight: "4' 10\"", mass: { body: '190 lb', tools: '10 lb' } },
	lanyard: { length: '6 ft' },
	absorber: { class: 'ansi-6ft' },
	harness: { capacity: '310 lb' },
	anchorage: { height: '4 ft 10 in' },
	below: { depth: '30 ft' }
};

const list = z.array(z.looseObject({}));

describe('analyse', () => {
	const entry = (entries: unknown, key: string, id: string) => list.parse(entries).find((one) => one[key] === id);

	it('gives every quantity with formula, numbers, value and steps', async () => {
		const told = await output('analyse', file(IN_FEET), '--units', 'us');
		// The anchorage is level with the D-ring: the fall is the lanyard, 6 ft. Arithmetic by hand.
		expect(entry(told['quantities'], 'quantity', 'freeFall')).toMatchObject({
			symbol: 'h',
			formula: 'L − r',
			numbers: '6.00 ft − 0.00 ft',
			value: { si: 1.8288, siUnit: 'm', written: '6.00 ft' },
			steps: [{ quantity: 'rise', formula: 'h_A − h_D', numbers: '4.83 ft − 4.83 ft', value: { si: 0 } }]
		});
		expect(entry(told['quantities'], 'quantity', 'massAttached')).toMatchObject({ numbers: '190.0 lb + 10.0 lb', value: { siUnit: 'kg', written: '200.0 lb' } });
		expect(entry(told['quantities'], 'quantity', 'fallSpeed')).toMatchObject({ formula: '√(2 × g × h)', value: { siUnit: 'm/s' } });
	});

	it('brackets an amount that is squared, so that the square is not read as one of the unit', async () => {
		const told = await output('analyse', file({ ...IN_FEET, offset: { distance: '2 ft', direction: 'along-edge' } }), '--units', 'us');
		expect(entry(told['quantities'], 'quantity', 'tautDepth')).toMatchObject({ numbers: '√((6.00 ft)² − (2.00 ft)²)' });
	});

	it('says of every value whether the plan, the practice table or the class gave it', async () => {
		const { givens } = await output('analyse', file(IN_FEET));
		expect(entry(givens, 'given', 'lanyardLength')).toMatchObject({ from: 'plan', value: { written: '1.829 m' } });
		expect(entry(givens, 'given', 'elongation')).toMatchObject({ from: 'class', class: 'ansi-6ft', citation: { clause: '6 ft class' } });
		expect(entry(givens, 'given', 'margin')).toMatchObject({ from: 'practice', table: 'us-two-foot', value: { si: 0.6096 } });
		const own = { ...IN_FEET, margin: '3 ft', absorber: { ...IN_FEET.absorber, elongation: '3 ft' } };
		const told = await output('analyse', file(own));
		expect(entry(told['givens'], 'given', 'margin')).toMatchObject({ from: 'plan', value: { si: 0.9144 } });
		expect(entry(told['givens'], 'given', 'elongation')).toMatchObject({ from: 'plan', value: { si: 0.9144 } });
	});

	it('gives every check with status, amounts, citation and mark, and the verdict with the caution', async () => {
		const told = await output('analyse', file(IN_FEET));
		expect(told).toMatchObject({ kind: 'analysed', rules: 'us-construction', verdict: { result: 'cannot-be-shown', decision: 'do-not-tie-off' } });
		expect(told['caution']).toMatch(/not a design tool/);
		expect(entry(told['checks'], 'check', 'reach')).toMatchObject({ status: 'held', slack: { siUnit: 'm' }, decides: true });
		expect(entry(told['checks'], 'check', 'rule:us-construction.free-fall')).toMatchObject({
			status: 'held',
			bounds: [{ quantity: 'freeFall', side: 'max', limit: { written: '1.829 m' }, slack: { si: 0 } }],
			citation: { clause: expect.stringContaining('1926.502'), mark: 'read' }
		});
		expect(entry(told['checks'], 'check', 'rule:us-construction.anchorage')).toMatchObject({ status: 'unknown' });
	});

	it('says why a quantity has no value', async () => {
		const unrigged = await output('analyse', file({ ...IN_FEET, anchorage: { height: '20 ft' } }));
		expect(entry(unrigged['quantities'], 'quantity', 'freeFall')).toMatchObject({ known: false, why: 'not-rigged', words: expect.stringMatching(/rigged/) });
		expect(unrigged['verdict']).toMatchObject({ result: 'fails', words: expect.stringMatching(/^Fails: reach/) });
		const heavy = await output('analyse', file(withValue(IN_FEET, ['worker', 'mass', 'body'], '400 lb')));
		expect(entry(heavy['quantities'], 'quantity', 'requiredClearance')).toMatchObject({ known: false, why: 'outside-label' });
		const nameless = await output('analyse', file(withValue(IN_FEET, ['absorber', 'class'], undefined)));
		expect(entry(nameless['quantities'], 'quantity', 'totalFall')).toMatchObject({
			known: false,
			why: 'missing',
			givens: ['elongation'],
			words: expect.stringMatching(/elongation/)
		});
	});

	it.each([
		[['lineMeetsEdge'], true, 'line-over-edge'],
		[['offset'], { distance: '1 ft', direction: 'away-from-edge' }, 'away-from-edge'],
		[['system'], 'horizontal-lifeline', 'system-not-built'],
		[['system'], 'rope-access', 'system-outside-scope']
	])('answers a plan that is not judged (%j: %j) by the reason', async (path, value, why) => {
		const told = await output('analyse', file(withValue(IN_FEET, path, value)));
		expect(told).toMatchObject({ kind: 'refused', why, words: expect.stringMatching(/\.$/) });
		expect(told['verdict']).toBeUndefined();
	});

	it.each<[Path, unknown, string, RegExp]>([
		[['worker', 'dRingHeight'], '6 ft 2 in', 'worker.dRingHeight', /above the head/],
		[['lanyard', 'length'], '3 km', 'lanyard.length', /0.3 m to 6 m/],
		[['lanyard', 'length'], -1.8, 'lanyard.length', /length as text with its unit/],
		[['below', 'depth'], '30', 'below.depth', /no unit/],
		[['below', 'depth'], undefined, 'below.depth', /is missing/],
		[['rules'], 'moon', 'rules', /us-construction/],
		[['absorber', 'class'], 'moon', 'absorber.class', /ansi-6ft/],
		[['colour'], 'red', 'colour', /leave it out/],
		[['system'], 'magic', 'system', /"lanyard", "self-retracting-device"/]
	])('refuses %j: %j', async (path, value, field, words) => {
		const [problem, ...more] = await problems('analyse', file(withValue(IN_FEET, path, value)));
		expect(more).toEqual([]);
		expect(problem?.field).toBe(field);
		expect(`${problem?.problem}; ${problem?.remedy}`).toMatch(words);
	});

	it.each<[string, unknown, RegExp]>([
		['no JSON', '{"system": }', /is not JSON/],
		['no JSON, where the place is known', '{\n\t"system": "lanyard"\n\t"rules": "eu"\n}', /is not JSON at line 3 column 2/],
		['nothing', '', /is not JSON/],
		['a list', [], /an empty list/],
		['null', 'null', /is null/],
		['other bytes than text', new Uint8Array([0x7b, 0xff]), /not written in UTF-8/],
		['nine megabytes', ' '.repeat(9 * 1024 * 1024), /longer than/]
	])('refuses a file that holds %s', async (_, content, words) => {
		const [problem] = await problems('analyse', file(content));
		expect(problem?.field).toMatch(/^(PLAN\.json|plan|system)$/);
		expect(problem?.problem).toMatch(words);
	});

	it('refuses a file that is not there, and a folder', async () => {
		expect(await problems('analyse', join(folder, 'none.json'))).toEqual([
			{ field: 'PLAN.json', problem: 'is "none.json", which does not exist', remedy: 'give the path of a JSON file' }
		]);
		expect((await problems('analyse', folder))[0]?.problem).toMatch(/no file$/);
		expect((await problems('analyse', 'a\u0000b'))[0]?.problem).toMatch(/cannot be read$/);
	});
});

describe('draw', () => {
	it.each(SHIPPED_IDS)('gives a problem of %s whose plan can be analysed as it stands', async (id) => {
		const told = await output('draw', id, '--seed', '11');
		expect(told).toMatchObject({ kind: 'drawn', scenario: id, seed: 11, story: { title: expect.any(String) } });
		const analysed = await output('analyse', file(told['plan']));
		const { decision } = z.object({ decision: z.string() }).parse(analysed['verdict']);
		expect(told['verdict']).toMatchObject({ decision });
		expect(list.parse(told['asks']).find((ask) => ask['kind'] === 'decision')).toMatchObject({ right: decision });
	});

	it('gives the same problem twice, and the story in Spanish', async () => {
		expect(await output('draw', 'silo-top', '--seed', '5')).toEqual(await output('draw', 'silo-top', '--seed', '5'));
		const spanish = await output('draw', 'silo-top', '--seed', '5', '--language', 'es');
		expect(spanish['story']).not.toEqual((await output('draw', 'silo-top', '--seed', '5'))['story']);
	});

	it('takes a scenario from a file, and refuses one by the field that is wrong', async () => {
		expect(await problems('draw', file(withValue(FULL_SCENARIO, ['draws', 0, 'unit'], 'kg')), '--seed', '1')).toEqual([
			{ field: 'draws.0.unit', problem: 'is "kg" and measures no length', remedy: 'give a unit of a length' }
		]);
	});

	it('says so when a scenario gives no problem, or asks for what its plans cannot have', async () => {
		const [none] = await problems('draw', file(FULL_SCENARIO), '--seed', '1');
		expect(none).toMatchObject({ field: '--seed', problem: expect.stringMatching(/gives no problem in \d+ tries/) });
		const bare = { ...FULL_PLAN, absorber: null, lanyard: { length: '1.9 m' }, harness: {}, connectors: { compatible: 'yes' } };
		const ask = { id: 'capacity', cell: 'label-and-mass', kind: 'number', quantity: 'lowestCapacity', precision: { value: 1, unit: 'kg' } };
		const scenario = { ...FULL_SCENARIO, base: bare, asks: [ask], draws: FULL_SCENARIO.draws.slice(0, 2) };
		const [broken] = await problems('draw', file(scenario), '--seed', '1');
		expect(broken).toMatchObject({ field: 'asks.0.quantity', problem: expect.stringContaining('capacity') });
	});

	it('names the scenarios that there are', async () => {
		const [problem] = await problems('draw', 'moon-base', '--seed', '1');
		expect(problem).toMatchObject({ field: 'SCENARIO', remedy: expect.stringContaining(SHIPPED_IDS.join(', ')) });
	});
});

describe('grade', () => {
	const grade = (ask: string, answer: string, ...more: string[]) => output('grade', 'bridge-bearing', '--seed', '7', '--ask', ask, '--answer', answer, ...more);

	it('marks, explains by the slip that fits, and shows the working', async () => {
		const told = await grade('free-fall', '1.55 m');
		expect(told).toMatchObject({
			kind: 'graded',
			mark: { kind: 'wrong' },
			diagnosis: { certainty: 'asserted', candidates: [{ kind: 'slips', slips: [{ slip: 'lanyard-for-free-fall', label: 'Lanyard length in place of the free fall' }] }, { kind: 'entry', entry: 'given-handed-in', label: expect.any(String) }] },
			working: [{ quantity: 'rise' }, { quantity: 'freeFall', value: { written: '0.690 m' } }]
		});
	});

	it.each([
		['free-fall', '0.69', 'right'],
		['free-fall', "2' 3 3/16\"", 'right'],
		['free-fall', '0,69 m', 'right'],
		['free-fall', 'not-stated', 'wrong'],
		['decision', 'tie-off', 'right'],
		['decision', 'do-not-tie-off', 'wrong']
	])('marks %s: %s as %s', async (ask, answer, mark) => {
		const language = answer.includes(',') ? ['--language', 'es'] : [];
		expect(await grade(ask, answer, ...language)).toMatchObject({ mark: { kind: mark }, caution: expect.any(String) });
	});

	it('speaks Spanish', async () => {
		const english = await grade('free-fall', '1.55 m');
		const spanish = await grade('free-fall', '1,55 m', '--language', 'es');
		expect(spanish).toMatchObject({ mark: english['mark'] });
		expect(JSON.stringify(spanish['diagnosis'])).not.toBe(JSON.stringify(english['diagnosis']));
	});

	it.each([
		['free-fall', 'much', '--answer', 'There is no number in this.'],
		['free-fall', '1,234', '--answer', 'Is this 1.234 m or 1234 m?'],
		['free-fall', '1.4 kg', '--answer', '“kg” measures something else.'],
		['decision', 'maybe', '--answer', 'is "maybe"'],
		['height', '1 m', '--ask', 'is "height"']
	])('refuses %s: %s, for it is no answer', async (ask, answer, field, words) => {
		const told = await problems('grade', 'bridge-bearing', '--seed', '7', '--ask', ask, '--answer', answer);
		expect(told).toHaveLength(1);
		expect(told[0]?.field).toBe(field);
		expect(told[0]?.problem.replace(/\u00a0/g, ' ')).toBe(words);
	});
});

describe('inspect', () => {
	it('reports what many draws of a scenario show', async () => {
		const told = await output('inspect', 'bridge-bearing', '--draws', '40');
		expect(told).toMatchObject({ kind: 'inspected', publishable: true, faults: 0, draws: 40, drawn: 40, findings: expect.any(Array) });
		expect(list.parse(told['turnedDown']).every((one) => typeof one['words'] === 'string')).toBe(true);
	});

	it('finds the faults of a scenario, each with its field', async () => {
		const told = await output('inspect', file(FULL_SCENARIO), '--draws', '5');
		expect(told['publishable']).toBe(false);
		expect(list.parse(told['findings'])[0]).toMatchObject({ severity: expect.any(String), code: expect.any(String), field: expect.any(String) });
	});

	it.each(['0', '-3', '1.5', 'many', '100001'])('refuses %j draws', async (draws) => {
		expect(await problems('inspect', 'bridge-bearing', '--draws', draws)).toMatchObject([{ field: '--draws', remedy: 'give a whole number from 1 to 100000' }]);
	});
});

describe('schema', () => {
	it.each(['plan', 'scenario'])('prints the JSON Schema of a %s', async (name) => {
		const outcome = await command(['schema', name]);
		const printed = outcome.kind === 'done' ? jsonOf(outcome.output) : '';
		expect(JSON.parse(printed)).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' });
		expect(printed).toContain('dRingHeight');
	});

	it('that is not there is refused', async () => {
		expect(await problems('schema', 'problem')).toEqual([{ field: 'plan|scenario', problem: 'is "problem"', remedy: 'give plan or scenario' }]);
	});
});

describe('help', () => {
	it.each([[[]], [['--help']], [['help']], [['draw', '--help']]])('is shown for %j and names every command', async (line) => {
		const outcome = await command(line);
		const text = outcome.kind === 'help' ? outcome.text : '';
		for (const name of ['analyse', 'draw', 'grade', 'inspect', 'schema']) expect(text).toContain(`\n  ${name} `);
	});

	it('is named where a command is not known', async () => {
		expect(await problems('constructor')).toEqual([
			{ field: 'COMMAND', problem: 'is "constructor"', remedy: 'give one of analyse, backup, demo, draw, grade, inspect, new-signing-key, password-code, restore, schema, set-up-code, verify-records, or --help' }
		]);
	});
});
