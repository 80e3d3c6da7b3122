/**
 * Outcomes of answers that were stored before there was a table of them. Done once for a database, in slices between
 * which others are served. Cut short, it goes on at the next start with what is still missing.
 */
import { setTimeout } from 'node:timers/promises';
import type { PictureGrade } from '#lib/findings/index.ts';
import type { Grades } from '#lib/flow/index.ts';
import { pictureOutcome, siteOutcomes } from '../attempts/outcomes.ts';
import { shippedVersions } from '../attempts/shipped.ts';
import { readPayload } from '../course/state.ts';
import { isFilled, markFilled, oldAnswers, oldAttempts, storeOutcomes, type OldAnswer, type OldAttempt } from '../db/fill-outcomes.ts';
import type { Database } from '../db/open.ts';
import type { OutcomeTable } from '../db/schema.ts';

/** How many answers are taken at a time. @reason a few ms of work, so that nobody waits for it */
const SLICE = 100;
/** Pause between two slices, ms. @reason the server works for others in the meantime */
const PAUSE = 5;

/**
 * Fills in the outcomes of people's old answers. Twice is as once, and two servers may do it at the same time.
 * @param ending says that the server ends: the slice at hand is the last one
 * @returns how many answers it looked at; 0 where it was done before
 */
export async function fillOutcomes(db: Database, now: Date, ending?: AbortSignal): Promise<number> {
	if (await isFilled(db)) return 0;
	const looked =
		(await inSlices((after) => oldAttempts(db, after, SLICE), (some) => storeOutcomes(db, some.flatMap(ofAttempt)), ending)) +
		(await inSlices((after) => oldAnswers(db, after, SLICE), (some) => storeOutcomes(db, some.flatMap(ofPicture)), ending));
	if (ending?.aborted !== true) await markFilled(db, now.toISOString());
	return looked;
}

async function inSlices<Row extends { readonly id: string }>(
	read: (after: string) => Promise<readonly Row[]>,
	store: (some: readonly Row[]) => Promise<void>,
	ending: AbortSignal | undefined
): Promise<number> {
	let looked = 0;
	let last: string | undefined = '';
	while (last !== undefined && ending?.aborted !== true) {
		const slice = await read(last);
		if (slice.length > 0) await store(slice);
		looked += slice.length;
		last = slice.at(-1)?.id;
		await setTimeout(PAUSE);
	}
	return looked;
}

/** The outcomes of an answered site problem: before there was this table, all were of shipped scenarios. */
function ofAttempt({ id, answerer, scenario: scenarioId, version, result, at, course }: OldAttempt): readonly OutcomeTable[] {
	const scenario = shippedVersions.versionsOf(scenarioId).find((one) => one.version === version);
	if (scenario === undefined) return [];
	// Our own gradings, stored as they were made.
	return siteOutcomes({ sent: { id }, scenario, grades: JSON.parse(result) as Grades }, { answerer, way: course ? 'course' : 'practice', now: new Date(at) });
}

/** The outcome of an answered picture; none of a half-done example, whose steps are no answers of their own. */
function ofPicture({ id, answerer, payload, at }: OldAnswer): readonly OutcomeTable[] {
	const { record, detail } = readPayload(payload);
	const picture = detail?.evidence.origin['picture'];
	const credit = record.kind === 'answered' ? record.outcome.credits[0] : undefined;
	if (detail === undefined || typeof picture !== 'string' || credit === undefined) return [];
	// Our own grading, stored as it was made.
	return [pictureOutcome(id, credit.cell, { id: picture, skills: credit.skills }, detail.grades as PictureGrade, { answerer, way: 'course', now: new Date(at) })];
}
