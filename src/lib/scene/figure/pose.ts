/**
 * A pose is solved, not placed: the D-ring is where the plan or the simulation has it, and the soles are
 * exactly as far below it as they say. Torso lean, arms and feet follow the stance; the legs take up the rest.
 */
import {
	add,
	ANKLE,
	bootDrop,
	D_RING,
	D_RING_BACK,
	FOREARM,
	HAND,
	HIP,
	limb,
	PLATE_DROP,
	SHIN,
	SHOULDER,
	type Spot,
	spot,
	STATURE,
	THIGH,
	times,
	turn,
	UPPER_ARM
} from './body.ts';

/** How the body is held, free of where it is. Angles in degrees, lengths in parts of the stature scale. */
export interface Stance {
	/** Torso tilted forward (+) or back (−). */
	readonly lean: number;
	readonly nod: number;
	readonly nearArm: readonly [upper: number, fore: number];
	readonly farArm: readonly [upper: number, fore: number];
	/** Where the legs would like to point: 0 straight down, + forward. */
	readonly nearLeg: number;
	readonly farLeg: number;
	readonly nearPitch: number;
	readonly farPitch: number;
	/** How far the far foot hangs higher than the near one, m. */
	readonly farLift: number;
	/** Hip lower than standing straight, m: the softness of the knees. */
	readonly bend: number;
}

/** Working at something in front, at shoulder height and above. */
export const REACHING: Stance = {
	lean: 4,
	nod: 0,
	nearArm: [104, 148],
	farArm: [122, 112],
	nearLeg: 1,
	farLeg: 9,
	nearPitch: 0,
	farPitch: 0,
	farLift: 0,
	bend: 0.012
};

/** Working at something at waist height, seen along the edge. */
export const WORKING: Stance = {
	lean: 4,
	nod: 8,
	nearArm: [30, 78],
	farArm: [44, 88],
	nearLeg: -1,
	farLeg: 8,
	nearPitch: 0,
	farPitch: 0,
	farLift: 0,
	bend: 0.012
};

/** Working at something low, on the knees. */
export const KNEELING: Stance = {
	lean: 20,
	nod: -4,
	nearArm: [44, 72],
	farArm: [58, 92],
	nearLeg: 0,
	farLeg: 0,
	nearPitch: 62,
	farPitch: 62,
	farLift: 0,
	bend: 0
};

/** Gone over the edge backwards, nothing holds. */
export const FALLING: Stance = {
	lean: -15,
	nod: 10,
	nearArm: [150, 168],
	farArm: [96, 132],
	nearLeg: 20,
	farLeg: 30,
	nearPitch: 46,
	farPitch: 50,
	farLift: 0.06,
	bend: 0.05
};

/** Held by the D-ring on the back. */
export const HANGING: Stance = {
	lean: 13,
	nod: 14,
	nearArm: [60, 84],
	farArm: [76, 98],
	nearLeg: 13,
	farLeg: 22,
	nearPitch: 44,
	farPitch: 40,
	farLift: 0.09,
	bend: 0.1
};

/** Soles set down on something while the line still holds a part. */
export const LANDED: Stance = {
	...HANGING,
	lean: 16,
	nod: 18,
	nearLeg: 16,
	farLeg: 26,
	nearPitch: 10,
	farPitch: 14,
	farLift: 0.01
};

/** Between two stances; `share` 0 gives a, 1 gives b. */
export function mix(a: Stance, b: Stance, share: number): Stance {
	const m = (p: number, q: number): number => p + (q - p) * Math.max(0, Math.min(1, share));
	return {
		lean: m(a.lean, b.lean),
		nod: m(a.nod, b.nod),
		nearArm: [m(a.nearArm[0], b.nearArm[0]), m(a.nearArm[1], b.nearArm[1])],
		farArm: [m(a.farArm[0], b.farArm[0]), m(a.farArm[1], b.farArm[1])],
		nearLeg: m(a.nearLeg, b.nearLeg),
		farLeg: m(a.farLeg, b.farLeg),
		nearPitch: m(a.nearPitch, b.nearPitch),
		farPitch: m(a.farPitch, b.farPitch),
		farLift: m(a.farLift, b.farLift),
		bend: m(a.bend, b.bend)
	};
}

