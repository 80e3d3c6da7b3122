/** What was stored before outcomes were: read slice by slice, by id, until it is done. */
import { isDone, markDone } from './done-once.ts';
import type { Database } from './open.ts';
import type { OutcomeTable } from './schema.ts';

/** How this work is called among those that are done once. */
const NAME = 'outcomes-of-old-answers';

/** @returns whether outcomes of old answers were filled in before. */
export async function isFilled(db: Database): Promise<boolean> {
	return isDone(db, NAME);
}

/** Notes that outcomes of old answers are filled in. */
export async function markFilled(db: Database, now: string): Promise<void> {
	await markDone(db, NAME, now);
}

/** An answered site problem of somebody who is signed in, without outcomes. */
export interface OldAttempt {
	readonly id: string;
	readonly answerer: string;
	readonly scenario: string;
	readonly version: number;
	/** JSON of the grades by ask. */
	readonly result: string;
	readonly at: string;
	/** Whether it was answered in the course. */
	readonly course: boolean;
}

/** @param after the last id of the slice before; empty for the first. @returns the next so many, by id */
export async function oldAttempts(db: Database, after: string, most: number): Promise<readonly OldAttempt[]> {
	const rows = await db
		.selectFrom('attempt')
		.innerJoin('person', 'person.answerer_id', 'attempt.guest_id')
		.leftJoin('course_event', 'course_event.id', 'attempt.id')
		.select(['attempt.id', 'attempt.guest_id as answerer', 'scenario_id as scenario', 'scenario_version as version', 'result', 'attempt.created_at as at', 'course_event.id as event'])
		.where('attempt.id', '>', after)
		.where(({ not, exists, selectFrom }) => not(exists(selectFrom('outcome').select('answer_id').whereRef('answer_id', '=', 'attempt.id'))))
		.orderBy('attempt.id')
		.limit(most)
		.execute();
	return rows.map(({ event, ...row }) => ({ ...row, course: event !== null }));
}

/** An answer in the course that is no answered site problem, without outcomes: a picture, or a half-done example. */
export interface OldAnswer {
	readonly id: string;
	readonly answerer: string;
	/** JSON of what the server made of it. */
	readonly payload: string;
	readonly at: string;
}

/** @param after the last id of the slice before; empty for the first. @returns the next so many, by id */
export async function oldAnswers(db: Database, after: string, most: number): Promise<readonly OldAnswer[]> {
	return db
		.selectFrom('course_event')
		.innerJoin('person', 'person.id', 'course_event.person_id')
		.select(['course_event.id', 'person.answerer_id as answerer', 'payload', 'at'])
		.where('course_event.id', '>', after)
		.where('kind', '=', 'answered')
		.where(({ not, exists, selectFrom }) => not(exists(selectFrom('attempt').select('attempt.id').whereRef('attempt.id', '=', 'course_event.id'))))
		.where(({ not, exists, selectFrom }) => not(exists(selectFrom('outcome').select('answer_id').whereRef('answer_id', '=', 'course_event.id'))))
		.orderBy('course_event.id')
		.limit(most)
		.execute();
}

/** Stores outcomes; one that is there already stays. */
export async function storeOutcomes(db: Database, outcomes: readonly Readonly<OutcomeTable>[]): Promise<void> {
	if (outcomes.length === 0) return;
	await db
		.insertInto('outcome')
		.values(outcomes)
		.onConflict((conflict) => conflict.columns(['answer_id', 'ask']).doNothing())
		.execute();
}
