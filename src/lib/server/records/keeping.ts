/** What an employer sees and does of the safe keeping of records: checks of the chain, checkpoints, reports of the jobs. */
import * as z from 'zod';
import { checkpointOf, checkpointsOf } from '../db/checkpoints.ts';
import { lastReport, reportsFor, type JobReportRow } from '../db/job-reports.ts';
import type { Database } from '../db/open.ts';
import { headOf } from '../db/records.ts';
import { chainCheckJob } from '../jobs/chain-check.ts';
import { JOBS, runJob, type JobName } from '../jobs/job.ts';
import { noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { makeCheckpoint, type Checkpoint, type CheckpointMaking } from './checkpoint.ts';
import { publicKeys } from './keys.ts';
import { BREAKS } from './verify/result.ts';
import { peekToken } from './verify/verify.ts';

/** Newest checkpoints and reports that are listed. @reason two months of days; a week of all jobs */
const LISTED = { checkpoints: 60, reports: 28 } as const;

const counts = { entries: z.number(), people: z.number(), clockBack: z.number() };
const checkedSchema = z.discriminatedUnion('holds', [
	z.object({ holds: z.literal(true), ...counts }),
	z.object({ holds: z.literal(false), ...counts, table: z.string(), row: z.string(), column: z.string().optional(), seq: z.number().optional(), problem: z.enum(BREAKS) })
]);

/** What a check of the chain came to. */
export type ChainChecked = z.output<typeof checkedSchema>;

/** A check that ended, when. @property found null where it did not get to its end */
export interface ChainCheck {
	readonly at: string;
	readonly found: ChainChecked | null;
}

/** What a job did, as it is told. */
export interface ToldReport {
	readonly job: JobName;
	readonly at: string;
	readonly failed: boolean;
	readonly did: Readonly<Record<string, string | number | boolean>>;
}

/** A checkpoint in the list. */
export interface ListedCheckpoint {
	readonly size: number;
	readonly at: string;
	readonly kid: string;
}

/** What the page of safe keeping shows. */
export interface KeepingPage {
	readonly head: { readonly seq: number; readonly hash: string } | null;
	readonly check: ChainCheck | null;
	readonly running: boolean;
	readonly checkpoints: readonly ListedCheckpoint[];
	readonly reports: readonly ToldReport[];
}

/** @returns what is known of the keeping of an organisation's records. */
export async function keepingPage(db: Database, { organisation }: Person): Promise<KeepingPage> {
	const last = await lastReport(db, chainCheckJob.name, organisation);
	const head = await headOf(db, organisation);
	return {
		head: head === null || head.seq === 0 ? null : head,
		check: last === null ? null : { at: last.ended_at, found: last.outcome === 'done' ? foundIn(last.detail) : null },
		running: running.has(organisation),
		checkpoints: (await checkpointsOf(db, organisation, LISTED.checkpoints)).map(({ size, at, kid }) => ({ size, at, kid })),
		reports: (await reportsFor(db, organisation, LISTED.reports)).flatMap(told)
	};
}

function foundIn(detail: string): ChainChecked | null {
	const parsed = checkedSchema.safeParse(JSON.parse(detail));
	return parsed.success ? parsed.data : null;
}

function told({ job, ended_at, outcome, detail }: JobReportRow): readonly ToldReport[] {
	const name = JOBS.find((one) => one === job);
	// A message of a failure is for whoever runs the server, and stands in its report.
	const did = outcome === 'done' ? (JSON.parse(detail) as ToldReport['did']) : {};
	return name === undefined ? [] : [{ job: name, at: ended_at, failed: outcome === 'failed', did }];
}

/** Checks that run in this process, by organisation: whoever asks meanwhile waits for the same. */
const running = new Map<string, Promise<unknown>>();

/**
 * Checks an organisation's chain now. A long one goes on in the background, in slices between which others are answered.
 * @param patience ms that are waited for its end
 * @returns whether it has ended
 */
export async function checkNow(db: Database, who: Person, now: () => Date, patience: number): Promise<boolean> {
	const { organisation } = who;
	let check = running.get(organisation);
	if (check === undefined) {
		await noteDeed(db, who, 'chain-checked', organisation, now());
		check = runJob(db, chainCheckJob, organisation, now).finally(() => running.delete(organisation));
		running.set(organisation, check);
	}
	let timer: NodeJS.Timeout | undefined;
	const late = new Promise<false>((resolve) => {
		timer = setTimeout(() => resolve(false), patience);
	});
	const ended = await Promise.race([check.then(() => true), late]);
	clearTimeout(timer);
	return ended;
}

/** Makes a checkpoint now. */
export async function checkpointNow(db: Database, who: Person, now: Date): Promise<CheckpointMaking> {
	return makeCheckpoint(db, who.organisation, now, who.id);
}

/** A checkpoint as it is handed out. */
export interface CheckpointFile {
	/** What it says, to be read. */
	readonly checkpoint: Checkpoint;
	/** Public JWK that its signature is verified with. */
	readonly key: object;
	/** The signed whole: JWS, compact. */
	readonly token: string;
}

/** Hands a checkpoint out, and notes it. @returns null if the organisation has none over so many entries */
export async function handOutCheckpoint(db: Database, who: Person, size: number, now: Date): Promise<CheckpointFile | null> {
	const row = await checkpointOf(db, who.organisation, size);
	const checkpoint = row === null ? undefined : peekToken(row.token);
	const key = (await publicKeys(db, 'checkpoint')).find(({ kid }) => kid === row?.kid);
	if (row === null || checkpoint === undefined || key === undefined) return null;
	await noteDeed(db, who, 'checkpoint-handed-out', who.organisation, now, { size });
	return { checkpoint, key: key.jwk, token: row.token };
}
