/** Learners as they come in: by personal number, and by a crew's join code. */
import type { Database } from './open.ts';

/** A learner who may be meant by a number. */
export interface KnownLearner {
	readonly id: string;
	readonly organisation: string;
	readonly name: string;
	/** Hash of the PIN; null before it is set. */
	readonly secret: string | null;
}

function learners(db: Database) {
	return db
		.selectFrom('person')
		.select(['person.id', 'person.organisation_id as organisation', 'person.name', 'person.secret'])
		.where('person.role', '=', 'learner')
		.where('person.closed_at', 'is', null);
}

/** @returns the learners who have this number: at most one of each organisation. */
export async function learnersByNumber(db: Database, number: string): Promise<readonly KnownLearner[]> {
	return learners(db).where('person.personal_number', '=', number).execute();
}

/** @returns the organisation of the crew that has this join code, archived or not; null if none has it. */
export async function organisationOfCode(db: Database, joinCode: string): Promise<string | null> {
	const row = await db.selectFrom('crew').select('organisation_id').where('join_code', '=', joinCode).executeTakeFirst();
	return row?.organisation_id ?? null;
}

/** @returns the learner with this number on the list of the crew with this join code; null if there is none, or the crew is archived. */
export async function learnerOnList(db: Database, joinCode: string, number: string): Promise<KnownLearner | null> {
	const row = await learners(db)
		.innerJoin('crew_learner', 'crew_learner.person_id', 'person.id')
		.innerJoin('crew', 'crew.id', 'crew_learner.crew_id')
		.where('crew.join_code', '=', joinCode)
		.where('crew.archived_at', 'is', null)
		.where('person.personal_number', '=', number)
		.executeTakeFirst();
	return row ?? null;
}

/** Sets a learner's PIN if there is none. Of two who do so at once one wins. @returns whether it was set by this. */
export async function setFirstPin(db: Database, person: string, secret: string): Promise<boolean> {
	const set = await db
		.updateTable('person')
		.set({ secret })
		.where('id', '=', person)
		.where('role', '=', 'learner')
		.where('secret', 'is', null)
		.where('closed_at', 'is', null)
		.returning('id')
		.executeTakeFirst();
	return set !== undefined;
}
