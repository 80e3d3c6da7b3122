/** The words of a drawn problem: the scenario's story with its slots filled and the drawn facts told. */
import { FORCE, LENGTH, MASS, sameDimension, writeQuantity, type Language, type WriteOptions } from '#lib/quantity/index.ts';
import { givenDimension, isGivenId, type GivenId, type LanyardPlan } from '#lib/arrest/index.ts';
import { givenValue, type Problem } from './problem.ts';
import type { Scenario } from './schema.ts';

export interface Story {
	readonly title: string;
	/** Two short lines for the first screen. */
	readonly lead: string;
	/** The rest, a paragraph each; the last tells the drawn facts. */
	readonly paragraphs: readonly string[];
}

/** @returns what stands in braces in a text: the slots to be filled. */
export function slotsIn(of: string): readonly string[] {
	return [...of.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1] ?? '');
}

/** What a fact of a plan is told as: `rescue`, `obstacle:stack` and so on, each in one state. */
export type FactId = string;

/**
 * @param obstacles ids of the obstacles that the scenario knows; one that the plan lacks is in the state `none`.
 * @returns the state of every fact of a plan that a story can tell.
 */
export function factStatesOf(plan: LanyardPlan, obstacles: readonly string[]): ReadonlyMap<FactId, string> {
	const states = new Map<FactId, string>([
		['rescue', plan.rescue],
		['connectors', plan.connectors.compatible],
		['condition', plan.absorber?.condition ?? 'dry'],
		['posture', plan.worker.posture],
		['persons', String(plan.anchorage.persons)],
		['engineered', plan.anchorage.engineered],
		['longer-fall', plan.absorber?.testedForLongerFall ?? 'unknown']
	]);
	for (const id of obstacles) {
		const one = plan.below.obstacles.find((obstacle) => obstacle.id === id);
		states.set(`obstacle:${id}`, one === undefined ? 'none' : one.there ? 'there' : 'can-come');
	}
	return states;
}

/**
 * @returns title and story of a problem in a language, slots filled, with the sentences of the facts as drawn. A
 * slot that the problem has nothing for, which an inspection finds, is left as a gap.
 */
export function storyOf(problem: Problem, language: Language): Story {
	const { scenario, drawn } = problem;
	const words = scenario.words[language];
	const states = factStatesOf(drawn.plan, scenario.base.below.obstacles.map((one) => one.id));
	const told = Object.entries(words.facts)
		.map(([fact, sentences]) => sentences[states.get(fact) ?? ''] ?? '')
		.filter((sentence) => sentence !== '');
	const paragraphs = told.length === 0 ? words.body : [...words.body, told.join(' ')];
	const fill = (text: string): string => filled(text, problem, language);
	return {
		title: fill(words.title),
		lead: fill(words.lead),
		paragraphs: Object.freeze(paragraphs.map(fill))
	};
}

/** Stands where a slot has nothing to be filled with. */
const GAP = '…';

function filled(text: string, problem: Problem, language: Language): string {
	return text.replace(/\{([^{}]*)\}/g, (_, slot: string) => {
		if (slot === 'name') return problem.drawn.person;
		const value = isGivenId(slot) ? givenValue(problem, slot) : undefined;
		if (value === undefined || !isGivenId(slot)) return GAP;
		return writeQuantity(value, writingOf(problem.scenario, slot, language));
	});
}

/** How a given is written in a story: as fine as the shipped grids, in the units of the scenario. */
function writingOf(scenario: Scenario, id: GivenId, language: Language): WriteOptions {
	const dimension = givenDimension(id);
	const metric = scenario.units === 'metric';
	if (sameDimension(dimension, LENGTH)) {
		if (scenario.units === 'us-inch') return { unit: 'ft-in', inchDenominator: 2, language };
		return { unit: metric ? 'm' : 'ft', decimals: 2, language };
	}
	if (sameDimension(dimension, MASS)) return { unit: metric ? 'kg' : 'lb', language };
	if (sameDimension(dimension, FORCE)) return { unit: metric ? 'kN' : 'lbf', language };
	throw new RangeError(`${scenario.id}: a story cannot write ${id}`);
}
