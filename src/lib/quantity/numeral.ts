/**
 * Unsigned numbers as people write them: 14.3, 5,3, .5, 5., 1 234,5, 1,234.5, 6 1/2, 1e3.
 * A mark that may be a decimal mark or a thousands mark gives two readings instead of a guess.
 */
import type { Language } from './language.ts';

/** One way to read a number, with how it was written. */
export type Numeral =
	| {
			readonly style: 'decimal';
			readonly value: number;
			/** Digits before and after the decimal mark, as typed, without grouping. */
			readonly whole: string;
			readonly fraction: string;
			/** The decimal mark that was typed, if any. */
			readonly mark: '.' | ',' | null;
			/** Whether the digits were grouped in threes. */
			readonly grouped: boolean;
			/** Power of ten typed after an `e`. */
			readonly exponent: number;
	  }
	| {
			readonly style: 'fraction';
			readonly value: number;
			readonly whole: number;
			readonly numerator: number;
			readonly denominator: number;
	  };

export type DecimalNumeral = Extract<Numeral, { style: 'decimal' }>;

/** What stands at a place in a text: one reading, two, or digits that make no number. */
export type Scan =
	| { readonly kind: 'one'; readonly numeral: Numeral; readonly end: number }
	| {
			readonly kind: 'two';
			/** The mark taken as decimal mark, then the mark taken as thousands mark. */
			readonly decimal: DecimalNumeral;
			readonly thousands: DecimalNumeral;
			readonly end: number;
	  }
	| { readonly kind: 'malformed'; readonly end: number };

/** A number starts here: a digit, or a mark before a digit that does not end an abbreviation. */
const START = /\d|(?<![A-Za-z\d])[.,]\d/g;
const PLAIN_FRACTION = /(\d+) ?\/ ?(\d+)(?![\d.,])/y;
const MIXED_NUMBER = /(\d+)(?: ?- ?| )(\d+) ?\/ ?(\d+)(?![\d.,])/y;
const SPACED_GROUPS = /[1-9]\d{0,2}(?: \d{3})+(?![\d/]| ?\/)(?:[.,]\d+(?![\d.,]))?/y;
const MARKED = /(?:\d|[.,]\d)[\d.,]*/y;
const EXPONENT = /[eE]([+-]?\d+)(?![\d.,])/y;
const GROUPS_OF_THREE = /^[1-9]\d{0,2}$/;

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
	pattern.lastIndex = at;
	return pattern.exec(text);
}

/** Index of the next number in a plain text (see `plainText`), or -1. */
export function nextNumber(text: string, from: number): number {
	return match(START, text, from)?.index ?? -1;
}

function decimal(
	whole: string,
	fraction: string,
	mark: '.' | ',' | null,
	grouped: boolean,
	exponent: number
): DecimalNumeral {
	const value = Number(`${whole === '' ? '0' : whole}.${fraction === '' ? '0' : fraction}e${String(exponent)}`);
	return { style: 'decimal', value, whole, fraction, mark, grouped, exponent };
}

function fraction(whole: number, numerator: number, denominator: number): Numeral {
	const value = (whole * denominator + numerator) / denominator;
	return { style: 'fraction', value, whole, numerator, denominator };
}

function isGrouped(groups: readonly string[]): boolean {
	return groups.every((group, i) => (i === 0 ? GROUPS_OF_THREE.test(group) : group.length === 3));
}

/** Where a mark stands once: is it a decimal mark whatever the habit of the writer? */
function isSurelyDecimal(before: string, after: string): boolean {
	return after.length !== 3 || !GROUPS_OF_THREE.test(before);
}

type Interpretation = readonly [DecimalNumeral] | readonly [DecimalNumeral, DecimalNumeral] | null;

/** Reads digits with points and commas; null where they stand in no order that has a meaning. */
function interpretMarks(typed: string, exponent: number, hasExponent: boolean, language: Language): Interpretation {
	// A full stop or comma that ends the phrase: "5.30," is 5.30, but "5." stays a number of its own.
	const ended = /^(.*[.,].*)[.,]$/.exec(typed);
	const text = ended?.[1] ?? typed;
	const lastMark = Math.max(text.lastIndexOf('.'), text.lastIndexOf(','));
	if (lastMark < 0) return [decimal(text, '', null, false, exponent)];

	const mark = text.charAt(lastMark) === '.' ? '.' : ',';
	const other = mark === '.' ? ',' : '.';
	const before = text.slice(0, lastMark);
	const after = text.slice(lastMark + 1);

	if (before.includes(other)) {
		if (before.includes(mark)) return null;
		const groups = before.split(other);
		return isGrouped(groups) ? [decimal(groups.join(''), after, mark, true, exponent)] : null;
	}
	if (before.includes(mark)) {
		const groups = text.split(mark);
		return isGrouped(groups) ? [decimal(groups.join(''), '', null, true, exponent)] : null;
	}
	const asDecimal = decimal(before, after, mark, false, exponent);
	// English writes 1.234 for a decimal only; Spanish writes it for either, as it does 1,234.
	if (isSurelyDecimal(before, after) || hasExponent || (mark === '.' && language === 'en')) return [asDecimal];
	return [asDecimal, decimal(before + after, '', null, true, exponent)];
}

/**
 * Reads the number that starts at `at`.
 * @param text plain text, see `plainText`
 * @param at an index given by `nextNumber`
 */
export function scanNumber(text: string, at: number, language: Language): Scan {
	const mixed = match(MIXED_NUMBER, text, at);
	if (mixed) {
		const [all, whole = '', numerator = '', denominator = ''] = mixed;
		if (Number(numerator) < Number(denominator)) {
			const numeral = fraction(Number(whole), Number(numerator), Number(denominator));
			return { kind: 'one', numeral, end: at + all.length };
		}
	}
	const plain = match(PLAIN_FRACTION, text, at);
	if (plain) {
		const [all, numerator = '', denominator = ''] = plain;
		const numeral = fraction(0, Number(numerator), Number(denominator));
		return { kind: 'one', numeral, end: at + all.length };
	}
	const spaced = match(SPACED_GROUPS, text, at);
	if (spaced) {
		const [whole = '', after = ''] = spaced[0].replaceAll(' ', '').split(/[.,]/);
		const mark = spaced[0].includes('.') ? '.' : spaced[0].includes(',') ? ',' : null;
		return { kind: 'one', numeral: decimal(whole, after, mark, true, 0), end: at + spaced[0].length };
	}
	const marked = match(MARKED, text, at);
	if (!marked) return { kind: 'malformed', end: at + 1 };
	const power = match(EXPONENT, text, at + marked[0].length);
	const end = at + marked[0].length + (power?.[0].length ?? 0);
	const readings = interpretMarks(marked[0], Number(power?.[1] ?? 0), power !== null, language);
	if (readings === null) return { kind: 'malformed', end };
	const [first, second] = readings;
	if (second === undefined) return { kind: 'one', numeral: first, end };
	return { kind: 'two', decimal: first, thousands: second, end };
}
