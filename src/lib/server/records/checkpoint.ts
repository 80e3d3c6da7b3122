/** Checkpoints: a signed root over a chain as it is now, to be handed to whoever is to see later that it was not changed. */
import { CompactSign } from 'jose';
import * as z from 'zod';
import { canonicalJson } from '#lib/records/index.ts';
import { entryHashes, insertCheckpoint, lastCheckpoint } from '../db/checkpoints.ts';
import type { Database } from '../db/open.ts';
import { headOf, lockHead } from '../db/records.ts';
import { allSigningKeyRows } from '../db/signing-keys.ts';
import { appendEntries } from './append.ts';
import { BEFORE_FIRST, GrowingTree } from './chain.ts';
import { signingKey } from './keys.ts';
import { breath } from './breath.ts';

/** What the header of the token calls it. */
export const CHECKPOINT_TYPE = 'underfoot-checkpoint+jws';

const hash = z.string().regex(/^[0-9a-f]{64}$/);
const instant = z.iso.datetime({ precision: 3 });

/** What a checkpoint says. */
export const checkpointSchema = z.strictObject({
	organisation: z.uuid(),
	/** How many entries it covers, from the first. */
	size: z.int().min(1),
	/** Root of the Merkle tree over their hashes. @source RFC 6962, section 2.1 */
	root: hash,
	/** Hash of the last of them. */
	head: hash,
	at: instant,
	/** The keys of this server that there were, so that none is slipped in between later. */
	keys: z.array(z.strictObject({ kid: z.string(), use: z.enum(['checkpoint', 'credential']), since: instant, retired: instant.nullable() }))
});

export type Checkpoint = z.output<typeof checkpointSchema>;

export type CheckpointMaking =
	| { readonly kind: 'made'; readonly checkpoint: Checkpoint; readonly token: string }
	/** Nothing but checkpoints was appended since the last one; or there is no entry at all. */
	| { readonly kind: 'nothing-new' };

/** Entries whose hashes are read at once. @reason a few milliseconds */
const SLICE = 2000;

/** Grows a tree over the entries behind its size. @param to the last entry; without it, up to the end */
async function grow(db: Database, organisation: string, tree: GrowingTree, to: number): Promise<void> {
	while (tree.size < to) {
		const rows = await entryHashes(db, organisation, tree.size, Math.min(SLICE, to - tree.size));
		for (const { seq, hash: one } of rows) {
			if (seq !== tree.size + 1) throw new Error(`Entry ${tree.size + 1} of the chain is missing: no checkpoint is made`);
			tree.add(Buffer.from(one, 'hex'));
		}
		if (rows.length === 0) throw new Error(`The chain ends before entry ${tree.size + 1}: no checkpoint is made`);
		await breath();
	}
}

/**
 * Signs a root over an organisation's chain and notes it in the chain. Only the entries since the last checkpoint are
 * read: of the tree below it, the edge is kept. The bulk of them is read before the transaction, which nobody waits for.
 * @param by who asks for it; null for the program itself
 * @throws Error where the chain has a gap, or no key can be had
 */
export async function makeCheckpoint(db: Database, organisation: string, now: Date, by: string | null = null): Promise<CheckpointMaking> {
	const head = await headOf(db, organisation);
	const last = await lastCheckpoint(db, organisation);
	// The entry of a checkpoint stands right behind what it covers.
	if (head === null || head.seq === 0 || head.seq === (last?.size ?? -1) + 1) return { kind: 'nothing-new' };
	const tree = last === null ? new GrowingTree() : GrowingTree.from(last.size, z.array(hash).parse(JSON.parse(last.edge)));
	await grow(db, organisation, tree, head.seq);
	const { kid, alg, key } = await signingKey(db, 'checkpoint', now);
	return db.transaction().execute(async (transaction): Promise<CheckpointMaking> => {
		const locked = await lockHead(transaction, organisation, { seq: 0, hash: BEFORE_FIRST });
		const newest = await lastCheckpoint(transaction, organisation);
		// Somebody else was faster.
		if (newest?.size !== last?.size) return { kind: 'nothing-new' };
		await grow(transaction, organisation, tree, locked.seq);
		const at = now.toISOString();
		const keys = (await allSigningKeyRows(transaction)).map((row) => ({ kid: row.kid, use: row.use, since: row.since, retired: row.retired_at }));
		const checkpoint: Checkpoint = { organisation, size: locked.seq, root: tree.root(), head: locked.hash, at, keys };
		const token = await new CompactSign(new TextEncoder().encode(canonicalJson(checkpoint))).setProtectedHeader({ alg, kid, typ: CHECKPOINT_TYPE }).sign(key);
		const edge = JSON.stringify(tree.edge());
		await insertCheckpoint(transaction, { organisation_id: organisation, size: checkpoint.size, root: checkpoint.root, kid, token, edge, at });
		await appendEntries(transaction, organisation, [{ kind: 'checkpointed', at, by, size: checkpoint.size, root: checkpoint.root, key: kid }]);
		return { kind: 'made', checkpoint, token };
	});
}
