/** What the page of one person shows beside the chain. */
import type { Selectable } from 'kysely';
import type { CheckTry } from './checks.ts';
import type { Database } from './open.ts';
import type { AuditTable } from './schema.ts';

/** @returns all tries of a person at any check, the newest first. Whose person it is, the caller has asked. */
export async function allTries(db: Database, person: string): Promise<readonly CheckTry[]> {
	return db.selectFrom('check_try').selectAll().where('person_id', '=', person).orderBy('at', 'desc').orderBy('id').execute();
}

/** What was done with a person's data, by whom and when. */
export type DeedWith = Readonly<Pick<Selectable<AuditTable>, 'id' | 'at' | 'kind' | 'actor_id'>>;

/** @returns deeds of some kinds that were done with the data of a person of an organisation, the newest first. */
export async function deedsWith(db: Database, organisation: string, person: string, kinds: readonly string[], most: number): Promise<readonly DeedWith[]> {
	return db
		.selectFrom('audit')
		.select(['id', 'at', 'kind', 'actor_id'])
		.where('organisation_id', '=', organisation)
		.where('subject_id', '=', person)
		.where('kind', 'in', [...kinds])
		.orderBy('at', 'desc')
		.orderBy('id', 'desc')
		.limit(most)
		.execute();
}
