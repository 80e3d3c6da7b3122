/**
 * The flow of a lesson: shown example → a first whole problem → half-done examples, should that one go wrong →
 * practice → the lesson check. Pure: which problem is next, whether an answer was right and whether the learner
 * is ready is worked out outside and comes in with the events.
 */
import { assign, setup } from 'xstate';

/** Wrong answers at one rung of half-done examples after which an easier rung comes. */
export const WRONG_AT_RUNG = 2;
/**
 * Unaided right answers wanted in the lesson itself before its check, and again after a check that did not go well:
 * a cell may be ready from other lessons' problems, what this lesson teaches must still be seen to be done.
 */
export const WANTED_BEFORE_CHECK = 3;

export interface LessonInput {
	readonly lesson: string;
	/** How many steps the shown example has. */
	readonly steps: number;
	/** How many half-done examples there are, from the most given to the least. */
	readonly rungs: number;
}

export interface LessonContext extends LessonInput {
	/** How many steps of the shown example were looked at, from the first on. */
	readonly seen: number;
	/** The half-done example at hand, from 0. */
	readonly rung: number;
	/** Wrong answers at this rung in a row. */
	readonly wrongHere: number;
	/** Answers in this lesson, half-done ones too. */
	readonly answered: number;
	/** Unaided right answers still wanted before the next check. */
	readonly wanted: number;
	/** Checks that ended. */
	readonly checks: number;
	readonly passed: boolean;
}

export type LessonEvent =
	/** The shown example stands at a step, from 0. */
	| { readonly type: 'SHOWN'; readonly step: number }
	/** On from the shown example. */
	| { readonly type: 'GO_ON' }
	/** A problem was answered for the first time; `ready` is the estimate after it. */
	| { readonly type: 'ANSWERED'; readonly right: boolean; readonly aided: boolean; readonly ready: boolean }
	| { readonly type: 'CHECK_STARTED' }
	| { readonly type: 'CHECK_ENDED'; readonly passed: boolean }
	/** The final check found this lesson's cell not passed: it is done again. */
	| { readonly type: 'REOPENED' };

function unaidedRight(event: LessonEvent): boolean {
	return event.type === 'ANSWERED' && event.right && !event.aided;
}

export const lessonMachine = setup({
	types: { context: {} as LessonContext, events: {} as LessonEvent, input: {} as LessonInput },
	guards: {
		allSeen: ({ context }) => context.seen >= context.steps,
		allSeenAtFirst: ({ context }) => context.seen >= context.steps && context.answered === 0,
		unaidedRight: ({ event }) => unaidedRight(event),
		ready: ({ context, event }) =>
			event.type === 'ANSWERED' && event.ready && (context.wanted === 0 || (context.wanted === 1 && unaidedRight(event))),
		notReady: ({ event }) => event.type === 'ANSWERED' && !event.ready,
		noRungs: ({ context }) => context.rungs === 0,
		lastRung: ({ context, event }) => unaidedRight(event) && context.rung >= context.rungs - 1,
		tooHard: ({ context, event }) => !unaidedRight(event) && context.wrongHere + 1 >= WRONG_AT_RUNG,
		tooHardAtFirst: ({ context, event }) =>
			!unaidedRight(event) && context.wrongHere + 1 >= WRONG_AT_RUNG && context.rung === 0,
		passed: ({ event }) => event.type === 'CHECK_ENDED' && event.passed
	},
	actions: {
		see: assign({
			seen: ({ context, event }) =>
				event.type === 'SHOWN' && event.step <= context.seen ? Math.min(context.steps, Math.max(context.seen, event.step + 1)) : context.seen
		}),
		count: assign({
			answered: ({ context }) => context.answered + 1,
			wanted: ({ context, event }) => (unaidedRight(event) ? Math.max(0, context.wanted - 1) : context.wanted)
		}),
		firstRung: assign({ rung: 0, wrongHere: 0 }),
		nextRung: assign({ rung: ({ context }) => context.rung + 1, wrongHere: 0 }),
		rungBefore: assign({ rung: ({ context }) => Math.max(0, context.rung - 1), wrongHere: 0 }),
		countWrong: assign({ wrongHere: ({ context }) => context.wrongHere + 1 }),
		clearWrong: assign({ wrongHere: 0 }),
		showAgain: assign({ seen: 0, rung: 0, wrongHere: 0 }),
		endCheck: assign({ checks: ({ context }) => context.checks + 1 }),
		pass: assign({ passed: true, wanted: 0 }),
		wantMore: assign({ wanted: WANTED_BEFORE_CHECK, passed: false })
	}
}).createMachine({
	id: 'lesson',
	context: ({ input }) => ({
		...input,
		seen: 0,
		rung: 0,
		wrongHere: 0,
		answered: 0,
		wanted: WANTED_BEFORE_CHECK,
		checks: 0,
		passed: false
	}),
	initial: 'showing',
	states: {
		/** The shown example; nothing is asked. */
		showing: {
			on: {
				SHOWN: { actions: 'see' },
				GO_ON: [
					{ guard: 'allSeenAtFirst', target: 'trying' },
					{ guard: 'allSeen', target: 'fading' }
				]
			}
		},
		/** One whole problem: whoever can do it needs no half-done ones. */
		trying: {
			on: {
				ANSWERED: [
					{ guard: 'unaidedRight', target: 'practising', actions: 'count' },
					{ guard: 'noRungs', target: 'practising', actions: 'count' },
					{ target: 'fading', actions: ['count', 'firstRung'] }
				]
			}
		},
		/** Half-done examples: fewer and fewer steps are given. */
		fading: {
			on: {
				ANSWERED: [
					{ guard: 'lastRung', target: 'practising', actions: ['count', 'clearWrong'] },
					{ guard: 'unaidedRight', actions: ['count', 'nextRung'] },
					{ guard: 'tooHardAtFirst', target: 'showing', actions: ['count', 'showAgain'] },
					{ guard: 'tooHard', actions: ['count', 'rungBefore'] },
					{ actions: ['count', 'countWrong'] }
				]
			}
		},
		practising: {
			on: {
				ANSWERED: [{ guard: 'ready', target: 'ready', actions: 'count' }, { actions: 'count' }],
				REOPENED: { actions: 'wantMore' }
			}
		},
		/** The lesson check is open; practice may go on, and may show that it was too early. */
		ready: {
			on: {
				ANSWERED: [{ guard: 'notReady', target: 'practising', actions: 'count' }, { actions: 'count' }],
				CHECK_STARTED: 'checking',
				REOPENED: { target: 'practising', actions: 'wantMore' }
			}
		},
		checking: {
			on: {
				CHECK_ENDED: [
					{ guard: 'passed', target: 'passed', actions: ['endCheck', 'pass'] },
					{ target: 'practising', actions: ['endCheck', 'wantMore'] }
				]
			}
		},
		/** Done; refreshers come here. */
		passed: {
			on: {
				ANSWERED: { actions: 'count' },
				REOPENED: { target: 'practising', actions: 'wantMore' }
			}
		}
	}
});

export type LessonPlace = 'showing' | 'trying' | 'fading' | 'practising' | 'ready' | 'checking' | 'passed';
