import * as z from 'zod';
import { DRAW_VERSION, draw, givenValue, storyOf, type Ask, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { givenDimension, isGivenId } from '#lib/arrest/index.ts';
import { lanyardPlanSchema } from '#lib/arrest/schema.ts';
import { analysisOf, rightValue } from '#lib/grading/index.ts';
import { dimensionOf, type Language } from '#lib/quantity/index.ts';
import { SLIP_SET_VERSION } from '#lib/slips/index.ts';
import { refuse, type Outcome, type Read, type Refused } from './outcome.ts';
import { written, type UnitSystem } from './writing.ts';
import { verdictWords } from './words.ts';
import type { Messages } from '#lib/text/index.ts';

/**
 * Does something with a scenario, and says so if the scenario cannot be drawn: a schema cannot foresee every
 * combination of parts, and an author must be told instead of shown a failure of the program.
 */
export function drawingFrom<Result>(work: () => Result): Result | Refused {
	try {
		return work();
	} catch (error) {
		if (!(error instanceof RangeError || error instanceof ReferenceError)) throw error;
		return refuse('SCENARIO', `cannot be drawn: ${error.message}`, 'correct its draws, its base plan or its asks');
	}
}

/** @returns the site problem of a seed, or why the seed gives none. */
export function drawProblem(scenario: Scenario, seed: number): Read<Problem> {
	const result = drawingFrom(() => draw(scenario, seed));
	if (result.kind === 'refused') return result;
	if (result.kind === 'drawn') return { kind: 'read', value: result.problem };
	const reasons = Object.entries(result.reasons).map(([reason, count]) => `${reason} ${count}`);
	return refuse('--seed', `gives no problem in ${result.tries} tries (${reasons.join(', ')})`, 'give another seed, or widen the draws of the scenario');
}

/** The units in which a scenario writes its numbers. */
export function systemOf(scenario: Scenario): UnitSystem {
	return scenario.units === 'metric' ? 'metric' : 'us';
}

/** What names a drawn problem for good. */
export function provenance(problem: Problem): object {
	return {
		scenario: problem.scenario.id,
		version: problem.scenario.version,
		drawVersion: DRAW_VERSION,
		slipSetVersion: SLIP_SET_VERSION,
		seed: problem.seed,
		acceptedTry: problem.acceptedTry
	};
}

/** A drawn problem: its story, its plan as a document, its decoys, its asks with the right answers. */
export function toldProblem(problem: Problem, language: Language, words: Messages): Outcome {
	const { drawn, scenario } = problem;
	const system = systemOf(scenario);
	const analysis = analysisOf(problem);
	return {
		kind: 'done',
		output: {
			kind: 'drawn',
			...provenance(problem),
			units: scenario.units,
			person: drawn.person,
			story: storyOf(problem, language),
			plan: z.encode(lanyardPlanSchema, drawn.plan),
			decoys: Object.keys(drawn.decoys).flatMap((id) => {
				const value = isGivenId(id) ? givenValue(problem, id) : undefined;
				return value === undefined || !isGivenId(id) ? [] : [{ given: id, value: written(value, givenDimension(id), system) }];
			}),
			asks: scenario.asks.map((ask) => toldAsk(problem, ask, system)),
			verdict: { ...analysis.verdict, words: verdictWords(analysis, words) },
			caution: words.verdict.caution
		}
	};
}

function toldAsk(problem: Problem, ask: Ask, system: UnitSystem): object {
	if (ask.kind === 'decision') return { ...ask, right: analysisOf(problem).verdict.decision };
	const right = rightValue(problem, ask);
	return { ...ask, right: right === undefined ? 'not-stated' : written(right, dimensionOf(ask.precision.unit), system) };
}
