import type { CompiledQuery } from 'kysely';
import type { Database } from './open.ts';

/** A guest to be entered, should the token be new. */
export interface NewGuest {
	readonly id: string;
	readonly tokenHash: string;
	/** ISO 8601, UTC, 24 characters. */
	readonly now: string;
}

/** The id of the guest with this token, or null if there is none. */
export async function findGuest(db: Database, tokenHash: string): Promise<string | null> {
	const row = await db
		.selectFrom('guest')
		.select('id')
		.where('token_hash', '=', tokenHash)
		.executeTakeFirst();
	return row?.id ?? null;
}

/**
 * The id of the guest with this token, who is entered if not known yet. Two first answers that arrive together
 * are one guest.
 * @param guest a new id, the token's hash, and the time, for the case that the guest is new
 */
export async function findOrAddGuest(
	db: Database,
	guest: NewGuest
): Promise<string> {
	const known = await findGuest(db, guest.tokenHash);
	if (known !== null) return known;
	await db
		.insertInto('guest')
		.values({ id: guest.id, token_hash: guest.tokenHash, created_at: guest.now })
		.onConflict((conflict) => conflict.column('token_hash').doNothing())
		.execute();
	const added = await findGuest(db, guest.tokenHash);
	if (added === null) throw new Error('A guest just entered was not found');
	return added;
}

/** After every time that is stored. */
const NO_END = '9999-12-31T23:59:59.999Z';

/** A guest who answers, and how busy that guest is. */
export interface AnsweringGuest {
	readonly id: string;
	/** When the `count`th newest answer since the time asked about was stored, or null if there are fewer. */
	readonly nth: string | null;
}

/**
 * The guest with this token, and whether as many answers are stored since a time: one query.
 * @param since ISO 8601, UTC, 24 characters
 * @param count at least 1
 * @param until as `since`: answers after it are from before a clock was put back, and are not counted
 */
export async function findAnsweringGuest(
	db: Database,
	tokenHash: string,
	since: string,
	count: number,
	until = NO_END
): Promise<AnsweringGuest | null> {
	const { rows } = await db.executeQuery(answeringGuest(db, [since, until, 1, count - 1, tokenHash]));
	return rows[0] ?? null;
}

/** When the `count`th newest answer of a guest row since a time was stored, or null if there are fewer. */
export async function nthAnswer(db: Database, id: string, since: string, count: number, until = NO_END): Promise<string | null> {
	const row = await db
		.selectFrom('attempt')
		.select('created_at')
		.where('guest_id', '=', id)
		.where('created_at', '>=', since)
		.where('created_at', '<=', until)
		.orderBy('created_at', 'desc')
		.limit(1)
		.offset(count - 1)
		.executeTakeFirst();
	return row?.created_at ?? null;
}

const answeringQueries = new WeakMap<Database, CompiledQuery<AnsweringGuest>>();

/**
 * The query, its SQL written once for each database: it is asked before every answer, and writing it takes longer
 * than running it.
 * @param parameters since, until, limit, offset, token hash: in the order in which they stand in the query
 */
function answeringGuest(db: Database, parameters: readonly unknown[]): CompiledQuery<AnsweringGuest> {
	let query = answeringQueries.get(db);
	if (query === undefined) {
		query = db
			.selectFrom('guest')
			.select((eb) => [
				'guest.id',
				eb
					.selectFrom('attempt')
					.select('attempt.created_at')
					.whereRef('attempt.guest_id', '=', 'guest.id')
					.where('attempt.created_at', '>=', '')
					.where('attempt.created_at', '<=', '')
					.orderBy('attempt.created_at', 'desc')
					.limit(1)
					.offset(0)
					.as('nth')
			])
			.where('token_hash', '=', '')
			.compile();
		answeringQueries.set(db, query);
	}
	return { ...query, parameters };
}
