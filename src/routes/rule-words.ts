/** Pass rules in words. */
import type { Messages } from '#lib/text/index.ts';

/** @returns what a shipped rule, or one made from it, is called. */
export function ruleName(m: Messages, of: { readonly base: string; readonly own: boolean }): string {
	const name = Object.entries(m.people.passRules).find(([id]) => id === of.base)?.[1] ?? of.base;
	return of.own ? m.passRules.ownName({ from: name }) : name;
}

/** Decimals of a count of 100 workers, and the smallest count that they can say. */
const DECIMALS = 1;
const LEAST = 0.1;

/** @returns how many of 100 workers: "3.8", "fewer than 0.1". */
export function ofHundred(m: Messages, language: 'en' | 'es', probability: number): string {
	const number = new Intl.NumberFormat(language, { maximumFractionDigits: DECIMALS });
	const count = 100 * probability;
	return count > 0 && count < LEAST ? m.passRules.fewer({ than: number.format(LEAST) }) : number.format(count);
}
