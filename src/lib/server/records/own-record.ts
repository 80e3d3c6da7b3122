/** What a learner is shown of the own record: the own copy, with the place of each training in the chain. */
import {
	isWhole,
	stateOn,
	validityOf,
	type EntryOf,
	type PersonRecord,
	type PriorTraining,
	type RetrainingReason,
	type SignOffRecord,
	type TrainingRecord,
	type TrainingState
} from '#lib/records/index.ts';
import { recordLaw, type NotProofOf } from '#lib/rules/index.ts';
import { dayIn } from '../course/day.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation, findPerson } from '../db/people.ts';
import { headOf, identitiesOf, type Head, type IdentityRow } from '../db/records.ts';
import type { Person } from '../people/who.ts';
import { recordOf, recordSettings } from './found.ts';

/** An order of retraining that is open. */
export interface OpenOrder {
	/** Local day, the last in time. */
	readonly due: string;
	readonly reason: RetrainingReason;
	readonly late: boolean;
}

/** A sign-off of the hands-on part as its record tells it. */
export interface OwnSignOff {
	readonly day: string;
	/** Null where the name is forgotten. */
	readonly signer: string | null;
	readonly capacity: EntryOf<'hands-on'>['signature']['capacity'];
}

/** A training of one's own. */
export interface OwnTraining {
	readonly id: string;
	/** Place in the chain. */
	readonly seq: number;
	readonly hash: string;
	/** Theory and hands-on part, or prior training. */
	readonly whole: boolean;
	/** Whether it is of a run that a later order of retraining has ended. */
	readonly past: boolean;
	/** Local day on which it was taken back; undefined for what counts. */
	readonly revokedOn: string | undefined;
	readonly validUntil: string | null;
	readonly acknowledgedOn: string | undefined;
	/** Local day on which the employer confirmed it. */
	readonly employerAcknowledgedOn: string | undefined;
	/** Whether a certificate was made. */
	readonly certificate: boolean;
	readonly of:
		| { readonly kind: 'completed'; readonly entry: EntryOf<'completed'>; readonly signOff: OwnSignOff | undefined }
		| { readonly kind: 'prior-training'; readonly record: PriorTraining; readonly signer: string | null };
}

/** The own copy. */
export interface OwnRecord {
	readonly name: string;
	readonly number: string | null;
	readonly employer: string;
	/** Local day on which the copy is made. */
	readonly today: string;
	readonly state: TrainingState;
	/** Last day, of the training that counts; null where none does. */
	readonly until: string | null;
	readonly order: OpenOrder | undefined;
	/** The newest first. */
	readonly trainings: readonly OwnTraining[];
	/** Where the chain of the organisation ends now. */
	readonly head: Head | null;
	/** What the law of the place asks beside, of which this is no proof. */
	readonly notProofOf: readonly NotProofOf[];
}

/** @returns the open order that is due first. @param today local day */
export function openOrderOf({ orders }: PersonRecord, today: string): OpenOrder | undefined {
	const [first] = orders.filter((one) => !one.withdrawn && !one.done).toSorted((a, b) => (a.entry.due < b.entry.due ? -1 : 1));
	return first === undefined ? undefined : { due: first.entry.due, reason: first.entry.reason, late: first.entry.due < today };
}

/** @returns what somebody is shown of the own record. @throws Error for a person who is not there any more */
export async function ownRecordOf(db: Database, who: Person, begun: boolean, now: Date): Promise<OwnRecord> {
	const person = await findPerson(db, who.organisation, who.id);
	const organisation = await findOrganisation(db, who.organisation);
	if (person === null || organisation === null) throw new Error('A person who is not there');
	const record = await recordOf(db, who.id);
	const today = dayIn(organisation.zone, now);
	const { until } = validityOf(record);
	const names = await identitiesOf(db, who.organisation, [...new Set(record.trainings.flatMap(signersOf))]);
	const { soonDays } = await recordSettings(db, who.organisation);
	const run = record.orders.filter((one) => !one.withdrawn).length;
	return {
		name: person.name,
		number: person.personal_number,
		employer: organisation.name,
		today,
		state: stateOn({ until, begun }, today, soonDays),
		until,
		order: openOrderOf(record, today),
		trainings: record.trainings.map((one) => told(one, run, names, organisation.zone)).toReversed(),
		head: await headOf(db, who.organisation),
		notProofOf: recordLaw(organisation.rules)?.notProofOf.map(({ what }) => what) ?? []
	};
}

function signersOf({ entry, signOff }: TrainingRecord): readonly string[] {
	return [...(entry.kind === 'prior-training' ? [entry.signature.named] : []), ...(signOff === undefined ? [] : [signOff.entry.signature.named])];
}

function told(one: TrainingRecord, run: number, names: ReadonlyMap<string, IdentityRow>, zone: string): OwnTraining {
	const { id, seq, hash, entry, validUntil, revoked, acknowledged, employerAcknowledged } = one;
	const nameOf = (named: string): string | null => names.get(named)?.name ?? null;
	const dayOf = (at: string | undefined): string | undefined => (at === undefined ? undefined : dayIn(zone, new Date(at)));
	const signedOff = ({ entry: { record, signature } }: SignOffRecord): OwnSignOff => ({ day: record.day, signer: nameOf(signature.named), capacity: signature.capacity });
	return {
		id,
		seq,
		hash,
		whole: isWhole(one),
		past: one.run < run,
		revokedOn: dayOf(revoked?.entry.at),
		validUntil,
		acknowledgedOn: dayOf(acknowledged?.entry.at),
		employerAcknowledgedOn: dayOf(employerAcknowledged?.entry.at),
		certificate: one.certificate !== undefined,
		of:
			entry.kind === 'completed'
				? { kind: 'completed', entry, signOff: one.signOff === undefined ? undefined : signedOff(one.signOff) }
				: { kind: 'prior-training', record: entry.record, signer: nameOf(entry.signature.named) }
	};
}
