/**
 * Outside checks of the unit table: mathjs's own table, the project's exact conversions
 * (`unit.*` of the physics check values, computed in exact fractions: the project's own numerics)
 * and the pairs of units that laws print (`UNIT-*` of the worked examples).
 */
import { evaluate, unit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { UNIT_IDS, fromSI, isUnitId, readQuantity, toSI, writeQuantity } from '#lib/quantity/index.ts';
import type { UnitId } from '#lib/quantity/index.ts';

/** How mathjs calls the unit, and the SI unit to convert to. Plain ratios are no units there. */
const IN_MATHJS: Readonly<Record<Exclude<UnitId, '1' | '%'>, readonly [string, string]>> = {
	m: ['m', 'm'],
	cm: ['cm', 'm'],
	mm: ['mm', 'm'],
	km: ['km', 'm'],
	ft: ['ft', 'm'],
	in: ['in', 'm'],
	yd: ['yd', 'm'],
	m2: ['m^2', 'm^2'],
	ft2: ['sqft', 'm^2'],
	kg: ['kg', 'kg'],
	g: ['g', 'kg'],
	t: ['tonne', 'kg'],
	lb: ['lbm', 'kg'],
	N: ['N', 'N'],
	kN: ['kN', 'N'],
	lbf: ['lbf', 'N'],
	kgf: ['kgf', 'N'],
	s: ['s', 's'],
	ms: ['ms', 's'],
	min: ['minute', 's'],
	'm/s': ['m/s', 'm/s'],
	'km/h': ['km/hour', 'm/s'],
	'ft/s': ['ft/s', 'm/s'],
	mph: ['mile/hour', 'm/s'],
	'm/s2': ['m/s^2', 'm/s^2'],
	'ft/s2': ['ft/s^2', 'm/s^2'],
	gn: ['kgf/kg', 'm/s^2'],
	J: ['J', 'J'],
	kJ: ['kJ', 'J'],
	ftlbf: ['ft lbf', 'J'],
	'N/m': ['N/m', 'N/m'],
	'kN/m': ['kN/m', 'N/m'],
	'lbf/ft': ['lbf/ft', 'N/m']
};

describe("factors against mathjs's unit table", () => {
	test.each(Object.entries(IN_MATHJS))('%s', (id, [name, si]) => {
		if (!isUnitId(id)) throw new Error(`${id} is not in the table`);
		const value = unit(1, name).toNumber(si);
		expect(Math.abs(toSI(1, id) / value - 1)).toBeLessThan(1e-12);
		expect(Math.abs(fromSI(value, id) - 1)).toBeLessThan(1e-12);
	});

	test('covers every unit but the plain ratios', () => {
		expect([...Object.keys(IN_MATHJS), '1', '%'].sort()).toEqual([...UNIT_IDS].sort());
		expect(toSI(5, '%')).toBe(Number(evaluate('5%')));
	});
});

// physics-check-values.json, unit.*: exact decimal fractions (the project's own numerics).
const EXACT: readonly (readonly [string, string, UnitId, UnitId, number, number])[] = [
	['unit.6ft', '6 ft', 'm', 'm', 1.8288, 1.8e-6],
	['unit.3p5ft', '3.5 ft', 'm', 'm', 1.0668, 1.1e-6],
	['unit.42in', '42 in', 'm', 'm', 1.0668, 1.1e-6],
	['unit.1800lbf', '1800 lbf', 'N', 'N', 8006.799, 0.008],
	['unit.900lbf', '900 lbf', 'N', 'N', 4003.399, 0.004],
	['unit.1350lbf', '1350 lbf', 'N', 'N', 6005.099, 0.006],
	['unit.5000lbf', '5000 lbf', 'N', 'N', 22241.11, 0.022],
	['unit.3000lbf', '3000 lbf', 'N', 'N', 13344.66, 0.013],
	['unit.310lb', '310 lb', 'kg', 'kg', 140.6136, 0.00014],
	['unit.130lb', '130 lb', 'kg', 'kg', 58.96701, 5.9e-5],
	['unit.17ft6in', '17 ft 6 in', 'm', 'm', 5.334, 5.3e-6],
	['unit.8kN-in-lbf', '8000 N', 'N', 'lbf', 1798.472, 0.18],
	['unit.1p8m-in-ft', '1.8 m', 'm', 'ft', 5.905512, 0.00059]
];

describe('physics-check-values.json, unit.*', () => {
	test.each(EXACT)('%s: %s', (_id, text, expected, unitOfResult, result, tolerance) => {
		const read = readQuantity(text, { expected, language: 'en' });
		if (read.kind !== 'read') throw new Error(`${text} was not read`);
		expect(Math.abs(fromSI(read.si, unitOfResult) - result)).toBeLessThanOrEqual(tolerance);
	});
});

// worked-examples.json, UNIT-LBF-*: "unit identity behind the printed pairs of the limits";
// inputs and the printed kN are a source's, the result in kN to 0.001 is our arithmetic.
const PRINTED_PAIRS: readonly (readonly [string, number, number, string])[] = [
	['UNIT-LBF-1800', 1800, 8.007, '8.0'],
	['UNIT-LBF-1350', 1350, 6.005, '6.0'],
	['UNIT-LBF-900', 900, 4.003, '4.0'],
	['UNIT-LBF-5000', 5000, 22.241, '22.2'],
	['UNIT-LBF-3000', 3000, 13.345, '13.3'],
	['UNIT-LBF-3600', 3600, 16.014, '16.0']
];

describe('worked-examples.json, UNIT-*', () => {
	test.each(PRINTED_PAIRS)('%s: %d lbf is %d kN, printed as %s', (_id, lbf, kilonewtons, printed) => {
		const si = toSI(lbf, 'lbf');
		expect(writeQuantity(si, { unit: 'kN', decimals: 3, language: 'en', withUnit: false })).toBe(
			kilonewtons.toFixed(3)
		);
		expect(writeQuantity(si, { unit: 'kN', decimals: 1, language: 'en', withUnit: false })).toBe(printed);
	});
});
