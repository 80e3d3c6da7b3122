/**
 * From joints to outlines. Limbs are tapered capsules with round joints; a group is outlined as one (its
 * members are first stroked, then filled). Everything in metres in the frame of the D-ring: u forward, v up.
 */
import { add, BOOT, limb, spot, times, turn, type Spot } from './body.ts';
import type { Arm, Leg, Pose } from './pose.ts';

export type Outline = readonly Spot[];

export interface FigureGroup {
	readonly id: 'far-arm' | 'far-leg' | 'body' | 'head' | 'near-arm';
	readonly far: boolean;
	readonly outlines: readonly Outline[];
	/** Thin lines over the fill: cuffs, boot tops, brow and nose. */
	readonly details: readonly Outline[];
}

export interface FigureShape {
	readonly groups: readonly FigureGroup[];
	readonly helmet: Outline;
	readonly brim: Outline;
	readonly helmetDetails: readonly Outline[];
	/** Straps in solid ink. `over` lies over the near arm's shoulder. */
	readonly straps: readonly Outline[];
	readonly plate: Spot;
	/** Where the lanyard bears. */
	readonly ring: Spot;
	/** Every outline point, for boxes. */
	readonly extent: readonly Spot[];
}

/** A capsule from a (radius ra) to b (radius rb), as a polygon. */
function capsule(a: Spot, ra: number, b: Spot, rb: number): Outline {
	const du = b.u - a.u;
	const dv = b.v - a.v;
	const d = Math.max(1e-6, Math.sqrt(du * du + dv * dv));
	const base = Math.atan2(dv, du);
	const tilt = Math.acos(Math.max(-1, Math.min(1, (ra - rb) / d)));
	const points: Spot[] = [];
	const steps = 7;
	for (let i = 0; i <= steps; i++) {
		const angle = base - tilt + (2 * tilt * i) / steps;
		points.push(spot(b.u + rb * Math.cos(angle), b.v + rb * Math.sin(angle)));
	}
	for (let i = 0; i <= steps; i++) {
		const angle = base + tilt + ((2 * Math.PI - 2 * tilt) * i) / steps;
		points.push(spot(a.u + ra * Math.cos(angle), a.v + ra * Math.sin(angle)));
	}
	return points;
}

/** A smooth curve through points (Catmull-Rom, four samples a span). */
export function smooth(points: readonly Spot[], closed: boolean): Outline {
	const n = points.length;
	const at = (i: number): Spot => {
		const j = closed ? (i + n) % n : Math.max(0, Math.min(n - 1, i));
		return points[j] ?? spot(0, 0);
	};
	const out: Spot[] = [];
	const spans = closed ? n : n - 1;
	for (let i = 0; i < spans; i++) {
		const [p0, p1, p2, p3] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
		for (let s = 0; s < 4; s++) {
			const t = s / 4;
			const f = (a: number, b: number, c: number, e: number): number =>
				0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - e) * t * t + (3 * b - a - 3 * c + e) * t * t * t);
			out.push(spot(f(p0.u, p1.u, p2.u, p3.u), f(p0.v, p1.v, p2.v, p3.v)));
		}
	}
	if (!closed) out.push(at(n - 1));
	return out;
}

const TORSO: readonly Spot[] = [
	spot(-0.052, 0.575),
	spot(-0.098, 0.51),
	spot(-0.118, 0.42),
	spot(-0.112, 0.31),
	spot(-0.082, 0.2),
	spot(-0.094, 0.1),
	spot(-0.122, 0.01),
	spot(-0.112, -0.07),
	spot(-0.03, -0.1),
	spot(0.06, -0.075),
	spot(0.09, 0.02),
	spot(0.1, 0.13),
	spot(0.108, 0.25),
	spot(0.118, 0.37),
	spot(0.096, 0.48),
	spot(0.048, 0.555)
];

function arm(a: Arm, k: number): { outlines: Outline[]; details: Outline[] } {
	const palm = add(a.wrist, times(add(a.finger, times(a.wrist, -1)), 0.55));
	const across = add(a.wrist, times(add(a.elbow, times(a.wrist, -1)), 0.16));
	return {
		outlines: [
			capsule(a.shoulder, 0.066 * k, a.elbow, 0.047 * k),
			capsule(a.elbow, 0.047 * k, a.wrist, 0.031 * k),
			capsule(a.wrist, 0.032 * k, palm, 0.039 * k),
			capsule(palm, 0.039 * k, a.finger, 0.02 * k)
		],
		details: [cuff(a.elbow, across, 0.034 * k)]
	};
}

/** A short line across a limb that runs from a to b, at b. */
function cuff(a: Spot, b: Spot, half: number): Outline {
	const du = b.u - a.u;
	const dv = b.v - a.v;
	const d = Math.max(1e-6, Math.sqrt(du * du + dv * dv));
	return [
		spot(b.u - (dv * half) / d, b.v + (du * half) / d),
		spot(b.u + (dv * half) / d, b.v - (du * half) / d)
	];
}

