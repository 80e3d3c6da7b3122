import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { ROOT } from '../root.ts';
import { startFolder } from './files.ts';
import { refuse, type Outcome } from './outcome.ts';
import type * as Server from '#lib/server/index.ts';

/** What a shell gives for a program that was told to stop: 128 and the number of the signal. @source POSIX, section 2.8.2 of the shell */
const STOPPED = { SIGTERM: 143, SIGINT: 130 } as const;

/** @returns the version of this program. */
function version(): string {
	const read: unknown = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
	return typeof read === 'object' && read !== null && 'version' in read ? String(read.version) : '';
}

/** Tells what is being done on the error output: the output itself holds the result alone. */
function tell(step: Server.KeepingStep): void {
	process.stderr.write(`${step} …\n`);
}

/** Does what may be refused, so that being told to stop leaves nothing unfinished behind. */
async function kept(work: (server: typeof Server) => Promise<object>): Promise<Outcome> {
	const server = await import('#lib/server/index.ts');
	// What is unfinished is removed when the process exits; by a signal alone it would just end.
	const stops = Object.entries(STOPPED).map(([signal, code]) => ({ signal, stop: (): void => process.exit(code) }));
	for (const { signal, stop } of stops) process.once(signal, stop);
	try {
		return { kind: 'done', output: await work(server) };
	} catch (error) {
		if (error instanceof server.KeepingFault) return refuse(error.field, error.problem, error.remedy);
		if (server.lacksRoom(error)) return refuse('disk', 'is full, and nothing was kept', 'make room, or give a folder on another disk');
		throw error;
	} finally {
		for (const { signal, stop } of stops) process.off(signal, stop);
	}
}

/** Takes a backup. @param folder where to; without it, where the daily ones go */
export function backup(folder: string | undefined): Promise<Outcome> {
	return kept(async (server) => {
		const to = folder === undefined ? server.backupFolder(process.env) : resolve(startFolder(), folder);
		if (to === null) throw new server.KeepingFault('FOLDER', 'is missing, and UNDERFOOT_BACKUPS is off', 'give a folder');
		const { path, manifest } = await server.backUp({
			address: server.databaseAddress(process.env),
			folder: to,
			program: version(),
			now: new Date(),
			step: tell,
			env: process.env
		});
		return { ...manifest, kind: 'backed-up', path, keepApart: server.keptApart(process.env) };
	});
}

/** Restores a backup. @param replace whether a database with an organisation may be moved aside */
export function restore(file: string, replace: boolean): Promise<Outcome> {
	return kept(async (server) => {
		const { manifest, chains, aside } = await server.restoreBackup({
			file: resolve(startFolder(), file),
			address: server.databaseAddress(process.env),
			replace,
			now: new Date(),
			step: tell,
			env: process.env
		});
		const { at, program } = manifest;
		return { kind: 'restored', at, program, verified: chains, ...(aside === null ? {} : { movedAside: aside }), keepApart: server.keptApart(process.env) };
	});
}
