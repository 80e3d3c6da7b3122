/** The chains of records: appended to and read here alone. */
import { sql, type Selectable } from 'kysely';
import type { Database } from './open.ts';
import type { IdentityTable, RecordEntryTable, RecordSettingsTable, TrainingStateTable } from './schema.ts';

export type RecordEntryRow = Readonly<Selectable<RecordEntryTable>>;
export type IdentityRow = Readonly<Selectable<IdentityTable>>;
export type TrainingStateRow = Readonly<Selectable<TrainingStateTable>>;
export type RecordSettingsRow = Readonly<Selectable<RecordSettingsTable>>;

/** @reason far below what either database takes in one statement, at some ten values a row. */
const ROWS_AT_ONCE = 500;

/** @returns a list in parts that one statement takes. */
export function inParts<Item>(items: readonly Item[]): readonly (readonly Item[])[] {
	const parts: (readonly Item[])[] = [];
	for (let i = 0; i < items.length; i += ROWS_AT_ONCE) parts.push(items.slice(i, i + ROWS_AT_ONCE));
	return parts;
}

/** Where a chain ends. */
export interface Head {
	readonly seq: number;
	readonly hash: string;
}

/** @returns where a chain ends; null if the organisation has none yet. */
export async function headOf(db: Database, organisation: string): Promise<Head | null> {
	return (await db.selectFrom('record_head').select(['seq', 'hash']).where('organisation_id', '=', organisation).executeTakeFirst()) ?? null;
}

/**
 * Where a chain ends, kept for this transaction: whoever else appends waits until it is over.
 * @param first what stands before the first entry, for a chain that has none yet
 */
export async function lockHead(db: Database, organisation: string, first: Head): Promise<Head> {
	await db
		.insertInto('record_head')
		.values({ organisation_id: organisation, ...first })
		.onConflict((conflict) => conflict.column('organisation_id').doNothing())
		.execute();
	// A change that changes nothing takes the row's lock.
	return db
		.updateTable('record_head')
		.set((eb) => ({ seq: eb.ref('seq') }))
		.where('organisation_id', '=', organisation)
		.returning(['seq', 'hash'])
		.executeTakeFirstOrThrow();
}

export async function moveHead(db: Database, organisation: string, head: Head): Promise<void> {
	await db.updateTable('record_head').set({ ...head }).where('organisation_id', '=', organisation).execute();
}

export async function insertEntries(db: Database, rows: readonly RecordEntryRow[]): Promise<void> {
	for (const part of inParts(rows)) await db.insertInto('record_entry').values([...part]).execute();
}

/** @returns the entries about some people, by person, each in order. Whose people they are, the caller has asked. */
export async function entriesAbout(db: Database, people: readonly string[]): Promise<ReadonlyMap<string, readonly RecordEntryRow[]>> {
	const found = new Map<string, RecordEntryRow[]>();
	for (const part of inParts(people)) {
		const rows = await db.selectFrom('record_entry').selectAll().where('person_id', 'in', part).orderBy('person_id').orderBy('seq').execute();
		for (const row of rows) {
			const person = row.person_id ?? '';
			const before = found.get(person);
			if (before === undefined) found.set(person, [row]);
			else before.push(row);
		}
	}
	return found;
}

export async function insertIdentities(db: Database, rows: readonly IdentityRow[]): Promise<void> {
	for (const part of inParts(rows)) await db.insertInto('identity').values([...part]).execute();
}

/** @returns what the commitments of an organisation hold, by commitment; what is forgotten is left out. */
export async function identitiesOf(db: Database, organisation: string, commitments: readonly string[]): Promise<ReadonlyMap<string, IdentityRow>> {
	const found = new Map<string, IdentityRow>();
	for (const part of inParts(commitments)) {
		const rows = await db.selectFrom('identity').selectAll().where('commitment', 'in', part).where('organisation_id', '=', organisation).execute();
		for (const row of rows) found.set(row.commitment, row);
	}
	return found;
}

/** A learner, as far as the state of training hangs on the tables of people and courses. */
export interface LearnerFacts {
	readonly id: string;
	readonly organisation: string;
	readonly name: string;
	readonly number: string | null;
	readonly begun: boolean;
}

/** @returns those of some people who are learners. */
export async function learnerFacts(db: Database, people: readonly string[]): Promise<readonly LearnerFacts[]> {
	const found: LearnerFacts[] = [];
	for (const part of inParts(people)) {
		const rows = await db
			.selectFrom('person')
			.select(['id', 'organisation_id', 'name', 'personal_number'])
			.select((eb) => eb.exists(eb.selectFrom('course_start').select(sql.lit(1).as('one')).whereRef('course_start.person_id', '=', 'person.id')).as('begun'))
			.where('id', 'in', part)
			.where('role', '=', 'learner')
			.execute();
		for (const row of rows) found.push({ id: row.id, organisation: row.organisation_id, name: row.name, number: row.personal_number, begun: Boolean(row.begun) });
	}
	return found;
}

/** Writes how learners stand, in place of how they stood. */
export async function putStates(db: Database, rows: readonly TrainingStateRow[]): Promise<void> {
	for (const part of inParts(rows)) {
		await db
			.insertInto('training_state')
			.values([...part])
			.onConflict((conflict) =>
				conflict.column('person_id').doUpdateSet((eb) => ({
					gone: eb.ref('excluded.gone'),
					sort_name: eb.ref('excluded.sort_name'),
					search: eb.ref('excluded.search'),
					name_key: eb.ref('excluded.name_key'),
					// A course that is begun stays begun, whatever was read just before.
					begun: eb.case().when('training_state.begun', '=', 1).then(1).else(eb.ref('excluded.begun')).end(),
					until: eb.ref('excluded.until'),
					record_id: eb.ref('excluded.record_id'),
					record_day: eb.ref('excluded.record_day'),
					due: eb.ref('excluded.due'),
					detail: eb.ref('excluded.detail'),
					erased: eb.ref('excluded.erased')
				}))
			)
			.execute();
	}
}

/** Notes that a person has begun the course. */
export async function noteBegun(db: Database, person: string): Promise<void> {
	await db.updateTable('training_state').set({ begun: 1 }).where('person_id', '=', person).execute();
}

/** @returns what an organisation wants of its records; null if it never said. */
export async function findRecordSettings(db: Database, organisation: string): Promise<RecordSettingsRow | null> {
	return (await db.selectFrom('record_settings').selectAll().where('organisation_id', '=', organisation).executeTakeFirst()) ?? null;
}

export async function putRecordSettings(db: Database, row: RecordSettingsRow): Promise<void> {
	const { validity_months, soon_days, keep_months, changed_at } = row;
	const set = { validity_months, soon_days, keep_months, changed_at };
	await db.insertInto('record_settings').values(row).onConflict((conflict) => conflict.column('organisation_id').doUpdateSet(set)).execute();
}
