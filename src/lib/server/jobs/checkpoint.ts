/** The daily job that signs what was entered since the last checkpoint. */
import type { Database } from '../db/open.ts';
import { makeCheckpoint } from '../records/checkpoint.ts';
import type { Did, Job } from './job.ts';

/** @returns how many entries the new checkpoint covers; 0 where nothing was entered since the last one */
export async function signChain(db: Database, organisation: string, now: Date): Promise<Did> {
	const made = await makeCheckpoint(db, organisation, now);
	return { size: made.kind === 'made' ? made.checkpoint.size : 0 };
}

export const checkpointJob: Job = { name: 'checkpoint', scope: 'organisation', run: signChain };
