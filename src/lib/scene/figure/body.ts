/**
 * Measures of the figure, for a stature of 1.85 m: plain of gender and trade. Own proportions in the range
 * of published body measures (common practice, no source). Other statures scale. Lengths m, angles degrees.
 */
export const STATURE = 1.85;
export const HIP = 0.98;
/** Hip joint to the height of the shoulder joint, along the torso. */
export const SHOULDER = 0.53;
/** Hip to the bearing top of the D-ring along the torso, standing. */
export const D_RING = 0.52;
/** How far the D-ring stands behind the line hip to shoulder. */
export const D_RING_BACK = 0.14;
/** The plate lies this far below the bearing top. */
export const PLATE_DROP = 0.07;
export const THIGH = 0.455;
export const SHIN = 0.445;
export const ANKLE = 0.08;
export const UPPER_ARM = 0.325;
export const FOREARM = 0.275;
export const HAND = 0.145;

/** A place in a body frame: u forward, v up. */
export interface Spot {
	readonly u: number;
	readonly v: number;
}

export function spot(u: number, v: number): Spot {
	return { u, v };
}

const RADIAN = Math.PI / 180;

/** `s` turned forward (head over towards the front) by `degrees`. */
export function turn(s: Spot, degrees: number): Spot {
	const sin = Math.sin(degrees * RADIAN);
	const cos = Math.cos(degrees * RADIAN);
	return { u: s.u * cos + s.v * sin, v: -s.u * sin + s.v * cos };
}

export function add(a: Spot, b: Spot): Spot {
	return { u: a.u + b.u, v: a.v + b.v };
}

export function times(a: Spot, k: number): Spot {
	return { u: a.u * k, v: a.v * k };
}

/** A limb of length `l` that hangs down at 0°, points forward at 90° and up at 180°. */
export function limb(l: number, degrees: number): Spot {
	return { u: l * Math.sin(degrees * RADIAN), v: -l * Math.cos(degrees * RADIAN) };
}

/** The boot about the ankle joint, closed. */
export const BOOT: readonly Spot[] = [
	spot(-0.058, 0.085),
	spot(-0.062, 0.02),
	spot(-0.082, -0.03),
	spot(-0.082, -0.08),
	spot(0.186, -0.08),
	spot(0.196, -0.058),
	spot(0.178, -0.03),
	spot(0.12, -0.004),
	spot(0.068, 0.03),
	spot(0.058, 0.085)
];

/** How far the lowest point of a boot pitched toe-down by `degrees` lies below the ankle. */
export function bootDrop(degrees: number, k: number): number {
	let low = 0;
	for (const s of BOOT) low = Math.min(low, turn(s, degrees).v);
	return -low * k;
}
