import { describe, expect, it } from 'vitest';
import { MOST_COPIES, mostCopies, printedCode, readPrintedCode } from '#lib/server/paper/code.ts';

describe('the code on a sheet', () => {
	it('is printed in groups, with two digits for the copy', () => {
		expect(printedCode('K7QM2XWD', 3)).toBe('K7QM-2XWD-03');
		expect(printedCode('K7QM2XWD', MOST_COPIES)).toBe('K7QM-2XWD-40');
	});

	it.each(['K7QM-2XWD-03', 'k7qm 2xwd 3', ' k7qm2xwd03 ', 'K7QM–2XWD/03', 'K7QM2XWD O3'])('is read as it was meant: %s', (typed) => {
		expect(readPrintedCode(typed)).toEqual({ code: 'K7QM2XWD', copy: 3 });
	});

	it.each([[1, 40], [10, 40], [16, 25], [40, 10], [4000, 1]])('of a set of %i problems has at most %i copies', (problems, copies) => {
		expect(mostCopies(problems)).toBe(copies);
	});

	it.each(['', 'K7QM-2XWD', 'K7QM-2XWD-00', 'K7QM-2XWD-41', 'K7QM-2XWD-003', 'K7QM-2XWD-AB', 'K7QM', 'x'.repeat(10_000)])('is no code of a copy: %.20s', (typed) => {
		expect(readPrintedCode(typed)).toBeUndefined();
	});
});
