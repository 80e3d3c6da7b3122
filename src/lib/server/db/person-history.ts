/** What the page of one person shows beside the chain. */
import type { CheckTry } from './checks.ts';
import type { Database } from './open.ts';
import { inParts } from './records.ts';

/** @returns all tries of a person at any check, the newest first. Whose person it is, the caller has asked. */
export async function allTries(db: Database, person: string): Promise<readonly CheckTry[]> {
	return db.selectFrom('check_try').selectAll().where('person_id', '=', person).orderBy('at', 'desc').orderBy('id').execute();
}

/** @returns the names of people of an organisation, by id. */
export async function namesOf(db: Database, organisation: string, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
	const found = new Map<string, string>();
	for (const part of inParts(ids)) {
		const rows = await db.selectFrom('person').select(['id', 'name', 'organisation_id']).where('id', 'in', part).execute();
		for (const row of rows) if (row.organisation_id === organisation) found.set(row.id, row.name);
	}
	return found;
}
