/** Signing off the hands-on part: what is signed for is built here, shown, and signed with the password once more. */
import { createHash } from 'node:crypto';
import { COURSE } from '#lib/course/index.ts';
import { canonicalJson, type Capacity, type HandsOnCheck, type HandsOnRecord, type Signature } from '#lib/records/index.ts';
import { messages, staffMessages } from '#lib/text/index.ts';
import { dayIn } from '../course/day.ts';
import { completionsOf } from '../db/checks.ts';
import { findLearner } from '../db/crew-list.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation, findPersonById } from '../db/people.ts';
import { insertSignOff, signOffsOf, type SignOffRow } from '../db/sign-offs.ts';
import { noteDeed } from './crews.ts';
import { verifySecret } from './secret.ts';
import { accountKey, addressKey, mayTry, noteSuccess } from './throttle.ts';
import type { Person } from './who.ts';

/** What a trainer enters. */
export interface HandsOnEntry {
	/** UUID of the record to be: made when it is first shown, so that signing twice is signing once. */
	readonly id: string;
	readonly checks: readonly HandsOnCheck[];
	readonly place: string;
	/** YYYY-MM-DD */
	readonly day: string;
	readonly capacity: Capacity;
}

/** What is read before it is signed. */
export interface ToSign {
	readonly kind: 'to-sign';
	readonly record: HandsOnRecord;
	readonly hash: string;
	/** What the signature will say, word for word. */
	readonly meaning: string;
}

export type Signing =
	| { readonly kind: 'signed' }
	/** What would be signed is not what was shown: it must be read again. */
	| { readonly kind: 'changed' }
	| { readonly kind: 'wrong-password' }
	| { readonly kind: 'locked' }
	| { readonly kind: 'wait'; readonly retryAfter: number }
	| { readonly kind: 'day-to-come' }
	| { readonly kind: 'not-found' };

function hashOf(text: string): string {
	return createHash('sha256').update(text).digest('hex');
}

/**
 * Builds what a trainer is about to sign, without storing anything.
 * @param language in which the trainer reads it
 */
export async function toSign(
	db: Database,
	who: Person,
	crew: string,
	person: string,
	entry: HandsOnEntry,
	language: 'en' | 'es',
	now: Date
): Promise<ToSign | { readonly kind: 'not-found' } | { readonly kind: 'day-to-come' }> {
	if ((await findLearner(db, who, crew, person)) === null) return { kind: 'not-found' };
	const organisation = await findOrganisation(db, who.organisation);
	if (organisation === null) return { kind: 'not-found' };
	if (entry.day > dayIn(organisation.zone, now)) return { kind: 'day-to-come' };
	const passed = (await completionsOf(db, person)).find((one) => one.course === COURSE.id);
	const record: HandsOnRecord = {
		kind: 'hands-on',
		version: 1,
		id: entry.id,
		organisation: who.organisation,
		person,
		scope: COURSE.scope,
		checks: entry.checks,
		place: entry.place,
		day: entry.day,
		theory:
			passed === undefined
				? null
				: { completion: passed.id, course: passed.course, version: passed.version, day: passed.day, supervised: passed.supervised === 1 }
	};
	const { signOff } = await staffMessages(language);
	const { lessons } = await messages(language);
	const meaning = signOff.meaning({ as: signOff.capacities[entry.capacity], what: lessons.course.scope });
	return { kind: 'to-sign', record, hash: hashOf(canonicalJson(record)), meaning };
}

/**
 * Signs what was shown. The password is asked for once more; wrong ones count as wrong ones at the sign-in do.
 * @param shown hash of what the trainer read
 * @param address of the visitor
 */
export async function signHandsOn(
	db: Database,
	who: Person,
	crew: string,
	person: string,
	given: { readonly entry: HandsOnEntry; readonly shown: string; readonly password: string; readonly language: 'en' | 'es' },
	address: string,
	now: Date
): Promise<Signing> {
	const { entry, shown, password, language } = given;
	const built = await toSign(db, who, crew, person, entry, language, now);
	if (built.kind !== 'to-sign') return built;
	const keys = [accountKey(who.id), addressKey(address)];
	const may = await mayTry(db, keys, now);
	if (may.kind !== 'may') return may;
	const signer = await findPersonById(db, who.id);
	if (!(await verifySecret(signer?.secret ?? null, password)).ok) return { kind: 'wrong-password' };
	await noteSuccess(db, keys);
	if (built.hash !== shown) return { kind: 'changed' };
	return db.transaction().execute(async (transaction) => {
		const before = await signOffsOf(transaction, [person]);
		if (before.some((one) => one.id === entry.id)) return { kind: 'signed' };
		const signature: Signature = { record: built.hash, signer: who.id, name: who.name, capacity: entry.capacity, meaning: built.meaning, language, at: now.toISOString() };
		await insertSignOff(transaction, {
			id: entry.id,
			organisation_id: who.organisation,
			person_id: person,
			signer_id: who.id,
			capacity: entry.capacity,
			record: canonicalJson(built.record),
			record_hash: built.hash,
			signed: canonicalJson(signature),
			language,
			at: now.toISOString()
		});
		await noteDeed(transaction, who, 'hands-on-signed', person, now, { signOff: entry.id, capacity: entry.capacity });
		return { kind: 'signed' };
	});
}

/** A sign-off as it is told. */
export interface SignedOff {
	readonly id: string;
	readonly person: string;
	readonly record: HandsOnRecord;
	readonly signature: Signature;
	/** Whether record and signature still belong together. */
	readonly whole: boolean;
}

/** @returns what was signed off for some people, the newest first. Whose people they are, the caller has asked. */
export async function signedOff(db: Database, people: readonly string[]): Promise<readonly SignedOff[]> {
	return (await signOffsOf(db, people)).map(told);
}

function told(row: SignOffRow): SignedOff {
	// Our own, written by signHandsOn alone.
	const record = JSON.parse(row.record) as HandsOnRecord;
	const signature = JSON.parse(row.signed) as Signature;
	return { id: row.id, person: row.person_id, record, signature, whole: hashOf(row.record) === row.record_hash && signature.record === row.record_hash };
}
