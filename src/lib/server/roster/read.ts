/** A list of people as somebody has it: pasted, or a CSV file of any spreadsheet. */
import { parse } from 'csv-parse/sync';
import { field, type FieldProblem } from '../people/fields.ts';
import { unaccented } from '../records/folded.ts';

/** The most people of one list. @reason a company's site; more are read from another list. */
export const MOST_PEOPLE = 1000;
/** The longest pasted text, characters. @reason as many people with long names. */
export const LONGEST_TEXT = 256 * 1024;

/** One line of a list. */
export interface RosterLine {
	/** As spreadsheets number it, from 1. */
	readonly line: number;
	/** Tidied where it can be taken, else as it stands there. */
	readonly name: string;
	readonly number: string;
	/** The crew as it stands there, where a column of crews is read; else empty. */
	readonly crew: string;
	/** What is wrong; undefined if nothing is. */
	readonly problem: LineProblem | undefined;
}

export type LineProblem =
	| { readonly kind: 'field'; readonly field: 'name' | 'number'; readonly problem: FieldProblem }
	/** The number stood in this earlier line already. */
	| { readonly kind: 'twice'; readonly before: number };

/** What came of reading a list. */
export type Roster =
	| { readonly kind: 'read'; readonly lines: readonly RosterLine[] }
	| { readonly kind: 'refused'; readonly why: 'empty' | 'not-text' | 'too-long' | 'too-many' | 'one-column' }
	/** A quotation mark in this line is never closed. */
	| { readonly kind: 'refused'; readonly why: 'open-quote'; readonly line: number };

/** Signs that no text has, and that files of other kinds are full of: a workbook, a picture. */
const NOT_TEXT = /[\p{Cc}--[\t\n\v\f\r\u0080-\u009f]]/v;

/** What stands between columns, the least likely in a name first. */
const SEPARATORS = ['\t', ';', ',', '|'] as const;

/** Headings as people write them, in both languages; compared without accents, case and signs. */
const HEADINGS = {
	name: ['name', 'fullname', 'employee', 'worker', 'nombre', 'nombrecompleto', 'nombreyapellido', 'nombreyapellidos', 'trabajador', 'empleado'],
	first: ['firstname', 'first', 'givenname', 'nombres', 'primernombre'],
	last: ['lastname', 'last', 'surname', 'familyname', 'apellido', 'apellidos'],
	number: ['number', 'no', 'nr', 'personalnumber', 'staffnumber', 'employeenumber', 'employeeid', 'personnelnumber', 'badge', 'badgenumber', 'badgeno', 'staffno', 'employeeno', 'personnelno', 'id', 'numero', 'num', 'numeropersonal', 'numerodeempleado', 'nodeempleado', 'nempleado', 'legajo', 'credencial'],
	crew: ['crew', 'crewname', 'team', 'gang', 'group', 'cuadrilla', 'equipo', 'grupo', 'brigada']
} as const;
type Column = keyof typeof HEADINGS;

interface Row {
	readonly line: number;
	readonly cells: readonly string[];
}

/** Which columns of a list are read beside name and number. */
interface Reading {
	/** A column of crews: by its heading, or the third one. */
	readonly crews: boolean;
}

/**
 * Reads a list: which signs part the columns and whether there are headings is found out. Without headings the
 * number is the column with digits. Nothing is looked up: see `lookAtRoster`.
 */
export function readRoster(text: string, reading: Reading = { crews: false }): Roster {
	if (text.length > LONGEST_TEXT) return { kind: 'refused', why: 'too-long' };
	const tidied = text.replace(/^\ufeff/, '').replace(/^sep=.\r?\n/i, '');
	if (tidied.trim() === '') return { kind: 'refused', why: 'empty' };
	if (NOT_TEXT.test(tidied)) return { kind: 'refused', why: 'not-text' };
	const rows = rowsOf(tidied);
	if ('openIn' in rows) return { kind: 'refused', why: 'open-quote', line: rows.openIn };
	const [first] = rows;
	if (first === undefined) return { kind: 'refused', why: 'empty' };
	const headings = headingsOf(first.cells);
	const people = headings === undefined ? rows : rows.slice(1);
	if (people.length === 0) return { kind: 'refused', why: 'empty' };
	if (people.length > MOST_PEOPLE) return { kind: 'refused', why: 'too-many' };
	if (people.every(({ cells }) => cells.filter((cell) => cell.trim() !== '').length < 2)) return { kind: 'refused', why: 'one-column' };
	const columns = headings ?? { ...guessedColumns(people), crew: 2 };
	return { kind: 'read', lines: linesOf(people, reading.crews ? columns : { ...columns, crew: undefined }) };
}

/** The line, from 1, in which a quotation mark stands that is never closed. */
interface OpenQuote {
	readonly openIn: number;
}

