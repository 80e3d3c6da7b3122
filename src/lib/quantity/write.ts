/**
 * Writing a quantity back: in decimals or in feet and inches, in English or Spanish. Everything
 * written here is read back by `readQuantity` as the same quantity.
 *
 * `Intl` is not used: its output depends on the data that a Node or browser ships with.
 */
import { decimalText, inParts } from './decimal.ts';
import type { Rounding } from './decimal.ts';
import type { Language } from './language.ts';
import type { ReadQuantity } from './read.ts';
import { fromSI, toSI } from './unit.ts';
import type { UnitId } from './unit.ts';
import { unitSymbol } from './unit-words.ts';

/** Stands between number and unit, and between feet and inches, so that no line breaks there. */
export const NO_BREAK_SPACE = '\u00a0';
const GROUP_SPACE = '\u202f';
const MINUS = '\u2212';
const FOOT = '\u2032';
const INCH = '\u2033';
const FRACTION_SLASH = '\u2044';

/** Parts of an inch that are written: whole, halves, quarters, eighths, sixteenths. */
export type InchDenominator = 1 | 2 | 4 | 8 | 16;

export type WrittenUnit = UnitId | 'ft-in';

export interface WriteOptions {
	readonly unit: WrittenUnit;
	readonly language: Language;
	/** Digits behind the decimal mark, 0 to 9; by default `usualDecimals(unit)`. Not for ft-in. */
	readonly decimals?: number;
	/** Finest part of an inch for ft-in; 1 by default. */
	readonly inchDenominator?: InchDenominator;
	/** `nearest` by default; physics.md 11 rounds a result away from danger. */
	readonly round?: Rounding;
	/** Whether the unit follows; true by default. Feet and inches always carry their marks. */
	readonly withUnit?: boolean;
}

/** Display digits of physics.md 11: ft to 0.1, m to 0.01, kN to 0.1; others common practice, no source. */
const USUAL_DECIMALS: Readonly<Partial<Record<UnitId, number>>> = {
	m: 2,
	ft: 1,
	in: 1,
	cm: 1,
	km: 2,
	yd: 1,
	m2: 2,
	ft2: 1,
	t: 2,
	kN: 1,
	s: 2,
	min: 1,
	'm/s': 1,
	'km/h': 1,
	'ft/s': 1,
	mph: 1,
	'm/s2': 1,
	'ft/s2': 1,
	gn: 1,
	kJ: 2,
	'kN/m': 1,
	'1': 2
};

/** How many decimals a unit is shown with unless asked otherwise. */
export function usualDecimals(unit: UnitId): number {
	return USUAL_DECIMALS[unit] ?? 0;
}

const FRACTION_SIGNS: Readonly<Record<string, string>> = {
	'1/2': '½',
	'1/4': '¼',
	'3/4': '¾',
	'1/8': '⅛',
	'3/8': '⅜',
	'5/8': '⅝',
	'7/8': '⅞'
};

/** Thin spaces from five digits on, as SI has it: a comma or point could be taken for decimals. */
function grouped(whole: string): string {
	return whole.length < 5 ? whole : whole.replace(/\B(?=(?:\d{3})+$)/g, GROUP_SPACE);
}

function localNumber(text: string, language: Language): string {
	const negative = text.startsWith('-');
	const [whole = '0', fraction] = (negative ? text.slice(1) : text).split('.');
	const mark = language === 'es' ? ',' : '.';
	return (negative ? MINUS : '') + grouped(whole) + (fraction === undefined ? '' : mark + fraction);
}

function fractionText(parts: number, denominator: number): string {
	let numerator = parts;
	let lowest = denominator;
	while (numerator % 2 === 0 && lowest > 1) {
		numerator /= 2;
		lowest /= 2;
	}
	const plain = `${String(numerator)}/${String(lowest)}`;
	return FRACTION_SIGNS[plain] ?? NO_BREAK_SPACE + plain.replace('/', FRACTION_SLASH);
}

