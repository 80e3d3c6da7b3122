/** Certificates: each record has one code, and one place in the list of withdrawn credentials. */
import { randomBytes, randomInt } from 'node:crypto';
import type { TrainingRecord } from '#lib/records/index.ts';
import { certificateOf, countCertificates, insertCertificate, type CertificateRow } from '../db/certificates.ts';
import type { Database } from '../db/open.ts';
import { noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { appendEntries, lockChain } from './append.ts';
import { sha256 } from './chain.ts';
import { findPersonRecord, type FoundPerson } from './found.ts';
import { roomFor } from './status-bits.ts';

/** @reason nobody finds a code by trying: 128 bits */
const CODE_BYTES = 16;

/** A record that may be handed out, with its certificate. */
export interface HandedOut {
	readonly kind: 'handed-out';
	readonly code: string;
	/** Place in the organisation's list of withdrawn credentials. */
	readonly statusIndex: number;
	readonly person: FoundPerson;
	readonly training: TrainingRecord;
}

export type HandingOut = HandedOut | { readonly kind: 'not-found' };

/** Whether somebody may hand a person's records out: the employer anybody's of the organisation, a learner their own. */
function may(who: Person, person: string): boolean {
	return who.role === 'employer' || (who.role === 'learner' && who.id === person);
}

/**
 * Makes the certificate of a record, once; the same comes again. What counts no more gets none, but one that was made
 * before is found: it is printed as taken back.
 * @param record id of a completion or of prior training
 */
export async function handOutCertificate(db: Database, who: Person, person: string, record: string, now: Date): Promise<HandingOut> {
	return handOut(db, who, person, record, 'certificate-handed-out', now);
}

/** The same, with the deed that is noted. */
export async function handOut(db: Database, who: Person, person: string, record: string, deed: 'certificate-handed-out' | 'credential-handed-out', now: Date): Promise<HandingOut> {
	if (!may(who, person)) return { kind: 'not-found' };
	return db.transaction().execute(async (transaction) => {
		// Who makes one does so under the lock, so that nothing is taken back meanwhile.
		if ((await certificateOf(transaction, who.organisation, record)) === null) await lockChain(transaction, who.organisation);
		const found = await findPersonRecord(transaction, who.organisation, person);
		const training = found?.record.trainings.find(({ id }) => id === record);
		if (found === null || training === undefined) return { kind: 'not-found' };
		const before = await certificateOf(transaction, who.organisation, record);
		if (before === null && training.revoked !== undefined) return { kind: 'not-found' };
		const row = before ?? (await make(transaction, who, person, record, now));
		await noteDeed(transaction, who, deed, person, now, { record });
		return { kind: 'handed-out', code: row.code, statusIndex: row.status_index, person: found, training };
	});
}

async function make(db: Database, who: Person, person: string, record: string, now: Date): Promise<CertificateRow> {
	const at = now.toISOString();
	for (;;) {
		const row: CertificateRow = {
			code: randomBytes(CODE_BYTES).toString('base64url'),
			organisation_id: who.organisation,
			person_id: person,
			record_id: record,
			status_index: randomInt(roomFor(await countCertificates(db, who.organisation))),
			made_by: who.id,
			at
		};
		if (await insertCertificate(db, row)) {
			await appendEntries(db, who.organisation, [{ kind: 'certificate-made', at, by: who.id, person, of: record, code: sha256(row.code), statusIndex: row.status_index }]);
			return row;
		}
		// The place is taken; or somebody else made it in this moment.
		const other = await certificateOf(db, who.organisation, record);
		if (other !== null) return other;
	}
}
