/**
 * The flow of a practice set: work its problems in any order → the round is over → passed, or another round with fresh
 * problems. Pure: an answer comes in with its place and what it came to. The first answer to a place counts; what
 * comes after it, or from a round that is over, moves nothing.
 */
import { assign, initialTransition, setup, transition } from 'xstate';

/** A scenario of a set: which version of it, and what is asked of each problem drawn from it. */
export interface SetScenario {
	readonly id: string;
	readonly version: number;
	/** Ids of asks, in the scenario's order; a decision only with its numbers. */
	readonly asks: readonly string[];
}

/** When a round is passed: so many problems right, and at most so many answers on the unsafe side. */
export interface SetRule {
	readonly right: number;
	readonly critical: number;
}

/** What a practice set holds. It never changes: a changed set is a new one. */
export interface SetContent {
	readonly scenarios: readonly SetScenario[];
	/** Problems in a round. */
	readonly count: number;
	readonly rule: SetRule;
	/** Whether everyone gets the same problems; else each has their own. */
	readonly sameForAll: boolean;
	/** The language of the problems; null for the learner's own. */
	readonly language: 'en' | 'es' | null;
	/** Ids of slips that the problems are to bring out: where it can be, each problem gives another number by one of them. */
	readonly aims: readonly string[];
}

export interface SetInput {
	readonly count: number;
	readonly rule: SetRule;
}

/** What a whole round came to. */
export interface RoundResult {
	readonly round: number;
	readonly right: number;
	readonly critical: number;
}

export interface SetContext extends SetInput {
	/** The round at hand, from 0. */
	readonly round: number;
	/** Places of this round that are answered, in the order of the answers; places count on from round to round. */
	readonly answered: readonly number[];
	/** Problems of this round that are all right. */
	readonly right: number;
	/** Answers of this round on the unsafe side. */
	readonly critical: number;
	/** The rounds that are over. */
	readonly over: readonly RoundResult[];
}

export type SetEvent =
	/** A problem was answered for the first time. */
	| { readonly type: 'ANSWERED'; readonly place: number; readonly right: boolean; readonly critical: number }
	/** The trainer took the set back. */
	| { readonly type: 'RECALLED' };

/** Where somebody is in a set. `again`: a round is over and not passed, the next one waits. */
export type SetState = 'notStarted' | 'working' | 'again' | 'passed' | 'recalled';

/** What was answered, as it is stored. */
export type SetAnswer = Omit<Extract<SetEvent, { type: 'ANSWERED' }>, 'type'>;

/** @returns whether a round that came to this is passed. */
export function isPassed(rule: SetRule, round: { readonly right: number; readonly critical: number }): boolean {
	return round.right >= rule.right && round.critical <= rule.critical;
}

function counts(context: SetContext, event: SetEvent): event is Extract<SetEvent, { type: 'ANSWERED' }> {
	if (event.type !== 'ANSWERED' || !Number.isInteger(event.place)) return false;
	return Math.floor(event.place / context.count) === context.round && !context.answered.includes(event.place);
}

function ends(context: SetContext, event: SetEvent): boolean {
	return counts(context, event) && context.answered.length + 1 === context.count;
}

function withAnswer(context: SetContext, event: SetEvent): Pick<SetContext, 'answered' | 'right' | 'critical'> {
	if (event.type !== 'ANSWERED') return context;
	return {
		answered: [...context.answered, event.place],
		right: context.right + Number(event.right),
		critical: context.critical + event.critical
	};
}

const ANSWERED = [
	{ guard: 'passes', target: 'passed', actions: 'end' },
	{ guard: 'lastOfRound', target: 'again', actions: ['end', 'turn'] },
	{ guard: 'counts', target: 'working', actions: 'count' }
] as const;

export const setMachine = setup({
	types: { context: {} as SetContext, events: {} as SetEvent, input: {} as SetInput },
	guards: {
		counts: ({ context, event }) => counts(context, event),
		lastOfRound: ({ context, event }) => ends(context, event),
		passes: ({ context, event }) => ends(context, event) && isPassed(context.rule, withAnswer(context, event))
	},
	actions: {
		count: assign(({ context, event }) => withAnswer(context, event)),
		end: assign(({ context, event }) => {
			const { answered, right, critical } = withAnswer(context, event);
			return { answered, right, critical, over: [...context.over, { round: context.round, right, critical }] };
		}),
		turn: assign(({ context }) => ({ round: context.round + 1, answered: [], right: 0, critical: 0 }))
	}
}).createMachine({
	id: 'set',
	context: ({ input }) => ({ count: input.count, rule: input.rule, round: 0, answered: [], right: 0, critical: 0, over: [] }),
	initial: 'notStarted',
	states: {
		notStarted: { on: { ANSWERED, RECALLED: 'recalled' } },
		working: { on: { ANSWERED, RECALLED: 'recalled' } },
		/** A round is over and not passed: the next answer is of a fresh one. */
		again: { on: { ANSWERED, RECALLED: 'recalled' } },
		passed: { type: 'final' },
		recalled: { type: 'final' }
	}
});

/** Where somebody is in a set, and what came so far. */
export interface SetStanding {
	readonly state: SetState;
	readonly context: SetContext;
}

/** @returns where a set stands after these answers, in the order in which they were taken in. */
export function replaySet(of: SetInput, answers: readonly SetAnswer[]): SetStanding {
	let [snapshot] = initialTransition(setMachine, { count: of.count, rule: of.rule });
	for (const answer of answers) [snapshot] = transition(setMachine, snapshot, { type: 'ANSWERED', ...answer });
	return { state: snapshot.value, context: snapshot.context };
}

/** @returns the first place of the round at hand that is not answered; undefined once the set is passed. */
export function placeAtHand({ state, context }: SetStanding): number | undefined {
	if (state === 'passed' || state === 'recalled') return undefined;
	const first = context.round * context.count;
	for (let place = first; place < first + context.count; place += 1) {
		if (!context.answered.includes(place)) return place;
	}
	return undefined;
}
