/** Answered site problems as a browser sends them. */
import { shippedScenario } from '#lib/course/shipped.ts';
import { draw, type Problem } from '#lib/scenario/index.ts';
import type { SentBody } from '#lib/server/people/demo-answers.ts';

export { answered, type SentBody } from '#lib/server/people/demo-answers.ts';

/** @returns the shipped problem of a seed. */
export function problemOf(scenario: string, seed: number): Problem {
	const found = shippedScenario(scenario);
	if (found === undefined) throw new Error(`no scenario ${scenario} is shipped`);
	const result = draw(found, seed);
	if (result.kind === 'none') throw new Error(`${scenario} has no problem for seed ${seed}`);
	return result.problem;
}

/** @returns the same with one number answer replaced. */
export function answering(body: SentBody, ask: string, text: string): SentBody {
	return { ...body, answers: { ...body.answers, [ask]: { kind: 'number', text } } };
}
