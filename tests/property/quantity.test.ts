/** Sentences about quantities that hold for every input. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { UNIT_IDS, decimalText, echoQuantity, fromSI, lastPlace, readQuantity, toSI, writeQuantity } from '#lib/quantity/index.ts';
import type { Reading, WriteOptions } from '#lib/quantity/index.ts';

const language = fc.constantFrom('en', 'es');
const rounding = fc.constantFrom('nearest', 'up', 'down');
const unit = fc.constantFrom(...UNIT_IDS);
const magnitude = fc.double({ min: -100_000, max: 100_000, noNaN: true });
const inchDenominator = fc.constantFrom(1, 2, 4, 8, 16);

/** What people's fingers and clipboards produce: digits, marks, units, and rubbish between. */
const entry = fc.oneof(
	fc.string({ unit: 'binary', maxLength: 90 }),
	fc
		.array(
			fc.constantFrom(
				...['0', '1', '4', '12', '234', '.', ',', ' ', '\u00a0', "'", '"', '’', '″', '½', '/', '-', '−', '+', 'e', 'x'],
				...['ft', 'in', 'm', 'cm', 'kg', 'lb', 'kN', 'pies', 'y', 'and', '²', '%', '９', '１', '\ud800', '\u200b', '∞']
			),
			{ maxLength: 14 }
		)
		.map((parts) => parts.join(''))
);

/** Every way that a reading offers to take the text. */
function values(reading: Reading): number[] {
	if (reading.kind === 'read') return [reading.si];
	return reading.kind === 'question' ? reading.readings.map((r) => r.si) : [];
}

describe('reading', () => {
	test('never throws and never gives a number that is not finite, for any text', () => {
		fc.assert(
			fc.property(entry, unit, language, fc.boolean(), (text, expected, lang, compound) => {
				const reading = readQuantity(text, { expected, language: lang, compound });
				if (reading.kind === 'unreadable') return;
				const all = reading.kind === 'read' ? [reading] : reading.readings;
				for (const one of all) {
					expect(Number.isFinite(one.si) && Number.isFinite(one.value)).toBe(true);
					expect(Object.is(one.si, -0)).toBe(false);
					expect(Math.abs(toSI(one.value, one.unit) - one.si)).toBeLessThanOrEqual(1e-12 * Math.abs(one.si));
					expect(one.step).toBeGreaterThanOrEqual(0);
				}
			}),
			{ numRuns: 5000, seed: 1 }
		);
	});

	test('the two readings of a question differ, and so do their echoes', () => {
		const digits = fc.integer({ min: 1, max: 999 });
		const three = fc.integer({ min: 0, max: 999 }).map((n) => String(n).padStart(3, '0'));
		fc.assert(
			fc.property(digits, three, fc.constantFrom(',', '.'), language, unit, (a, b, mark, lang, expected) => {
				const reading = readQuantity(`${String(a)}${mark}${b}`, { expected, language: lang });
				if (lang === 'en' && mark === '.') {
					expect(reading.kind).toBe('read');
					return;
				}
				if (reading.kind !== 'question') throw new Error(reading.kind);
				const [first, second] = reading.readings;
				expect(first.value).toBe(Number(`${String(a)}.${b}`));
				expect(second.value).toBe(Number(`${String(a)}${b}`));
				expect(echoQuantity(first, lang)).not.toBe(echoQuantity(second, lang));
			}),
			{ numRuns: 500, seed: 2 }
		);
	});

	test('typographic marks, spaces and full-width characters read as their plain ones', () => {
		const plain = fc.tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 11 }));
		const feet = fc.constantFrom("'", '’', '′', '´', ' ft ', ' FT. ', 'pies', ' feet ');
		const inch = fc.constantFrom('"', '”', '″', "''", ' in', 'in.', ' pulgadas', '');
		fc.assert(
			fc.property(plain, feet, inch, fc.constantFrom('', ' ', '\u00a0', '-'), language, ([f, i], foot, inches, gap, lang) => {
				const reading = readQuantity(`${String(f)}${foot}${gap}${String(i)}${inches}`, { expected: 'ft', language: lang });
				expect(values(reading)).toEqual([toSI(f * 12 + i, 'in')]);
			}),
			{ numRuns: 500, seed: 3 }
		);
	});
});

