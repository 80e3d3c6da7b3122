/**
 * Reading a quantity as people type it. Whatever cannot be read is named as such, and whatever
 * can be read in two ways becomes a question: an unreadable entry is never a wrong answer.
 */
import { dimensionOf, toSI, UNITS } from './unit.ts';
import type { UnitId } from './unit.ts';
import { sameDimension } from './dimension.ts';
import type { Language } from './language.ts';
import { nextNumber, scanNumber } from './numeral.ts';
import type { DecimalNumeral, Numeral, Scan } from './numeral.ts';
import { plainText } from './plain-text.ts';
import { markSquares, unitOfWord } from './unit-words.ts';

/** Longest entry that is looked at, in UTF-16 code units; longer ones are refused unread. */
export const LONGEST_ENTRY = 80;

export interface ReadOptions {
	/** The unit that a bare number is in; its dimension is the one that is asked for. */
	readonly expected: UnitId;
	readonly language: Language;
	/** Feet and inches are asked for: `14-4` and `14 4` are then 14 ft 4 in without a question. */
	readonly compound?: boolean;
}

/** How a quantity was written; numbers here carry no sign. */
export type Written =
	| Numeral
	| {
			readonly style: 'compound';
			readonly major: number;
			readonly majorUnit: UnitId;
			readonly minor: number;
			readonly minorUnit: UnitId;
			/** The minor part is a whole major unit or more, as in 5′ 14″. */
			readonly overflow: boolean;
			/** How the minor part was written: 6, 6.5 or 6½. */
			readonly minorNumeral: Numeral;
	  };

export interface ReadQuantity {
	readonly kind: 'read';
	/** SI value (m, kg, N, …). */
	readonly si: number;
	/** The unit that was typed, or else the expected one; the major unit of a compound. */
	readonly unit: UnitId;
	/** The number in `unit`. */
	readonly value: number;
	readonly unitGiven: boolean;
	/** Digits behind the decimal mark of the last number typed; 0 for a fraction. */
	readonly decimals: number;
	/** SI size of the last place typed: 0.01 m for `5.30 m`, half an inch for `6½ in`. */
	readonly step: number;
	readonly written: Written;
}

export type QuestionReason = 'thousands-or-decimal' | 'feet-inches-or-decimal' | 'centimetres-or-decimal';

export type UnreadableReason =
	| 'empty'
	| 'too-long'
	| 'no-number'
	| 'text-before-number'
	| 'malformed-number'
	| 'two-numbers'
	| 'calculation'
	| 'unknown-unit'
	| 'wrong-dimension'
	| 'not-finite';

export interface Question {
	readonly kind: 'question';
	readonly reason: QuestionReason;
	readonly readings: readonly [ReadQuantity, ReadQuantity];
}

export interface Unreadable {
	readonly kind: 'unreadable';
	readonly reason: UnreadableReason;
	/** The piece of the entry that is meant, as it was understood; at most LONGEST_ENTRY long. */
	readonly part?: string;
	/** The unit that was typed, where it measures another kind of thing. */
	readonly unit?: UnitId;
}

export type Reading = ReadQuantity | Question | Unreadable;

/** Words and marks that join feet and inches: 6 ft, 6 in; 6′-6″; 6 pies y 6 pulgadas. */
const CONNECTOR = / ?(?:[,&-]|(?<![a-z])(?:and|y|con))$/i;
const OPERATOR = /(?:[+*×÷=/]|(?<![a-z])x)$/i;
const NOT_A_NUMBER = /^[+-]? ?(?:nan|inf|infinity|infinito|∞)(?![a-z])/i;

function unreadable(reason: UnreadableReason, part?: string, unit?: UnitId): Unreadable {
	return {
		kind: 'unreadable',
		reason,
		...(part === undefined ? {} : { part: part.slice(0, LONGEST_ENTRY) }),
		...(unit === undefined ? {} : { unit })
	};
}

function decimalsOf(numeral: Numeral): number {
	return numeral.style === 'decimal' ? Math.max(0, numeral.fraction.length - numeral.exponent) : 0;
}

/** The last place typed, in the unit of the number. */
function placeOf(numeral: Numeral): number {
	if (numeral.style === 'fraction') return 1 / numeral.denominator;
	return Number(`1e${String(numeral.exponent - numeral.fraction.length)}`);
}

function withoutMinusZero(x: number): number {
	return x === 0 ? 0 : x;
}

function simple(sign: number, numeral: Numeral, unit: UnitId, unitGiven: boolean): ReadQuantity | Unreadable {
	const value = withoutMinusZero(sign * numeral.value);
	const si = toSI(value, unit);
	if (!Number.isFinite(si)) return unreadable('not-finite');
	const step = toSI(placeOf(numeral), unit);
	return { kind: 'read', si, unit, value, unitGiven, decimals: decimalsOf(numeral), step, written: numeral };
}

