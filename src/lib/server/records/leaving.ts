/** Who leaves the organisation and who comes back. The records of who left stay. */
import * as z from 'zod';
import type { EntryOf } from '#lib/records/index.ts';
import { dayIn } from '../course/day.ts';
import { voidEnrolments } from '../db/enrolments.ts';
import type { Database } from '../db/open.ts';
import { closePerson, findOrganisation, findPerson, reopenPeople, type PersonRow } from '../db/people.ts';
import { lockHead } from '../db/records.ts';
import type { AuditKind } from '../people/audit.ts';
import { DONE, NOT_FOUND, noteDeed, type Change } from '../people/crews.ts';
import { endAllSessions } from '../people/session.ts';
import type { Person } from '../people/who.ts';
import { appendEntries } from './append.ts';
import { BEFORE_FIRST } from './chain.ts';
import { recordOf } from './found.ts';

/** What came of marking that somebody left. */
export type Leaving =
	| Change
	/** Nobody marks themselves: an employer stays. */
	| { readonly kind: 'yourself' }
	/** A day that has not come yet, or none. */
	| { readonly kind: 'no-day' };

/** What came of marking that somebody came back. */
export type Returning =
	| Change
	/** The name is forgotten: who comes back is entered anew. */
	| { readonly kind: 'erased' };

const dayField = z.iso.date();

/** @returns the local day of an organisation. */
export async function todayIn(db: Database, organisation: string, now: Date): Promise<string> {
	return dayIn((await findOrganisation(db, organisation))?.zone ?? 'UTC', now);
}

/**
 * Keeps the organisation's chain for this transaction, and asks whether the employer is still there: of two who close
 * each other at once the second finds that they are closed. So one employer always stays.
 * @returns whether they may go on
 */
export async function lockFor(transaction: Database, who: Person): Promise<boolean> {
	if (who.role !== 'employer') return false;
	await lockHead(transaction, who.organisation, { seq: 0, hash: BEFORE_FIRST });
	const asking = await findPerson(transaction, who.organisation, who.id);
	return asking !== null && asking.closed_at === null && asking.role === 'employer';
}

/**
 * Marks that somebody left the organisation: signed out everywhere, in no list of those who are there; the record
 * stays. Twice is as once.
 * @param day the last day there, local, not after today
 */
export async function markLeft(db: Database, who: Person, person: string, day: string, now: Date): Promise<Leaving> {
	if (!dayField.safeParse(day).success || day > (await todayIn(db, who.organisation, now))) return { kind: 'no-day' };
	const left = await leaveOnce(db, who, person, day, 'person-left', now);
	return left.kind === 'before' ? DONE : left;
}

/** As `markLeft`, today, and told apart whether they had left before. @param kind what is noted of it */
export async function leaveOnce(db: Database, who: Person, person: string, day: string, kind: AuditKind, now: Date): Promise<Exclude<Leaving, { kind: 'no-day' }> | { readonly kind: 'before' }> {
	if (person === who.id) return { kind: 'yourself' };
	return db.transaction().execute(async (transaction) => {
		if (!(await lockFor(transaction, who))) return NOT_FOUND;
		const found = await findPerson(transaction, who.organisation, person);
		if (found === null) return NOT_FOUND;
		const noted = (await recordOf(transaction, person)).left !== undefined;
		if (found.closed_at !== null && noted) return { kind: 'before' } as const;
		await leaveAll(transaction, who, [found], day, kind, now);
		return DONE;
	});
}

/** Marks people as left who are there. Call it within a transaction that has the lock. */
export async function leaveAll(transaction: Database, who: Person, people: readonly Pick<PersonRow, 'id' | 'role'>[], day: string, kind: AuditKind, now: Date): Promise<void> {
	const at = now.toISOString();
	for (const { id, role } of people) {
		await closePerson(transaction, who.organisation, id, at);
		if (role !== 'learner') await voidEnrolments(transaction, 'staff', id, at);
		await endAllSessions(transaction, id);
		await noteDeed(transaction, who, kind, id, now, { day });
	}
	await appendEntries(transaction, who.organisation, people.map(({ id }): EntryOf<'left'> => ({ kind: 'left', at, by: who.id, person: id, day })));
}

/** Marks that somebody who left is there again, with the number, the record and the crews from before. Twice is as once. */
export async function markReturned(db: Database, who: Person, person: string, now: Date): Promise<Returning> {
	return db.transaction().execute(async (transaction) => {
		if (!(await lockFor(transaction, who))) return NOT_FOUND;
		const found = await findPerson(transaction, who.organisation, person);
		if (found === null) return NOT_FOUND;
		const { left, erased } = await recordOf(transaction, person);
		if (erased !== undefined) return { kind: 'erased' };
		if (found.closed_at === null && left === undefined) return DONE;
		await returnAll(transaction, who, [person], await todayIn(transaction, who.organisation, now), now);
		return DONE;
	});
}

/** Marks people as there again. Call it within a transaction that has the lock. */
export async function returnAll(transaction: Database, who: Person, people: readonly string[], day: string, now: Date): Promise<void> {
	await reopenPeople(transaction, who.organisation, people);
	for (const id of people) await noteDeed(transaction, who, 'person-returned', id, now, { day });
	await appendEntries(transaction, who.organisation, people.map((person): EntryOf<'returned'> => ({ kind: 'returned', at: now.toISOString(), by: who.id, person, day })));
}
