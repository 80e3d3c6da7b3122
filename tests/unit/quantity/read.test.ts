/**
 * What people type. Sources of the forms: DESIGN 3 end, learning-and-records.md 9.2; forms beyond
 * those are common practice on site drawings and phones, no source.
 */
import { describe, expect, test } from 'vitest';
import { LONGEST_ENTRY, decimalsAsInches, echoQuantity, readQuantity, toSI, unitOfWord, FORCE, MASS } from '#lib/quantity/index.ts';
import type { Language, ReadOptions, ReadQuantity, UnitId } from '#lib/quantity/index.ts';

const FEET: ReadOptions = { expected: 'ft', language: 'en' };
const METRES: ReadOptions = { expected: 'm', language: 'en' };

function read(text: string, options: ReadOptions): ReadQuantity {
	const reading = readQuantity(text, options);
	if (reading.kind !== 'read') throw new Error(`"${text}": ${reading.kind}, ${reading.reason}`);
	return reading;
}

function feetInches(feet: number, inches: number): number {
	return toSI(feet * 12 + inches, 'in');
}

describe('one number', () => {
	test.each([
		['14.3', 14.3, 1],
		['14.3 ft', 14.3, 1],
		['14.3ft', 14.3, 1],
		['14.3 ft.', 14.3, 1],
		['14.3 feet', 14.3, 1],
		['14.3 foot', 14.3, 1],
		['14.3 pies', 14.3, 1],
		['14.3 FT', 14.3, 1],
		["14.3'", 14.3, 1],
		['14.3′', 14.3, 1],
		['.5', 0.5, 1],
		[',5', 0.5, 1],
		['5.', 5, 0],
		['5,', 5, 0],
		['5.30.', 5.3, 2],
		[' 5.30 ', 5.3, 2],
		['5,3', 5.3, 1],
		['5,30', 5.3, 2],
		['5,3000', 5.3, 4],
		['0,305', 0.305, 3],
		['0.305', 0.305, 3],
		['1234,567', 1234.567, 3],
		['1,234.5', 1234.5, 1],
		['1.234,5', 1234.5, 1],
		['1,234,567', 1234567, 0],
		['1.234.567,25', 1234567.25, 2],
		['1 234', 1234, 0],
		['1 234,5', 1234.5, 1],
		['1\u00a0234,5', 1234.5, 1],
		['1\u202f234.5', 1234.5, 1],
		['1\u2009234\u2009567', 1234567, 0],
		['１４．３', 14.3, 1],
		['１４，３　ｆｔ', 14.3, 1],
		['1e3', 1000, 0],
		['1.5E2', 150, 0],
		['1.234e-1', 0.1234, 4],
		['+3', 3, 0],
		['-3', -3, 0],
		['- 3', -3, 0],
		['−3', -3, 0],
		['–3.5', -3.5, 1],
		['— 3', -3, 0],
		['-0', 0, 0],
		['= 14.3', 14.3, 1],
		['≈14.3 ft', 14.3, 1],
		['\ufeff14.3\u200b', 14.3, 1],
		['14.3\tft\n', 14.3, 1]
	])('%j', (text, value, decimals) => {
		const reading = read(text, FEET);
		expect(reading.value).toBe(value);
		expect(Object.is(reading.value, -0)).toBe(false);
		expect(reading.si).toBe(toSI(value, 'ft'));
		expect(reading.unit).toBe('ft');
		expect(reading.decimals).toBe(decimals);
	});

	test.each([
		['6 1/2 ft', 6.5, 2],
		['6-1/2 ft', 6.5, 2],
		['6½ ft', 6.5, 2],
		['6 ½', 6.5, 2],
		['½', 0.5, 2],
		['1/2', 0.5, 2],
		['6¾', 6.75, 4],
		['6 3⁄16', 6.1875, 16],
		['7/2', 3.5, 2],
		['-6½', -6.5, 2]
	])('%j is a fraction', (text, value, denominator) => {
		const reading = read(text, FEET);
		expect(reading.value).toBe(value);
		expect(reading.written).toMatchObject({ style: 'fraction', denominator });
		expect(reading.step).toBe(toSI(1 / denominator, 'ft'));
	});

	test('says whether a unit was typed, and how the digits stood', () => {
		expect(read('14.30', FEET)).toMatchObject({ unitGiven: false, decimals: 2, step: toSI(0.01, 'ft') });
		expect(read('14.30 ft', FEET)).toMatchObject({ unitGiven: true });
		expect(read('1 234,50', FEET).written).toMatchObject({
			style: 'decimal',
			whole: '1234',
			fraction: '50',
			mark: ',',
			grouped: true
		});
		expect(read('5.06', FEET).written).toMatchObject({ whole: '5', fraction: '06', mark: '.', grouped: false });
		expect(read('1e3', FEET)).toMatchObject({ step: toSI(1000, 'ft') });
	});
});

