import type { Database } from './open.ts';
import type { EnrolmentTable } from './schema.ts';

export type EnrolmentKind = EnrolmentTable['kind'];

/** A code that can still be used. */
export interface OpenEnrolment {
	readonly kind: EnrolmentKind;
	readonly person: string | null;
}

export async function insertEnrolment(
	db: Database,
	enrolment: { readonly codeHash: string; readonly kind: EnrolmentKind; readonly person: string | null; readonly createdAt: string; readonly expiresAt: string }
): Promise<void> {
	await db
		.insertInto('enrolment')
		.values({
			code_hash: enrolment.codeHash,
			kind: enrolment.kind,
			person_id: enrolment.person,
			created_at: enrolment.createdAt,
			expires_at: enrolment.expiresAt,
			used_at: null
		})
		.execute();
}

/** Uses a code up: of two who come together one gets it. Call it within the transaction that does what the code is for. */
export async function useEnrolment(db: Database, kind: EnrolmentKind, codeHash: string, now: string): Promise<OpenEnrolment | null> {
	const row = await db
		.updateTable('enrolment')
		.set({ used_at: now })
		.where('code_hash', '=', codeHash)
		.where('kind', '=', kind)
		.where('used_at', 'is', null)
		.where('expires_at', '>', now)
		.returning(['kind', 'person_id as person'])
		.executeTakeFirst();
	return row ?? null;
}

/** Makes every open code of a person, or every open set-up code (null), worthless. */
export async function voidEnrolments(db: Database, kind: EnrolmentKind, person: string | null, now: string): Promise<void> {
	await db
		.updateTable('enrolment')
		.set({ used_at: now })
		.where('kind', '=', kind)
		.where('used_at', 'is', null)
		.where('person_id', person === null ? 'is' : '=', person)
		.execute();
}
