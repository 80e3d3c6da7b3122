import { learnerOnList, setFirstPin, type KnownLearner } from '../db/learners.ts';
import type { Database } from '../db/open.ts';
import { note } from './audit.ts';
import { sameName } from './fields.ts';
import { claimed, joinGuest } from './practised.ts';
import { hashSecret, isPin, weakPin } from './secret.ts';
import { addressKey, crewKey, mayTry, noteSuccess, type ThrottleKey } from './throttle.ts';

/** Who somebody says to be, tidied as `field.code`, `field.name` and `field.number` do. */
export interface JoinClaim {
	readonly code: string;
	readonly name: string;
	readonly number: string;
}

/** What came of looking for somebody on a crew's list. */
export type OnList =
	| { readonly kind: 'on-list'; readonly learner: KnownLearner }
	/** Has joined before: signing in is the way. */
	| { readonly kind: 'has-pin' }
	/** Not on the list, whatever the reason: the words are the same. */
	| { readonly kind: 'not-on-list' }
	| { readonly kind: 'wait'; readonly retryAfter: number };

/** What is wrong with a PIN: a key of the catalogue. */
export type PinProblem = 'not-six-digits' | 'weak' | 'differs';

export type Joining =
	| { readonly kind: 'joined'; readonly person: string }
	| { readonly kind: 'pin'; readonly problem: PinProblem }
	| Exclude<OnList, { kind: 'on-list' }>;

/**
 * Looks for somebody on the list of the crew with a join code: name and number must both be the list's. A wrong
 * claim counts against the code and the address.
 */
export async function findOnList(db: Database, claim: JoinClaim, address: string, now: Date): Promise<OnList> {
	const keys: readonly ThrottleKey[] = [addressKey(address), crewKey(claim.code)];
	const asked = await mayTry(db, keys, now);
	if (asked.kind === 'wait') return asked;
	// These keys never lock; should they, nobody is found.
	if (asked.kind === 'locked') return { kind: 'not-on-list' };
	const learner = await learnerOnList(db, claim.code, claim.number);
	if (learner === null || !sameName(learner.name, claim.name)) return { kind: 'not-on-list' };
	await noteSuccess(db, keys);
	return learner.secret === null ? { kind: 'on-list', learner } : { kind: 'has-pin' };
}

/** @returns what is wrong with a chosen PIN, or null. @param again the same, typed once more */
export function pinProblem(pin: string, again: string, number: string): PinProblem | null {
	if (!isPin(pin)) return 'not-six-digits';
	if (weakPin(pin, number)) return 'weak';
	return pin === again ? null : 'differs';
}

/** What somebody joins with. */
export interface JoinEntry {
	readonly claim: JoinClaim;
	readonly pin: string;
	readonly again: string;
	/** The guest of this browser, if it has answered anything. */
	readonly guest: string | null;
}

/**
 * Joins: sets the PIN of somebody on a crew's list who has none, and takes along what was practised as a guest. Of
 * two who join as the same person one wins, and the other is sent to sign in. The session is the caller's to start.
 */
export async function joinCrew(db: Database, entry: JoinEntry, address: string, now: Date): Promise<Joining> {
	const found = await findOnList(db, entry.claim, address, now);
	if (found.kind !== 'on-list') return found;
	const { learner } = found;
	const problem = pinProblem(entry.pin, entry.again, entry.claim.number);
	if (problem !== null) return { kind: 'pin', problem };
	const secret = await hashSecret('pin', entry.pin);
	const { guest } = entry;
	const won = await db.transaction().execute(async (transaction) => {
		if (!(await setFirstPin(transaction, learner.id, secret))) return false;
		const event = { organisation: learner.organisation, actor: learner.id, subject: learner.id };
		await note(transaction, { kind: 'learner-joined', ...event }, now);
		if (guest !== null) await claimed(transaction, guest, learner.id, now);
		return true;
	});
	if (!won) return { kind: 'has-pin' };
	if (guest !== null) await joinGuest(db, guest, learner.id, now);
	return { kind: 'joined', person: learner.id };
}
