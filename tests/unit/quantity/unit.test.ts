import { describe, expect, test } from 'vitest';
import {
	FORCE,
	LENGTH,
	MASS,
	STANDARD_GRAVITY,
	UNITS,
	UNIT_IDS,
	dimensionOf,
	fromSI,
	isUnitId,
	nameOfDimension,
	timesDimension,
	toSI,
	unitsOf
} from '#lib/quantity/index.ts';
import type { UnitId } from '#lib/quantity/index.ts';

/**
 * SI value of one unit. Sources: the exact definitions of foot, inch, yard, pound and standard
 * gravity in NIST SP 811 appendix B (from memory) and physics.md 11; the rest follow from them.
 */
const ONE: Readonly<Record<UnitId, readonly [number, string]>> = {
	m: [1, 'length'],
	cm: [0.01, 'length'],
	mm: [0.001, 'length'],
	km: [1000, 'length'],
	ft: [0.3048, 'length'],
	in: [0.0254, 'length'],
	yd: [0.9144, 'length'],
	m2: [1, 'area'],
	ft2: [0.09290304, 'area'],
	kg: [1, 'mass'],
	g: [0.001, 'mass'],
	t: [1000, 'mass'],
	lb: [0.45359237, 'mass'],
	N: [1, 'force'],
	kN: [1000, 'force'],
	lbf: [4.4482216152605, 'force'],
	kgf: [9.80665, 'force'],
	s: [1, 'time'],
	ms: [0.001, 'time'],
	min: [60, 'time'],
	'm/s': [1, 'speed'],
	'km/h': [1 / 3.6, 'speed'],
	'ft/s': [0.3048, 'speed'],
	mph: [0.44704, 'speed'],
	'm/s2': [1, 'acceleration'],
	'ft/s2': [0.3048, 'acceleration'],
	gn: [9.80665, 'acceleration'],
	J: [1, 'energy'],
	kJ: [1000, 'energy'],
	ftlbf: [1.3558179483314, 'energy'],
	'N/m': [1, 'stiffness'],
	'kN/m': [1000, 'stiffness'],
	'lbf/ft': [14.59390293720636, 'stiffness'],
	'1': [1, 'ratio'],
	'%': [0.01, 'ratio']
};

describe('units', () => {
	test.each(Object.entries(ONE))('%s both ways', (id, [si, dimension]) => {
		if (!isUnitId(id)) throw new Error(`${id} is not in the table`);
		expect(Math.abs(toSI(1, id) / si - 1)).toBeLessThan(1e-14);
		expect(Math.abs(fromSI(si, id) - 1)).toBeLessThan(1e-14);
		expect(nameOfDimension(dimensionOf(id))).toBe(dimension);
	});

	test('the table above names every unit', () => {
		expect(Object.keys(ONE).sort()).toEqual([...UNIT_IDS].sort());
		expect(Object.keys(UNITS)).toHaveLength(UNIT_IDS.length);
	});

	// physics.md 11: factors that are fractions leave no noise behind.
	test.each([
		[42, 'in', 1.0668],
		[6, 'ft', 1.8288],
		[3.5, 'ft', 1.0668],
		[66, 'in', 1.6764],
		[2.5, 'mm', 0.0025],
		[90, 'km/h', 25],
		[310, 'lb', 140.6136347],
		[10, 'gn', 98.0665]
	] as const)('%d %s is exactly %d in SI', (value, unit, si) => {
		expect(toSI(value, unit)).toBe(si);
		expect(fromSI(si, unit)).toBeCloseTo(value, 12);
	});

	test('the foot is twelve inches, the yard three feet, and lbf is lb times standard gravity', () => {
		expect(toSI(12, 'in')).toBe(toSI(1, 'ft'));
		expect(toSI(3, 'ft')).toBe(toSI(1, 'yd'));
		expect(toSI(1, 'lbf')).toBeCloseTo(0.45359237 * STANDARD_GRAVITY, 14);
		expect(toSI(1, 'ftlbf')).toBeCloseTo(0.45359237 * 9.80665 * 0.3048, 14);
	});

	test('lists the units of a dimension, and none for a dimension without', () => {
		expect(unitsOf(LENGTH)).toEqual(['m', 'cm', 'mm', 'km', 'ft', 'in', 'yd']);
		expect(unitsOf(MASS)).toEqual(['kg', 'g', 't', 'lb']);
		expect(unitsOf(FORCE)).toEqual(['N', 'kN', 'lbf', 'kgf']);
		expect(unitsOf(timesDimension(FORCE, FORCE))).toEqual([]);
	});

	test('knows what is a unit id and what only looks like one', () => {
		expect(isUnitId('ft')).toBe(true);
		for (const text of ['FT', 'feet', '', 'toString', '__proto__']) expect(isUnitId(text)).toBe(false);
	});
});
