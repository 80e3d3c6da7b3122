/** Sites that nobody could build, and bodies and labels that do not exist. */
import type { GivenId } from '#lib/arrest/index.ts';
import { givenValue, type Problem } from './problem.ts';
import type { Span } from './spans.ts';
import { usualOf } from './usual.ts';

export type ImpossibleSite =
	| 'd-ring-off-body'
	| 'posture-off-body'
	| 'obstacle-above-surface'
	| 'connector-reaches-past-lower-level'
	| 'average-above-peak'
	| 'conditioned-below-dry'
	| 'stated-above-elongation'
	| 'label-range-turned'
	| 'heights-turned';

/** @reason a dorsal D-ring sits between the shoulder blades; common practice, no source. Of the body height. */
const D_RING_ON_BODY = { from: 0.72, to: 0.88 };
/** @reason kneeling lowers the D-ring by about the lower leg or, sitting on the heels, more; common practice, no source. Of the height standing. */
const D_RING_KNEELING = { from: 0.4, to: 0.8 };

function within(value: number, range: { readonly from: number; readonly to: number }): boolean {
	return value >= range.from && value <= range.to;
}

/** Something impossible, with the numbers that contradict each other, the one it usually lies at first. */
export interface Impossible {
	readonly site: ImpossibleSite;
	readonly givens: readonly [GivenId, ...GivenId[]];
}

/** @returns what is impossible about a drawn problem, each with the givens it shows in. */
export function impossibleIn(problem: Problem): readonly Impossible[] {
	const found: Impossible[] = [];
	const value = (id: GivenId): number | undefined => givenValue(problem, id);
	const say = (site: ImpossibleSite, ...givens: Impossible['givens']): number => found.push({ site, givens });
	/** True if both are known and the first is above the second. */
	const above = (first: GivenId, second: GivenId): boolean => (value(first) ?? -Infinity) > (value(second) ?? Infinity);
	const { plan } = problem.drawn;
	const { shape } = problem.resolved;

	const dRing = plan.worker.dRingHeight;
	const { stature } = plan.worker;
	if (stature !== undefined && !within(dRing / stature, D_RING_ON_BODY)) say('d-ring-off-body', 'dRingHeight', 'stature');
	if (shape.lowered && !within((value('dRingNow') ?? 0) / dRing, D_RING_KNEELING)) say('posture-off-body', 'dRingNow', 'dRingHeight');
	for (const id of shape.obstacles) {
		if (above(`obstacleTop_${id}`, 'lowerLevelDepth')) say('obstacle-above-surface', `obstacleTop_${id}`, 'lowerLevelDepth');
	}
	if ((plan.anchorage.connector?.length ?? 0) > plan.anchorage.height + plan.below.depth) {
		say('connector-reaches-past-lower-level', 'connectorLength', 'anchorageHeight', 'lowerLevelDepth');
	}
	if (above('averageForce', 'peakForce')) say('average-above-peak', 'averageForce', 'peakForce');
	if (above('peakForce', 'conditionedForce')) say('conditioned-below-dry', 'conditionedForce', 'peakForce');
	if (above('statedDeceleration', 'elongation')) say('stated-above-elongation', 'statedDeceleration', 'elongation');
	if (above('labelMassMin', 'labelMassMax')) say('label-range-turned', 'labelMassMin', 'labelMassMax');
	if (above('dRingHeight', 'stature')) say('heights-turned', 'dRingHeight', 'stature');
	if (above('dRingNow', 'dRingHeight')) say('heights-turned', 'dRingNow', 'dRingHeight');
	return found;
}

/**
 * @returns which of the givens that contradict each other is at fault: the one furthest from what is usual; where
 * all are usual, the one whose range counts from another of them; else the first.
 */
export function culprit({ givens }: Impossible, problem: Problem, spans: ReadonlyMap<GivenId, Span>): GivenId {
	const [first] = givens;
	const furthest = givens.map((given) => ({ given, off: offUsual(given, givenValue(problem, given)) })).reduce((most, one) => (one.off > most.off ? one : most));
	if (furthest.off > 0) return furthest.given;
	return givens.find((given) => givens.some((other) => other !== given && spans.get(given)?.above === other)) ?? first;
}

/** How far a value lies outside of what is usual, in widths of the usual range. */
function offUsual(given: GivenId, value: number | undefined): number {
	const usual = usualOf(given);
	if (usual === undefined || value === undefined) return 0;
	return Math.max(0, usual.least - value, value - usual.greatest) / (usual.greatest - usual.least);
}
