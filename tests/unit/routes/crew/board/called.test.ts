import { expect, test } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { gradeAsk, type Answer } from '#lib/grading/index.ts';
import { draw, firstDrawn } from '#lib/scenario/index.ts';
import { counted, MOST_CALLED, withCalled, type Called } from '../../../../../src/routes/crew/board/model/called.ts';

const scenario = shippedScenarios().find((one) => one.id === 'bridge-bearing');
if (scenario === undefined) throw new Error('bridge-bearing is not shipped');
const problem = firstDrawn((seed) => draw(scenario, seed), 5);

function call(list: readonly Called[], answer: Answer, ask = 'required'): readonly Called[] {
	return withCalled(list, answer, gradeAsk(problem, ask, answer, { language: 'en' }));
}

function numbers(...texts: string[]): readonly Called[] {
	return texts.reduce<readonly Called[]>((list, text) => call(list, { kind: 'number', text }), []);
}

test('a number that is called again in another way counts as one with two voices', () => {
	const list = numbers('2.3', '2.30 m', '3.1', '230 cm');
	expect(list.map(({ answer, count }) => [answer.kind === 'number' ? answer.text : '', count])).toEqual([
		['2.3', 3],
		['3.1', 1]
	]);
});

test('an answer goes with its last voice, and the others stay', () => {
	const list = numbers('2.3', '3.1', '3.1');
	const [first, second] = list;
	expect(counted(list, first?.id ?? '', -1)).toEqual([second]);
	expect(counted(list, second?.id ?? '', -1).map((one) => one.count)).toEqual([1, 1]);
});

test('"it cannot be stated" and the two decisions are answers of their own', () => {
	const stated = call(call(numbers('2.3'), { kind: 'not-stated' }), { kind: 'not-stated' });
	expect(stated.map((one) => one.count)).toEqual([1, 2]);
	const votes = (['tie-off', 'do-not-tie-off', 'tie-off'] as const).reduce<readonly Called[]>((list, decision) => call(list, { kind: 'decision', decision }, 'decision'), []);
	expect(votes.map(({ id, count }) => [id, count])).toEqual([
		['tie-off', 2],
		['do-not-tie-off', 1]
	]);
});

test('the list ends where a screen does; voices for what is there still count', () => {
	const full = numbers(...Array.from({ length: MOST_CALLED }, (_, i) => String(i + 1)));
	expect(call(full, { kind: 'number', text: '99' })).toBe(full);
	expect(call(full, { kind: 'number', text: '1.0' })[0]?.count).toBe(2);
});
