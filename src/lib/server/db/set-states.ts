/** Where everyone is in a set, counted by the database: no answer is read one by one. */
import { sql } from 'kysely';
import type { Asker } from './crews.ts';
import type { Database } from './open.ts';
import { ownAssignmentIds } from './sets.ts';

/** An assignment that somebody may see. */
export interface AssignmentRow {
	readonly id: string;
	readonly crew: string | null;
	readonly crewName: string | null;
	readonly person: string | null;
	readonly personName: string | null;
	readonly dueDay: string | null;
	readonly recalledAt: string | null;
	/** ISO 8601; null for a crew that works, and for a person's. */
	readonly crewArchivedAt: string | null;
	readonly at: string;
}

/** Somebody who has an assignment. */
export interface AssignedPerson {
	readonly assignment: string;
	readonly person: string;
	readonly name: string;
	readonly number: string;
}

/** What somebody's answers of one round come to. */
export interface RoundRow {
	readonly assignment: string;
	readonly person: string;
	readonly round: number;
	readonly answered: number;
	readonly right: number;
	readonly critical: number;
	/** When the last of them was taken in. */
	readonly lastAt: string;
}

/** @returns the assignments of a set that somebody may see, the newest first. */
export async function assignmentsOf(db: Database, who: Asker, set: string): Promise<readonly AssignmentRow[]> {
	return db
		.selectFrom('set_assignment')
		.leftJoin('crew', 'crew.id', 'set_assignment.crew_id')
		.leftJoin('person', 'person.id', 'set_assignment.person_id')
		.select([
			'set_assignment.id',
			'set_assignment.crew_id as crew',
			'crew.name as crewName',
			'crew.archived_at as crewArchivedAt',
			'set_assignment.person_id as person',
			'person.name as personName',
			'set_assignment.due_day as dueDay',
			'set_assignment.recalled_at as recalledAt',
			'set_assignment.at'
		])
		.where('set_assignment.set_id', '=', set)
		.where('set_assignment.id', 'in', ownAssignmentIds(db, who))
		.orderBy('set_assignment.at', 'desc')
		.orderBy('set_assignment.id')
		.execute();
}

/** @returns who has these assignments, by name: those on the crew's list now, or the one person. */
export async function assignedPeople(db: Database, assignments: readonly string[]): Promise<readonly AssignedPerson[]> {
	if (assignments.length === 0) return [];
	const rows = await db
		.selectFrom('set_assignment')
		.leftJoin('crew_learner', 'crew_learner.crew_id', 'set_assignment.crew_id')
		.innerJoin('person', (join) => join.on((eb) => eb('person.id', '=', eb.fn.coalesce('crew_learner.person_id', 'set_assignment.person_id'))))
		.select(['set_assignment.id as assignment', 'person.id as person', 'person.name', 'person.personal_number'])
		.where('set_assignment.id', 'in', assignments)
		.where('person.closed_at', 'is', null)
		.orderBy('person.name')
		.orderBy('person.personal_number')
		.execute();
	return rows.map(({ assignment, person, name, personal_number }) => ({ assignment, person, name, number: personal_number ?? '' }));
}

/** @param count problems in a round. @returns what the answers to these assignments come to, round by round. */
export async function roundsOf(db: Database, assignments: readonly string[], count: number, person?: string): Promise<readonly RoundRow[]> {
	if (assignments.length === 0) return [];
	const round = sql<number>`${sql.ref('place')} / ${sql.lit(Math.trunc(count))}`;
	let query = db
		.selectFrom('set_answer')
		.select((eb) => [
			'assignment_id as assignment',
			'person_id as person',
			round.as('round'),
			eb.fn.countAll<number | string>().as('answered'),
			eb.fn.sum<number | string>('all_right').as('right'),
			eb.fn.sum<number | string>('critical').as('critical'),
			eb.fn.max('at').as('lastAt')
		])
		.where('assignment_id', 'in', assignments)
		.groupBy(['assignment_id', 'person_id', round])
		.orderBy('assignment_id')
		.orderBy('person_id')
		.orderBy(round);
	if (person !== undefined) query = query.where('person_id', '=', person);
	const rows = await query.execute();
	return rows.map((row) => ({ ...row, round: Number(row.round), answered: Number(row.answered), right: Number(row.right), critical: Number(row.critical) }));
}
