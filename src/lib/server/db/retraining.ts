/** What orders of retraining ask and write, beside the chain. */
import { sql, type Insertable } from 'kysely';
import type { Entry, EntryKind, EntryOf } from '#lib/records/index.ts';
import type { Database } from './open.ts';
import { inParts } from './records.ts';
import type { CourseEventTable } from './schema.ts';

/** Whom an order is for, of those who are there. */
export type OrderFilter =
	| { readonly kind: 'crew'; readonly crew: string }
	/** Whose training is valid through some day from one to another, without an open order. Days are local. */
	| { readonly kind: 'ends'; readonly from: string; readonly to: string };

/** Learners who are there: neither left nor forgotten. */
function present(db: Database, organisation: string) {
	return db.selectFrom('training_state').where('training_state.organisation_id', '=', organisation).where('gone', '=', 0).where('erased', '=', 0);
}

/** @returns ids of those for whom an order is, by id. @param most how many at most */
export async function learnersToOrder(db: Database, organisation: string, filter: OrderFilter, most: number): Promise<readonly string[]> {
	const all = present(db, organisation).select('training_state.person_id').orderBy('training_state.person_id').limit(most);
	const found =
		filter.kind === 'crew'
			? all.where('training_state.person_id', 'in', db.selectFrom('crew_learner').select('person_id').where('crew_id', '=', filter.crew))
			: all.where('until', '>=', filter.from).where('until', '<=', filter.to).where('due', 'is', null);
	return (await found.execute()).map((row) => row.person_id);
}

/** @returns which of some people are learners of the organisation, and which of these are there. */
export async function knownLearners(db: Database, organisation: string, people: readonly string[]): Promise<{ readonly known: number; readonly there: readonly string[] }> {
	const rows = [];
	for (const part of inParts(people)) {
		rows.push(
			...(await db
				.selectFrom('training_state')
				.select(['person_id', 'gone', 'erased'])
				.where('organisation_id', '=', organisation)
				.where('person_id', 'in', part)
				.orderBy('person_id')
				.execute())
		);
	}
	return { known: rows.length, there: rows.filter((row) => row.gone === 0 && row.erased === 0).map((row) => row.person_id) };
}

/** @returns how many of some people have an open order. */
export async function countOrdered(db: Database, people: readonly string[]): Promise<number> {
	let count = 0;
	for (const part of inParts(people)) {
		const row = await db.selectFrom('training_state').select((eb) => eb.fn.countAll().as('n')).where('person_id', 'in', part).where('due', 'is not', null).executeTakeFirstOrThrow();
		count += Number(row.n);
	}
	return count;
}

/** A lesson that somebody has begun. */
export interface BegunLesson {
	readonly person: string;
	readonly lesson: string;
}

/** @returns the lessons that some people have begun, by person. */
export async function begunLessons(db: Database, people: readonly string[]): Promise<readonly BegunLesson[]> {
	const found: BegunLesson[] = [];
	for (const part of inParts(people)) {
		found.push(...(await db.selectFrom('course_event').select(['person_id as person', 'lesson']).distinct().where('person_id', 'in', part).orderBy('person_id').orderBy('lesson').execute()));
	}
	return found;
}

/** @returns the place of the last course event of each of some people; who has none is left out. */
export async function lastPlaces(db: Database, people: readonly string[]): Promise<ReadonlyMap<string, number>> {
	const found = new Map<string, number>();
	for (const part of inParts(people)) {
		const rows = await db
			.selectFrom('course_event')
			.select((eb) => ['person_id', eb.fn.max('seq').as('seq')])
			.where('person_id', 'in', part)
			.groupBy('person_id')
			.execute();
		for (const row of rows) found.set(row.person_id, Number(row.seq));
	}
	return found;
}

/** Appends course events; one whose place was taken in the meantime is left out. @returns ids of those that were appended */
export async function appendFree(db: Database, rows: readonly Readonly<Insertable<CourseEventTable>>[]): Promise<ReadonlySet<string>> {
	const done = new Set<string>();
	for (const part of inParts(rows)) {
		const added = await db
			.insertInto('course_event')
			.values([...part])
			.onConflict((conflict) => conflict.columns(['person_id', 'seq']).doNothing())
			.returning('id')
			.execute();
		for (const { id } of added) done.add(id);
	}
	return done;
}

/** An entry about a person, with its place. */
export interface EntryAbout<One extends Entry = Entry> {
	readonly person: string;
	readonly seq: number;
	readonly entry: One;
}

/** @returns the entries of some kinds about some people, in order. Whose people they are, the caller has asked. */
export async function entriesOfKinds<Kind extends EntryKind>(db: Database, people: readonly string[], kinds: readonly Kind[]): Promise<readonly EntryAbout<EntryOf<Kind>>[]> {
	const found: EntryAbout<EntryOf<Kind>>[] = [];
	for (const part of inParts(people)) {
		const rows = await db
			.selectFrom('record_entry')
			.select(['person_id', 'seq', 'payload'])
			.where('person_id', 'in', part)
			.where('kind', 'in', kinds)
			.orderBy('person_id')
			.orderBy('seq')
			.execute();
		// Our own, written by appendEntries alone: what a payload is, its column says.
		for (const row of rows) found.push({ person: row.person_id ?? '', seq: row.seq, entry: JSON.parse(row.payload) as EntryOf<Kind> });
	}
	return found;
}

/** Somebody with an open order. */
export interface Ordered {
	readonly id: string;
	readonly name: string;
	readonly number: string | null;
	/** Due day of the order that is due first. */
	readonly due: string;
}

/** @returns those with an open order who are there, what is due first at the head. */
export async function listOrdered(db: Database, organisation: string, page: { readonly from: number; readonly count: number }): Promise<readonly Ordered[]> {
	const rows = await present(db, organisation)
		.innerJoin('person', 'person.id', 'training_state.person_id')
		.select(['person.id', 'person.name', 'person.personal_number as number', 'training_state.due'])
		.where('training_state.due', 'is not', null)
		.orderBy('training_state.due')
		.orderBy('training_state.sort_name')
		.orderBy('training_state.person_id')
		.limit(page.count)
		.offset(page.from)
		.execute();
	return rows.map((row) => ({ ...row, due: row.due ?? '' }));
}

/** @returns how many who are there have an open order, and of how many the due day is over. @param today local day */
export async function countOpen(db: Database, organisation: string, today: string): Promise<{ readonly open: number; readonly overdue: number }> {
	const row = await present(db, organisation)
		.select((eb) => [eb.fn.countAll().as('open'), eb.fn.sum<number | string | null>(sql`case when ${eb.ref('due')} < ${today} then 1 else 0 end`).as('overdue')])
		.where('due', 'is not', null)
		.executeTakeFirstOrThrow();
	return { open: Number(row.open), overdue: Number(row.overdue ?? 0) };
}
