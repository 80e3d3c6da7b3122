import type { Insertable, Selectable } from 'kysely';
import { findOrAddGuest, type NewGuest } from './guests.ts';
import type { Database } from './open.ts';
import type { AttemptTable } from './schema.ts';

/** A stored answer. */
export type Attempt = Readonly<Selectable<AttemptTable>>;

/** An answer to be stored. */
export type NewAttempt = Readonly<Insertable<AttemptTable>>;

/**
 * What became of an answer: stored now; stored before by the same guest with the same content, whose first
 * grading holds; or refused, because the id stands for something else. Whose that is, is not told.
 */
export type StoreOutcome =
	| { kind: 'stored'; attempt: Attempt }
	| { kind: 'repeated'; attempt: Attempt }
	| { kind: 'conflict' };

/** What the client sent: by this, two sendings of the same answer are known. The rest is the server's own. */
const SENT = [
	'guest_id',
	'scenario_id',
	'scenario_version',
	'draw_version',
	'slip_set_version',
	'seed',
	'accepted_try',
	'answers',
	'language',
	'units'
] as const satisfies readonly (keyof AttemptTable)[];

/** Stores an answer once, however often it is sent. */
export async function storeAttempt(db: Database, attempt: NewAttempt): Promise<StoreOutcome> {
	const stored = await db
		.insertInto('attempt')
		.values(attempt)
		.onConflict((conflict) => conflict.column('id').doNothing())
		.returningAll()
		.executeTakeFirst();
	if (stored !== undefined) return { kind: 'stored', attempt: stored };
	const earlier = await findAttempt(db, attempt.guest_id, attempt.id);
	if (earlier === null || SENT.some((column) => earlier[column] !== attempt[column])) {
		return { kind: 'conflict' };
	}
	return { kind: 'repeated', attempt: earlier };
}

/**
 * Stores the first answer of a guest who is not known yet, together with the guest: both or neither. If the
 * guest has become known meanwhile, by a first answer that arrived at the same time, the answer is that guest's.
 */
export async function storeFirstAttempt(
	db: Database,
	guest: NewGuest,
	attempt: Omit<NewAttempt, 'guest_id'>
): Promise<StoreOutcome> {
	const transaction = await db.startTransaction().execute();
	let outcome: StoreOutcome;
	try {
		const guestId = await findOrAddGuest(transaction, guest);
		outcome = await storeAttempt(transaction, { ...attempt, guest_id: guestId });
	} catch (error) {
		await transaction.rollback().execute();
		throw error;
	}
	await (outcome.kind === 'conflict' ? transaction.rollback() : transaction.commit()).execute();
	return outcome;
}

/** A guest's own stored answer; null when there is none of that id, or when it is somebody else's. */
export async function findAttempt(
	db: Database,
	guestId: string,
	id: string
): Promise<Attempt | null> {
	const row = await db
		.selectFrom('attempt')
		.selectAll()
		.where('id', '=', id)
		.where('guest_id', '=', guestId)
		.executeTakeFirst();
	return row ?? null;
}
