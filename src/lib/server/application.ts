import { DEFAULT_ADDRESS, openDatabase, type Database } from './db/open.ts';

/** The one database of this process. Only the connection is shared between visitors, nothing of theirs. */
let opened: Promise<Database> | null = null;

/**
 * The application's database (DATABASE_URL), opened at the first call. That is when the server starts, never
 * when a module is loaded: the build loads every endpoint, and must not make a database.
 */
export function database(): Promise<Database> {
	opened ??= openDatabase(process.env.DATABASE_URL ?? DEFAULT_ADDRESS);
	return opened;
}

/** Closes the database, so that SQLite leaves one clean file behind. */
export async function closeDatabase(): Promise<void> {
	const db = await opened;
	opened = null;
	await db?.destroy();
}
