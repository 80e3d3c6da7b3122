/** Signed roots over the chains. */
import type { Selectable } from 'kysely';
import type { Database } from './open.ts';
import type { RecordCheckpointTable } from './schema.ts';

export type CheckpointRow = Readonly<Selectable<RecordCheckpointTable>>;

export async function insertCheckpoint(db: Database, row: CheckpointRow): Promise<void> {
	await db.insertInto('record_checkpoint').values(row).execute();
}

/** @returns the newest checkpoint of an organisation; null if it has none. */
export async function lastCheckpoint(db: Database, organisation: string): Promise<CheckpointRow | null> {
	const query = db.selectFrom('record_checkpoint').selectAll().where('organisation_id', '=', organisation).orderBy('size', 'desc').limit(1);
	return (await query.executeTakeFirst()) ?? null;
}

/** @returns the newest checkpoints of an organisation, the newest first. */
export async function checkpointsOf(db: Database, organisation: string, most: number): Promise<readonly CheckpointRow[]> {
	return db.selectFrom('record_checkpoint').selectAll().where('organisation_id', '=', organisation).orderBy('size', 'desc').limit(most).execute();
}

/** @returns the checkpoint over so many entries; null if there is none. */
export async function checkpointOf(db: Database, organisation: string, size: number): Promise<CheckpointRow | null> {
	const query = db.selectFrom('record_checkpoint').selectAll().where('organisation_id', '=', organisation).where('size', '=', size);
	return (await query.executeTakeFirst()) ?? null;
}

/** @returns places and hashes of entries of a chain, in order. @param after the last place before them */
export async function entryHashes(db: Database, organisation: string, after: number, most: number): Promise<readonly { readonly seq: number; readonly hash: string }[]> {
	return db.selectFrom('record_entry').select(['seq', 'hash']).where('organisation_id', '=', organisation).where('seq', '>', after).orderBy('seq').limit(most).execute();
}
