/**
 * How likely it is that somebody has a skill: Bayesian knowledge tracing, one number for each cell and one for
 * each finer skill.
 */

/** How the estimate moves. */
export interface Tracing {
	/** How likely the skill is there before anything is seen. */
	readonly start: number;
	/** How likely a problem worked alone teaches a skill that was not there. */
	readonly learn: number;
	/** How likely an answer is right without the skill. */
	readonly guess: number;
	/** How likely an answer is wrong with the skill. */
	readonly slip: number;
}

/**
 * The numbers in use. The estimate is Corbett and Anderson's (1994), the numbers are our own. A blind guess hits a
 * typed number in at most 2 of 100 tries; `guess` allows for the short lists of a picture too. A decision would be
 * hit in 50 of 100 and therefore is evidence only when the numbers it rests on are right.
 * @source reference/learning-and-records.md 5.1; form of the model: Corbett and Anderson 1994, from memory
 */
export const TRACING: Tracing = Object.freeze({ start: 0.3, learn: 0.15, guess: 0.05, slip: 0.08 });

/**
 * What one answer says, before anything is learnt from it.
 * @param p how likely the skill was there.
 * @param right whether the answer was right.
 * @returns how likely the skill was there, now that the answer is known: not lower after a right one, not higher after
 * a wrong one.
 */
export function weigh(p: number, right: boolean): number {
	const withSkill = right ? 1 - TRACING.slip : TRACING.slip;
	const without = right ? TRACING.guess : 1 - TRACING.guess;
	return (p * withSkill) / (p * withSkill + (1 - p) * without);
}

/**
 * @param p how likely the skill was there when the problem was worked.
 * @returns how likely it is there afterwards, since a problem worked alone may teach it.
 */
export function learnt(p: number): number {
	return p + (1 - p) * TRACING.learn;
}
