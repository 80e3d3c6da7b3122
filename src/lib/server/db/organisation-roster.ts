/** The people of a whole organisation, as a list of all of them is compared with. */
import type { Database } from './open.ts';
import { inParts } from './records.ts';

/** @returns on which lists of crews that work some people are, by person; who is on none is left out. */
export async function listsOf(db: Database, organisation: string, people: readonly string[]): Promise<ReadonlyMap<string, readonly string[]>> {
	const found = new Map<string, string[]>();
	for (const part of inParts(people)) {
		const rows = await db
			.selectFrom('crew_learner')
			.innerJoin('crew', 'crew.id', 'crew_learner.crew_id')
			.select(['crew_learner.person_id as person', 'crew.id as crew'])
			.where('crew_learner.person_id', 'in', part)
			.where('crew.organisation_id', '=', organisation)
			.where('crew.archived_at', 'is', null)
			.orderBy('crew.name')
			.orderBy('crew.id')
			.execute();
		for (const { person, crew } of rows) found.set(person, [...(found.get(person) ?? []), crew]);
	}
	return found;
}

/** A learner who is there. */
export interface PresentLearner {
	readonly id: string;
	readonly name: string;
	readonly number: string;
}

/** @returns how many learners of an organisation are there. */
export async function countLearners(db: Database, organisation: string): Promise<number> {
	const { n } = await db
		.selectFrom('person')
		.select((eb) => eb.fn.countAll<number | string>().as('n'))
		.where('organisation_id', '=', organisation)
		.where('role', '=', 'learner')
		.where('closed_at', 'is', null)
		.executeTakeFirstOrThrow();
	return Number(n);
}

/** @returns the learners of an organisation who are there. */
export async function presentLearners(db: Database, organisation: string): Promise<readonly PresentLearner[]> {
	const rows = await db
		.selectFrom('person')
		.select(['id', 'name', 'personal_number'])
		.where('organisation_id', '=', organisation)
		.where('role', '=', 'learner')
		.where('closed_at', 'is', null)
		.orderBy('name')
		.orderBy('id')
		.execute();
	return rows.map(({ id, name, personal_number }) => ({ id, name, number: personal_number ?? '' }));
}
