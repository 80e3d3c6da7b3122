/**
 * What kind of thing a number measures, as exponents of length, mass and time.
 * Dimensions are plain frozen data, so that a node of a formula can carry one and a test can
 * compare two of them. Angles are ratios here.
 */

/** Exponents of the three base dimensions; all integers. */
export interface Dimension {
	readonly length: number;
	readonly mass: number;
	readonly time: number;
}

function dimension(length: number, mass: number, time: number): Dimension {
	return Object.freeze({ length, mass, time });
}

export const RATIO = dimension(0, 0, 0);
export const LENGTH = dimension(1, 0, 0);
export const AREA = dimension(2, 0, 0);
export const MASS = dimension(0, 1, 0);
export const TIME = dimension(0, 0, 1);
export const SPEED = dimension(1, 0, -1);
export const ACCELERATION = dimension(1, 0, -2);
export const FORCE = dimension(1, 1, -2);
export const ENERGY = dimension(2, 1, -2);
export const STIFFNESS = dimension(0, 1, -2);

const NAMED: readonly (readonly [Dimension, string])[] = [
	[RATIO, 'ratio'],
	[LENGTH, 'length'],
	[AREA, 'area'],
	[MASS, 'mass'],
	[TIME, 'time'],
	[SPEED, 'speed'],
	[ACCELERATION, 'acceleration'],
	[FORCE, 'force'],
	[ENERGY, 'energy'],
	[STIFFNESS, 'stiffness']
];

/** Whether two quantities may be added, subtracted or compared. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
	return a.length === b.length && a.mass === b.mass && a.time === b.time;
}

/** The dimension of a product. */
export function timesDimension(a: Dimension, b: Dimension): Dimension {
	return dimension(a.length + b.length, a.mass + b.mass, a.time + b.time);
}

/** The dimension of a quotient, `a` over `b`. */
export function overDimension(a: Dimension, b: Dimension): Dimension {
	return dimension(a.length - b.length, a.mass - b.mass, a.time - b.time);
}

/**
 * The dimension of a square root.
 * @throws RangeError when an exponent is odd: the root of a length has no meaning here.
 */
export function rootDimension(of: Dimension): Dimension {
	if (of.length % 2 !== 0 || of.mass % 2 !== 0 || of.time % 2 !== 0) {
		throw new RangeError(
			`The square root of ${nameOfDimension(of)} has no whole exponents; take the root of an area or of a squared speed.`
		);
	}
	return dimension(of.length / 2, of.mass / 2, of.time / 2);
}

/**
 * An English name for messages to authors and for tests: `force`, or `length^3 mass` where the
 * combination has no name of its own.
 */
export function nameOfDimension(of: Dimension): string {
	for (const [known, name] of NAMED) {
		if (sameDimension(known, of)) return name;
	}
	const parts: string[] = [];
	for (const base of ['length', 'mass', 'time'] as const) {
		const exponent = of[base];
		if (exponent === 0) continue;
		parts.push(exponent === 1 ? base : `${base}^${String(exponent)}`);
	}
	return parts.join(' ');
}
