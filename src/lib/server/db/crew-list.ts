/** A crew's list: its learners. */
import { ownCrewIds, type Asker } from './crews.ts';
import type { Database } from './open.ts';

/** A learner on a crew's list. */
export interface ListedLearner {
	readonly id: string;
	readonly name: string;
	readonly number: string;
	/** Whether a PIN was set: the person has joined. */
	readonly joined: boolean;
	/** Since when on this list, ISO 8601. */
	readonly since: string;
}

/** Of learners on the lists that a person may see. */
function listed(db: Database, who: Asker, crew: string) {
	return db
		.selectFrom('crew_learner')
		.innerJoin('person', 'person.id', 'crew_learner.person_id')
		.select(['person.id', 'person.name', 'person.personal_number', 'person.secret', 'crew_learner.since'])
		.where('crew_learner.crew_id', '=', crew)
		.where('crew_learner.crew_id', 'in', ownCrewIds(db, who))
		.where('person.closed_at', 'is', null);
}

interface Row {
	readonly id: string;
	readonly name: string;
	readonly personal_number: string | null;
	readonly secret: string | null;
	readonly since: string;
}

function learnerOf({ id, name, personal_number, secret, since }: Row): ListedLearner {
	return { id, name, number: personal_number ?? '', joined: secret !== null, since };
}

/** @returns the learners of a crew, by name and number; none if the crew is not this person's to see. */
export async function learnersOf(db: Database, who: Asker, crew: string): Promise<readonly ListedLearner[]> {
	const rows = await listed(db, who, crew).orderBy('person.name').orderBy('person.personal_number').execute();
	return rows.map(learnerOf);
}

/** @returns a learner of a crew; null if not on its list, or the crew is not this person's to see. */
export async function findLearner(db: Database, who: Asker, crew: string, id: string): Promise<ListedLearner | null> {
	const row = await listed(db, who, crew).where('person.id', '=', id).executeTakeFirst();
	return row === undefined ? null : learnerOf(row);
}

/** Who has a personal number in an organisation. */
export interface Numbered {
	readonly id: string;
	readonly name: string;
	readonly role: string;
	readonly closed: boolean;
}

/** @returns who has this number in the organisation, or null. */
export async function whoHasNumber(db: Database, organisation: string, number: string): Promise<Numbered | null> {
	const row = await db
		.selectFrom('person')
		.select(['id', 'name', 'role', 'closed_at'])
		.where('organisation_id', '=', organisation)
		.where('personal_number', '=', number)
		.executeTakeFirst();
	return row === undefined ? null : { id: row.id, name: row.name, role: row.role, closed: row.closed_at !== null };
}

/** @reason far below what either database takes in one statement. */
const NUMBERS_AT_ONCE = 500;

/** @returns who has these numbers in an organisation, by number. */
export async function numberedOf(db: Database, organisation: string, numbers: readonly string[]): Promise<ReadonlyMap<string, Numbered>> {
	const found = new Map<string, Numbered>();
	for (let i = 0; i < numbers.length; i += NUMBERS_AT_ONCE) {
		const rows = await db
			.selectFrom('person')
			.select(['id', 'name', 'role', 'closed_at', 'personal_number'])
			.where('organisation_id', '=', organisation)
			.where('personal_number', 'in', numbers.slice(i, i + NUMBERS_AT_ONCE))
			.execute();
		for (const row of rows) found.set(row.personal_number ?? '', { id: row.id, name: row.name, role: row.role, closed: row.closed_at !== null });
	}
	return found;
}

/** @returns the ids of all who are on a crew's list. Whose crew it is, the caller has asked. */
export async function onListOf(db: Database, crew: string): Promise<ReadonlySet<string>> {
	const rows = await db.selectFrom('crew_learner').select('person_id').where('crew_id', '=', crew).execute();
	return new Set(rows.map((row) => row.person_id));
}

/** Puts a learner on a crew's list. @returns false if that was so before. */
export async function putOnList(db: Database, crew: string, person: string, now: string): Promise<boolean> {
	const put = await db
		.insertInto('crew_learner')
		.values({ crew_id: crew, person_id: person, since: now })
		.onConflict((conflict) => conflict.columns(['crew_id', 'person_id']).doNothing())
		.returning('person_id')
		.executeTakeFirst();
	return put !== undefined;
}

/** Takes a learner off a crew's list; the person and all that was done stay. @returns false if not on it. */
export async function takeOffList(db: Database, crew: string, person: string): Promise<boolean> {
	const taken = await db
		.deleteFrom('crew_learner')
		.where('crew_id', '=', crew)
		.where('person_id', '=', person)
		.returning('person_id')
		.executeTakeFirst();
	return taken !== undefined;
}

/** Takes the PIN of a learner away, so that a new one can be chosen by joining. */
export async function clearPin(db: Database, person: string): Promise<void> {
	await db.updateTable('person').set({ secret: null }).where('id', '=', person).where('role', '=', 'learner').execute();
}

/** @returns the last day, local at the site, on which each of some people did something in the course; who did nothing is left out. */
export async function lastDaysOf(db: Database, people: readonly string[]): Promise<ReadonlyMap<string, string>> {
	if (people.length === 0) return new Map();
	const rows = await db
		.selectFrom('course_event')
		.select((eb) => ['person_id', eb.fn.max('day').as('day')])
		.where('person_id', 'in', people)
		// A lesson is opened again by others: by whoever orders retraining, or by a final check that ended.
		.where('kind', '!=', 'reopened')
		.groupBy('person_id')
		.execute();
	return new Map(rows.map((row) => [row.person_id, row.day]));
}
