/** What verifying reads: rows by the ids that the chain names, counts, and rows page by page. */
import { sql, type Selectable } from 'kysely';
import type { CertificateRow } from './certificates.ts';
import type { CheckpointRow } from './checkpoints.ts';
import type { CheckEvent, CheckTry, Completion } from './checks.ts';
import type { Database } from './open.ts';
import { pages } from './paging.ts';
import { inParts, type IdentityRow, type RecordEntryRow, type TrainingStateRow } from './records.ts';
import type { PersonTable } from './schema.ts';
import type { SignOffRow } from './sign-offs.ts';

/** The lowest number that an integer of PostgreSQL holds. @source https://www.postgresql.org/docs/current/datatype-numeric.html */
const LOWEST = -(2 ** 31);

/** What the chain holds of a person's row. */
export type HeldPerson = Readonly<Pick<Selectable<PersonTable>, 'id' | 'organisation_id' | 'role' | 'name' | 'personal_number'>>;

/** Tables whose rows each stand for an entry of the chain. */
export type EntryTable = 'completion' | 'sign_off' | 'certificate' | 'identity' | 'record_checkpoint';

/** @returns the organisations that there are, and those that rows of records name though they are none. */
export async function organisationsNamed(db: Database): Promise<readonly string[]> {
	const { rows } = await sql<{ id: string }>`
		select id from organisation
		union select organisation_id from record_head
		union select organisation_id from record_entry
		union select organisation_id from record_checkpoint
		union select organisation_id from identity
		union select organisation_id from completion
		union select organisation_id from sign_off
		union select organisation_id from certificate
		union select organisation_id from person
		union select organisation_id from training_state
		order by 1
	`.execute(db);
	return rows.map(({ id }) => id);
}

/** The chain of an organisation, a page after the other. */
export function chainPages(db: Database, organisation: string, size: number): AsyncGenerator<readonly RecordEntryRow[], void, undefined> {
	return pages(
		(after, most) => db.selectFrom('record_entry').selectAll().where('organisation_id', '=', organisation).where('seq', '>', after?.seq ?? LOWEST).orderBy('seq').limit(most).execute(),
		size
	);
}

/** @returns the number of a chain's last entry; 0 for none. */
export async function lastPlace(db: Database, organisation: string): Promise<number> {
	const row = await db.selectFrom('record_entry').select('seq').where('organisation_id', '=', organisation).orderBy('seq', 'desc').limit(1).executeTakeFirst();
	return row?.seq ?? 0;
}

/** @returns how many rows of a table an organisation has. */
export async function countRows(db: Database, table: EntryTable | 'training_state', organisation: string): Promise<number> {
	const { count } = await db.selectFrom(table).select((eb) => eb.fn.countAll().as('count')).where('organisation_id', '=', organisation).executeTakeFirstOrThrow();
	// PostgreSQL counts in bigint, which comes as text.
	return Number(count);
}

/** @returns how many people an organisation has, those who left too. */
export async function countPeople(db: Database, organisation: string): Promise<number> {
	const { count } = await db.selectFrom('person').select((eb) => eb.fn.countAll().as('count')).where('organisation_id', '=', organisation).executeTakeFirstOrThrow();
	return Number(count);
}

function byKey<Row>(rows: readonly Row[], keyOf: (row: Row) => string): ReadonlyMap<string, Row> {
	return new Map(rows.map((row) => [keyOf(row), row]));
}

async function inAllParts<Row>(keys: readonly string[], read: (part: readonly string[]) => Promise<readonly Row[]>): Promise<readonly Row[]> {
	const found: Row[] = [];
	for (const part of inParts(keys)) found.push(...(await read(part)));
	return found;
}

/** @returns rows by id, of whatever organisation: that it is the right one is what is verified. */
export async function completionsById(db: Database, ids: readonly string[]): Promise<ReadonlyMap<string, Completion>> {
	return byKey(await inAllParts(ids, (part) => db.selectFrom('completion').selectAll().where('id', 'in', part).execute()), ({ id }) => id);
}

export async function signOffsById(db: Database, ids: readonly string[]): Promise<ReadonlyMap<string, SignOffRow>> {
	return byKey(await inAllParts(ids, (part) => db.selectFrom('sign_off').selectAll().where('id', 'in', part).execute()), ({ id }) => id);
}

export async function identitiesByCommitment(db: Database, commitments: readonly string[]): Promise<ReadonlyMap<string, IdentityRow>> {
	return byKey(await inAllParts(commitments, (part) => db.selectFrom('identity').selectAll().where('commitment', 'in', part).execute()), ({ commitment }) => commitment);
}

/** @returns the certificates of some people's records, by record. */
export async function certificatesByRecord(db: Database, organisation: string, records: readonly string[]): Promise<ReadonlyMap<string, CertificateRow>> {
	const rows = await inAllParts(records, (part) => db.selectFrom('certificate').selectAll().where('organisation_id', '=', organisation).where('record_id', 'in', part).execute());
	return byKey(rows, ({ record_id }) => record_id);
}

export async function checkpointsBySize(db: Database, organisation: string, sizes: readonly number[]): Promise<ReadonlyMap<number, CheckpointRow>> {
	if (sizes.length === 0) return new Map();
	const rows = await db.selectFrom('record_checkpoint').selectAll().where('organisation_id', '=', organisation).where('size', 'in', sizes).execute();
	return new Map(rows.map((row) => [row.size, row]));
}

