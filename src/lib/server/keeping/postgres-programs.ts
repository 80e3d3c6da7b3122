/** PostgreSQL's own programs for backups: they know their format, and come with the server. */
import { execFile, spawn } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';
import { promisify } from 'node:util';
import { KeepingFault } from './fault.ts';

export type PostgresProgram = 'pg_dump' | 'pg_restore';

/** @returns the path of a program, in the folder POSTGRES_BIN or in PATH; null where there is none. */
export function findProgram(name: PostgresProgram, env: Readonly<Record<string, string | undefined>>): string | null {
	const named = env['POSTGRES_BIN'];
	const folders = named === undefined || named === '' ? (env['PATH'] ?? '').split(delimiter) : [named];
	for (const folder of folders) {
		const path = join(folder, name);
		try {
			accessSync(path, constants.X_OK);
			return path;
		} catch {
			continue;
		}
	}
	return null;
}

/** @throws KeepingFault where there is none */
export function neededProgram(name: PostgresProgram, env: Readonly<Record<string, string | undefined>>): string {
	const found = findProgram(name, env);
	if (found === null) {
		throw new KeepingFault('POSTGRES_BIN', `names no folder with ${name}, and PATH has none`, 'install the programs of PostgreSQL, of the version of the server or newer, or set POSTGRES_BIN to their folder');
	}
	return found;
}

/** How much of what a program says of its failure is told, characters. */
const MOST_TOLD = 400;

/**
 * Runs one of the programs on a database.
 * @param address of the database; its password goes by the environment, where other users cannot see it
 * @throws Error with the end of what it says, when it fails
 */
export async function runProgram(program: string, args: readonly string[], address: string): Promise<void> {
	const url = new URL(address);
	const password = decodeURIComponent(url.password);
	url.password = '';
	const child = spawn(program, [...args, `--dbname=${url.href}`], {
		stdio: ['ignore', 'ignore', 'pipe'],
		env: { ...process.env, ...(password === '' ? {} : { PGPASSWORD: password }) }
	});
	const end = (): void => void child.kill('SIGTERM');
	process.once('exit', end);
	let said = '';
	child.stderr.setEncoding('utf8').on('data', (text: string) => {
		said = (said + text).slice(-MOST_TOLD);
	});
	try {
		const code = await new Promise<number | string | null>((done, failed) => {
			child.once('error', failed);
			child.once('close', (status, signal) => done(status ?? signal));
		});
		if (code !== 0) throw new Error(`${program} ended with ${String(code)}: ${said.trim()}`);
	} finally {
		process.off('exit', end);
	}
}

/** The longest table of contents that is read, bytes: hundreds of times what our tables take. */
const LONGEST_LIST = 8 * 1024 * 1024;

/** Reads the table of contents of a dump. @throws Error when it has none */
export async function listDump(program: string, path: string): Promise<void> {
	await promisify(execFile)(program, ['--list', path], { maxBuffer: LONGEST_LIST });
}
