import { describe, expect, test } from 'vitest';
import { LENGTH, MASS, FORCE } from '#lib/quantity/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import { shippedDocument, SHIPPED_IDS } from '../../../support/shipped-documents.ts';
import { at, put, type Json } from '../../../../src/routes/crew/scenarios/[scenario]/model/document.ts';
import { countsFrom, drawOf, giveAs, givingOf, placeOf, statedGivens, togetherWith, unitOf, usualUnits } from '../../../../src/routes/crew/scenarios/[scenario]/model/values.ts';

/** By hand: a metric plan of which two numbers vary. */
const PLAN: Json = {
	units: 'metric',
	base: {
		worker: { dRingHeight: '1.45 m', stature: '1.75 m', mass: { body: '80 kg' } },
		lanyard: { length: '1.8 m' },
		absorber: { elongation: '1.2 m' },
		harness: {},
		anchorage: { height: '2.1 m' },
		below: { depth: '6 m', obstacles: [{ id: 'stack', top: '1 m' }] }
	},
	draws: [
		{ sets: ['dRingHeight'], from: 1.4, to: 1.6, step: 0.1, unit: 'm' },
		{ sets: ['stature'], above: 'dRingHeight', from: 0.3, to: 0.4, step: 0.05, unit: 'm' },
		{ sets: ['harnessCapacity', 'lanyardCapacity'], among: [{ value: 120, unit: 'kg' }, { value: 140, unit: 'kg' }] },
		{ sets: ['obstacleTop_stack'], from: 1, to: 2, step: 0.5, unit: 'm' }
	]
};

describe('how a number is given', () => {
	test('is read off the base plan and the draws', () => {
		expect(givingOf(PLAN, 'dRingHeight')).toBe('range');
		expect(givingOf(PLAN, 'harnessCapacity')).toBe('among');
		expect(givingOf(PLAN, 'lanyardLength')).toBe('fixed');
		expect(givingOf(PLAN, 'margin')).toBe('none');
		expect(givingOf(PLAN, 'obstacleTop_stack')).toBe('range');
		expect(togetherWith(PLAN, 'harnessCapacity')).toEqual(['lanyardCapacity']);
		expect(countsFrom(PLAN, 'stature')).toEqual(['dRingHeight']);
		expect(placeOf(PLAN, 'obstacleTop_stack')).toEqual(['base', 'below', 'obstacles', 0, 'top']);
		expect(placeOf(PLAN, 'obstacleTop_gone')).toBeUndefined();
	});

	test('from an amount becomes a range around it, in steps that a foreman takes', () => {
		const varied = giveAs(PLAN, 'anchorageHeight', 'range');
		expect(at(varied, ['draws', 4])).toEqual({ sets: ['anchorageHeight'], from: 1.9, to: 2.3, step: 0.05, unit: 'm' });
		expect(at(varied, ['base', 'anchorage', 'height'])).toBe('2.1 m');
	});

	test('from feet and inches becomes a range in inches', () => {
		const inches = put(put(PLAN, ['units'], 'us-inch'), ['base', 'anchorage', 'height'], '7 ft 6 in');
		expect(at(giveAs(inches, 'anchorageHeight', 'range'), ['draws', 4])).toEqual({ sets: ['anchorageHeight'], from: 86, to: 94, step: 1, unit: 'in' });
	});

	test('from a range becomes its middle, and the draw is gone', () => {
		const fixed = giveAs(PLAN, 'dRingHeight', 'fixed');
		expect(at(fixed, ['base', 'worker', 'dRingHeight'])).toBe('1.5 m');
		expect(drawOf(fixed, 'dRingHeight')).toBe(-1);
	});

	test('from a range that counts from another number keeps the amount of the plan', () => {
		expect(at(giveAs(PLAN, 'stature', 'fixed'), ['base', 'worker', 'stature'])).toBe('1.75 m');
	});

	test('from a range becomes its ends and middle, and back again its span', () => {
		const among = giveAs(PLAN, 'dRingHeight', 'among');
		expect(at(among, ['draws', 0])).toEqual({
			sets: ['dRingHeight'],
			among: [
				{ value: 1.4, unit: 'm' },
				{ value: 1.5, unit: 'm' },
				{ value: 1.6, unit: 'm' }
			]
		});
		expect(at(giveAs(among, 'dRingHeight', 'range'), ['draws', 0])).toEqual({ sets: ['dRingHeight'], from: 1.4, to: 1.6, step: 0.05, unit: 'm' });
	});

	test('leaves the other number of a common draw as it was', () => {
		const fixed = giveAs(PLAN, 'harnessCapacity', 'fixed');
		expect(at(fixed, ['draws', 2, 'sets'])).toEqual(['lanyardCapacity']);
		expect(at(fixed, ['base', 'harness', 'capacity'])).toBe('140 kg');
		expect(at(giveAs(PLAN, 'lanyardCapacity', 'range'), ['draws', 2, 'sets'])).toEqual(['harnessCapacity', 'lanyardCapacity']);
	});

	test('from nothing begins with an amount that a site can have', () => {
		expect(at(giveAs(PLAN, 'margin', 'fixed'), ['base', 'margin'])).toBe('0.6 m');
		expect(at(giveAs(put(PLAN, ['units'], 'us-decimal'), 'peakForce', 'fixed'), ['base', 'absorber', 'peakForce'])).toBe('1350 lbf');
		expect(at(giveAs(PLAN, 'margin', 'range'), ['base', 'margin'])).toBe('0.6 m');
	});

	test('taken out leaves neither amount nor draw; an offset goes whole and comes with a direction', () => {
		const without = giveAs(PLAN, 'stature', 'none');
		expect(at(without, ['base', 'worker'])).toEqual({ dRingHeight: '1.45 m', mass: { body: '80 kg' } });
		expect(drawOf(without, 'stature')).toBe(-1);
		const aside = giveAs(PLAN, 'offset', 'range');
		expect(at(aside, ['base', 'offset'])).toEqual({ distance: '1 m', direction: 'along-edge' });
		expect(at(giveAs(aside, 'offset', 'none'), ['base', 'offset'])).toBeUndefined();
	});

	test('stays as it is where nothing is to be changed', () => {
		expect(giveAs(PLAN, 'dRingHeight', 'range')).toBe(PLAN);
		expect(giveAs(PLAN, 'otherMargin', 'fixed')).toBe(PLAN);
	});
});

test('units are those of the scenario and of the dimension', () => {
	expect(unitOf(PLAN, LENGTH)).toBe('m');
	expect(unitOf(put(PLAN, ['units'], 'us-inch'), LENGTH)).toBe('in');
	expect(unitOf(put(PLAN, ['units'], 'us-decimal'), FORCE)).toBe('lbf');
	expect(usualUnits(MASS)).toEqual(['kg', 'lb']);
});

test.each(SHIPPED_IDS)('every number of %s can vary, be fixed and vary again, and the document still fits', (id) => {
	const document = shippedDocument(id);
	for (const given of statedGivens(document)) {
		if (placeOf(document, given) === undefined) continue;
		for (const first of ['fixed', 'range', 'among'] as const) {
			const changed = giveAs(document, given, first);
			expect(givingOf(changed, given), `${given} ${first}`).toBe(first);
			const back = giveAs(giveAs(changed, given, 'fixed'), given, 'range');
			expect(givingOf(back, given), given).toBe('range');
		}
	}
	// Nothing is touched by asking.
	expect(document).toEqual(shippedDocument(id));
	expect(scenarioSchema.safeParse(document).success).toBe(true);
});
