/** What a given can be at all, from shared/plausible.json: beyond, a number is taken for a slip of the pen. */
import plausible from '#shared/plausible.json' with { type: 'json' };
import { isUnitId, toSI } from '#lib/quantity/index.ts';
import { isAsideGiven, isObstacleGiven, type FixedGivenId, type GivenId } from './given.ts';

/** A named range of shared/plausible.json. */
export type PlausibleId = keyof typeof plausible.ranges;

/** A range, SI. */
export interface Range {
	readonly least: number;
	readonly greatest: number;
}

const RANGE_OF: Readonly<Record<FixedGivenId, PlausibleId>> = Object.freeze({
	lanyardLength: 'lanyardLength',
	connectorLength: 'connectorLength',
	dRingHeight: 'dRingHeight',
	dRingNow: 'dRingHeight',
	standingHeight: 'height',
	anchorageHeight: 'height',
	offset: 'offset',
	stature: 'stature',
	elongation: 'elongation',
	dRingSlide: 'stretch',
	harnessStretch: 'stretch',
	margin: 'margin',
	lowerLevelDepth: 'depth',
	bodyMass: 'bodyMass',
	clothingMass: 'mass',
	equipmentMass: 'mass',
	toolsMass: 'mass',
	tetheredMass: 'mass',
	labelMassMin: 'mass',
	labelMassMax: 'mass',
	lanyardCapacity: 'mass',
	harnessCapacity: 'mass',
	connectorCapacity: 'mass',
	peakForce: 'force',
	conditionedForce: 'force',
	averageForce: 'force',
	labelFreeFall: 'freeFall',
	statedDeceleration: 'elongation',
	anchorageStrength: 'strength',
	otherMargin: 'margin',
	otherElongation: 'elongation',
	otherFloorDrop: 'depth',
	freeFallLimit: 'freeFall',
	slackShown: 'lanyardLength',
	railHeight: 'stature'
});

/** Decoys for which no range was written: they take one that fits them, from nought up. */
const FROM_NOUGHT: ReadonlySet<GivenId> = new Set(['slackShown', 'railHeight']);

/** @returns the range outside which a typed value is taken for a slip of the pen, SI. */
export function plausibleRange(id: PlausibleId): { readonly atLeast: number; readonly atMost: number } {
	const { min, max } = plausible.ranges[id];
	return { atLeast: bound(min), atMost: bound(max) };
}

/** @returns what a given can be, SI. */
export function plausibleOf(given: GivenId): Range {
	const { atLeast, atMost } = plausibleRange(isObstacleGiven(given) ? 'depth' : isAsideGiven(given) ? 'place' : RANGE_OF[given]);
	return { least: FROM_NOUGHT.has(given) ? 0 : atLeast, greatest: atMost };
}

function bound(of: { readonly value: number; readonly unit: string }): number {
	if (!isUnitId(of.unit)) throw new TypeError(`shared/plausible.json: unknown unit ${of.unit}`);
	return toSI(of.value, of.unit);
}
