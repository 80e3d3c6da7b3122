/** Asks the engine's trees for a quantity, given loose numbers instead of a whole plan. */
import { formula, type BodyCustom, type FixedGivenId, type Shape, type Target } from '#lib/arrest/index.ts';
import { evaluate, fromRecord, type Node } from '#lib/expression/index.ts';

/** SI numbers by the engine's names of givens; one obstacle, o, with its top and its distance from the plumb line. */
export type Numbers = Readonly<Partial<Record<FixedGivenId | 'obstacleTop_o' | 'obstacleAside_o', number>>>;

/** @returns the shape of a plan that has just these numbers: a term exists where its number is given and not nought. */
export function shapeOf(numbers: Numbers, custom: BodyCustom = 'd-ring-and-stretch'): Shape {
	const there = (id: keyof Numbers): boolean => (numbers[id] ?? 0) !== 0;
	return {
		connector: there('connectorLength'),
		offset: there('offset'),
		lowered: numbers.dRingNow !== undefined,
		raised: there('standingHeight'),
		absorber: numbers.elongation !== undefined,
		conditioned: numbers.conditionedForce !== undefined,
		slide: there('dRingSlide'),
		stretch: there('harnessStretch'),
		custom,
		obstacles: numbers.obstacleTop_o === undefined ? [] : ['o'],
		masses: (['clothingMass', 'equipmentMass', 'toolsMass'] as const).filter(there),
		capacities: (['labelMassMax', 'harnessCapacity', 'lanyardCapacity', 'connectorCapacity'] as const).filter(there)
	};
}

/** @returns the tree of a quantity for a plan of just these numbers. */
export function treeFor(target: Target, numbers: Numbers, custom?: BodyCustom): Node {
	return formula(target, shapeOf(numbers, custom));
}

/** @returns the engine's value of a quantity, SI. */
export function engine(target: Target, numbers: Numbers, custom?: BodyCustom): number {
	return evaluate(treeFor(target, numbers, custom), fromRecord({ offset: 0, ...numbers }));
}

/** @returns numbers of a plain fall of a height: a lanyard of that length, its anchorage level with the D-ring. */
export function fallOf(height: number): Numbers {
	return { lanyardLength: height, dRingHeight: 1, anchorageHeight: 1 };
}

/** @returns heights that put the anchorage `rise` above the D-ring (below it if negative). */
export function risen(rise: number, dRingHeight = 1): Numbers {
	return { dRingHeight, anchorageHeight: dRingHeight + rise };
}
