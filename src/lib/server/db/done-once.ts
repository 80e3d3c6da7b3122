/** Work that is done once for a database. */
import type { Database } from './open.ts';

/** @returns whether a work was done before. */
export async function isDone(db: Database, name: string): Promise<boolean> {
	return (await db.selectFrom('done_once').select('name').where('name', '=', name).executeTakeFirst()) !== undefined;
}

/** Notes that a work is done; twice is as once. @param now ISO 8601 */
export async function markDone(db: Database, name: string, now: string): Promise<void> {
	await db
		.insertInto('done_once')
		.values({ name, at: now })
		.onConflict((conflict) => conflict.column('name').doNothing())
		.execute();
}
