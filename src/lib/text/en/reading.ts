/** Entries that cannot be read, or can be read in two ways. Neither is a wrong answer. */
import type { QuestionReason, UnreadableReason } from '#lib/quantity/index.ts';

/** `part`: the piece of the entry that is meant. `unit`: the unit asked for. `example`: a good entry. */
export interface UnreadableParts {
	readonly part: string;
	readonly unit: string;
	readonly example: string;
}

export const questions: Readonly<Record<QuestionReason, (p: { readonly first: string; readonly second: string }) => string>> = {
	'thousands-or-decimal': ({ first, second }) => `Is this ${first} or ${second}?`,
	'feet-inches-or-decimal': ({ first, second }) => `Is this ${first} or ${second}?`,
	'centimetres-or-decimal': ({ first, second }) => `Is this ${first} or ${second}?`
};

export const unreadable: Readonly<Record<UnreadableReason, (p: UnreadableParts) => string>> = {
	empty: ({ example }) => `Write a number here, such as ${example}.`,
	'too-long': ({ example }) => `This is too long for a number. Write something like ${example}.`,
	'no-number': ({ example }) => `There is no number in this. Write something like ${example}.`,
	'text-before-number': ({ part, example }) => `Leave out “${part}” before the number. Write something like ${example}.`,
	'malformed-number': ({ part, example }) => `“${part}” cannot be read as a number. Write something like ${example}.`,
	'two-numbers': ({ part, example }) => `“${part}” holds two numbers. Write one, such as ${example}.`,
	calculation: ({ part, example }) => `“${part}” is a sum. Work it out and write the result, such as ${example}.`,
	'unknown-unit': ({ part, unit }) => `“${part}” is no unit that is known here. The field counts in ${unit}.`,
	'wrong-dimension': ({ part, unit }) => `“${part}” measures something else. The field counts in ${unit}.`,
	'not-finite': ({ example }) => `This is no number one could measure. Write something like ${example}.`
};

export const reading = {
	/** What was understood, under the field. */
	echo: ({ value }: { value: string }) => `You entered ${value}.`,
	notCounted: 'This is not counted as wrong.',
	unitIs: ({ unit }: { unit: string }) => `in ${unit}`,
	choose: 'Which one do you mean?'
};
