/** Practice sets as a learner has them. */
import type { Person } from '../people/who.ts';
import type { Database } from './open.ts';

/** An assignment that a learner has, and its set. */
export interface OwnAssignmentRow {
	readonly id: string;
	readonly name: string;
	/** JSON. */
	readonly content: string;
	readonly seed: string;
	readonly dueDay: string | null;
	readonly at: string;
	/** Whether it was recalled, or its crew was put away. */
	readonly closed: boolean;
}

/** An answer that counts in a set. */
export interface SetAnswerRow {
	readonly attempt: string;
	readonly assignment: string;
	readonly place: number;
	readonly right: boolean;
	readonly critical: number;
	readonly at: string;
}

/** The assignments that a learner has: their own, and those of the crews on whose lists they stand. */
function assigned(db: Database, learner: Pick<Person, 'id' | 'organisation'>) {
	return db
		.selectFrom('set_assignment')
		.innerJoin('practice_set', 'practice_set.id', 'set_assignment.set_id')
		.leftJoin('crew', 'crew.id', 'set_assignment.crew_id')
		.select([
			'set_assignment.id',
			'practice_set.name',
			'practice_set.content',
			'set_assignment.seed',
			'set_assignment.due_day as dueDay',
			'set_assignment.at',
			'set_assignment.recalled_at',
			'crew.archived_at'
		])
		.where('practice_set.organisation_id', '=', learner.organisation)
		.where((eb) =>
			eb.or([
				eb('set_assignment.person_id', '=', learner.id),
				eb('set_assignment.crew_id', 'in', eb.selectFrom('crew_learner').select('crew_learner.crew_id').where('crew_learner.person_id', '=', learner.id))
			])
		);
}

interface Row extends Omit<OwnAssignmentRow, 'closed'> {
	readonly recalled_at: string | null;
	readonly archived_at: string | null;
}

function rowOf({ recalled_at, archived_at, ...row }: Row): OwnAssignmentRow {
	return { ...row, closed: recalled_at !== null || archived_at !== null };
}

/** @returns the open assignments of a learner, in the order in which they were assigned. */
export async function openSetsOf(db: Database, learner: Pick<Person, 'id' | 'organisation'>): Promise<readonly OwnAssignmentRow[]> {
	const rows = await assigned(db, learner)
		.where('set_assignment.recalled_at', 'is', null)
		.where('crew.archived_at', 'is', null)
		.orderBy('set_assignment.at')
		.orderBy('set_assignment.id')
		.execute();
	return rows.map(rowOf);
}

/** @returns an assignment that a learner has, open or closed; null if there is none of that id, or it is not theirs. */
export async function findOwnSet(db: Database, learner: Pick<Person, 'id' | 'organisation'>, id: string): Promise<OwnAssignmentRow | null> {
	const row = await assigned(db, learner).where('set_assignment.id', '=', id).executeTakeFirst();
	return row === undefined ? null : rowOf(row);
}

/** @returns the answers of a person that count in these assignments, by place. */
export async function setAnswersOf(db: Database, person: string, assignments: readonly string[]): Promise<readonly SetAnswerRow[]> {
	if (assignments.length === 0) return [];
	const rows = await db
		.selectFrom('set_answer')
		.select(['attempt_id', 'assignment_id', 'place', 'all_right', 'critical', 'at'])
		.where('assignment_id', 'in', assignments)
		.where('person_id', '=', person)
		.orderBy('place')
		.execute();
	return rows.map((row) => ({ attempt: row.attempt_id, assignment: row.assignment_id, place: row.place, right: row.all_right === 1, critical: row.critical, at: row.at }));
}

/** @returns whether an answer is the one that counts at its place of an assignment. */
export async function countsInSet(db: Database, assignment: string, attempt: string): Promise<boolean> {
	const row = await db.selectFrom('set_answer').select('place').where('attempt_id', '=', attempt).where('assignment_id', '=', assignment).executeTakeFirst();
	return row !== undefined;
}