/** How many minor units make a major one; exact for the pairs that people use. */
function ratio(major: UnitId, minor: UnitId): number {
	return (UNITS[major].times * UNITS[minor].over) / (UNITS[major].over * UNITS[minor].times);
}

function compound(
	sign: number,
	major: Numeral,
	majorUnit: UnitId,
	minor: Numeral,
	minorUnit: UnitId,
	unitGiven: boolean
): ReadQuantity | Unreadable {
	const perMajor = ratio(majorUnit, minorUnit);
	// Summed in minor units first: 5 ft 6 in is then 66 in, and 1.6764 m to the last bit.
	const total = withoutMinusZero(sign * (major.value * perMajor + minor.value));
	const si = toSI(total, minorUnit);
	if (!Number.isFinite(si)) return unreadable('not-finite');
	return {
		kind: 'read',
		si,
		unit: majorUnit,
		value: total / perMajor,
		unitGiven,
		decimals: decimalsOf(minor),
		step: toSI(placeOf(minor), minorUnit),
		written: {
			style: 'compound',
			major: major.value,
			majorUnit,
			minor: minor.value,
			minorUnit,
			overflow: minor.value >= perMajor,
			minorNumeral: minor
		}
	};
}

function question(
	reason: QuestionReason,
	first: ReadQuantity | Unreadable,
	second: ReadQuantity | Unreadable
): Reading {
	if (first.kind === 'unreadable') return first;
	if (second.kind === 'unreadable') return second;
	return { kind: 'question', reason, readings: [first, second] };
}

/** Whether the number is written with digits alone: no mark, grouping, exponent or fraction. */
function isBareInteger(numeral: Numeral): numeral is DecimalNumeral {
	return numeral.style === 'decimal' && numeral.mark === null && !numeral.grouped && numeral.exponent === 0;
}

/** `5` and `30` put together to 5.30. */
function joined(whole: DecimalNumeral, digits: DecimalNumeral): DecimalNumeral {
	const fraction = digits.whole;
	return { ...whole, value: Number(`${whole.whole}.${fraction}`), fraction, mark: '.' };
}

/** The whole number meant by the first of two: a thousands mark, if it can be either. */
function asMajor(scan: Exclude<Scan, { kind: 'malformed' }>): Numeral | null {
	const numeral = scan.kind === 'one' ? scan.numeral : scan.thousands;
	const isWhole = numeral.style === 'decimal' && numeral.fraction === '' && numeral.exponent === 0;
	return isWhole ? numeral : null;
}

function asMinor(scan: Exclude<Scan, { kind: 'malformed' }>): Numeral {
	return scan.kind === 'one' ? scan.numeral : scan.decimal;
}

/** Two numbers of which the first has no unit: 14-4, 14 4, 14-4 ft, 14-4″. */
function readBarePair(
	sign: number,
	major: Numeral,
	minor: Numeral,
	lastUnit: UnitId | null,
	options: ReadOptions
): Reading | null {
	if (options.expected !== 'ft' || minor.value >= 12) return null;
	// A whole number and a fraction of inches that is not a mixed number: 6 7/2 has no meaning.
	if (minor.style === 'fraction' && minor.whole === 0) return null;
	if (lastUnit !== null && lastUnit !== 'in' && lastUnit !== 'ft') return null;
	const unitGiven = lastUnit !== null;
	const feetAndInches = compound(sign, major, 'ft', minor, 'in', unitGiven);
	// Nobody takes a fraction from a whole number: 14-4 1/2 is how a drawing writes feet and inches.
	if (options.compound === true || lastUnit === 'in' || minor.style === 'fraction') return feetAndInches;
	if (!isBareInteger(major) || !isBareInteger(minor)) return null;
	return question('feet-inches-or-decimal', feetAndInches, simple(sign, joined(major, minor), 'ft', unitGiven));
}

/** A bare number behind metres: 5m30 is 5.30 m, 5m305 is 5.305 m, 5m3 is asked about. */
function readAfterMetres(sign: number, major: Numeral, minor: Numeral): Reading | null {
	if (!isBareInteger(major) || !isBareInteger(minor)) return null;
	const digits = minor.whole.length;
	if (digits === 2) return compound(sign, major, 'm', minor, 'cm', true);
	if (digits === 3) return compound(sign, major, 'm', minor, 'mm', true);
	if (digits !== 1) return null;
	return question(
		'centimetres-or-decimal',
		compound(sign, major, 'm', minor, 'cm', true),
		simple(sign, joined(major, minor), 'm', true)
	);
}

