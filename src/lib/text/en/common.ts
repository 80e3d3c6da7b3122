/** Words that stand everywhere. */
import type { TurnedDown } from '#lib/scenario/index.ts';

export const common = {
	name: 'Underfoot',
	yes: 'Yes',
	no: 'No',
	notKnown: 'not known',
	none: 'none',
	/** A list in a sentence: "clearance, rescue and free fall". */
	list: (items: readonly string[]) =>
		items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1] ?? ''}`,
	pair: ({ first, second }: { first: string; second: string }) => `${first} (${second})`,
	unit: 'Unit',
	/** Beside a text of a language that nobody entitled has reviewed. */
	draftLanguage: 'This translation is a draft. No bilingual competent person has reviewed it yet.',
	language: 'Language'
};

/** Why a try of a draw was turned down: for authors. */
export const turnedDown: Readonly<Record<TurnedDown, string>> = {
	refused: 'The plan is of a kind that is refused.',
	constraint: 'A rule for the draws does not hold.',
	'no-answer': 'A question has no answer above zero.',
	'near-limit': 'A quantity comes too close to its limit.',
	'slip-looks-right': 'A slip gives a number that would pass as right.',
	'slips-look-alike': 'Two slips give numbers that cannot be told apart.',
	'other-outcome': 'The plan comes out in another way than this draw aims for.',
	'from-memory': 'A limit from memory would decide.'
};
