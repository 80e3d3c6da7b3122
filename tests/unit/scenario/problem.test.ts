import { describe, expect, it } from 'vitest';
import type { GivenId, LanyardPlan } from '#lib/arrest/index.ts';
import { askOf, givenValue, inSteps, isShown, numberAsks, onGrid, precisionOf, problemOf, slipContextOf, targetOf, type Problem } from '#lib/scenario/index.ts';
import { scenarioWith, type Document } from './document.ts';

function problemWith(
	change: (document: Document) => object | undefined = () => undefined,
	plan: (base: LanyardPlan) => Partial<LanyardPlan> = () => ({}),
	decoys: Problem['drawn']['decoys'] = {}
): Problem {
	const scenario = scenarioWith(change);
	return problemOf(scenario, { plan: { ...scenario.base, ...plan(scenario.base) }, decoys, person: 'Ilse' }, 3, 1);
}

const base = (document: Document, part: object): object => ({ ...document, base: { ...document.base, ...part } });

describe('a problem', () => {
	it('has the givens of its plan and its decoys', () => {
		const problem = problemWith(undefined, undefined, { railHeight: 1.1 });
		expect(givenValue(problem, 'lanyardLength')).toBe(1.9);
		expect(givenValue(problem, 'railHeight')).toBe(1.1);
		expect(givenValue(problem, 'slackShown')).toBeUndefined();
	});

	it.each<[GivenId, boolean, string]>([
		['lanyardLength', true, 'of the plan'],
		['obstacleTop_stack', true, 'of the plan'],
		['railHeight', true, 'a decoy'],
		['connectorLength', false, 'not there'],
		['tetheredMass', false, 'nothing is tethered']
	])('shows %s: %s, %s', (id, shown) => {
		expect(isShown(problemWith(undefined, undefined, { railHeight: 1.1 }), id)).toBe(shown);
	});

	it('shows tools that are tethered, and what the practice table gives for the margin and the slide', () => {
		const problem = problemWith((document) =>
			base(document, {
				practice: 'us-two-foot',
				margin: undefined,
				harness: {},
				worker: { ...document.base.worker, mass: { body: '80 kg', tethered: '5 kg' } }
			})
		);
		expect((['tetheredMass', 'margin', 'dRingSlide'] as const).map((id) => isShown(problem, id))).toEqual([true, true, true]);
	});

	it('says of its obstacles which are not there now and which stand off the path', () => {
		const ask = numberAsks(scenarioWith())[0];
		if (ask === undefined) throw new Error('no number ask');
		const away = (base: LanyardPlan): Partial<LanyardPlan> => ({
			below: { ...base.below, obstacles: base.below.obstacles.map((one) => ({ ...one, from: 4, to: 5 })) }
		});
		const absent = (base: LanyardPlan): Partial<LanyardPlan> => ({
			below: { ...base.below, obstacles: base.below.obstacles.map((one) => ({ ...one, there: false })) }
		});
		expect(slipContextOf(problemWith(), ask)).toMatchObject({ absentObstacles: [], strayObstacles: [] });
		expect(slipContextOf(problemWith(undefined, away), ask)).toMatchObject({ absentObstacles: [], strayObstacles: ['stack'] });
		expect(slipContextOf(problemWith(undefined, absent), ask)).toMatchObject({ absentObstacles: ['stack'], strayObstacles: [] });
	});
});

describe('an ask', () => {
	const scenario = scenarioWith();

	it('is found by its id, or the ids that there are are told', () => {
		expect(askOf(scenario, 'decision').kind).toBe('decision');
		expect(() => askOf(scenario, 'weight')).toThrow('free-fall, required, decision');
	});

	it('has a target with a datum where there is one, and a precision in SI', () => {
		expect(numberAsks(scenario).map(targetOf)).toEqual([{ quantity: 'freeFall' }, { quantity: 'requiredClearance', datum: 'surface' }]);
		const [first] = numberAsks(scenario);
		if (first === undefined) throw new Error('no number ask');
		const inches = { ...first, precision: { value: 0.5, unit: 'in' as const } };
		expect(precisionOf(first)).toBe(0.01);
		expect(precisionOf(inches)).toBeCloseTo(0.0127, 12);
		expect(inSteps(inches, 0.3048)).toBeCloseTo(24, 9);
	});
});

describe('a grid', () => {
	it('is counted free of float noise', () => {
		expect(onGrid(1.4, 0.1, 3, 'm')).toBe(1.7);
		expect(onGrid(0.3, 0.01, 57, 'm')).toBe(0.87);
		expect(onGrid(51, 0.5, 1, 'in')).toBeCloseTo(51.5 * 0.0254, 12);
	});
});
