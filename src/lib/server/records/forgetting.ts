/** Forgetting a name: what is chained and signed stays as it is, and nothing says any more whose it is. */
import type { EntryOf, PersonRecord } from '#lib/records/index.ts';
import { clearAccount, clearName, deleteIdentities, keptCommitments } from '../db/forgetting.ts';
import type { Database } from '../db/open.ts';
import { closePerson } from '../db/people.ts';
import { lockHead } from '../db/records.ts';
import { note, type AuditKind } from '../people/audit.ts';
import { NOT_FOUND } from '../people/crews.ts';
import { sameName, tidyNumber } from '../people/fields.ts';
import type { Person } from '../people/who.ts';
import { appendEntries } from './append.ts';
import { BEFORE_FIRST } from './chain.ts';
import { findPersonRecord, type FoundPerson } from './found.ts';
import { lockFor } from './leaving.ts';
import { forgettingFacts, forgettingOf, type MayForget } from './may-forget.ts';

/** Why a name is forgotten. */
export const FORGETTING_REASONS = ['asked-for', 'kept-long-enough'] as const satisfies readonly EntryOf<'identity-erased'>['why'][];
export type ForgettingReason = (typeof FORGETTING_REASONS)[number];

/** What came of forgetting a name. */
export type Forgetting = { readonly kind: 'forgotten' } | Exclude<MayForget, { kind: 'allowed' }> | { readonly kind: 'not-found' };

/** Who forgets: an employer, or the program itself. */
interface Deed {
	readonly organisation: string;
	readonly by: string | null;
	readonly now: Date;
}

/**
 * Forgets the name of a person, or all but the name where law asks for that; a refusal is noted. In one transaction:
 * all of it is done or nothing.
 */
export async function forgetName(db: Database, who: Person, person: string, why: ForgettingReason, now: Date): Promise<Forgetting> {
	return db.transaction().execute(async (transaction): Promise<Forgetting> => {
		if (!(await lockFor(transaction, who))) return NOT_FOUND;
		const found = await findPersonRecord(transaction, who.organisation, person);
		if (found === null) return NOT_FOUND;
		const deed: Deed = { organisation: who.organisation, by: who.id, now };
		const facts = await forgettingFacts(transaction, who.organisation, found, now);
		const may = forgettingOf(facts);
		switch (may.kind) {
			case 'before':
				return may;
			case 'refused':
				await noted(transaction, deed, 'forgetting-refused', person, { why: may.why });
				return may;
			case 'reduced':
				await reduce(transaction, deed, found, may, facts.today);
				return may;
			case 'allowed':
				await forget(transaction, deed, found, why, facts.today);
				return { kind: 'forgotten' };
		}
	});
}

/** Forgets the name of somebody who was kept long enough: for the program itself. @returns whether it was so, when it came to it */
export async function forgetKeptLongEnough(db: Database, organisation: string, person: string, now: Date): Promise<boolean> {
	return db.transaction().execute(async (transaction) => {
		await lockHead(transaction, organisation, { seq: 0, hash: BEFORE_FIRST });
		const found = await findPersonRecord(transaction, organisation, person);
		if (found === null) return false;
		const facts = await forgettingFacts(transaction, organisation, found, now);
		if (forgettingOf(facts).kind !== 'allowed') return false;
		await forget(transaction, { organisation, by: null, now }, found, 'kept-long-enough', facts.today);
		return true;
	});
}

async function forget(transaction: Database, deed: Deed, { person }: FoundPerson, why: ForgettingReason, day: string): Promise<void> {
	const { organisation, by, now } = deed;
	const at = now.toISOString();
	await closePerson(transaction, organisation, person.id, at);
	await deleteIdentities(transaction, person.id, await keptCommitments(transaction, person.id));
	await clearAccount(transaction, organisation, person.id);
	await clearName(transaction, organisation, person.id);
	await appendEntries(transaction, organisation, [{ kind: 'identity-erased', at, by, person: person.id, day, why }]);
	await noted(transaction, deed, 'name-forgotten', person.id, { why });
}

/** Takes away all but the name and what the kept records show: former names, and how the person signs in. */
async function reduce(transaction: Database, deed: Deed, { person, record }: FoundPerson, may: Extract<MayForget, { kind: 'reduced' }>, day: string): Promise<void> {
	const { organisation, by, now } = deed;
	await clearAccount(transaction, organisation, person.id);
	const shown = may.why === 'signed' ? record.names : shownNames(record);
	const commitments = (await keptCommitments(transaction, person.id)).filter((one) => !shown.includes(one));
	if (commitments.length > 0) {
		await deleteIdentities(transaction, person.id, commitments);
		await appendEntries(transaction, organisation, [{ kind: 'former-names-erased', at: now.toISOString(), by, person: person.id, day, commitments }]);
	}
	await noted(transaction, deed, 'forgetting-refused', person.id, { why: may.why, ...(may.from === null ? {} : { from: may.from }) });
}

/** @returns the commitments that the latest certification shows: the newest one, and those that stood when its parts were entered. */
function shownNames({ entries, trainings, signOffs, names }: PersonRecord): readonly string[] {
	const latest = [trainings.findLast(({ revoked }) => revoked === undefined), signOffs.findLast(({ revoked }) => revoked === undefined)];
	const then = latest.flatMap((one) => (one === undefined ? [] : [entries.findLast(({ seq, entry }) => entry.kind === 'named' && seq < one.seq)]));
	return [...names.slice(-1), ...then.flatMap((one) => (one?.entry.kind === 'named' ? [one.entry.commitment] : []))];
}

async function noted(transaction: Database, { organisation, by, now }: Deed, kind: AuditKind, person: string, detail: Readonly<Record<string, string>>): Promise<void> {
	await note(transaction, { kind, organisation, actor: by, subject: person, detail }, now);
}

/** @returns whether somebody who types a number, or a name where there is none, means this person. */
export function isMeant(person: { readonly name: string; readonly personal_number: string | null }, typed: string): boolean {
	return person.personal_number === null ? sameName(person.name, typed) : tidyNumber(typed) === person.personal_number || sameName(person.name, typed);
}
