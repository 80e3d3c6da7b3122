/**
 * The skill estimate against vectors worked out outside the program. Source: reference/learning-and-records.md 5.1
 * (computed there by the formula of Corbett and Anderson 1994, from memory: start 0.30, learn 0.15, guess 0.05,
 * slip 0.08).
 */
import { describe, expect, it } from 'vitest';
import { TRACING, cellOf, isReady, skillOf } from '#lib/mastery/index.ts';
import { CELL, after, outcome, tries } from '../support/outcomes.ts';

const VECTORS: readonly (readonly [readonly (0 | 1)[], number])[] = [
	[[1], 0.904],
	[[1, 1], 0.995],
	[[0], 0.18],
	[[0, 1], 0.831],
	[[0, 1, 1], 0.991]
];

describe('the estimate', () => {
	it('has the published numbers', () => {
		// Source: learning-and-records.md 5.1.
		expect(TRACING).toEqual({ start: 0.3, learn: 0.15, guess: 0.05, slip: 0.08 });
	});

	for (const [answers, p] of VECTORS) {
		it(`is ${p} after [${answers.join(', ')}], for the cell and for its one skill`, () => {
			const known = after(answers.map((right) => outcome({ right: right === 1 })));
			// Source: learning-and-records.md 5.1, vectors to three places.
			expect(cellOf(known, CELL).p).toBeCloseTo(p, 3);
			expect(skillOf(known, 'subtract-heights').p).toBeCloseTo(p, 3);
		});
	}

	it('would call two right answers enough, which the row of three does not', () => {
		// Source: learning-and-records.md 5.1: "too quick for a safety task".
		const known = after(tries('em'));
		expect(cellOf(known, CELL).p).toBeGreaterThan(0.98);
		expect(isReady(known, CELL)).toBe(false);
		expect(isReady(after(tries('h'), known), CELL)).toBe(true);
	});
});

describe('a row of three within so many problems', () => {
	/** How likely, by true skill, in percent: counted by states, apart from the program. */
	function chance(p: number, problems: number): number {
		let states = [1, 0, 0, 0];
		for (let i = 0; i < problems; i += 1) {
			const [none = 0, one = 0, two = 0, done = 0] = states;
			states = [(none + one + two) * (1 - p), none * p, one * p, two * p + done];
		}
		return 100 * (states[3] ?? 0);
	}

	/** How often the program calls a cell ready, in percent: every sequence of answers, weighted. */
	function program(p: number, problems: number): number {
		let share = 0;
		for (let bits = 0; bits < 2 ** problems; bits += 1) {
			let known = after([]);
			let weight = 1;
			let ready = false;
			for (let i = 0; i < problems; i += 1) {
				const right = ((bits >> i) & 1) === 1;
				weight *= right ? p : 1 - p;
				known = after([outcome({ right, difficulty: i % 2 === 0 ? 'easy' : 'hard' })], known);
				ready ||= isReady(known, CELL);
			}
			if (ready) share += weight;
		}
		return 100 * share;
	}

	it('is met as often as the published table says', () => {
		// Source: learning-and-records.md 5.1, row k = 3.
		expect(chance(0.95, 6)).toBeCloseTo(98.6, 1);
		expect(chance(0.7, 10)).toBeCloseTo(85.9, 1);
		expect(chance(0.5, 10)).toBeCloseTo(50.8, 1);
		expect(program(0.95, 6)).toBeCloseTo(98.6, 1);
		expect(program(0.7, 10)).toBeCloseTo(85.9, 1);
		expect(program(0.5, 10)).toBeCloseTo(50.8, 1);
	});
});
