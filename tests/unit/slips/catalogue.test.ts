/** Every slip by itself, against a sum written out by hand. Common practice, no source: these are ways to go wrong. */
import { describe, expect, test } from 'vitest';
import type { Datum, GivenId, Shape, Target } from '#lib/arrest/index.ts';
import { formula } from '#lib/arrest/index.ts';
import { evaluate, fromRecord } from '#lib/expression/index.ts';
import { SLIPS, slipOf, variantsOf, type SlipContext, type SlipId } from '#lib/slips/index.ts';

const G = {
	lanyardLength: 1.75,
	connectorLength: 0.4,
	dRingHeight: 1.42,
	dRingNow: 0.83,
	standingHeight: 0.31,
	anchorageHeight: 1.97,
	offset: 0.9,
	stature: 1.77,
	elongation: 1.15,
	dRingSlide: 0.22,
	harnessStretch: 0.11,
	margin: 0.8,
	lowerLevelDepth: 6.4,
	obstacleTop_cart: 1.3,
	obstacleTop_van: 2.1,
	obstacleTop_crate: 2.9,
	bodyMass: 78,
	clothingMass: 3,
	equipmentMass: 6,
	toolsMass: 5,
	tetheredMass: 11,
	labelMassMax: 136,
	harnessCapacity: 120,
	peakForce: 6000,
	conditionedForce: 7500,
	averageForce: 4200,
	labelFreeFall: 2.2,
	otherMargin: 1.3,
	otherElongation: 1.6,
	otherFloorDrop: 0.55,
	slackShown: 0.65
};
const upright: Shape = {
	connector: false,
	offset: false,
	lowered: false,
	raised: false,
	absorber: true,
	conditioned: false,
	slide: true,
	stretch: true,
	custom: 'd-ring-and-stretch',
	obstacles: ['cart', 'van'],
	masses: ['clothingMass', 'equipmentMass', 'toolsMass'],
	capacities: ['labelMassMax', 'harnessCapacity']
};
const required = (datum: Datum): Target => ({ quantity: 'requiredClearance', datum });
const available = (datum: Datum): Target => ({ quantity: 'availableClearance', datum });

function context(target: Target, shape: Partial<Shape> = {}): SlipContext {
	const known = new Set<GivenId>(Object.keys(G) as GivenId[]);
	return {
		target,
		shape: { ...upright, ...shape },
		shown: (id) => known.has(id),
		absentObstacles: ['van'],
		strayObstacles: ['crate']
	};
}

const s = 0.22 + 0.11;
const fall = 1.75 + 1.42 - 1.97;
const tight = Math.sqrt((1.75 + 0.4) ** 2 - 0.9 ** 2);
const swung = 1.75 + 0.4 - tight;
const swungFall = tight + 1.42 - 1.97;
const down = 0.83 + 0.31;

