/** How one record stands on a day: what a certificate of it is worth. */
import { NO_END, addDays } from './days.ts';
import type { PersonRecord, TrainingRecord } from './person-record.ts';
import { isWhole } from './person-record.ts';
import { endsAtOnce } from './reasons.ts';

/** What a record is worth: nothing counts more than that it was taken back, then that it is over. */
export type Standing = 'valid' | 'theory-only' | 'expired' | 'revoked';

/**
 * @returns the last local day on which a record is valid: its own, or that of the first order of retraining after it;
 * `NO_END` for no end
 */
export function lastDayOf(person: PersonRecord, one: TrainingRecord): string {
	const ordered = person.orders.filter((order) => !order.withdrawn && order.seq > one.seq);
	const ends = ordered.map(({ entry }) => (endsAtOnce(entry.reason) ? addDays(entry.day, -1) : entry.due));
	return [one.validUntil ?? NO_END, ...ends].reduce((a, b) => (a < b ? a : b));
}

/** @returns how a record stands. @param today local day at the site */
export function standingOf(person: PersonRecord, one: TrainingRecord, today: string): Standing {
	if (one.revoked !== undefined) return 'revoked';
	if (lastDayOf(person, one) < today) return 'expired';
	return isWhole(one) ? 'valid' : 'theory-only';
}

/**
 * Whether what was handed out of a record has to be refused by whoever checks it: the record was taken back, or the
 * sign-off was with which it may have been handed out.
 */
export function isWithdrawn(person: PersonRecord, one: TrainingRecord): boolean {
	if (one.revoked !== undefined) return true;
	return !isWhole(one) && person.signOffs.some((signOff) => signOff.run === one.run && signOff.revoked !== undefined);
}
