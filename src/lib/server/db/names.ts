/** Names of people and things, by their ids, for lists that speak of many. What is another organisation's has none. */
import type { Database } from './open.ts';
import { inParts } from './records.ts';
import type { PersonTable } from './schema.ts';

/** A name as it is now; empty where it was forgotten. */
export interface NamedNow {
	readonly name: string;
	readonly role: PersonTable['role'];
}

/** @returns the names that some people of an organisation have now. */
export async function namesNow(db: Database, organisation: string, people: readonly string[]): Promise<ReadonlyMap<string, NamedNow>> {
	const found = new Map<string, NamedNow>();
	for (const part of inParts([...new Set(people)])) {
		const rows = await db.selectFrom('person').select(['id', 'name', 'role']).where('id', 'in', part).where('organisation_id', '=', organisation).execute();
		for (const { id, ...named } of rows) found.set(id, named);
	}
	return found;
}

/** @returns the names of crews or practice sets of an organisation. */
export async function thingNames(db: Database, table: 'crew' | 'practice_set', organisation: string, ids: readonly string[]): Promise<ReadonlyMap<string, string>> {
	const found = new Map<string, string>();
	for (const part of inParts([...new Set(ids)])) {
		const rows = await db.selectFrom(table).select(['id', 'name']).where('id', 'in', part).where('organisation_id', '=', organisation).execute();
		for (const { id, name } of rows) found.set(id, name);
	}
	return found;
}

/** @returns everyone who is or was on the staff of an organisation. */
export async function staffNames(db: Database, organisation: string): Promise<readonly { readonly id: string; readonly name: string }[]> {
	return db.selectFrom('person').select(['id', 'name']).where('organisation_id', '=', organisation).where('role', 'in', ['trainer', 'employer']).orderBy('name').orderBy('id').execute();
}
