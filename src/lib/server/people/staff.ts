import type { Database } from '../db/open.ts';
import { useEnrolment, voidEnrolments } from '../db/enrolments.ts';
import {
	findPerson,
	findPersonById,
	findStaffByEmail,
	isUniqueViolation,
	setSecret,
	type PersonRow
} from '../db/people.ts';
import { leaveOnce, todayIn } from '../records/leaving.ts';
import { enterPeople } from '../records/names.ts';
import { note, type AuditKind } from './audit.ts';
import { codeHash, makeCode } from './code.ts';
import type { Enrolled } from './organisation.ts';
import { hashSecret, verifySecret } from './secret.ts';
import { endAllSessions } from './session.ts';
import { accountKey, addressKey, mayTry, noteSuccess, unknownAccountKey, unlock } from './throttle.ts';
import type { Person } from './who.ts';

/** What came of signing in. Of failures nothing tells whether there is such an account. */
export type SignedIn =
	| { readonly kind: 'signed-in'; readonly person: string }
	| { readonly kind: 'refused'; readonly why: 'wrong' | 'locked' | 'wait'; readonly retryAfter?: number };

/** Staff as they type: an e-mail as it is kept. */
export function emailKept(typed: string): string {
	return typed.trim().toLowerCase();
}

/**
 * Signs a member of staff in by e-mail and password; the caller starts the session.
 * @param address of the visitor
 */
export async function signInStaff(
	db: Database,
	given: { readonly email: string; readonly password: string },
	address: string,
	now: Date
): Promise<SignedIn> {
	const email = emailKept(given.email);
	const person = await findStaffByEmail(db, email);
	const keys = [person === null ? unknownAccountKey(email) : accountKey(person.id), addressKey(address)];
	const may = await mayTry(db, keys, now);
	if (may.kind === 'locked') return { kind: 'refused', why: 'locked' };
	if (may.kind === 'wait') return { kind: 'refused', why: 'wait', retryAfter: may.retryAfter };
	const { ok, rehash } = await verifySecret(person?.secret ?? null, given.password);
	if (person === null) return { kind: 'refused', why: 'wrong' };
	if (!ok || person.closed_at !== null) {
		await noteOf(db, 'sign-in-refused', person, null, now);
		return { kind: 'refused', why: 'wrong' };
	}
	await noteSuccess(db, keys);
	if (rehash) await setSecret(db, person.id, await hashSecret('password', given.password));
	await noteOf(db, 'signed-in', person, person.id, now);
	return { kind: 'signed-in', person: person.id };
}

async function noteOf(db: Database, kind: AuditKind, subject: Pick<PersonRow, 'id' | 'organisation_id'>, actor: string | null, now: Date): Promise<void> {
	await note(db, { kind, organisation: subject.organisation_id, actor, subject: subject.id }, now);
}

/** A member of staff to be invited. */
export interface Invitation {
	readonly role: 'trainer' | 'employer';
	readonly name: string;
	/** Lower case. */
	readonly email: string;
}

/** Enters a member of staff without a password. @returns the one-use code for it, shown once; null when the e-mail is taken */
export async function inviteStaff(db: Database, employer: Person, invited: Invitation, now: Date): Promise<string | null> {
	if ((await findStaffByEmail(db, invited.email)) !== null) return null;
	const { organisation } = employer;
	try {
		return await db.transaction().execute(async (transaction) => {
			const [person] = await enterPeople(transaction, organisation, [invited], employer.id, now);
			if (person === undefined) throw new Error('Nobody was entered');
			const code = await makeCode(transaction, 'staff', person, now);
			await note(transaction, { kind: 'staff-invited', organisation, actor: employer.id, subject: person, detail: { role: invited.role } }, now);
			return code;
		});
	} catch (error) {
		if (isUniqueViolation(error)) return null;
		throw error;
	}
}

/** What came of a reset: of staff a new one-use code, of a learner a PIN that is to be chosen again. */
export type Reset = { readonly kind: 'code'; readonly code: string } | { readonly kind: 'pin' } | { readonly kind: 'not-found' };

