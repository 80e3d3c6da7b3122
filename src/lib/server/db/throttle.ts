import { sql } from 'kysely';
import type { Database } from './open.ts';
import { inParts } from './records.ts';

/** Of what tries are counted. */
export type ThrottleKey = `${'account' | 'unknown' | 'crew' | 'address'}:${string}`;

/** How many tries there are. */
export type TryLimit =
	/** So many failures within so many seconds; after as long without one they are forgotten. */
	| { readonly kind: 'window'; readonly most: number; readonly seconds: number }
	/** So many failures without a wait, then one that doubles from `first` seconds, then none any more. */
	| { readonly kind: 'growing'; readonly free: number; readonly locked: number; readonly first: number };

type Outcome = { readonly kind: 'may' } | { readonly kind: 'wait'; readonly retryAfter: number } | { readonly kind: 'locked' };

interface Row {
	readonly failures: number;
	readonly last_at: string;
	readonly wait_until: string | null;
}

const MAY: Outcome = { kind: 'may' };

function until(time: number, now: Date): Outcome {
	const left = time - now.getTime();
	return left > 0 ? { kind: 'wait', retryAfter: Math.max(1, Math.ceil(left / 1000)) } : MAY;
}

/** How far the clocks of several servers may be apart, ms. @reason far more than they are, far less than a clock that is put back */
const CLOCKS_APART = 5 * 60 * 1000;

function judge(row: Row, limit: TryLimit, now: Date): Outcome {
	if (limit.kind === 'growing' && row.failures >= limit.locked) return { kind: 'locked' };
	// A failure to come is from before the clock was put back: nobody waits for a day because of it.
	if (Date.parse(row.last_at) > now.getTime() + CLOCKS_APART) return MAY;
	if (limit.kind === 'growing') {
		return row.wait_until === null ? MAY : until(Date.parse(row.wait_until), now);
	}
	return row.failures < limit.most ? MAY : until(Date.parse(row.last_at) + limit.seconds * 1000, now);
}

/** The row after one more failure. */
function counted(row: Row, limit: TryLimit, now: Date): Row {
	const last_at = now.toISOString();
	if (limit.kind === 'window') {
		const forgotten = Date.parse(row.last_at) + limit.seconds * 1000 <= now.getTime();
		return { failures: forgotten ? 1 : row.failures + 1, last_at, wait_until: null };
	}
	const failures = row.failures + 1;
	const seconds = failures < limit.free ? 0 : limit.first * 2 ** (failures - limit.free);
	return { failures, last_at, wait_until: seconds === 0 ? null : new Date(now.getTime() + seconds * 1000).toISOString() };
}

/** Of refusals the one that holds longest. */
function worse(a: Outcome, b: Outcome): Outcome {
	if (a.kind === 'locked' || b.kind === 'may') return a;
	if (b.kind === 'locked' || a.kind === 'may') return b;
	return a.retryAfter >= b.retryAfter ? a : b;
}

/** Asks for a try under all keys at once, and counts it under each if every one allows it: atomic, on both databases. */
export async function countTry(
	db: Database,
	asked: readonly { readonly key: ThrottleKey; readonly limit: TryLimit }[],
	now: Date
): Promise<Outcome> {
	const inOrder = [...asked].sort((a, b) => (a.key < b.key ? -1 : 1));
	return db.transaction().execute(async (transaction) => {
		const rows: { key: ThrottleKey; limit: TryLimit; row: Row }[] = [];
		for (const { key, limit } of inOrder) {
			// The update changes nothing, but holds the row until the end of the transaction. Always in the same order.
			const row = await transaction
				.insertInto('throttle')
				.values({ key, failures: 0, last_at: now.toISOString(), wait_until: null })
				.onConflict((conflict) => conflict.column('key').doUpdateSet((eb) => ({ key: eb.ref('excluded.key') })))
				.returning(['failures', 'last_at', 'wait_until'])
				.executeTakeFirstOrThrow();
			rows.push({ key, limit, row });
		}
		const outcome = rows.map(({ row, limit }) => judge(row, limit, now)).reduce(worse, MAY);
		if (outcome.kind !== 'may') return outcome;
		for (const { key, limit, row } of rows) {
			await transaction.updateTable('throttle').set(counted(row, limit, now)).where('key', '=', key).execute();
		}
		return MAY;
	});
}

/** Takes a counted try back: accounts are forgotten, the others lose one failure. */
export async function giveBack(db: Database, keys: readonly ThrottleKey[]): Promise<void> {
	await db.transaction().execute(async (transaction) => {
		for (const key of [...keys].sort()) {
			if (key.startsWith('account:') || key.startsWith('unknown:')) await dropThrottle(transaction, key);
			else {
				await transaction
					.updateTable('throttle')
					.set((eb) => ({ failures: eb('failures', '-', 1) }))
					.where('key', '=', key)
					.where('failures', '>', 0)
					.execute();
			}
		}
	});
}

/** Forgets the failures of a key. */
export async function dropThrottle(db: Database, key: ThrottleKey): Promise<void> {
	await db.deleteFrom('throttle').where('key', '=', key).execute();
}

/** How many failures stand under a key. */
export async function failuresOf(db: Database, key: ThrottleKey): Promise<number> {
	const row = await db.selectFrom('throttle').select('failures').where('key', '=', key).executeTakeFirst();
	return row?.failures ?? 0;
}

/** Forgets what nothing waits for any more. @param before ISO 8601, UTC, 24 characters */
export async function dropOldThrottles(db: Database, before: string): Promise<void> {
	await db
		.deleteFrom('throttle')
		.where('last_at', '<', before)
		.where((eb) => eb.or([eb('key', 'like', 'crew:%'), eb('key', 'like', 'address:%'), eb('key', 'like', 'unknown:%')]))
		.execute();
}

/** The people of an organisation under whose account so many failures stand, by id. */
export async function lockedPeople(db: Database, organisation: string, failures: number): Promise<ReadonlySet<string>> {
	const rows = await db
		.selectFrom('person')
		.innerJoin('throttle', (join) => join.on('throttle.key', '=', sql<string>`'account:' || person.id`))
		.select('person.id')
		.where('person.organisation_id', '=', organisation)
		.where('throttle.failures', '>=', failures)
		.execute();
	return new Set(rows.map(({ id }) => id));
}

/** @returns those of some keys under which at least so many failures stand. */
export async function keysWith(db: Database, keys: readonly ThrottleKey[], failures: number): Promise<readonly ThrottleKey[]> {
	const found: ThrottleKey[] = [];
	for (const part of inParts(keys)) {
		const rows = await db.selectFrom('throttle').select('key').where('key', 'in', part).where('failures', '>=', failures).execute();
		// Only what was asked for comes back.
		found.push(...rows.map(({ key }) => key as ThrottleKey));
	}
	return found;
}
