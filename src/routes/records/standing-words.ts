/** How somebody stands, as the pages of employers show it: a shape, a day, a few words. */
import { NO_END, type TrainingState } from '#lib/records/index.ts';
import type { Remark } from '#lib/server/index.ts';
import type { EmployerMessages } from '#lib/text/index.ts';
import { dayText } from '../day-text.ts';

type Words = EmployerMessages['training'];

/** The shape of each state. */
export const STATE_SHAPES = {
	current: 'current',
	'expires-soon': 'soon',
	expired: 'expired',
	'in-training': 'training',
	never: 'open'
} as const satisfies Readonly<Record<TrainingState, string>>;

/** @returns the last valid day in words. @param month short in tables */
export function untilText(t: Words, language: 'en' | 'es', until: string | null, month: 'long' | 'short' = 'short'): string {
	if (until === null) return t.noDay;
	return until === NO_END ? t.noEnd : dayText(until, language, month);
}

/** @returns what else there is to know; empty for nothing. */
export function remarkText(t: Words, language: 'en' | 'es', remark: Remark | undefined): string {
	const { remarks } = t;
	switch (remark?.kind) {
		case undefined:
			return '';
		case 'left':
			return remarks.left;
		case 'days-left':
			return remarks.daysLeft({ count: remark.n });
		case 'days-ago':
			return remarks.daysAgo({ count: remark.n });
		case 'months-left':
			return remarks.monthsLeft({ count: remark.n });
		case 'months-ago':
			return remarks.monthsAgo({ count: remark.n });
		case 'last-day':
			return remarks.lastDay;
		case 'no-end':
			return remarks.noEnd;
		case 'retraining-due':
			return remarks.retrainingDue({ day: dayText(remark.day, language, 'short') });
		case 'sign-off-missing':
			return remarks.signOffMissing;
		case 'revoked':
			return remarks.revoked;
		case 'lessons':
			return remarks.lessons({ n: remark.passed, of: remark.of });
		case 'not-begun':
			return remarks.notBegun;
	}
}
