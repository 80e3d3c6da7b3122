/** From a document to a scenario, or every field that stands against it. */
import { toSI } from '#lib/quantity/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { problemsOf, type InputProblem } from '../problems.ts';
import { named, type JsonObject } from './document.ts';

/** What came of parsing. */
export type Parsing =
	| { readonly kind: 'parsed'; readonly scenario: Scenario; readonly document: JsonObject }
	| { readonly kind: 'refused'; readonly problems: readonly InputProblem[] };

/**
 * Parses a document under the id and version that it is to have here, whatever it says itself. Refused is what does not
 * fit the schema, constraints that exclude one another, and texts that hold more than words.
 */
export function parseDocument(value: JsonObject, id: string, version: number): Parsing {
	const document = named(value, id, version);
	const parsed = scenarioSchema.safeParse(document);
	if (!parsed.success) return { kind: 'refused', problems: problemsOf(parsed.error.issues, document, { whole: 'document' }) };
	const scenario = parsed.data;
	const problems = [...textProblems(scenario.people, 'people'), ...textProblems(scenario.words, 'words'), ...contradictions(scenario)];
	return problems.length > 0 ? { kind: 'refused', problems: problems.slice(0, MOST_PROBLEMS) } : { kind: 'parsed', scenario, document };
}

/** @reason as many as the schema's problems are told at once. */
const MOST_PROBLEMS = 20;

/** What begins a tag of a page. It would be shown as it stands, and is no word. */
const TAG = /<[/!?]?[a-z]/i;

/** What is wrong with the texts in a part of a document, whatever its form. */
function textProblems(part: unknown, field: string): readonly InputProblem[] {
	if (typeof part === 'string') {
		return TAG.test(part) ? [{ field, problem: 'holds a tag such as those of a web page', remedy: 'write words alone, without < before a letter' }] : [];
	}
	if (typeof part !== 'object' || part === null) return [];
	return Object.entries(part).flatMap(([key, value]) => textProblems(value, `${field}.${key}`));
}

/** Pairs of constraints on one number that no number keeps: the lower bound of one is above the upper bound of the other. */
function contradictions({ constraints }: Scenario): readonly InputProblem[] {
	return constraints.flatMap(({ of, atLeast }, i) => {
		if (atLeast === undefined) return [];
		const k = constraints.findIndex((other) => other.of === of && other.atMost !== undefined && toSI(other.atMost.value, other.atMost.unit) < toSI(atLeast.value, atLeast.unit));
		if (k < 0) return [];
		const where = k === i ? 'its own "atMost"' : `"atMost" of constraints.${k}`;
		return [{ field: `constraints.${i}.atLeast`, problem: `is ${atLeast.value} ${atLeast.unit}, which is above ${where}`, remedy: 'give bounds that one number can keep' }];
	});
}
