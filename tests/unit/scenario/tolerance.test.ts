/** The bands are common practice, no source: they stand in shared/marking.json and are written out here. */
import { describe, expect, it } from 'vitest';
import { bandOf, toleranceOf } from '#lib/scenario/index.ts';
import type { NumberAsk, Scenario } from '#lib/scenario/schema.ts';
import { scenarioWith } from './document.ts';

const metric = scenarioWith();
const us: Scenario = { ...metric, units: 'us-decimal' };
const FOOT = 0.3048;
const POUND = 0.45359237;
const POUND_FORCE = 4.4482216152605;

function ask(quantity: 'freeFall' | 'massAttached' | 'arrestForce' | 'bodyWeights' | 'lowestCapacity', value: number, unit: NumberAsk['precision']['unit']): NumberAsk {
	return { id: 'x', cell: 'free-fall', kind: 'number', quantity, precision: { value, unit } };
}

describe('the tolerance of an answer', () => {
	it.each([
		['a short length, metric', metric, ask('freeFall', 0.01, 'm'), 1, { unsafe: 0.005, cautious: 0.015, apart: 0.015 }],
		['a long length, metric', metric, ask('freeFall', 0.01, 'm'), 5, { unsafe: 0.005, cautious: 0.05, apart: 0.015 }],
		['a length to 5 cm', metric, ask('freeFall', 0.05, 'm'), 1, { unsafe: 0.025, cautious: 0.025, apart: 0.025 }],
		['a length in feet', us, ask('freeFall', 0.05, 'ft'), 4 * FOOT, { unsafe: 0.025 * FOOT, cautious: 0.05 * FOOT, apart: 0.05 * FOOT }],
		['a length to the inch', us, ask('freeFall', 1, 'in'), 12 * FOOT, { unsafe: FOOT / 24, cautious: 0.12 * FOOT, apart: 0.05 * FOOT }],
		['a mass', metric, ask('massAttached', 0.5, 'kg'), 40, { unsafe: 0.25, cautious: 0.5, apart: 0.5 }],
		['a mass in pounds', us, ask('massAttached', 1, 'lb'), 300 * POUND, { unsafe: POUND / 2, cautious: 3 * POUND, apart: POUND }],
		['a force', metric, ask('arrestForce', 0.1, 'kN'), 6000, { unsafe: 50, cautious: 120, apart: 50 }],
		['a force in pounds', us, ask('arrestForce', 10, 'lbf'), 1800 * POUND_FORCE, { unsafe: 5 * POUND_FORCE, cautious: 36 * POUND_FORCE, apart: 10 * POUND_FORCE }],
		['a ratio', metric, ask('bodyWeights', 0.1, '1'), 6, { unsafe: 0.05, cautious: 0.12, apart: 0.05 }]
	] as const)('of %s', (_, scenario, one, right, bands) => {
		const { unsafe, cautious, apart } = toleranceOf(scenario, one, right);
		expect(unsafe).toBeCloseTo(bands.unsafe, 9);
		expect(cautious).toBeCloseTo(bands.cautious, 9);
		expect(apart).toBeCloseTo(bands.apart, 9);
	});

	it('lies on the side of more for what endangers by being too little, of less for what one has', () => {
		expect(toleranceOf(metric, ask('freeFall', 0.01, 'm'), 1).cautiousSign).toBe(1);
		expect(toleranceOf(metric, ask('massAttached', 1, 'kg'), 90).cautiousSign).toBe(1);
		expect(toleranceOf(metric, ask('lowestCapacity', 1, 'kg'), 90).cautiousSign).toBe(-1);
	});

	it('grows with the size of a negative value too', () => {
		expect(bandOf(metric, 'rise', -5)).toBeCloseTo(0.05, 9);
		expect(bandOf(metric, 'rise', -1)).toBeCloseTo(0.015, 9);
	});
});
