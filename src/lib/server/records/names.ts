/** Names outside the chain, held by salted commitments inside it. */
import { randomBytes } from 'node:crypto';
import type { EntryOf } from '#lib/records/index.ts';
import type { Database } from '../db/open.ts';
import { insertPerson, type NewPerson } from '../db/people.ts';
import { insertIdentities, type IdentityRow } from '../db/records.ts';
import { appendEntries, lockChain } from './append.ts';
import { commitmentTo } from './chain.ts';
import { recordOf } from './found.ts';

/** @reason nobody finds a salt by trying */
const SALT_BYTES = 32;

/** Somebody whose name is to be held. */
export interface Named {
	readonly id: string;
	readonly role: 'learner' | 'trainer' | 'employer';
	readonly name: string;
	readonly number: string | null;
}

/**
 * Stores what commitments hold.
 * @param by who entered the names; null for the program itself
 * @returns the entries, to be appended in the same transaction
 */
export async function commitNames(db: Database, organisation: string, people: readonly Named[], by: string | null, now: Date): Promise<readonly EntryOf<'named'>[]> {
	const at = now.toISOString();
	const rows = people.map(({ id, name, number }): IdentityRow => {
		const salt = randomBytes(SALT_BYTES).toString('hex');
		return { commitment: commitmentTo(salt, name, number), organisation_id: organisation, person_id: id, salt, name, personal_number: number, at };
	});
	await insertIdentities(db, rows);
	return people.map(({ id, role }, i) => ({ kind: 'named', at, by, person: id, role, commitment: rows[i]?.commitment ?? '' }));
}

/** @returns the newest commitment to a person's name. @throws Error for somebody without one: whoever is entered gets one */
export async function commitmentOf(db: Database, person: string): Promise<string> {
	const { named } = await recordOf(db, person);
	if (named === undefined) throw new Error('A person without a commitment to the name');
	return named;
}

/**
 * Enters people of one organisation, with their names in its chain. Call it within a transaction.
 * @param by who enters them; null for the program itself
 * @returns their ids, in order
 * @throws a unique violation when an e-mail is taken, or a number within the organisation
 */
export async function enterPeople(db: Database, organisation: string, people: readonly Omit<NewPerson, 'organisation'>[], by: string | null, now: Date): Promise<readonly string[]> {
	if (people.length === 0) return [];
	await lockChain(db, organisation);
	const named: Named[] = [];
	for (const person of people) {
		const id = await insertPerson(db, { ...person, organisation }, now);
		named.push({ id, role: person.role, name: person.name, number: person.personalNumber ?? null });
	}
	await appendEntries(db, organisation, await commitNames(db, organisation, named, by, now));
	return named.map(({ id }) => id);
}
