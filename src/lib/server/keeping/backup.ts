/** Takes a backup of the database while others use it: whole, checked, and named last. */
import { existsSync, rmSync } from 'node:fs';
import { rename } from 'node:fs/promises';
import { join } from 'node:path';
import { heldIn, type Held } from '../db/keeping.ts';
import { connect, engineOf } from '../db/open.ts';
import { atOneMoment } from '../db/postgres-databases.ts';
import { closedByAll, copySqlite, faultOfSqlite } from '../db/sqlite-copy.ts';
import { KeepingFault } from './fault.ts';
import { emptyFile, ensureFolder, toDisk, weigh, writeNew } from './file.ts';
import { manifestPath, type Manifest } from './manifest.ts';
import { backupName, unfinishedName } from './names.ts';
import { listDump, neededProgram, runProgram } from './postgres-programs.ts';

/** What is being done, for who waits. */
export type Step = 'copying' | 'checking' | 'counting' | 'hashing' | 'migrating' | 'verifying' | 'placing';

/** What is backed up, and where to. */
export interface BackupOrder {
	/** As in DATABASE_URL. */
	readonly address: string;
	readonly folder: string;
	/** Version of this program. */
	readonly program: string;
	readonly now: Date;
	readonly step: (step: Step) => void;
	readonly env: Readonly<Record<string, string | undefined>>;
}

/** A backup that is there. */
export interface BackedUp {
	/** Path of the file. */
	readonly path: string;
	readonly manifest: Manifest;
}

/** @returns the file of a SQLite address. @throws KeepingFault for a database in memory */
export function sqliteFile(address: string): string {
	const path = address.slice('file:'.length);
	if (path === ':memory:' || path === '') throw new KeepingFault('DATABASE_URL', 'names a database that is in memory alone', 'name a file');
	return path;
}

/**
 * Copies a SQLite database into a file, and looks at the copy. Nothing of this touches the source but reading it.
 * @returns what the copy holds
 */
async function copyOfSqlite(path: string, to: string, step: BackupOrder['step']): Promise<Held> {
	if (!existsSync(path)) throw new KeepingFault('DATABASE_URL', 'names a file that does not exist', 'name the file of the database');
	step('copying');
	await copySqlite(path, to);
	step('checking');
	const fault = faultOfSqlite(to);
	if (fault !== null) throw new KeepingFault('DATABASE_URL', `names a file that is damaged: ${fault}`, 'restore the last backup; the damaged file stays as it is');
	step('counting');
	const { db } = connect(`file:${to}`);
	let held: Held;
	try {
		held = await heldIn(db);
	} finally {
		await db.destroy();
	}
	if (!closedByAll(to)) throw new Error('Somebody has an unfinished backup open');
	return held;
}

/** @returns what the dump holds: both see the same moment. */
async function dumpOfPostgres(address: string, to: string, order: BackupOrder): Promise<Held> {
	const program = neededProgram('pg_dump', order.env);
	const list = neededProgram('pg_restore', order.env);
	const { db } = connect(address);
	try {
		return await atOneMoment(db, async (snapshot, transaction) => {
			order.step('copying');
			await runProgram(program, ['--format=custom', '--no-owner', '--no-privileges', `--snapshot=${snapshot}`, `--file=${to}`], address);
			order.step('checking');
			await listDump(list, to);
			order.step('counting');
			return heldIn(transaction);
		});
	} finally {
		await db.destroy();
	}
}

/**
 * Takes a backup. Under its final name it is whole and on the disk, or not there; what fails leaves nothing behind.
 * @throws KeepingFault when it cannot be taken so, with what would help; Error when it fails, for lack of room as well
 */
export async function backUp(order: BackupOrder): Promise<BackedUp> {
	const { address, folder, now, step } = order;
	const engine = engineOf(address);
	await ensureFolder(folder);
	const name = backupName(engine, now);
	const path = join(folder, name);
	const unfinished = join(folder, unfinishedName(name));
	if (existsSync(path)) throw new KeepingFault('FOLDER', `has a ${name} already`, 'take the next one a moment later');
	const remove = (): void => {
		for (const end of ['', '-journal', '-wal', '-shm']) rmSync(unfinished + end, { force: true });
		if (!existsSync(path)) rmSync(manifestPath(path), { force: true });
	};
	// Also when the program is told to stop.
	process.once('exit', remove);
	await emptyFile(unfinished);
	try {
		const held = engine === 'sqlite' ? await copyOfSqlite(sqliteFile(address), unfinished, step) : await dumpOfPostgres(address, unfinished, order);
		step('hashing');
		await toDisk(unfinished);
		const manifest: Manifest = {
			kind: 'underfoot-backup',
			version: 1,
			program: order.program,
			engine,
			at: now.toISOString(),
			file: name,
			...(await weigh(unfinished)),
			migration: held.migration,
			rows: { ...held.rows },
			heads: held.heads.map((head) => ({ ...head }))
		};
		// The file comes last: where it is, all that belongs to it is.
		await writeNew(manifestPath(path), `${JSON.stringify(manifest, null, '\t')}\n`);
		await rename(unfinished, path);
		await toDisk(folder);
		return { path, manifest };
	} finally {
		process.off('exit', remove);
		remove();
	}
}
