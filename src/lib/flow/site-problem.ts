/**
 * The flow of a site problem: read → work → (grading) → explained or solved → try again, step through, or on
 * to the next. Pure: grading, clock, ids, network and storage are outside and speak through events.
 */
import { assign, setup } from 'xstate';
import {
	answerOf,
	entryOf,
	isQuery,
	notRight,
	sameMarks,
	type Drawing,
	type Entry,
	type FlowContext,
	type FlowEvent,
	type Grades,
	type Sent
} from './context.ts';

export interface FlowInput {
	readonly drawing: Drawing;
	readonly asks: readonly string[];
	readonly decisions: readonly string[];
	/** What was remembered of an earlier visit. */
	readonly entries?: FlowContext['entries'] | undefined;
	readonly sent?: readonly Sent[] | undefined;
	readonly chosen?: FlowContext['chosen'] | undefined;
	readonly help?: FlowContext['help'] | undefined;
	readonly focus?: string | undefined;
}

/** @returns the context of a problem that nobody has worked on yet, or that goes on with what was remembered. */
export function startContext(input: FlowInput): FlowContext {
	return {
		drawing: input.drawing,
		asks: input.asks,
		decisions: input.decisions,
		entries: input.entries ?? {},
		missing: [],
		grades: undefined,
		serverDiffers: false,
		focus: input.focus,
		chosen: input.chosen ?? {},
		walk: undefined,
		help: input.help ?? {},
		sent: input.sent ?? []
	};
}

function withEntry(context: FlowContext, ask: string, change: Partial<Entry>): Partial<FlowContext> {
	if (!context.asks.includes(ask)) return {};
	return {
		entries: { ...context.entries, [ask]: { ...entryOf(context, ask), ...change } },
		missing: context.missing.filter((id) => id !== ask)
	};
}

function emptyAsks(context: FlowContext): readonly string[] {
	return context.asks.filter((ask) => answerOf(entryOf(context, ask)) === undefined);
}

/** The ask to explain first: a wrong number stands before a wrong decision, because the one follows from the other. */
function firstFocus(context: FlowContext, grades: Grades): string | undefined {
	const wrong = notRight(context.asks, grades);
	return wrong.find((ask) => !context.decisions.includes(ask)) ?? wrong[0] ?? context.asks[0];
}

function withSent(context: FlowContext, id: string, state: Sent['state']): readonly Sent[] {
	const known = context.sent.some((one) => one.id === id);
	return known ? context.sent.map((one) => (one.id === id ? { id, state } : one)) : [...context.sent, { id, state }];
}

/** @returns the id of the attempt that the grades on screen belong to. */
export function lastAttempt(context: Pick<FlowContext, 'sent'>): string | undefined {
	return context.sent.at(-1)?.id;
}

