/** Days as they stand in a calendar, YYYY-MM-DD: without zone and without clock. */
import { dayNumber, daysAfter, monthsAfter } from '#lib/mastery/index.ts';

/** No last day: after every other. */
export const NO_END = '9999-12-31';

/** Before every other day. */
export const LEAST_DAY = '0001-01-01';

/**
 * @returns the day some months later; where that month has no such day, its last: 31 January and one month is the last
 * of February. @param months may be negative
 * @throws RangeError for a text that is no day
 */
export function addMonths(day: string, months: number): string {
	return monthsAfter(day, months);
}

/** @returns the day some days later. @param days may be negative @throws RangeError for a text that is no day */
export function addDays(day: string, days: number): string {
	return daysAfter(day, days);
}

/** @returns how many days lie between; negative where the second is earlier. @throws RangeError for a text that is no day */
export function daysBetween(from: string, to: string): number {
	return dayNumber(to) - dayNumber(from);
}
