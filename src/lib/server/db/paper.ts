/** Printed sheets and the answers typed in from them, each query within what the asking person may see. */
import type { Asker } from './crews.ts';
import { ownCrewIds } from './crews.ts';
import type { Database } from './open.ts';
import type { AttemptTable, PaperSheetTable } from './schema.ts';

export type SheetRow = Readonly<PaperSheetTable>;

/** An answer typed in from a copy. */
export interface TypedRow extends Readonly<Pick<AttemptTable, 'answers' | 'result' | 'seed' | 'scenario_id' | 'scenario_version'>> {
	readonly place: number;
	/** ISO 8601. */
	readonly at: string;
}

/** Stores a sheet. @returns false if another has this code already; nothing is stored then. */
export async function insertSheet(db: Database, sheet: SheetRow): Promise<boolean> {
	const stored = await db
		.insertInto('paper_sheet')
		.values(sheet)
		.onConflict((conflict) => conflict.column('code').doNothing())
		.returning('id')
		.executeTakeFirst();
	return stored !== undefined;
}

/** @returns the sheets of a set, the newest first. Whether the set may be seen, is asked before. */
export async function sheetsOfSet(db: Database, who: Asker, set: string, most: number): Promise<readonly SheetRow[]> {
	return db
		.selectFrom('paper_sheet')
		.selectAll()
		.where('set_id', '=', set)
		.where('organisation_id', '=', who.organisation)
		.orderBy('at', 'desc')
		.orderBy('id')
		.limit(most)
		.execute();
}

/** @returns a sheet of a set; null if there is none of that id. Whether the set may be seen, is asked before. */
export async function findSheetRow(db: Database, who: Asker, set: string, id: string): Promise<SheetRow | null> {
	const row = await db
		.selectFrom('paper_sheet')
		.selectAll()
		.where('id', '=', id)
		.where('set_id', '=', set)
		.where('organisation_id', '=', who.organisation)
		.executeTakeFirst();
	return row ?? null;
}

/** @returns the sheet with a code; null if the organisation has none such. Whether its set may be seen, is asked after. */
export async function sheetByCode(db: Database, who: Asker, code: string): Promise<SheetRow | null> {
	const row = await db.selectFrom('paper_sheet').selectAll().where('code', '=', code).where('organisation_id', '=', who.organisation).executeTakeFirst();
	return row ?? null;
}

/** A learner whose answers may be typed in. */
export interface TypedFor {
	readonly id: string;
	readonly name: string;
	readonly number: string;
	/** The guest row that the answers are stored under. */
	readonly answerer: string;
}

/** @returns a learner on the list of a crew of theirs, or null. */
export async function findTypedFor(db: Database, who: Asker, person: string): Promise<TypedFor | null> {
	const row = await db
		.selectFrom('person')
		.select(['person.id', 'person.name', 'person.personal_number', 'person.answerer_id'])
		.where('person.id', '=', person)
		.where('person.role', '=', 'learner')
		.where('person.closed_at', 'is', null)
		.where('person.id', 'in', db.selectFrom('crew_learner').select('crew_learner.person_id').where('crew_learner.crew_id', 'in', ownCrewIds(db, who)))
		.executeTakeFirst();
	return row === undefined ? null : { id: row.id, name: row.name, number: row.personal_number ?? '', answerer: row.answerer_id };
}

/** @returns what was typed in from a copy for a person, by place. */
export async function typedAnswers(db: Database, sheet: string, copy: number, person: string): Promise<readonly TypedRow[]> {
	return db
		.selectFrom('paper_answer')
		.innerJoin('attempt', 'attempt.id', 'paper_answer.attempt_id')
		.select(['paper_answer.place', 'paper_answer.at', 'attempt.answers', 'attempt.result', 'attempt.seed', 'attempt.scenario_id', 'attempt.scenario_version'])
		.where('paper_answer.sheet_id', '=', sheet)
		.where('paper_answer.copy', '=', copy)
		.where('paper_answer.person_id', '=', person)
		.orderBy('paper_answer.place')
		.execute();
}

/** @returns the names of others for whom answers of this copy were typed in: those on lists that this person may see. */
export async function othersOfCopy(db: Database, who: Asker, sheet: string, copy: number, person: string): Promise<readonly string[]> {
	const rows = await db
		.selectFrom('paper_answer')
		.innerJoin('person', 'person.id', 'paper_answer.person_id')
		.select('person.name')
		.distinct()
		.where('paper_answer.sheet_id', '=', sheet)
		.where('paper_answer.copy', '=', copy)
		.where('paper_answer.person_id', '!=', person)
		.where('paper_answer.person_id', 'in', db.selectFrom('crew_learner').select('crew_learner.person_id').where('crew_learner.crew_id', 'in', ownCrewIds(db, who)))
		.orderBy('person.name')
		.execute();
	return rows.map((row) => row.name);
}

/** @returns of some sheets, for how many people answers were typed in. */
export async function typedCounts(db: Database, sheets: readonly string[]): Promise<ReadonlyMap<string, number>> {
	if (sheets.length === 0) return new Map();
	const rows = await db
		.selectFrom('paper_answer')
		.select('sheet_id')
		.select((eb) => eb.fn.count('person_id').distinct().as('people'))
		.where('sheet_id', 'in', sheets)
		.groupBy('sheet_id')
		.execute();
	return new Map(rows.map((row) => [row.sheet_id, Number(row.people)]));
}
