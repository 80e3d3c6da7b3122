/** Reading a database that others write to as it was at one moment, and without changing it. */
import { existsSync } from 'node:fs';
import { Kysely, sql, type Transaction } from 'kysely';
import { connect, type Database } from './open.ts';
import { migrations } from './migrations.ts';
import type { Tables } from './schema.ts';
import { fileOfDatabase } from './signing-keys.ts';
import { sqliteReader } from './sqlite.ts';

async function ofOneMoment<Value>(db: Database, work: (snapshot: Transaction<Tables>) => Promise<Value>): Promise<Value> {
	return db.transaction().setAccessMode('read only').setIsolationLevel('repeatable read').execute(work);
}

async function overFile<Value>(path: string, work: (snapshot: Database) => Promise<Value>): Promise<Value> {
	const reader: Database = new Kysely({ dialect: sqliteReader(path) });
	try {
		return await reader.transaction().execute(work);
	} finally {
		await reader.destroy();
	}
}

/**
 * Reads as of one moment, while others go on writing.
 * @param work gets a database that shows nothing of what is written meanwhile; one in memory, which has a single
 * connection, is given as it is
 */
export async function readSnapshot<Value>(db: Database, work: (snapshot: Database) => Promise<Value>): Promise<Value> {
	const file = await fileOfDatabase(db);
	if (file === undefined) return ofOneMoment(db, work);
	return file === null ? work(db) : overFile(file, work);
}

/** What came of reading a database, or why it was not read. */
export type Reading<Value> = { readonly kind: 'read'; readonly value: Value } | { readonly kind: 'missing' } | { readonly kind: 'other-version' };

/**
 * Reads a database by its address, as of one moment. Its tables are left as they are: one of another version of the
 * program is not read.
 * @throws Error when the address has another form, or the database cannot be reached
 */
export async function readDatabase<Value>(address: string, work: (snapshot: Database) => Promise<Value>): Promise<Reading<Value>> {
	const checked = async (snapshot: Database): Promise<Reading<Value>> =>
		(await isOfThisVersion(snapshot)) ? { kind: 'read', value: await work(snapshot) } : { kind: 'other-version' };
	if (address.startsWith('file:')) {
		const path = address.slice('file:'.length);
		return existsSync(path) ? overFile(path, checked) : { kind: 'missing' };
	}
	const { db } = connect(address);
	try {
		return await ofOneMoment(db, checked);
	} finally {
		await db.destroy();
	}
}

async function isOfThisVersion(db: Database): Promise<boolean> {
	const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
	if (!tables.some(({ name }) => name === 'kysely_migration')) return false;
	const { rows } = await sql<{ name: string }>`select name from kysely_migration order by name`.execute(db);
	return rows.map(({ name }) => name).join() === Object.keys(migrations('sqlite')).toSorted().join();
}
