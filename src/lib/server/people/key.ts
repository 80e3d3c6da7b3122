import { createHash, randomBytes } from 'node:crypto';
import { closeSync, fsyncSync, linkSync, mkdirSync, openSync, readFileSync, unlinkSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { DEFAULT_ADDRESS } from '../db/open.ts';

/** A key of this server, mixed into PINs before they are hashed. */
export interface ServerKey {
	/** Says which key it was; tells nothing of the key. */
	readonly id: string;
	readonly bytes: Buffer;
}

/** The keys of this server: the first is used, all are recognised. */
export type ServerKeys = readonly [ServerKey, ...ServerKey[]];

/** Bytes of a key. */
const LENGTH = 32;

/** Where the key is read from. */
export interface KeyEnvironment {
	readonly UNDERFOOT_KEY?: string | undefined;
	readonly DATABASE_URL?: string | undefined;
}

function keyOf(bytes: Buffer): ServerKey {
	return { id: createHash('sha256').update('underfoot key id\n').update(bytes).digest('hex').slice(0, 8), bytes };
}

function parse(text: string): ServerKey {
	const written = text.trim();
	const bytes = /^[0-9a-f]{64,}$/i.test(written) ? Buffer.from(written, 'hex') : Buffer.from(written, 'base64');
	if (bytes.length < LENGTH) throw new Error(`UNDERFOOT_KEY must hold at least ${LENGTH} random bytes, in hex or base64`);
	return keyOf(bytes);
}

function first<T>(list: readonly T[]): [T, ...T[]] {
	const [one, ...others] = list;
	if (one === undefined) throw new Error('UNDERFOOT_KEY is empty');
	return [one, ...others];
}

/** Makes the key file if there is none. Two processes that start together end up with one file. */
function ensureFile(path: string): void {
	mkdirSync(dirname(path), { recursive: true });
	const draft = `${path}.${process.pid}`;
	const file = openSync(draft, 'w', 0o600);
	try {
		writeSync(file, `${randomBytes(LENGTH).toString('hex')}\n`);
		fsyncSync(file);
	} finally {
		closeSync(file);
	}
	try {
		linkSync(draft, path);
	} catch (error) {
		if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
	} finally {
		unlinkSync(draft);
	}
}

function readFile(path: string): string | null {
	try {
		return readFileSync(path, 'utf8');
	} catch (error) {
		if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
		throw error;
	}
}

/**
 * Reads the server's keys: UNDERFOOT_KEY (several, parted by commas, after a change: the new one first), else the file
 * beside the SQLite database, which is made when it is missing.
 * @throws Error when PostgreSQL is used and UNDERFOOT_KEY is not set: its servers must share one key
 */
export function readServerKeys(env: KeyEnvironment): ServerKeys {
	if (env.UNDERFOOT_KEY !== undefined && env.UNDERFOOT_KEY !== '') return first(env.UNDERFOOT_KEY.split(',').map(parse));
	const address = env.DATABASE_URL ?? DEFAULT_ADDRESS;
	if (!address.startsWith('file:')) throw new Error('With PostgreSQL, UNDERFOOT_KEY must be set: 32 random bytes in hex or base64, the same for every server');
	const path = address.slice('file:'.length);
	if (path === ':memory:') return [keyOf(randomBytes(LENGTH))];
	const file = `${path}.key`;
	if (readFile(file) === null) ensureFile(file);
	return [parse(readFile(file) ?? '')];
}

let keys: ServerKeys | null = null;

/** The keys of this process, read at the first call. */
export function serverKeys(): ServerKeys {
	keys ??= readServerKeys(process.env);
	return keys;
}
