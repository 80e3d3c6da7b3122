/** Verifying records: that nothing was changed since it was entered, as far as that can be seen. */
import { findOrganisation } from '../../db/people.ts';
import type { Database } from '../../db/open.ts';
import { headOf } from '../../db/records.ts';
import { allSigningKeyRows } from '../../db/signing-keys.ts';
import { countPeople, looseRow, organisationsNamed } from '../../db/verifying.ts';
import { checkpointSchema, type Checkpoint } from '../checkpoint.ts';
import { readKeys, readToken } from './checkpoints.ts';
import type { Redraw } from './regrade.ts';
import type { CountName, Counts, Found, VerifyResult } from './result.ts';
import { ChainWalk } from './walk.ts';

/** How far verifying goes: the chain alone; what hangs on it too; or the answers marked again as well. */
export type Depth = 'hashes' | 'records' | 'answers';

export interface VerifyOptions {
	/** Only this organisation; all without it. */
	readonly organisation?: string;
	readonly depth: Depth;
	/** Which items are drawn again, when answers are marked. */
	readonly redraw?: Redraw;
	/** The token of a checkpoint that was handed out before. */
	readonly handedOut?: string;
	/** Called now and then with how many entries and people of how many are done. */
	readonly progress?: (done: number, of: number) => void;
}

/** Nothing is drawn again but pictures, which are always. */
const NO_REDRAW: Redraw = { share: 0, seed: 0 };

function noCounts(): Record<CountName, number> {
	return { organisations: 0, entries: 0, checkpoints: 0, people: 0, completions: 0, signOffs: 0, certificates: 0, checks: 0, regraded: 0, notRegradable: 0, redrawn: 0, clockBack: 0 };
}

/**
 * Verifies the records of one organisation or of all: chain, checkpoints, names, rows, checks, people, and answers. It
 * reads page by page, keeps nothing of what it read, and lets others run in between. The database must not change
 * meanwhile: see `readSnapshot`.
 * @returns what was looked at, and the first thing that does not hold
 */
export async function verifyRecords(db: Database, options: VerifyOptions): Promise<VerifyResult> {
	const counts = noCounts();
	const result = (organisation: string | null, found: Found): VerifyResult => {
		const looked: Counts = { ...counts };
		return found === undefined ? { kind: 'holds', counts: looked } : { kind: 'broken', broken: { organisation, ...found }, counts: looked };
	};
	const keyRows = await allSigningKeyRows(db);
	const { keys, found: wrongKey } = await readKeys(keyRows);
	if (wrongKey !== undefined) return result(null, wrongKey);
	const handedOut = options.handedOut === undefined ? undefined : await readToken(options.handedOut, keys);
	if (handedOut?.kind === 'wrong') return result(null, { table: 'checkpoint-file', row: '', column: null, seq: null, problem: handedOut.problem });
	const organisations = options.organisation === undefined ? await organisationsNamed(db) : [options.organisation];
	const elsewhere = handedOut !== undefined && !organisations.includes(handedOut.checkpoint.organisation);
	if (elsewhere) return result(handedOut.checkpoint.organisation, { table: 'organisation', row: handedOut.checkpoint.organisation, column: null, seq: null, problem: 'row-missing' });
	let done = 0;
	const all = options.progress === undefined ? 0 : await amount(db, organisations, options.depth);
	const count = (name: CountName, by: number): void => {
		counts[name] += by;
	};
	const walks = new Map<string, ChainWalk>();
	for (const organisation of organisations) {
		if ((await findOrganisation(db, organisation)) === null) return result(organisation, { table: 'organisation', row: organisation, column: null, seq: null, problem: 'row-missing' });
		count('organisations', 1);
		const walk = new ChainWalk(db, organisation, {
			rows: options.depth !== 'hashes',
			regrading: options.depth === 'answers' ? { redraw: options.redraw ?? NO_REDRAW, count } : undefined,
			keys,
			keyRows,
			handedOut: handedOut?.checkpoint.organisation === organisation ? handedOut.checkpoint : undefined,
			count,
			done(by) {
				done += by;
				options.progress?.(done, all);
			}
		});
		walks.set(organisation, walk);
		const found = await walk.walk();
		if (found !== undefined) return result(organisation, found);
	}
	for (const [organisation, walk] of walks) {
		const found = await walk.beside();
		if (found !== undefined) return result(organisation, found);
	}
	return result(null, options.organisation === undefined && options.depth !== 'hashes' ? await loose(db) : undefined);
}

/** How many entries and people there are to do. */
async function amount(db: Database, organisations: readonly string[], depth: Depth): Promise<number> {
	let all = 0;
	for (const organisation of organisations) {
		all += (await headOf(db, organisation))?.seq ?? 0;
		if (depth !== 'hashes') all += await countPeople(db, organisation);
	}
	return all;
}

async function loose(db: Database): Promise<Found> {
	const row = await looseRow(db);
	return row === null ? undefined : { table: row.table, row: row.key, column: row.column, seq: null, problem: 'row-without-entry' };
}

/** @returns what a checkpoint's token says, unverified: whose it is, and which part of the chain it covers; undefined if it is none. */
export function peekToken(token: string): Checkpoint | undefined {
	try {
		return checkpointSchema.parse(JSON.parse(Buffer.from(token.split('.')[1] ?? '', 'base64url').toString('utf8')));
	} catch {
		return undefined;
	}
}
