import { createHash } from 'node:crypto';
import { countTry, dropThrottle, giveBack, keysWith, lockedPeople, type ThrottleKey, type TryLimit } from '../db/throttle.ts';
import type { Database } from '../db/open.ts';

export type { ThrottleKey } from '../db/throttle.ts';

/** Failures after which an account has to wait, and after which it is locked. */
const FREE_FAILURES = 5;
const LOCKED_AT = 10;

/** The first wait of an account, s; each failure more doubles it. */
const FIRST_WAIT = 30;

/** Failures of all accounts of one crew code, and of one address, within WINDOW. @reason a whole crew signs in behind one router. */
const CREW_FAILURES = 100;
const ADDRESS_FAILURES = 300;
const WINDOW = 15 * 60;

/** What came of asking for a try. */
export type MayTry =
	/** Go on; it is counted as a failure already: call `noteSuccess` if it was none. */
	| { readonly kind: 'may' }
	/** Not now. @property retryAfter seconds, at least 1 */
	| { readonly kind: 'wait'; readonly retryAfter: number }
	/** Not before a trainer or an employer has reset it. */
	| { readonly kind: 'locked' };

function hidden(text: string): string {
	return createHash('sha256').update(text).digest('hex').slice(0, 32);
}

/** The key of a known person's account. */
export function accountKey(personId: string): ThrottleKey {
	return `account:${personId}`;
}

/** The key of an account that does not exist: it waits and locks as one that does. Kept as a hash, for people type PINs into wrong fields. */
export function unknownAccountKey(typed: string): ThrottleKey {
	return `unknown:${hidden(typed.trim().toLowerCase())}`;
}

/** @param code as it was typed */
export function crewKey(code: string): ThrottleKey {
	return `crew:${hidden(code.trim().toUpperCase())}`;
}

/** The key of where a request came from; of IPv6 the network, for one visitor has many addresses there. */
export function addressKey(address: string): ThrottleKey {
	return `address:${hidden(networkOf(address))}`;
}

/** The first half of an IPv6 address, written out; any other as it is. */
function networkOf(address: string): string {
	if (!address.includes(':') || address.includes('.')) return address;
	const [before = '', behind] = address.toLowerCase().split('::');
	const parts = (text: string) => (text === '' ? [] : text.split(':').map((part) => part.replace(/^0+(?=.)/, '')));
	const [head, tail] = [parts(before), parts(behind ?? '')];
	const zeros = behind === undefined ? 0 : Math.max(0, 8 - head.length - tail.length);
	return [...head, ...Array.from({ length: zeros }, () => '0'), ...tail].slice(0, 4).join(':');
}

/** The keys of names that are tried on a certificate: few on one from one address, and not many on all. They count apart from sign-ins. */
export function nameKeys(code: string, address: string): readonly ThrottleKey[] {
	const from = networkOf(address);
	return [`unknown:${hidden(`name ${code} ${from}`)}`, `address:${hidden(`name ${from}`)}`];
}

function limitOf(key: ThrottleKey): TryLimit {
	if (key.startsWith('crew:')) return { kind: 'window', most: CREW_FAILURES, seconds: WINDOW };
	if (key.startsWith('address:')) return { kind: 'window', most: ADDRESS_FAILURES, seconds: WINDOW };
	return { kind: 'growing', free: FREE_FAILURES, locked: LOCKED_AT, first: FIRST_WAIT };
}

/**
 * Asks for a try, and counts it as a failure before anything is hashed: of guesses that arrive together none is
 * left out. While one of the keys has to wait, nothing is counted.
 * @param keys account, crew code and address, as far as they are known
 */
export async function mayTry(db: Database, keys: readonly ThrottleKey[], now: Date): Promise<MayTry> {
	return countTry(db, keys.map((key) => ({ key, limit: limitOf(key) })), now);
}

/** A try that `mayTry` counted was right: the account begins anew, crew code and address get it back. */
export async function noteSuccess(db: Database, keys: readonly ThrottleKey[]): Promise<void> {
	await giveBack(db, keys);
}

/** Lets an account try again: for trainers and employers. */
export async function unlock(db: Database, personId: string): Promise<void> {
	await dropThrottle(db, accountKey(personId));
}

/** @returns the ids of the people of an organisation who are locked out. */
export async function lockedAccounts(db: Database, organisation: string): Promise<ReadonlySet<string>> {
	return lockedPeople(db, organisation, LOCKED_AT);
}

/** @returns those of some people who are locked out, by id. */
export async function lockedAmong(db: Database, people: readonly string[]): Promise<ReadonlySet<string>> {
	const keys = new Map(people.map((id) => [accountKey(id), id]));
	const locked = await keysWith(db, [...keys.keys()], LOCKED_AT);
	return new Set(locked.flatMap((key) => keys.get(key) ?? []));
}