export async function triesById(db: Database, ids: readonly string[]): Promise<ReadonlyMap<string, CheckTry>> {
	return byKey(await inAllParts(ids, (part) => db.selectFrom('check_try').selectAll().where('id', 'in', part).execute()), ({ id }) => id);
}

/** @returns what happened in some tries, by try, in order. */
export async function eventsByTry(db: Database, ids: readonly string[]): Promise<ReadonlyMap<string, readonly CheckEvent[]>> {
	const found = new Map<string, CheckEvent[]>(ids.map((id) => [id, []]));
	const rows = await inAllParts(ids, (part) => db.selectFrom('check_event').selectAll().where('check_id', 'in', part).orderBy('check_id').orderBy('seq').execute());
	for (const row of rows) found.get(row.check_id)?.push(row);
	return found;
}

const HELD = ['id', 'organisation_id', 'role', 'name', 'personal_number'] as const;

export async function peopleById(db: Database, ids: readonly string[]): Promise<ReadonlyMap<string, HeldPerson>> {
	return byKey(await inAllParts(ids, (part) => db.selectFrom('person').select(HELD).where('id', 'in', part).execute()), ({ id }) => id);
}

/** Everyone of an organisation, a page after the other. */
export function heldPeoplePages(db: Database, organisation: string, size: number): AsyncGenerator<readonly HeldPerson[], void, undefined> {
	return pages((after, most) => db.selectFrom('person').select(HELD).where('organisation_id', '=', organisation).where('id', '>', after?.id ?? '').orderBy('id').limit(most).execute(), size);
}

/** @returns which commitments of some people are kept. */
export async function keptIdentities(db: Database, people: readonly string[]): Promise<readonly Pick<IdentityRow, 'commitment' | 'person_id'>[]> {
	return inAllParts(people, (part) => db.selectFrom('identity').select(['commitment', 'person_id']).where('person_id', 'in', part).orderBy('commitment').execute());
}

/** @returns the ids of the tries of some people. */
export async function triesOf(db: Database, people: readonly string[]): Promise<readonly Pick<CheckTry, 'id' | 'person_id'>[]> {
	return inAllParts(people, (part) => db.selectFrom('check_try').select(['id', 'person_id']).where('person_id', 'in', part).orderBy('id').execute());
}

export async function statesOf(db: Database, people: readonly string[]): Promise<ReadonlyMap<string, TrainingStateRow>> {
	return byKey(await inAllParts(people, (part) => db.selectFrom('training_state').selectAll().where('person_id', 'in', part).execute()), ({ person_id }) => person_id);
}

/** What finds the entry of a row: the row's key, and whom it is about, if anybody. */
export interface RowKey {
	readonly key: string;
	readonly person: string | null;
}

/** The keys of a table's rows of an organisation, a page after the other. */
export function rowKeyPages(db: Database, table: EntryTable, organisation: string, size: number): AsyncGenerator<readonly RowKey[], void, undefined> {
	const column = { completion: 'id', sign_off: 'id', certificate: 'record_id', identity: 'commitment', record_checkpoint: 'size' }[table];
	const person = table === 'record_checkpoint' ? sql<null>`null` : sql<string>`person_id`;
	return pages(async (after, most) => {
		// Numbers and texts are compared as what they are.
		const behind = after === undefined ? sql`true` : table === 'record_checkpoint' ? sql`${sql.ref(column)} > ${Number(after.key)}` : sql`${sql.ref(column)} > ${after.key}`;
		const { rows } = await sql<{ key: string | number; person: string | null }>`
			select ${sql.ref(column)} as key, ${person} as person from ${sql.table(table)}
			where organisation_id = ${organisation} and ${behind} order by 1 limit ${most}
		`.execute(db);
		return rows.map((row) => ({ key: String(row.key), person: row.person }));
	}, size);
}

/** @returns the payloads of entries of a kind: about some people, or about nobody, all of an organisation. */
export async function payloadsOf(db: Database, organisation: string, kind: string, people: readonly string[] | null): Promise<readonly string[]> {
	const query = db.selectFrom('record_entry').select('payload').where('organisation_id', '=', organisation).where('kind', '=', kind).orderBy('seq');
	const rows = people === null ? await query.execute() : await inAllParts(people, (part) => query.where('person_id', 'in', part).execute());
	return rows.map(({ payload }) => payload);
}

/** Where rows hang on nothing: the table, and the key of the first such row. */
export interface LooseRow {
	readonly table: 'check_try' | 'check_event' | 'training_state';
	readonly key: string;
	readonly column: string;
}

/** @returns a row that names a person or a try that is not there; null if there is none. */
export async function looseRow(db: Database): Promise<LooseRow | null> {
	const { rows: tries } = await sql<{ id: string }>`
		select t.id from check_try t where not exists (select 1 from person p where p.id = t.person_id) order by 1 limit 1
	`.execute(db);
	if (tries[0] !== undefined) return { table: 'check_try', key: tries[0].id, column: 'person_id' };
	const { rows: events } = await sql<{ id: string }>`
		select e.id from check_event e where not exists (select 1 from check_try t where t.id = e.check_id) order by 1 limit 1
	`.execute(db);
	if (events[0] !== undefined) return { table: 'check_event', key: events[0].id, column: 'check_id' };
	const { rows: states } = await sql<{ id: string }>`
		select s.person_id as id from training_state s
		where not exists (select 1 from person p where p.id = s.person_id and p.organisation_id = s.organisation_id and p.role = 'learner') order by 1 limit 1
	`.execute(db);
	return states[0] === undefined ? null : { table: 'training_state', key: states[0].id, column: 'person_id' };
}