/** The rows with something in them, by the separator that parts the most lines alike. */
function rowsOf(text: string): readonly Row[] | OpenQuote {
	let best: { readonly rows: readonly Row[]; readonly parted: number } | undefined;
	let open: OpenQuote | undefined;
	for (const delimiter of SEPARATORS) {
		const rows = parsed(text, delimiter);
		if ('openIn' in rows) {
			open ??= rows;
			continue;
		}
		const parted = rows.filter(({ cells }) => cells.filter((cell) => cell.trim() !== '').length > 1).length;
		if (best === undefined || parted > best.parted) best = { rows, parted };
	}
	// A sign that parts nothing reads over the quotation mark: the right one has met it.
	return best === undefined || (best.parted === 0 && open !== undefined) ? (open ?? []) : best.rows;
}

function parsed(text: string, delimiter: string): readonly Row[] | OpenQuote {
	let whole = 0;
	try {
		const records = parse(text, {
			delimiter,
			info: true,
			relax_column_count: true,
			// An inch sign or a nickname in the middle of a cell is no quoting.
			relax_quotes: true,
			skip_empty_lines: true,
			onRecord: (record: string[], { lines }) => {
				whole = lines;
				return record;
			},
			to: MOST_PEOPLE + 2
		}) as unknown as readonly { readonly record: readonly string[]; readonly info: { readonly lines: number } }[];
		return records.map(({ record, info }) => ({ line: info.lines, cells: record })).filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
	} catch {
		// With all else relaxed, only a quotation mark stops the reading: it opens in the line after the last whole row.
		return { openIn: firstFilled(text, whole + 1) };
	}
}

/** @returns the number of the first line, at or after this one, that is not empty. */
function firstFilled(text: string, from: number): number {
	const lines = text.split(/\r\n|\n|\r/);
	const found = lines.findIndex((line, i) => i + 1 >= from && line.trim() !== '');
	return found < 0 ? from : found + 1;
}

function plain(heading: string): string {
	return unaccented(heading).replace(/[^\p{L}\p{N}]/gu, '');
}

/** @returns whether a cell is the heading of a column of names or numbers. */
export function isHeading(cell: string): boolean {
	const heading = plain(cell);
	return Object.values(HEADINGS).some((known) => known.some((one) => one === heading));
}

/** Which column is what, if the first row has headings: at least that of the number, and one of the name. */
function headingsOf(cells: readonly string[]): Readonly<Partial<Record<Column, number>>> | undefined {
	const found: Partial<Record<Column, number>> = {};
	cells.forEach((cell, i) => {
		const heading = plain(cell);
		for (const [column, known] of Object.entries(HEADINGS) as [Column, readonly string[]][]) {
			if (known.includes(heading)) found[column] ??= i;
		}
	});
	const named = found.name !== undefined || found.first !== undefined || found.last !== undefined;
	return found.number !== undefined && named ? found : undefined;
}

/** Without headings: the first two columns, the number being the one with more digits in it. */
function guessedColumns(rows: readonly Row[]): Readonly<Partial<Record<Column, number>>> {
	const digits = (column: number) => rows.filter(({ cells }) => /\p{N}/u.test(cells[column] ?? '')).length;
	return digits(0) > digits(1) ? { number: 0, name: 1 } : { name: 0, number: 1 };
}

function linesOf(rows: readonly Row[], columns: Readonly<{ [Name in Column]?: number | undefined }>): readonly RosterLine[] {
	const cell = ({ cells }: Row, column: Column) => (columns[column] === undefined ? '' : (cells[columns[column]] ?? ''));
	const before = new Map<string, number>();
	return rows.map((row): RosterLine => {
		const written = cell(row, 'name').trim() === '' ? `${cell(row, 'first')} ${cell(row, 'last')}` : cell(row, 'name');
		const name = field.name.safeParse(written);
		const number = field.number.safeParse(cell(row, 'number'));
		const shown = { line: row.line, crew: cell(row, 'crew').trim(), name: name.data ?? written.trim().slice(0, MOST_SHOWN), number: number.data ?? cell(row, 'number').trim().slice(0, MOST_SHOWN) };
		if (!name.success) return { ...shown, problem: { kind: 'field', field: 'name', problem: problemIn(name.error) } };
		if (!number.success) return { ...shown, problem: { kind: 'field', field: 'number', problem: problemIn(number.error) } };
		const earlier = before.get(number.data);
		if (earlier !== undefined) return { ...shown, problem: { kind: 'twice', before: earlier } };
		before.set(number.data, row.line);
		return { ...shown, problem: undefined };
	});
}

/** Characters that are shown of a cell that cannot be taken. */
const MOST_SHOWN = 60;

/** @returns what is wrong with a cell, as its field says it. */
export function problemIn(error: { readonly issues: readonly { readonly message: string }[] }): FieldProblem {
	// The messages of these fields are their problems' names.
	return (error.issues[0]?.message ?? 'missing') as FieldProblem;
}
