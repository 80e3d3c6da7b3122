/** Knows when something could not be stored because there is no room for it. */

/** How a failing write tells SQLite that there is no room, or that the file may not grow. @source https://sqlite.org/rescode.html */
const SQLITE_FULL = 13;
const SQLITE_IOERR = 10;
/** Of the many that begin with SQLITE_IOERR, those of writing, in their upper bytes: WRITE, FSYNC, DIR_FSYNC, TRUNCATE, SHMOPEN, SHMSIZE, SHMMAP, BEGIN_ATOMIC, COMMIT_ATOMIC. */
const OF_WRITING: ReadonlySet<number> = new Set([3, 4, 5, 6, 18, 19, 21, 29, 30]);

/** disk_full. @source https://www.postgresql.org/docs/current/errcodes-appendix.html */
const POSTGRES_FULL = '53100';

/** No space left; quota used up; file too large for this process. @source POSIX, errno.h */
const SYSTEM: ReadonlySet<unknown> = new Set(['ENOSPC', 'EDQUOT', 'EFBIG']);

/** How deep causes are looked at. @reason our own wrapping is one deep */
const DEEPEST = 5;

function isSqliteFull(errcode: unknown): boolean {
	if (typeof errcode !== 'number') return false;
	const primary = errcode & 0xff;
	return primary === SQLITE_FULL || (primary === SQLITE_IOERR && OF_WRITING.has(errcode >> 8));
}

/**
 * Whether an error says that the disk, or what this process may use of it, is full. The transaction it ended left nothing
 * behind: the same can be sent again when there is room.
 */
export function lacksRoom(error: unknown): boolean {
	let at = error;
	for (let depth = 0; depth < DEEPEST && at instanceof Error; depth += 1) {
		const code = 'code' in at ? at.code : undefined;
		if (code === POSTGRES_FULL || SYSTEM.has(code)) return true;
		if (code === 'ERR_SQLITE_ERROR' && 'errcode' in at && isSqliteFull(at.errcode)) return true;
		at = at.cause;
	}
	return false;
}
