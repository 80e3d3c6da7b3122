/**
 * When a cell is asked for again. The first refresher is due one day after the cell was ready for the first time, the
 * next a week after that one was answered right, then a month, then every 90 days. A refresher is answered by a first
 * try without help on the day it is due or later; what is answered right before that day, or with help, moves nothing.
 * A wrong first try starts the ladder again, whenever it comes: it says the same about what was kept.
 */
import { dayNumber, daysAfter } from './day.ts';
import type { FirstTry, Mastery, Refresh } from './state.ts';

/**
 * Days from one refresher to the next; the last is used again and again.
 * @source reference/learning-and-records.md 5: fixed 1, 7, 30 days, then every 90 (Latimier et al. 2021: expanding
 * intervals are no better than even ones)
 */
export const REFRESH_DAYS: readonly number[] = Object.freeze([1, 7, 30, 90]);

/** A refresher that is due. */
export interface Due {
	readonly cell: string;
	/** The day it became due, YYYY-MM-DD. */
	readonly since: string;
	/** Days since then; 0 on the day itself. */
	readonly overdue: number;
}

/**
 * @param mastery what is known of the learner.
 * @param today date at the learner's place, YYYY-MM-DD.
 * @returns the refreshers due, the longest overdue first, those of one day in order of their cells' names.
 * @throws RangeError if today is no date.
 */
export function refreshersDue(mastery: Mastery, today: string): readonly Due[] {
	const now = dayNumber(today);
	return Object.entries(mastery.cells)
		.flatMap(([cell, { refresh }]) => (refresh === null ? [] : [{ cell, since: dueOn(refresh) }]))
		.map(({ cell, since }) => ({ cell, since, overdue: now - dayNumber(since) }))
		.filter(({ overdue }) => overdue >= 0)
		.sort((a, b) => b.overdue - a.overdue || (a.cell < b.cell ? -1 : 1));
}

/**
 * @param mastery what is known of the learner.
 * @returns every refresher to come or due, with its day, the next first.
 */
export function refreshersAhead(mastery: Mastery): readonly { readonly cell: string; readonly on: string }[] {
	return Object.entries(mastery.cells)
		.flatMap(([cell, { refresh }]) => (refresh === null ? [] : [{ cell, on: dueOn(refresh) }]))
		.sort((a, b) => (a.on === b.on ? (a.cell < b.cell ? -1 : 1) : a.on < b.on ? -1 : 1));
}

/**
 * @param refresh where the cell stood on the ladder; null if it was never ready.
 * @param tried a first try without help.
 * @param ready whether the cell is ready after it.
 * @returns where it stands then.
 */
export function afterTry(refresh: Refresh | null, tried: FirstTry, ready: boolean): Refresh | null {
	if (refresh === null) return ready ? { rung: 0, from: tried.day } : null;
	if (!tried.right) return { rung: 0, from: later(refresh.from, tried.day) };
	if (dayNumber(tried.day) < dayNumber(dueOn(refresh))) return refresh;
	return { rung: Math.min(refresh.rung + 1, REFRESH_DAYS.length - 1), from: tried.day };
}

function dueOn({ rung, from }: Refresh): string {
	const days = REFRESH_DAYS[Math.min(rung, REFRESH_DAYS.length - 1)] ?? 0;
	return daysAfter(from, days);
}

/** The later of two dates, so that a clock set back brings no refresher forward. */
function later(a: string, b: string): string {
	return a < b ? b : a;
}
