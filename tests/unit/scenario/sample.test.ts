import { describe, expect, it } from 'vitest';
import { fromSI } from '#lib/quantity/index.ts';
import { chanceOf, sample } from '#lib/scenario/index.ts';
import type { Scenario } from '#lib/scenario/schema.ts';
import { scenarioWith } from './document.ts';

function drawnBy(scenario: Scenario, count: number) {
	return Array.from({ length: count }, (_, i) => sample(scenario, chanceOf(['test', i])));
}

describe('one try of a draw', () => {
	it('lands on the grid, ends included, free of float noise', () => {
		const scenario = scenarioWith((document) => ({
			...document,
			draws: [{ sets: ['lanyardLength'], from: 1.5, to: 1.8, step: 0.1, unit: 'm' }]
		}));
		const lengths = new Set(drawnBy(scenario, 80).map(({ plan }) => plan.lanyard.length));
		expect([...lengths].sort()).toEqual([1.5, 1.6, 1.7, 1.8]);
	});

	it('counts a range from another given, on the grid of that one', () => {
		const scenario = scenarioWith((document) => ({
			...document,
			units: 'us-inch',
			draws: [
				{ sets: ['dRingHeight'], from: 51, to: 61, step: 0.5, unit: 'in' },
				{ sets: ['stature'], above: 'dRingHeight', from: 11, to: 12, step: 0.5, unit: 'in' }
			]
		}));
		const heads = drawnBy(scenario, 120).map(({ plan }) => {
			const inches = fromSI(plan.worker.stature ?? NaN, 'in');
			expect(Math.round(inches * 2) / 2).toBeCloseTo(inches, 9);
			return Math.round(2 * (inches - fromSI(plan.worker.dRingHeight, 'in'))) / 2;
		});
		expect([...new Set(heads)].sort()).toEqual([11, 11.5, 12]);
	});

	it('gives several givens the one value that it draws for them', () => {
		const scenario = scenarioWith((document) => ({
			...document,
			draws: [{ sets: ['labelMassMax', 'harnessCapacity'], among: [{ value: 120, unit: 'kg' }, { value: 140, unit: 'kg' }] }]
		}));
		const pairs = drawnBy(scenario, 40).map(({ plan }) => [plan.absorber?.massMax, plan.harness.capacity].join());
		expect([...new Set(pairs)].sort()).toEqual(['120,120', '140,140']);
	});

	it('draws a fact as often as it is listed', () => {
		const scenario = scenarioWith((document) => ({ ...document, draws: [{ fact: 'rescue', among: ['arranged', 'arranged', 'unknown'] }] }));
		const unknown = drawnBy(scenario, 3000).filter(({ plan }) => plan.rescue === 'unknown').length;
		expect(unknown).toBeGreaterThan(900);
		expect(unknown).toBeLessThan(1100);
	});

	it('takes an obstacle away, leaves it, or lets it come', () => {
		const scenario = scenarioWith((document) => ({
			...document,
			draws: [
				{ fact: 'obstacle', id: 'stack', among: ['there', 'can-come', 'none'] },
				{ sets: ['obstacleTop_stack'], from: 1, to: 1, step: 0.1, unit: 'm' }
			]
		}));
		const states = drawnBy(scenario, 40).map(({ plan }) => {
			const [one] = plan.below.obstacles;
			return one === undefined ? 'none' : `${one.present} ${one.there} ${one.top}`;
		});
		expect([...new Set(states)].sort()).toEqual(['none', 'sometimes false 1', 'sometimes true 1']);
	});

	it('leaves the scenario as it is', () => {
		const scenario = scenarioWith();
		const before = structuredClone(scenario.base);
		drawnBy(scenario, 20);
		expect(scenario.base).toEqual(before);
	});

	it('takes decoys from a bound, another practice and another class, with their printed values', () => {
		const scenario = scenarioWith((document) => ({
			...document,
			decoys: [
				{ given: 'freeFallLimit', limit: 'eu.lanyard-length' },
				{ given: 'otherMargin', practice: 'us-two-foot' },
				{ given: 'otherElongation', class: 'csa-e6' },
				{ given: 'railHeight', value: { value: 110, unit: 'cm' } }
			]
		}));
		// EN 354, lanyard at most 2 m; OSHA Technical Manual V-4, factor 2 ft; CSA Z259.11 E6, 1.75 m (from memory).
		expect(sample(scenario, chanceOf([1])).decoys).toEqual({ freeFallLimit: 2, otherMargin: 2 * 0.3048, otherElongation: 1.75, railHeight: 1.1 });
	});

	it('throws at once if a draw sets what the plan has no place for', () => {
		// The schema refuses such a document; a scenario put together in the program has not passed it.
		const without: Scenario = {
			...scenarioWith(),
			draws: [{ sets: ['connectorLength'], from: 0.5, to: 1, step: 0.1, unit: 'm' }]
		};
		expect(() => sample(without, chanceOf([1]))).toThrow(/anchorage\.connector/);
	});
});

describe('chance from a seed', () => {
	it('is the same for the same parts and does not glue them together', () => {
		const numbers = (parts: readonly (string | number)[]): number[] => {
			const chance = chanceOf(parts);
			return Array.from({ length: 8 }, () => chance.below(1000));
		};
		expect(numbers(['card', 10, 1])).toEqual(numbers(['card', 10, 1]));
		expect(numbers(['card', 10, 1])).not.toEqual(numbers(['card', 1, 1]));
		expect(numbers(['card', 10, 1])).not.toEqual(numbers(['card', 1, 10]));
		expect(numbers(['card', 101])).not.toEqual(numbers(['card', 10, 1]));
	});

	it('spreads evenly over what it may give', () => {
		const chance = chanceOf(['even']);
		const counts = [0, 0, 0, 0, 0];
		for (let i = 0; i < 10_000; i += 1) {
			const at = chance.below(5);
			counts[at] = (counts[at] ?? 0) + 1;
		}
		for (const count of counts) expect(Math.abs(count - 2000)).toBeLessThan(200);
	});
});
