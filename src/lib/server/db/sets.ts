/** Practice sets and their assignments, each query within what the asking person may see: another's set is not found. */
import { sql, type Insertable, type SqlBool } from 'kysely';
import { ownCrewIds, type Asker } from './crews.ts';
import type { Database } from './open.ts';
import type { PracticeSetTable, SetAssignmentTable } from './schema.ts';

/** A set and who made it. */
export interface SetRow extends Readonly<PracticeSetTable> {
	/** Name of who made it. */
	readonly maker: string;
}

export interface ListedSetRow extends SetRow {
	/** Assignments that are open and theirs to see. */
	readonly open: number | string | bigint | null;
}

/** An assignment that was not recalled. */
export type OpenAssignment = Readonly<Pick<SetAssignmentTable, 'id' | 'crew_id' | 'person_id' | 'due_day'>>;

/** To whom somebody may assign a set. */
export interface Assignable {
	readonly crews: readonly { readonly id: string; readonly name: string }[];
	readonly people: readonly { readonly id: string; readonly name: string; readonly number: string; readonly crew: string }[];
}

export async function insertSet(db: Database, set: Readonly<PracticeSetTable>): Promise<void> {
	await db.insertInto('practice_set').values(set).execute();
}

/** The ids of learners on the lists of somebody's crews, for use in other queries. */
function ownLearnerIds(db: Database, who: Asker) {
	return db.selectFrom('crew_learner').select('crew_learner.person_id').where('crew_learner.crew_id', 'in', ownCrewIds(db, who));
}

/** The assignments that somebody may see: to their crews, and to learners on the lists of these. */
function ownAssignments(db: Database, who: Asker) {
	return db
		.selectFrom('set_assignment')
		.where((eb) => eb.or([eb('set_assignment.crew_id', 'in', ownCrewIds(db, who)), eb('set_assignment.person_id', 'in', ownLearnerIds(db, who))]));
}

/** @returns a query for the ids of assignments that somebody may see, for use in other queries. */
export function ownAssignmentIds(db: Database, who: Asker) {
	return ownAssignments(db, who).select('set_assignment.id');
}

/** The sets that somebody may see: an employer all of the organisation; a trainer the own ones, and those that own crews have. */
function within(db: Database, who: Asker) {
	const all = db
		.selectFrom('practice_set')
		.innerJoin('person', 'person.id', 'practice_set.made_by')
		.selectAll('practice_set')
		.select('person.name as maker')
		.where('practice_set.organisation_id', '=', who.organisation);
	switch (who.role) {
		case 'employer':
			return all;
		case 'trainer':
			return all.where((eb) =>
				eb.or([eb('practice_set.made_by', '=', who.id), eb('practice_set.id', 'in', ownAssignments(db, who).select('set_assignment.set_id'))])
			);
		case 'learner':
			return all.where(sql<SqlBool>`1 = 0`);
	}
}

/** @returns the sets that somebody may see, the newest first. */
export async function listSetRows(db: Database, who: Asker): Promise<readonly ListedSetRow[]> {
	return within(db, who)
		.select((eb) =>
			ownAssignments(db, who)
				.select((inner) => inner.fn.countAll().as('n'))
				.where('set_assignment.recalled_at', 'is', null)
				.where('set_assignment.set_id', '=', eb.ref('practice_set.id'))
				.as('open')
		)
		.orderBy('practice_set.created_at', 'desc')
		.orderBy('practice_set.id')
		.execute();
}

/** @returns a set; null if there is none of that id, or it is not theirs to see. */
export async function findSetRow(db: Database, who: Asker, id: string): Promise<SetRow | null> {
	return (await within(db, who).where('practice_set.id', '=', id).executeTakeFirst()) ?? null;
}

/** Puts a set away or takes it up again. @param at when; null to take it up again. @returns false if nothing changed. */
export async function archiveSetRow(db: Database, id: string, at: string | null): Promise<boolean> {
	const { numUpdatedRows } = await db
		.updateTable('practice_set')
		.set({ archived_at: at })
		.where('id', '=', id)
		.where('archived_at', at === null ? 'is not' : 'is', null)
		.executeTakeFirst();
	return numUpdatedRows > 0n;
}

/** @returns the assignments of a set that were not recalled, of all crews. */
export async function openAssignments(db: Database, set: string): Promise<readonly OpenAssignment[]> {
	return db.selectFrom('set_assignment').select(['id', 'crew_id', 'person_id', 'due_day']).where('set_id', '=', set).where('recalled_at', 'is', null).execute();
}

/** @returns somebody's crews that work, and the learners on their lists, by name; a learner on two lists once a list. */
export async function assignableTo(db: Database, who: Asker): Promise<Assignable> {
	const crews = await db
		.selectFrom('crew')
		.select(['id', 'name'])
		.where('id', 'in', ownCrewIds(db, who))
		.where('archived_at', 'is', null)
		.orderBy('name')
		.orderBy('id')
		.execute();
	const people = await db
		.selectFrom('crew_learner')
		.innerJoin('person', 'person.id', 'crew_learner.person_id')
		.innerJoin('crew', 'crew.id', 'crew_learner.crew_id')
		.select(['person.id', 'person.name', 'person.personal_number', 'crew_learner.crew_id'])
		.where('crew_learner.crew_id', 'in', ownCrewIds(db, who))
		.where('crew.archived_at', 'is', null)
		.where('person.closed_at', 'is', null)
		.orderBy('person.name')
		.orderBy('person.personal_number')
		.execute();
	return { crews, people: people.map(({ id, name, personal_number, crew_id }) => ({ id, name, number: personal_number ?? '', crew: crew_id })) };
}

/** Enters assignments. @throws a unique violation where a crew or a person has the set already. */
export async function insertAssignments(db: Database, rows: readonly Readonly<Insertable<SetAssignmentTable>>[]): Promise<void> {
	if (rows.length > 0) await db.insertInto('set_assignment').values(rows).execute();
}

/** Recalls an assignment. @returns its set, and whether it was open; null if it is not theirs. */
export async function recallOpen(db: Database, who: Asker, id: string, at: string): Promise<{ readonly set: string; readonly changed: boolean } | null> {
	const found = await ownAssignments(db, who).select(['set_assignment.set_id']).where('set_assignment.id', '=', id).executeTakeFirst();
	if (found === undefined) return null;
	const { numUpdatedRows } = await db.updateTable('set_assignment').set({ recalled_at: at }).where('id', '=', id).where('recalled_at', 'is', null).executeTakeFirst();
	return { set: found.set_id, changed: numUpdatedRows > 0n };
}
