/** Files that are whole under their final name or not there: written under another, brought to the disk, then named. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, stat } from 'node:fs/promises';

/** For the owner alone: a backup holds names. */
const OWNER_FOLDER = 0o700;
const OWNER_FILE = 0o600;

/** Makes a folder, and those above it, for its owner alone; one that is there stays as it is. */
export async function ensureFolder(folder: string): Promise<void> {
	await mkdir(folder, { recursive: true, mode: OWNER_FOLDER });
}

/** Makes an empty file that its owner alone may read. @throws Error when there is one already */
export async function emptyFile(path: string): Promise<void> {
	await (await open(path, 'wx', OWNER_FILE)).close();
}

/** Writes a new file that its owner alone may read. @throws Error when there is one already */
export async function writeNew(path: string, text: string): Promise<void> {
	const file = await open(path, 'wx', OWNER_FILE);
	try {
		await file.writeFile(text);
		await file.sync();
	} finally {
		await file.close();
	}
}

/** Waits until a file, or the names in a folder, are on the disk. */
export async function toDisk(path: string): Promise<void> {
	const file = await open(path, 'r');
	try {
		await file.sync();
	} finally {
		await file.close();
	}
}

/** What a file is: how long, and which bytes. */
export async function weigh(path: string): Promise<{ readonly bytes: number; readonly sha256: string }> {
	const hash = createHash('sha256');
	for await (const chunk of createReadStream(path, { highWaterMark: 1024 * 1024 })) hash.update(chunk as Uint8Array);
	return { bytes: (await stat(path)).size, sha256: hash.digest('hex') };
}
