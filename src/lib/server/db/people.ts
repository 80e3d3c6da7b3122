import { randomUUID } from 'node:crypto';
import type { Selectable, Updateable } from 'kysely';
import type { Database } from './open.ts';
import { inParts } from './records.ts';
import type { OrganisationTable, PersonTable } from './schema.ts';

/** A person as the tables have them; the secret is a hash. */
export type PersonRow = Readonly<Selectable<PersonTable>>;

export type OrganisationRow = Readonly<Selectable<OrganisationTable>>;

/** A person to be entered. */
export interface NewPerson {
	readonly organisation: string;
	readonly role: PersonTable['role'];
	readonly name: string;
	/** Of learners, as `personalNumber` writes it. */
	readonly personalNumber?: string;
	/** Of staff, lower case. */
	readonly email?: string;
	readonly secret?: string;
	readonly language?: 'en' | 'es';
}

/** Whether an organisation has been set up. */
export async function hasOrganisation(db: Database): Promise<boolean> {
	return (await db.selectFrom('organisation').select('id').limit(1).executeTakeFirst()) !== undefined;
}

export async function insertOrganisation(db: Database, organisation: OrganisationRow): Promise<void> {
	await db.insertInto('organisation').values(organisation).execute();
}

export async function findOrganisation(db: Database, id: string): Promise<OrganisationRow | null> {
	return (await db.selectFrom('organisation').selectAll().where('id', '=', id).executeTakeFirst()) ?? null;
}

/** @returns the ids of all organisations. */
export async function organisationIds(db: Database): Promise<readonly string[]> {
	return (await db.selectFrom('organisation').select('id').orderBy('id').execute()).map(({ id }) => id);
}

export async function updateOrganisation(
	db: Database,
	id: string,
	set: Readonly<Pick<Updateable<OrganisationTable>, 'name' | 'rules' | 'units' | 'language' | 'zone'>>
): Promise<void> {
	await db.updateTable('organisation').set(set).where('id', '=', id).execute();
}

/** Names the pass rule of an organisation's final check: a shipped one, or one of its own. */
export async function setPassRule(db: Database, id: string, passRule: string): Promise<void> {
	await db.updateTable('organisation').set({ pass_rule: passRule }).where('id', '=', id).execute();
}

/**
 * Enters a person, and the row under which their answers are kept. Call it within a transaction.
 * @returns the new id
 * @throws a unique violation when the e-mail is taken, or the number within the organisation
 */
export async function insertPerson(db: Database, person: NewPerson, now: Date): Promise<string> {
	const id = randomUUID();
	const answerer = randomUUID();
	const at = now.toISOString();
	// No token has a hash of this form: no cookie opens it.
	await db.insertInto('guest').values({ id: answerer, token_hash: `person:${id}`, created_at: at }).execute();
	await db
		.insertInto('person')
		.values({
			id,
			organisation_id: person.organisation,
			answerer_id: answerer,
			role: person.role,
			name: person.name,
			personal_number: person.personalNumber ?? null,
			email: person.email ?? null,
			secret: person.secret ?? null,
			language: person.language ?? null,
			closed_at: null,
			created_at: at
		})
		.execute();
	return id;
}

/** Anybody by id, of any organisation: for sign-in, where there is none yet. */
export async function findPersonById(db: Database, id: string): Promise<PersonRow | null> {
	return (await db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirst()) ?? null;
}

/** A person of an organisation; null for one of another. */
export async function findPerson(db: Database, organisation: string, id: string): Promise<PersonRow | null> {
	const row = await db.selectFrom('person').selectAll().where('id', '=', id).where('organisation_id', '=', organisation).executeTakeFirst();
	return row ?? null;
}

/** Staff by e-mail. @param email lower case */
export async function findStaffByEmail(db: Database, email: string): Promise<PersonRow | null> {
	return (await db.selectFrom('person').selectAll().where('email', '=', email).executeTakeFirst()) ?? null;
}

/** Everyone of an organisation, by role and name. */
export async function peopleOf(db: Database, organisation: string): Promise<readonly PersonRow[]> {
	return db.selectFrom('person').selectAll().where('organisation_id', '=', organisation).orderBy('role').orderBy('name').orderBy('id').execute();
}

/** Sets or takes away the secret. */
export async function setSecret(db: Database, personId: string, secret: string | null): Promise<void> {
	await db.updateTable('person').set({ secret }).where('id', '=', personId).execute();
}

export async function setLanguage(db: Database, personId: string, language: 'en' | 'es'): Promise<void> {
	await db.updateTable('person').set({ language }).where('id', '=', personId).execute();
}

/** Closes a person of an organisation. @returns false when there is none, or they are closed already */
export async function closePerson(db: Database, organisation: string, id: string, at: string): Promise<boolean> {
	const { numUpdatedRows } = await db
		.updateTable('person')
		.set({ closed_at: at })
		.where('id', '=', id)
		.where('organisation_id', '=', organisation)
		.where('closed_at', 'is', null)
		.executeTakeFirst();
	return numUpdatedRows > 0n;
}

/** Gives a person of an organisation another name and number. @throws a unique violation when the number is taken */
export async function renameTo(db: Database, organisation: string, id: string, name: string, number: string | null): Promise<void> {
	await db.updateTable('person').set({ name, personal_number: number }).where('id', '=', id).where('organisation_id', '=', organisation).execute();
}

/** Opens people of an organisation again who were closed. */
export async function reopenPeople(db: Database, organisation: string, ids: readonly string[]): Promise<void> {
	for (const part of inParts(ids)) {
		await db.updateTable('person').set({ closed_at: null }).where('id', 'in', part).where('organisation_id', '=', organisation).execute();
	}
}

/** Whether an error says that a value is there already that may be there only once. */
export function isUniqueViolation(error: unknown): boolean {
	if (!(error instanceof Error)) return false;
	// SQLite: primary key, unique; PostgreSQL: unique_violation.
	if ('errcode' in error) return error.errcode === 1555 || error.errcode === 2067;
	return 'code' in error && error.code === '23505';
}

/** Whether an error says that two who wait for each other were parted: the same again may do. */
export function isDeadlock(error: unknown): boolean {
	// PostgreSQL: deadlock_detected. SQLite has one writer at a time.
	return error instanceof Error && 'code' in error && error.code === '40P01';
}
