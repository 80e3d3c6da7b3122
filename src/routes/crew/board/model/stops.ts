/** What the board shows one after the other: problem, question, each step, the right answer, each number called, the fall. */

export type Stop =
	| { readonly kind: 'problem' }
	| { readonly kind: 'class' }
	/** The working up to this step, from 1. */
	| { readonly kind: 'step'; readonly n: number }
	| { readonly kind: 'answer' }
	/** What is behind a number that the class called, by its place in the list. */
	| { readonly kind: 'called'; readonly at: number }
	| { readonly kind: 'fall' };

/** What there is to show of one question. */
export interface Showing {
	/** Steps of its working; none where it cannot be worked out. */
	readonly steps: number;
	/** Numbers that the class called. */
	readonly called: number;
	/** Refused by name: nothing is asked of such a plan. */
	readonly refused: boolean;
}

/** @returns the stops of a question, in order; never empty. */
export function stopsOf({ steps, called, refused }: Showing): readonly Stop[] {
	if (refused) return [{ kind: 'problem' }];
	return [
		{ kind: 'problem' },
		{ kind: 'class' },
		...Array.from({ length: steps }, (_, i): Stop => ({ kind: 'step', n: i + 1 })),
		{ kind: 'answer' },
		...Array.from({ length: called }, (_, at): Stop => ({ kind: 'called', at })),
		{ kind: 'fall' }
	];
}

function same(a: Stop, b: Stop): boolean {
	if (a.kind === 'step') return b.kind === 'step' && a.n === b.n;
	return a.kind === 'called' ? b.kind === 'called' && a.at === b.at : a.kind === b.kind;
}

/** @returns the place of a stop; 0 for one that is not there any more. */
export function placeOf(stops: readonly Stop[], stop: Stop): number {
	return Math.max(
		0,
		stops.findIndex((one) => same(one, stop))
	);
}

/** @returns the stop after or before this one; at either end it stays. */
export function beside(stops: readonly Stop[], stop: Stop, way: 1 | -1): Stop {
	const place = Math.max(0, Math.min(stops.length - 1, placeOf(stops, stop) + way));
	return stops[place] ?? { kind: 'problem' };
}
