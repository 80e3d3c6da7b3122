/** Rows that stand for no entry. They are counted; only where the counts differ is the row looked for. */
import type { Entry, EntryKind } from '#lib/records/index.ts';
import type { Database } from '../../db/open.ts';
import { countRows, payloadsOf, rowKeyPages, type EntryTable } from '../../db/verifying.ts';
import { breath } from '../breath.ts';
import type { Found } from './result.ts';

/** Which kind of entry a table's rows stand for, and the key of the row that an entry names. */
const ENTRY_OF: Readonly<Record<EntryTable, { readonly kind: EntryKind; readonly keyOf: (entry: Entry) => string | undefined }>> = {
	completion: { kind: 'completed', keyOf: (entry) => (entry.kind === 'completed' ? entry.id : undefined) },
	sign_off: { kind: 'hands-on', keyOf: (entry) => (entry.kind === 'hands-on' ? entry.record.id : undefined) },
	certificate: { kind: 'certificate-made', keyOf: (entry) => (entry.kind === 'certificate-made' ? entry.of : undefined) },
	identity: { kind: 'named', keyOf: (entry) => (entry.kind === 'named' ? entry.commitment : undefined) },
	record_checkpoint: { kind: 'checkpointed', keyOf: (entry) => (entry.kind === 'checkpointed' ? String(entry.size) : undefined) }
};

/** Rows looked through at once. */
const SLICE = 500;

/** @param expected how many rows of each table the chain's entries have */
export async function checkExtra(db: Database, organisation: string, expected: Readonly<Partial<Record<EntryTable, number>>>): Promise<Found> {
	for (const [table, wanted] of Object.entries(expected) as [EntryTable, number][]) {
		const count = await countRows(db, table, organisation);
		if (count === wanted) continue;
		const extra = await findExtra(db, organisation, table);
		return { table, row: extra ?? '', column: null, seq: null, problem: extra === undefined ? 'entry-twice' : 'row-without-entry' };
	}
	return undefined;
}

async function findExtra(db: Database, organisation: string, table: EntryTable): Promise<string | undefined> {
	const { kind, keyOf } = ENTRY_OF[table];
	for await (const rows of rowKeyPages(db, table, organisation, SLICE)) {
		const people = table === 'record_checkpoint' ? null : rows.flatMap(({ person }) => person ?? []);
		const named = new Set((await payloadsOf(db, organisation, kind, people)).map((payload) => keyOf(JSON.parse(payload) as Entry)));
		const extra = rows.find(({ key }) => !named.has(key));
		if (extra !== undefined) return extra.key;
		await breath();
	}
	return undefined;
}
