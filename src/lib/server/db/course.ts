import type { Insertable } from 'kysely';
import type { Database } from './open.ts';
import { insertBeside } from './attempts.ts';
import type { AttemptTable, CourseEventTable, OutcomeTable } from './schema.ts';
import { isUniqueViolation } from './people.ts';
import { noteBegun } from './records.ts';

/** What a person did, as it is appended. */
export type NewCourseEvent = Readonly<Insertable<CourseEventTable>>;

/** A stored event, as far as replaying needs it. */
export interface StoredRecord {
	readonly seq: number;
	/** JSON of what the server made of it. */
	readonly payload: string;
	readonly day: string;
}

/**
 * The seed of a person's course, which is begun if it was not yet.
 * @param seed a new one, for the case that the course is begun now
 */
export async function courseSeed(
	db: Database,
	start: { readonly person: string; readonly course: string; readonly version: number; readonly seed: number; readonly now: string }
): Promise<number> {
	const known = await findSeed(db, start);
	if (known !== null) return known;
	await begin(db, start);
	const begun = await findSeed(db, start);
	if (begun === null) throw new Error('A course just begun was not found');
	return begun;
}

/** Begins a course, once, and notes that it is begun, where people are counted by their state. */
async function begin(db: Database, start: Parameters<typeof courseSeed>[1]): Promise<void> {
	if (!db.isTransaction) return db.transaction().execute((transaction) => begin(transaction, start));
	await db
		.insertInto('course_start')
		.values({ person_id: start.person, course: start.course, version: start.version, seed: String(start.seed), at: start.now })
		.onConflict((conflict) => conflict.columns(['person_id', 'course', 'version']).doNothing())
		.execute();
	await noteBegun(db, start.person);
}

async function findSeed(
	db: Database,
	of: { readonly person: string; readonly course: string; readonly version: number }
): Promise<number | null> {
	const row = await db
		.selectFrom('course_start')
		.select('seed')
		.where('person_id', '=', of.person)
		.where('course', '=', of.course)
		.where('version', '=', of.version)
		.executeTakeFirst();
	return row === undefined ? null : Number(row.seed);
}

/** What a person did after a place in the order, in order. */
export async function recordsAfter(db: Database, person: string, seq: number): Promise<readonly StoredRecord[]> {
	return db
		.selectFrom('course_event')
		.select(['seq', 'payload', 'day'])
		.where('person_id', '=', person)
		.where('seq', '>', seq)
		.orderBy('seq')
		.execute();
}

/** A person's own event of an id, or null. */
export async function findEvent(
	db: Database,
	person: string,
	id: string
): Promise<{ readonly sent: string; readonly payload: string } | null> {
	const row = await db
		.selectFrom('course_event')
		.select(['sent', 'payload'])
		.where('person_id', '=', person)
		.where('id', '=', id)
		.executeTakeFirst();
	return row ?? null;
}

/** How many events a person stored within a time. */
export async function eventsWithin(db: Database, person: string, { since, until }: { readonly since: string; readonly until: string }): Promise<number> {
	const row = await db
		.selectFrom('course_event')
		.select((eb) => eb.fn.countAll().as('count'))
		.where('person_id', '=', person)
		.where('at', '>=', since)
		.where('at', '<=', until)
		.executeTakeFirstOrThrow();
	return Number(row.count);
}

/**
 * Appends events, the attempt behind one of them, and what the answers came to: all or nothing.
 * @returns false if another event took a place or an id in the meantime: read again and try again
 */
export async function appendEvents(
	db: Database,
	events: readonly NewCourseEvent[],
	attempt: Readonly<Insertable<AttemptTable>> | null,
	outcomes: readonly Readonly<OutcomeTable>[] = []
): Promise<boolean> {
	try {
		await db.transaction().execute(async (transaction) => {
			if (attempt !== null) await transaction.insertInto('attempt').values(attempt).execute();
			if (events.length > 0) await transaction.insertInto('course_event').values([...events]).execute();
			await insertBeside(transaction, [{ outcomes }]);
		});
		return true;
	} catch (error) {
		if (isUniqueViolation(error)) return false;
		throw error;
	}
}

/** @returns whether a person has begun any course. */
export async function courseBegun(db: Database, person: string): Promise<boolean> {
	return (await db.selectFrom('course_start').select('person_id').where('person_id', '=', person).limit(1).executeTakeFirst()) !== undefined;
}
