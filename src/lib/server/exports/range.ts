/** From which day to which day an export goes. */
import * as z from 'zod';
import { NO_END, addDays } from '#lib/records/index.ts';
import { dayIn } from '../course/day.ts';
import type { Span } from '../db/audit.ts';

/** Local days at the site, both within it. */
export interface DayRange {
	readonly from: string;
	readonly to: string;
}

/** Before and after every day there is. */
export const ALL_DAYS: DayRange = Object.freeze({ from: '0000-01-01', to: NO_END });

export type ReadRange = { readonly kind: 'read'; readonly range: DayRange } | { readonly kind: 'refused'; readonly field: 'from' | 'to'; readonly problem: 'not-a-day' | 'ends-before' };

/** @returns whether a text is a day that a calendar has, YYYY-MM-DD. */
function isDay(text: string): boolean {
	return !text.startsWith('0') && z.iso.date().safeParse(text).success;
}

/** Reads what was typed; a field left empty sets no bound. */
export function readRange(from: string, to: string): ReadRange {
	const typed = { from: from.trim(), to: to.trim() };
	for (const field of ['from', 'to'] as const) if (typed[field] !== '' && !isDay(typed[field])) return { kind: 'refused', field, problem: 'not-a-day' };
	const range = { from: typed.from || ALL_DAYS.from, to: typed.to || ALL_DAYS.to };
	return range.to < range.from ? { kind: 'refused', field: 'to', problem: 'ends-before' } : { kind: 'read', range };
}

/** Whether a day is one of a range: both its ends are. */
export function isWithin(day: string, { from, to }: DayRange): boolean {
	return from <= day && day <= to;
}

const HOUR = 3_600_000;
/** @reason no zone is further than 14 hours from UTC; a day has one more hour, or one less, where clocks change */
const WIDEST = 26 * HOUR;

/** When a local day begins in a zone, ISO 8601, UTC. */
function beginning(zone: string, day: string): string {
	const about = Date.parse(`${day}T00:00:00.000Z`);
	// The first moment that is of this day: halved down to a millisecond between one before and one after.
	let [before, after] = [about - WIDEST, about + WIDEST];
	while (after - before > 1) {
		const middle = Math.floor((before + after) / 2);
		if (dayIn(zone, new Date(middle)) < day) before = middle;
		else after = middle;
	}
	return new Date(after).toISOString();
}

/** @returns the span of time that local days take in a zone. */
export function spanOf(zone: string, { from, to }: DayRange): Span {
	return {
		from: from === ALL_DAYS.from ? null : beginning(zone, from),
		before: to === ALL_DAYS.to ? null : beginning(zone, addDays(to, 1))
	};
}
