/**
 * Every expected number here was worked out on paper from the words of the slips; the figures of the
 * plans are invented. `common practice, no source` holds for all of them: there is no outside text.
 */
import { describe, expect, it } from 'vitest';
import { byHand, mistakesIn, SLIPS_IN_ORDER, type HandDatum, type HandValues } from '../../support/by-hand/index.ts';

/** Standing, 2 m lanyard, straight below: rise 0.4, free fall 1.6. */
const PLAIN: HandValues = {
	anchorageHeight: 1.9,
	dRingHeight: 1.5,
	dRingNow: 1.5,
	kneeling: false,
	standingHeight: 0,
	lanyardLength: 2,
	connectorLength: 0,
	offset: 0,
	elongation: 1.2,
	dRingSlide: 0.3,
	harnessStretch: 0.15,
	margin: 1,
	stature: 1.8,
	custom: 'd-ring-and-stretch',
	lowerLevelDepth: 7,
	obstacles: [],
	bodyMass: 80,
	clothingMass: 4,
	equipmentMass: 6,
	toolsMass: 10,
	tetheredMass: 5,
	capacities: [140, 100, 136],
	peakForce: 6000,
	conditionedForce: 7000,
	averageForce: 4000,
	conditioned: false
};

/** Kneeling on a platform of 0.5 m, a 0.6 m connector, 1.5 m to the side; line 2.5, taut 2.0 below. */
const FULL: HandValues = {
	...PLAIN,
	anchorageHeight: 2.2,
	dRingNow: 0.9,
	kneeling: true,
	standingHeight: 0.5,
	lanyardLength: 1.9,
	connectorLength: 0.6,
	offset: 1.5
};

const FREE_FALL = { quantity: 'freeFall' } as const;
const MASS = { quantity: 'massAttached' } as const;
const required = (datum: HandDatum) => ({ quantity: 'requiredClearance', datum }) as const;
const available = (datum: HandDatum) => ({ quantity: 'availableClearance', datum }) as const;

function expectValue(values: HandValues, target: Parameters<typeof byHand>[1], slips: string[], expected: number) {
	expect(byHand(values, target, slips)).toBeCloseTo(expected, 12);
}

describe('right answers', () => {
	it('free fall is the taut depth less the rise', () => {
		expectValue(PLAIN, FREE_FALL, [], 1.6);
		// rise 2.2 − 0.9 − 0.5 = 0.8; taut √(2.5² − 1.5²) = 2
		expectValue(FULL, FREE_FALL, [], 1.2);
	});

	it('required clearance from every datum leaves one spare distance', () => {
		expectValue(PLAIN, required('anchorage'), [], 2 + 1.2 + 0.45 + 1.5 + 1);
		expectValue(PLAIN, required('surface'), [], 1.6 + 1.2 + 0.45 + 1);
		expectValue(FULL, required('connector'), [], 1.9 + 1.2 + 0.45 + 1.5 + 1);
		expectValue(FULL, required('d-ring'), [], 1.2 + 0.5 + 1.2 + 0.45 + 1.5 + 1);
		for (const values of [PLAIN, FULL, { ...PLAIN, custom: 'full-height' as const }, { ...FULL, custom: 'full-height' as const }]) {
			const spares = (['anchorage', 'connector', 'surface', 'd-ring'] as const).map((datum) => {
				const need = byHand(values, required(datum), []);
				const have = byHand(values, available(datum), []);
				return (have ?? NaN) - (need ?? NaN);
			});
			for (const spare of spares) expect(spare).toBeCloseTo(spares[0] ?? NaN, 12);
		}
	});

	it('counts the full height, and of the stretch only what goes beyond the head', () => {
		const values: HandValues = { ...PLAIN, custom: 'full-height' };
		// head 0.3 above the D-ring, stretch-out 0.45: 0.15 beyond
		expectValue(values, required('anchorage'), [], 2 + 1.2 + 0.15 + 1.8 + 1);
		expectValue(values, required('surface'), [], 1.6 + 1.2 + 0.15 + 0.3 + 1);
		expectValue({ ...values, stature: 2.1 }, required('anchorage'), [], 2 + 1.2 + 0 + 2.1 + 1);
	});

	it('mass, capacity and force', () => {
		expectValue(PLAIN, MASS, [], 100);
		expectValue(PLAIN, { quantity: 'lowestCapacity' }, [], 100);
		expectValue({ ...PLAIN, conditioned: true }, { quantity: 'arrestForce' }, [], 7000);
		// 100 · 9.80665 · 1.6 ÷ (4000 − 980.665) = 1569.064 ÷ 3019.335
		expectValue(PLAIN, { quantity: 'expectedElongation' }, [], 1569.064 / 3019.335);
		expectValue(PLAIN, { quantity: 'bodyWeights' }, [], 6000 / 980.665);
		// 0.8 up and 1.5 to the side
		expectValue(FULL, { quantity: 'reachDistance' }, [], 1.7);
	});

	it('needs the numbers it stands on', () => {
		const { margin, ...bare } = PLAIN;
		expect(margin).toBe(1);
		expect(byHand(bare, required('anchorage'), [])).toBeUndefined();
	});
});

