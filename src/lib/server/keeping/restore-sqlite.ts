/** Restores a SQLite database: beside its place first, and into it only when it holds. */
import { constants, existsSync } from 'node:fs';
import { copyFile, link, rename, rm, unlink } from 'node:fs/promises';
import { dirname } from 'node:path';
import { holdsOrganisation } from '../db/keeping.ts';
import { connect } from '../db/open.ts';
import { closedByAll, faultOfSqlite, isSqliteFile } from '../db/sqlite-copy.ts';
import { sqliteFile } from './backup.ts';
import { KeepingFault } from './fault.ts';
import { ensureFolder, toDisk } from './file.ts';
import type { Manifest } from './manifest.ts';
import { stampOf } from './names.ts';
import type { RestoreOrder } from './restore.ts';
import { checkRestored, type ChainsChecked } from './restored.ts';

/** What SQLite keeps beside a file. */
const COMPANIONS = ['', '-wal', '-shm', '-journal'] as const;

const IN_USE = new KeepingFault('DATABASE_URL', 'names a file that another program has open, most likely the server', 'stop the server first');

/** Whether a file holds an organisation. What cannot be read is taken for one: nobody knows what is lost with it. */
async function mayHoldOrganisation(path: string): Promise<boolean> {
	if (!isSqliteFile(path)) return true;
	try {
		const { db } = connect(`file:${path}`);
		try {
			return await holdsOrganisation(db);
		} finally {
			await db.destroy();
		}
	} catch {
		return true;
	}
}

/** Brings what is in the place into one file, if it can be read and nobody has it open. @throws KeepingFault while somebody has */
function settle(path: string): void {
	// It is kept as it is.
	if (!isSqliteFile(path)) return;
	let closed: boolean;
	try {
		closed = closedByAll(path);
	} catch {
		// Too damaged to be brought into one file.
		return;
	}
	if (!closed) throw IN_USE;
}

/**
 * Makes sure that the place is free, or may be made so.
 * @throws KeepingFault when an organisation is in it and must not be replaced, or somebody has it open
 */
async function lookAtPlace(path: string, replace: boolean): Promise<void> {
	if (!existsSync(path)) return;
	settle(path);
	if (!replace && (await mayHoldOrganisation(path))) {
		throw new KeepingFault('DATABASE_URL', 'names a database that has an organisation already', 'name another one, or give --replace: the old one is then moved aside, and kept');
	}
}

/** Moves what is in the place to other names. @returns the new name; null where nothing was */
async function moveAside(path: string, now: Date): Promise<string | null> {
	const found = COMPANIONS.filter((end) => existsSync(path + end));
	if (found.length === 0) return null;
	if (found.includes('')) settle(path);
	const aside = `${path}.before-${stampOf(now)}`;
	for (const end of COMPANIONS) if (existsSync(path + end)) await rename(path + end, aside + end);
	return aside;
}

/** Restores a backup into the place of a SQLite database. @throws KeepingFault when it must not be, and nothing is changed then */
export async function restoreSqlite(order: RestoreOrder, manifest: Manifest): Promise<{ readonly chains: ChainsChecked; readonly aside: string | null }> {
	const path = sqliteFile(order.address);
	await ensureFolder(dirname(path));
	await lookAtPlace(path, order.replace);
	const beside = `${path}.restoring-${stampOf(order.now)}`;
	try {
		order.step('copying');
		await copyFile(order.file, beside, constants.COPYFILE_EXCL | constants.COPYFILE_FICLONE);
		order.step('checking');
		const fault = faultOfSqlite(beside);
		if (fault !== null) throw new KeepingFault('FILE', `is damaged: ${fault}`, 'take the backup before');
		const chains = await checkRestored(`file:${beside}`, manifest, order.step, order.now);
		if (!closedByAll(beside)) throw new Error('Somebody has opened what is being restored');
		await toDisk(beside);
		order.step('placing');
		await lookAtPlace(path, order.replace);
		const aside = await moveAside(path, order.now);
		// Never over a file that somebody has made meanwhile.
		await link(beside, path);
		await unlink(beside);
		await toDisk(dirname(path));
		return { chains, aside };
	} finally {
		for (const end of COMPANIONS) await rm(beside + end, { force: true });
	}
}