/**
 * Takes a person's secret away, signs them out everywhere, and lets them try again. Staff get a code to choose a new
 * password; learners choose a new PIN with their crew's code.
 */
export async function resetPerson(db: Database, employer: Person, id: string, now: Date): Promise<Reset> {
	const person = await findPerson(db, employer.organisation, id);
	if (person === null || person.closed_at !== null) return { kind: 'not-found' };
	return db.transaction().execute(async (transaction) => {
		await forgetSecret(transaction, person, now);
		if (person.role === 'learner') {
			await noteOf(transaction, 'pin-reset', person, employer.id, now);
			return { kind: 'pin' };
		}
		const code = await makeCode(transaction, 'staff', person.id, now);
		await noteOf(transaction, 'staff-reset', person, employer.id, now);
		return { kind: 'code', code };
	});
}

async function forgetSecret(db: Database, person: PersonRow, now: Date): Promise<void> {
	await setSecret(db, person.id, null);
	await voidEnrolments(db, 'staff', person.id, now.toISOString());
	await endAllSessions(db, person.id);
	await unlock(db, person.id);
}

/**
 * A code for staff who cannot sign in, by the e-mail: for who runs the server, when no employer is left who could.
 * The old password holds until the code is used.
 * @returns null when no member of staff has this e-mail
 */
export async function passwordCode(db: Database, email: string, now: Date): Promise<string | null> {
	const person = await findStaffByEmail(db, emailKept(email));
	if (person === null || person.closed_at !== null) return null;
	return db.transaction().execute(async (transaction) => {
		await voidEnrolments(transaction, 'staff', person.id, now.toISOString());
		await noteOf(transaction, 'staff-reset', person, null, now);
		return makeCode(transaction, 'staff', person.id, now);
	});
}

/**
 * A member of staff chooses a password by a one-use code. Of two who use it at once one gets it.
 * @param address of the visitor
 */
export async function enrolStaff(
	db: Database,
	given: { readonly code: string; readonly password: string },
	address: string,
	now: Date
): Promise<Enrolled> {
	const keys = [addressKey(address)];
	const may = await mayTry(db, keys, now);
	if (may.kind !== 'may') return { kind: 'refused', why: 'wait', retryAfter: may.kind === 'wait' ? may.retryAfter : 1 };
	const secret = await hashSecret('password', given.password);
	const person = await db.transaction().execute(async (transaction) => {
		const used = await useEnrolment(transaction, 'staff', codeHash(given.code), now.toISOString());
		const found = used === null || used.person === null ? null : await findPersonById(transaction, used.person);
		if (found === null || found.closed_at !== null) return null;
		await forgetSecret(transaction, found, now);
		await setSecret(transaction, found.id, secret);
		await noteOf(transaction, 'staff-enrolled', found, found.id, now);
		return found.id;
	});
	if (person === null) return { kind: 'refused', why: 'code' };
	await noteSuccess(db, keys);
	return { kind: 'enrolled', person };
}

/** Lets a person try again who was locked out. @returns whether there is such a person in the employer's organisation */
export async function unlockPerson(db: Database, employer: Person, id: string, now: Date): Promise<boolean> {
	const person = await findPerson(db, employer.organisation, id);
	if (person === null) return false;
	await db.transaction().execute(async (transaction) => {
		await unlock(transaction, id);
		await noteOf(transaction, 'person-unlocked', person, employer.id, now);
	});
	return true;
}

/**
 * Closes a person: signed out everywhere; in the records they have left today, and what they did stays. An employer
 * cannot close themselves; of two who close each other at the same time one stays.
 * @returns false when there is nobody open of that id in the employer's organisation
 */
export async function closeAccount(db: Database, employer: Person, id: string, now: Date): Promise<boolean> {
	return (await leaveOnce(db, employer, id, await todayIn(db, employer.organisation, now), 'person-closed', now)).kind === 'done';
}
