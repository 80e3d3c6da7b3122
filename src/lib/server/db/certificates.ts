/** Codes of certificates, and what the list of withdrawn credentials is made of. */
import type { Selectable } from 'kysely';
import type { Database } from './open.ts';
import type { CertificateTable } from './schema.ts';

export type CertificateRow = Readonly<Selectable<CertificateTable>>;

/** Inserts a certificate. @returns whether it was; not where its record has one, or its place in the list is taken */
export async function insertCertificate(db: Database, row: CertificateRow): Promise<boolean> {
	const result = await db
		.insertInto('certificate')
		.values(row)
		.onConflict((conflict) => conflict.doNothing())
		.executeTakeFirst();
	return result.numInsertedOrUpdatedRows === 1n;
}

/** @returns the certificate of a record; null where none was made. */
export async function certificateOf(db: Database, organisation: string, record: string): Promise<CertificateRow | null> {
	return (await db.selectFrom('certificate').selectAll().where('organisation_id', '=', organisation).where('record_id', '=', record).executeTakeFirst()) ?? null;
}

/** @returns the certificate of a code, of whatever organisation: whoever holds the code may ask. */
export async function certificateByCode(db: Database, code: string): Promise<CertificateRow | null> {
	return (await db.selectFrom('certificate').selectAll().where('code', '=', code).executeTakeFirst()) ?? null;
}

/** @returns the certificate at a place of an organisation's list. */
export async function certificateAt(db: Database, organisation: string, index: number): Promise<CertificateRow | null> {
	return (await db.selectFrom('certificate').selectAll().where('organisation_id', '=', organisation).where('status_index', '=', index).executeTakeFirst()) ?? null;
}

/** How many certificates an organisation has handed out, and the last place of its list that is taken; −1 for none. */
export interface CertificateCount {
	readonly count: number;
	readonly last: number;
}

export async function countCertificates(db: Database, organisation: string): Promise<CertificateCount> {
	const row = await db
		.selectFrom('certificate')
		.select((eb) => [eb.fn.countAll().as('count'), eb.fn.max('status_index').as('last')])
		.where('organisation_id', '=', organisation)
		.executeTakeFirstOrThrow();
	// PostgreSQL counts in bigint, which comes as text.
	return { count: Number(row.count), last: row.last ?? -1 };
}

/** @returns the people of an organisation of whom anything was ever taken back. */
export async function peopleWithRevocations(db: Database, organisation: string): Promise<readonly string[]> {
	const rows = await db
		.selectFrom('record_entry')
		.select('person_id')
		.distinct()
		.where('organisation_id', '=', organisation)
		.where('kind', '=', 'revoked')
		.orderBy('person_id')
		.execute();
	return rows.flatMap(({ person_id }) => person_id ?? []);
}
