/** Where the private halves of the signing keys lie: one file, which nobody but the server's user may read. */
import { randomUUID } from 'node:crypto';
import { closeSync, fsyncSync, linkSync, mkdirSync, openSync, readFileSync, renameSync, unlinkSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import * as z from 'zod';
import type { Database } from '../db/open.ts';
import { fileOfDatabase } from '../db/signing-keys.ts';

/** What a key signs. */
export const KEY_USES = ['checkpoint', 'credential'] as const;
export type KeyUse = (typeof KEY_USES)[number];

const fileSchema = z.strictObject({
	version: z.literal(1),
	keys: z.array(z.strictObject({ use: z.enum(KEY_USES), jwk: z.record(z.string(), z.string()) }))
});

/** A key with its private half, as JWK. */
export type PrivateKey = z.output<typeof fileSchema>['keys'][number];

/** Where private halves are kept: at most one key a use. */
export interface PrivateKeys {
	/** @returns the keys; null where none were ever made. */
	read(): readonly PrivateKey[] | null;
	/** Keeps the first keys. Where somebody else was faster, theirs stay. */
	start(keys: readonly PrivateKey[]): void;
	/** Keeps these keys in place of those before. */
	replace(keys: readonly PrivateKey[]): void;
}

function hasCode(error: unknown, code: string): boolean {
	return error instanceof Error && 'code' in error && error.code === code;
}

/** Writes a file beside the one that is meant. @returns its path: it is whole and on the disk */
function draft(path: string, keys: readonly PrivateKey[]): string {
	mkdirSync(dirname(path), { recursive: true });
	const beside = `${path}.${randomUUID()}`;
	const file = openSync(beside, 'wx', 0o600);
	try {
		writeSync(file, `${JSON.stringify({ version: 1, keys }, null, '\t')}\n`);
		fsyncSync(file);
	} finally {
		closeSync(file);
	}
	return beside;
}

/** @returns the keys of a file. A reader finds the old file or the new one, whole, never half of one. */
export function keyFile(path: string): PrivateKeys {
	return {
		read() {
			let text: string;
			try {
				text = readFileSync(path, 'utf8');
			} catch (error) {
				if (hasCode(error, 'ENOENT')) return null;
				throw error;
			}
			try {
				return fileSchema.parse(JSON.parse(text)).keys;
			} catch (error) {
				throw new Error('The file of signing keys holds none; put it back from a backup, or remove it: new keys are made then', { cause: error });
			}
		},
		start(keys) {
			const beside = draft(path, keys);
			try {
				linkSync(beside, path);
			} catch (error) {
				if (!hasCode(error, 'EEXIST')) throw error;
			} finally {
				unlinkSync(beside);
			}
		},
		replace(keys) {
			const beside = draft(path, keys);
			try {
				renameSync(beside, path);
			} catch (error) {
				unlinkSync(beside);
				throw error;
			}
		}
	};
}

function inMemory(): PrivateKeys {
	let kept: readonly PrivateKey[] | null = null;
	return {
		read: () => kept,
		start(keys) {
			kept ??= keys;
		},
		replace(keys) {
			kept = keys;
		}
	};
}

/** Keys of databases that are only in memory: they end with the process, as those do. */
const memory = inMemory();

/**
 * Where the private halves of a database's keys are: at UNDERFOOT_SIGNING_KEYS, else in the file `….signing.json` beside
 * the SQLite database.
 * @throws Error when PostgreSQL is used and UNDERFOOT_SIGNING_KEYS is not set: its servers must share one file
 */
export async function privateKeysOf(db: Database): Promise<PrivateKeys> {
	const named = process.env.UNDERFOOT_SIGNING_KEYS;
	if (named !== undefined && named !== '') return keyFile(named);
	const file = await fileOfDatabase(db);
	if (file === undefined) throw new Error('With PostgreSQL, UNDERFOOT_SIGNING_KEYS must name the file of signing keys, the same for every server; it is made where there is none');
	return file === null ? memory : keyFile(`${file}.signing.json`);
}
