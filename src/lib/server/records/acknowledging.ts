/** Worker and employer each confirm a training in writing. @source COHSR (SOR/86-304) s. 19.6(4); read */
import type { TrainingRecord } from '#lib/records/index.ts';
import { employerMessages, recordMessages } from '#lib/text/index.ts';
import type { Database } from '../db/open.ts';
import { lockHead } from '../db/records.ts';
import { noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { appendEntries } from './append.ts';
import { BEFORE_FIRST } from './chain.ts';
import { findPersonRecord, recordOf } from './found.ts';
import { lockFor } from './leaving.ts';

export type Acknowledging = { readonly kind: 'acknowledged' } | { readonly kind: 'not-found' };

const NOT_FOUND: Acknowledging = { kind: 'not-found' };
const ACKNOWLEDGED: Acknowledging = { kind: 'acknowledged' };

/** @returns the training of an id, if it counts. */
function countingIn(trainings: readonly TrainingRecord[], record: string): TrainingRecord | undefined {
	return trainings.find(({ id, revoked }) => id === record && revoked === undefined);
}

/**
 * A learner confirms to have had a training of their own that counts. What was confirmed is kept word for word, in the
 * language in which it was read. Twice is as once.
 * @param record id of the completion or prior training
 */
export async function acknowledgeTraining(db: Database, who: Person, record: string, language: 'en' | 'es', now: Date): Promise<Acknowledging> {
	const meaning = (await recordMessages(language)).ownRecord.acknowledge;
	return db.transaction().execute(async (transaction) => {
		await lockHead(transaction, who.organisation, { seq: 0, hash: BEFORE_FIRST });
		const one = countingIn((await recordOf(transaction, who.id)).trainings, record);
		if (one === undefined) return NOT_FOUND;
		if (one.acknowledged !== undefined) return ACKNOWLEDGED;
		await appendEntries(transaction, who.organisation, [{ kind: 'acknowledged', at: now.toISOString(), by: who.id, person: who.id, of: record, meaning, language }]);
		await noteDeed(transaction, who, 'training-acknowledged', who.id, now, { record });
		return ACKNOWLEDGED;
	});
}

/**
 * An employer confirms a training of somebody in the organisation that counts, word for word as it was read. Twice is as once.
 * @param record id of the completion or prior training
 */
export async function acknowledgeForEmployer(db: Database, who: Person, person: string, record: string, language: 'en' | 'es', now: Date): Promise<Acknowledging> {
	const meaning = (await employerMessages(language)).onePerson.acknowledgeMeaning;
	return db.transaction().execute(async (transaction) => {
		if (who.role !== 'employer' || !(await lockFor(transaction, who))) return NOT_FOUND;
		const one = countingIn((await findPersonRecord(transaction, who.organisation, person))?.record.trainings ?? [], record);
		if (one === undefined) return NOT_FOUND;
		if (one.employerAcknowledged !== undefined) return ACKNOWLEDGED;
		await appendEntries(transaction, who.organisation, [{ kind: 'employer-acknowledged', at: now.toISOString(), by: who.id, person, of: record, meaning, language }]);
		await noteDeed(transaction, who, 'training-acknowledged', person, now, { record });
		return ACKNOWLEDGED;
	});
}
