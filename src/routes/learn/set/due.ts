/** When a set is due, in words. */
import type { Messages } from '#lib/text/index.ts';
import { dayText } from '../../day-text.ts';

/** What a set says of its due day. */
export interface DueSet {
	/** YYYY-MM-DD; null for none. */
	readonly dueDay: string | null;
	readonly late: boolean;
}

/** @param today YYYY-MM-DD where the learner works. @returns when a set that is not done is due; empty for no day */
export function dueText(m: Messages, { dueDay, late }: DueSet, today: string, language: 'en' | 'es'): string {
	if (dueDay === null) return '';
	const day = dayText(dueDay, language);
	if (late) return m.ownSets.late({ day });
	return dueDay === today ? m.ownSets.dueToday : m.ownSets.due({ day });
}
