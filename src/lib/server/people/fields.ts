import * as z from 'zod';
import { unaccented } from '../records/folded.ts';
import { LONGEST_CODE, readCode } from './code.ts';

/** Longest entries, characters. @reason longer than any name, number or place that people have; short enough to store and show. */
export const LONGEST = { name: 200, number: 40, code: LONGEST_CODE, place: 200, pin: 64 } as const;

/** What can be wrong with an entry: keys of the catalogue. */
export type FieldProblem = 'missing' | 'too-long' | 'not-a-name' | 'not-a-number';

/** Problems by the field's name. */
export type FieldProblems = Readonly<Record<string, string>>;

/** Control characters, and marks that turn the direction of what stands behind them. Joiners of letters stay. */
const UNSEEN = /[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** @returns an entry as it is kept: one form of each letter, no unseen marks, single spaces. */
export function tidy(text: string): string {
	return text.normalize('NFC').replace(/\s+/gu, ' ').replace(UNSEEN, '').trim();
}

/** @returns a personal number as it is compared and kept: capital letters, no spaces. */
export function tidyNumber(text: string): string {
	return text.normalize('NFKC').replace(UNSEEN, '').replace(/\s+/gu, '').toUpperCase();
}

/**
 * @returns whether two entries are one name: the same words in any order. Capitals, accents and what stands
 * between the words do not count.
 */
export function sameName(one: string, other: string): boolean {
	return nameKey(one) === nameKey(other);
}

/** @returns what all ways of writing one name have in common, as `sameName` has it: its words in the order of the alphabet. */
export function nameKey(name: string): string {
	const words = unaccented(name)
		.split(/[^\p{L}\p{N}]+/u)
		.filter((word) => word !== '');
	return words.length === 0 ? tidy(name) : words.sort().join(' ');
}

/** A text of a form, tidied; the messages are keys of the catalogue. */
function entry(longest: number, tidied: (text: string) => string) {
	return z
		.string({ error: 'missing' satisfies FieldProblem })
		// Far too long is not looked at: tidying it would cost.
		.max(longest * 4, { error: 'too-long' satisfies FieldProblem, abort: true })
		.transform(tidied)
		.pipe(z.string().min(1, { error: 'missing' satisfies FieldProblem }).max(longest, { error: 'too-long' satisfies FieldProblem }));
}

/** Entries of forms by what they are. */
export const field = {
	/** A person's or a crew's name: anything with a letter or a digit. */
	name: entry(LONGEST.name, tidy).refine((name) => /[\p{L}\p{N}]/u.test(name), { error: 'not-a-name' satisfies FieldProblem }),
	/** A personal number: letters, digits and what is written between them. */
	number: entry(LONGEST.number, tidyNumber).refine((number) => /^[\p{L}\p{N}][\p{L}\p{N}\p{M}._/#+-]*$/u.test(number), {
		error: 'not-a-number' satisfies FieldProblem
	}),
	/** A crew's join code: as it was meant, however it was typed. */
	code: entry(LONGEST.code, readCode),
	/** A place, or how somebody was identified. */
	place: entry(LONGEST.place, tidy),
	/** An id of something on the page. */
	id: z.string({ error: 'missing' satisfies FieldProblem }).max(64, { error: 'missing' satisfies FieldProblem }),
	/** Not tidied: what is secret is taken as typed. */
	secret: z
		.string({ error: 'missing' satisfies FieldProblem })
		.min(1, { error: 'missing' satisfies FieldProblem })
		.max(LONGEST.pin, { error: 'too-long' satisfies FieldProblem })
} as const;

/** What came of reading a form. */
export type FormResult<Value> =
	| { readonly kind: 'read'; readonly value: Value }
	| { readonly kind: 'refused'; readonly problems: FieldProblems };

/** Reads the fields of a form. @returns the entries, or what is wrong, for each field one problem. */
export function readForm<Value>(form: FormData, schema: z.ZodType<Value>): FormResult<Value> {
	const parsed = schema.safeParse(Object.fromEntries(form));
	if (parsed.success) return { kind: 'read', value: parsed.data };
	const problems: Record<string, string> = {};
	for (const issue of parsed.error.issues) problems[String(issue.path[0] ?? '')] ??= issue.message;
	return { kind: 'refused', problems };
}

/** @returns what was typed into some fields, to stand there again; cut, so that nothing endless comes back. */
export function typedIn(form: FormData, names: readonly string[]): Readonly<Record<string, string>> {
	return Object.fromEntries(
		names.map((name) => {
			const value = form.get(name);
			return [name, typeof value === 'string' ? value.slice(0, LONGEST.name * 4) : ''];
		})
	);
}
