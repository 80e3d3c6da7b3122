import { describe, expect, it } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { aimsFor, shareFailing } from '#lib/scenario/index.ts';

describe('a share of failing draws', () => {
	it.each([
		[1 / 2, ['clearance'], [1, 1]],
		[1 / 3, ['clearance'], [2, 1]],
		[1 / 4, ['capacity'], [3, 1]],
		[2 / 5, ['reach', 'rescue'], [3, 1, 1]],
		[0, ['clearance'], [1]],
		[1, ['clearance'], [1]],
		[1 / 3, ['reach', 'rescue', 'capacity'], [6, 1, 1, 1]]
	] as const)('%f over %j becomes the weights %j, and comes back', (share, topics, weights) => {
		const aims = aimsFor(share, topics);
		expect(aims.map((aim) => aim.weight)).toEqual(weights);
		expect(shareFailing(aims)).toBeCloseTo(share, 9);
	});

	it('keeps how often each check failed against the others', () => {
		const before = [
			{ fails: 'nothing', weight: 4 },
			{ fails: 'clearance', weight: 3 },
			{ fails: 'rescue', weight: 1 }
		] as const;
		const aims = aimsFor(1 / 3, ['clearance', 'rescue'], before);
		expect(aims).toEqual([
			{ fails: 'nothing', weight: 8 },
			{ fails: 'clearance', weight: 3 },
			{ fails: 'rescue', weight: 1 }
		]);
	});

	it('never has a weight that the schema refuses, and stays near what was asked', () => {
		for (let share = 0.05; share < 1; share += 0.05) {
			const aims = aimsFor(share, ['clearance', 'rescue', 'reach'], [
				{ fails: 'clearance', weight: 97 },
				{ fails: 'rescue', weight: 13 }
			]);
			for (const { weight } of aims) expect(Number.isInteger(weight) && weight >= 1 && weight <= 100).toBe(true);
			expect(Math.abs(shareFailing(aims) - share)).toBeLessThan(0.03);
		}
	});

	it('of every shipped scenario is about half', () => {
		for (const { aims } of shippedScenarios()) expect(shareFailing(aims)).toBeCloseTo(1 / 2, 1);
	});

	it('must fail by something', () => {
		expect(() => aimsFor(1 / 2, [])).toThrow(RangeError);
		expect(() => aimsFor(2, ['clearance'])).toThrow(RangeError);
		expect(shareFailing([])).toBe(0);
	});
});
