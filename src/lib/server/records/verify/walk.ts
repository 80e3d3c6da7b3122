/** One organisation's chain, walked from its first entry to its last, with what hangs on each. */
import { ofKind, type Placed } from '#lib/records/index.ts';
import type { Database } from '../../db/open.ts';
import { lastCheckpoint } from '../../db/checkpoints.ts';
import { headOf, type RecordEntryRow } from '../../db/records.ts';
import type { SigningKeyRow } from '../../db/signing-keys.ts';
import { chainPages, checkpointsBySize, lastPlace, type EntryTable } from '../../db/verifying.ts';
import { breath } from '../breath.ts';
import { GrowingTree } from '../chain.ts';
import type { Checkpoint } from '../checkpoint.ts';
import { checkCheckpoint, checkKeys, readToken, type CheckpointKeys } from './checkpoints.ts';
import { NOT_WALKED, follow, type Walked } from './entries.ts';
import { checkEvidence, type Regrading } from './evidence.ts';
import { checkExtra } from './extra.ts';
import { checkNames, checkSignatures, type Signers } from './names.ts';
import { checkPeople } from './people.ts';
import { firstOf, type CountName, type Found } from './result.ts';
import { checkRows } from './rows.ts';

/** How much is looked at. */
export interface Looking {
	/** Whether rows, names and people are held against the chain, or the chain is looked at alone. */
	readonly rows: boolean;
	/** Whether answers are marked again. */
	readonly regrading: Regrading | undefined;
	readonly keys: CheckpointKeys;
	readonly keyRows: readonly SigningKeyRow[];
	/** A checkpoint of this organisation that was handed out before. */
	readonly handedOut: Checkpoint | undefined;
	readonly count: (name: CountName, by: number) => void;
	/** Called with how many entries or people were done. */
	readonly done: (by: number) => void;
}

/** Entries looked at at once. @reason some ten milliseconds with all that hangs on them */
const SLICE = 500;

/** Which counts stand for rows of which table. */
const ROWS: readonly (readonly [CountName, EntryTable, Parameters<typeof ofKind>[1]])[] = [
	['completions', 'completion', 'completed'],
	['signOffs', 'sign_off', 'hands-on'],
	['certificates', 'certificate', 'certificate-made'],
	['checkpoints', 'record_checkpoint', 'checkpointed']
];

/** Verifies the records of one organisation. */
export class ChainWalk {
	readonly #db: Database;
	readonly #organisation: string;
	readonly #looking: Looking;
	readonly #tree = new GrowingTree();
	readonly #signers: Signers = new Map();
	readonly #rows: Record<EntryTable, number> = { completion: 0, sign_off: 0, certificate: 0, identity: 0, record_checkpoint: 0 };
	#walked: Walked = NOT_WALKED;
	#newest: Checkpoint | undefined;
	/** A name that is missing: nothing, if it turns out that the chain itself is broken. */
	#lost: Found;

	constructor(db: Database, organisation: string, looking: Looking) {
		this.#db = db;
		this.#organisation = organisation;
		this.#looking = looking;
	}

