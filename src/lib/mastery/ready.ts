/** Ready, mastered, stuck: what the course asks about a cell. */
import { rowNeeded, stuck } from './observe.ts';
import { cellOf, type Mastery } from './state.ts';

/** @returns whether a cell is ready now: it opens the next lesson; see `observe` for the rule. */
export function isReady(mastery: Mastery, cell: string): boolean {
	return cellOf(mastery, cell).ready;
}

/**
 * @returns the first day on which a cell was ready, YYYY-MM-DD, or undefined. It stays when a later wrong answer
 * takes readiness away: an opened lesson does not close again.
 */
export function readySince(mastery: Mastery, cell: string): string | undefined {
	return cellOf(mastery, cell).readySince ?? undefined;
}

/**
 * @returns whether a cell is mastered: ready now, and the last answer of the row came on a later day than the first
 * ready one. What was wrong in between has to be made good by a whole row again.
 */
export function isMastered(mastery: Mastery, cell: string): boolean {
	const { ready, readySince: since, tries } = cellOf(mastery, cell);
	const last = tries.at(-1);
	return ready && since !== null && last !== undefined && last.day > since;
}

/** @returns whether a cell took more than `STUCK_AFTER` problems without ever being ready: the trainer is told. */
export function isStuck(mastery: Mastery, cell: string): boolean {
	return stuck(cellOf(mastery, cell));
}

/** How far a cell is from ready. */
export interface Row {
	/** Right first tries without help in a row. */
	readonly right: number;
	/** How many there must be; it may grow by answers that are easy to guess. */
	readonly needed: number;
}

/** @returns how many right first tries in a row a cell has, and how many ready needs. */
export function rowOf(mastery: Mastery, cell: string): Row {
	const state = cellOf(mastery, cell);
	return { right: state.row, needed: rowNeeded(state) };
}
