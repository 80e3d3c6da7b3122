/** What the chain says of one person, found for who may ask. */
import { personRecord, type PersonRecord } from '#lib/records/index.ts';
import type { Database } from '../db/open.ts';
import { findPerson, type PersonRow } from '../db/people.ts';
import { entriesAbout, findRecordSettings } from '../db/records.ts';
import { placedRows } from './append.ts';

/** A person and what the chain says of them. */
export interface FoundPerson {
	readonly person: PersonRow;
	readonly record: PersonRecord;
}

/** @returns a person of an organisation with their record; null for one of another. */
export async function findPersonRecord(db: Database, organisation: string, id: string): Promise<FoundPerson | null> {
	const person = await findPerson(db, organisation, id);
	return person === null ? null : { person, record: await recordOf(db, id) };
}

/** @returns what the chain says of a person. Whose person it is, the caller has asked. */
export async function recordOf(db: Database, person: string): Promise<PersonRecord> {
	return personRecord(placedRows((await entriesAbout(db, [person])).get(person) ?? []));
}

/** @returns what the chain says of some people, by person; who has no entries is left out. Whose people they are, the caller has asked. */
export async function recordsOf(db: Database, people: readonly string[]): Promise<ReadonlyMap<string, PersonRecord>> {
	return new Map([...(await entriesAbout(db, people))].map(([person, rows]) => [person, personRecord(placedRows(rows))]));
}

/** What an organisation wants of its records. */
export interface RecordSettings {
	/** Months that a completion is valid at most, beside law's; null for law's alone. */
	readonly validityMonths: number | null;
	/** How many days ahead an end is soon. */
	readonly soonDays: number;
	/** Months after which the names of people who left are forgotten; null for never. */
	readonly keepMonths: number | null;
}

/** @reason a month is enough to plan a day of training */
const SOON_DAYS = 30;
/** @reason common practice, no source: employment and three years; no law sets one figure for all */
export const KEEP_MONTHS = 36;

/** @returns what an organisation wants of its records: as it said, or what is usual. */
export async function recordSettings(db: Database, organisation: string): Promise<RecordSettings> {
	const row = await findRecordSettings(db, organisation);
	return row === null
		? { validityMonths: null, soonDays: SOON_DAYS, keepMonths: KEEP_MONTHS }
		: { validityMonths: row.validity_months, soonDays: row.soon_days, keepMonths: row.keep_months };
}
