import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distance, lengthOf, LINKS, openingLine, PACK, relaxChain } from '../../../src/lib/scene/lanyard/chain.ts';
import { hangLine } from '../../../src/lib/scene/lanyard/hang.ts';

const metres = (min: number, max: number): fc.Arbitrary<number> =>
	fc.integer({ min: Math.round(min * 100), max: Math.round(max * 100) }).map((n) => n / 100);

describe('slack line', () => {
	test('is drawn within 0.5 % of its given length, from hook to D-ring', () => {
		fc.assert(
			fc.property(metres(0.9, 3.6), metres(-1.5, 2.4), metres(0, 1.6), (length, rise, aside) => {
				fc.pre(Math.sqrt(rise * rise + aside * aside) < length * 0.999);
				const points = relaxChain({ from: { x: 0, z: rise }, to: { x: 0 - aside, z: 0 }, length, stiffEnd: PACK, openSide: 1 });
				expect(points).toHaveLength(LINKS + 1);
				expect(Math.abs(lengthOf(points) / length - 1)).toBeLessThan(0.005);
				expect(points[0]).toEqual({ x: 0, z: rise });
				expect(points[LINKS]).toEqual({ x: 0 - aside, z: 0 });
			}),
			{ numRuns: 120, seed: 11 }
		);
	});

	test('hangs the same way every time', () => {
		const request = { from: { x: 0, z: 0.6 }, to: { x: 0, z: 0 }, length: 2, stiffEnd: PACK, openSide: 1 as const };
		expect(relaxChain(request)).toEqual(relaxChain(request));
	});

	test('does not pass through the back below the D-ring', () => {
		fc.assert(
			fc.property(metres(1.2, 2.4), metres(0.1, 1.1), (length, rise) => {
				const points = relaxChain({ from: { x: 0, z: rise }, to: { x: 0, z: 0 }, length, stiffEnd: PACK, openSide: 1 });
				expect(Math.min(...points.map((p) => p.x))).toBeGreaterThan(-0.02);
			}),
			{ numRuns: 60, seed: 12 }
		);
	});

	test('is straight when the ends are as far apart as it is long', () => {
		const points = relaxChain({ from: { x: 0, z: 2 }, to: { x: 0, z: 0 }, length: 2, openSide: 1 });
		expect(points.every((p) => p.x === 0)).toBe(true);
	});
});

describe('connector and lanyard', () => {
	test('a hanging connector hangs straight for its length, the lanyard keeps its own', () => {
		const line = hangLine({ height: 2.6, connectorLength: 0.6, connectorLies: 'hanging' }, 1.8, { x: 0, z: 1.4 });
		expect(lengthOf(line.connector)).toBeCloseTo(0.6, 9);
		expect(line.hook).toEqual({ x: 0, z: 2 });
		expect(Math.abs(lengthOf(line.lanyard) / 1.8 - 1)).toBeLessThan(0.005);
		expect(Math.abs(distance(line.pack[0], line.pack[1]) - PACK)).toBeLessThan(0.03);
	});

	test('a connector that lies slack is part of one slack line', () => {
		const line = hangLine({ height: 1.9, connectorLength: 0.9, connectorLies: 'slack' }, 1.8, { x: 0, z: 1.4 });
		expect(Math.abs(lengthOf(line.connector) / 0.9 - 1)).toBeLessThan(0.01);
		expect(Math.abs(lengthOf(line.lanyard) / 1.8 - 1)).toBeLessThan(0.01);
	});
});

describe('opening line', () => {
	test('the zigzag covers what has run out and the part of the pack it comes from', () => {
		const line = openingLine({ x: 0, z: 3.2 }, { x: 0, z: 0 }, 1.2, 0.05);
		const zigzag = line.zigzag.map((p) => p.z);
		expect(Math.max(...zigzag) - Math.min(...zigzag)).toBeCloseTo(1.34, 6);
		expect(line.pack[1]).toEqual({ x: 0, z: 0 });
	});

	test('before the absorber opens the whole pack is closed', () => {
		const line = openingLine({ x: 0, z: 2 }, { x: 0, z: 0 }, 0, 0.05);
		expect(line.zigzag).toEqual([]);
		expect(distance(line.pack[0], line.pack[1])).toBeCloseTo(PACK, 9);
	});
});
