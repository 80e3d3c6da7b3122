/**
 * The body below the D-ring: kinematics that make the picture end where the required clearance ends.
 *
 * The soles hang straight below the D-ring, at first dRingNow + standing place above the walking surface,
 * at the end dRingHeight + stretch below the D-ring. In between, with `run` the D-ring's travel in free fall
 * and along the elongation:
 * - slide and stretch grow as the square of the share w of the elongation that has run out: s w². They begin
 *   without a jerk when the line is tight and end with the elongation.
 * - legs straighten by δ = dRingHeight − dRingNow as q(2 − q), q = run/k, at most 1: without a jerk at both
 *   ends. k is the free fall, or, where that is shorter than δ, as much of δ as free fall and elongation give.
 * Both only ever grow. Neither takes energy: that is the planning case, which counts no help from the body.
 */
import type { Fall } from './simulate-fall.ts';
import type { Motion } from './simulate-track.ts';

export interface Body {
	/** D-ring down to the soles, m. */
	readonly below: number;
	/** D-ring slide and harness stretch so far, m, and their rate, m/s. */
	readonly slid: number;
	readonly sliding: number;
}

/** @returns the body below a D-ring that moves so. */
export function bodyAt(fall: Fall, { run, deployed, deploying }: Motion): Body {
	const { elongation, stretch, dRingHeight, dRingNow, freeFall } = fall;
	const share = deployed / elongation;
	const slid = stretch * share * share;
	const sliding = (2 * stretch * share * deploying) / elongation;
	return { below: dRingNow + straightened(dRingHeight - dRingNow, run, freeFall, elongation) + slid, slid, sliding };
}

function straightened(by: number, run: number, freeFall: number, elongation: number): number {
	if (!(by > 0)) return 0;
	const over = freeFall >= by ? freeFall : Math.min(by, freeFall + elongation);
	const q = Math.min(1, run / over);
	return by * q * (2 - q);
}
