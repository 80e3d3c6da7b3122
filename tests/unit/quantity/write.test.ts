/**
 * Writing back. Digits, and rounding away from danger: physics.md 11. Narrow spaces between groups
 * of three from five digits on: SI Brochure 5.4.4, from memory. Feet and inches with prime and
 * double prime: common practice on drawings, no source.
 */
import { describe, expect, test } from 'vitest';
import { decimalText, lastPlace, toSI, unitSymbol, usualDecimals, writeQuantity } from '#lib/quantity/index.ts';
import type { WriteOptions } from '#lib/quantity/index.ts';

/** Written with plain spaces, so that the tables below can be read. */
function write(si: number, options: Partial<WriteOptions> & Pick<WriteOptions, 'unit'>): string {
	return writeQuantity(si, { language: 'en', ...options }).replace(/[\u00a0\u202f]/g, ' ');
}

describe('decimals', () => {
	test.each([
		[1.005, 2, 'nearest', '1.01'],
		[1.0049, 2, 'nearest', '1.00'],
		[-1.005, 2, 'nearest', '-1.01'],
		[2.675, 2, 'nearest', '2.68'],
		[0.5, 0, 'nearest', '1'],
		[-0.5, 0, 'nearest', '-1'],
		[0.4, 0, 'nearest', '0'],
		[-0.4, 0, 'nearest', '0'],
		[-0.001, 2, 'up', '0.00'],
		[-0.001, 2, 'down', '-0.01'],
		[5.300000000000001, 2, 'up', '5.30'],
		[5.299999999999999, 2, 'down', '5.30'],
		[5.3001, 2, 'up', '5.31'],
		[5.3099, 2, 'down', '5.30'],
		[5.300000001, 2, 'up', '5.30'],
		[5.3000001, 2, 'up', '5.31'],
		[0.1 + 0.2 - 0.3, 2, 'up', '0.00'],
		[-5.3001, 2, 'up', '-5.30'],
		[-5.3001, 2, 'down', '-5.31'],
		[9.995, 2, 'nearest', '10.00'],
		[0.05, 1, 'nearest', '0.1'],
		[1e-7, 2, 'nearest', '0.00'],
		[1e-7, 2, 'up', '0.01'],
		[123456.789, 0, 'nearest', '123457'],
		[1e21, 1, 'nearest', '1000000000000000000000.0'],
		[9007199254740992, 2, 'up', '9007199254740992.00'],
		[-1e22, 0, 'nearest', '-10000000000000000000000']
	] as const)('%d to %d places, %s, is %s', (x, places, rounding, text) => {
		expect(decimalText(x, places, rounding)).toBe(text);
	});
});

