import { describe, expect, test } from 'vitest';
import { at, type Json } from '../../../../src/routes/crew/scenarios/[scenario]/model/document.ts';
import { baseState, drawFact, drawnFacts, factDrawOf, fixFact, statesOf, toldFacts, toldStates, weightsOf, withBaseState, withWeight } from '../../../../src/routes/crew/scenarios/[scenario]/model/facts.ts';

const PLAN: Json = {
	words: { en: { facts: { rescue: { arranged: 'A team waits.' } } }, es: {} },
	base: { rescue: 'arranged', absorber: {}, anchorage: {}, below: { obstacles: [{ id: 'stack', present: 'always' }] } },
	draws: [
		{ sets: ['margin'], from: 1, to: 2, step: 1, unit: 'm' },
		{ fact: 'rescue', among: ['arranged', 'unknown', 'arranged'] },
		{ fact: 'obstacle', id: 'stack', among: ['there', 'none'] }
	]
};

describe('a fact', () => {
	test('has the states of its kind, an obstacle’s by its id', () => {
		expect(statesOf('rescue')).toEqual(['arranged', 'not-arranged', 'unknown']);
		expect(statesOf('obstacle:stack')).toEqual(['there', 'can-come', 'none']);
		expect(statesOf('toString')).toEqual([]);
		expect(drawnFacts(PLAN)).toEqual(['rescue', 'obstacle:stack']);
	});

	test('is drawn with weights: how often each state is listed', () => {
		expect([...weightsOf(PLAN, 'rescue')]).toEqual([['arranged', 2], ['not-arranged', 0], ['unknown', 1]]);
	});

	test('gets more or less weight, and the order of the others stays', () => {
		expect(at(withWeight(PLAN, 'rescue', 'not-arranged', 2), ['draws', 1, 'among'])).toEqual(['arranged', 'unknown', 'arranged', 'not-arranged', 'not-arranged']);
		expect(at(withWeight(PLAN, 'rescue', 'arranged', 1), ['draws', 1, 'among'])).toEqual(['arranged', 'unknown']);
		expect(at(withWeight(PLAN, 'rescue', 'unknown', 500), ['draws', 1, 'among'])).toHaveLength(22);
	});

	test('that is always the same can be drawn, and be fixed again', () => {
		const drawn = drawFact(PLAN, 'persons');
		expect(at(drawn, ['draws', 3])).toEqual({ fact: 'persons', among: [1, 2] });
		expect(fixFact(drawn, 'persons')).toEqual(PLAN);
		expect(factDrawOf(fixFact(PLAN, 'obstacle:stack'), 'obstacle:stack')).toBe(-1);
	});

	test('stands in the base plan, where it says nothing as it is usual', () => {
		expect(baseState(PLAN, 'rescue')).toBe('arranged');
		expect(baseState(PLAN, 'condition')).toBe('dry');
		expect(baseState(PLAN, 'persons')).toBe('1');
		expect(at(withBaseState(PLAN, 'persons', '3'), ['base', 'anchorage', 'persons'])).toBe(3);
		const can = withBaseState(PLAN, 'obstacle:stack', 'can-come');
		expect(at(can, ['base', 'below', 'obstacles', 0])).toEqual({ id: 'stack', present: 'sometimes', there: false });
		expect(baseState(can, 'obstacle:stack')).toBe('can-come');
	});

	test('needs a sentence for each state that is drawn, and keeps those that are told', () => {
		expect(toldFacts(PLAN)).toEqual(['rescue', 'obstacle:stack']);
		expect(toldStates(PLAN, 'rescue')).toEqual(['arranged', 'unknown']);
		expect(toldStates(fixFact(PLAN, 'rescue'), 'rescue')).toEqual(['arranged']);
	});
});
