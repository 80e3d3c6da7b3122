/** Names, and what else tells who somebody is, taken out of the tables. What is signed and chained holds neither. */
import type { Database } from './open.ts';
import type { PersonRow } from './people.ts';
import { inParts } from './records.ts';
import { dropThrottle } from './throttle.ts';

/**
 * @returns whether somebody's signature stands on a record of a person whose name is kept: a sign-off, training from
 * before, or the presence at a check
 */
export async function signsForOthers(db: Database, organisation: string, signer: string): Promise<boolean> {
	const named = db.selectFrom('person').select('person.id').where('person.organisation_id', '=', organisation).where('person.name', '!=', '').where('person.id', '!=', signer);
	const queries: readonly { executeTakeFirst(): Promise<unknown> }[] = [
		db.selectFrom('sign_off').select('person_id').where('signer_id', '=', signer).where('person_id', 'in', named).limit(1),
		db.selectFrom('check_opening').select('person_id').where('trainer_id', '=', signer).where('check_id', 'is not', null).where('person_id', 'in', named).limit(1),
		// Ids are drawn: what looks like one in the payload is it.
		db.selectFrom('record_entry').select('person_id').where('organisation_id', '=', organisation).where('kind', '=', 'prior-training').where('payload', 'like', `%"signer":"${signer}"%`).where('person_id', 'in', named).limit(1)
	];
	for (const query of queries) if ((await query.executeTakeFirst()) !== undefined) return true;
	return false;
}

/** @returns those commitments whose name is still kept. */
export async function keptCommitments(db: Database, person: string): Promise<readonly string[]> {
	return (await db.selectFrom('identity').select('commitment').where('person_id', '=', person).orderBy('at').orderBy('commitment').execute()).map(({ commitment }) => commitment);
}

/** Forgets what commitments hold. */
export async function deleteIdentities(db: Database, person: string, commitments: readonly string[]): Promise<void> {
	for (const part of inParts(commitments)) await db.deleteFrom('identity').where('person_id', '=', person).where('commitment', 'in', part).execute();
}

/** Takes away how somebody signs in and where they are listed: PIN or password, sessions, codes, language, e-mail, crews. */
export async function clearAccount(db: Database, organisation: string, person: string): Promise<void> {
	await db.updateTable('person').set({ secret: null, language: null, email: null }).where('id', '=', person).where('organisation_id', '=', organisation).execute();
	await db.deleteFrom('session').where('person_id', '=', person).execute();
	await db.deleteFrom('enrolment').where('person_id', '=', person).execute();
	await db.deleteFrom('crew_learner').where('person_id', '=', person).execute();
	await db.deleteFrom('crew_trainer').where('person_id', '=', person).execute();
	await dropThrottle(db, `account:${person}`);
}

/** Takes away the name itself, and how the person was identified at checks. */
export async function clearName(db: Database, organisation: string, person: string): Promise<void> {
	await db.updateTable('person').set({ name: '', personal_number: null }).where('id', '=', person).where('organisation_id', '=', organisation).execute();
	await db.updateTable('check_opening').set({ identified: '' }).where('person_id', '=', person).execute();
}

/** Where a slice of people ends. */
export interface LastClosed {
	readonly closedAt: string;
	readonly id: string;
}

/** @returns people of an organisation, of one role, who are closed and have a name, the first closed first. @param after where the slice before ended */
export async function closedWithNames(db: Database, organisation: string, role: PersonRow['role'], after: LastClosed, most: number): Promise<readonly PersonRow[]> {
	return db
		.selectFrom('person')
		.selectAll()
		.where('organisation_id', '=', organisation)
		.where('role', '=', role)
		.where('closed_at', '>=', after.closedAt)
		.where((eb) => eb.or([eb('closed_at', '>', after.closedAt), eb('id', '>', after.id)]))
		.where('name', '!=', '')
		.orderBy('closed_at')
		.orderBy('id')
		.limit(most)
		.execute();
}
