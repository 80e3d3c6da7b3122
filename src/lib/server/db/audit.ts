import type { Insertable, Selectable } from 'kysely';
import type { Database } from './open.ts';
import type { AuditTable } from './schema.ts';

export async function insertAudit(db: Database, row: Readonly<Insertable<AuditTable>>): Promise<void> {
	await db.insertInto('audit').values(row).execute();
}

/** What happened in an organisation, newest first. */
export async function auditOf(db: Database, organisation: string, most: number): Promise<readonly Readonly<Selectable<AuditTable>>[]> {
	return db
		.selectFrom('audit')
		.selectAll()
		.where('organisation_id', '=', organisation)
		.orderBy('at', 'desc')
		.orderBy('id')
		.limit(most)
		.execute();
}
