import { describe, expect, test } from 'vitest';
import { analyse } from '#lib/arrest/index.ts';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { draw, firstDrawn, type Problem } from '#lib/scenario/index.ts';
import { enterPlan } from '../../../../../src/routes/crew/board/model/enter-plan.ts';
import { readKeptPlan, writeKeptPlan } from '../../../../../src/routes/crew/board/model/kept-plan.ts';
import { changed, factsOf, fieldsOf, fieldText, NOTHING_ENTERED } from '../../../../../src/routes/crew/board/model/plan-fields.ts';
import { writerFor } from '../../../../../src/routes/learn/problem/model/writing.ts';

function drawn(id: string, seed = 5): Problem {
	const scenario = shippedScenarios().find((one) => one.id === id);
	if (scenario === undefined) throw new Error(`${id} is not shipped`);
	return firstDrawn((one) => draw(scenario, one), seed);
}

const site = drawn('bridge-bearing');

function enter(texts: Readonly<Record<string, string>>, facts: Readonly<Record<string, string>> = {}, of = site) {
	return enterPlan(of, { texts, facts }, 'en');
}

function planOf(entered: ReturnType<typeof enter>) {
	if (entered.kind === 'refused') throw new Error(JSON.stringify(entered.problems));
	return entered.problem.drawn.plan;
}

describe('a plan that is entered', () => {
	test.each(shippedScenarios().map((scenario) => [scenario.id] as const))('is the drawn one where nothing was changed: %s', (id) => {
		const problem = drawn(id);
		const entered = enterPlan(problem, NOTHING_ENTERED, 'en');
		expect(entered).toEqual({ kind: 'plan', problem });
	});

	test.each(shippedScenarios().map((scenario) => [scenario.id] as const))('offers a field for each number of the drawing and the labels, as it is written there: %s', (id) => {
		const problem = drawn(id);
		const fields = fieldsOf(problem);
		expect(new Set(fields.map((one) => one.id)).size).toBe(fields.length);
		const texts = Object.fromEntries(fields.map((field) => [field.id, fieldText(writerFor(problem.scenario, 'es'), field)]));
		expect(enterPlan(problem, { texts, facts: {} }, 'es').kind).toBe('plan');
	});

	test('changes what the engine says, as the engine has it', () => {
		const plan = planOf(enter({ anchorageHeight: '2.42', lowerLevelDepth: '12 ft', elongation: '150 cm' }));
		expect(plan.anchorage.height).toBeCloseTo(2.42, 9);
		expect(plan.below.depth).toBeCloseTo(3.6576, 9);
		expect(plan.absorber?.elongation).toBeCloseTo(1.5, 9);
		// Everything else is as drawn.
		expect(plan).toEqual({
			...site.drawn.plan,
			anchorage: { ...site.drawn.plan.anchorage, height: plan.anchorage.height },
			below: { ...site.drawn.plan.below, depth: plan.below.depth },
			absorber: { ...site.drawn.plan.absorber, elongation: plan.absorber?.elongation }
		});
	});

	test('takes facts: rescue, connectors, an obstacle that can come or is not there', () => {
		expect(planOf(enter({}, { rescue: 'unknown', connectors: 'no', persons: '3' }))).toMatchObject({ rescue: 'unknown', connectors: { compatible: 'no' }, anchorage: { persons: 3 } });
		expect(planOf(enter({}, { 'obstacle:beam': 'can-come' })).below.obstacles).toMatchObject([{ id: 'beam', there: false, present: 'sometimes' }]);
		expect(planOf(enter({}, { 'obstacle:beam': 'none' })).below.obstacles).toEqual([]);
	});

	test('is refused by name where its line would run over an edge', () => {
		expect(analyse(planOf(enter({}, { edge: 'yes' })))).toEqual({ kind: 'refused', refusal: { why: 'line-over-edge' } });
		expect(analyse(planOf(enter({ offset: '0.8' }, { direction: 'away-from-edge' })))).toEqual({ kind: 'refused', refusal: { why: 'away-from-edge' } });
	});

	test.each<[string, string, string, object]>([
		['longer than any lanyard', 'lanyardLength', '40', { kind: 'range', atLeast: 0.3, atMost: 6 }],
		['below nought', 'lowerLevelDepth', '-2', { kind: 'range', atLeast: 0 }],
		['nothing at all', 'anchorageHeight', '', { kind: 'unreadable' }],
		['words', 'anchorageHeight', 'high up', { kind: 'unreadable' }],
		['a mass for a length', 'anchorageHeight', '80 kg', { kind: 'unreadable' }],
		['two readings', 'bodyMass', '1,234', { kind: 'question' }],
		['a D-ring above the head', 'dRingHeight', '1.95', { kind: 'clash', with: 'above-head' }],
		['a label range upside down', 'labelMassMin', '200', { kind: 'clash', with: 'mass-range' }]
	])('is not taken with %s, and the field says why', (_what, id, text, problem) => {
		const entered = enter({ [id]: text });
		expect(entered.kind).toBe('refused');
		expect(entered.kind === 'refused' ? entered.problems : {}).toMatchObject({ [id]: problem });
		expect(Object.keys(entered.kind === 'refused' ? entered.problems : {})).toEqual([id]);
	});

	test('names all its faults at once', () => {
		const entered = enter({ lanyardLength: 'x', bodyMass: '5', anchorageHeight: '99' });
		expect(Object.keys(entered.kind === 'refused' ? entered.problems : {}).sort()).toEqual(['anchorageHeight', 'bodyMass', 'lanyardLength']);
	});

	test('keeps to what the site has: unknown numbers, facts and states change nothing', () => {
		expect(enter({ __proto__x: '1', obstacleTop_ghost: '2', spare: '3' }, { rescue: 'maybe', 'obstacle:ghost': 'there', constructor: 'x' })).toEqual({ kind: 'plan', problem: site });
	});

	test('offers the posture where the site has one, and the absorber’s state where there is an absorber', () => {
		const kinds = (problem: Problem) => factsOf(problem).map((one) => one.kind);
		expect(kinds(site)).not.toContain('posture');
		expect(kinds(site)).toContain('condition');
		const kneeling = shippedScenarios().map((one) => drawn(one.id)).find((one) => one.drawn.plan.worker.dRingNow !== undefined);
		expect(kneeling === undefined ? [] : kinds(kneeling)).toContain('posture');
	});
});

describe('an entry', () => {
	test('that is as drawn is none', () => {
		expect(changed({ a: '1', b: '2' }, 'a', '9', true)).toEqual({ b: '2' });
		expect(changed({ a: '1' }, 'a', '9', false)).toEqual({ a: '9' });
	});

	test('is read back after a reload, for its own site only', () => {
		const entry = { texts: { anchorageHeight: '2.42' }, facts: { rescue: 'unknown' } };
		expect(readKeptPlan(writeKeptPlan('a.1.5', entry), 'a.1.5')).toEqual(entry);
		expect(readKeptPlan(writeKeptPlan('a.1.5', entry), 'a.1.6')).toBeUndefined();
	});

	test.each<[string, string | null]>([
		['nothing', null],
		['no JSON', '{'],
		['a number', '7'],
		['null', 'null'],
		['a text without end', `{"site":"s","texts":{"a":"${'9'.repeat(9000)}"}}`]
	])('is none where %s was kept', (_what, kept) => {
		expect(readKeptPlan(kept, 's')).toBeUndefined();
	});

	test('keeps texts only', () => {
		expect(readKeptPlan('{"site":"s","texts":{"a":1,"b":"2","c":null},"facts":[]}', 's')).toEqual({ texts: { b: '2' }, facts: {} });
	});
});
