/**
 * The flow of a check, lesson check and final check alike: answer a page → look it over → hand it in → the
 * server judges → another page, or the end. Pure: which items a page has, and what the rule says of the answers,
 * comes in with the events. Nothing is told of right and wrong before the end.
 */
import { assign, setup } from 'xstate';

export interface CheckInput {
	/** Ids of the items on the first page, in order. */
	readonly items: readonly string[];
}

export interface CheckContext {
	/** Ids of the items on the page at hand, in order. */
	readonly items: readonly string[];
	/** Those that are answered. */
	readonly filled: readonly string[];
	/** Those that were still empty when the learner wanted to hand the page in. */
	readonly missing: readonly string[];
	/** Pages handed in. */
	readonly pages: number;
}

/** How a check can end. `cells-open`: a lesson must be done again first. */
export type CheckEnd = 'passed' | 'failed' | 'cells-open';

export type CheckEvent =
	/** An answer was stored, or taken back. */
	| { readonly type: 'FILLED'; readonly item: string }
	| { readonly type: 'EMPTIED'; readonly item: string }
	/** Look the page over before it is handed in. */
	| { readonly type: 'REVIEW' }
	| { readonly type: 'BACK' }
	| { readonly type: 'HAND_IN' }
	/** From the server: what the rule says after this page, and the items of the next one. */
	| { readonly type: 'JUDGED'; readonly standing: CheckEnd | 'more'; readonly items: readonly string[] };

function emptyItems(context: CheckContext): readonly string[] {
	return context.items.filter((item) => !context.filled.includes(item));
}

export const checkMachine = setup({
	types: { context: {} as CheckContext, events: {} as CheckEvent, input: {} as CheckInput },
	guards: {
		onPage: ({ context, event }) => 'item' in event && context.items.includes(event.item),
		allFilled: ({ context }) => emptyItems(context).length === 0,
		more: ({ event }) => event.type === 'JUDGED' && event.standing === 'more',
		passed: ({ event }) => event.type === 'JUDGED' && event.standing === 'passed',
		cellsOpen: ({ event }) => event.type === 'JUDGED' && event.standing === 'cells-open'
	},
	actions: {
		fill: assign(({ context, event }) =>
			event.type === 'FILLED'
				? {
						filled: context.filled.includes(event.item) ? context.filled : [...context.filled, event.item],
						missing: context.missing.filter((item) => item !== event.item)
					}
				: {}
		),
		empty: assign({
			filled: ({ context, event }) =>
				event.type === 'EMPTIED' ? context.filled.filter((item) => item !== event.item) : context.filled
		}),
		nameMissing: assign({ missing: ({ context }) => emptyItems(context) }),
		turn: assign(({ context, event }) =>
			event.type === 'JUDGED' ? { items: event.items, filled: [], missing: [], pages: context.pages + 1 } : {}
		)
	}
}).createMachine({
	id: 'check',
	context: ({ input }) => ({ items: input.items, filled: [], missing: [], pages: 0 }),
	initial: 'answering',
	states: {
		answering: {
			on: {
				FILLED: { guard: 'onPage', actions: 'fill' },
				EMPTIED: { guard: 'onPage', actions: 'empty' },
				REVIEW: { target: 'reviewing', actions: 'nameMissing' }
			}
		},
		/** The whole page, before it is handed in: the last moment at which an answer can be changed. */
		reviewing: {
			on: {
				FILLED: { guard: 'onPage', actions: 'fill' },
				EMPTIED: { guard: 'onPage', actions: 'empty' },
				BACK: 'answering',
				HAND_IN: [{ guard: 'allFilled', target: 'judging' }, { actions: 'nameMissing' }]
			}
		},
		judging: {
			on: {
				JUDGED: [
					{ guard: 'more', target: 'answering', actions: 'turn' },
					{ guard: 'passed', target: 'passed', actions: 'turn' },
					{ guard: 'cellsOpen', target: 'cellsOpen', actions: 'turn' },
					{ target: 'failed', actions: 'turn' }
				]
			}
		},
		passed: { type: 'final' },
		failed: { type: 'final' },
		cellsOpen: { type: 'final' }
	}
});

export type CheckPlace = 'answering' | 'reviewing' | 'judging' | 'passed' | 'failed' | 'cellsOpen';
