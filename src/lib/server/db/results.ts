import type { Database } from './open.ts';

/** @returns the gradings of somebody's last answers, as JSON, the newest first. */
export async function latestResults(db: Database, answerer: string, most: number): Promise<readonly string[]> {
	const rows = await db
		.selectFrom('attempt')
		.select('result')
		.where('guest_id', '=', answerer)
		.orderBy('created_at', 'desc')
		.orderBy('id')
		.limit(most)
		.execute();
	return rows.map((row) => row.result);
}
