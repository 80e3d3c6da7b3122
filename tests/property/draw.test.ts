/** Always and never of draws, for every shipped scenario and any seed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '#lib/arrest/index.ts';
import { valuesOf } from '#lib/expression/index.ts';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { CHANGED, draw, drawTry, inputsFor, numberAsks, problemOf, toleranceOf, variantsFor } from '#lib/scenario/index.ts';

const scenarios = shippedScenarios();
const each = scenarios.map((scenario) => [scenario.id, scenario] as const);
const seeds = fc.oneof(fc.integer(), fc.constantFrom(0, 1, -1, Number.MAX_SAFE_INTEGER, Number.MIN_SAFE_INTEGER));

describe.each(each)('a draw of %s', (_, scenario) => {
	it('gives a problem for any whole number as seed, the same each time, and the one try proves it', () => {
		fc.assert(
			fc.property(seeds, (seed) => {
				const first = draw(scenario, seed);
				expect(first.kind).toBe('drawn');
				if (first.kind !== 'drawn') return;
				const { problem } = first;
				const turnedDown = Object.values(first.reasons).reduce((sum, count) => sum + count, 0);
				expect(turnedDown).toBe(problem.acceptedTry);
				expect(draw(scenario, seed)).toEqual(first);
				expect(drawTry(scenario, seed, problem.acceptedTry)).toEqual(problem);
				if (problem.acceptedTry > 0) expect(typeof drawTry(scenario, seed, problem.acceptedTry - 1)).toBe('string');
			}),
			{ numRuns: 60 }
		);
	});

	it('is told whole by its stored values', () => {
		fc.assert(
			fc.property(seeds, (seed) => {
				const result = draw(scenario, seed);
				if (result.kind !== 'drawn') return;
				const { problem } = result;
				const stored = JSON.parse(JSON.stringify(problem.drawn));
				expect(problemOf(scenario, stored, seed, problem.acceptedTry).resolved).toEqual(problem.resolved);
			}),
			{ numRuns: 40 }
		);
	});

	it('keeps every slip apart from the right answer and from each other', () => {
		fc.assert(
			fc.property(seeds, (seed) => {
				const result = draw(scenario, seed);
				if (result.kind !== 'drawn') return;
				for (const ask of numberAsks(scenario)) {
					const set = variantsFor(result.problem, ask);
					const [right = NaN, ...altered] = valuesOf(set.singleProgram, inputsFor(result.problem, set));
					const tolerance = toleranceOf(scenario, ask, right);
					const values = altered.filter((value) => value > 0 && Math.abs(value - right) > CHANGED).sort((a, b) => a - b);
					for (const [i, value] of values.entries()) {
						expect(Math.abs(value - right)).toBeGreaterThan(2 * tolerance.cautious);
						expect(value - (values[i - 1] ?? -Infinity)).toBeGreaterThan(2 * tolerance.apart);
					}
				}
			}),
			{ numRuns: 60 }
		);
	});

	it('passes in about half of the draws', () => {
		let passing = 0;
		const count = 400;
		for (let seed = 0; seed < count; seed += 1) {
			const result = draw(scenario, seed);
			if (result.kind !== 'drawn') continue;
			const outcome = analyse(result.problem.drawn.plan);
			if (outcome.kind === 'analysed' && outcome.analysis.verdict.result === 'passes') passing += 1;
		}
		expect(passing / count).toBeGreaterThan(0.4);
		expect(passing / count).toBeLessThan(0.6);
	});
});

describe('draws of neighbouring seeds', () => {
	it('differ: no two of a hundred are the same problem', () => {
		for (const scenario of scenarios) {
			const drawn = Array.from({ length: 100 }, (_, seed) => draw(scenario, seed)).map((result) =>
				result.kind === 'drawn' ? JSON.stringify(result.problem.drawn) : 'none'
			);
			expect(new Set(drawn).size).toBe(100);
		}
	});
});
