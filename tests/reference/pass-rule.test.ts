/** The counts of pass rules against tables that were computed apart from this program (learning-and-records.md 6). */
import { describe, expect, it } from 'vitest';
import { PASS_RULES, countsAlone, overTries, type PassRule } from '#lib/mastery/index.ts';
import { qualityOf } from '../bench/simulated/decisions.ts';

const STAGED = PASS_RULES.find((one) => one.id === 'staged');

/** A rule of one stage: so many items, so many right, at most so many unsafe numbers. */
function oneForm(items: number, right: number, unsafe = items): PassRule {
	if (STAGED === undefined) throw new Error('the default rule is not shipped');
	return {
		...STAGED,
		stages: [{ after: items, passAtMost: items - right }],
		unsafe: { first: { items, atMost: unsafe }, atMost: unsafe }
	};
}

function percent(rule: PassRule, right: number, unsafeShare = 0.5): number {
	return 100 * countsAlone(rule, { right, unsafeShare }).pass;
}

describe('the default rule, staged count and unsafe cap alone', () => {
	// The issue "The orientation course", Final check: errors independent, half of them unsafe.
	it.each([
		[0.95, 94.8, 1],
		[0.9, 75, 0],
		[0.7, 3.8, 1],
		[0.5, 0.03, 2]
	])('passes a worker who is right %f of the time %f %% of the time', (right, published, digits) => {
		if (STAGED === undefined) throw new Error('the default rule is not shipped');
		expect(percent(STAGED, right).toFixed(digits)).toBe(published.toFixed(digits));
	});

	it('asks a 95 % worker 16 items on average', () => {
		if (STAGED === undefined) throw new Error('the default rule is not shipped');
		expect(countsAlone(STAGED, { right: 0.95, unsafeShare: 0.5 }).items).toBeCloseTo(16, 0);
	});
});

describe('one form, independent items', () => {
	// learning-and-records.md 6.1: n; right for 80 %, false fails at p = .95, false passes at p = .5; the same for 90 %.
	it.each([
		[5, 4, 2.3, 18.75, 5, 22.6, 3.12],
		[6, 5, 3.3, 10.94, 6, 26.5, 1.56],
		[7, 6, 4.4, 6.25, 7, 30.2, 0.78],
		[8, 7, 5.7, 3.52, 8, 33.7, 0.39],
		[9, 8, 7.1, 1.95, 9, 37.0, 0.2],
		[10, 8, 1.2, 5.47, 9, 8.6, 1.07],
		[11, 9, 1.5, 3.27, 10, 10.2, 0.59],
		[12, 10, 2.0, 1.93, 11, 11.8, 0.32],
		[13, 11, 2.5, 1.12, 12, 13.5, 0.17],
		[14, 12, 3.0, 0.65, 13, 15.3, 0.09],
		[15, 12, 0.5, 1.76, 14, 17.1, 0.05],
		[16, 13, 0.7, 1.06, 15, 18.9, 0.03],
		[17, 14, 0.9, 0.64, 16, 20.8, 0.01],
		[18, 15, 1.1, 0.38, 17, 22.6, 0.01],
		[19, 16, 1.3, 0.22, 18, 24.5, 0.0],
		[20, 16, 0.3, 0.59, 18, 7.5, 0.02]
	])('%i items fail the competent and pass the others as often as the table says', (n, k80, ff80, fp80, k90, ff90, fp90) => {
		expect(Math.abs(100 - percent(oneForm(n, k80), 0.95) - ff80)).toBeLessThan(0.051);
		expect(Math.abs(percent(oneForm(n, k80), 0.5) - fp80)).toBeLessThan(0.0051);
		expect(Math.abs(100 - percent(oneForm(n, k90), 0.95) - ff90)).toBeLessThan(0.051);
		expect(Math.abs(percent(oneForm(n, k90), 0.5) - fp90)).toBeLessThan(0.0051);
	});

	// learning-and-records.md 6.2: pass rates without the cap, with at most one unsafe number, errors half and all unsafe.
	// The last of 14/12 at .7 is 4.7476 (.7^14 + 14 · .3 · .7^13), which the table gives as 4.8: rounded twice.
	it.each([
		[14, 12, 0.95, 97.0, 93.9, 84.7],
		[14, 12, 0.9, 84.2, 77.7, 58.5],
		[14, 12, 0.7, 16.1, 13.3, 4.8],
		[12, 10, 0.95, 98.0, 95.6, 88.2],
		[12, 10, 0.7, 25.3, 21.1, 8.5]
	])('%i items, %i right, at %f: the unsafe cap takes as many as the table says', (n, k, right, free, half, all) => {
		expect(Math.abs(percent(oneForm(n, k), right) - free)).toBeLessThan(0.051);
		expect(Math.abs(percent(oneForm(n, k, 1), right, 0.5) - half)).toBeLessThan(0.051);
		expect(Math.abs(percent(oneForm(n, k, 1), right, 1) - all)).toBeLessThan(0.0525);
	});

	// learning-and-records.md 6.2: 24 items, 21 right, one unsafe number.
	it('24 items with one unsafe number would pass a 95 % worker 87.1 or 66.1 % of the time', () => {
		expect(percent(oneForm(24, 21, 1), 0.95, 0.5)).toBeCloseTo(87.1, 1);
		expect(percent(oneForm(24, 21, 1), 0.95, 1)).toBeCloseTo(66.1, 1);
	});

	// learning-and-records.md 6.1, retakes at p = .7: one, two, three tries. Three at 10/8 are 76.49, given as 77.
	it.each([
		[10, 8, 38, 62, 77],
		[12, 10, 25, 44, 58],
		[20, 18, 3.5, 7, 10]
	])('%i items, %i right: tries add up as the table says', (n, k, one, two, three) => {
		const pass = percent(oneForm(n, k), 0.7) / 100;
		expect(Math.abs(100 * pass - one)).toBeLessThan(0.51);
		expect(Math.abs(100 * overTries(pass, 2) - two)).toBeLessThan(0.51);
		expect(Math.abs(100 * overTries(pass, 3) - three)).toBeLessThan(0.52);
	});

	// learning-and-records.md 6.1, population view, true cut .85: accuracy, consistency, false passes.
	it.each([
		[8, 2, 10, 8, 0.68, 0.71, 0.29],
		[8, 2, 12, 10, 0.73, 0.7, 0.23],
		[8, 2, 20, 17, 0.79, 0.74, 0.15],
		[8, 2, 30, 26, 0.84, 0.78, 0.09],
		[4, 2, 12, 10, 0.8, 0.76, 0.18],
		[4, 2, 20, 17, 0.86, 0.82, 0.11]
	])('Beta(%i, %i), %i items, %i right: decided rightly and alike as often as the table says', (a, b, n, k, accuracy, consistency, falsePass) => {
		const rule = oneForm(n, k);
		const quality = qualityOf((right) => countsAlone(rule, { right, unsafeShare: 0 }).pass, { a, b, cut: 0.85 });
		// learning-and-records.md 6.4: within .005.
		expect(Math.abs(quality.accuracy - accuracy)).toBeLessThan(0.0051);
		expect(Math.abs(quality.consistency - consistency)).toBeLessThan(0.0051);
		expect(Math.abs(quality.falsePass - falsePass)).toBeLessThan(0.0051);
	});
});
