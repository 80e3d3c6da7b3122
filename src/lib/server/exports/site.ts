/** Whose records are exported, and when. */
import { findOrganisation, type OrganisationRow } from '../db/people.ts';
import type { Database } from '../db/open.ts';
import { dayIn } from '../course/day.ts';
import { recordSettings, type RecordSettings } from '../records/found.ts';
import type { Today } from './people-rows.ts';

/** What every export of an organisation needs to know. */
export interface ExportSite {
	readonly organisation: OrganisationRow;
	readonly settings: RecordSettings;
	readonly today: Today;
	readonly now: Date;
}

/** @throws Error for an organisation that there is none of */
export async function exportSite(db: Database, id: string, now: Date): Promise<ExportSite> {
	const organisation = await findOrganisation(db, id);
	if (organisation === null) throw new Error('There is no such organisation');
	const settings = await recordSettings(db, id);
	return { organisation, settings, now, today: { zone: organisation.zone, day: dayIn(organisation.zone, now), soonDays: settings.soonDays } };
}
