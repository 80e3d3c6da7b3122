import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mixed } from '#lib/flow/index.ts';

const names = (count: number): string[] => Array.from({ length: count }, (_, i) => `site-${i}`);
const device = fc.nat();

test('neighbours are never the same site, however many there are', () => {
	fc.assert(
		fc.property(fc.integer({ min: 2, max: 12 }), device, fc.nat({ max: 500 }), (count, number, at) => {
			const sites = names(count);
			expect(mixed(sites, number, at + 1).scenario).not.toBe(mixed(sites, number, at).scenario);
		})
	);
});

test('every round has every site once', () => {
	fc.assert(
		fc.property(fc.integer({ min: 1, max: 12 }), device, fc.nat({ max: 50 }), (count, number, round) => {
			const sites = names(count);
			const ofRound = sites.map((_, i) => mixed(sites, number, round * count + i).scenario);
			expect([...ofRound].sort()).toEqual([...sites].sort());
		})
	);
});

test('the same device at the same place gets the same problem; another place or device gets other numbers', () => {
	const sites = names(10);
	expect(mixed(sites, 5, 3)).toEqual(mixed(sites, 5, 3));
	const seeds = new Set(Array.from({ length: 200 }, (_, i) => mixed(sites, i % 2, Math.floor(i / 2)).seed));
	expect(seeds.size).toBe(200);
});

test('no site at all is a mistake of the caller', () => {
	expect(() => mixed([], 1, 0)).toThrow(RangeError);
});
