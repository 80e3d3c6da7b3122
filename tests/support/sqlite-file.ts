import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDatabase, type Database } from '#lib/server/db/open.ts';

/** An empty database in a folder of its own, with its keys beside it. */
export async function sqliteDatabase(): Promise<{ readonly db: Database; readonly end: () => Promise<void> }> {
	const folder = mkdtempSync(join(tmpdir(), 'underfoot-test-'));
	const db = await openDatabase(`file:${join(folder, 'underfoot.sqlite')}`);
	return {
		db,
		async end() {
			await db.destroy();
			rmSync(folder, { recursive: true, force: true });
		}
	};
}
