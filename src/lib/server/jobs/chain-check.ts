/** The daily job that checks the chain, and everything that hangs on it. Answers are not marked again: that is for the command. */
import type { Database } from '../db/open.ts';
import { readSnapshot } from '../db/snapshot.ts';
import { verifyRecords } from '../records/verify/verify.ts';
import type { Did, Job } from './job.ts';

/** Checks an organisation's records as they are now, in slices between which others are answered. @returns what was looked at, or the first thing that does not hold */
export async function checkChain(db: Database, organisation: string): Promise<Did> {
	const result = await readSnapshot(db, (snapshot) => verifyRecords(snapshot, { organisation, depth: 'records' }));
	const { entries, people, clockBack } = result.counts;
	if (result.kind === 'holds') return { holds: true, entries, people, clockBack };
	const { table, row, column, seq, problem } = result.broken;
	return { holds: false, entries, people, clockBack, table, row, ...(column === null ? {} : { column }), ...(seq === null ? {} : { seq }), problem };
}

export const chainCheckJob: Job = { name: 'chain-check', scope: 'organisation', run: checkChain };
