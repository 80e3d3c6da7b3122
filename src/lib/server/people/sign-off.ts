/** Signing off the hands-on part: what is signed for is built here, shown, and signed with the password once more. */
import { randomUUID } from 'node:crypto';
import { COURSE } from '#lib/course/index.ts';
import { canonicalJson, type Capacity, type EntryOf, type HandsOnCheck, type HandsOnRecord, type PersonRecord, type TheoryPassed } from '#lib/records/index.ts';
import { messages, staffMessages } from '#lib/text/index.ts';
import { dayIn } from '../course/day.ts';
import { findLearner } from '../db/crew-list.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation, findPersonById, isUniqueViolation } from '../db/people.ts';
import { identitiesOf } from '../db/records.ts';
import { findSignOff, insertSignOff } from '../db/sign-offs.ts';
import { appendEntries, lockChain } from '../records/append.ts';
import { sha256 } from '../records/chain.ts';
import { recordOf, recordsOf } from '../records/found.ts';
import { commitmentOf } from '../records/names.ts';
import { noteDeed } from './crews.ts';
import { verifySecret } from './secret.ts';
import { accountKey, addressKey, mayTry, noteSuccess } from './throttle.ts';
import type { Person } from './who.ts';

type HandsOnSignature = EntryOf<'hands-on'>['signature'];

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
	/** Under the entry's id, or under a new one where that stands for something else that was signed. */
	readonly record: HandsOnRecord;
	/** Of the record. */
	readonly hash: string;
	/** Tells all that is read before signing: the record, the signer's name, and the meaning with its capacity in its language. */
	readonly shown: string;
	/** The commitment to the signer's name. */
	readonly named: string;
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

function recordHash(record: HandsOnRecord): string {
	return sha256(canonicalJson(record));
}

/** @returns the theory that a sign-off goes with now: passed, and not from before an order of retraining; null where there is none. */
export function theoryOf({ trainings, orders }: PersonRecord): TheoryPassed | null {
	const run = orders.filter((one) => !one.withdrawn).length;
	const passed = trainings.findLast((one) => one.entry.kind === 'completed' && one.revoked === undefined && one.run === run)?.entry;
	if (passed?.kind !== 'completed' || passed.course.id !== COURSE.id) return null;
	return { completion: passed.id, course: passed.course.id, version: passed.course.version, day: passed.day, supervised: passed.supervised !== null };
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
	const theory = theoryOf(await recordOf(db, person));
	const recordUnder = (id: string): HandsOnRecord => ({
		kind: 'hands-on',
		version: 1,
		id,
		organisation: who.organisation,
		person,
		scope: COURSE.scope,
		checks: [...entry.checks],
		place: entry.place,
		day: entry.day,
		theory
	});
	const entered = recordUnder(entry.id);
	const before = await findSignOff(db, entry.id);
	// A form that was gone back to after signing, and filled in anew.
	const record = before === null || before.record_hash === recordHash(entered) ? entered : recordUnder(randomUUID());
	const { signOff } = await staffMessages(language);
	const { lessons } = await messages(language);
	const meaning = signOff.meaning({ as: signOff.capacities[entry.capacity], what: lessons.course.scope });
	const hash = recordHash(record);
	const named = await commitmentOf(db, who.id);
	return { kind: 'to-sign', record, hash, shown: sha256(canonicalJson({ record: hash, named, capacity: entry.capacity, meaning })), named, meaning };
}

/**
 * Signs what was shown. The password is asked for once more; wrong ones count as wrong ones at the sign-in do.
 * @param given with `shown` of what the trainer read
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
	if (!(await verifySecret(signer?.secret ?? null, password)).ok) {
		await noteDeed(db, who, 'signing-refused', person, now);
		return { kind: 'wrong-password' };
	}
	await noteSuccess(db, keys);
	if (built.shown !== shown) return { kind: 'changed' };
	try {
		return await store(db, who, crew, person, { entry, built, language }, now);
	} catch (error) {
		if (!isUniqueViolation(error)) throw error;
		// Sent twice: the same was signed before, or in the same moment.
		const before = await findSignOff(db, built.record.id);
		return { kind: before?.record_hash === built.hash ? 'signed' : 'changed' };
	}
}

/**
 * Stores a signature, in its table and in the chain, if it still is what was shown: checking a password takes a moment.
 * @throws a unique violation where a record of this id is signed already
 */
async function store(
	db: Database,
	who: Person,
	crew: string,
	person: string,
	{ entry, built, language }: { readonly entry: HandsOnEntry; readonly built: ToSign; readonly language: 'en' | 'es' },
	now: Date
): Promise<Signing> {
	const { record, hash, named, meaning } = built;
	const { capacity } = entry;
	const at = now.toISOString();
	const signature: HandsOnSignature = { record: hash, signer: who.id, named, capacity, meaning, language, at };
	return db.transaction().execute(async (transaction): Promise<Signing> => {
		await lockChain(transaction, who.organisation);
		const again = await toSign(transaction, who, crew, person, entry, language, now);
		if (again.kind !== 'to-sign') return again;
		if (again.shown !== built.shown) return { kind: 'changed' };
		await insertSignOff(transaction, {
			id: record.id,
			organisation_id: who.organisation,
			person_id: person,
			signer_id: who.id,
			capacity,
			record: canonicalJson(record),
			record_hash: hash,
			signed: canonicalJson(signature),
			language,
			at
		});
		await appendEntries(transaction, who.organisation, [{ kind: 'hands-on', at, by: who.id, person, record, signature }]);
		await noteDeed(transaction, who, 'hands-on-signed', person, now, { signOff: record.id, capacity });
		return { kind: 'signed' };
	});
}

/** A sign-off as it is told. */
export interface SignedOff {
	readonly id: string;
	readonly person: string;
	readonly record: HandsOnRecord;
	readonly signature: HandsOnSignature;
	/** Whose name was printed under it; null where it is forgotten. */
	readonly signer: string | null;
	/** Whether it counts no more. */
	readonly revoked: boolean;
	/** Whether record and signature still belong together. */
	readonly whole: boolean;
}

/** @returns what was signed off for some people of an organisation, the newest first. Whose people they are, the caller has asked. */
export async function signedOff(db: Database, organisation: string, people: readonly string[]): Promise<readonly SignedOff[]> {
	const records = await recordsOf(db, people);
	const found = people.flatMap((person) => records.get(person)?.signOffs ?? []).toSorted((a, b) => b.seq - a.seq);
	const names = await identitiesOf(db, organisation, [...new Set(found.map(({ entry }) => entry.signature.named))]);
	return found.map(({ entry, revoked }) => ({
		...told(entry),
		signer: names.get(entry.signature.named)?.name ?? null,
		revoked: revoked !== undefined
	}));
}

function told({ person, record, signature }: EntryOf<'hands-on'>): Pick<SignedOff, 'id' | 'person' | 'record' | 'signature' | 'whole'> {
	return { id: record.id, person, record, signature, whole: recordHash(record) === signature.record };
}
