/** Checkpoints and the keys that signed them: those of the chain, and one that was handed out before. */
import { calculateJwkThumbprint, compactVerify, decodeProtectedHeader, importJWK, type CryptoKey, type JWK } from 'jose';
import { canonicalJson, type EntryOf, type Placed } from '#lib/records/index.ts';
import type { CheckpointRow } from '../../db/checkpoints.ts';
import type { SigningKeyRow } from '../../db/signing-keys.ts';
import { CHECKPOINT_TYPE, checkpointSchema, type Checkpoint } from '../checkpoint.ts';
import { KEY_ALGORITHMS, publicHalf } from '../keys.ts';
import { KEY_USES } from '../key-file.ts';
import type { GrowingTree } from '../chain.ts';
import { compareRow } from './columns.ts';
import type { BreakKind, Found } from './result.ts';

/** The keys that checkpoints are verified by, by kid. */
export type CheckpointKeys = ReadonlyMap<string, CryptoKey>;

/** @returns the keys of the table, or the first row that is not a key as this server makes them. */
export async function readKeys(rows: readonly SigningKeyRow[]): Promise<{ readonly keys: CheckpointKeys; readonly found: Found }> {
	const keys = new Map<string, CryptoKey>();
	const inUse = new Map<string, string>();
	for (const row of rows) {
		const place = { table: 'signing_key', row: row.kid, seq: null };
		const column = await wrongColumn(row);
		if (column !== undefined) return { keys, found: { ...place, column, problem: 'key-differs' } };
		if (row.retired_at === null) {
			// A new key retires the one before.
			const before = inUse.get(row.use);
			if (before !== undefined) return { keys, found: { ...place, row: before, column: 'retired_at', problem: 'key-differs' } };
			inUse.set(row.use, row.kid);
		}
		if (row.use !== 'checkpoint') continue;
		const key = await importJWK(JSON.parse(row.jwk) as JWK, row.alg);
		if (!(key instanceof Uint8Array)) keys.set(row.kid, key);
	}
	return { keys, found: undefined };
}

async function wrongColumn({ kid, use, alg, jwk, since, retired_at }: SigningKeyRow): Promise<keyof SigningKeyRow | undefined> {
	if (!KEY_USES.includes(use)) return 'use';
	if (alg !== KEY_ALGORITHMS[use]) return 'alg';
	try {
		const value = JSON.parse(jwk) as Readonly<Record<string, unknown>>;
		const half = publicHalf(use, value);
		if (JSON.stringify(half) !== jwk) return 'jwk';
		if ((await calculateJwkThumbprint(half)) !== kid) return 'kid';
		await importJWK(half, alg);
	} catch {
		return 'jwk';
	}
	if (!isInstant(since)) return 'since';
	return retired_at === null || isInstant(retired_at) ? undefined : 'retired_at';
}

function isInstant(text: string): boolean {
	return checkpointSchema.shape.at.safeParse(text).success;
}

/** What a token says, or why it is not believed. */
export type ReadToken = { readonly kind: 'read'; readonly checkpoint: Checkpoint; readonly kid: string } | { readonly kind: 'wrong'; readonly problem: BreakKind };

/** Whether a token is written in the one way in which it is signed: the last letter of a part has bits that stand for nothing, and readers pass over blanks. @source RFC 4648, section 3.5; RFC 7515, section 2 */
function isPlain(token: string): boolean {
	return token.split('.').every((part) => Buffer.from(part, 'base64url').toString('base64url') === part);
}

/** Verifies a checkpoint's signature and reads it. */
export async function readToken(token: string, keys: CheckpointKeys): Promise<ReadToken> {
	const wrong: ReadToken = { kind: 'wrong', problem: 'signature-wrong' };
	try {
		const { kid = '', typ } = decodeProtectedHeader(token);
		const key = keys.get(kid);
		if (key === undefined) return { kind: 'wrong', problem: 'key-unknown' };
		if (typ !== CHECKPOINT_TYPE || !isPlain(token)) return wrong;
		const { payload } = await compactVerify(token, key, { algorithms: [KEY_ALGORITHMS.checkpoint] });
		const text = new TextDecoder('utf-8', { fatal: true }).decode(payload);
		const parsed = checkpointSchema.safeParse(JSON.parse(text));
		return parsed.success && canonicalJson(parsed.data) === text ? { kind: 'read', checkpoint: parsed.data, kid } : wrong;
	} catch {
		return wrong;
	}
}