describe('single slips', () => {
	it.each([
		['lanyard-for-free-fall', 1.9],
		['posture-ignored', 2 - (2.2 - 1.5 - 0.5)],
		['offset-ignored', 2.5 - 0.8],
		['offset-subtracted', 2.5 - 1.5 - 0.8],
		['heights-wrong-way', 2 + 0.8],
		['anchorage-height-added', 2 + 2.2 + 0.9 + 0.5],
		['heights-left-out', 2],
		['d-ring-left-out', 2 - 2.2],
		['standing-place-ignored', 2 - 1.3],
		['connector-left-out', Math.sqrt(1.9 * 1.9 - 1.5 * 1.5) - 0.8],
		['connector-twice', Math.sqrt(3.1 * 3.1 - 1.5 * 1.5) - 0.8],
		['elongation-in-free-fall', 1.2 + 1.2]
	])('%s in the free fall', (slip, expected) => expectValue(FULL, FREE_FALL, [slip], expected));

	it('decoys act where they are shown', () => {
		expectValue({ ...PLAIN, labelFreeFall: 1.8, freeFallLimit: 1.83 }, FREE_FALL, ['limit-for-value'], 1.8);
		expectValue({ ...PLAIN, freeFallLimit: 1.83 }, FREE_FALL, ['limit-for-value'], 1.83);
		expectValue({ ...PLAIN, slackShown: 0.35 }, FREE_FALL, ['slack-added'], 1.95);
		expectValue({ ...PLAIN, otherFloorDrop: 0.25 }, FREE_FALL, ['wrong-floor'], 1.35);
		expectValue({ ...PLAIN, otherMargin: 0.6 }, required('anchorage'), ['other-margin'], 5.75);
		expectValue({ ...PLAIN, otherElongation: 1.75 }, required('anchorage'), ['other-class-elongation'], 6.7);
		for (const slip of ['limit-for-value', 'slack-added', 'wrong-floor']) {
			expect(byHand(PLAIN, FREE_FALL, [slip])).toBeUndefined();
		}
	});

	// right 1.9 + 0.6 + 1.2 + 0.45 + 1.5 + 1 = 6.65
	it.each([
		['datum-d-ring', 5.85],
		['datum-surface', 1.2 + 0.5 + 1.2 + 0.45 + 0.6 - 0.5 + 1],
		['free-fall-for-line', 6.65 - 2.5 + 1.2],
		['stature-for-d-ring', 6.95],
		['kneeling-shortens-clearance', 6.05],
		['connector-left-out', 6.05],
		['elongation-left-out', 5.45],
		['margin-left-out', 5.65],
		['body-left-out', 5.15],
		['stretch-left-out', 6.2],
		['connector-twice', 7.25],
		['stretch-twice', 7.1],
		['expected-elongation', 5.45 + (980.665 * 1.2) / (4000 - 980.665)]
	])('%s in the clearance from the anchorage', (slip, expected) =>
		expectValue(FULL, required('anchorage'), [slip], expected)
	);

	// right 1.2 + 0.5 + 1.2 + 0.45 + 0.6 − 0.5 + 1 = 4.45
	it.each([
		['swing-drop-left-out', 3.95],
		['offset-for-swing-drop', 5.45],
		['straightening-left-out', 3.85],
		['body-from-surface', 5.95],
		['posture-ignored', 5.05],
		['stature-for-d-ring', 4.75],
		['elongation-in-free-fall', 5.65]
	])('%s in the clearance from the surface', (slip, expected) =>
		expectValue(FULL, required('surface'), [slip], expected)
	);

	it('mass, capacity and force', () => {
		expectValue(PLAIN, MASS, ['body-mass-alone'], 80);
		expectValue(PLAIN, MASS, ['tools-left-out'], 90);
		expectValue(PLAIN, MASS, ['equipment-left-out'], 94);
		expectValue(PLAIN, MASS, ['tethered-counted'], 105);
		expectValue(PLAIN, { quantity: 'lowestCapacity' }, ['strongest-capacity'], 140);
		expectValue(PLAIN, { quantity: 'arrestForce' }, ['average-for-peak'], 4000);
		expectValue({ ...PLAIN, conditioned: true }, { quantity: 'arrestForce' }, ['dry-for-conditioned'], 6000);
		expectValue(PLAIN, { quantity: 'expectedElongation' }, ['weight-ignored'], 1569.064 / 4000);
		expect(byHand({ ...PLAIN, clothingMass: 0, equipmentMass: 0 }, MASS, ['tools-left-out'])).toBeUndefined();
	});

	it('available clearance and what stands below', () => {
		const values: HandValues = {
			...FULL,
			obstacles: [
				{ top: 1.1, onPath: true, there: true, sometimes: false },
				{ top: 2.4, onPath: true, there: false, sometimes: true },
				{ top: 3, onPath: false, there: true, sometimes: false }
			]
		};
		expectValue(values, available('surface'), [], 4.6);
		expectValue(values, available('anchorage'), [], 6.8);
		expectValue(values, available('connector'), [], 6.2);
		expectValue(values, available('d-ring'), [], 6);
		expectValue(values, available('connector'), ['connector-left-out'], 6.8);
		expectValue(values, available('d-ring'), ['posture-ignored'], 6.6);
		expectValue(values, available('surface'), ['sometimes-obstacle-ignored'], 5.9);
		expectValue(values, available('surface'), ['obstacle-overlooked', 'sometimes-obstacle-ignored'], 7);
		expectValue(values, available('surface'), ['off-path-counted'], 4);
		expectValue(values, available('surface'), ['datum-anchorage'], 6.8);
		// The lower of the two is overlooked: nothing changes, so the slip does not show.
		expectValue(values, available('surface'), ['obstacle-overlooked'], 4.6);
		const { singles, pairs } = mistakesIn(values, available('surface'));
		expect(singles.some((one) => one.slips[0] === 'obstacle-overlooked')).toBe(false);
		expect(pairs.some((one) => one.slips.join() === 'obstacle-overlooked,sometimes-obstacle-ignored')).toBe(true);
	});
});