describe('feet and inches', () => {
	test.each([
		[`14' 4"`, 14, 4],
		['14’ 4”', 14, 4],
		['14‘ 4“', 14, 4],
		['14′ 4″', 14, 4],
		[`14´ 4´´`, 14, 4],
		[`14'4''`, 14, 4],
		['14 ft 4 in', 14, 4],
		['14ft4in', 14, 4],
		['14 ft. 4 in.', 14, 4],
		['14 ft.4 in', 14, 4],
		['14 ft, 4 in', 14, 4],
		['14 ft and 4 in', 14, 4],
		['14 feet 4 inches', 14, 4],
		['14 foot 4', 14, 4],
		['14 pies 4 pulgadas', 14, 4],
		['14 pies y 4 pulgadas', 14, 4],
		['14 pies con 4 pulg.', 14, 4],
		[`14'-4"`, 14, 4],
		[`14'- 4"`, 14, 4],
		[`14-4"`, 14, 4],
		[`14'-4 1/2"`, 14, 4.5],
		[`6'6`, 6, 6],
		[`6' 6`, 6, 6],
		[`6'6½`, 6, 6.5],
		[`6' 6 1/2"`, 6, 6.5],
		[`6' 6-1/2"`, 6, 6.5],
		[`6' 1/2"`, 6, 0.5],
		[`6' 6.5"`, 6, 6.5],
		[`6' 6,5"`, 6, 6.5],
		[`6' 0"`, 6, 0],
		['１４′ ４″', 14, 4]
	])('%j', (text, feet, inches) => {
		const reading = read(text, FEET);
		expect(reading.si).toBe(feetInches(feet, inches));
		expect(reading).toMatchObject({ unit: 'ft', unitGiven: true });
		expect(reading.written).toMatchObject({
			style: 'compound',
			major: feet,
			majorUnit: 'ft',
			minor: inches,
			minorUnit: 'in',
			overflow: false
		});
	});

	test('are read as well where metres are asked', () => {
		expect(read(`6' 6"`, METRES)).toMatchObject({ si: 1.9812, unit: 'ft', value: 6.5, step: 0.0254 });
	});

	test('a minus goes for the whole', () => {
		expect(read(`-6' 6"`, FEET)).toMatchObject({ si: -1.9812, value: -6.5 });
	});

	test('twelve inches and more are read, and flagged', () => {
		expect(read(`5' 14"`, FEET)).toMatchObject({ si: feetInches(6, 2), written: { overflow: true } });
		expect(read(`5' 12"`, FEET).written).toMatchObject({ overflow: true });
		expect(read(`5' 11.9"`, FEET).written).toMatchObject({ overflow: false });
		// A foot mark is a foot mark, though Swiss texts group digits with it.
		expect(read(`1'234`, FEET)).toMatchObject({ si: feetInches(1, 234), written: { overflow: true } });
	});

	test.each(['14-4', '14 4', '14 - 4', '14-4 ft'])('%j is asked about in decimal feet', (text) => {
		const reading = readQuantity(text, FEET);
		if (reading.kind !== 'question') throw new Error(reading.kind);
		expect(reading.reason).toBe('feet-inches-or-decimal');
		expect(reading.readings.map((r) => r.si)).toEqual([feetInches(14, 4), toSI(14.4, 'ft')]);
	});

	test.each(['14-4 1/2', '14 4½', '14 - 4 1/2'])('%j is feet and inches: nobody takes a fraction away', (text) => {
		expect(read(text, FEET)).toMatchObject({ si: feetInches(14, 4.5), unitGiven: false });
	});

	test.each(['14-4', '14 4', '14 - 4', '14-4.0'])('%j is feet and inches where those are asked', (text) => {
		expect(read(text, { ...FEET, compound: true }).si).toBe(feetInches(14, 4));
	});

	test.each(['14-4', '14 4', '14-15', '14.5-4'])('%j is no number of metres', (text) => {
		expect(readQuantity(text, METRES)).toMatchObject({ kind: 'unreadable', reason: 'two-numbers' });
	});

	test.each(['14-12', '14-15', '14.5-4', '12 34', '6 7/2', '14 4 1'])('%j is no feet and inches either', (text) => {
		expect(readQuantity(text, { ...FEET, compound: true })).toMatchObject({ reason: 'two-numbers' });
	});

	test('decimals that may have been meant as inches', () => {
		expect(decimalsAsInches(read('5.6', FEET))).toBe(feetInches(5, 6));
		expect(decimalsAsInches(read('5,06', FEET))).toBe(feetInches(5, 6));
		expect(decimalsAsInches(read('5.10', FEET))).toBe(feetInches(5, 10));
		expect(decimalsAsInches(read('5.11 ft', FEET))).toBe(feetInches(5, 11));
		expect(decimalsAsInches(read('.6', FEET))).toBe(feetInches(0, 6));
		expect(decimalsAsInches(read('-5.6', FEET))).toBe(-feetInches(5, 6));
		for (const text of ['5.12', '5.0', '5', '5.600', '5½', `5' 6"`, '5.6 m', '5.6e1']) {
			expect(decimalsAsInches(read(text, FEET))).toBeNull();
		}
	});
});

