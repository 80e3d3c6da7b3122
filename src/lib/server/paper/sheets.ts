/** Sheets of a set: making one, finding those made before. What is not theirs to see is not found. */
import { randomBytes, randomUUID } from 'node:crypto';
import type { Language } from '#lib/quantity/index.ts';
import { findSheetRow, insertSheet, sheetsOfSet, typedCounts, type SheetRow } from '../db/paper.ts';
import type { Database } from '../db/open.ts';
import { noteDeed } from '../people/crews.ts';
import { randomCode } from '../people/code.ts';
import type { Person } from '../people/who.ts';
import { findSet, type PracticeSet } from '../sets/make.ts';
import { mostCopies, SHEET_CODE_LENGTH } from './code.ts';

/** Bytes of chance that a sheet's seeds come from. */
const SEED_BYTES = 16;
/** The most sheets that are listed. @reason more than anyone prints of one set; older ones keep their codes. */
const MOST_LISTED = 100;

/** How a set is to be printed. */
export interface SheetEntry {
	/** 1 to `mostCopies`; a common sheet has one, which is copied as often as needed. */
	readonly copies: number;
	/** Whether everyone works on the same problems. */
	readonly alike: boolean;
	readonly language: Language;
}

/** A printed sheet. */
export interface Sheet {
	readonly id: string;
	readonly set: string;
	/** Without the number of the copy. */
	readonly code: string;
	readonly copies: number;
	readonly alike: boolean;
	readonly seed: string;
	readonly language: Language;
	/** ISO 8601: when it was made. */
	readonly at: string;
}

export interface ListedSheet extends Sheet {
	/** For how many people answers were typed in. */
	readonly people: number;
}

export function sheetOf(row: SheetRow): Sheet {
	return {
		id: row.id,
		set: row.set_id,
		code: row.code,
		copies: row.copies,
		alike: row.alike === 1,
		seed: row.seed,
		language: row.language === 'es' ? 'es' : 'en',
		at: row.at
	};
}

/** Makes a sheet of a set that somebody may see. @returns null if the set is not found */
export async function printSheet(db: Database, who: Person, set: string, entry: SheetEntry, now: Date): Promise<Sheet | null> {
	const found = await findSet(db, who, set);
	if (found === null) return null;
	const copies = entry.alike ? 1 : Math.max(1, Math.min(mostCopies(found.content.count), Math.trunc(entry.copies)));
	return db.transaction().execute(async (transaction) => {
		const row = {
			id: randomUUID(),
			organisation_id: who.organisation,
			set_id: set,
			made_by: who.id,
			copies,
			alike: Number(entry.alike),
			seed: randomBytes(SEED_BYTES).toString('hex'),
			language: entry.language,
			at: now.toISOString()
		};
		let code = randomCode(SHEET_CODE_LENGTH);
		// Codes are as good as never alike; one that is, is taken again.
		while (!(await insertSheet(transaction, { ...row, code }))) code = randomCode(SHEET_CODE_LENGTH);
		await noteDeed(transaction, who, 'paper-printed', row.id, now, { copies, alike: entry.alike });
		return sheetOf({ ...row, code });
	});
}

/** @returns the sheets of a set that somebody may see, the newest first; none of a set that is not theirs. */
export async function listSheets(db: Database, who: Person, set: string): Promise<readonly ListedSheet[]> {
	if ((await findSet(db, who, set)) === null) return [];
	const rows = await sheetsOfSet(db, who, set, MOST_LISTED);
	const people = await typedCounts(db, rows.map((row) => row.id));
	return rows.map((row) => ({ ...sheetOf(row), people: people.get(row.id) ?? 0 }));
}

/** @returns a sheet with its set; null if there is none of that id, or the set is not theirs to see. */
export async function findSheet(db: Database, who: Person, set: string, id: string): Promise<{ readonly sheet: Sheet; readonly set: PracticeSet } | null> {
	const found = await findSet(db, who, set);
	const row = found === null ? null : await findSheetRow(db, who, set, id);
	return found === null || row === null ? null : { sheet: sheetOf(row), set: found };
}
