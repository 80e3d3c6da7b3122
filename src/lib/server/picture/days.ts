/** Days as the clocks of a zone count them, and when they are. */
import { dayIn } from '../course/day.ts';

const DAY = 24 * 60 * 60 * 1000;
/** @reason a day far off, wherever clocks are: no answer is that old or that new */
const YEARS = { first: 2000, last: 2199 };

/** @returns whether a text is a day of the calendar: `2026-11-30`. */
export function isDay(text: string): boolean {
	const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
	if (parts === null) return false;
	const year = Number(parts[1]);
	const at = new Date(`${text}T00:00:00.000Z`);
	return year >= YEARS.first && year <= YEARS.last && !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
}

/** @returns the day after one. */
export function dayAfter(day: string): string {
	return new Date(Date.parse(`${day}T00:00:00.000Z`) + DAY).toISOString().slice(0, day.length);
}

/** By how much the clocks of a zone are ahead of UTC, ms. */
function aheadAt(zone: string, at: number): number {
	const parts = new Intl.DateTimeFormat('en-GB', {
		timeZone: zone,
		hourCycle: 'h23',
		year: 'numeric',
		month: '2-digit',
		day: '2-digit',
		hour: '2-digit',
		minute: '2-digit',
		second: '2-digit'
	}).formatToParts(new Date(at));
	const part = (type: Intl.DateTimeFormatPartTypes): number => Number(parts.find((one) => one.type === type)?.value ?? NaN);
	return Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'), part('second')) - Math.floor(at / 1000) * 1000;
}

/**
 * @param day a day of the calendar. @param zone an IANA zone
 * @returns when a local day begins, ISO 8601, UTC. Where clocks change at midnight, it is the first moment that has this date.
 */
export function dayStart(zone: string, day: string): string {
	const midnight = Date.parse(`${day}T00:00:00.000Z`);
	// The clocks may change on this very day: what holds a day before, and what holds a day after.
	const starts = [midnight - DAY, midnight + DAY].map((at) => midnight - aheadAt(zone, at)).sort((a, b) => a - b);
	const first = starts.find((at) => dayIn(zone, new Date(at)) === day) ?? midnight;
	return new Date(first).toISOString();
}
