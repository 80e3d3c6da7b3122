import type { Messages } from '#lib/text/index.ts';
import { problemText as inCatalogue } from './problem-text.ts';

/** What a form action says of a form that it did not take. */
export interface Told {
	/** By the field's name: what is wrong, as a key of the catalogue. */
	readonly problems: Readonly<Record<string, string>>;
}

/** @returns what is wrong with a field, in words; undefined where nothing is. */
export function problemText(m: Messages, told: Told | null | undefined, name: string): string | undefined {
	return inCatalogue(told?.problems[name], m.people.problems);
}
