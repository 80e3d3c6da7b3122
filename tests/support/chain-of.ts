/** The chain of an organisation as the tables hold it, looked at without the program's own hands. */
import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import type { Entry } from '#lib/records/index.ts';
import type { Database } from '#lib/server/db/open.ts';

/** @returns the entries of an organisation, in order. */
export async function entriesOf(db: Database, organisation: string): Promise<readonly Entry[]> {
	const rows = await db.selectFrom('record_entry').select('payload').where('organisation_id', '=', organisation).orderBy('seq').execute();
	return rows.map(({ payload }) => JSON.parse(payload) as Entry);
}

/**
 * What does not hold in an organisation's chain: gaps, links, hashes by Node's SHA-256 over RFC 8785 text, and the head.
 * @returns a line for each; none where it holds
 */
export async function brokenIn(db: Database, organisation: string): Promise<readonly string[]> {
	const rows = await db.selectFrom('record_entry').selectAll().where('organisation_id', '=', organisation).orderBy('seq').execute();
	const head = await db.selectFrom('record_head').selectAll().where('organisation_id', '=', organisation).executeTakeFirst();
	const broken: string[] = [];
	let prev = '0'.repeat(64);
	rows.forEach((row, i) => {
		const entry = JSON.parse(row.payload) as Entry;
		const text = canonicalize({ payload: entry, prev, seq: i + 1 }) ?? '';
		if (row.seq !== i + 1) broken.push(`entry ${String(i + 1)} has the number ${String(row.seq)}`);
		if (row.prev !== prev) broken.push(`entry ${String(row.seq)} does not hang on the one before`);
		if (row.hash !== createHash('sha256').update(text).digest('hex')) broken.push(`entry ${String(row.seq)} has another hash`);
		if (row.kind !== entry.kind || row.at !== entry.at || row.person_id !== ('person' in entry ? entry.person : null)) broken.push(`entry ${String(row.seq)} is another in its columns`);
		prev = row.hash;
	});
	if ((head?.seq ?? 0) !== rows.length || (head?.hash ?? prev) !== prev) broken.push('the head is another');
	return broken;
}
