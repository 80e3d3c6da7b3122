import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeList } from '#lib/server/roster/decode.ts';
import { MOST_PEOPLE, readRoster } from '#lib/server/roster/read.ts';

/** What stands in the lines that can be taken: line, name, number. */
function people(text: string): readonly string[] {
	const roster = readRoster(text);
	if (roster.kind === 'refused') throw new Error(roster.why);
	return roster.lines.filter(({ problem }) => problem === undefined).map(({ line, name, number }) => `${String(line)} ${name} ${number}`);
}

function utf16(text: string, order: 'le' | 'be', mark: boolean): Uint8Array {
	const bytes = Buffer.from(`${mark ? '\ufeff' : ''}${text}`, 'utf16le');
	return order === 'le' ? bytes : bytes.swap16();
}

const LIST = 'Nombre;Número\r\nLucía Peña;C-117\r\nJosé Núñez;C-118\r\n';
const READ = ['2 Lucía Peña C-117', '3 José Núñez C-118'];

describe('bytes of a file', () => {
	// The encodings in which spreadsheets save: UTF-8 with and without mark, "Unicode text" (UTF-16), Windows-1252. Common practice, no source.
	it.each<[string, Uint8Array]>([
		['UTF-8', Buffer.from(LIST)],
		['UTF-8 with its mark', Buffer.from(`\ufeff${LIST}`)],
		['UTF-16, little end first, with its mark', utf16(LIST, 'le', true)],
		['UTF-16, big end first, with its mark', utf16(LIST, 'be', true)],
		['UTF-16, little end first', utf16(LIST, 'le', false)],
		['UTF-16, big end first', utf16(LIST, 'be', false)],
		['Windows-1252', Buffer.from(LIST, 'latin1')]
	])('in %s are read', (_, bytes) => {
		expect(people(decodeList(bytes))).toEqual(READ);
	});
});

describe('a list', () => {
	it.each([
		['semicolons', 'Dario Penn;C-117\nNadia Rook;C-118'],
		['commas', 'Dario Penn,C-117\nNadia Rook,C-118'],
		['tabs, as pasted from a spreadsheet', 'Dario Penn\tC-117\nNadia Rook\tC-118'],
		['uprights', 'Dario Penn|C-117\nNadia Rook|C-118'],
		['old line ends', 'Dario Penn;C-117\rNadia Rook;C-118'],
		['the number first', 'C-117;Dario Penn\nC-118;Nadia Rook'],
		['a comma inside quotation marks', '"Dario Penn",C-117\n"Nadia Rook",C-118\n'],
		['empty lines and cells between', '\n;;\nDario Penn;C-117\n\n ; \nNadia Rook;C-118;;']
	])('with %s is read', (_, text) => {
		expect(people(text).map((one) => one.replace(/^\d+ /, ''))).toEqual(['Dario Penn C-117', 'Nadia Rook C-118']);
	});

	it('is read by its headings, whatever else stands there', () => {
		expect(people('Badge No,Trade,Full name\nC-117,Rigger,Dario Penn')).toEqual(['2 Dario Penn C-117']);
		expect(people('Nº de empleado,Oficio,Nombre y apellidos\nC-117,Montador,Dario Penn')).toEqual(['2 Dario Penn C-117']);
	});

	it('puts first and last name together', () => {
		expect(people('Last name,Team,First name,Number\nPenn,A,Dario,C-117')).toEqual(['2 Dario Penn C-117']);
	});

	it('keeps names of any script, and takes marks off that turn the direction', () => {
		expect(people('نادية روك;C-210\n\u202eDario Penn;C-117')).toEqual(['1 نادية روك C-210', '2 Dario Penn C-117']);
	});

	it('names each line that cannot be taken, and what is wrong with it', () => {
		const roster = readRoster(`Name;Number\n;C-1\nDario Penn;\nDario Penn;C 2!\n${'x'.repeat(300)};C-3\n---;C-4\nNadia Rook;C-5\nJo Reed;c-5\n=HYPERLINK("x");C-6`);
		expect(roster.kind === 'read' ? roster.lines.map(({ line, problem }) => [line, problem]) : []).toEqual([
			[2, { kind: 'field', field: 'name', problem: 'missing' }],
			[3, { kind: 'field', field: 'number', problem: 'missing' }],
			[4, { kind: 'field', field: 'number', problem: 'not-a-number' }],
			[5, { kind: 'field', field: 'name', problem: 'too-long' }],
			[6, { kind: 'field', field: 'name', problem: 'not-a-name' }],
			[7, undefined],
			[8, { kind: 'twice', before: 7 }],
			[9, undefined]
		]);
	});

	it.each([
		['empty', ''],
		['empty', ' \n\t\n'],
		['empty', 'Name;Number\n'],
		['one-column', 'Dario Penn\nNadia Rook'],
		['too-long', 'x'.repeat(300_000)],
		['too-many', Array.from({ length: MOST_PEOPLE + 1 }, (_, i) => `Dario Penn;C-${String(i)}`).join('\n')],
		['not-text', 'PK\u0003\u0004\u0014\u0000;\u0006\nDario Penn;C-117']
	])('is refused as %s', (why, text) => {
		expect(readRoster(text)).toEqual({ kind: 'refused', why });
	});

	it.each([
		['the first line', '"Dario Penn;C-117\nNadia Rook;C-118', 1],
		['a later line', 'Name;Number\nDario Penn;C-117\n\n"Nadia Rook;C-118\nJo Reed;C-119', 4],
		['a line after a cell of two lines', 'Name,Number\n"Dario\nPenn",C-117\n"Nadia Rook,C-118', 4],
		['the second cell of a line', 'Dario Penn;C-117\nNadia Rook;"C-118\nJo Reed;C-119', 2]
	])('is refused with the line where a quotation mark is never closed: %s', (_, text, line) => {
		expect(readRoster(text)).toEqual({ kind: 'refused', why: 'open-quote', line });
	});

	it('of any text is read or refused, never an error', () => {
		fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => ['read', 'refused'].includes(readRoster(text).kind)));
		fc.assert(fc.property(fc.array(fc.array(fc.constantFrom('"', ';', ',', '\n', '\r', 'a', '1', '\u0000', '=')), { maxLength: 30 }), (parts) => ['read', 'refused'].includes(readRoster(parts.flat().join('')).kind)));
		fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => typeof decodeList(bytes) === 'string'));
	});
});
