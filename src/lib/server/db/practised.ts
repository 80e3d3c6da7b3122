/** What guests who joined had practised before. */
import type { Attempt } from './attempts.ts';
import type { Database } from './open.ts';
import type { PractisedTable } from './schema.ts';

/** Enters that a guest is this person. @returns whose the guest is: this person, or the one who came before. */
export async function claimGuest(db: Database, guest: string, person: string, now: string): Promise<string> {
	await db
		.insertInto('joined_guest')
		.values({ guest_id: guest, person_id: person, at: now })
		.onConflict((conflict) => conflict.column('guest_id').doNothing())
		.execute();
	const row = await db.selectFrom('joined_guest').select('person_id').where('guest_id', '=', guest).executeTakeFirstOrThrow();
	return row.person_id;
}

/** @returns whether answers of a guest are kept under a person from the beginning: such a guest cannot join. */
export async function isAnswerer(db: Database, guest: string): Promise<boolean> {
	return (await db.selectFrom('person').select('id').where('answerer_id', '=', guest).executeTakeFirst()) !== undefined;
}

/** @returns whether a guest is somebody who joined. */
export async function hasJoined(db: Database, guest: string): Promise<boolean> {
	return (await db.selectFrom('joined_guest').select('person_id').where('guest_id', '=', guest).executeTakeFirst()) !== undefined;
}

/** @returns some of the answers that a person gave as a guest, before joining, and that were not graded again yet; oldest first. */
export async function notYetRegraded(db: Database, person: string, most: number): Promise<readonly Attempt[]> {
	return db
		.selectFrom('joined_guest')
		.innerJoin('attempt', 'attempt.guest_id', 'joined_guest.guest_id')
		.leftJoin('practised', 'practised.attempt_id', 'attempt.id')
		.selectAll('attempt')
		.where('joined_guest.person_id', '=', person)
		.whereRef('attempt.created_at', '<=', 'joined_guest.at')
		.where('practised.attempt_id', 'is', null)
		.orderBy('attempt.created_at')
		.orderBy('attempt.id')
		.limit(most)
		.execute();
}

/** Keeps what grading again gave; of two who did so at once, one is kept. */
export async function keepRegraded(db: Database, rows: readonly Readonly<PractisedTable>[]): Promise<void> {
	if (rows.length === 0) return;
	await db
		.insertInto('practised')
		.values(rows)
		.onConflict((conflict) => conflict.column('attempt_id').doNothing())
		.execute();
}

/** An answer from before joining. */
export interface PractisedAnswer {
	readonly scenario: string;
	/** ISO 8601. */
	readonly at: string;
	/** Whether every ask was right. */
	readonly right: boolean;
	/** What grading again gave: the stored grades, others, or none, because the problem is not drawn any more. */
	readonly regraded: PractisedTable['regraded'];
}

/** @returns what a person had practised before joining, oldest first. */
export async function practisedAnswers(db: Database, person: string): Promise<readonly PractisedAnswer[]> {
	const rows = await db
		.selectFrom('practised')
		.innerJoin('attempt', 'attempt.id', 'practised.attempt_id')
		.select(['attempt.scenario_id', 'attempt.created_at', 'practised.all_right', 'practised.regraded'])
		.where('practised.person_id', '=', person)
		.orderBy('attempt.created_at')
		.orderBy('attempt.id')
		.execute();
	return rows.map((row) => ({ scenario: row.scenario_id, at: row.created_at, right: row.all_right === 1, regraded: row.regraded }));
}