export interface PoseRequest {
	readonly stature: number;
	/** D-ring above the soles, standing straight, m. */
	readonly dRingHeight: number;
	/** Soles below the D-ring now, m: the height in this posture plus the slide so far. */
	readonly soleDrop: number;
	/** Slide of the D-ring up the back so far, m. */
	readonly slid: number;
	readonly stance: Stance;
	readonly kneeling: boolean;
}

export interface Leg {
	readonly hip: Spot;
	readonly knee: Spot;
	readonly ankle: Spot;
	readonly pitch: number;
}

export interface Arm {
	readonly shoulder: Spot;
	readonly elbow: Spot;
	readonly wrist: Spot;
	readonly finger: Spot;
}

/** Joints in m from the bearing top of the D-ring; u forward, v up. */
export interface Pose {
	/** Drawn size against the figure of 1.85 m. */
	readonly k: number;
	readonly lean: number;
	readonly nod: number;
	readonly hip: Spot;
	readonly shoulder: Spot;
	readonly plate: Spot;
	/** D-ring along the torso above the hip, m, slide included. */
	readonly dRingAlong: number;
	readonly near: { readonly arm: Arm; readonly leg: Leg };
	readonly far: { readonly arm: Arm; readonly leg: Leg };
	readonly soleDrop: number;
}

function solveArm(shoulder: Spot, angles: readonly [number, number], k: number): Arm {
	const elbow = add(shoulder, limb(UPPER_ARM * k, angles[0]));
	const wrist = add(elbow, limb(FOREARM * k, angles[1]));
	return { shoulder, elbow, wrist, finger: add(wrist, limb(HAND * k, angles[1] + 8)) };
}

/** Knee, forward of the line hip to ankle, so that thigh and shin have their lengths. */
function solveKnee(hip: Spot, ankle: Spot, thigh: number, shin: number): Spot {
	const du = ankle.u - hip.u;
	const dv = ankle.v - hip.v;
	const d = Math.max(1e-6, Math.sqrt(du * du + dv * dv));
	const along = (thigh * thigh - shin * shin + d * d) / (2 * d);
	const out = Math.sqrt(Math.max(0, thigh * thigh - along * along));
	// Perpendicular to the leg, towards the front.
	return spot(hip.u + (du * along - dv * out) / d, hip.v + (dv * along + du * out) / d);
}

/** A leg whose ankle hangs `drop` below the hip, pointing as it likes as far as its length allows. */
function solveLeg(hip: Spot, drop: number, likes: number, pitch: number, k: number): Leg {
	const full = (THIGH + SHIN) * k;
	const reach = Math.sqrt(Math.max(0, full * full - drop * drop));
	const wanted = drop * Math.tan((likes * Math.PI) / 180);
	const ankle = spot(hip.u + Math.max(-reach, Math.min(reach, wanted)), hip.v - drop);
	return { hip, knee: solveKnee(hip, ankle, THIGH * k, SHIN * k), ankle, pitch };
}

function upright(request: PoseRequest, k: number): Pose | null {
	const { stance, soleDrop, slid, dRingHeight } = request;
	const back = D_RING_BACK * k;
	const atRest = dRingHeight - HIP * k;
	const bodyDrop = soleDrop - slid;
	for (let ease = 1; ease > -0.05; ease -= 0.1) {
		const lean = stance.lean * ease;
		const standing = bodyDrop >= dRingHeight - 0.004 && stance.nearPitch < 1;
		const bend = standing ? stance.bend * k : 0;
		// Standing: the knees decide where on the back the ring sits. Else: the ring stays, the knees give.
		const along0 = standing
			? (bodyDrop - HIP * k + bend - back * Math.sin((lean * Math.PI) / 180)) /
				Math.cos((lean * Math.PI) / 180)
			: atRest;
		const along = along0 + slid;
		const ring = turn(spot(-back, along), lean);
		const hip = times(ring, -1);
		const drop = soleDrop - ring.v;
		const nearDrop = drop - bootDrop(stance.nearPitch, k);
		const farDrop = drop - bootDrop(stance.farPitch, k) - stance.farLift * k;
		const full = (THIGH + SHIN) * k;
		if (nearDrop > full || farDrop > full || nearDrop < 0.12 * k) continue;
		const shoulder = add(hip, turn(spot(0, SHOULDER * k), lean));
		return {
			k,
			lean,
			nod: stance.nod,
			hip,
			shoulder,
			plate: add(hip, turn(spot(-back + 0.018 * k, along - PLATE_DROP * k), lean)),
			dRingAlong: along,
			near: {
				arm: solveArm(shoulder, stance.nearArm, k),
				leg: solveLeg(hip, nearDrop, stance.nearLeg, stance.nearPitch, k)
			},
			far: {
				arm: solveArm(shoulder, stance.farArm, k),
				leg: solveLeg(hip, farDrop, stance.farLeg, stance.farPitch, k)
			},
			soleDrop
		};
	}
	return null;
}

