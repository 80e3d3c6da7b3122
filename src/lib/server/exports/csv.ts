/** Tables as comma-separated values. */
import { stringify } from 'csv-stringify/sync';

/** What a cell holds: a text, a number, yes or no, or nothing. */
export type Cell = string | number | boolean | null;
/** A row by the names of its columns. */
export type Row<Column extends string> = Readonly<Record<Column, Cell>>;

/**
 * What a spreadsheet would take for a formula: behind blanks of any kind too, and behind apostrophes, so that one that is
 * set before it can be taken away again without a doubt. The signs are those of csv-stringify's `escape_formulas`.
 * @source OWASP, "CSV Injection"; from memory
 */
const FORMULA = /^'*(?:[\t\r]|[\s\p{Z}\p{Cf}\p{Cc}]*[=+\-@\uff1d\uff0b\uff0d\uff20])/u;

/** @returns a text that no spreadsheet takes for a formula: an apostrophe is set before one that it would. */
export function guarded(text: string): string {
	return FORMULA.test(text) ? `'${text}` : text;
}

/** @returns the text that `guarded` was given. */
export function unguarded(text: string): string {
	return text.startsWith("'") && FORMULA.test(text.slice(1)) ? text.slice(1) : text;
}

/** Numbers stay numbers: one that is negative is no formula. */
function written(cell: Cell): string | number {
	if (typeof cell === 'number') return cell;
	if (cell === null) return '';
	return typeof cell === 'boolean' ? String(cell) : guarded(cell);
}

/** What spreadsheets know UTF-8 by. */
export const BYTE_ORDER_MARK = '\ufeff';

function lines(rows: readonly (readonly (string | number)[])[]): string {
	return stringify([...rows], { record_delimiter: 'windows', escape_formulas: true });
}

/**
 * A table as text, a part for each page of rows.
 * @source RFC 4180: a header row, CR LF, quotes around what holds commas, quotes or ends of lines
 */
export async function* csvOf<Column extends string>(
	columns: readonly Column[],
	rowPages: AsyncIterable<readonly Row<Column>[]>,
	{ mark = false }: { /** Begins with a byte order mark, for spreadsheets. */ readonly mark?: boolean } = {}
): AsyncGenerator<string, void, undefined> {
	yield (mark ? BYTE_ORDER_MARK : '') + lines([columns]);
	for await (const rows of rowPages) if (rows.length > 0) yield lines(rows.map((row) => columns.map((column) => written(row[column]))));
}