/** What is asked, of which shape, and what the slip makes of it. */
const CASES: Record<SlipId, [SlipContext, number]> = {
	'datum-anchorage': [context(required('surface')), 1.75 + 1.15 + s + 1.42 + 0.8],
	'datum-d-ring': [context(available('surface')), 1.42 + 6.4 - 2.1],
	'datum-surface': [context(required('anchorage')), fall + 1.15 + s + 0.8],
	'limit-for-value': [context({ quantity: 'freeFall' }), 2.2],
	'lanyard-for-free-fall': [context(required('surface')), 1.75 + 1.15 + s + 0.8],
	'free-fall-for-line': [context(required('anchorage'), { connector: true }), fall + 0.4 + 1.15 + s + 1.42 + 0.8],
	'expected-elongation': [
		context(required('surface')),
		fall + (92 * 9.80665 * fall) / (4200 - 92 * 9.80665) + s + 0.8
	],
	'other-class-elongation': [context(required('surface')), fall + 1.6 + s + 0.8],
	'other-margin': [context(required('surface')), fall + 1.15 + s + 1.3],
	'stature-for-d-ring': [context(required('d-ring')), 1.75 + 1.77 - 1.97 + 1.15 + s + 1.77 + 0.8],
	'posture-ignored': [context({ quantity: 'freeFall' }, { lowered: true }), fall],
	'kneeling-shortens-clearance': [context(required('anchorage'), { lowered: true }), 1.75 + 1.15 + s + 0.83 + 0.8],
	'wrong-floor': [context({ quantity: 'freeFall' }), fall - 0.55],
	'offset-ignored': [context({ quantity: 'freeFall' }, { offset: true, connector: true }), fall + 0.4],
	'offset-subtracted': [context({ quantity: 'freeFall' }, { offset: true, connector: true }), fall + 0.4 - 0.9],
	'offset-for-swing-drop': [context(required('surface'), { offset: true, connector: true }), swungFall + 0.9 + 1.15 + s + 0.8],
	'average-for-peak': [context({ quantity: 'bodyWeights' }), 4200 / (92 * 9.80665)],
	'dry-for-conditioned': [context({ quantity: 'arrestForce' }, { conditioned: true }), 6000],
	'strongest-capacity': [context({ quantity: 'lowestCapacity' }), 136],
	'heights-wrong-way': [context({ quantity: 'freeFall' }), 1.75 + (1.97 - 1.42)],
	'anchorage-height-added': [context({ quantity: 'freeFall' }), 1.75 + 1.97 + 1.42],
	'heights-left-out': [context({ quantity: 'freeFall' }, { connector: true }), 1.75 + 0.4],
	'd-ring-left-out': [context({ quantity: 'freeFall' }, { connector: true, raised: true }), 1.75 + 0.4 - 1.97],
	'standing-place-ignored': [context({ quantity: 'freeFall' }, { raised: true, lowered: true }), 1.75 + 0.83 - 1.97],
	'connector-left-out': [context(required('anchorage'), { connector: true }), 1.75 + 1.15 + s + 1.42 + 0.8],
	'elongation-left-out': [context(required('surface')), fall + s + 0.8],
	'margin-left-out': [context(required('surface')), fall + 1.15 + s],
	'body-left-out': [context(required('anchorage')), 1.75 + 1.15 + s + 0.8],
	'stretch-left-out': [context(required('surface')), fall + 1.15 + 0.8],
	'swing-drop-left-out': [context(required('surface'), { offset: true, connector: true }), swungFall + 1.15 + s + 0.8],
	'straightening-left-out': [
		context(required('surface'), { lowered: true, raised: true }),
		1.75 + down - 1.97 + 1.15 + s - 0.31 + 0.8
	],
	'obstacle-overlooked': [context(available('surface'), { obstacles: ['cart'] }), 6.4],
	'sometimes-obstacle-ignored': [context(available('surface')), 6.4 - 1.3],
	'body-mass-alone': [context({ quantity: 'massAttached' }), 78],
	'tools-left-out': [context({ quantity: 'massAttached' }), 78 + 3 + 6],
	'equipment-left-out': [context({ quantity: 'massAttached' }), 78 + 3 + 5],
	'weight-ignored': [context({ quantity: 'expectedElongation' }), (92 * 9.80665 * fall) / 4200],
	'connector-twice': [context({ quantity: 'freeFall' }, { connector: true }), fall + 0.8],
	'stretch-twice': [context(required('surface')), fall + 1.15 + 2 * s + 0.8],
	'elongation-in-free-fall': [context({ quantity: 'freeFall' }), fall + 1.15],
	'slack-added': [context({ quantity: 'freeFall' }), fall + 0.65],
	'body-from-surface': [context(required('surface')), fall + 1.15 + s + 0.8 + 1.42],
	'tethered-counted': [context({ quantity: 'massAttached' }), 92 + 11],
	'off-path-counted': [context(available('surface')), 6.4 - 2.9]
};

test('there are at least 35 slips, each with its case here', () => {
	expect(SLIPS.length).toBeGreaterThanOrEqual(35);
	expect(Object.keys(CASES).sort()).toEqual(SLIPS.map((slip) => slip.id).sort());
});

describe('each slip gives its number', () => {
	test.each(Object.entries(CASES))('%s', (id, [asked, expected]) => {
		const right = formula(asked.target, asked.shape);
		const altered = slipOf(id)?.alter(right, asked);
		if (altered === undefined) throw new Error(`${id} finds no place`);
		expect(evaluate(altered.tree, fromRecord(G))).toBeCloseTo(expected, 10);
		expect(evaluate(altered.tree, fromRecord(G))).not.toBeCloseTo(evaluate(right, fromRecord(G)), 6);
	});
});

test('swing numbers above stand on Pythagoras, so that swing drop and tight depth make up the line', () => {
	expect(swung + tight).toBeCloseTo(2.15, 12);
	expect(evaluate(formula({ quantity: 'swingDrop' }, { ...upright, offset: true, connector: true }), fromRecord(G))).toBeCloseTo(swung, 12);
});

test('two slips act in the order of the catalogue, and two that exclude each other are no pair', () => {
	const set = variantsOf(context(required('surface'), { connector: true }));
	const names = set.pairs.map((pair) => pair.slips.join('+'));
	expect(names).toContain('lanyard-for-free-fall+margin-left-out');
	expect(names).not.toContain('stretch-left-out+stretch-twice');
	expect(names).not.toContain('lanyard-for-free-fall+heights-wrong-way');
	expect(new Set(names).size).toBe(names.length);
});

test('of several obstacles off the path the highest is counted', () => {
	const asked = { ...context(available('surface'), { obstacles: [] }), absentObstacles: [], strayObstacles: ['cart', 'crate', 'van'] };
	const altered = slipOf('off-path-counted')?.alter(formula(asked.target, asked.shape), asked);
	expect(altered && evaluate(altered.tree, fromRecord(G))).toBeCloseTo(6.4 - 2.9, 12);
});

test('a slip without its number in the problem finds no place', () => {
	const bare: SlipContext = { ...context(required('surface')), shown: () => false, absentObstacles: [], strayObstacles: [] };
	const names = variantsOf(bare).singles.flatMap((single) => single.slips);
	for (const id of ['other-margin', 'other-class-elongation', 'limit-for-value', 'slack-added', 'expected-elongation'] as const) {
		expect(names).not.toContain(id);
	}
});
