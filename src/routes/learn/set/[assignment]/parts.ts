/** The problems of a set: how they are drawn and shown, and what an answer to one comes to. It comes behind the first paint. */
import { allRight, outcomesOf, type Grades, type SetAnswer } from '#lib/flow/index.ts';
import { draw, type Ask, type Problem as Drawn, type Scenario } from '#lib/scenario/index.ts';

export { default as Problem } from '../../problem/Problem.svelte';
export { asksOfPlace } from '#lib/flow/index.ts';
export { ruleTable } from '#lib/rules/index.ts';
export { drawBackdrop } from '#lib/scene/index.ts';

/** @returns the problem of a place; undefined if its seed gives none, which the server has ruled out. */
export function problemOf(scenario: Scenario, seed: number): Drawn | undefined {
	const result = draw(scenario, seed);
	return result.kind === 'drawn' ? result.problem : undefined;
}

/** @returns what answers come to, as the flow takes it and as the server counts it. */
export function answerTo(place: number, asks: readonly Ask[], grades: Grades): SetAnswer {
	return { place, right: allRight(asks, grades), critical: outcomesOf(asks, grades).filter((one) => one.critical).length };
}
