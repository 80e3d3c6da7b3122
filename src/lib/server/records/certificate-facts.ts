/** What a certificate says: the record with the names that belong to it, and its place in the chain. */
import { lastDayOf, nameAt, standingOf, type Standing, type TrainingRecord } from '#lib/records/index.ts';
import { dayIn } from '../course/day.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation } from '../db/people.ts';
import { headOf, identitiesOf, type Head } from '../db/records.ts';
import type { HandedOut } from './certificate.ts';

/** A name that a commitment holds; null where it is forgotten. */
export interface HeldName {
	readonly name: string;
	readonly number: string | null;
}

/** What is printed on a certificate. */
export interface CertificateFacts {
	readonly code: string;
	readonly training: TrainingRecord;
	readonly standing: Standing;
	/** Last local day; `NO_END` for no fixed end. */
	readonly until: string;
	/** Local day on which it was taken back. */
	readonly revokedOn: string | null;
	/** Local day of printing. */
	readonly today: string;
	/** Rule table of the organisation on the day of printing. */
	readonly rules: string;
	/** The employer's name: of own training as it was then. */
	readonly employer: string;
	readonly person: HeldName | null;
	/** The name at the time of training, where it was another. */
	readonly before: HeldName | null;
	/** Who was present at the final check, and who signed; null where the name is forgotten, or there is nobody. */
	readonly present: string | null;
	readonly signer: string | null;
	/** Local day of the signature; null where there is none. */
	readonly signedOn: string | null;
	/** Where the chain ended when it was printed. */
	readonly head: Head;
}

/** @returns what a certificate says; null where the organisation is gone. */
export async function certificateFacts(db: Database, organisation: string, handed: HandedOut, now: Date): Promise<CertificateFacts | null> {
	const { training, code } = handed;
	const { record } = handed.person;
	const [found, head] = [await findOrganisation(db, organisation), await headOf(db, organisation)];
	if (found === null || head === null) return null;
	const then = nameAt(record, training.seq);
	const { entry, signOff } = training;
	const signature = entry.kind === 'completed' ? signOff?.entry.signature : entry.signature;
	const present = entry.kind === 'completed' ? entry.supervised?.named : undefined;
	const names = await identitiesOf(db, organisation, [...new Set([record.named, then, signature?.named, present].flatMap((one) => one ?? []))]);
	const held = (commitment: string | undefined): HeldName | null => {
		const row = names.get(commitment ?? '');
		return row === undefined ? null : { name: row.name, number: row.personal_number };
	};
	const [person, before] = [held(record.named), held(then)];
	const today = dayIn(found.zone, now);
	return {
		code,
		training,
		standing: standingOf(record, training, today),
		until: lastDayOf(record, training),
		revokedOn: training.revoked === undefined ? null : dayIn(found.zone, new Date(training.revoked.entry.at)),
		today,
		rules: found.rules,
		employer: entry.kind === 'completed' ? entry.employer.name : found.name,
		person,
		before: before?.name === person?.name ? null : before,
		present: held(present)?.name ?? null,
		signer: held(signature?.named)?.name ?? null,
		signedOn: signature === undefined ? null : dayIn(found.zone, new Date(signature.at)),
		head
	};
}