function leg(l: Leg, k: number): { outlines: Outline[]; details: Outline[] } {
	const boot = BOOT.map((s) => add(l.ankle, turn(times(s, k), l.pitch)));
	const welt = [spot(-0.08, -0.055), spot(0.192, -0.055)].map((s) => add(l.ankle, turn(times(s, k), l.pitch)));
	const hem = add(l.ankle, times(add(l.knee, times(l.ankle, -1)), 0.17));
	return {
		outlines: [
			capsule(l.hip, 0.098 * k, l.knee, 0.062 * k),
			capsule(l.knee, 0.062 * k, l.ankle, 0.047 * k),
			boot
		],
		details: [welt, cuff(l.knee, hem, 0.052 * k)]
	};
}

/** Outlines of a solved pose. */
export function figureShape(pose: Pose): FigureShape {
	const { k, lean, hip } = pose;
	const torso = (s: Spot): Spot => add(hip, turn(times(s, k), lean));
	const neck = torso(spot(0.004, 0.56));
	const headTurn = lean * 0.45 + pose.nod;
	const head = (s: Spot): Spot => add(neck, turn(times(s, k), headTurn));
	const near = { arm: arm(pose.near.arm, k), leg: leg(pose.near.leg, k) };
	const far = { arm: arm(pose.far.arm, k), leg: leg(pose.far.leg, k) };

	const skull = smooth(
		[
			spot(-0.068, 0.1),
			spot(-0.094, 0.17),
			spot(-0.088, 0.25),
			spot(-0.03, 0.3),
			spot(0.05, 0.29),
			spot(0.094, 0.235)
		],
		false
	).map(head);
	// Brow, nose, chin: no face beyond.
	const profile = [
		spot(0.094, 0.215),
		spot(0.098, 0.188),
		spot(0.121, 0.15),
		spot(0.101, 0.141),
		spot(0.101, 0.108),
		spot(0.09, 0.072),
		spot(0.05, 0.058),
		spot(0.0, 0.078)
	].map(head);
	const helmet = smooth(
		[
			spot(-0.112, 0.198),
			spot(-0.116, 0.255),
			spot(-0.078, 0.325),
			spot(0.0, 0.352),
			spot(0.072, 0.318),
			spot(0.108, 0.252),
			spot(0.112, 0.214)
		],
		false
	).map(head);
	const brim = [spot(0.176, 0.204), spot(0.158, 0.214), spot(0.108, 0.228), spot(0.02, 0.218), spot(0.02, 0.205), spot(0.108, 0.21)].map(head);

	const ring = spot(0, 0);
	const plate = pose.plate;
	const over = torso(spot(-0.01, 0.578));
	const behind = torso(spot(-0.078, 0.545));
	const slidUp = pose.dRingAlong - 0.07 * k > 0.53 * k;
	const shoulderStrap = slidUp
		? [plate, torso(spot(-0.05, 0.572)), torso(spot(0.03, 0.562)), torso(spot(0.088, 0.485)), torso(spot(0.108, 0.37))]
		: [plate, behind, over, torso(spot(0.05, 0.548)), torso(spot(0.09, 0.475)), torso(spot(0.108, 0.37))];
	const straps: Outline[] = [
		smooth([...shoulderStrap, torso(spot(0.1, 0.25)), torso(spot(0.093, 0.13)), torso(spot(0.078, 0.02))], false),
		smooth(
			[
				plate,
				torso(spot(-0.112, 0.34)),
				torso(spot(-0.088, 0.23)),
				torso(spot(-0.084, 0.13)),
				torso(spot(-0.108, 0.03))
			],
			false
		),
		// Hip strap, under the seat, and the thigh loop.
		smooth([torso(spot(0.084, 0.06)), torso(spot(0.0, 0.0)), torso(spot(-0.108, -0.03))], false),
		thighLoop(pose)
	];

	const groups: FigureGroup[] = [
		{ id: 'far-arm', far: true, outlines: far.arm.outlines, details: far.arm.details },
		{ id: 'far-leg', far: true, outlines: far.leg.outlines, details: far.leg.details },
		{
			id: 'head',
			far: false,
			outlines: [[...skull, ...profile], capsule(neck, 0.058 * k, head(spot(-0.008, 0.14)), 0.056 * k)],
			details: [[spot(0.03, 0.205), spot(0.06, 0.06)].map(head)]
		},
		{
			id: 'body',
			far: false,
			outlines: [smooth(TORSO, true).map(torso), ...near.leg.outlines],
			details: near.leg.details
		},
		{ id: 'near-arm', far: false, outlines: near.arm.outlines, details: near.arm.details }
	];
	const extent = [
		...groups.flatMap((g) => g.outlines.flat()),
		...helmet,
		...brim,
		plate,
		ring
	];
	return {
		groups,
		helmet,
		brim,
		helmetDetails: [smooth([spot(-0.03, 0.334), spot(-0.012, 0.28), spot(-0.03, 0.215)], false).map(head)],
		straps,
		plate,
		ring,
		extent
	};
}

/** The loop round the upper thigh of the near leg, square to it. */
function thighLoop(pose: Pose): Outline {
	const { hip, knee } = pose.near.leg;
	const k = pose.k;
	const du = knee.u - hip.u;
	const dv = knee.v - hip.v;
	const angle = (Math.atan2(du, -dv) * 180) / Math.PI;
	const centre = add(hip, limb(0.15 * k, angle));
	const half = 0.088 * k;
	const rise = 0.026 * k;
	const across = (s: number, up: number): Spot => add(centre, turn(spot(s * half, up), -angle));
	return smooth([across(1, rise), across(0.1, -rise * 0.9), across(-1, -rise * 1.2)], false);
}
