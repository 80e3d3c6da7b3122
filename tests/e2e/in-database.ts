import { openDatabase, type Database } from '#lib/server/db/open.ts';

/** Asks or changes something in the database file of a server, which may be running. */
export async function inDatabase<Value>(file: string, ask: (db: Database) => Promise<Value>): Promise<Value> {
	const db = await openDatabase(`file:${file}`);
	try {
		return await ask(db);
	} finally {
		await db.destroy();
	}
}
