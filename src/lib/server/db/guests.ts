import type { Database } from './open.ts';

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
	guest: { id: string; tokenHash: string; now: string }
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
