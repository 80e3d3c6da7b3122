import type { TermId } from '../model.ts';

/** Terms whose band is left open: nothing is drawn but an arrow (free fall) or nothing at all (other). */
const OPEN: readonly TermId[] = ['free-fall', 'other'];

/** The fill of a term's band: a pattern of the drawing whose prefix is `patterns`, or open. */
export function hatchFill(term: TermId, patterns: string): string {
	return OPEN.includes(term) ? 'none' : `url(#${patterns}-${term})`;
}