	/** @returns the first thing that does not hold, in the order of the chain */
	async walk(): Promise<Found> {
		for await (const rows of chainPages(this.#db, this.#organisation, SLICE)) {
			const { chain, rest } = await this.#page(rows);
			// Where the end is gone, rows before it may miss what was noted there: the cut is what happened.
			if (rest !== undefined) return (await this.#reach()) ?? firstOf([this.#lost, rest]);
			if (chain !== undefined) return chain;
			this.#looking.done(rows.length);
			await breath();
		}
		return (await this.#end()) ?? (await this.#reach()) ?? this.#lost;
	}

	/** @returns the first entry that does not hold by itself, and the first before it on which something hangs that does not */
	async #page(rows: readonly RecordEntryRow[]): Promise<{ readonly chain: Found; readonly rest: Found }> {
		const { placed, found: chain } = await this.#chain(rows);
		this.#looking.count('entries', placed.length);
		for (const [name, table, kind] of ROWS) {
			const { length } = ofKind(placed, kind);
			this.#rows[table] += length;
			this.#looking.count(name, length);
		}
		this.#looking.count('checks', ofKind(placed, 'check-ended').length);
		if (!this.#looking.rows) return { chain, rest: undefined };
		const db = this.#db;
		const names = await checkNames(db, this.#organisation, placed);
		this.#rows.identity += names.kept;
		this.#lost ??= names.missing;
		const rest = [names.found, checkSignatures(placed, this.#signers), await checkRows(db, this.#organisation, placed), await checkEvidence(db, placed, this.#looking.regrading)];
		return { chain, rest: firstOf(rest) };
	}

	/** Follows the chain over a page. @returns the entries that hold, up to the first that does not */
	async #chain(rows: readonly RecordEntryRow[]): Promise<{ readonly placed: readonly Placed[]; readonly found: Found }> {
		const placed: Placed[] = [];
		const sizes = rows.filter(({ kind }) => kind === 'checkpointed').map(({ seq }) => seq - 1);
		const checkpoints = await checkpointsBySize(this.#db, this.#organisation, sizes);
		for (const row of rows) {
			const step = follow(this.#organisation, this.#walked, row, this.#looking.rows);
			if (step.kind === 'broken') return { placed, found: step.found };
			const { seq, hash, entry } = step.placed;
			if (entry.kind === 'checkpointed') {
				const at = { seq, hash, entry };
				const { found, checkpoint } = await checkCheckpoint(this.#organisation, at, checkpoints.get(entry.size), this.#tree, this.#walked.hash, this.#looking.keys);
				if (found !== undefined) return { placed, found };
				this.#newest = checkpoint;
			}
			if (entry.at < this.#walked.at) this.#looking.count('clockBack', 1);
			this.#walked = { seq, hash, at: entry.at };
			this.#tree.add(Buffer.from(hash, 'hex'));
			placed.push(step.placed);
			if (!this.#agrees()) return { placed, found: { table: 'record_entry', row: String(seq), column: null, seq, problem: 'handed-out-differs' } };
		}
		return { placed, found: undefined };
	}

	/** Whether the chain so far is the one of the checkpoint that was handed out. */
	#agrees(): boolean {
		const { handedOut } = this.#looking;
		return handedOut?.size !== this.#tree.size || (handedOut.head === this.#walked.hash && handedOut.root === this.#tree.root());
	}

	/** Whether the chain ends where it is noted to end. */
	async #end(): Promise<Found> {
		const { seq, hash } = this.#walked;
		const head = await headOf(this.#db, this.#organisation);
		const place = { table: 'record_head', row: this.#organisation, seq: seq === 0 ? null : seq };
		if (head === null) return seq === 0 ? undefined : { ...place, column: null, problem: 'head-missing' };
		if (head.seq !== seq) return { ...place, column: 'seq', problem: 'end-differs' };
		return head.hash === hash ? undefined : { ...place, column: 'hash', problem: 'end-differs' };
	}

	/** Whether the chain reaches as far as checkpoints were signed: what was handed out, and what is stored. */
	async #reach(): Promise<Found> {
		const { handedOut, keys } = this.#looking;
		const seq = await lastPlace(this.#db, this.#organisation);
		const cut: Found = { table: 'record_entry', row: String(seq + 1), column: null, seq: seq + 1, problem: 'cut-off' };
		if (handedOut !== undefined && handedOut.size > seq) return cut;
		const last = await lastCheckpoint(this.#db, this.#organisation);
		// Its entry stands behind what it covers.
		if (last === null || last.size < seq) return undefined;
		const read = await readToken(last.token, keys);
		return read.kind === 'read' && read.checkpoint.organisation === this.#organisation && read.checkpoint.size === last.size ? cut : undefined;
	}

	/** What hangs on no entry: keys, rows too many, people. To be looked at when all chains were walked: a person's entries are found in all of them. */
	async beside(): Promise<Found> {
		const { rows, keyRows, count, done } = this.#looking;
		const keys = this.#newest === undefined ? undefined : checkKeys(keyRows, this.#newest);
		if (keys !== undefined) return keys;
		const expected = rows ? this.#rows : { record_checkpoint: this.#rows.record_checkpoint };
		const extra = await checkExtra(this.#db, this.#organisation, expected);
		if (extra !== undefined || !rows) return extra;
		return checkPeople(this.#db, this.#organisation, (people) => {
			count('people', people);
			done(people);
		});
	}
}
