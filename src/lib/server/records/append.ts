/** Appending to an organisation's chain. What is appended is never changed: a correction is a further entry. */
import { canonicalJson, personRecord, trainingDay, validityOf, type Entry, type Placed } from '#lib/records/index.ts';
import { entrySchema } from '#lib/records/schema.ts';
import type { Database } from '../db/open.ts';
import { entriesAbout, insertEntries, learnerFacts, lockHead, moveHead, putStates, type Head, type LearnerFacts, type RecordEntryRow, type TrainingStateRow } from '../db/records.ts';
import { BEFORE_FIRST, entryHash } from './chain.ts';
import { keyOfName, searchedText, sortedName } from './name-texts.ts';

/**
 * Appends entries to an organisation's chain, in their order, and renews how the people in them stand. Call it within
 * the transaction of what they are about: both are stored or neither. The first entries of an organisation open its chain.
 * @returns the entries with their places
 * @throws ZodError for an entry that is none
 */
export async function appendEntries(db: Database, organisation: string, entries: readonly Entry[]): Promise<readonly Placed[]> {
	const [first] = entries;
	if (first === undefined) return [];
	const head = await lockChain(db, organisation);
	const opening: readonly Entry[] = head.seq === 0 ? [{ kind: 'opened', at: first.at, by: null, organisation, version: 1 }] : [];
	const placed: Placed[] = [];
	const rows: RecordEntryRow[] = [];
	let { seq, hash } = head;
	for (const one of [...opening, ...entries]) {
		const entry = entrySchema.parse(one);
		const payload = canonicalJson(entry);
		const prev = hash;
		seq += 1;
		hash = entryHash(seq, prev, payload);
		rows.push({ organisation_id: organisation, seq, kind: entry.kind, person_id: personOf(entry), at: entry.at, payload, prev, hash });
		placed.push({ seq, hash, entry });
	}
	await insertEntries(db, rows);
	await moveHead(db, organisation, { seq, hash });
	await renewStates(db, [...new Set(rows.flatMap((row) => row.person_id ?? []))]);
	return placed.slice(opening.length);
}

/**
 * Keeps an organisation's chain for this transaction: whoever else appends waits until it is over. Who writes anything
 * else in the same transaction takes it first, so that no two wait for each other: on PostgreSQL a row that names a
 * person keeps that person's number from being changed.
 * @returns where the chain ends
 */
export async function lockChain(db: Database, organisation: string): Promise<Head> {
	return lockHead(db, organisation, { seq: 0, hash: BEFORE_FIRST });
}

/** @returns whom an entry is about; null for nobody. */
export function personOf(entry: Entry): string | null {
	return 'person' in entry ? entry.person : null;
}

/** @returns entries of one person with their places. Rows are our own, written by `appendEntries` alone. */
export function placedRows(rows: readonly RecordEntryRow[]): readonly Placed[] {
	return rows.map(({ seq, hash, payload }) => ({ seq, hash, entry: JSON.parse(payload) as Entry }));
}

/** Makes again, from the chain, how some people stand. Who is no learner is left out. */
export async function renewStates(db: Database, people: readonly string[]): Promise<void> {
	await putStates(db, await madeStates(db, people));
}

/** @returns how some people stand, as the chain has it; nothing is stored. Who is no learner is left out. */
export async function madeStates(db: Database, people: readonly string[]): Promise<readonly TrainingStateRow[]> {
	const facts = await learnerFacts(db, people);
	const entries = await entriesAbout(db, facts.map(({ id }) => id));
	return facts.map((one) => stateRow(one, placedRows(entries.get(one.id) ?? [])));
}

function stateRow({ id, organisation, name, number, begun }: LearnerFacts, entries: readonly Placed[]): TrainingStateRow {
	const person = personRecord(entries);
	const { record, until, due, detail } = validityOf(person);
	const erased = person.erased !== undefined;
	const day = record === undefined ? null : trainingDay(record);
	return {
		person_id: id,
		organisation_id: organisation,
		gone: person.left === undefined ? 0 : 1,
		sort_name: erased ? '' : sortedName(name),
		search: erased ? '' : searchedText(name, number),
		name_key: erased ? '' : keyOfName(name),
		begun: begun ? 1 : 0,
		until,
		record_id: record?.id ?? null,
		record_day: day,
		due: due ?? null,
		detail: detail ?? '',
		erased: erased ? 1 : 0
	};
}
