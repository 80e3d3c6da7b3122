/** Practice sets as learners have them: on the start page, over a problem, and after a round. */
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const ownSets = {
	/* On the start page. */
	heading: 'From your trainer',
	notStarted: ({ count }: { count: number }) => plural(count, { one: '1 problem', other: `${String(count)} problems` }),
	underWay: ({ n, of }: { n: number; of: number }) => `${String(n)} of ${String(of)} answered`,
	again: ({ n }: { n: number }) => `round ${String(n)} is next`,
	done: 'passed',
	due: ({ day }: { day: string }) => `due on ${day}`,
	dueToday: 'due today',
	late: ({ day }: { day: string }) => `late: it was due on ${day}`,
	doneLate: 'after the due day',
	doneHeading: ({ count }: { count: number }) => plural(count, { one: '1 set that you passed', other: `${String(count)} sets that you passed` }),

	/* Over a problem. */
	problemOf: ({ n, of }: { n: number; of: number }) => `Problem ${String(n)} of ${String(of)}`,
	round: ({ n }: { n: number }) => `round ${String(n)}`,
	ruleAll: 'To pass, all must be right.',
	rule: ({ right, of }: { right: number; of: number }) => `To pass: ${String(right)} of ${String(of)} right.`,
	ruleNoneUnsafe: 'No answer may be on the unsafe side.',
	ruleUnsafe: ({ count }: { count: number }) =>
		plural(count, { one: 'At most 1 answer may be on the unsafe side.', other: `At most ${String(count)} answers may be on the unsafe side.` }),
	answered: 'This problem is answered. What you try now is practice and does not count.',
	seeResult: 'See how it went',
	start: 'Start page',

	/* After a round. */
	passed: 'You passed this set',
	notPassed: 'Not passed yet',
	result: ({ right, of }: { right: number; of: number }) => `${String(right)} of ${String(of)} right.`,
	unsafe: ({ count }: { count: number }) =>
		count === 0 ? 'No answer on the unsafe side.' : plural(count, { one: '1 answer on the unsafe side.', other: `${String(count)} answers on the unsafe side.` }),
	freshLead: 'A new round has fresh problems of the same kinds.',
	fresh: 'Work it again',
	freshWaits: 'The fresh problems come with the signal.',
	toStart: 'To your start page',

	/* What the server has to say. */
	notices: {
		'signed-out': 'You are no longer signed in. Sign in again: nothing is lost, what you did waits on this device.',
		elsewhere: 'This set moved on: in another tab, on another device, or your trainer took it back. Your answer is kept as practice.',
		refused: 'The server did not take this answer. Open the set again.',
		'not-kept': 'This device keeps nothing more. Stay on this page until your answers are sent.'
	},
	waiting: ({ count }: { count: number }) =>
		plural(count, { one: '1 answer waits on this device to be sent.', other: `${String(count)} answers wait on this device to be sent.` }),
	loadAgain: 'Open the set again'
};
