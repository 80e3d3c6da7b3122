/** Where backups go, and what must be kept beside them and elsewhere. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { DEFAULT_ADDRESS, engineOf } from '../db/open.ts';

/** What is read of the environment. */
export interface KeepingEnvironment {
	readonly DATABASE_URL?: string | undefined;
	readonly UNDERFOOT_BACKUPS?: string | undefined;
	readonly UNDERFOOT_KEY?: string | undefined;
	readonly UNDERFOOT_SIGNING_KEYS?: string | undefined;
}

const FOLDER = 'backups';

/** @returns the address of the database. */
export function databaseAddress(env: KeepingEnvironment): string {
	return env.DATABASE_URL ?? DEFAULT_ADDRESS;
}

/** @returns the folder that backups go to: UNDERFOOT_BACKUPS, else one beside the SQLite file, or where that would be; null where there shall be none. */
export function backupFolder(env: KeepingEnvironment): string | null {
	const named = env.UNDERFOOT_BACKUPS;
	if (named === 'off') return null;
	if (named !== undefined && named !== '') return named;
	const address = databaseAddress(env);
	const file = engineOf(address) === 'sqlite' ? address : DEFAULT_ADDRESS;
	return join(dirname(file.slice('file:'.length)), FOLDER);
}

/** A key that no backup holds. */
export interface KeptApart {
	/** Path of its file, or the variable that holds it. */
	readonly where: string;
	readonly holds: 'key of PINs' | 'signing keys';
	/** Whether it is there now. */
	readonly there: boolean;
}

/** @returns what must be kept with a backup, though not in the same place: no backup holds keys. */
export function keptApart(env: KeepingEnvironment): readonly KeptApart[] {
	const address = databaseAddress(env);
	const path = engineOf(address) === 'sqlite' ? address.slice('file:'.length) : undefined;
	const { UNDERFOOT_KEY: key, UNDERFOOT_SIGNING_KEYS: signing } = env;
	const file = (at: string | undefined, variable: string): Pick<KeptApart, 'where' | 'there'> =>
		at === undefined ? { where: variable, there: false } : { where: at, there: existsSync(at) };
	return [
		{ holds: 'key of PINs', ...(key === undefined || key === '' ? file(path === undefined ? undefined : `${path}.key`, 'UNDERFOOT_KEY') : { where: 'UNDERFOOT_KEY', there: true }) },
		{ holds: 'signing keys', ...file(signing === undefined || signing === '' ? (path === undefined ? undefined : `${path}.signing.json`) : signing, 'UNDERFOOT_SIGNING_KEYS') }
	];
}