export const siteProblemMachine = setup({
	types: {
		context: {} as FlowContext,
		events: {} as FlowEvent,
		input: {} as FlowInput
	},
	guards: {
		allEntered: ({ context }) => emptyAsks(context).length === 0,
		hasQuery: ({ event }) => event.type === 'GRADED' && Object.values(event.grades).some(isQuery),
		allRight: ({ context, event }) => event.type === 'GRADED' && notRight(context.asks, event.grades).length === 0,
		serverSaysRight: ({ context, event }) =>
			event.type === 'SERVER_GRADED' && event.id === lastAttempt(context) && notRight(context.asks, event.grades).length === 0,
		serverSaysWrong: ({ context, event }) =>
			event.type === 'SERVER_GRADED' && event.id === lastAttempt(context) && notRight(context.asks, event.grades).length > 0,
		stepOpen: ({ context }) => context.walk !== undefined && context.walk.steps[context.walk.at]?.grade?.kind !== 'step',
		stepDone: ({ context }) => context.walk?.steps[context.walk.at]?.grade?.kind === 'step',
		lastStepDone: ({ context }) =>
			context.walk !== undefined &&
			context.walk.at >= context.walk.of - 1 &&
			context.walk.steps[context.walk.at]?.grade?.kind === 'step',
		known: ({ context, event }) => 'ask' in event && context.asks.includes(event.ask),
		nextHelp: ({ context, event }) =>
			event.type === 'HELP' && context.asks.includes(event.ask) && event.level === (context.help[event.ask] ?? 0) + 1
	},
	actions: {
		type: assign(({ context, event }) =>
			event.type === 'TYPE' ? withEntry(context, event.ask, { text: event.text, notStated: false }) : {}
		),
		cannotState: assign(({ context, event }) =>
			event.type === 'NOT_STATED' ? withEntry(context, event.ask, { notStated: event.on }) : {}
		),
		decide: assign(({ context, event }) =>
			event.type === 'DECIDE' ? withEntry(context, event.ask, { decision: event.decision }) : {}
		),
		giveHelp: assign({
			help: ({ context, event }) => (event.type === 'HELP' ? { ...context.help, [event.ask]: event.level } : context.help)
		}),
		nameMissing: assign({ missing: ({ context }) => emptyAsks(context) }),
		forgetQuery: assign({
			grades: ({ context, event }) => {
				if (!('ask' in event) || context.grades === undefined) return context.grades;
				return Object.fromEntries(Object.entries(context.grades).filter(([id]) => id !== event.ask));
			}
		}),
		keepQueries: assign({
			grades: ({ event }) =>
				event.type === 'GRADED' ? Object.fromEntries(Object.entries(event.grades).filter(([, grade]) => isQuery(grade))) : undefined
		}),
		keepGrades: assign(({ context, event }) =>
			event.type === 'GRADED'
				? {
						grades: event.grades,
						serverDiffers: false,
						focus: firstFocus(context, event.grades),
						chosen: {},
						walk: undefined,
						sent: withSent(context, event.attempt, 'sending')
					}
				: {}
		),
		noteSent: assign(({ context, event }) => (event.type === 'SENT' ? { sent: withSent(context, event.id, event.state) } : {})),
		keepServerGrades: assign(({ context, event }) => {
			if (event.type !== 'SERVER_GRADED') return {};
			const sent = withSent(context, event.id, 'stored');
			if (event.id !== lastAttempt(context) || context.grades === undefined || sameMarks(context.grades, event.grades)) return { sent };
			return { sent, grades: event.grades, serverDiffers: true, focus: firstFocus(context, event.grades), chosen: {} };
		}),
		choose: assign({
			chosen: ({ context, event }) =>
				event.type === 'CHOOSE' ? { ...context.chosen, [event.ask]: event.candidate } : context.chosen
		}),
		focus: assign({ focus: ({ context, event }) => (event.type === 'FOCUS' ? event.ask : context.focus) }),
		startAgain: assign({ grades: undefined, missing: [], chosen: {}, walk: undefined, serverDiffers: false, focus: undefined }),
		startWalk: assign(({ event }) =>
			event.type === 'STEP_THROUGH'
				? {
						focus: event.ask,
						walk: { ask: event.ask, at: 0, of: event.of, steps: Array.from({ length: event.of }, () => ({ text: '', grade: undefined })) }
					}
				: {}
		),
		typeStep: assign({
			walk: ({ context: { walk }, event }) =>
				event.type === 'TYPE_STEP' && walk !== undefined
					? { ...walk, steps: walk.steps.map((step, i) => (i === walk.at ? { text: event.text, grade: undefined } : step)) }
					: walk
		}),
		gradeStep: assign({
			walk: ({ context: { walk }, event }) =>
				event.type === 'STEP_GRADED' && walk !== undefined
					? { ...walk, steps: walk.steps.map((step, i) => (i === walk.at ? { ...step, grade: event.grade } : step)) }
					: walk
		}),
		nextStep: assign({ walk: ({ context: { walk } }) => (walk === undefined ? walk : { ...walk, at: walk.at + 1 }) })
	}
}).createMachine({
	id: 'site-problem',
	context: ({ input }) => startContext(input),
	initial: 'reading',
	on: {
		SENT: { actions: 'noteSent' }
	},
	states: {
		reading: {
			on: {
				WORK: 'working',
				TYPE: { target: 'working', actions: 'type' },
				NOT_STATED: { target: 'working', actions: 'cannotState' },
				DECIDE: { target: 'working', actions: 'decide' },
				HELP: { guard: 'nextHelp', target: 'working', actions: 'giveHelp' },
				CHECK: [{ guard: 'allEntered', target: 'grading' }, { target: 'working', actions: 'nameMissing' }]
			}
		},
		working: {
			on: {
				TYPE: { actions: ['type', 'forgetQuery'] },
				NOT_STATED: { actions: ['cannotState', 'forgetQuery'] },
				DECIDE: { actions: ['decide', 'forgetQuery'] },
				HELP: { guard: 'nextHelp', actions: 'giveHelp' },
				CHECK: [{ guard: 'allEntered', target: 'grading' }, { actions: 'nameMissing' }]
			}
		},
		grading: {
			on: {
				GRADED: [
					{ guard: 'hasQuery', target: 'working', actions: 'keepQueries' },
					{ guard: 'allRight', target: 'solved', actions: 'keepGrades' },
					{ target: 'explained', actions: 'keepGrades' }
				]
			}
		},
		explained: {
			on: {
				SERVER_GRADED: [
					{ guard: 'serverSaysRight', target: 'solved', actions: 'keepServerGrades' },
					{ actions: 'keepServerGrades' }
				],
				CHOOSE: { guard: 'known', actions: 'choose' },
				FOCUS: { guard: 'known', actions: 'focus' },
				TRY_AGAIN: { target: 'working', actions: 'startAgain' },
				STEP_THROUGH: { guard: 'known', target: 'stepping', actions: 'startWalk' },
				NEXT: 'left'
			}
		},
		solved: {
			on: {
				SERVER_GRADED: [
					{ guard: 'serverSaysWrong', target: 'explained', actions: 'keepServerGrades' },
					{ actions: 'keepServerGrades' }
				],
				FOCUS: { guard: 'known', actions: 'focus' },
				STEP_THROUGH: { guard: 'known', target: 'stepping', actions: 'startWalk' },
				TRY_AGAIN: { target: 'working', actions: 'startAgain' },
				NEXT: 'left'
			}
		},
		stepping: {
			on: {
				SERVER_GRADED: { actions: 'keepServerGrades' },
				TYPE_STEP: { guard: 'stepOpen', actions: 'typeStep' },
				STEP_GRADED: { guard: 'stepOpen', actions: 'gradeStep' },
				NEXT_STEP: [{ guard: 'lastStepDone', target: 'walked' }, { guard: 'stepDone', actions: 'nextStep' }],
				LEAVE_STEPS: 'walked',
				TRY_AGAIN: { target: 'working', actions: 'startAgain' },
				NEXT: 'left'
			}
		},
		/** After the step-through: the explanation again, with every step worked. */
		walked: {
			on: {
				SERVER_GRADED: { actions: 'keepServerGrades' },
				CHOOSE: { guard: 'known', actions: 'choose' },
				FOCUS: { guard: 'known', actions: 'focus' },
				TRY_AGAIN: { target: 'working', actions: 'startAgain' },
				STEP_THROUGH: { guard: 'known', target: 'stepping', actions: 'startWalk' },
				NEXT: 'left'
			}
		},
		left: { type: 'final' }
	}
});

export type FlowState = 'reading' | 'working' | 'grading' | 'explained' | 'solved' | 'stepping' | 'walked' | 'left';
