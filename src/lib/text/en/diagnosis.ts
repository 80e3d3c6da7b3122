/** What is said over a wrong number: how sure the guess is, and slips of the pen. */
import type { Certainty, EntrySlip } from '#lib/grading/index.ts';
import type { EntryText } from '../parts.ts';

/** Frames for the clauses of slips. A guess is worded as a guess. */
export const diagnosis = {
	/** One slip leads by far. */
	asserted: ({ clause }: { clause: string }) => `It looks as if ${clause}.`,
	/** One slip or a pair leads, with doubt. */
	couldBe: ({ clause }: { clause: string }) => `It could be this: ${clause}.`,
	couldBePair: ({ first, second }: { first: string; second: string }) => `It could be two things at once. One: ${first}. Two: ${second}.`,
	confirmed: ({ clause }: { clause: string }) => `So it was this: ${clause}.`,
	/** The step that all guesses agree on. */
	step: ({ the }: { the: string }) => `Your number and the working part at ${the}.`,
	twoFit: 'Two slips fit your number. Which one was yours?',
	severalFit: 'More than one slip fits your number. Which one was yours?',
	/** One more question that tells them apart. */
	whichUsed: ({ the, first, second }: { the: string; first: string; second: string }) =>
		`Two slips fit your number. Which did you use for ${the}: ${first} or ${second}?`,
	neither: 'None of these',
	none: 'No pattern fits this number.',
	noneHelp: 'That is common, and no harm. Go through it step by step: you will see where it parts.',
	alsoFits: ({ name }: { name: string }) => `This fits too: ${name}.`,
	followsOwn: 'Right with your own earlier number. The error counts once, where it was made.',
	roundedEarly: 'You rounded on the way. Keep one more digit until the end.'
};

/** How sure a guess is, in a word or two. */
export const certainty: Readonly<Record<Certainty, string>> = {
	asserted: 'Most likely',
	'could-be': 'Could be',
	ambiguous: 'More than one fits',
	none: 'No pattern'
};

/** Slips of the pen and of units. */
export const entrySlips: Readonly<Record<EntrySlip['entry'], EntryText>> = {
	'inches-as-decimals': {
		label: 'Inches written as decimals',
		title: ({ typed }) => `It could be that ${typed} was meant as feet and inches.`,
		hint: 'A foot has 12 inches. Write feet and inches with their marks: 5 ft 6 in.'
	},
	'other-unit': {
		label: 'Another unit',
		title: ({ typed, unit }) => `It could be that ${typed} is in ${unit}.`,
		hint: 'Write the unit behind the number, or change the number into the unit of the field.'
	},
	'digits-swapped': {
		label: 'Digits swapped',
		title: ({ typed }) => `It could be that two digits of ${typed} changed places.`,
		hint: 'Type the number once more.'
	},
	'decimal-shifted': {
		label: 'Decimal mark in the wrong place',
		title: ({ typed }) => `It could be that the decimal mark of ${typed} is in the wrong place.`,
		hint: 'Picture the size next to a person. Can it be ten times as much, or as little?'
	},
	sign: {
		label: 'Sign',
		title: ({ typed }) => `It could be that ${typed} has the wrong sign.`,
		hint: 'Falls and clearances count downward and are written without a minus.'
	},
	'given-handed-in': {
		label: 'A given handed in',
		title: ({ typed, the }) => `${typed} is ${the}, as it stands in the problem.`,
		hint: 'The answer is not printed there. It has to be worked out.'
	},
	'step-handed-in': {
		label: 'A step handed in',
		title: ({ typed, the }) => `${typed} is ${the}: one step on the way, not the end.`,
		hint: 'Go on from this number.'
	}
};
