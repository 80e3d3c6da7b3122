/** Copies of SQLite files: taken while others write, checked, and swapped. */
import { closeSync, openSync, readSync } from 'node:fs';
import { backup, DatabaseSync } from 'node:sqlite';

/**
 * All pages in one step. A copy in several steps begins anew whenever somebody writes between them, and never ends under
 * load; in one step it sees the file as it was at its beginning, and writers go on beside it.
 * @source https://sqlite.org/backup.html, https://sqlite.org/wal.html
 */
const ALL_PAGES = 2 ** 31 - 1;

/**
 * Copies a SQLite file as it is at this moment, while others read and write it.
 * @param to an empty file
 * @throws Error when the source cannot be read, or there is no room
 */
export async function copySqlite(from: string, to: string): Promise<void> {
	const source = new DatabaseSync(from, { readOnly: true });
	try {
		await backup(source, to, { rate: ALL_PAGES });
	} finally {
		source.close();
	}
}

/** How every SQLite file begins. @source https://sqlite.org/fileformat.html, section 1.3 */
const HEADER = Buffer.from('SQLite format 3\0');

/** Whether a file begins as SQLite files do, or is empty, as a new one is. To open any other as one may do away with what lies beside it. */
export function isSqliteFile(path: string): boolean {
	const file = openSync(path, 'r');
	try {
		const head = Buffer.alloc(HEADER.length);
		const read = readSync(file, head);
		return read === 0 || head.equals(HEADER);
	} finally {
		closeSync(file);
	}
}

/** @returns what is wrong with a SQLite file as such, in SQLite's words; null where nothing is. */
export function faultOfSqlite(path: string): string | null {
	const file = new DatabaseSync(path);
	try {
		const [first] = file.prepare('PRAGMA integrity_check(1)').all();
		const said = String(first?.['integrity_check']);
		if (said !== 'ok') return said;
		const [missing] = file.prepare('PRAGMA foreign_key_check').all();
		return missing === undefined ? null : `a row of ${String(missing['table'])} names one of ${String(missing['parent'])} that is not there`;
	} catch (error) {
		return error instanceof Error ? error.message : String(error);
	} finally {
		file.close();
	}
}

/**
 * Brings a SQLite file into one file without companions, which is possible only while nobody else has it open.
 * @returns false while somebody has it open
 * @throws Error when it is no SQLite file
 */
export function closedByAll(path: string): boolean {
	const file = new DatabaseSync(path, { timeout: 0 });
	try {
		// Everybody who has a file in WAL mode open holds a lock on it, and leaving this mode takes the lock that is for one alone.
		const [mode] = file.prepare('PRAGMA journal_mode = DELETE').all();
		return mode?.['journal_mode'] === 'delete';
	} catch (error) {
		if (error instanceof Error && 'errcode' in error && Number(error.errcode) % 256 === SQLITE_BUSY) return false;
		throw error;
	} finally {
		file.close();
	}
}

/** @source https://sqlite.org/rescode.html */
const SQLITE_BUSY = 5;
