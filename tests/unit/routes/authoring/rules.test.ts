import { describe, expect, test } from 'vitest';
import { SENTENCES } from '#lib/scenario/index.ts';
import { addBound, addSentence, boundRows, boundText, withBound, withoutBound } from '../../../../src/routes/crew/scenarios/[scenario]/model/constraints.ts';
import { at, type Json } from '../../../../src/routes/crew/scenarios/[scenario]/model/document.ts';
import { renameObstacle, withObstacle, withoutObstacle, withoutPart } from '../../../../src/routes/crew/scenarios/[scenario]/model/parts.ts';
import { withSlot } from '../../../../src/routes/crew/scenarios/[scenario]/model/story.ts';

const PLAN: Json = {
	units: 'us-decimal',
	words: { en: { obstacles: { stack: 'the stack' }, facts: { 'obstacle:stack': { there: 'A stack.' } } }, es: { obstacles: { stack: 'la pila' }, facts: {} } },
	base: { absorber: { elongation: '3 ft' }, below: { depth: '20 ft', obstacles: [{ id: 'stack', top: '3 ft', from: '0 ft', to: '2 ft', present: 'sometimes' }] } },
	draws: [
		{ sets: ['obstacleTop_stack'], from: 2, to: 4, step: 1, unit: 'ft' },
		{ fact: 'obstacle', id: 'stack', among: ['there', 'none'] },
		{ sets: ['elongation', 'otherElongation'], from: 2, to: 4, step: 1, unit: 'ft' },
		{ fact: 'condition', among: ['dry', 'wet-or-frozen'] }
	],
	constraints: [{ of: 'freeFall', atLeast: { value: 1, unit: 'ft' }, atMost: { value: 6, unit: 'ft' } }]
};

describe('what draws must keep', () => {
	test('is told by a sentence for each bound', () => {
		expect(boundRows(PLAN).map(({ index, side, told }) => [index, side, told.id])).toEqual([
			[0, 'atLeast', 'free-fall-at-least'],
			[0, 'atMost', 'free-fall-at-most']
		]);
		expect(boundText(PLAN, { index: 0, side: 'atLeast' }, 'en')).toBe('1 ft');
	});

	test.each(SENTENCES.map((one) => one.id))('takes the sentence %s and tells it again', (id) => {
		const rows = boundRows(addSentence({ ...PLAN, constraints: [] }, id));
		expect(rows.map((one) => one.told.id)).toEqual([id]);
	});

	test('takes an amount in another unit or language, and keeps what cannot be read', () => {
		const row = { index: 0, side: 'atMost' } as const;
		expect(at(withBound(PLAN, row, '1,8 m', 'es'), ['constraints', 0, 'atMost'])).toEqual({ value: 1.8, unit: 'm' });
		expect(at(withBound(PLAN, row, '7', 'en'), ['constraints', 0, 'atMost'])).toEqual({ value: 7, unit: 'ft' });
		const broken = withBound(PLAN, row, 'much', 'en');
		expect(at(broken, ['constraints', 0, 'atMost'])).toBe('much');
		expect(boundText(broken, row, 'en')).toBe('much');
		expect(boundRows(broken)).toHaveLength(2);
	});

	test('loses one bound, and with the last the rule', () => {
		const one = withoutBound(PLAN, 0, 'atLeast');
		expect(at(one, ['constraints'])).toEqual([{ of: 'freeFall', atMost: { value: 6, unit: 'ft' } }]);
		expect(at(withoutBound(one, 0, 'atMost'), ['constraints'])).toEqual([]);
	});

	test('binds any number, with a first amount of its dimension', () => {
		expect(at(addBound(PLAN, 'massAttached', 'atMost'), ['constraints', 1])).toEqual({ of: 'massAttached', atMost: { value: 180, unit: 'lb' } });
		expect(addBound(PLAN, 'nothing', 'atMost')).toBe(PLAN);
	});
});

describe('parts that come and go', () => {
	test('take along the draws that set them', () => {
		const without = withoutPart(PLAN, ['base', 'absorber'], null);
		expect(at(without, ['base', 'absorber'])).toBeNull();
		expect(at(without, ['draws'])).toEqual([
			{ sets: ['obstacleTop_stack'], from: 2, to: 4, step: 1, unit: 'ft' },
			{ fact: 'obstacle', id: 'stack', among: ['there', 'none'] },
			{ sets: ['otherElongation'], from: 2, to: 4, step: 1, unit: 'ft' }
		]);
	});

	test('a thing below comes with names to fill in, in feet where the scenario is in feet', () => {
		const more = withObstacle(PLAN);
		expect(at(more, ['base', 'below', 'obstacles', 1])).toEqual({ id: 'vehicle', top: '3 ft', from: '-1.5 ft', to: '3 ft', present: 'always' });
		expect(at(more, ['words', 'es', 'obstacles'])).toEqual({ stack: 'la pila', vehicle: '' });
	});

	test('a thing below goes with its draws, names and sentences', () => {
		const without = withoutObstacle(PLAN, 0);
		expect(JSON.stringify(without)).not.toContain('stack');
		expect(at(without, ['draws'])).toHaveLength(2);
	});

	test('a thing below under another name is renamed everywhere', () => {
		const renamed = renameObstacle(PLAN, 0, 'beam');
		expect(JSON.stringify(renamed)).toBe(JSON.stringify(PLAN).replaceAll('"stack"', '"beam"').replace('obstacleTop_stack', 'obstacleTop_beam').replace('obstacle:stack', 'obstacle:beam'));
	});
});

test('a slot takes the place of what is selected', () => {
	expect(withSlot('It is  high.', 'anchorageHeight', 6, 6)).toEqual({ text: 'It is {anchorageHeight} high.', cursor: 23 });
	expect(withSlot('It is 2 m high.', 'name', 9, 6)).toEqual({ text: 'It is {name} high.', cursor: 12 });
	expect(withSlot('', 'name', 9, 9)).toEqual({ text: '{name}', cursor: 6 });
});
