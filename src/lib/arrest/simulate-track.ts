/** How the D-ring moves in the planning case: what the vertical and the swinging fall have in common. */

/** What the fall is doing. `at-rest` is hanging still, straight below the anchorage. */
export type FallPhase = 'free-fall' | 'stopping' | 'swinging' | 'at-rest';

/** The D-ring at one instant, seen from the anchorage. */
export interface Motion {
	/** Horizontal place from the plumb line of the anchorage, positive to the worker's side, m. */
	readonly x: number;
	/** Below the anchorage, m. */
	readonly depth: number;
	/** Of the D-ring, m/s; `down` is positive downwards. */
	readonly velocity: { readonly x: number; readonly down: number };
	/** D-ring travel so far in free fall and along the elongation, m. Never shrinks. */
	readonly run: number;
	/** Elongation run out so far, m, and its rate, m/s. */
	readonly deployed: number;
	readonly deploying: number;
	/** Force of the line on the D-ring over the mass that falls, m/s². */
	readonly pull: number;
	readonly phase: FallPhase;
}

/** The whole motion of the D-ring: a pure function of time between its instants, s. */
export interface Track {
	/** The line is tight. */
	readonly tight: number;
	/** The elongation has run out to its planned length. */
	readonly done: number;
	/** Straight below the anchorage, line and elongation at full length. */
	readonly lowest: number;
	/** At rest, or at the first stop of the swing. */
	readonly end: number;
	/** @param t from 0 to `end`, s. */
	readonly at: (t: number) => Motion;
}

/**
 * Halvings of a bisection: an interval of a second is narrowed to far less than the last digit of a time.
 * @reason a double has 53 bits; a few more halvings cost nothing and leave no remainder
 */
const HALVINGS = 60;

/**
 * @param holds false at `from`, true at `to`, and changing once in between.
 * @returns the smallest place found at which it holds; always one at which it does.
 */
export function firstWhere(from: number, to: number, holds: (at: number) => boolean): number {
	let below = from;
	let above = to;
	for (let i = 0; i < HALVINGS; i += 1) {
		const middle = (below + above) / 2;
		if (middle <= below || middle >= above) break;
		if (holds(middle)) above = middle;
		else below = middle;
	}
	return above;
}
