/** Where in a scenario document each number and fact of a plan comes from: a draw, a decoy, or the base plan. */
import { isAsideGiven, isObstacleGiven, type FixedGivenId, type GivenId } from '#lib/arrest/index.ts';
import type { FieldPath } from './finding.ts';
import type { Scenario } from './schema.ts';

/** Where a plan holds a given. */
export const PLAN_PLACES: Readonly<Partial<Record<FixedGivenId, FieldPath>>> = Object.freeze({
	stature: ['worker', 'stature'],
	dRingHeight: ['worker', 'dRingHeight'],
	dRingNow: ['worker', 'dRingNow'],
	standingHeight: ['worker', 'standingHeight'],
	bodyMass: ['worker', 'mass', 'body'],
	clothingMass: ['worker', 'mass', 'clothing'],
	equipmentMass: ['worker', 'mass', 'equipment'],
	toolsMass: ['worker', 'mass', 'tools'],
	tetheredMass: ['worker', 'mass', 'tethered'],
	lanyardLength: ['lanyard', 'length'],
	lanyardCapacity: ['lanyard', 'capacity'],
	elongation: ['absorber', 'elongation'],
	peakForce: ['absorber', 'peakForce'],
	conditionedForce: ['absorber', 'conditionedForce'],
	averageForce: ['absorber', 'averageForce'],
	labelMassMin: ['absorber', 'massMin'],
	labelMassMax: ['absorber', 'massMax'],
	labelFreeFall: ['absorber', 'freeFallMax'],
	statedDeceleration: ['absorber', 'statedDeceleration'],
	dRingSlide: ['harness', 'slide'],
	harnessStretch: ['harness', 'stretch'],
	harnessCapacity: ['harness', 'capacity'],
	connectorCapacity: ['connectors', 'capacity'],
	anchorageHeight: ['anchorage', 'height'],
	anchorageStrength: ['anchorage', 'strength'],
	connectorLength: ['anchorage', 'connector', 'length'],
	offset: ['offset', 'distance'],
	margin: ['margin'],
	lowerLevelDepth: ['below', 'depth']
});

/** A fact of a plan, by the name a draw of it has; the last three no draw changes. */
export type PlanFact = 'rescue' | 'connectors' | 'condition' | 'posture' | 'persons' | 'engineered' | 'longer-fall' | 'direction' | 'edge';

const FACT_PLACES: Readonly<Record<PlanFact, FieldPath>> = Object.freeze({
	rescue: ['base', 'rescue'],
	connectors: ['base', 'connectors', 'compatible'],
	condition: ['base', 'absorber', 'condition'],
	posture: ['base', 'worker', 'posture'],
	persons: ['base', 'anchorage', 'persons'],
	engineered: ['base', 'anchorage', 'engineered'],
	'longer-fall': ['base', 'absorber', 'testedForLongerFall'],
	direction: ['base', 'offset', 'direction'],
	edge: ['base', 'lineMeetsEdge']
});

/** @returns the index of the draw that sets a given, the last one that does, or undefined. */
export function drawOf(scenario: Scenario, given: GivenId): number | undefined {
	const at = scenario.draws.findLastIndex((draw) => !('fact' in draw) && draw.sets.includes(given));
	return at < 0 ? undefined : at;
}

/** @returns the field that holds a given: the draw or the decoy that sets it, else its place in the base plan. */
export function fieldOfGiven(scenario: Scenario, given: GivenId): FieldPath {
	const decoy = scenario.decoys.findLastIndex((one) => one.given === given);
	if (decoy >= 0) return ['decoys', decoy];
	const draw = drawOf(scenario, given);
	return draw === undefined ? basePlaceOf(scenario, given) : ['draws', draw];
}

/** @returns where the base plan holds a given, or would hold it. */
export function basePlaceOf(scenario: Scenario, given: GivenId): FieldPath {
	if (isObstacleGiven(given) || isAsideGiven(given)) {
		const id = given.slice(given.indexOf('_') + 1);
		const at = scenario.base.below.obstacles.findIndex((one) => one.id === id);
		const obstacles = ['base', 'below', 'obstacles'];
		return at < 0 ? obstacles : [...obstacles, at, isObstacleGiven(given) ? 'top' : 'from'];
	}
	const place = PLAN_PLACES[given];
	return place === undefined ? ['decoys'] : ['base', ...place];
}

/** @returns the field that holds a fact: the draw that chooses it, else its place in the base plan. */
export function fieldOfFact(scenario: Scenario, fact: PlanFact): FieldPath {
	const at = scenario.draws.findLastIndex((draw) => 'fact' in draw && draw.fact === fact);
	return at < 0 ? FACT_PLACES[fact] : ['draws', at];
}
