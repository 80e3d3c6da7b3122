import { expect, it } from 'vitest';
import { pathOperators } from '#lib/paper/drawing/operators.ts';
import { MATERIALS } from '#lib/scene/print.ts';

it('absolute and relative commands give the same operators', () => {
	expect(pathOperators('M10 20L30 40H50V60Z')).toBe(pathOperators('M10 20l20 20h20v20z'));
	expect(pathOperators('M10 20L30 40H50V60Z')).toBe('10 20 m\n30 40 l\n50 40 l\n50 60 l\nh');
});

it('further places behind a move are lines; after closing, the next part begins where the last one did', () => {
	expect(pathOperators('M0 0 5 5')).toBe('0 0 m\n5 5 l');
	expect(pathOperators('M1 2l3 0zl0 4')).toBe('1 2 m\n4 2 l\nh\n1 6 l');
});

// A quadratic curve with control point C is the cubic one with control points at two thirds of the way to C.
it('quadratic curves become cubic ones, smooth ones mirror the control point', () => {
	expect(pathOperators('M0 0Q3 6 6 0')).toBe('0 0 m\n2 4 4 4 6 0 c');
	expect(pathOperators('M0 0q3 6 6 0t6 0')).toBe('0 0 m\n2 4 4 4 6 0 c\n8 -4 10 -4 12 0 c');
	expect(pathOperators('M0 0c1 2 3 4 5 6')).toBe('0 0 m\n1 2 3 4 5 6 c');
});

it('a command with too few numbers is refused', () => {
	expect(() => pathOperators('M0 0L5')).toThrow(RangeError);
});

it.each(Object.entries(MATERIALS))('every tile of a hatch can be written: %s', (_, tile) => {
	for (const line of tile.lines) expect(pathOperators(line)).toMatch(/^-?[\d.]+ -?[\d.]+ m\n/);
});
