/** Outcomes for the tests of the skill estimate. */
import { NOTHING_KNOWN, observe, type Credit, type Difficulty, type Mastery, type Outcome } from '#lib/mastery/index.ts';

/** The cell that these outcomes credit unless told otherwise. */
export const CELL = 'free-fall';

/** @returns one problem worked alone in one cell, right unless told otherwise. */
export function outcome(of: Partial<Outcome> & { readonly right?: boolean; readonly cell?: string } = {}): Outcome {
	const { right = true, cell = CELL, ...rest } = of;
	const credits: readonly Credit[] = [{ cell, skills: ['subtract-heights'], right }];
	return { task: 'a', kind: 'a', difficulty: 'easy', day: '2026-03-02', aided: false, credits, ...rest };
}

/** @returns what is known after these problems. */
export function after(outcomes: readonly Outcome[], before: Mastery = NOTHING_KNOWN): Mastery {
	return outcomes.reduce(observe, before);
}

/** @returns as many problems as signs: `e m h` right at that difficulty, `E M H` wrong. */
export function tries(signs: string, of: Partial<Outcome> & { readonly cell?: string } = {}): readonly Outcome[] {
	const difficulties: Readonly<Record<string, Difficulty>> = { e: 'easy', m: 'middle', h: 'hard' };
	return [...signs].map((sign) => {
		const difficulty = difficulties[sign.toLowerCase()];
		if (difficulty === undefined) throw new RangeError(`no difficulty begins with ${sign}`);
		return outcome({ difficulty, right: sign === sign.toLowerCase(), ...of });
	});
}