/** `14′ 4½″`; a fraction that has no sign of its own is `4 3⁄16″`. */
function feetAndInches(si: number, denominator: InchDenominator, rounding: Rounding): string {
	const parts = inParts(fromSI(si, 'in'), denominator, rounding);
	const size = Math.abs(parts);
	const feet = Math.floor(size / (12 * denominator));
	const rest = size - feet * 12 * denominator;
	const inches = Math.floor(rest / denominator);
	const fraction = rest - inches * denominator;
	const inchText = String(inches) + (fraction === 0 ? '' : fractionText(fraction, denominator));
	return `${parts < 0 ? MINUS : ''}${decimalText(feet, 0, 'nearest')}${FOOT}${NO_BREAK_SPACE}${inchText}${INCH}`;
}

function withSymbol(number: string, unit: UnitId, language: Language): string {
	const symbol = unitSymbol(unit, language);
	if (symbol === '') return number;
	if (language === 'es' && number === '1' && symbol.startsWith('pies')) {
		return `${number}${NO_BREAK_SPACE}${symbol.replace('pies', 'pie')}`;
	}
	return `${number}${NO_BREAK_SPACE}${symbol}`;
}

/**
 * Writes an SI value in a unit: `writeQuantity(4.3688, { unit: 'ft-in', language: 'en' })` is
 * `14′ 4″`, `writeQuantity(5.3, { unit: 'm', language: 'es' })` is `5,30 m`. Minus is `−`, digits
 * are grouped by narrow spaces from five on, Spanish has a decimal comma.
 * @param si SI value; must be finite
 * @throws RangeError for a value that is not finite or decimals outside 0 to 9
 */
export function writeQuantity(si: number, options: WriteOptions): string {
	const { unit, language, round = 'nearest', withUnit = true } = options;
	if (!Number.isFinite(si)) throw new RangeError(`A quantity to be written must be finite, not ${String(si)}.`);
	if (unit === 'ft-in') return feetAndInches(si, options.inchDenominator ?? 1, round);
	const value = fromSI(si, unit);
	if (!Number.isFinite(value)) throw new RangeError(`${String(si)} is too large to be written in ${unit}.`);
	const decimals = options.decimals ?? usualDecimals(unit);
	if (!Number.isInteger(decimals) || decimals < 0 || decimals > 9) {
		throw new RangeError(`Decimals must be a whole number from 0 to 9, not ${String(decimals)}.`);
	}
	const number = localNumber(decimalText(value, decimals, round), language);
	return withUnit ? withSymbol(number, unit, language) : number;
}

/**
 * What a `writeQuantity` with these options can differ from the true value by at most half of
 * (nearest) or all of (up, down): the size of its last place, in SI.
 */
export function lastPlace(options: Pick<WriteOptions, 'unit' | 'decimals' | 'inchDenominator'>): number {
	if (options.unit === 'ft-in') return toSI(1 / (options.inchDenominator ?? 1), 'in');
	return toSI(Number(`1e-${String(options.decimals ?? usualDecimals(options.unit))}`), options.unit);
}

/** The finest denominator that shows a fraction of an inch as it was typed, or null. */
function inchDenominatorOf(inches: number): InchDenominator | null {
	for (const denominator of [1, 2, 4, 8, 16] as const) {
		if (Number.isInteger(inches * denominator)) return denominator;
	}
	return null;
}

/**
 * What was understood, for "You entered …": in the unit typed, with the decimals typed; feet and
 * inches as such. The two readings of a question never echo alike.
 */
export function echoQuantity(read: ReadQuantity, language: Language): string {
	const { written, unit, si } = read;
	if (written.style === 'compound') {
		const inches = written.majorUnit === 'ft' && written.minorUnit === 'in';
		const inchDenominator = inches ? inchDenominatorOf(written.minor) : null;
		if (inchDenominator !== null) return writeQuantity(si, { unit: 'ft-in', inchDenominator, language });
	}
	const decimals = written.style === 'decimal' ? Math.min(read.decimals, 9) : 3;
	const text = writeQuantity(si, { unit, decimals, language, withUnit: false });
	const mark = language === 'es' ? ',' : '.';
	// A fraction or a compound has no decimals of its own: the zeros behind them are not echoed.
	const trimmed =
		written.style === 'decimal' || !text.includes(mark) ? text : text.replace(/0+$/, '').replace(/[.,]$/, '');
	return withSymbol(trimmed, unit, language);
}
