/** Training from before, or from elsewhere, judged adequate by the employer: built here, shown, and signed with the password once more. */
import { COURSE } from '#lib/course/index.ts';
import { canonicalJson, type EntryOf, type PersonRecord, type PriorTraining } from '#lib/records/index.ts';
import { employerMessages, messages } from '#lib/text/index.ts';
import { dayIn } from '../course/day.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation, findPersonById } from '../db/people.ts';
import { noteDeed } from '../people/crews.ts';
import { verifySecret } from '../people/secret.ts';
import { accountKey, addressKey, mayTry, noteSuccess } from '../people/throttle.ts';
import type { Person } from '../people/who.ts';
import { appendEntries } from './append.ts';
import { sha256 } from './chain.ts';
import { findPersonRecord, recordSettings } from './found.ts';
import { lockFor } from './leaving.ts';
import { commitmentOf } from './names.ts';
import { validityFor } from './validity.ts';

/** What an employer enters. Days are local, YYYY-MM-DD. */
export interface PriorEntry {
	/** UUID, made when the form is first shown, so that signing twice is signing once. */
	readonly id: string;
	readonly training: string;
	/** Provider and programme as an authority has approved them. */
	readonly provider: string | null;
	readonly programme: string | null;
	readonly trainedDay: string | null;
	readonly judgedDay: string;
	readonly validUntil: string | null;
	/** SHA-256 of the document, hexadecimal. The document itself is not kept. */
	readonly document: string | null;
}

/** What is wrong with an entry, by field: keys of the catalogue. */
export type PriorFault = 'day-to-come' | 'trained-after' | 'until-before' | 'until-needed' | 'until-late';

/** What is read before it is signed. */
export interface PriorToSign {
	readonly kind: 'to-sign';
	readonly record: PriorTraining;
	/** SHA-256 of the record. */
	readonly hash: string;
	/** Tells all that is read before signing: the record, who signs, and the meaning in its language. */
	readonly shown: string;
	/** The commitment to the signer's name. */
	readonly named: string;
	/** What the signature will say, word for word. */
	readonly meaning: string;
}

export type PriorBuilding =
	| PriorToSign
	| { readonly kind: 'fault'; readonly field: 'trainedDay' | 'judgedDay' | 'validUntil'; readonly fault: PriorFault }
	/** Left, or the name is forgotten. */
	| { readonly kind: 'gone' }
	| { readonly kind: 'not-found' };

/** Months that training from before is valid at most, by law or the organisation's own setting; null for no fixed end. */
export async function priorMonths(db: Database, organisation: string): Promise<number | null> {
	const found = await findOrganisation(db, organisation);
	// The day does not matter for the months.
	return found === null ? null : validityFor(found.rules, await recordSettings(db, organisation), '2000-01-01').months;
}

