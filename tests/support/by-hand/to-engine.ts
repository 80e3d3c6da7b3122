/** A plan by hand under the names that the engine uses, so that both can be asked the same question. */
import type { Shape } from '#lib/arrest/index.ts';
import type { SlipContext } from '#lib/slips/index.ts';
import type { HandObstacle, HandTarget, HandValues } from './values.ts';

const CAPACITIES = ['labelMassMax', 'harnessCapacity', 'lanyardCapacity', 'connectorCapacity'] as const;

/** The numbers of a plan by the engine's ids; obstacles are o0, o1, … in their order. */
function numbersOf(values: HandValues): ReadonlyMap<string, number> {
	const numbers = new Map<string, number>();
	for (const [id, value] of Object.entries(values)) if (typeof value === 'number') numbers.set(id, value);
	values.obstacles.forEach((one, i) => numbers.set(`obstacleTop_o${i}`, one.top));
	values.capacities.forEach((value, i) => numbers.set(CAPACITIES[i] ?? 'labelMassMax', value));
	return numbers;
}

function shapeOf(values: HandValues): Shape {
	return {
		connector: values.connectorLength > 0,
		offset: values.offset > 0,
		lowered: values.kneeling,
		raised: values.standingHeight !== 0,
		absorber: values.elongation !== undefined,
		conditioned: values.conditioned,
		slide: values.dRingSlide > 0,
		stretch: values.harnessStretch > 0,
		custom: values.custom,
		obstacles: values.obstacles.flatMap((one, i) => (one.onPath ? [`o${i}`] : [])),
		masses: (['clothingMass', 'equipmentMass', 'toolsMass'] as const).filter((id) => values[id] > 0),
		capacities: CAPACITIES.slice(0, values.capacities.length)
	};
}

/** @returns what the engine's slips look at for an ask of a plan by hand. */
export function engineContext(values: HandValues, target: HandTarget): SlipContext {
	const numbers = numbersOf(values);
	const where = (keep: (one: HandObstacle) => boolean): string[] =>
		values.obstacles.flatMap((one, i) => (keep(one) ? [`o${i}`] : []));
	return {
		target,
		shape: shapeOf(values),
		shown: (id) => numbers.has(id),
		absentObstacles: where((one) => one.onPath && !one.there),
		strayObstacles: where((one) => !one.onPath && one.there)
	};
}

/** @returns the numbers of a plan by hand in the order of a program's inputs, SI; NaN where it has none. */
export function engineInputs(values: HandValues, inputs: readonly string[]): Float64Array {
	const numbers = numbersOf(values);
	return Float64Array.from(inputs, (id) => numbers.get(id) ?? NaN);
}