describe('other pairs of units', () => {
	test.each([
		['5 m 30 cm', 'm', 5.3],
		['5 metros con 30 centímetros', 'm', 5.3],
		['5m 305mm', 'm', 5.305],
		['5m30', 'm', 5.3],
		['5m05', 'm', 5.05],
		['5m305', 'm', 5.305],
		['2 yd 1 ft', 'm', 2.1336],
		['80 kg 500 g', 'kg', 80.5],
		['1 min 30 s', 's', 90],
		['1 min 30', 's', 90]
	] as const)('%j', (text, expected, si) => {
		expect(read(text, { expected, language: 'en' }).si).toBeCloseTo(si, 12);
	});

	test('5m3 may be 5.03 m or 5.3 m', () => {
		const reading = readQuantity('5m3', METRES);
		if (reading.kind !== 'question') throw new Error(reading.kind);
		expect(reading.reason).toBe('centimetres-or-decimal');
		expect(reading.readings.map((r) => r.si)).toEqual([5.03, 5.3]);
	});
});

describe('a mark that may group or divide', () => {
	test.each([
		['1,234', 'en', 'm', 1.234, 1234],
		['1,234', 'es', 'm', 1.234, 1234],
		['1.234', 'es', 'm', 1.234, 1234],
		['12.345 m', 'es', 'm', 12.345, 12345],
		['-1,234', 'en', 'm', -1.234, -1234],
		['1,800 lbf', 'en', 'lbf', 1.8, 1800]
	] as const)('%j in %s is a question', (text, language, expected, decimal, thousands) => {
		const reading = readQuantity(text, { expected, language });
		if (reading.kind !== 'question') throw new Error(reading.kind);
		expect(reading.reason).toBe('thousands-or-decimal');
		expect(reading.readings.map((r) => r.value)).toEqual([decimal, thousands]);
		const echoes = reading.readings.map((r) => echoQuantity(r, language));
		expect(new Set(echoes).size).toBe(2);
	});

	test.each([
		['1.234', 'en', 1.234],
		['1.23', 'es', 1.23],
		['1,23', 'es', 1.23],
		['1.2345', 'es', 1.2345],
		['0.305', 'es', 0.305],
		['0,305', 'es', 0.305],
		['1.234,5', 'es', 1234.5],
		['1,234.5', 'es', 1234.5],
		['1.234.567', 'es', 1234567],
		['1 234,567', 'es', 1234.567],
		['1.234e0', 'es', 1.234]
	] as const)('%j in %s has one meaning', (text, language, value) => {
		expect(read(text, { expected: 'm', language }).value).toBe(value);
	});
});

