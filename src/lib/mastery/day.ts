/** Days of the calendar, counted: a date goes in, nothing reads a clock. */

/** @source lengths of the months, January first, in a year that is no leap year (Gregorian calendar) */
const MONTH_DAYS: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
/** @source February, counted from 0 (Gregorian calendar) */
const FEBRUARY = 1;
/** @source days of a year that is no leap year (Gregorian calendar) */
const YEAR_DAYS = 365;
/** @source every fourth year is a leap year, every hundredth is none, every four hundredth is one (Gregorian calendar) */
const LEAP = { every: 4, butNot: 100, yet: 400 };
/** @reason a date is written with four digits for the year */
const YEAR_DIGITS = 4;

/**
 * @param day a date as YYYY-MM-DD.
 * @returns its number, counted from 1 January of the year 0; the next day has the next number.
 * @throws RangeError if it is no date of the calendar.
 */
export function dayNumber(day: string): number {
	const [, year, month, date] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day)?.map(Number) ?? [];
	if (year !== undefined && month !== undefined && date !== undefined) {
		if (month >= 1 && month <= MONTH_DAYS.length && date >= 1 && date <= lengthOf(year, month - 1)) {
			return daysBefore(year, month - 1) + date - 1;
		}
	}
	throw new RangeError(`${JSON.stringify(day)} is no date; write it as YYYY-MM-DD`);
}

/**
 * @param day a date as YYYY-MM-DD.
 * @param count how many days later; earlier if it is below 0.
 * @returns that date.
 * @throws RangeError if `day` is no date of the calendar.
 */
export function daysAfter(day: string, count: number): string {
	return dateOf(dayNumber(day) + count);
}

/** @returns the date of a number, as `dayNumber` counts them. @param goal from 0 */
function dateOf(goal: number): string {
	// No later than the year it is in, and a few years before it at most.
	let year = Math.floor(goal / (YEAR_DAYS + 1));
	while (daysBefore(year + 1, 0) <= goal) year += 1;
	let month = 0;
	while (month + 1 < MONTH_DAYS.length && daysBefore(year, month + 1) <= goal) month += 1;
	return written(year, month + 1, goal - daysBefore(year, month) + 1);
}

/** @returns a date as YYYY-MM-DD. @param month from 1 */
function written(year: number, month: number, date: number): string {
	const parts = [month, date];
	return [String(year).padStart(YEAR_DIGITS, '0'), ...parts.map((part) => String(part).padStart(2, '0'))].join('-');
}

/**
 * @param day a date as YYYY-MM-DD.
 * @returns the date some months later; where that month has no such day, its last one: 31 January and one month is the
 * last of February.
 * @throws RangeError if `day` is no date of the calendar.
 */
export function monthsAfter(day: string, months: number): string {
	const [year = NaN, month = NaN, date = NaN] = day.split('-').map(Number);
	dayNumber(day);
	const count = year * MONTH_DAYS.length + (month - 1) + months;
	const to = { year: Math.floor(count / MONTH_DAYS.length), month: count - Math.floor(count / MONTH_DAYS.length) * MONTH_DAYS.length };
	return written(to.year, to.month + 1, Math.min(date, lengthOf(to.year, to.month)));
}

function isLeap(year: number): boolean {
	return year % LEAP.every === 0 && (year % LEAP.butNot !== 0 || year % LEAP.yet === 0);
}

function lengthOf(year: number, month: number): number {
	return (MONTH_DAYS[month] ?? 0) + (month === FEBRUARY && isLeap(year) ? 1 : 0);
}

/** Days from the start of the year 0 to the start of a month. */
function daysBefore(year: number, month: number): number {
	const years = Math.max(year - 1, 0);
	const leaps =
		Math.floor(years / LEAP.every) - Math.floor(years / LEAP.butNot) + Math.floor(years / LEAP.yet);
	const whole = year === 0 ? 0 : year * YEAR_DAYS + leaps + 1;
	let days = whole;
	for (let m = 0; m < month; m += 1) days += lengthOf(year, m);
	return days;
}
