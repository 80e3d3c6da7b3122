/** The worker confirms to have had a training. @source COHSR (SOR/86-304) s. 19.6(4); from memory */
import { recordMessages } from '#lib/text/index.ts';
import type { Database } from '../db/open.ts';
import { lockHead } from '../db/records.ts';
import { noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { appendEntries } from './append.ts';
import { BEFORE_FIRST } from './chain.ts';
import { recordOf } from './found.ts';

export type Acknowledging = { readonly kind: 'acknowledged' } | { readonly kind: 'not-found' };

/**
 * A learner confirms to have had a training of their own that counts. What was confirmed is kept word for word, in the
 * language in which it was read. Twice is as once.
 * @param record id of the completion or prior training
 */
export async function acknowledgeTraining(db: Database, who: Person, record: string, language: 'en' | 'es', now: Date): Promise<Acknowledging> {
	const meaning = (await recordMessages(language)).ownRecord.acknowledge;
	return db.transaction().execute(async (transaction): Promise<Acknowledging> => {
		await lockHead(transaction, who.organisation, { seq: 0, hash: BEFORE_FIRST });
		const one = (await recordOf(transaction, who.id)).trainings.find(({ id }) => id === record);
		if (one === undefined || one.revoked !== undefined) return { kind: 'not-found' };
		if (one.acknowledged !== undefined) return { kind: 'acknowledged' };
		await appendEntries(transaction, who.organisation, [{ kind: 'acknowledged', at: now.toISOString(), by: who.id, person: who.id, of: record, meaning, language }]);
		await noteDeed(transaction, who, 'training-acknowledged', who.id, now, { record });
		return { kind: 'acknowledged' };
	});
}
