/** What the method page says of practice and of the final check. All numbers come from the program's own constants. */
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

/** Sentences that name numbers. */
type Lines<Of> = readonly ((of: Of) => string)[];

export const mastery = {
	ready: {
		heading: 'How practice decides that you are ready',
		lead: 'An estimate chooses what comes next. A row of right answers decides.',
		estimateHeading: 'The estimate',
		estimate: [
			() => 'Each lesson has a number from 0 to 100, and so has each finer skill in it. It says how likely you have it.',
			({ start }) => `It starts at ${start}. A right answer lifts it, and a wrong one lowers it.`,
			({ guess, slip }) => `Without the skill, an answer is taken to be right ${guess} times in 100. With it, it is taken to be wrong ${slip} times in 100.`,
			({ learn }) => `A problem worked alone teaches a missing skill ${learn} times in 100. That is how the number grows.`,
			() => 'The next problem is of another kind than the last one. It is as hard as you need it, and asks for what is least certain.'
		] as Lines<{ start: string; learn: string; guess: string; slip: string }>,
		rowHeading: 'The row',
		row: [
			(of) => `A lesson is ready when its number is ${of.ready} or more, and a row of right answers stands behind it.`,
			(of) => `The row needs ${of.inRow} first tries or more, all right and without help. At least ${of.levels} levels of difficulty must be among the last ${of.inRow}.`,
			(of) => `The row must be too long for chance. Of all rows that are guessed, at most 1 in ${of.rare} gets there.`,
			(of) => `A typed number is guessed ${of.guess} times in 100. Pictures and choices are easier to guess, so rows of them must be longer.`,
			(of) => `After ${of.stuck} problems without being ready, the trainer is told. From then on it is 1 in ${of.rarer}.`,
			(of) => `In the lesson itself, ${of.wanted} right answers without help come before its check.`,
			() => 'A lesson that is ready opens the next one. It is mastered when you are still right on a later day.'
		] as Lines<{ inRow: string; levels: string; ready: string; rare: string; guess: string; stuck: string; rarer: string; wanted: string }>,
		helpHeading: 'Help',
		help: [
			() => 'A right answer after help lifts nothing. A wrong one lowers the number, and the row begins again.',
			({ wrong }) => `In half-done examples some steps are given, so they count as help. After ${wrong} wrong answers at one of them, an easier one comes.`
		] as Lines<{ wrong: string }>,
		severalHeading: 'One problem, several skills',
		several: [
			'A problem counts once for each lesson that it asks of. It is right there only if all that was asked of it is right.',
			'A right answer speaks for all skills that it takes. A wrong one is put down to the skill that was least certain.',
			'A number that is right with your own earlier error counts as right. The error counts where it was made.',
			'A decision counts only if its numbers are right.'
		],
		refreshHeading: 'Refreshers',
		refresh: [
			({ days, last }) => `What is ready is asked again after ${days} days, then every ${last} days.`,
			() => 'An early or helped right answer moves no day. A wrong first try starts again from the first day.'
		] as Lines<{ days: string; last: string }>,
		sources:
			'Estimate: the model of Corbett and Anderson, 1994, from memory. Days: fixed gaps do as well as growing ones, Latimier and others, 2021. The other numbers are our own choice, until answers of real workers say more.'
	},
	check: {
		heading: 'The final check',
		lead: ({ rule }: { rule: string }) => `An organisation can choose another rule. This is the one to begin with: ${rule}.`,
		formsHeading: 'How the questions are put together',
		forms: [
			() => 'Each place in the check is fixed: which lesson it asks, and how hard it is. The tasks and their numbers are drawn anew for every try.',
			({ first, second, cells }) => `The first ${first} questions ask of all ${cells} lessons. By question ${second} each was asked twice.`,
			({ fails }) => `Among the first ones ${plural(fails, { one: 'is a plan', other: `are ${String(fails)} plans` })} that must be refused.`,
			() => 'No question comes twice in a check, nor again in your next try.',
			({ band }) => `Tasks for the same place are alike. By our measure they differ by ${band} logit at most. The measure counts steps, extra numbers, and changes of unit or sign.`,
			() => 'Drawing and marking are done on the server. Your device gets only what is to be seen.'
		] as Lines<{ first: string; second: string; cells: string; band: string; fails: number }>,
		ratesHow: 'The rates are worked out exactly, with all clauses. No real worker stands behind them.'
	}
};