describe('units', () => {
	test.each([
		['5.3m', 'ft', 'm', 5.3],
		['5,3 m', 'ft', 'm', 5.3],
		['5,3 metros', 'm', 'm', 5.3],
		['5.3 M', 'm', 'm', 5.3],
		['530 centímetros', 'm', 'cm', 5.3],
		['530cm', 'm', 'cm', 5.3],
		['72"', 'ft', 'in', 1.8288],
		['72 pulgadas', 'ft', 'in', 1.8288],
		['8 kn', 'N', 'kN', 8000],
		['8 KN', 'N', 'kN', 8000],
		['8 kilonewtons', 'kN', 'kN', 8000],
		['80 KG', 'kg', 'kg', 80],
		['80 kilos', 'lb', 'kg', 80],
		['310 lbs', 'kg', 'lb', 140.6136347],
		['310 libras', 'kg', 'lb', 140.6136347],
		['310#', 'kg', 'lb', 140.6136347],
		['900 pounds', 'lbf', 'lbf', 4003.3994537344497],
		['900 lb', 'kN', 'lbf', 4003.3994537344497],
		['900 libras-fuerza', 'N', 'lbf', 4003.3994537344497],
		['900 lb-f', 'N', 'lbf', 4003.3994537344497],
		['10 g', 'gn', 'gn', 98.0665],
		['9.8 m/s2', 'm/s2', 'm/s2', 9.8],
		['9.8 m/s^2', 'm/s2', 'm/s2', 9.8],
		['6 m/s', 'ft/s', 'm/s', 6],
		['20 pies por segundo', 'm/s', 'ft/s', 6.096],
		['100 ft-lb', 'J', 'ftlbf', 135.581794833],
		['12 m2', 'm2', 'm2', 12],
		['12m²', 'm2', 'm2', 12],
		['50%', '1', '%', 0.5],
		['50 por ciento', '%', '%', 0.5]
	] as const)('%j', (text, expected, unit, si) => {
		const reading = read(text, { expected, language: 'en' });
		expect(reading).toMatchObject({ unit, unitGiven: true });
		expect(reading.si).toBeCloseTo(si, 8);
	});

	test('pounds of a mass stay a mass', () => {
		expect(unitOfWord('pounds', MASS)).toBe('lb');
		expect(unitOfWord('pounds', FORCE)).toBe('lbf');
		expect(unitOfWord('cubits', FORCE)).toBeNull();
	});
});

