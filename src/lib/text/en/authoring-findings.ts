/** What inspecting a scenario finds, and what does not fit its schema: what is wrong, and what to do. */
import type { FindingCode } from '#lib/scenario/index.ts';
import type { FindingWords } from '../parts-authoring.ts';

export const authoringFindings: Readonly<Record<FindingCode, FindingWords>> = {
	'seldom-drawn': {
		what: ({ share, which }) => `Only ${share} of the draws give a problem. Mostly: ${which}`,
		fix: () => 'Widen the range named here, or loosen a rule.'
	},
	'many-tries': {
		what: ({ mean, most }) => `A draw needs ${mean} tries on average, and up to ${most}.`,
		fix: () => 'Widen the range named here, or loosen a rule.'
	},
	'aim-not-met': {
		what: ({ which, why }) => `No draw comes out like this: ${which}. ${why}`,
		fix: () => 'Take it out, or widen the ranges until it can happen.'
	},
	'check-always-fails': {
		what: ({ which }) => `This check fails in every draw: ${which}.`,
		fix: () => 'Change the amount or the range named here, so that it can hold.'
	},
	'check-never-fails': {
		what: ({ which }) => `This check never fails, though some draws should fail it: ${which}.`,
		fix: () => 'Change the range named here, or take this way to come out off the list.'
	},
	'check-never-known': {
		what: ({ which }) => `This check cannot be judged in any draw: ${which}.`,
		fix: () => 'State the number that is missing.'
	},
	'plan-refused': {
		what: () => 'Plans of this kind are not computed here.',
		fix: () => 'Let the line meet no edge, and offset it along the edge only.'
	},
	lopsided: {
		what: ({ share }) => `In ${share} of the draws the plan passes. So the decision can be guessed.`,
		fix: () => 'Let about half of the draws fail a check.'
	},
	'constraint-never-met': {
		what: ({ of, least, greatest }) => `No draw keeps this rule. ${of}: the draws give ${least} to ${greatest}.`,
		fix: () => 'Change the rule, or the ranges that it depends on.'
	},
	'constraints-clash': {
		what: ({ of, other }) => `Two rules clash. Each can be kept, but never both: ${of}, and ${other}.`,
		fix: () => 'Loosen one of the two, or take it out.'
	},
	'constraints-never-together': {
		what: ({ count }) => `Any two of the ${count} rules can be kept, but never all.`,
		fix: () => 'Loosen one rule after the other until draws fit.'
	},
	'constraint-never-binds': {
		what: ({ of }) => `Every draw keeps this rule anyway: ${of}.`,
		fix: () => 'Take it out, or make it stricter.'
	},
	'ask-without-value': {
		what: ({ why }) => `In some draws this question has no answer. ${why}`,
		fix: () => 'State what is missing, or ask for something else.'
	},
	'often-not-stated': {
		what: ({ share }) => `In ${share} of the draws the answer cannot be stated from the label.`,
		fix: () => 'Narrow the mass or the free fall, or widen what the label holds for.'
	},
	'ask-without-slips': {
		what: () => 'No known slip changes this answer. It tells nothing of what goes wrong.',
		fix: () => 'Ask for a number with more steps, or let more numbers vary.'
	},
	'narrow-answers': {
		what: ({ steps }) => `The right answers lie close together: half of them within ${steps} steps.`,
		fix: () => 'Widen the range named here.'
	},
	'off-answer-grid': {
		what: ({ share }) => `In ${share} of the draws the right answer lies between two steps of the answer.`,
		fix: () => 'Take a coarser step here, or a finer step for the answer.'
	},
	'slips-alike': {
		what: ({ first, second, share }) => `Two numbers cannot be told apart in ${share} of the tries: ${first}, and ${second}.`,
		fix: () => 'Change or widen the range named here, so that the two part.'
	},
	'declared-but-not-equal': {
		what: ({ first, second }) => `These slips stand as the same, but they are not: ${first}, and ${second}.`,
		fix: () => 'Take the pair out.'
	},
	'slip-without-effect': {
		what: ({ first }) => `This slip never changes the number: ${first}.`,
		fix: () => 'Let the number vary that it is about, if you want to catch it.'
	},
	'impossible-site': {
		what: ({ why }) => `This cannot be: ${why}`,
		fix: ({ given }) => `Change this number: ${given}.`
	},
	'unusual-value': {
		what: ({ given, value, least, greatest }) => `${given}: ${value} is far from what is used at work, ${least} to ${greatest}.`,
		fix: () => 'Check the number and its unit.'
	},
	'one-value': {
		what: ({ given }) => `This range has one value only: ${given}.`,
		fix: () => 'Widen it, or make it one amount.'
	},
	'drawn-twice': {
		what: ({ given }) => `Two draws set the same number: ${given}. Only the later one counts.`,
		fix: () => 'Take one of the two out.'
	},
	'decoy-counts': {
		what: ({ given }) => `A working reads this number, so it leads nobody astray: ${given}.`,
		fix: () => 'Take another number that belongs in no working.'
	},
	'decoy-alike': {
		what: ({ which, share }) => `In ${share} of the draws this number equals another one: ${which}.`,
		fix: () => 'Give it an amount that the other one never has.'
	},
	'fact-untold': {
		what: ({ which }) => `The story has no sentence for this state: ${which}.`,
		fix: () => 'Write one. Leave it empty if the drawing tells enough.'
	},
	'state-never-drawn': {
		what: ({ which }) => `No draw has this state: ${which}. Every plan with it is turned down.`,
		fix: () => 'Take the state out, or let draws come out in a way that it allows.'
	},
	'slot-without-value': {
		what: ({ which }) => `Some draws have nothing to fill this with: ${which}.`,
		fix: () => 'State that number, or take it out of the text.'
	},
	'slot-in-one-language': {
		what: ({ which }) => `Only one of the languages tells this: ${which}.`,
		fix: () => 'Tell it in both.'
	},
	'name-untold': {
		what: () => 'No text names the person.',
		fix: () => 'Put the name of the person into the first two lines.'
	},
	untranslated: {
		what: () => 'This text is the same in both languages.',
		fix: () => 'Write it in the other language too.'
	},
	'name-twice': {
		what: ({ name }) => `This name stands twice: ${name}.`,
		fix: () => 'Take one of the two out.'
	},
	'long-sentence': {
		what: ({ words }) => `A sentence has ${words} words. At most 20 read well.`,
		fix: () => 'Make two sentences of it.'
	},
	'long-sentences': {
		what: ({ mean }) => `The sentences have ${mean} words on average. At most 15 read well.`,
		fix: () => 'Make two sentences of the long ones.'
	},
	'hard-words': {
		what: () => 'The story is hard to read.',
		fix: () => 'Take shorter words and shorter sentences.'
	}
};
