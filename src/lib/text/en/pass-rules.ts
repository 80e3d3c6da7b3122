/** Pass rules of the final check: their clauses and rates, choosing one, making one, the review by judges. */
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const passRules = {
	title: 'Pass rule of the final check',
	lead: 'The rule says how many questions are asked, and how many errors pass. A check that has begun keeps its rule.',
	toPage: 'Look at the pass rule, or change it',
	now: ({ rule }: { rule: string }) => `In use: ${rule}.`,
	ownName: ({ from }: { from: string }) => `Your own rule, made from “${from}”`,
	version: ({ n }: { n: number }) => `Version ${String(n)}`,
	inUse: 'In use',

	/* Its clauses. */
	stage: ({ after, pass, fail }: { after: number; pass: number; fail: number | undefined }) => {
		const errors = pass === 0 ? 'no error' : plural(pass, { one: 'at most 1 error', other: `at most ${String(pass)} errors` });
		const passes = `After ${String(after)} questions: pass with ${errors}`;
		return fail === undefined ? `${passes}.` : `${passes}, fail with ${String(fail)} or more.`;
	},
	between: 'In between, the check goes on to more questions.',
	last: 'With more errors at the end, the check is failed.',
	unsafe: ({ first, items, inAll }: { first: number; items: number; inAll: number }) =>
		`Numbers on the unsafe side are counted apart. At most ${String(first)} may come in the first ${String(items)} questions, and ${String(inAll)} in all.`,
	plan: ({ extra }: { extra: number }) => `To tie off to a plan that fails brings ${String(extra)} more such plans. A second time fails the check.`,
	cell: ({ extra }: { extra: number }) =>
		`An error brings ${plural(extra, { one: 'one more question', other: `${String(extra)} more questions` })} of its lesson. Is that wrong too, then the lesson has to be done again.`,
	tries: ({ tries, day }: { tries: number; day: number }) =>
		`${plural(tries, { one: 'There is one try', other: `There are ${String(tries)} tries` })}, ${String(day)} a day at most. Then a trainer has to unlock the check.`,

	/* Who set the pass mark. */
	provisional: 'The pass mark is provisional. No judges have set it yet.',
	judged: ({ date, names }: { date: string; names: string }) => `Judges set the pass mark on ${date}: ${names}.`,
	document: ({ document }: { document: string }) => `Written down in: ${document}.`,

	/* How often workers pass. */
	ratesHeading: 'How often workers pass',
	caption: ({ right, passes, tries }: { right: number; passes: string; tries: number }) =>
		`Of 100 workers who are right ${String(right)} times in 100, ${passes} ${tries === 1 ? 'pass the one try' : `pass one of ${String(tries)} tries`}.`,
	fewer: ({ than }: { than: string }) => `fewer than ${than}`,
	worker: 'Right in',
	workerIs: ({ right }: { right: number }) => `${String(right)} of 100`,
	first: 'Pass the first try',
	allowed: ({ tries }: { tries: number }) => (tries === 1 ? 'Pass the one try' : `Pass one of ${String(tries)} tries`),
	items: 'Questions in a try',
	ratesNote: 'Of 100 workers each. Half of their errors are on the unsafe side. The questions are an average.',
	more: 'Workers who err in other ways',
	moreLead: 'Errors on the unsafe side count twice. Errors in clusters come from good and bad days: one error makes the next more likely.',
	firstCaption: 'Pass the first try, of 100 workers each',
	allowedCaption: ({ tries }: { tries: number }) => (tries === 1 ? 'Pass the one try, of 100 workers each' : `Pass one of ${String(tries)} tries, of 100 workers each`),
	noneUnsafe: 'No error unsafe',
	halfUnsafe: 'Half unsafe',
	allUnsafe: 'All unsafe',
	clustered: 'Half unsafe, in clusters',
	floor: ({ right, most }: { right: number; most: number }) =>
		`No rule can be saved that lets more than ${String(most)} of 100 workers through who are right only ${String(right)} times in 100.`,

	/* Choosing. */
	choose: 'Use this rule',
	chooseOf: ({ rule }: { rule: string }) => `Use this rule: ${rule}`,
	change: 'Change its counts',
	changeOf: ({ rule }: { rule: string }) => `Change the counts of: ${rule}`,
	review: 'Enter a review by judges',
	reviewOf: ({ rule }: { rule: string }) => `Enter a review by judges of: ${rule}`,

	/* Making one. */
	makeHeading: ({ from }: { from: string }) => `An own rule from “${from}”`,
	makeLead: 'Only counts change. The questions and their lessons stay. Saving makes a new version, and it is used from then on.',
	stageHeading: ({ after }: { after: number }) => `After ${String(after)} questions`,
	passAtMost: 'Passes with at most so many errors',
	failAtLeast: 'Fails from so many errors on',
	failHint: 'Leave it empty if nothing fails here.',
	unsafeHeading: 'Numbers on the unsafe side',
	unsafeFirst: ({ items }: { items: number }) => `At most, in the first ${String(items)} questions`,
	unsafeInAll: 'At most, in the whole check',
	triesHeading: 'Tries',
	triesField: 'Before a trainer must unlock',
	triesADay: 'On one day',
	save: 'Save and use this rule',
	cancel: 'Leave it as it is',
	laxTitle: 'This rule is too easy to pass. It was not saved.',
	lax: ({ right, rate, most }: { right: number; rate: string; most: string }) =>
		`It would let ${rate} of 100 workers through who are right only ${String(right)} times in 100. At most ${most} may get through.`,
	remediesLead: 'Each of these changes alone would be enough:',
	remedy: {
		tries: ({ to, rate }: { to: number; rate: string }) => `${plural(to, { one: 'One try', other: `${String(to)} tries` })} before a trainer must unlock. Then ${rate} of 100 get through.`,
		pass: ({ to, rate, after }: { to: number; rate: string; after: number }) =>
			`After ${String(after)} questions, pass with at most ${plural(to, { one: '1 error', other: `${String(to)} errors` })}. Then ${rate} of 100 get through.`,
		unsafe: ({ to, rate }: { to: number; rate: string }) =>
			`At most ${plural(to, { one: '1 number', other: `${String(to)} numbers` })} on the unsafe side in the whole check. Then ${rate} of 100 get through.`
	},
	noRemedy: 'No single change is enough. Lower several counts, or begin again from another rule.',

	/* The review by judges. */
	reviewHeading: ({ rule, version }: { rule: string; version: number }) => `Review by judges: ${rule}, version ${String(version)}`,
	reviewLead: 'Competent people looked at the questions and settled which results pass. What you enter here is kept and cannot be changed.',
	date: 'Day of the review',
	judges: 'Names of the judges',
	judgesHint: 'One name on each line, at least three.',
	documentField: 'Where it is written down',
	documentHint: 'For example the number of the minutes, and where they are kept.',
	enter: 'Enter the review',

	/* What was done. */
	done: {
		chosen: 'The rule is in use from now on.',
		made: 'Your rule is saved, and in use from now on.',
		reviewed: 'The review is entered. New checks say who set the pass mark.'
	},
	/* What is wrong: by the keys that the forms use. */
	problems: {
		count: 'Write a whole number.',
		'pass-too-many': 'That is too many. Let fewer errors pass.',
		'fail-too-few': 'This leaves nothing between pass and fail. Give at least two more than pass.',
		'unsafe-first-too-many': 'This is more than in the whole check. Give at most that number.',
		'tries-too-many': 'Give at least 1 try, and at most 10.',
		'tries-a-day-too-many': 'Give at least 1 try, and no more than before a trainer must unlock.',
		cells: 'This rule leaves a lesson of the course out. Begin again from another rule.',
		date: 'Write the day as year, month, day, as in 2027-03-14.',
		'date-ahead': 'This day is still to come.',
		judges: 'Name at least three different judges, one on each line.',
		'too-many-judges': 'These are too many names.',
		'changed-meanwhile': 'This rule was changed meanwhile. Look at it again before you enter the review.'
	}
};
