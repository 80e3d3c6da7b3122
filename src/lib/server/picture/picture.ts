/** What a crew gets wrong: people by cells, slips, weeks. */
import { COURSE_CELLS, type CourseCell } from '#lib/course/index.ts';
import type { OutcomeSlip } from '#lib/flow/index.ts';
import { slipOf } from '#lib/slips/index.ts';
import type { Asker } from '../db/crews.ts';
import { answerersOf, byWeek, lastAnswers, skillsMet, slipsOfPeople, type Answerer, type CellTally, type OutcomeFilter, type PersonSlip, type Tally, type WeekTally } from '../db/outcomes.ts';
import type { Database } from '../db/open.ts';

/** A person's row: how the last answers in each cell went; a cell that was not met has none. */
export interface PersonRow {
	readonly person: Answerer;
	readonly cells: Readonly<Partial<Record<CourseCell, Tally>>>;
}

/** How often a slip was found. */
export interface SlipRow {
	readonly slip: OutcomeSlip;
	readonly answers: number;
	/** On the unsafe side. */
	readonly critical: number;
	readonly people: number;
}

/** The whole picture of a crew. */
export interface CrewPicture {
	/** Whoever needs help most comes first. */
	readonly rows: readonly PersonRow[];
	/** By how many answers were on the unsafe side, then by how often they were found. */
	readonly slips: readonly SlipRow[];
	/** All wrong answers, and those of them that look like one slip. */
	readonly wrong: number;
	readonly explained: number;
	readonly weeks: readonly WeekTally[];
}

/** @returns true for a cell of the course. */
export function isCell(text: string | null): text is CourseCell {
	return COURSE_CELLS.some((cell) => cell === text);
}

/** @returns the slip of an id, or undefined for a text that is none. */
export function knownSlip(text: string | null): OutcomeSlip | undefined {
	return text === 'label-range-overlooked' ? text : slipOf(text ?? '')?.id;
}

/** @returns the picture of a crew that this person teaches; of another crew it is empty. */
export async function crewPicture(db: Database, who: Asker, crew: string, filter: OutcomeFilter): Promise<CrewPicture> {
	const people = await answerersOf(db, who, crew);
	const tallies = await lastAnswers(db, who, crew, COURSE_CELLS.map((cell) => ({ cell, skill: '' })), filter);
	const slips = await slipsOfPeople(db, people, null, filter);
	const weeks = await byWeek(db, people, filter);
	return { rows: rowsOf(people, tallies), ...countSlips(slips), weeks };
}

function rowsOf(people: readonly Answerer[], tallies: readonly CellTally[]): readonly PersonRow[] {
	const cells = new Map<string, Partial<Record<CourseCell, Tally>>>(people.map(({ id }) => [id, {}]));
	for (const { person, cell, answers, wrong, critical } of tallies) {
		const own = cells.get(person);
		if (own !== undefined && isCell(cell)) own[cell] = { answers, wrong, critical };
	}
	const rows = people.map((person) => ({ person, cells: cells.get(person.id) ?? {} }));
	const needs = new Map(rows.map((row) => [row, needOf(Object.values(row.cells))]));
	const need = (row: PersonRow): Tally => needs.get(row) ?? NOTHING;
	// The people came by name, and sorting keeps the order of those who need alike.
	return rows.sort((a, b) => need(b).critical - need(a).critical || need(b).wrong - need(a).wrong);
}

const NOTHING: Tally = { answers: 0, wrong: 0, critical: 0 };

function needOf(tallies: readonly Tally[]): Tally {
	return tallies.reduce((sum, one) => ({ answers: sum.answers + one.answers, wrong: sum.wrong + one.wrong, critical: sum.critical + one.critical }), NOTHING);
}

/** @returns how often each slip was found, and how many wrong answers it explains. */
export function countSlips(found: readonly PersonSlip[]): Pick<CrewPicture, 'slips' | 'wrong' | 'explained'> {
	const slips = new Map<OutcomeSlip, { answers: number; critical: number; people: Set<string> }>();
	let wrong = 0;
	let explained = 0;
	for (const one of found) {
		wrong += one.wrong;
		const slip = knownSlip(one.slip);
		if (slip === undefined) continue;
		explained += one.wrong;
		const row = slips.get(slip) ?? { answers: 0, critical: 0, people: new Set() };
		row.answers += one.wrong;
		row.critical += one.critical;
		row.people.add(one.answerer);
		slips.set(slip, row);
	}
	const rows = [...slips].map(([slip, { answers, critical, people }]) => ({ slip, answers, critical, people: people.size }));
	return {
		slips: rows.sort((a, b) => b.critical - a.critical || b.answers - a.answers || (a.slip < b.slip ? -1 : 1)),
		wrong,
		explained
	};
}

/** An opened cell: the finer skills in it, of each person who met it. */
export interface OpenedCell {
	readonly cell: CourseCell;
	/** Those that anybody met, in the order in which most went wrong. */
	readonly skills: readonly string[];
	readonly rows: readonly { readonly person: Answerer; readonly skills: Readonly<Record<string, Tally>> }[];
}

/** @returns the finer skills of a cell, for these people of the crew in this order; who did not meet it is left out. */
export async function openCell(db: Database, who: Asker, crew: string, people: readonly Answerer[], cell: CourseCell, filter: OutcomeFilter): Promise<OpenedCell> {
	const met = await skillsMet(db, people, cell, filter);
	const tallies = await lastAnswers(db, who, crew, met.map((skill) => ({ cell, skill })), filter);
	const wrong = new Map<string, number>();
	const byPerson = new Map<string, Record<string, Tally>>();
	for (const { person, skill, answers, wrong: count, critical } of tallies) {
		wrong.set(skill, (wrong.get(skill) ?? 0) + count);
		byPerson.set(person, { ...byPerson.get(person), [skill]: { answers, wrong: count, critical } });
	}
	const skills = [...wrong].sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1)).map(([skill]) => skill);
	const rows = people.flatMap((person) => {
		const own = byPerson.get(person.id);
		return own === undefined ? [] : [{ person, skills: own }];
	});
	return { cell, skills, rows };
}