/** The id of a record: from the form's and the person's, so that one form sent for two people makes two. A UUID of version 8, RFC 9562. */
function idOf(person: string, form: string): string {
	const hex = sha256(`prior-training ${person} ${form}`);
	return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

/**
 * Builds what an employer is about to sign, without storing anything.
 * @param language in which it is read
 */
export async function priorToSign(db: Database, who: Person, person: string, entry: PriorEntry, language: 'en' | 'es', now: Date): Promise<PriorBuilding> {
	const found = who.role === 'employer' ? await findPersonRecord(db, who.organisation, person) : null;
	const organisation = await findOrganisation(db, who.organisation);
	if (found?.person.role !== 'learner' || organisation === null) return { kind: 'not-found' };
	if (found.record.left !== undefined || found.record.erased !== undefined || found.person.closed_at !== null) return { kind: 'gone' };
	const latest = validityFor(organisation.rules, await recordSettings(db, organisation.id), entry.trainedDay ?? entry.judgedDay).until;
	const fault = faultIn(entry, dayIn(organisation.zone, now), latest);
	if (fault !== undefined) return { kind: 'fault', ...fault };
	const { id, training, provider, programme, trainedDay, judgedDay, validUntil, document } = entry;
	const record: PriorTraining = {
		kind: 'prior-training',
		version: 1,
		id: idOf(person, id),
		organisation: who.organisation,
		person,
		scope: COURSE.scope,
		training,
		...(provider === null && programme === null ? {} : { approved: { provider, programme } }),
		trainedDay,
		judgedDay,
		document,
		validUntil
	};
	const { priorTraining } = await employerMessages(language);
	const { lessons } = await messages(language);
	const meaning = priorTraining.meaning({ what: lessons.course.scope });
	const hash = sha256(canonicalJson(record));
	const named = await commitmentOf(db, who.id);
	return { kind: 'to-sign', record, hash, shown: sha256(canonicalJson({ record: hash, named, meaning })), named, meaning };
}

/** @param latest last day on which it may be valid; null for any */
function faultIn({ trainedDay, judgedDay, validUntil }: PriorEntry, today: string, latest: string | null): Pick<Extract<PriorBuilding, { kind: 'fault' }>, 'field' | 'fault'> | undefined {
	if (judgedDay > today) return { field: 'judgedDay', fault: 'day-to-come' };
	if (trainedDay !== null && trainedDay > judgedDay) return { field: 'trainedDay', fault: 'trained-after' };
	if (validUntil !== null && validUntil < judgedDay) return { field: 'validUntil', fault: 'until-before' };
	if (latest === null) return undefined;
	if (validUntil === null) return { field: 'validUntil', fault: 'until-needed' };
	return validUntil > latest ? { field: 'validUntil', fault: 'until-late' } : undefined;
}

export type PriorSigning =
	| { readonly kind: 'signed' }
	/** What would be signed is not what was shown: it must be read again. */
	| { readonly kind: 'changed' }
	| { readonly kind: 'wrong-password' }
	| { readonly kind: 'locked' }
	| { readonly kind: 'wait'; readonly retryAfter: number }
	| Exclude<PriorBuilding, PriorToSign>;

/**
 * Signs what was shown. The password is asked for once more; wrong ones count as wrong ones at the sign-in do. Signed
 * twice is signed once.
 * @param given with `shown` of what was read
 * @param address of the visitor
 */
export async function signPrior(
	db: Database,
	who: Person,
	person: string,
	given: { readonly entry: PriorEntry; readonly shown: string; readonly password: string; readonly language: 'en' | 'es' },
	address: string,
	now: Date
): Promise<PriorSigning> {
	const built = await priorToSign(db, who, person, given.entry, given.language, now);
	if (built.kind !== 'to-sign') return built;
	const keys = [accountKey(who.id), addressKey(address)];
	const may = await mayTry(db, keys, now);
	if (may.kind !== 'may') return may;
	const signer = await findPersonById(db, who.id);
	if (!(await verifySecret(signer?.secret ?? null, given.password)).ok) {
		await noteDeed(db, who, 'signing-refused', person, now);
		return { kind: 'wrong-password' };
	}
	await noteSuccess(db, keys);
	return built.shown === given.shown ? store(db, who, person, built, given.language, now) : { kind: 'changed' };
}

async function store(db: Database, who: Person, person: string, { record, hash, named, meaning }: PriorToSign, language: 'en' | 'es', now: Date): Promise<PriorSigning> {
	return db.transaction().execute(async (transaction): Promise<PriorSigning> => {
		if (!(await lockFor(transaction, who))) return { kind: 'not-found' };
		const found = await findPersonRecord(transaction, who.organisation, person);
		if (found === null) return { kind: 'not-found' };
		// The chain is kept for this transaction: whoever signs the same in the same moment comes before or after.
		if (found.record.left !== undefined || found.record.erased !== undefined) return { kind: 'gone' };
		const before = signedBefore(found.record, record.id);
		if (before !== undefined) return { kind: before === hash ? 'signed' : 'changed' };
		const at = now.toISOString();
		const signature: EntryOf<'prior-training'>['signature'] = { record: hash, signer: who.id, named, capacity: 'employer', meaning, language, at };
		await appendEntries(transaction, who.organisation, [{ kind: 'prior-training', at, by: who.id, person, record, signature }]);
		await noteDeed(transaction, who, 'prior-training-entered', person, now, { record: record.id });
		return { kind: 'signed' };
	});
}

/** @returns the hash of what was signed under an id. */
function signedBefore({ trainings }: PersonRecord, id: string): string | undefined {
	const before = trainings.find((one) => one.id === id)?.entry;
	return before?.kind === 'prior-training' ? before.signature.record : undefined;
}
