/** What a database holds, told without any of it: by this a backup is known to be whole. */
import { sql } from 'kysely';
import { migrations, type Engine } from './migrations.ts';
import type { Database } from './open.ts';

/** What a database holds. */
export interface Held {
	/** The newest migration that its tables have gone through; empty where there was none. */
	readonly migration: string;
	/** How many rows each table has, by its name. */
	readonly rows: Readonly<Record<string, number>>;
	/** Where the chain of each organisation ends. */
	readonly heads: readonly { readonly organisation: string; readonly seq: number; readonly hash: string }[];
}

const MIGRATION = 'kysely_migration';
/** Holds no row of its own while no migration runs. */
const MIGRATION_LOCK = 'kysely_migration_lock';

async function tablesOf(db: Database): Promise<readonly string[]> {
	const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
	return tables.filter(({ isView, name }) => !isView && name !== MIGRATION_LOCK).map(({ name }) => name).toSorted();
}

async function appliedTo(db: Database, tables: readonly string[]): Promise<readonly string[]> {
	if (!tables.includes(MIGRATION)) return [];
	const { rows } = await sql<{ name: string }>`select name from ${sql.table(MIGRATION)} order by name`.execute(db);
	return rows.map(({ name }) => name);
}

/** @returns what a database holds, whichever version of the program its tables are of. */
export async function heldIn(db: Database): Promise<Held> {
	const tables = await tablesOf(db);
	const rows: Record<string, number> = {};
	for (const table of tables) {
		const counted = await sql<{ count: number | string }>`select count(*) as count from ${sql.table(table)}`.execute(db);
		rows[table] = Number(counted.rows[0]?.count);
	}
	const heads = tables.includes('record_head') ? await db.selectFrom('record_head').selectAll().orderBy('organisation_id').execute() : [];
	return {
		migration: (await appliedTo(db, tables)).at(-1) ?? '',
		rows,
		heads: heads.map(({ organisation_id, seq, hash }) => ({ organisation: organisation_id, seq, hash }))
	};
}

/** @returns the migrations of a database that this program does not know: it is of a newer one. */
export async function unknownMigrations(db: Database, engine: Engine): Promise<readonly string[]> {
	const known = migrations(engine);
	return (await appliedTo(db, await tablesOf(db))).filter((name) => !Object.hasOwn(known, name));
}

/** Whether an organisation is in a database, whose tables may not be there yet. */
export async function holdsOrganisation(db: Database): Promise<boolean> {
	if (!(await tablesOf(db)).includes('organisation')) return false;
	return (await db.selectFrom('organisation').select('id').limit(1).executeTakeFirst()) !== undefined;
}
