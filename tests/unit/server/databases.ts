import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startPostgres } from './postgres-server.ts';

/** A real database for a test file. */
export interface TestDatabase {
	address: string;
	stop(): void;
}

function sqliteFile(): TestDatabase {
	const folder = mkdtempSync(join(tmpdir(), 'underfoot-sqlite-'));
	return {
		address: `file:${join(folder, 'deeper/underfoot.sqlite')}`,
		stop: () => rmSync(folder, { recursive: true, force: true })
	};
}

/** A PostgreSQL with a file of signing keys: beside a SQLite file it lies by itself. */
async function postgres(): Promise<TestDatabase> {
	const { address, stop } = await startPostgres();
	const folder = mkdtempSync(join(tmpdir(), 'underfoot-keys-'));
	process.env.UNDERFOOT_SIGNING_KEYS = join(folder, 'signing.json');
	return {
		address,
		stop() {
			delete process.env.UNDERFOOT_SIGNING_KEYS;
			rmSync(folder, { recursive: true, force: true });
			stop();
		}
	};
}

/** Each database that the application runs on: the same tests run on all. */
export const DATABASES: readonly [string, () => TestDatabase | Promise<TestDatabase>][] = [
	['SQLite', sqliteFile],
	['PostgreSQL', postgres]
];
