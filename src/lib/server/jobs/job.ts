/** What the server does by itself once a day, each time with a report of what it did. */
import { randomUUID } from 'node:crypto';
import { insertJobReport, lastReport } from '../db/job-reports.ts';
import type { Database } from '../db/open.ts';
import { organisationIds } from '../db/people.ts';

/** The jobs, in the order in which they run. */
export const JOBS = ['chain-check', 'forget-names', 'checkpoint', 'backup'] as const;
export type JobName = (typeof JOBS)[number];

/** What a job did, in counts and codes; no names. */
export type Did = Readonly<Record<string, string | number | boolean>>;

/** One job. */
export interface Job {
	readonly name: JobName;
	/** Once for each organisation, or once for the whole server. */
	readonly scope: 'organisation' | 'server';
	/** @param organisation id; empty for a job of the whole server */
	readonly run: (db: Database, organisation: string, now: Date) => Promise<Did>;
}

/**
 * Runs a job and reports what it did. One that fails is reported as failed, with its message, and does not keep others
 * from running.
 * @returns what it did; null if it failed
 */
export async function runJob(db: Database, job: Job, organisation: string, now: () => Date): Promise<Did | null> {
	const began = now();
	const report = (outcome: 'done' | 'failed', detail: Did): Promise<void> =>
		insertJobReport(db, {
			id: randomUUID(),
			job: job.name,
			organisation_id: job.scope === 'organisation' ? organisation : null,
			began_at: began.toISOString(),
			ended_at: now().toISOString(),
			outcome,
			detail: JSON.stringify(detail)
		});
	try {
		const did = await job.run(db, organisation, began);
		await report('done', did);
		return did;
	} catch (error) {
		await report('failed', { message: error instanceof Error ? error.message : String(error) });
		return null;
	}
}

/** Hours between two runs of a job. @reason a day, less what a start of the server may come earlier than the day before */
const DUE_AFTER = 23;
const HOUR = 60 * 60 * 1000;

/**
 * Whether a job was not done within the last day. What was done at a time to come counts for nothing: it is from before the
 * clock was put back.
 */
async function isDue(db: Database, job: Job, organisation: string, now: Date): Promise<boolean> {
	const last = await lastReport(db, job.name, job.scope === 'organisation' ? organisation : null, 'done', now.toISOString());
	return last === null || now.getTime() - Date.parse(last.ended_at) >= DUE_AFTER * HOUR;
}

/** Runs those jobs that are due, one after the other. */
export async function runDueJobs(db: Database, jobs: readonly Job[], now: () => Date): Promise<void> {
	const organisations = await organisationIds(db);
	for (const job of jobs) {
		const places = job.scope === 'server' ? [''] : organisations;
		for (const place of places) if (await isDue(db, job, place, now())) await runJob(db, job, place, now);
	}
}

/** Looks every hour which jobs are due, from now on. @returns what ends it: the job that runs is waited for */
export function startJobs(db: Database, jobs: readonly Job[], failed: (error: unknown) => void): () => Promise<void> {
	let running = Promise.resolve();
	const look = (): void => {
		running = running.then(() => runDueJobs(db, jobs, () => new Date())).catch(failed);
	};
	look();
	const timer = setInterval(look, HOUR);
	timer.unref();
	return () => {
		clearInterval(timer);
		return running;
	};
}
