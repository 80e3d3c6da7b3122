import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BYTE_ORDER_MARK, csvOf, guarded, unguarded, type Cell, type Row } from '#lib/server/exports/csv.ts';

const COLUMNS = ['one', 'two'] as const;
type OneRow = Row<(typeof COLUMNS)[number]>;

async function* inPages(rowPages: readonly (readonly OneRow[])[]): AsyncGenerator<readonly OneRow[], void, undefined> {
	for (const rows of rowPages) yield await Promise.resolve(rows);
}

async function written(rowPages: readonly (readonly OneRow[])[], options: { readonly mark?: boolean } = {}): Promise<string> {
	let text = '';
	for await (const part of csvOf(COLUMNS, inPages(rowPages), options)) text += part;
	return text;
}

const row = (one: Cell, two: Cell = null): OneRow => ({ one, two });

/** Texts as people and their spreadsheets make trouble with them. */
const trouble = fc.oneof(
	fc.string({ unit: 'grapheme' }),
	fc.string({ unit: 'binary' }),
	fc.string({ unit: fc.constantFrom('"', ',', '\r', '\n', '\t', "'", '=', '+', '-', '@', '\u00a0', '\u3000', ' ', '\ufeff', '＝', 'a', '1', '🦺') }),
	fc.constantFrom('=1+1', '\u00a0=1+1', "'=1+1", "''@x", '-5', '+34 600', "'t Veld", 'Nguyễn Thị', 'محمد', '山田', '"; DROP', '=HYPERLINK("x")', '\u200b=1', '')
);

describe('comma-separated values', () => {
	// RFC 4180, section 2: header, CR LF after each row, quotes around quotes (doubled), commas and ends of lines.
	it('are written as RFC 4180 says, in parts as the rows come', async () => {
		expect(await written([[row('a', 'b "c"')], [], [row('d,e', 'f\r\ng')]])).toBe('one,two\r\na,"b ""c"""\r\n"d,e","f\r\ng"\r\n');
		expect(await written([])).toBe('one,two\r\n');
	});

	it('begin with a byte order mark where a spreadsheet asks for one', async () => {
		expect((await written([[row('é')]], { mark: true })).startsWith(`${BYTE_ORDER_MARK}one,two\r\n`)).toBe(true);
		expect((await written([[row('é')]])).startsWith('one')).toBe(true);
	});

	// OWASP, "CSV Injection", from memory: = + - @, tab and carriage return, behind blanks too.
	it('have an apostrophe before what a spreadsheet would take for a formula, and before nothing else', () => {
		const formulas = ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\rx', ' =1', '\u00a0=1', '\u3000 =1', '\u200b@x', '\ufeff=1', '＝1', '\n=1', "'=1", '\0=1'];
		expect(formulas.filter((text) => guarded(text) !== `'${text}`)).toEqual([]);
		const texts = ['Dario Penn', "'t Veld", "O'Neil", '2026-03-14', '', ' ', '1-2', 'a=b', '🦺', '山田 花子'];
		expect(texts.filter((text) => guarded(text) !== text)).toEqual([]);
	});

	it('write numbers as numbers, also negative ones, and yes and no as words', async () => {
		expect(await written([[row(-1.5, true)], [row(0, false)], [row(null, '-1.5')]])).toBe("one,two\r\n-1.5,true\r\n0,false\r\n,'-1.5\r\n");
	});

	// Round trip through an independent reader of the same format: csv-parse.
	it('are read back as they were, once the guard is taken away', async () => {
		await fc.assert(
			fc.asyncProperty(fc.array(fc.tuple(trouble, trouble), { minLength: 1, maxLength: 6 }), fc.boolean(), async (pairs, mark) => {
				const text = await written([pairs.map(([one, two]) => row(one, two))], { mark });
				const bytes = Buffer.from(text, 'utf8');
				const read = parse(bytes, { bom: mark, relax_column_count: false, record_delimiter: '\r\n' });
				const asStored = (one: string): string => Buffer.from(one, 'utf8').toString('utf8');
				expect(read).toEqual([[...COLUMNS], ...pairs.map((pair) => pair.map((one) => guarded(asStored(one))))]);
				expect(read.slice(1).map((pair) => pair.map(unguarded))).toEqual(pairs.map((pair) => pair.map(asStored)));
			}),
			{ numRuns: 300 }
		);
	});
});
