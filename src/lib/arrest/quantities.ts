/** The quantities by name, apart from their trees: who only shows or reads numbers needs no formula. */
import { FORCE, LENGTH, MASS, RATIO, SPEED, TIME, type Dimension } from '#lib/quantity/index.ts';
import type { Datum } from './shape.ts';

/** Every quantity the engine knows, with the symbol formulas print and the cautious direction (+1: more is more cautious). */
export const QUANTITIES = Object.freeze({
	rise: { symbol: 'r', dimension: LENGTH, cautious: -1 },
	lineLength: { symbol: 'ℓ', dimension: LENGTH, cautious: 1 },
	tautDepth: { symbol: 'z_t', dimension: LENGTH, cautious: 1 },
	freeFall: { symbol: 'h', dimension: LENGTH, cautious: 1 },
	swingDrop: { symbol: 'Δ', dimension: LENGTH, cautious: 1 },
	stretchOut: { symbol: 's', dimension: LENGTH, cautious: 1 },
	extraStretch: { symbol: "s'", dimension: LENGTH, cautious: 1 },
	headAboveDRing: { symbol: 'b_H', dimension: LENGTH, cautious: 1 },
	straightening: { symbol: 'b_N', dimension: LENGTH, cautious: 1 },
	requiredClearance: { symbol: 'C', dimension: LENGTH, cautious: 1 },
	highestBelow: { symbol: 't', dimension: LENGTH, cautious: 1 },
	availableClearance: { symbol: 'A', dimension: LENGTH, cautious: -1 },
	spare: { symbol: 'S', dimension: LENGTH, cautious: -1 },
	reachDistance: { symbol: 'ρ', dimension: LENGTH, cautious: 1 },
	reachSpare: { symbol: 'ρ_S', dimension: LENGTH, cautious: -1 },
	massAttached: { symbol: 'm', dimension: MASS, cautious: 1 },
	lowestCapacity: { symbol: 'm_cap', dimension: MASS, cautious: -1 },
	capacitySpare: { symbol: 'm_S', dimension: MASS, cautious: -1 },
	totalFall: { symbol: 'D', dimension: LENGTH, cautious: 1 },
	expectedElongation: { symbol: 'x_E', dimension: LENGTH, cautious: 1 },
	arrestForce: { symbol: 'F', dimension: FORCE, cautious: 1 },
	bodyWeights: { symbol: 'n', dimension: RATIO, cautious: 1 },
	fallSpeed: { symbol: 'v', dimension: SPEED, cautious: 1 },
	fallTime: { symbol: 't_1', dimension: TIME, cautious: -1 },
	swingSpeed: { symbol: 'v_Δ', dimension: SPEED, cautious: 1 },
	tightSpeed: { symbol: 'v_ℓ', dimension: SPEED, cautious: 1 },
	sidewaysSpeed: { symbol: 'v_a', dimension: SPEED, cautious: 1 },
	speedAtObstacle: { symbol: 'v_t', dimension: SPEED, cautious: 1 },
	stopTime: { symbol: 't_2', dimension: TIME, cautious: -1 },
	hangingDepth: { symbol: 'z_low', dimension: LENGTH, cautious: 1 },
	fallFactor: { symbol: 'f', dimension: RATIO, cautious: 1 },
	largestMass: { symbol: 'm*', dimension: MASS, cautious: -1 },
	largestFreeFall: { symbol: 'h*', dimension: LENGTH, cautious: -1 }
} satisfies Record<string, { symbol: string; dimension: Dimension; cautious: 1 | -1 }>);

export type QuantityId = keyof typeof QUANTITIES;

/** A quantity with the datum it is measured from, where it has one. */
export type Target =
	| { readonly quantity: 'requiredClearance' | 'availableClearance'; readonly datum: Datum }
	| { readonly quantity: 'speedAtObstacle'; readonly obstacle: string }
	| { readonly quantity: PlainQuantityId };

/** A quantity that needs nothing more to be named. */
export type PlainQuantityId = Exclude<QuantityId, 'requiredClearance' | 'availableClearance' | 'speedAtObstacle'>;

/** @returns a text that is equal for equal targets. */
export function targetKey(target: Target): string {
	if ('datum' in target) return `${target.quantity}@${target.datum}`;
	return 'obstacle' in target ? `${target.quantity}@${target.obstacle}` : target.quantity;
}

/** @returns true for a quantity's id. */
export function isQuantityId(id: string): id is QuantityId {
	return Object.hasOwn(QUANTITIES, id);
}
