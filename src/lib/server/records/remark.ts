/** What is said of how a person stands, beside the state itself. */
import { NO_END, addMonths, daysBetween, type TrainingState } from '#lib/records/index.ts';
import type { ListedTraining } from '../db/training.ts';

/** One thing, as a code with its numbers: words are in the catalogue. */
export type Remark =
	| { readonly kind: 'left' }
	| { readonly kind: 'days-left' | 'days-ago' | 'months-left' | 'months-ago'; readonly n: number }
	/** The last day is today. */
	| { readonly kind: 'last-day' }
	| { readonly kind: 'no-end' }
	| { readonly kind: 'retraining-due'; readonly day: string }
	| { readonly kind: 'sign-off-missing' }
	| { readonly kind: 'revoked' }
	| { readonly kind: 'lessons'; readonly passed: number; readonly of: number }
	| { readonly kind: 'not-begun' };

/** From how many days on it is told in months. @reason nobody counts further in days */
const MONTHS_FROM = 60;

/** @returns the month of a day, counted from the first of the calendar. */
function monthOf(day: string): number {
	const [year = 0, month = 0] = day.split('-').map(Number);
	return 12 * year + month;
}

/** @returns how long it is between two days: in days, from two months on in whole months. */
function span(from: string, to: string): { readonly unit: 'days' | 'months'; readonly n: number } {
	const days = daysBetween(from, to);
	if (days <= MONTHS_FROM) return { unit: 'days', n: days };
	const months = monthOf(to) - monthOf(from);
	return { unit: 'months', n: addMonths(from, months) <= to ? months : months - 1 };
}

/**
 * @param one how the person stands
 * @param lessons lessons passed of how many; null where that was not counted
 * @param today local day at the site
 * @returns what an employer wants to know next: what is missing, else how long it is valid or was; undefined where nothing is to be said
 */
export function remarkOn(
	one: Pick<ListedTraining, 'gone' | 'until' | 'due' | 'detail'>,
	state: TrainingState,
	lessons: { readonly passed: number; readonly of: number } | null,
	today: string
): Remark | undefined {
	if (one.gone) return { kind: 'left' };
	if (one.detail === 'sign-off-missing' && state !== 'current' && state !== 'expires-soon') return { kind: 'sign-off-missing' };
	if (one.due !== null) return { kind: 'retraining-due', day: one.due };
	if (one.until !== null) {
		if (one.until === NO_END) return { kind: 'no-end' };
		if (one.until === today) return { kind: 'last-day' };
		const past = one.until < today;
		const { unit, n } = past ? span(one.until, today) : span(today, one.until);
		return { kind: past ? `${unit}-ago` : `${unit}-left`, n };
	}
	if (one.detail === 'revoked') return { kind: 'revoked' };
	if (state === 'never') return { kind: 'not-begun' };
	return lessons === null ? undefined : { kind: 'lessons', ...lessons };
}
