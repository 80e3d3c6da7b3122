/** What decides which terms a plan's formulas have. Two plans of one shape share their trees. */

export type Datum = 'anchorage' | 'connector' | 'surface' | 'd-ring';
export const DATUMS: readonly Datum[] = Object.freeze(['anchorage', 'connector', 'surface', 'd-ring']);

export type BodyCustom = 'd-ring-and-stretch' | 'full-height';

export interface Shape {
	readonly connector: boolean;
	readonly offset: boolean;
	/** The worker kneels or crouches: the D-ring starts lower than it hangs. */
	readonly lowered: boolean;
	/** The standing place is not the walking surface. */
	readonly raised: boolean;
	readonly absorber: boolean;
	/** Wet or frozen: the conditioned force counts. */
	readonly conditioned: boolean;
	readonly slide: boolean;
	readonly stretch: boolean;
	readonly custom: BodyCustom;
	/** Ids of the obstacles that the body's path meets, in the order of the plan. */
	readonly obstacles: readonly string[];
	/** Parts of the attached mass beside the body, in the order of the plan. */
	readonly masses: readonly ('clothingMass' | 'equipmentMass' | 'toolsMass')[];
	/** Components whose mass capacity is stated. */
	readonly capacities: readonly ('labelMassMax' | 'harnessCapacity' | 'lanyardCapacity' | 'connectorCapacity')[];
}

/** Keys of shapes looked at before: a shape never changes. */
const keys = new WeakMap<Shape, string>();

/** @returns a text that is equal for equal shapes and differs for different ones. */
export function shapeKey(shape: Shape): string {
	const before = keys.get(shape);
	if (before !== undefined) return before;
	const key = written(shape);
	keys.set(shape, key);
	return key;
}

function written(shape: Shape): string {
	const flags = [shape.connector, shape.offset, shape.lowered, shape.raised, shape.absorber, shape.conditioned, shape.slide, shape.stretch];
	return [
		flags.map((flag) => (flag ? '1' : '0')).join(''),
		shape.custom,
		shape.obstacles.join('.'),
		shape.masses.join('.'),
		shape.capacities.join('.')
	].join('|');
}

/** How many shapes a memory keeps before it is emptied. @reason all shapes of all shipped scenarios fit in many times over. */
const REMEMBERED = 1024;

/** @returns what `make` gives for a shape, made once for all shapes that are equal while it is remembered. */
export function onceAShape<T>(make: (shape: Shape) => T): (shape: Shape) => T {
	const byKey = new Map<string, { readonly made: T }>();
	// By the shape itself as well, which spares writing out its key.
	const byShape = new WeakMap<Shape, { readonly made: T }>();
	return (shape) => {
		const before = byShape.get(shape);
		if (before !== undefined) return before.made;
		const key = shapeKey(shape);
		let found = byKey.get(key);
		if (found === undefined) {
			if (byKey.size >= REMEMBERED) byKey.clear();
			found = { made: make(shape) };
			byKey.set(key, found);
		}
		byShape.set(shape, found);
		return found.made;
	};
}
