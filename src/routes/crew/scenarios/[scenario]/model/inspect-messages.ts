/** What the page asks of the worker that inspects, and what it answers. Plain data: it is copied from one to the other. */
import type { Inspection, Problem, Scenario, TurnedDownCounts } from '#lib/scenario/index.ts';
import type { Json } from './document.ts';
import type { SchemaProblem } from './schema-problems.ts';

/** How long the page waits after a change before it asks, ms. @reason letters of a word that is typed quickly make one change; what is seen still comes well within 300 ms. */
export const GATHER = 30;

export type Asked =
	/** Inspect this document; an older one is of no interest any more. */
	| { readonly kind: 'document'; readonly run: number; readonly document: Json; readonly seed: number }
	/** Draw another example of the document at hand. */
	| { readonly kind: 'example'; readonly run: number; readonly seed: number };

export type Answered =
	| { readonly kind: 'problems'; readonly run: number; readonly problems: readonly SchemaProblem[] }
	/** It fits the schema. */
	| { readonly kind: 'fits'; readonly run: number; readonly scenario: Scenario }
	/** A drawn example: of the seed that was asked for, or the next that gives one. */
	| { readonly kind: 'example'; readonly run: number; readonly seed: number; readonly problem: Problem | undefined; readonly reasons: TurnedDownCounts }
	| { readonly kind: 'progress'; readonly run: number; readonly done: number; readonly of: number }
	| { readonly kind: 'inspected'; readonly run: number; readonly inspection: Inspection }
	/** Drawing it failed in a way that nobody foresaw. */
	| { readonly kind: 'failed'; readonly run: number; readonly message: string };
