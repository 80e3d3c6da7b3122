/** Reads a backup that is to be restored, and holds it against what stands beside it. */
import { readFile, stat } from 'node:fs/promises';
import type { Engine } from '../db/migrations.ts';
import { KeepingFault } from './fault.ts';
import { weigh } from './file.ts';
import { manifestPath, manifestSchema, type Manifest } from './manifest.ts';

/** The longest manifest that is read, bytes: thousands of organisations. */
const LONGEST = 8 * 1024 * 1024;

async function manifestOf(path: string): Promise<Manifest> {
	const beside = manifestPath(path);
	let text: string;
	try {
		if ((await stat(beside)).size > LONGEST) throw new KeepingFault('FILE', 'has a .json beside it that is too long to be its own', 'copy both files again from where the backup is');
		text = await readFile(beside, 'utf8');
	} catch (error) {
		if (error instanceof KeepingFault) throw error;
		throw new KeepingFault('FILE', 'has no file of its name and .json beside it', 'copy both files from where the backup is');
	}
	let read: unknown;
	try {
		read = JSON.parse(text);
	} catch {
		read = null;
	}
	const parsed = manifestSchema.safeParse(read);
	if (!parsed.success) throw new KeepingFault('FILE', 'has a .json beside it that tells of no backup', 'copy both files again from where the backup is');
	return parsed.data;
}

/**
 * Reads what a backup is of, and makes sure that its bytes are those that were written.
 * @throws KeepingFault when it is none, is damaged, or is of the other database
 */
export async function readBackup(path: string, engine: Engine): Promise<Manifest> {
	const found = await stat(path).catch(() => null);
	if (found?.isFile() !== true) throw new KeepingFault('FILE', 'does not exist, or is no file', 'give the path of a backup');
	const manifest = await manifestOf(path);
	if (manifest.engine !== engine) {
		const names = { sqlite: 'SQLite', postgres: 'PostgreSQL' } as const;
		throw new KeepingFault('FILE', `is a backup of ${names[manifest.engine]}`, `set DATABASE_URL to a database of ${names[manifest.engine]}`);
	}
	const { bytes, sha256 } = await weigh(path);
	if (bytes !== manifest.bytes || sha256 !== manifest.sha256) {
		throw new KeepingFault('FILE', `is damaged: it has ${bytes} bytes with another SHA-256 than was written`, 'copy it again from where the backup is, or take the backup before');
	}
	return manifest;
}
