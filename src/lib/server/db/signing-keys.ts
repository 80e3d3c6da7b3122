/** The public halves of the server's signing keys, and where a SQLite database is: its private halves lie beside it. */
import { sql, SqliteAdapter, type Selectable } from 'kysely';
import type { Database } from './open.ts';
import type { SigningKeyTable } from './schema.ts';

export type SigningKeyRow = Readonly<Selectable<SigningKeyTable>>;

/** @returns the keys of a use, the oldest first. */
export async function signingKeyRows(db: Database, use: SigningKeyRow['use']): Promise<readonly SigningKeyRow[]> {
	return db.selectFrom('signing_key').selectAll().where('use', '=', use).orderBy('since').orderBy('kid').execute();
}

/** @returns the keys of all uses, the oldest first. */
export async function allSigningKeyRows(db: Database): Promise<readonly SigningKeyRow[]> {
	return db.selectFrom('signing_key').selectAll().orderBy('since').orderBy('kid').execute();
}

/** Stores the public half of the key that signs from now on, and retires those of the same use before it. */
export async function enterSigningKey(db: Database, row: SigningKeyRow): Promise<void> {
	// Both or neither: whoever verifies meanwhile finds one key of a use that is not retired.
	await db.transaction().execute(async (transaction) => {
		await transaction
			.insertInto('signing_key')
			.values(row)
			.onConflict((conflict) => conflict.column('kid').doNothing())
			.execute();
		await transaction
			.updateTable('signing_key')
			.set({ retired_at: row.since })
			.where('use', '=', row.use)
			.where('kid', '!=', row.kid)
			.where('retired_at', 'is', null)
			.execute();
	});
}

/** @returns the file of a SQLite database, null for one in memory; undefined for another database. */
export async function fileOfDatabase(db: Database): Promise<string | null | undefined> {
	if (!(db.getExecutor().adapter instanceof SqliteAdapter)) return undefined;
	const { rows } = await sql<{ name: string; file: string | null }>`pragma database_list`.execute(db);
	const file = rows.find((row) => row.name === 'main')?.file ?? '';
	return file === '' ? null : file;
}
