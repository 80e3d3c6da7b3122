/** Whole problems of a lesson: how they are drawn and shown, and what an answer to one says. */
import { draw, firstDrawn, type Problem as Drawn, type Scenario } from '#lib/scenario/index.ts';

export { default as Problem } from '../../../problem/Problem.svelte';
export { allRight, creditsOf, foundSlips } from '#lib/flow/index.ts';
export { ruleTable } from '#lib/rules/index.ts';
export { drawBackdrop } from '#lib/scene/index.ts';

/** @returns the problem that a lesson's seed stands for: the first that can be drawn from it on, as the server has it. */
export function problemFrom(scenario: Scenario, seed: number): Drawn {
	return firstDrawn((one) => draw(scenario, one), seed);
}
