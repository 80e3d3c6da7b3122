/**
 * The planning-case fall straight below the anchorage, piecewise in closed form.
 *
 * h free fall, x planned elongation, g gravity. The D-ring falls freely over h: drop = ½ g t², tight after
 * t₁ = √(2h/g) at v₁ = √(2gh). Then the absorber's force is constant and just so great that the D-ring stops
 * after exactly x: work balance m g (h + x) = F x, so F = m g (h + x)/x and the speed falls evenly by
 * c = F/m − g = g h/x, over the time v₁/c = 2x/v₁. (Elementary mechanics of even acceleration.)
 *
 * That stop takes for ever as h goes to nought. Hence the first e of the elongation opens without force, and
 * the force acts over x − e alone: c = g (h + e)/(x − e), with the least e for which c is a tenth of gravity.
 * e is nought as soon as h is at least a tenth of x.
 */
import { GRAVITY, type Fall } from './simulate-fall.ts';
import type { Motion, Track } from './simulate-track.ts';

/**
 * Least deceleration of a stop, in parts of gravity.
 * @reason keeps the picture of a fall with next to no free fall under two seconds; ordinary falls lie above it
 */
export const LEAST_DECELERATION = 0.1;

/** @returns the length of elongation that opens without force in a fall straight down, m; mostly nought. */
export function forcelessRun(freeFall: number, elongation: number): number {
	return Math.max(0, (LEAST_DECELERATION * elongation - freeFall) / (1 + LEAST_DECELERATION));
}

/** @returns the motion of the D-ring of a fall without offset. */
export function verticalTrack(fall: Fall): Track {
	const { freeFall: h, elongation: x, lineLength } = fall;
	const e = forcelessRun(h, x);
	const tight = Math.sqrt((2 * h) / GRAVITY);
	const braking = Math.sqrt((2 * (h + e)) / GRAVITY);
	const c = (GRAVITY * (h + e)) / (x - e);
	const done = braking + (GRAVITY * braking) / c;

	const at = (t: number): Motion => {
		if (t >= done) return motion(h + x, 0, GRAVITY, 'at-rest');
		if (t >= braking) {
			const left = done - t;
			return motion(h + x - 0.5 * c * left * left, c * left, GRAVITY + c, 'stopping');
		}
		return motion(0.5 * GRAVITY * t * t, GRAVITY * t, 0, t < tight ? 'free-fall' : 'stopping');
	};
	const motion = (drop: number, down: number, pull: number, phase: Motion['phase']): Motion => {
		const taut = phase !== 'free-fall';
		return {
			x: 0,
			depth: lineLength - h + drop,
			velocity: { x: 0, down },
			run: drop,
			deployed: taut ? Math.min(x, Math.max(0, drop - h)) : 0,
			deploying: taut ? down : 0,
			pull,
			phase
		};
	};
	return { tight, done, lowest: done, end: done, at };
}
