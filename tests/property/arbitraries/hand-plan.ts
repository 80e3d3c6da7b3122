/** Random plans for arithmetic by hand: every shape, numbers on the grids that scenarios draw from. */
import fc from 'fast-check';
import type { HandObstacle, HandValues } from '../../support/by-hand/index.ts';

/** A number from `from` to `to` in steps of a centimetre (or a hundredth of another unit). */
function hundredths(from: number, to: number): fc.Arbitrary<number> {
	return fc.integer({ min: Math.round(from * 100), max: Math.round(to * 100) }).map((n) => n / 100);
}

/** A whole number of units, for masses and forces. */
function whole(from: number, to: number): fc.Arbitrary<number> {
	return fc.integer({ min: from, max: to });
}

/** A number that some plans do not have: 0 then. */
function sometimes(of: fc.Arbitrary<number>): fc.Arbitrary<number> {
	return fc.oneof(fc.constant(0), of);
}

const obstacle: fc.Arbitrary<HandObstacle> = fc
	.record({ top: hundredths(0.2, 3), onPath: fc.boolean(), there: fc.boolean() })
	.map((one) => ({ ...one, sometimes: !one.there }));

/** Of several that stand off the path, which one a person takes is anybody's guess: one at most is drawn. */
const obstacles = fc
	.array(obstacle, { maxLength: 4 })
	.map((all) => {
		const stray = all.find((one) => !one.onPath && one.there);
		return all.filter((one) => one === stray || one.onPath || !one.there);
	});

/** A worker on a lanyard who can rig up: offset within reach, D-ring no higher than the head. */
export function handPlan(): fc.Arbitrary<HandValues> {
	return fc
		.record(
			{
				anchorageHeight: hundredths(0.5, 3.2),
				dRingHeight: hundredths(1.25, 1.6),
				lowered: hundredths(0.45, 0.7),
				kneeling: fc.boolean(),
				standingHeight: sometimes(hundredths(0.2, 1)),
				lanyardLength: hundredths(1.2, 2),
				connectorLength: sometimes(hundredths(0.3, 1)),
				offset: sometimes(hundredths(0.3, 1.1)),
				elongation: hundredths(0.8, 1.75),
				dRingSlide: sometimes(hundredths(0.1, 0.4)),
				harnessStretch: sometimes(hundredths(0.05, 0.3)),
				margin: hundredths(0.6, 1),
				head: hundredths(0.25, 0.35),
				custom: fc.constantFrom('d-ring-and-stretch', 'full-height'),
				lowerLevelDepth: hundredths(4, 12),
				obstacles,
				bodyMass: whole(55, 120),
				clothingMass: sometimes(whole(1, 6)),
				equipmentMass: sometimes(whole(3, 12)),
				toolsMass: sometimes(whole(2, 15)),
				tetheredMass: whole(2, 10),
				capacities: fc.array(whole(100, 160), { minLength: 1, maxLength: 4 }),
				peakForce: whole(4000, 6000),
				conditionedForce: whole(6100, 8000),
				averageForce: whole(2500, 4000),
				conditioned: fc.boolean(),
				labelFreeFall: hundredths(1.8, 3.6),
				freeFallLimit: hundredths(1.8, 1.85),
				otherMargin: hundredths(0.5, 1.2),
				otherElongation: hundredths(0.8, 1.75),
				otherFloorDrop: hundredths(0.2, 1.5),
				slackShown: hundredths(0.1, 0.9)
			},
			{
				requiredKeys: [
					'anchorageHeight',
					'dRingHeight',
					'lowered',
					'kneeling',
					'standingHeight',
					'lanyardLength',
					'connectorLength',
					'offset',
					'dRingSlide',
					'harnessStretch',
					'margin',
					'head',
					'custom',
					'lowerLevelDepth',
					'obstacles',
					'bodyMass',
					'clothingMass',
					'equipmentMass',
					'toolsMass',
					'capacities',
					'peakForce',
					'conditionedForce',
					'conditioned',
					'averageForce',
					'elongation'
				]
			}
		)
		.map(({ lowered, head, ...rest }) => ({
			...rest,
			dRingNow: rest.kneeling ? rest.dRingHeight - lowered : rest.dRingHeight,
			stature: rest.dRingHeight + head
		}));
}
