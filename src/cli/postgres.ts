import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { installPackages } from './debian.ts';

/** Where Debian keeps each version of PostgreSQL. */
const VERSIONS = '/usr/lib/postgresql';

/** The folder of PostgreSQL's own programs: POSTGRES_BIN, or the newest installed; null if there is none. */
export function postgresPrograms(): string | null {
	const named = process.env.POSTGRES_BIN;
	if (named !== undefined && named !== '') return named;
	if (!existsSync(VERSIONS)) return null;
	const newest = readdirSync(VERSIONS)
		.filter((version) => existsSync(join(VERSIONS, version, 'bin/postgres')))
		.sort((a, b) => Number(b) - Number(a))
		.at(0);
	return newest === undefined ? null : join(VERSIONS, newest, 'bin');
}

/** Sees to it that the repository tests can start a PostgreSQL of their own. */
export function ensurePostgres(): void {
	if (postgresPrograms() === null) {
		installPackages(['postgresql'], 'The database tests need PostgreSQL');
	}
}
