import { learnersByNumber, organisationOfCode, type KnownLearner } from '../db/learners.ts';
import type { Database } from '../db/open.ts';
import { setSecret } from '../db/people.ts';
import { note } from './audit.ts';
import { readCode } from './code.ts';
import { tidyNumber } from './fields.ts';
import { hashSecret, verifySecret } from './secret.ts';
import { accountKey, addressKey, crewKey, mayTry, noteSuccess, unknownAccountKey, type ThrottleKey } from './throttle.ts';

/** What a learner signs in with, as typed. */
export interface LearnerEntry {
	readonly number: string;
	readonly pin: string;
	/** Needed only where several organisations of this server know the number; else it may be missing or empty. */
	readonly crewCode?: string | undefined;
}

/** What came of a learner's signing in. */
export type LearnerSignIn =
	| { readonly kind: 'signed-in'; readonly person: string }
	| {
			readonly kind: 'refused';
			/** `which-crew`: several organisations know the number, whatever the PIN; the crew code decides. */
			readonly why: 'wrong' | 'locked' | 'wait' | 'which-crew';
			/** Seconds, where waiting helps. */
			readonly retryAfter?: number;
	  };

/** The learners who may be meant: those with the number, of the crew code's organisation if a code was given. */
async function candidates(db: Database, number: string, code: string): Promise<readonly KnownLearner[]> {
	const known = await learnersByNumber(db, number);
	if (code === '') return known;
	const organisation = await organisationOfCode(db, code);
	return known.filter((one) => one.organisation === organisation);
}

/**
 * Signs a learner in by personal number and PIN; the session is the caller's to start. Tries are counted before
 * anything is hashed, for each account, crew code and address. A number that nobody has, a person without a PIN and
 * a wrong PIN are told in the same words and take as long.
 * @param address where the request came from
 */
export async function signInLearner(db: Database, entry: LearnerEntry, address: string, now: Date): Promise<LearnerSignIn> {
	const number = tidyNumber(entry.number);
	const code = readCode(entry.crewCode ?? '');
	const places: readonly ThrottleKey[] = code === '' ? [addressKey(address)] : [addressKey(address), crewKey(code)];
	const known = await candidates(db, number, code);
	const [learner] = known;
	if (known.length > 1) {
		const asked = await mayTry(db, places, now);
		return asked.kind === 'may' ? { kind: 'refused', why: 'which-crew' } : refusal(asked);
	}
	const keys = [learner === undefined ? unknownAccountKey(number) : accountKey(learner.id), ...places];
	const asked = await mayTry(db, keys, now);
	if (asked.kind !== 'may') return refusal(asked);
	const pin = entry.pin.replace(/\s/gu, '');
	const { ok, rehash } = await verifySecret(learner?.secret ?? null, pin);
	if (learner === undefined || !ok) {
		if (learner !== undefined) await note(db, { kind: 'sign-in-refused', organisation: learner.organisation, actor: null, subject: learner.id }, now);
		return { kind: 'refused', why: 'wrong' };
	}
	await noteSuccess(db, keys);
	if (rehash) await setSecret(db, learner.id, await hashSecret('pin', pin));
	await note(db, { kind: 'signed-in', organisation: learner.organisation, actor: learner.id, subject: learner.id }, now);
	return { kind: 'signed-in', person: learner.id };
}

function refusal(asked: { readonly kind: 'wait'; readonly retryAfter: number } | { readonly kind: 'locked' }): LearnerSignIn {
	return asked.kind === 'locked' ? { kind: 'refused', why: 'locked' } : { kind: 'refused', why: 'wait', retryAfter: asked.retryAfter };
}