/** On both knees; sits back and leans over until the D-ring is as low as the plan says. */
function onKnees(request: PoseRequest, k: number): Pose | null {
	const back = D_RING_BACK * k;
	const along = request.dRingHeight - HIP * k;
	const kneeUp = 0.065 * k;
	const at = (share: number): { lean: number; sit: number; height: number } => {
		const lean = 4 + 72 * share;
		const sit = 4 + 66 * Math.min(1, share * 1.3);
		const hipUp = kneeUp + THIGH * k * Math.cos((sit * Math.PI) / 180);
		return { lean, sit, height: hipUp + turn(spot(-back, along), lean).v };
	};
	if (request.soleDrop > at(0).height + 0.02 || request.soleDrop < at(1).height) return null;
	let low = 0;
	let high = 1;
	for (let i = 0; i < 40; i++) {
		const mid = (low + high) / 2;
		if (at(mid).height > request.soleDrop) low = mid;
		else high = mid;
	}
	const { lean, sit } = at((low + high) / 2);
	const ring = turn(spot(-back, along), lean);
	const hip = times(ring, -1);
	const shoulder = add(hip, turn(spot(0, SHOULDER * k), lean));
	const ground = -request.soleDrop;
	const leg = (shift: number, pitch: number): Leg => {
		const knee = spot(hip.u + THIGH * k * Math.sin((sit * Math.PI) / 180) + shift, ground + kneeUp);
		// The shin lies back, the toes are under: the lowest point of the boot is on the ground.
		const ankleUp = bootDrop(pitch, k);
		const dv = ankleUp - kneeUp;
		const run = Math.sqrt(Math.max(0, SHIN * SHIN * k * k - dv * dv));
		return { hip, knee, ankle: spot(knee.u - run, ground + ankleUp), pitch };
	};
	return {
		k,
		lean,
		nod: request.stance.nod + lean * 0.25,
		hip,
		shoulder,
		plate: add(hip, turn(spot(-back + 0.018 * k, along - PLATE_DROP * k), lean)),
		dRingAlong: along,
		near: { arm: solveArm(shoulder, request.stance.nearArm, k), leg: leg(0, 64) },
		far: { arm: solveArm(shoulder, request.stance.farArm, k), leg: leg(0.05 * k, 60) },
		soleDrop: request.soleDrop
	};
}

/**
 * The joints for a request. The drawn size follows the stature; when the D-ring of the plan cannot lie on
 * the back of a figure of that stature, the figure gives way (it is drawn larger or smaller), never the plan.
 */
export function solvePose(request: PoseRequest): Pose {
	const wanted = request.stature / STATURE;
	const ring = request.dRingHeight / (HIP + D_RING);
	// Ring between the shoulder blades: from 0.42 to 0.60 of the torso frame.
	const least = request.dRingHeight / (HIP + 0.6);
	const most = request.dRingHeight / (HIP + 0.42);
	const first = Math.max(least, Math.min(most, wanted));
	for (const k of [first, ring, ring * 1.04, ring * 1.1, ring * 1.2]) {
		const kneeling = request.kneeling ? onKnees(request, k) : null;
		const pose = kneeling ?? upright(request, k);
		if (pose !== null) return pose;
	}
	// Lower than any crouch: lying forward is not drawn, so the figure is drawn small enough to fit.
	const k = request.soleDrop / (HIP + D_RING);
	const small = upright({ ...request, dRingHeight: request.soleDrop, slid: 0 }, k);
	if (small !== null) return small;
	throw new RangeError(`solvePose: no pose for a D-ring ${request.soleDrop} m above the soles`);
}

/** Height of the ankle joint over the sole of a flat boot. */
export const FLAT_ANKLE = ANKLE;