/**
 * Holds a checkpoint against the chain up to it.
 * @param at its entry
 * @param tree over all entries before that
 * @param head hash of the last of them
 */
export async function checkCheckpoint(
	organisation: string,
	at: Placed<EntryOf<'checkpointed'>>,
	row: CheckpointRow | undefined,
	tree: GrowingTree,
	head: string,
	keys: CheckpointKeys
): Promise<{ readonly found: Found; readonly checkpoint: Checkpoint | undefined }> {
	const { seq, entry } = at;
	const place = { table: 'record_checkpoint', row: String(entry.size), seq };
	const broken = (column: string | null, problem: BreakKind): { found: Found; checkpoint: undefined } => ({ found: { ...place, column, problem }, checkpoint: undefined });
	const root = tree.root();
	if (entry.size !== tree.size || entry.root !== root) return broken('root', 'root-differs');
	if (row === undefined) return broken(null, 'row-missing');
	const read = await readToken(row.token, keys);
	if (read.kind === 'wrong') {
		// Which of the two was changed: the name of the key beside the token tells.
		return read.problem === 'key-unknown' && row.kid === entry.key && kidOf(row.token) === entry.key
			? { found: { table: 'signing_key', row: entry.key, column: 'kid', seq, problem: 'key-unknown' }, checkpoint: undefined }
			: broken('token', read.problem);
	}
	const { checkpoint, kid } = read;
	const says = { organisation: checkpoint.organisation, size: checkpoint.size, root: checkpoint.root, head: checkpoint.head, at: checkpoint.at, kid };
	const held = { organisation, size: entry.size, root, head, at: entry.at, kid: entry.key };
	if (canonicalJson(says) !== canonicalJson(held)) return broken('token', 'root-differs');
	const edge = JSON.stringify(tree.edge());
	const found = compareRow(place, row, { organisation_id: organisation, size: entry.size, root, kid: entry.key, token: row.token, edge, at: entry.at });
	return { found, checkpoint };
}

function kidOf(token: string): string | undefined {
	try {
		return decodeProtectedHeader(token).kid;
	} catch {
		return undefined;
	}
}

/**
 * Holds the keys that there are against those that the newest checkpoint names: none may be changed or gone, and a new
 * one is there only where it took the place of another.
 */
export function checkKeys(rows: readonly SigningKeyRow[], newest: Checkpoint): Found {
	const broken = (row: string, column: keyof SigningKeyRow | null, problem: BreakKind): Found => ({ table: 'signing_key', row, column, seq: null, problem });
	for (const named of newest.keys) {
		const row = rows.find(({ kid }) => kid === named.kid);
		if (row === undefined) return broken(named.kid, null, 'row-missing');
		if (row.use !== named.use) return broken(row.kid, 'use', 'key-differs');
		if (row.since !== named.since) return broken(row.kid, 'since', 'key-differs');
		if (named.retired !== null && row.retired_at !== named.retired) return broken(row.kid, 'retired_at', 'key-differs');
	}
	for (const use of KEY_USES) {
		const later = rows.filter((row) => row.use === use && newest.keys.every(({ kid }) => kid !== row.kid));
		const before = newest.keys.find((named) => named.use === use && named.retired === null);
		const retired = rows.find(({ kid }) => kid === before?.kid)?.retired_at;
		const [successor] = later;
		if (before === undefined) continue;
		if (successor === undefined && retired !== null) return broken(before.kid, 'retired_at', 'key-differs');
		if (successor !== undefined && retired === null) return broken(successor.kid, null, 'row-without-entry');
	}
	return undefined;
}
