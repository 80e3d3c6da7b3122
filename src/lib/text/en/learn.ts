/** The start page of somebody who learns: where they are, what is due, what goes wrong, and one way on. */
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const learn = {
	guest: 'Practice without an account',
	startTitle: 'Begin the course',
	goOnWith: ({ title }: { title: string }) => `Go on: ${title}`,
	finalTitle: 'Take the final check',
	doneTitle: 'You passed the final check',
	begin: 'Begin',
	goOn: 'Go on',
	toCheck: 'To the lesson check',
	toFinal: 'To the final check',
	practise: 'Open a site problem',
	/** Under the title: how much is left in the lesson at hand. */
	toGo: ({ count }: { count: number }) => plural(count, { one: 'About 1 problem to its check.', other: `About ${String(count)} problems to its check.` }),
	readyNow: 'You are ready for its check.',

	/* What is due. */
	dueHeading: 'Due',
	nothingDue: 'No refresher is due today.',
	dueToday: 'due today',
	overdue: ({ count }: { count: number }) => plural(count, { one: 'due since yesterday', other: `due for ${String(count)} days` }),
	nextDue: ({ day }: { day: string }) => `The next refresher is due on ${day}.`,
	refresher: ({ title }: { title: string }) => `Refresher: ${title}`,

	/* Where I am. */
	lessonsHeading: 'The lessons',
	lesson: ({ n, title }: { n: number; title: string }) => `${String(n)}. ${title}`,
	here: 'You are here',
	states: {
		shut: 'opens when the lesson before it is ready',
		open: 'open',
		example: ({ n, of }: { n: number; of: number }) => `example, step ${String(n)} of ${String(of)}`,
		trying: 'first problem',
		fading: 'half-done examples',
		practising: ({ n, of }: { n: number; of: number }) => `in practice: ${String(n)} of ${String(of)} in a row`,
		ready: 'ready for its check',
		checking: 'check begun',
		passed: 'passed',
		mastered: 'passed and mastered'
	},
	finalName: 'Final check',
	finalShut: 'opens when all lessons are passed',
	finalOpen: 'open',
	finalRunning: 'begun: go on where you stopped',
	finalTomorrow: 'no more tries today',
	finalLocked: 'your trainer must open it again',
	finalPassed: 'passed',
	finalTries: ({ count }: { count: number }) => plural(count, { one: '1 try so far', other: `${String(count)} tries so far` }),
	finalGuest: 'for those who have joined',

	/* What goes wrong. */
	slipsHeading: 'What goes wrong most often',
	noSlips: 'No slip was found in your answers so far.',
	times: ({ count }: { count: number }) => plural(count, { one: 'once', other: `${String(count)} times` }),

	/* Proof. */
	proofHeading: 'Your proof',
	theory: ({ day }: { day: string }) => `You passed the theory on ${day}.`,
	supervised: 'A trainer was present.',
	unsupervised: 'No trainer was present.',
	missing: 'Still missing: a trainer signs off what you can do with your own hands.',
	onlyTheory: 'Until then this is a record of theory alone.',
	noProof: 'The final check gives a record of theory. A trainer then signs off what you can do with your own hands.',
	beforeHeading: 'Before you joined',
	before: ({ count }: { count: number }) => plural(count, { one: 'You answered 1 site problem.', other: `You answered ${String(count)} site problems.` }),
	beforeRight: ({ count }: { count: number }) => plural(count, { one: '1 was right in all parts.', other: `${String(count)} were right in all parts.` }),
	beforeNote: 'That was practice. It does not count for the lessons.',

	/* Guests. */
	guestNote: 'All lessons are open to practise. What you do is kept on this device.',
	joinNote: 'To take the checks, join your crew.',
	join: 'Join your crew'
};