describe('what cannot be read', () => {
	test.each([
		['', 'ft', 'empty', undefined],
		[' \u00a0\t ', 'ft', 'empty', undefined],
		['abc', 'ft', 'no-number', 'abc'],
		['-', 'ft', 'no-number', '-'],
		["'", 'ft', 'no-number', "'"],
		['six feet', 'ft', 'no-number', 'six feet'],
		['FF = 6 ft', 'ft', 'text-before-number', 'FF ='],
		['--3', 'ft', 'text-before-number', '--'],
		['1.2.3', 'ft', 'malformed-number', '1.2.3'],
		['1,23,4', 'ft', 'malformed-number', '1,23,4'],
		['1,23.4,5', 'ft', 'malformed-number', '1,23.4,5'],
		['6 7 8', 'ft', 'two-numbers', '6 7 8'],
		["5' 6'", 'ft', 'two-numbers', "5' 6'"],
		['6.5 ft 3 in', 'ft', 'two-numbers', '6.5 ft 3 in'],
		['6 in 5 ft', 'ft', 'two-numbers', '6 in 5 ft'],
		['6 ft 5 kg', 'ft', 'two-numbers', '6 ft 5 kg'],
		['6 7/2', 'ft', 'two-numbers', '6 7/2'],
		['1 234 567/8', 'ft', 'two-numbers', '1 234 567/8'],
		['6 to 7', 'ft', 'two-numbers', '6 to 7'],
		['6+3.5', 'ft', 'calculation', '6+3.5'],
		['6 ft + 3 ft', 'ft', 'calculation', '6 ft + 3 ft'],
		['6 x 2', 'ft', 'calculation', '6 x 2'],
		['6.5/2', 'ft', 'calculation', '6.5/2'],
		['11/25/2026', 'ft', 'calculation', '11/25/2026'],
		['6 cubits', 'ft', 'unknown-unit', 'cubits'],
		['6 ft of rope', 'ft', 'unknown-unit', 'ft of rope'],
		['5²', 'ft', 'unknown-unit', '²'],
		['3-', 'ft', 'unknown-unit', '-'],
		['6 kg', 'ft', 'wrong-dimension', 'kg'],
		['80 kg', 'N', 'wrong-dimension', 'kg'],
		[`6' 6"`, 'kg', 'wrong-dimension', "'"],
		['1/0', 'ft', 'not-finite', undefined],
		['0/0', 'ft', 'not-finite', undefined],
		['1e999', 'ft', 'not-finite', undefined],
		['1e308 km', 'ft', 'not-finite', undefined],
		['NaN', 'ft', 'not-finite', 'NaN'],
		['-Infinity', 'ft', 'not-finite', '-Infinity'],
		['∞', 'ft', 'not-finite', '∞']
	] as const)('%j', (text, expected, reason, part) => {
		for (const language of ['en', 'es'] as const) {
			const reading = readQuantity(text, { expected, language });
			expect(reading).toMatchObject({ kind: 'unreadable', reason });
			expect(reading.kind === 'unreadable' ? reading.part : null).toBe(part);
		}
	});

	test('names the unit that measures something else', () => {
		expect(readQuantity('6 kg', FEET)).toMatchObject({ reason: 'wrong-dimension', unit: 'kg' });
	});

	test('a long text is refused unread', () => {
		expect(readQuantity('1'.repeat(LONGEST_ENTRY), FEET).kind).toBe('read');
		expect(readQuantity('1'.repeat(LONGEST_ENTRY + 1), FEET)).toEqual({ kind: 'unreadable', reason: 'too-long' });
		// Has a length and nothing else of a text: whoever looks at more of it fails.
		const megabyte = { length: 1_000_000 } as unknown as string;
		expect(readQuantity(megabyte, FEET)).toEqual({ kind: 'unreadable', reason: 'too-long' });
		const part = readQuantity('½'.repeat(LONGEST_ENTRY), FEET);
		expect(part.kind === 'unreadable' ? part.part?.length : 0).toBeLessThanOrEqual(LONGEST_ENTRY);
	});
});

describe('echo', () => {
	test.each([
		['14.30', 'ft', 'en', '14.30 ft'],
		['14.30', 'ft', 'es', '14,30 pies'],
		[`14'4`, 'm', 'en', '14′ 4″'],
		[`14' 4 1/2"`, 'ft', 'en', '14′ 4½″'],
		[`5' 14"`, 'ft', 'en', '6′ 2″'],
		['6 1/2', 'ft', 'en', '6.5 ft'],
		['6', 'ft', 'en', '6 ft'],
		['5m30', 'm', 'es', '5,3 m'],
		['1 pie', 'ft', 'es', '1 pie'],
		[`6' 6.3"`, 'ft', 'en', '6.525 ft'],
		['50%', '1', 'en', '50 %']
	] as const satisfies readonly (readonly [string, UnitId, Language, string])[])('%j', (text, expected, language, echo) => {
		expect(echoQuantity(read(text, { expected, language }), language)).toBe(echo.replaceAll(' ', '\u00a0'));
	});
});
