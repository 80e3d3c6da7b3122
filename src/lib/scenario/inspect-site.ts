/** Sites that nobody could build, and bodies and labels that do not exist. */
import type { GivenId } from '#lib/arrest/index.ts';
import { givenValue, type Problem } from './problem.ts';

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

/** @returns what is impossible about a drawn problem, each with the given it shows in. */
export function impossibleIn(problem: Problem): readonly { readonly site: ImpossibleSite; readonly given: GivenId }[] {
	const found: { site: ImpossibleSite; given: GivenId }[] = [];
	const value = (id: GivenId): number | undefined => givenValue(problem, id);
	const say = (site: ImpossibleSite, given: GivenId): number => found.push({ site, given });
	/** True if both are known and the first is above the second. */
	const above = (first: GivenId, second: GivenId): boolean => (value(first) ?? -Infinity) > (value(second) ?? Infinity);
	const { plan } = problem.drawn;
	const { shape } = problem.resolved;

	const dRing = plan.worker.dRingHeight;
	const { stature } = plan.worker;
	if (stature !== undefined && !within(dRing / stature, D_RING_ON_BODY)) say('d-ring-off-body', 'dRingHeight');
	if (shape.lowered && !within((value('dRingNow') ?? 0) / dRing, D_RING_KNEELING)) say('posture-off-body', 'dRingNow');
	for (const id of shape.obstacles) {
		if (above(`obstacleTop_${id}`, 'lowerLevelDepth')) say('obstacle-above-surface', `obstacleTop_${id}`);
	}
	if ((plan.anchorage.connector?.length ?? 0) > plan.anchorage.height + plan.below.depth) {
		say('connector-reaches-past-lower-level', 'connectorLength');
	}
	if (above('averageForce', 'peakForce')) say('average-above-peak', 'averageForce');
	if (above('peakForce', 'conditionedForce')) say('conditioned-below-dry', 'conditionedForce');
	if (above('statedDeceleration', 'elongation')) say('stated-above-elongation', 'statedDeceleration');
	if (above('labelMassMin', 'labelMassMax')) say('label-range-turned', 'labelMassMin');
	if (above('dRingHeight', 'stature') || above('dRingNow', 'dRingHeight')) say('heights-turned', 'dRingHeight');
	return found;
}
