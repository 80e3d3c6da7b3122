/** The daily job that takes a backup, and removes old ones. */
import { readdir, rm } from 'node:fs/promises';
import { basename, join } from 'node:path';
import * as z from 'zod';
import { engineOf } from '../db/open.ts';
import { toDisk } from '../keeping/file.ts';
import { dispensable } from '../keeping/names.ts';
import { backupFolder, databaseAddress } from '../keeping/places.ts';
import { findProgram } from '../keeping/postgres-programs.ts';
import { commandFile, runCommand } from './command.ts';
import type { Did, Job } from './job.ts';

/** What is read of what the command prints. */
const printed = z.object({ path: z.string(), bytes: z.number() });

/** @returns why there is no backup of this database; undefined where there is one. */
function whyNot(address: string, env: NodeJS.ProcessEnv): string | undefined {
	if (engineOf(address) === 'postgres') return findProgram('pg_dump', env) === null || findProgram('pg_restore', env) === null ? 'no-pg_dump' : undefined;
	return address === 'file::memory:' ? 'in-memory' : undefined;
}

/** Removes what is no longer kept. @returns how many backups that were */
async function removeOld(folder: string, now: Date): Promise<number> {
	const old = dispensable(await readdir(folder), now);
	for (const name of old) await rm(join(folder, name), { force: true });
	if (old.length > 0) await toDisk(folder);
	return old.filter((name) => !name.endsWith('.json')).length;
}

/**
 * Takes a backup into the folder for it, and removes old ones there. It is taken by a process of its own: to check a large
 * file takes long, and nobody who answers waits for it.
 * @returns what it did, or why it was not done
 * @throws Error when the backup fails, or is told to stop; nothing unfinished is left behind
 */
export async function takeBackup(env: NodeJS.ProcessEnv, now: Date): Promise<Did> {
	const folder = backupFolder(env);
	if (folder === null) return { notDone: 'off' };
	const why = whyNot(databaseAddress(env), env);
	if (why !== undefined) return { notDone: why };
	const program = commandFile();
	if (program === null) return { notDone: 'no-command' };
	const { path, bytes } = printed.parse(await runCommand(program, ['backup', folder], env));
	return { file: basename(path), bytes, removed: await removeOld(folder, now) };
}

export const backupJob: Job = { name: 'backup', scope: 'server', run: (_db, _organisation, now) => takeBackup(process.env, now) };
