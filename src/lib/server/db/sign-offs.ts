import type { Database } from './open.ts';
import type { SignOffTable } from './schema.ts';

export type SignOffRow = Readonly<SignOffTable>;

export async function insertSignOff(db: Database, row: SignOffRow): Promise<void> {
	await db.insertInto('sign_off').values(row).execute();
}

/** @returns the sign-off of a record, of any organisation; null if none of that id is signed. */
export async function findSignOff(db: Database, id: string): Promise<SignOffRow | null> {
	return (await db.selectFrom('sign_off').selectAll().where('id', '=', id).executeTakeFirst()) ?? null;
}

/** @returns the sign-offs of some people, the newest first. Whose people they are, the caller has asked. */
export async function signOffsOf(db: Database, people: readonly string[]): Promise<readonly SignOffRow[]> {
	if (people.length === 0) return [];
	return db.selectFrom('sign_off').selectAll().where('person_id', 'in', people).orderBy('at', 'desc').orderBy('id').execute();
}
