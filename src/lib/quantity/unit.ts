/**
 * Units of measure and their exact factors. SI inside, these at the edge only.
 *
 * Factors: international foot 0.3048 m, avoirdupois pound 0.45359237 kg, standard gravity
 * 9.80665 m/s², all exact by definition (NIST SP 811, appendix B, from memory; physics.md 11).
 * A factor is kept as a fraction of two exactly representable numbers wherever it is one, so that
 * 42 in is 1.0668 m to the last bit and not 1.0668 and some noise.
 */
import {
	ACCELERATION,
	AREA,
	ENERGY,
	FORCE,
	LENGTH,
	MASS,
	RATIO,
	SPEED,
	STIFFNESS,
	TIME,
	sameDimension
} from './dimension.ts';
import type { Dimension } from './dimension.ts';

/** Standard gravity, m/s², exact by definition (physics.md 0). */
export const STANDARD_GRAVITY = 9.80665;

/** Newtons in a pound-force: 0.45359237 × 9.80665, written out in full (physics.md 11). */
const POUND_FORCE = 4.4482216152605;

/** Joules in a foot-pound, POUND_FORCE × 0.3048 = 1.3558179483314004: the nearest double as it prints. */
const FOOT_POUND = 1.3558179483314003;

export interface Unit {
	readonly dimension: Dimension;
	/** SI value of one unit is `times / over`. */
	readonly times: number;
	readonly over: number;
}

function unit(dimension: Dimension, times: number, over = 1): Unit {
	return Object.freeze({ dimension, times, over });
}

export const UNITS = Object.freeze({
	m: unit(LENGTH, 1),
	cm: unit(LENGTH, 1, 100),
	mm: unit(LENGTH, 1, 1000),
	km: unit(LENGTH, 1000),
	ft: unit(LENGTH, 3048, 10000),
	in: unit(LENGTH, 254, 10000),
	yd: unit(LENGTH, 9144, 10000),
	m2: unit(AREA, 1),
	ft2: unit(AREA, 9290304, 100000000),
	kg: unit(MASS, 1),
	g: unit(MASS, 1, 1000),
	t: unit(MASS, 1000),
	lb: unit(MASS, 45359237, 100000000),
	N: unit(FORCE, 1),
	kN: unit(FORCE, 1000),
	lbf: unit(FORCE, POUND_FORCE),
	kgf: unit(FORCE, 980665, 100000),
	s: unit(TIME, 1),
	ms: unit(TIME, 1, 1000),
	min: unit(TIME, 60),
	'm/s': unit(SPEED, 1),
	'km/h': unit(SPEED, 5, 18),
	'ft/s': unit(SPEED, 3048, 10000),
	mph: unit(SPEED, 44704, 100000),
	'm/s2': unit(ACCELERATION, 1),
	'ft/s2': unit(ACCELERATION, 3048, 10000),
	/** Multiples of standard gravity, as deceleration limits are printed ("10 g"). */
	gn: unit(ACCELERATION, 980665, 100000),
	J: unit(ENERGY, 1),
	kJ: unit(ENERGY, 1000),
	ftlbf: unit(ENERGY, FOOT_POUND),
	'N/m': unit(STIFFNESS, 1),
	'kN/m': unit(STIFFNESS, 1000),
	'lbf/ft': unit(STIFFNESS, POUND_FORCE * 10000, 3048),
	'1': unit(RATIO, 1),
	'%': unit(RATIO, 1, 100)
});

export type UnitId = keyof typeof UNITS;

/** Every unit's id, in the order of the table. */
export const UNIT_IDS: readonly UnitId[] = Object.freeze(Object.keys(UNITS).filter(isUnitId));

/** Whether a string names a unit of the table, by its exact id. */
export function isUnitId(text: string): text is UnitId {
	return Object.hasOwn(UNITS, text);
}

/** `value` in `of` as an SI value (m, kg, s, N, …). */
export function toSI(value: number, of: UnitId): number {
	const { times, over } = UNITS[of];
	return (value * times) / over;
}

/** An SI value in units of `to`. */
export function fromSI(si: number, to: UnitId): number {
	const { times, over } = UNITS[to];
	return (si * over) / times;
}

/** What kind of thing the unit measures. */
export function dimensionOf(of: UnitId): Dimension {
	return UNITS[of].dimension;
}

/** All units of a dimension, in the order of the table; empty for one that has none. */
export function unitsOf(dimension: Dimension): readonly UnitId[] {
	return UNIT_IDS.filter((id) => sameDimension(UNITS[id].dimension, dimension));
}
