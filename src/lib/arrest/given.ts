/** The givens of a plan: what a learner can read off story, drawing or label. */
import { FORCE, LENGTH, MASS, type Dimension } from '#lib/quantity/index.ts';
import { given, type Given } from '#lib/expression/index.ts';

/** Each given with its dimension and the symbol that formulas print. */
export const GIVENS = Object.freeze({
	lanyardLength: { dimension: LENGTH, symbol: 'L' },
	connectorLength: { dimension: LENGTH, symbol: 'c' },
	dRingHeight: { dimension: LENGTH, symbol: 'h_D' },
	dRingNow: { dimension: LENGTH, symbol: 'h_N' },
	standingHeight: { dimension: LENGTH, symbol: 'h_S' },
	anchorageHeight: { dimension: LENGTH, symbol: 'h_A' },
	offset: { dimension: LENGTH, symbol: 'a' },
	stature: { dimension: LENGTH, symbol: 'H' },
	elongation: { dimension: LENGTH, symbol: 'x' },
	dRingSlide: { dimension: LENGTH, symbol: 's_D' },
	harnessStretch: { dimension: LENGTH, symbol: 's_H' },
	margin: { dimension: LENGTH, symbol: 'M' },
	lowerLevelDepth: { dimension: LENGTH, symbol: 'd' },
	bodyMass: { dimension: MASS, symbol: 'm_B' },
	clothingMass: { dimension: MASS, symbol: 'm_C' },
	equipmentMass: { dimension: MASS, symbol: 'm_E' },
	toolsMass: { dimension: MASS, symbol: 'm_T' },
	tetheredMass: { dimension: MASS, symbol: 'm_X' },
	labelMassMin: { dimension: MASS, symbol: 'm_min' },
	labelMassMax: { dimension: MASS, symbol: 'm_max' },
	lanyardCapacity: { dimension: MASS, symbol: 'm_L' },
	harnessCapacity: { dimension: MASS, symbol: 'm_H' },
	connectorCapacity: { dimension: MASS, symbol: 'm_K' },
	peakForce: { dimension: FORCE, symbol: 'F_max' },
	conditionedForce: { dimension: FORCE, symbol: 'F_wet' },
	averageForce: { dimension: FORCE, symbol: 'F_avg' },
	labelFreeFall: { dimension: LENGTH, symbol: 'h_label' },
	statedDeceleration: { dimension: LENGTH, symbol: 'x_stated' },
	anchorageStrength: { dimension: FORCE, symbol: 'R' },
	/* Decoys: numbers that stand in many problems and belong in none of these formulas. */
	otherMargin: { dimension: LENGTH, symbol: 'M_other' },
	otherElongation: { dimension: LENGTH, symbol: 'x_other' },
	otherFloorDrop: { dimension: LENGTH, symbol: 'd_other' },
	freeFallLimit: { dimension: LENGTH, symbol: 'h_limit' },
	slackShown: { dimension: LENGTH, symbol: 'l_slack' },
	railHeight: { dimension: LENGTH, symbol: 'h_rail' }
} satisfies Record<string, { dimension: Dimension; symbol: string }>);

export type FixedGivenId = keyof typeof GIVENS;
/** The top of an obstacle above the lower level, by the obstacle's id. */
export type ObstacleGivenId = `obstacleTop_${string}`;
/** The nearest part of an obstacle, sideways from the plumb line of the anchorage; 0 straight below it. */
export type AsideGivenId = `obstacleAside_${string}`;
export type GivenId = FixedGivenId | ObstacleGivenId | AsideGivenId;

/** @returns true for the id of an obstacle's top. */
export function isObstacleGiven(id: string): id is ObstacleGivenId {
	return id.startsWith('obstacleTop_');
}

/** @returns true for the id of an obstacle's distance aside. */
export function isAsideGiven(id: string): id is AsideGivenId {
	return id.startsWith('obstacleAside_');
}

/** @returns true for any id of a given. */
export function isGivenId(id: string): id is GivenId {
	return Object.hasOwn(GIVENS, id) || isObstacleGiven(id) || isAsideGiven(id);
}

/** @returns the dimension of a given. */
export function givenDimension(id: GivenId): Dimension {
	return isObstacleGiven(id) || isAsideGiven(id) ? LENGTH : GIVENS[id].dimension;
}

/** @returns the symbol that formulas print for a given. */
export function givenSymbol(id: GivenId): string {
	if (isObstacleGiven(id)) return `t_${id.slice('obstacleTop_'.length)}`;
	return isAsideGiven(id) ? `a_${id.slice('obstacleAside_'.length)}` : GIVENS[id].symbol;
}

/** @returns the leaf of an expression that stands for a given. */
export function leafOf(id: GivenId): Given {
	return given(id, givenDimension(id));
}