describe('quantities', () => {
	test.each([
		[4.3688, { unit: 'ft' }, '14.3 ft'],
		[5.3, { unit: 'm' }, '5.30 m'],
		[5.3, { unit: 'm', language: 'es' }, '5,30 m'],
		[5.3, { unit: 'm', decimals: 0 }, '5 m'],
		[5.3, { unit: 'm', withUnit: false }, '5.30'],
		[1.8288, { unit: 'ft', round: 'up' }, '6.0 ft'],
		[1.8289, { unit: 'ft', round: 'up' }, '6.1 ft'],
		[1.8, { unit: 'ft', round: 'down' }, '5.9 ft'],
		[1.8288, { unit: 'ft', language: 'es' }, '6,0 pies'],
		[0.3048, { unit: 'ft', decimals: 0, language: 'es' }, '1 pie'],
		[0.3048, { unit: 'ft', decimals: 0 }, '1 ft'],
		[0.0254, { unit: 'in', decimals: 0, language: 'es' }, '1 pulg'],
		[8006.798907468899, { unit: 'lbf' }, '1800 lbf'],
		[22241, { unit: 'N' }, '22 241 N'],
		[1234567, { unit: 'N' }, '1 234 567 N'],
		[8000, { unit: 'kN' }, '8.0 kN'],
		[98.0665, { unit: 'gn' }, '10.0 g'],
		[0.5, { unit: '1' }, '0.50'],
		[0.5, { unit: '%' }, '50 %'],
		[12, { unit: 'm2' }, '12.00 m²'],
		[-0.5, { unit: 'm' }, '−0.50 m'],
		[-0.001, { unit: 'm' }, '0.00 m'],
		[0, { unit: 'm' }, '0.00 m']
	] as const)('%d as %j is %s', (si, options, text) => {
		expect(write(si, options)).toBe(text);
	});

	test('spaces do not let a line break', () => {
		expect(writeQuantity(22241, { unit: 'N', language: 'en' })).toBe('22\u202f241\u00a0N');
		expect(writeQuantity(4.3688, { unit: 'ft-in', language: 'en' })).toBe('14′\u00a04″');
	});

	test.each([
		[toSI(172, 'in'), {}, '14′ 4″'],
		[toSI(172.5, 'in'), { inchDenominator: 2 }, '14′ 4½″'],
		[toSI(172.5, 'in'), { inchDenominator: 16 }, '14′ 4½″'],
		[toSI(172.25, 'in'), { inchDenominator: 4 }, '14′ 4¼″'],
		[toSI(172.875, 'in'), { inchDenominator: 8 }, '14′ 4⅞″'],
		[toSI(172.1875, 'in'), { inchDenominator: 16 }, '14′ 4 3⁄16″'],
		[toSI(168.5, 'in'), { inchDenominator: 2 }, '14′ 0½″'],
		[toSI(143.6, 'in'), {}, '12′ 0″'],
		[toSI(143.97, 'in'), { inchDenominator: 16 }, '12′ 0″'],
		[toSI(143.2, 'in'), { round: 'up' }, '12′ 0″'],
		[toSI(143.8, 'in'), { round: 'down' }, '11′ 11″'],
		[toSI(144, 'in') + 1e-15, { round: 'up' }, '12′ 0″'],
		[toSI(4, 'in'), {}, '0′ 4″'],
		[0, {}, '0′ 0″'],
		[-0.001, {}, '0′ 0″'],
		[toSI(-172.5, 'in'), { inchDenominator: 2 }, '−14′ 4½″'],
		[toSI(-172.5, 'in'), { round: 'up' }, '−14′ 4″'],
		[toSI(-172.5, 'in'), { round: 'down' }, '−14′ 5″'],
		[toSI(172, 'in'), { language: 'es', withUnit: false }, '14′ 4″']
	] as const)('%d in feet and inches with %j is %s', (si, options, text) => {
		expect(write(si, { unit: 'ft-in', ...options })).toBe(text);
	});

	test.each([
		[Number.NaN, {}],
		[Number.POSITIVE_INFINITY, {}],
		[1, { decimals: -1 }],
		[1, { decimals: 1.5 }],
		[1, { decimals: 10 }],
		[1e308, { unit: 'mm' }]
	] as const)('%d with %j is refused', (si, options) => {
		expect(() => writeQuantity(si, { unit: 'm', language: 'en', ...options })).toThrow(RangeError);
	});

	test('the last place written', () => {
		expect(lastPlace({ unit: 'm' })).toBe(0.01);
		expect(lastPlace({ unit: 'ft' })).toBeCloseTo(0.03048, 15);
		expect(lastPlace({ unit: 'kN', decimals: 2 })).toBe(10);
		expect(lastPlace({ unit: 'ft-in' })).toBe(0.0254);
		expect(lastPlace({ unit: 'ft-in', inchDenominator: 16 })).toBe(0.0015875);
	});

	test('usual decimals are those of physics.md 11', () => {
		expect([usualDecimals('ft'), usualDecimals('m'), usualDecimals('kN'), usualDecimals('lbf')]).toEqual([1, 2, 1, 0]);
	});

	test('symbols per language', () => {
		expect([unitSymbol('ft', 'en'), unitSymbol('ft', 'es')]).toEqual(['ft', 'pies']);
		expect([unitSymbol('kN', 'en'), unitSymbol('kN', 'es')]).toEqual(['kN', 'kN']);
		expect(unitSymbol('1', 'en')).toBe('');
	});
});
