/** Taking records back, and letting them count again: both are further entries, and nothing is deleted. */
import type { PersonRecord, RevocationReason } from '#lib/records/index.ts';
import type { Database } from '../db/open.ts';
import { noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { appendEntries } from './append.ts';
import { findPersonRecord } from './found.ts';
import { lockFor } from './leaving.ts';

export type Revoking = { readonly kind: 'revoked' } | { readonly kind: 'not-found' };
export type Reinstating = { readonly kind: 'reinstated' } | { readonly kind: 'not-found' };

/** @returns a completion, prior training or sign-off of a person; undefined where there is none of that id. */
function recordIn({ trainings, signOffs }: PersonRecord, id: string): { readonly revoked: unknown } | undefined {
	return [...trainings, ...signOffs].find((one) => one.id === id);
}

/**
 * Takes a completion, prior training or sign-off back: it counts no more, and its certificate says so. The course is not
 * opened again by this: that is an order of retraining. Twice is as once.
 * @param record id of the record
 */
export async function revokeRecord(db: Database, who: Person, person: string, record: string, reason: RevocationReason, now: Date): Promise<Revoking> {
	return db.transaction().execute(async (transaction): Promise<Revoking> => {
		if (!(await lockFor(transaction, who))) return { kind: 'not-found' };
		const found = await findPersonRecord(transaction, who.organisation, person);
		const one = found === null ? undefined : recordIn(found.record, record);
		if (one === undefined) return { kind: 'not-found' };
		if (one.revoked !== undefined) return { kind: 'revoked' };
		await appendEntries(transaction, who.organisation, [{ kind: 'revoked', at: now.toISOString(), by: who.id, person, of: record, reason }]);
		await noteDeed(transaction, who, 'record-revoked', person, now, { record, reason });
		return { kind: 'revoked' };
	});
}

/** Lets a record that was taken back count again. Twice is as once. @param record id of the record */
export async function reinstateRecord(db: Database, who: Person, person: string, record: string, now: Date): Promise<Reinstating> {
	return db.transaction().execute(async (transaction): Promise<Reinstating> => {
		if (!(await lockFor(transaction, who))) return { kind: 'not-found' };
		const found = await findPersonRecord(transaction, who.organisation, person);
		const one = found === null ? undefined : recordIn(found.record, record);
		if (one === undefined) return { kind: 'not-found' };
		if (one.revoked === undefined) return { kind: 'reinstated' };
		await appendEntries(transaction, who.organisation, [{ kind: 'reinstated', at: now.toISOString(), by: who.id, person, of: record }]);
		await noteDeed(transaction, who, 'record-reinstated', person, now, { record });
		return { kind: 'reinstated' };
	});
}
