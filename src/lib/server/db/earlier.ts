/** People and what they did, as it stood before there was a chain: read slice by slice. */
import type { CheckTry } from './checks.ts';
import type { Database } from './open.ts';
import type { PersonRow } from './people.ts';

/** @param after the last id of the slice before; empty for the first. @returns the next so many staff or learners of an organisation, by id */
export async function peopleAfter(db: Database, organisation: string, who: 'staff' | 'learners', after: string, most: number): Promise<readonly PersonRow[]> {
	return db
		.selectFrom('person')
		.selectAll()
		.where('organisation_id', '=', organisation)
		.where('role', who === 'staff' ? '!=' : '=', 'learner')
		.where('id', '>', after)
		.orderBy('id')
		.limit(most)
		.execute();
}

/** @returns a person's tries at all checks, in the order in which they were begun. */
export async function allTriesOf(db: Database, person: string): Promise<readonly CheckTry[]> {
	return db.selectFrom('check_try').selectAll().where('person_id', '=', person).orderBy('at').orderBy('id').execute();
}
