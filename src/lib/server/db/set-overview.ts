/** Assignments of many sets at once: what the list of sets shows. */
import type { Asker } from './crews.ts';
import type { Database } from './open.ts';
import { ownAssignmentIds } from './sets.ts';

/** An open assignment in the list of sets. */
export interface OpenRow {
	readonly id: string;
	readonly set: string;
	/** Name of the crew or the person. */
	readonly target: string;
	readonly dueDay: string | null;
}

/** @returns the open assignments that somebody may see, of sets in use and crews that work; the first due come first. */
export async function openOf(db: Database, who: Asker): Promise<readonly OpenRow[]> {
	const rows = await db
		.selectFrom('set_assignment')
		.innerJoin('practice_set', 'practice_set.id', 'set_assignment.set_id')
		.leftJoin('crew', 'crew.id', 'set_assignment.crew_id')
		.leftJoin('person', 'person.id', 'set_assignment.person_id')
		.select(['set_assignment.id', 'set_assignment.set_id as set', 'crew.name as crew', 'person.name as person', 'set_assignment.due_day as dueDay'])
		.where('set_assignment.id', 'in', ownAssignmentIds(db, who))
		.where('set_assignment.recalled_at', 'is', null)
		.where('practice_set.archived_at', 'is', null)
		.where('crew.archived_at', 'is', null)
		.orderBy('set_assignment.due_day')
		.orderBy('set_assignment.at')
		.orderBy('set_assignment.id')
		.execute();
	// Databases differ in where what has no day comes; here it comes last.
	return rows
		.map(({ id, set, crew, person, dueDay }) => ({ id, set, target: crew ?? person ?? '', dueDay }))
		.sort((a, b) => Number(a.dueDay === null) - Number(b.dueDay === null));
}
