/** Names and numbers change; what was entered under the old ones still shows them. */
import type { EntryOf } from '#lib/records/index.ts';
import { whoHasNumber } from '../db/crew-list.ts';
import type { Database } from '../db/open.ts';
import { findPerson, isUniqueViolation, renameTo } from '../db/people.ts';
import { DONE, NOT_FOUND, noteDeed, type Change } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { appendEntries } from './append.ts';
import { lockFor } from './leaving.ts';
import { commitNames, type Named } from './names.ts';
import { recordOf } from './found.ts';

/** What came of giving somebody another name or number. */
export type Renaming =
	| Change
	/** Somebody else of the organisation has, or had, this number. */
	| { readonly kind: 'number-taken' }
	| { readonly kind: 'erased' };

/**
 * Gives a person another name or number. The one from before stays beside the records that were made under it, until
 * it is forgotten. The same again changes nothing.
 * @param given tidied as `field.name` and `field.number` do; the number of staff is null
 */
export async function renamePerson(db: Database, who: Person, person: string, given: { readonly name: string; readonly number: string | null }, now: Date): Promise<Renaming> {
	try {
		return await renameOnce(db, who, person, given, now);
	} catch (error) {
		// Somebody was entered under this number in the same moment: now that one is found.
		if (!isUniqueViolation(error)) throw error;
		return renameOnce(db, who, person, given, now);
	}
}

async function renameOnce(db: Database, who: Person, person: string, { name, number }: { readonly name: string; readonly number: string | null }, now: Date): Promise<Renaming> {
	return db.transaction().execute(async (transaction): Promise<Renaming> => {
		if (!(await lockFor(transaction, who))) return NOT_FOUND;
		const found = await findPerson(transaction, who.organisation, person);
		if (found === null) return NOT_FOUND;
		if ((await recordOf(transaction, person)).erased !== undefined) return { kind: 'erased' };
		if (found.name === name && found.personal_number === number) return DONE;
		const holder = number === null ? null : await whoHasNumber(transaction, who.organisation, number);
		if (holder !== null && holder.id !== person) return { kind: 'number-taken' };
		await renameAll(transaction, who, [{ id: person, role: found.role, name, number }], now);
		return DONE;
	});
}

/** Gives people other names or numbers. Call it within a transaction that has the lock. @throws a unique violation when a number is taken */
export async function renameAll(transaction: Database, who: Person, people: readonly Named[], now: Date): Promise<void> {
	for (const { id, name, number } of people) {
		await renameTo(transaction, who.organisation, id, name, number);
		await noteDeed(transaction, who, 'name-changed', id, now);
	}
	const named: readonly EntryOf<'named'>[] = await commitNames(transaction, who.organisation, people, who.id, now);
	await appendEntries(transaction, who.organisation, named);
}
