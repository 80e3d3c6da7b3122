import type { Selectable } from 'kysely';
import type { Database } from './open.ts';
import type { JobReportTable } from './schema.ts';

export type JobReportRow = Readonly<Selectable<JobReportTable>>;

export async function insertJobReport(db: Database, row: JobReportRow): Promise<void> {
	await db.insertInto('job_report').values(row).execute();
}

/**
 * @returns the last report of a job that ended so; null if there is none
 * @param organisation null for jobs of the whole server
 * @param until ISO 8601: what ended later is left out
 */
export async function lastReport(db: Database, job: string, organisation: string | null, outcome?: JobReportRow['outcome'], until?: string): Promise<JobReportRow | null> {
	let query = db.selectFrom('job_report').selectAll().where('job', '=', job).where('organisation_id', organisation === null ? 'is' : '=', organisation);
	if (outcome !== undefined) query = query.where('outcome', '=', outcome);
	if (until !== undefined) query = query.where('ended_at', '<=', until);
	return (await query.orderBy('ended_at', 'desc').orderBy('id').limit(1).executeTakeFirst()) ?? null;
}

/** @returns the newest reports of an organisation and of the whole server. */
export async function reportsFor(db: Database, organisation: string, most: number): Promise<readonly JobReportRow[]> {
	return db
		.selectFrom('job_report')
		.selectAll()
		.where((eb) => eb.or([eb('organisation_id', '=', organisation), eb('organisation_id', 'is', null)]))
		.orderBy('ended_at', 'desc')
		.orderBy('id')
		.limit(most)
		.execute();
}
