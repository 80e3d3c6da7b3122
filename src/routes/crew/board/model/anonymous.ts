/** A problem that names nobody: for a screen that a whole class sees. */
import { problemOf, type Problem } from '#lib/scenario/index.ts';

/**
 * @param person a neutral word in place of the drawn name: "the worker".
 * @returns the same problem with that word.
 */
export function withoutName(problem: Problem, person: string): Problem {
	return { ...problemOf(problem.scenario, { ...problem.drawn, person }, problem.seed, problem.acceptedTry), drawVersion: problem.drawVersion };
}

/** @returns a text whose sentences begin with a capital, also where a word in place of a name stands first. */
export function sentences(text: string): string {
	return text.replace(/(^|[.!?]\s+)([¿¡«“"]?)(\p{Ll})/gu, (_, before: string, mark: string, letter: string) => `${before}${mark}${letter.toUpperCase()}`);
}
