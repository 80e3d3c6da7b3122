/** "Who on this list is current today?": names or numbers, line by line, held against the learners of an organisation. */
import type { Database } from '../db/open.ts';
import { trainingByName, trainingByNumber, type ListedTraining } from '../db/training.ts';
import { tidy, tidyNumber } from '../people/fields.ts';
import type { Person } from '../people/who.ts';
import { isHeading } from '../roster/read.ts';
import { listRows, stateDaysOf, type ListRow } from './list.ts';
import { keyOfName } from './name-texts.ts';

/** The most lines of one list. @reason a large site's gate on one day */
export const MOST_LINES = 2000;
/** The longest list that is read, characters. @reason as many lines with long names, numbers and whatever stands beside them */
export const LONGEST_ASKED = 400_000;
/** Characters of a line that are read. @reason longer than name and number in full */
const LONGEST_LINE = 400;
/** Cells of a line that are looked at. @reason name and number stand among the first columns */
const MOST_CELLS = 8;

/** What was found for a line. */
export type LineAnswer =
	| { readonly kind: 'one'; readonly person: ListRow }
	/** That many have this name: which one it is, the list does not say. */
	| { readonly kind: 'several'; readonly people: readonly ListRow[] }
	/** The number is one person's, the name another's. */
	| { readonly kind: 'two-people'; readonly people: readonly ListRow[] }
	| { readonly kind: 'not-found' };

/** One line of the list. */
export interface AskedLine {
	/** From 1, as it stood there. */
	readonly line: number;
	readonly text: string;
	readonly answer: LineAnswer;
	/** Whether one person is meant who is there and whose training is valid today. */
	readonly current: boolean;
}

/** What came of asking. */
export type ListAnswer =
	| {
			readonly kind: 'answered';
			/** Local day at the site. */
			readonly today: string;
			readonly lines: readonly AskedLine[];
			/** Lines that stood there before in the same words: they count once. */
			readonly repeated: number;
	  }
	| { readonly kind: 'refused'; readonly why: 'empty' | 'too-many' | 'too-long' };

/** A line, in the parts that are looked up. */
interface ReadLine {
	readonly line: number;
	readonly text: string;
	/** As numbers are kept; the whole line first. */
	readonly numbers: readonly string[];
	/** What stands first, where more stands behind it. */
	readonly leading: string | undefined;
	/** Keys of names; the whole line first. */
	readonly names: readonly string[];
}

/** @returns the cells of a line, whatever parts them, without the quotation marks of CSV. */
function cellsOf(text: string): readonly string[] {
	return text
		.split(/[\t;,|]/)
		.map((cell) => tidy(cell.replace(/^\s*"|"\s*$/g, '').replaceAll('""', '"')))
		.filter((cell) => cell !== '')
		.slice(0, MOST_CELLS);
}

function readLine(line: number, cells: readonly string[]): ReadLine {
	const whole = cells.join(' ');
	// A first and a last name may stand in two columns, in either order.
	const pairs = cells.slice(1).map((cell, i) => `${cells[i] ?? ''} ${cell}`);
	return {
		line,
		text: cells.join(', '),
		numbers: [...new Set([whole, ...cells].map(tidyNumber))],
		leading: cells.length > 1 ? cells[0] : undefined,
		names: [...new Set([whole, ...cells, ...pairs].map(keyOfName))].filter((key) => key !== '')
	};
}

/** @returns the lines with something in them; the first is left out where it holds headings alone. */
function readLines(text: string): readonly ReadLine[] {
	const lines = text
		.replace(/^\ufeff/, '')
		.split(/\r\n|\n|\r/)
		.map((one, i) => ({ line: i + 1, cells: cellsOf(one.slice(0, LONGEST_LINE)) }))
		.filter(({ cells }) => cells.length > 0);
	const headed = lines[0]?.cells.every(isHeading) === true && lines.length > 1;
	return (headed ? lines.slice(1) : lines).map(({ line, cells }) => readLine(line, cells));
}

/** Whether the first column counts the lines: nobody's number is meant by it. */
function isCounted(lines: readonly ReadLine[]): boolean {
	const first = Number(lines[0]?.leading);
	return lines.length > 1 && lines.every(({ leading }, i) => leading !== undefined && /^\d{1,9}$/.test(leading) && Number(leading) === first + i);
}

