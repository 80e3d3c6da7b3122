/** Ready, mastered, stuck: what the course asks about a cell. */
import { TRIES_IN_A_ROW } from './observe.ts';
import { cellOf, type Mastery } from './state.ts';

/**
 * Problems in one cell after which a learner who was never ready is stuck, and the trainer is told.
 * @source reference/learning-and-records.md 5.1, checks
 */
export const STUCK_AFTER = 25;

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

/** @returns whether a cell took more than `STUCK_AFTER` problems without ever being ready. */
export function isStuck(mastery: Mastery, cell: string): boolean {
	const { seen, readySince: since } = cellOf(mastery, cell);
	return since === null && seen > STUCK_AFTER;
}

/** @returns how many right first tries in a row a cell has, at most as many as ready needs. */
export function rowOf(mastery: Mastery, cell: string): number {
	const { tries } = cellOf(mastery, cell);
	const lastWrong = tries.map((one) => one.right).lastIndexOf(false);
	return Math.min(tries.length - 1 - lastWrong, TRIES_IN_A_ROW);
}