function readPair(
	sign: number,
	major: Numeral,
	minor: Numeral,
	majorText: string,
	minorText: string,
	options: ReadOptions
): Reading | null {
	const expected = dimensionOf(options.expected);
	const minorUnit = minorText === '' ? null : unitOfWord(minorText, expected);
	if (minorText !== '' && minorUnit === null) return null;
	if (majorText === '') return readBarePair(sign, major, minor, minorUnit, options);

	const majorUnit = unitOfWord(majorText, expected);
	if (majorUnit === null) return null;
	if (!sameDimension(dimensionOf(majorUnit), expected)) return unreadable('wrong-dimension', majorText, majorUnit);
	if (minorUnit === null) {
		if (majorUnit === 'ft') return compound(sign, major, 'ft', minor, 'in', true);
		if (majorUnit === 'min') return compound(sign, major, 'min', minor, 's', true);
		return majorUnit === 'm' ? readAfterMetres(sign, major, minor) : null;
	}
	const isSmaller =
		sameDimension(dimensionOf(majorUnit), dimensionOf(minorUnit)) && toSI(1, minorUnit) < toSI(1, majorUnit);
	return isSmaller ? compound(sign, major, majorUnit, minor, minorUnit, true) : null;
}

function readOne(sign: number, scan: Exclude<Scan, { kind: 'malformed' }>, unitText: string, options: ReadOptions): Reading {
	const expected = dimensionOf(options.expected);
	const typed = unitText === '' ? null : unitOfWord(unitText, expected);
	if (unitText !== '' && typed === null) return unreadable('unknown-unit', unitText);
	const unit = typed ?? options.expected;
	if (!sameDimension(dimensionOf(unit), expected)) return unreadable('wrong-dimension', unitText, unit);
	if (scan.kind === 'one') return simple(sign, scan.numeral, unit, typed !== null);
	return question(
		'thousands-or-decimal',
		simple(sign, scan.decimal, unit, typed !== null),
		simple(sign, scan.thousands, unit, typed !== null)
	);
}

/**
 * Reads a quantity in any of the ways that people type one: `14.3`, `14.3 ft`, `14' 4"`,
 * `14 ft 4 in`, `6½ ft`, `5,3 m`, `5m30`, `1 234,5 N`, words in English or Spanish. Negative
 * numbers are read as numbers. `1,234` (in Spanish `1.234` too) and, where decimal feet are
 * asked for, `14-4` come back as a question with both readings.
 *
 * Never throws, whatever the text; texts over LONGEST_ENTRY are refused without being looked at.
 */
export function readQuantity(text: string, options: ReadOptions): Reading {
	if (text.length > LONGEST_ENTRY) return unreadable('too-long');
	const all = markSquares(plainText(text), dimensionOf(options.expected));
	if (all === '') return unreadable('empty');
	const plain = all.replace(/^[=~≈] ?/, '');
	if (NOT_A_NUMBER.test(plain)) return unreadable('not-finite', plain);

	const signText = /^[+-] ?/.exec(plain)?.[0] ?? '';
	const sign = signText.startsWith('-') ? -1 : 1;
	const start = nextNumber(plain, signText.length);
	if (start < 0) return unreadable('no-number', plain);
	if (start > signText.length) return unreadable('text-before-number', plain.slice(0, start).trim());

	const first = scanNumber(plain, start, options.language);
	if (first.kind === 'malformed') return unreadable('malformed-number', plain.slice(start, first.end));
	const next = nextNumber(plain, first.end);
	if (next < 0) return readOne(sign, first, plain.slice(first.end).trim(), options);

	const between = plain.slice(first.end, next).trim();
	if (OPERATOR.test(between)) return unreadable('calculation', plain);
	const second = scanNumber(plain, next, options.language);
	if (second.kind === 'malformed') return unreadable('malformed-number', plain.slice(next, second.end));
	const rest = plain.slice(second.end).trim();
	const major = asMajor(first);
	const pair =
		major === null
			? null
			: readPair(sign, major, asMinor(second), between.replace(CONNECTOR, '').trim(), rest, options);
	return pair ?? unreadable('two-numbers', plain);
}

/**
 * What a decimal number of feet would be if its decimals had been meant as inches: 5.6 is then
 * 5 ft 6 in, 5.11 is 5 ft 11 in. In metres; null where the entry is not of that form.
 */
export function decimalsAsInches(read: ReadQuantity): number | null {
	const { written } = read;
	if (read.unit !== 'ft' || written.style !== 'decimal' || written.exponent !== 0) return null;
	if (!/^\d{1,2}$/.test(written.fraction)) return null;
	const inches = Number(written.fraction);
	if (inches === 0 || inches > 11) return null;
	const total = Number(written.whole === '' ? '0' : written.whole) * 12 + inches;
	return toSI(read.value < 0 ? -total : total, 'in');
}