/** @returns each line once, as it stood there first. */
function unlikeLines(lines: readonly ReadLine[]): readonly ReadLine[] {
	const before = new Set<string>();
	return lines.filter(({ text }) => {
		const key = text.toLowerCase();
		if (before.has(key)) return false;
		before.add(key);
		return true;
	});
}

/** What the lines are held against: everything that they may name, asked for at once. */
interface Known {
	readonly byNumber: ReadonlyMap<string, ListedTraining>;
	readonly byName: ReadonlyMap<string, readonly ListedTraining[]>;
}

/** Whom a line means. */
interface Meant {
	readonly kind: LineAnswer['kind'];
	readonly people: readonly ListedTraining[];
}

/** @param counted whether the first column counts the lines */
function meant({ numbers, names, leading }: ReadLine, { byNumber, byName }: Known, counted: boolean): Meant {
	const named = names.map((key) => byName.get(key)).find((people) => people !== undefined) ?? [];
	const numbered = numbers.flatMap((number) => byNumber.get(number) ?? []);
	const isNamed = ({ id }: ListedTraining): boolean => named.some((one) => one.id === id);
	// A column that only counts the lines may look like somebody's number: the one who is named too comes first.
	const one = numbered.find(isNamed) ?? numbered.find(({ number }) => !counted || number !== leading);
	if (one !== undefined) {
		return named.length > 0 && !isNamed(one) ? { kind: 'two-people', people: [one, ...inOrder(named)] } : { kind: 'one', people: [one] };
	}
	if (named.length === 0) return { kind: 'not-found', people: [] };
	return { kind: named.length === 1 ? 'one' : 'several', people: inOrder(named) };
}

/** People of one name: those who are there first, then by number. */
function inOrder(people: readonly ListedTraining[]): readonly ListedTraining[] {
	return people.toSorted((a, b) => Number(a.gone) - Number(b.gone) || (a.number ?? '').localeCompare(b.number ?? '', 'en'));
}

/**
 * Holds a list against the learners of an employer's organisation. A number counts as it is kept, a name in any order
 * of its words, without accents and capitals. Asked in as many questions as 500 values a time make, however long the list.
 */
export async function askList(db: Database, employer: Person, text: string, now: Date): Promise<ListAnswer> {
	if (text.length > LONGEST_ASKED) return { kind: 'refused', why: 'too-long' };
	const read = readLines(text);
	if (read.length === 0) return { kind: 'refused', why: 'empty' };
	if (read.length > MOST_LINES) return { kind: 'refused', why: 'too-many' };
	const unlike = unlikeLines(read);
	const counted = isCounted(read);
	const { organisation } = employer;
	const known: Known = {
		byNumber: await trainingByNumber(db, organisation, [...new Set(unlike.flatMap(({ numbers }) => numbers))]),
		byName: await trainingByName(db, organisation, [...new Set(unlike.flatMap(({ names }) => names))])
	};
	const days = await stateDaysOf(db, organisation, now);
	const found = unlike.map((line) => ({ line, meant: meant(line, known, counted) }));
	const people = new Map(found.flatMap(({ meant: { people: some } }) => some.map((one) => [one.id, one])));
	const rows = new Map((await listRows(db, organisation, [...people.values()], days)).map((row) => [row.id, row]));
	const lines = found.map(({ line, meant: { kind, people: some } }): AskedLine => {
		const listed = some.flatMap(({ id }) => rows.get(id) ?? []);
		const [first] = listed;
		const answer: LineAnswer = kind === 'one' && first !== undefined ? { kind, person: first } : kind === 'several' || kind === 'two-people' ? { kind, people: listed } : { kind: 'not-found' };
		return { line: line.line, text: line.text, answer, current: answer.kind === 'one' && isCurrent(answer.person) };
	});
	return { kind: 'answered', today: days.today, lines, repeated: read.length - unlike.length };
}

/** Whether somebody is there and the training is valid today. */
function isCurrent({ gone, state }: ListRow): boolean {
	return !gone && (state === 'current' || state === 'expires-soon');
}
