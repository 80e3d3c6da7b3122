import { describe, expect, test } from 'vitest';
import {
	ACCELERATION,
	AREA,
	ENERGY,
	FORCE,
	LENGTH,
	MASS,
	RATIO,
	SPEED,
	STIFFNESS,
	TIME,
	nameOfDimension,
	overDimension,
	rootDimension,
	sameDimension,
	timesDimension
} from '#lib/quantity/index.ts';

// The relations are mechanics: F = m a, E = F s, k = F / s, v = s / t (SI Brochure, from memory).
describe('dimensions', () => {
	test.each([
		['force is mass times acceleration', FORCE, timesDimension(MASS, ACCELERATION)],
		['energy is force times length', ENERGY, timesDimension(FORCE, LENGTH)],
		['energy is mass times speed squared', ENERGY, timesDimension(MASS, timesDimension(SPEED, SPEED))],
		['stiffness is force over length', STIFFNESS, overDimension(FORCE, LENGTH)],
		['speed is length over time', SPEED, overDimension(LENGTH, TIME)],
		['acceleration is speed over time', ACCELERATION, overDimension(SPEED, TIME)],
		['a length over a length is a ratio', RATIO, overDimension(LENGTH, LENGTH)],
		['the root of an area is a length', LENGTH, rootDimension(AREA)],
		['the root of acceleration times length is a speed', SPEED, rootDimension(timesDimension(ACCELERATION, LENGTH))],
		['the root of a ratio is a ratio', RATIO, rootDimension(RATIO)]
	])('%s', (_, a, b) => {
		expect(sameDimension(a, b)).toBe(true);
		expect(a).toEqual(b);
	});

	test('all named dimensions differ pairwise and carry their name', () => {
		const named = { ratio: RATIO, length: LENGTH, area: AREA, mass: MASS, time: TIME, speed: SPEED, force: FORCE };
		const others = { acceleration: ACCELERATION, energy: ENERGY, stiffness: STIFFNESS };
		const all = Object.entries({ ...named, ...others });
		for (const [name, a] of all) {
			expect(nameOfDimension(a)).toBe(name);
			expect(all.filter(([, b]) => sameDimension(a, b))).toHaveLength(1);
		}
		expect(nameOfDimension(timesDimension(FORCE, AREA))).toBe('length^3 mass time^-2');
	});

	test.each([['length', LENGTH], ['mass', MASS], ['force', FORCE], ['speed', SPEED]])(
		'the root of a %s is an error that names it',
		(name, dimension) => {
			expect(() => rootDimension(dimension)).toThrow(RangeError);
			expect(() => rootDimension(dimension)).toThrow(name);
		}
	);

	test('a dimension cannot be changed', () => {
		expect(Object.isFrozen(LENGTH)).toBe(true);
		expect(Object.isFrozen(timesDimension(LENGTH, MASS))).toBe(true);
	});
});
