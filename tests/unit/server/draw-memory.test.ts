import { describe, expect, it } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { draw } from '#lib/scenario/index.ts';
import { DrawMemory } from '#lib/server/attempts/draw-memory.ts';

describe('a draw that is kept', () => {
	it('is the draw of its scenario and seed, and of no other', () => {
		const memory = new DrawMemory(100);
		for (let round = 0; round < 2; round += 1) {
			for (const scenario of shippedScenarios()) {
				for (const seed of [1, 2, 12]) expect(memory.of(scenario, seed)).toEqual(draw(scenario, seed));
			}
		}
	});

	it('is made once while it is kept, and again when it has gone', () => {
		const memory = new DrawMemory(2);
		const [scenario] = shippedScenarios();
		if (scenario === undefined) throw new Error('No scenario is shipped');
		const first = memory.of(scenario, 1);
		expect(memory.of(scenario, 1)).toBe(first);
		memory.of(scenario, 2);
		memory.of(scenario, 3);
		expect(memory.of(scenario, 1)).not.toBe(first);
		expect(memory.of(scenario, 1)).toEqual(first);
	});
});