describe('two slips', () => {
	it('act one after the other', () => {
		expectValue(PLAIN, required('anchorage'), ['margin-left-out', 'stretch-twice'], 6.15 - 1 + 0.45);
		expectValue(FULL, FREE_FALL, ['connector-left-out', 'heights-wrong-way'], Math.sqrt(1.36) + 0.8);
		expectValue(PLAIN, FREE_FALL, ['heights-wrong-way', 'elongation-in-free-fall'], 2 + 0.4 + 1.2);
	});

	it('are no pair where the second finds its place gone', () => {
		expect(byHand(PLAIN, required('anchorage'), ['stretch-left-out', 'stretch-twice'])).toBeUndefined();
		expect(byHand(FULL, FREE_FALL, ['offset-ignored', 'offset-subtracted'])).toBeUndefined();
		expect(byHand(PLAIN, MASS, ['body-mass-alone', 'tools-left-out'])).toBeUndefined();
	});

	it('each have a place of their own, and the pair a number of its own', () => {
		for (const values of [PLAIN, FULL]) {
			for (const target of [FREE_FALL, MASS, required('anchorage'), required('surface'), required('d-ring')]) {
				const { right, singles, pairs } = mistakesIn(values, target);
				expect(singles.length).toBeGreaterThan(2);
				for (const { slips, value } of pairs) {
					expect(value).toBeGreaterThan(0);
					expect(Math.abs(value - (right ?? NaN))).toBeGreaterThan(1e-9);
					expect(slips.map((slip) => SLIPS_IN_ORDER.indexOf(slip))).toEqual(
						slips.map((slip) => SLIPS_IN_ORDER.indexOf(slip)).sort((a, b) => a - b)
					);
				}
			}
		}
	});
});

describe('rounding on the way', () => {
	const toInch = (metres: number) => Math.round(metres / 0.0254) * 0.0254;
	const rounding = { length: toInch, mass: Math.round, force: Math.round };

	it('rounds each quantity that is written down', () => {
		// rise 0.4 m = 15.748 in → 16 in; free fall 2 − 0.4064 = 1.5936 m = 62.740 in → 63 in
		expect(byHand(PLAIN, FREE_FALL, [], rounding)).toBeCloseTo(63 * 0.0254, 12);
	});

	it('leaves the last sum as it comes', () => {
		// stretch-out 0.45 m = 17.717 in → 18 in = 0.4572 m; the sum itself is rounded by whoever writes it
		expect(byHand(PLAIN, required('anchorage'), [], rounding)).toBeCloseTo(2 + 1.2 + 0.4572 + 1.5 + 1, 12);
	});
});
