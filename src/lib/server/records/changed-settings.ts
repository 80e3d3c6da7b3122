/** Changing what an organisation wants of its records. */
import { recordLaw } from '#lib/rules/index.ts';
import type { Database } from '../db/open.ts';
import { putRecordSettings } from '../db/records.ts';
import { noteDeed } from '../people/crews.ts';
import { settingsOf } from '../people/organisation.ts';
import type { Person } from '../people/who.ts';
import type { RecordSettings } from './found.ts';

/** Least and most of each. */
export const SETTING_BOUNDS = {
	/** @reason as the chain's schema has it: ten years are no period any more */
	validityMonths: { least: 1, most: 120 },
	/** @reason an end that is a year away is not soon */
	soonDays: { least: 1, most: 365 },
	/** @source O. Reg. 213/91, s. 19: records are kept for a year after the end of a project; fifty years outlast employment */
	keepMonths: { least: 12, most: 600 }
} as const;

export type SettingsChange =
	| { readonly kind: 'changed' }
	/** The own period is longer than law's, which holds then: it would say something that is not so. */
	| { readonly kind: 'not-stricter'; readonly law: number };

/**
 * Changes what the employer's organisation wants of its records. It holds for what comes: entries that are there keep
 * the end that they have.
 * @param settings within SETTING_BOUNDS
 */
export async function changeRecordSettings(db: Database, employer: Person, settings: RecordSettings, now: Date): Promise<SettingsChange> {
	const law = recordLaw((await settingsOf(db, employer.organisation)).rules)?.validity.months ?? null;
	const { validityMonths, soonDays, keepMonths } = settings;
	if (law !== null && validityMonths !== null && validityMonths > law) return { kind: 'not-stricter', law };
	return db.transaction().execute(async (transaction): Promise<SettingsChange> => {
		await putRecordSettings(transaction, {
			organisation_id: employer.organisation,
			validity_months: validityMonths,
			soon_days: soonDays,
			keep_months: keepMonths,
			changed_at: now.toISOString()
		});
		await noteDeed(transaction, employer, 'record-settings-changed', employer.organisation, now, {
			validityMonths: validityMonths ?? 'law',
			soonDays,
			keepMonths: keepMonths ?? 'never'
		});
		return { kind: 'changed' };
	});
}