describe('writing', () => {
	function roundTrip(si: number, options: WriteOptions): void {
		const text = writeQuantity(si, options);
		const expected = options.unit === 'ft-in' ? 'ft' : options.unit;
		const reading = readQuantity(text, { expected, language: options.language });
		const place = lastPlace(options);
		const most = (options.round === 'nearest' ? 0.5 : 1) * place + 1e-9 * Math.abs(si) + 1e-9 * place;
		const found = values(reading).filter((value) => Math.abs(value - si) <= most);
		expect(found.length, `${text} of ${String(si)}`).toBeGreaterThan(0);
		// Three decimals look like a group of three where the decimal mark may also be the other's.
		if (reading.kind !== 'read') {
			expect(options.decimals).toBe(3);
			expect(options.language).toBe('es');
		}
		// What was read, written again the same way, is the same text.
		const again = found[0] ?? Number.NaN;
		expect(writeQuantity(again, { ...options, round: 'nearest' })).toBe(text);
	}

	test('what is written in decimals is read back, in every unit, language and rounding', () => {
		const decimals = fc.integer({ min: 0, max: 6 });
		fc.assert(
			fc.property(magnitude, unit, language, decimals, rounding, fc.boolean(), (x, u, lang, d, round, withUnit) => {
				roundTrip(toSI(x, u), { unit: u, language: lang, decimals: d, round, withUnit });
			}),
			{ numRuns: 5000, seed: 4 }
		);
	});

	test('what is written in feet and inches is read back', () => {
		fc.assert(
			fc.property(magnitude, language, inchDenominator, rounding, (si, lang, denominator, round) => {
				roundTrip(si, { unit: 'ft-in', language: lang, inchDenominator: denominator, round });
			}),
			{ numRuns: 2000, seed: 5 }
		);
	});

	test('feet and inches never show twelve inches', () => {
		fc.assert(
			fc.property(magnitude, inchDenominator, rounding, (si, denominator, round) => {
				const text = writeQuantity(si, { unit: 'ft-in', language: 'en', inchDenominator: denominator, round });
				const inches = /′\u00a0(\d+)/.exec(text)?.[1];
				expect(Number(inches)).toBeLessThan(12);
				expect(text).not.toMatch(/^−0′\u00a00″/);
			}),
			{ numRuns: 1000, seed: 6 }
		);
	});

	test('up is never below, down never above, nearest within half a place', () => {
		fc.assert(
			fc.property(magnitude, fc.integer({ min: 0, max: 6 }), (x, places) => {
				const place = Number(`1e-${String(places)}`);
				const noise = 1e-9 * Math.abs(x) + 1e-9 * place;
				const up = Number(decimalText(x, places, 'up'));
				const down = Number(decimalText(x, places, 'down'));
				const nearest = Number(decimalText(x, places, 'nearest'));
				expect(up).toBeGreaterThanOrEqual(x - noise);
				expect(up).toBeLessThan(x + place + noise);
				expect(down).toBeLessThanOrEqual(x + noise);
				expect(down).toBeGreaterThan(x - place - noise);
				expect(Math.abs(nearest - x)).toBeLessThanOrEqual(place / 2 + noise);
			}),
			{ numRuns: 2000, seed: 7 }
		);
	});

	test('a decimal of up to twelve digits rounds as its digits do on paper', () => {
		const digits = fc.bigInt({ min: -999_999_999_999n, max: 999_999_999_999n });
		fc.assert(
			fc.property(digits, fc.integer({ min: 1, max: 6 }), fc.integer({ min: 0, max: 5 }), (n, scale, fewer) => {
				const keep = Math.max(0, scale - fewer);
				const divisor = 10n ** BigInt(scale - keep);
				const size = n < 0n ? -n : n;
				// Whole numbers only: half of the divisor is added before it is cut off.
				const kept = (2n * size + divisor) / (2n * divisor);
				const text = kept.toString().padStart(keep + 1, '0');
				const point = keep === 0 ? text : `${text.slice(0, -keep)}.${text.slice(-keep)}`;
				const typed = Number(`${n.toString()}e-${String(scale)}`);
				expect(decimalText(typed, keep, 'nearest')).toBe(n < 0n && kept !== 0n ? `-${point}` : point);
			}),
			{ numRuns: 5000, seed: 8 }
		);
	});
});

describe('units', () => {
	test('conversions invert each other', () => {
		fc.assert(
			fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e100, max: 1e100 }), unit, (x, u) => {
				const tolerance = 1e-15 * Math.abs(x) + Number.MIN_VALUE * 1e20;
				expect(Math.abs(fromSI(toSI(x, u), u) - x)).toBeLessThanOrEqual(tolerance);
				expect(Math.abs(toSI(fromSI(x, u), u) - x)).toBeLessThanOrEqual(tolerance);
			}),
			{ numRuns: 3000, seed: 9 }
		);
	});
});
