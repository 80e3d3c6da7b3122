/** The numbers of a drawn site problem, copied onto the sheet of whoever works it out by hand. */
import type { GivenId } from '#lib/arrest/index.ts';
import { UNITS } from '#lib/quantity/index.ts';
import { givenValue, isShown, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import type { HandTarget, HandValues } from './values.ts';

const OPTIONAL = [
	'elongation',
	'margin',
	'stature',
	'bodyMass',
	'tetheredMass',
	'peakForce',
	'conditionedForce',
	'averageForce',
	'labelFreeFall',
	'freeFallLimit',
	'otherMargin',
	'otherElongation',
	'otherFloorDrop',
	'slackShown'
] as const satisfies readonly (GivenId & keyof HandValues)[];

const CAPACITIES = ['labelMassMax', 'harnessCapacity', 'lanyardCapacity', 'connectorCapacity'] as const;

/** Numbers that a learner can make a mistake with only where the problem shows them. */
const ONLY_SHOWN: readonly GivenId[] = [
	'averageForce',
	'bodyMass',
	'stature',
	'tetheredMass',
	'labelFreeFall',
	'freeFallLimit'
];

/** @returns what a person has in front of them, SI. */
export function handValuesOf(problem: Problem): HandValues {
	const { plan } = problem.drawn;
	const number = (id: GivenId): number => givenValue(problem, id) ?? 0;
	const half = problem.resolved.practice.halfBodyWidth;
	const unit = UNITS[half.unit];
	const reach = plan.offset.distance + (half.value * unit.times) / unit.over;

	const optional: Partial<Record<(typeof OPTIONAL)[number], number>> = {};
	for (const id of OPTIONAL) {
		const value = givenValue(problem, id);
		if (value === undefined || (ONLY_SHOWN.includes(id) && !isShown(problem, id))) continue;
		optional[id] = value;
	}
	const { stature, ...others } = optional;
	const custom = problem.resolved.shape.custom;
	const height = custom === 'full-height' ? givenValue(problem, 'stature') : stature;
	return {
		...others,
		...(height === undefined ? {} : { stature: height }),
		anchorageHeight: plan.anchorage.height,
		dRingHeight: plan.worker.dRingHeight,
		dRingNow: number('dRingNow'),
		kneeling: plan.worker.posture === 'kneeling',
		standingHeight: plan.worker.standingHeight,
		lanyardLength: plan.lanyard.length,
		connectorLength: plan.anchorage.connector?.length ?? 0,
		offset: plan.offset.distance,
		dRingSlide: number('dRingSlide'),
		harnessStretch: number('harnessStretch'),
		custom,
		lowerLevelDepth: plan.below.depth,
		obstacles: plan.below.obstacles.map((one) => ({
			top: one.top,
			onPath: one.from <= reach && one.to >= -reach,
			there: one.there,
			sometimes: one.present === 'sometimes'
		})),
		clothingMass: number('clothingMass'),
		equipmentMass: number('equipmentMass'),
		toolsMass: number('toolsMass'),
		capacities: CAPACITIES.flatMap((id) => givenValue(problem, id) ?? []),
		conditioned: plan.absorber?.condition === 'wet-or-frozen'
	};
}

/** @returns what an ask wants to know. */
export function handTargetOf(ask: NumberAsk): HandTarget {
	return 'datum' in ask ? { quantity: ask.quantity, datum: ask.datum } : { quantity: ask.quantity };
}
