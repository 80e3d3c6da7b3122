/** The schema of what a practice set holds. */
import * as z from 'zod';
import type { SetContent } from '#lib/flow/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { SLIPS, type SlipId } from '#lib/slips/index.ts';
import { partOf } from '../attempts/answer.ts';
import { problemsOf } from '../problems.ts';
import { setProblem, type SetProblem } from './problem.ts';

/** Most scenarios of a set. @reason more than are shipped: whoever picks them all still can. */
export const MOST_SCENARIOS = 30;
/** Most problems of a round. @reason an hour or two of work; a longer set is two. */
export const MOST_PROBLEMS = 40;
/** Most slips that a set aims at. @reason more aims than this are none. */
export const MOST_AIMS = 6;
const LONGEST_ID = 40;
const MOST_VERSIONS = 1_000_000;
const MOST_ASKS = 6;

const slipId = z.custom<SlipId>((value) => SLIPS.some((slip) => slip.id === value), { error: 'is no slip; give the id of one in the catalogue' });

/** Ids that stand twice. */
function twice(ids: readonly string[]): readonly string[] {
	return ids.filter((id, i) => ids.indexOf(id) !== i);
}

/** What a practice set holds, as it is given and stored. Whether the scenarios are there is asked of `contentProblems`. */
export const setContentSchema: z.ZodType<SetContent> = z
	.strictObject({
		scenarios: z
			.array(
				z.strictObject({
					id: z.string().min(1).max(LONGEST_ID),
					version: z.int().min(1).max(MOST_VERSIONS),
					asks: z.array(z.string().min(1).max(LONGEST_ID)).min(1).max(MOST_ASKS)
				})
			)
			.min(1)
			.max(MOST_SCENARIOS),
		count: z.int().min(1).max(MOST_PROBLEMS),
		rule: z.strictObject({ right: z.int().min(1).max(MOST_PROBLEMS), critical: z.int().min(0).max(MOST_PROBLEMS) }),
		sameForAll: z.boolean(),
		language: z.enum(['en', 'es']).nullable(),
		aims: z.array(slipId).max(MOST_AIMS)
	})
	.check(({ value, issues }) => {
		const { scenarios, count, rule, aims } = value;
		for (const [key, most] of [['right', rule.right], ['critical', rule.critical]] as const) {
			if (most <= count || count < 1) continue;
			issues.push({ code: 'custom', input: most, path: ['rule', key], message: `is more than the ${count} problems of the set; give at most ${count}` });
		}
		for (const id of new Set(twice(scenarios.map((one) => one.id)))) {
			const at = scenarios.findLastIndex((one) => one.id === id);
			issues.push({ code: 'custom', input: id, path: ['scenarios', at, 'id'], message: 'stands there twice; choose each scenario once' });
		}
		if (twice(aims).length > 0) {
			issues.push({ code: 'custom', input: aims, path: ['aims'], message: 'names a slip twice; name each once' });
		}
	});

/** What came of reading a set's content. */
export type ContentResult =
	| { readonly kind: 'read'; readonly content: SetContent }
	| { readonly kind: 'refused'; readonly problems: readonly SetProblem[] };

/** @returns the content of a set as it was given, from anywhere; or what is wrong with it. */
export function readContent(input: unknown): ContentResult {
	const parsed = setContentSchema.safeParse(input);
	if (parsed.success) return { kind: 'read', content: parsed.data };
	const problems = problemsOf(parsed.error.issues, input, { whole: 'content' }).map((one) => ({ ...one, code: codeOf(one.field) }));
	return { kind: 'refused', problems };
}

/** What a problem is called by the field that it stands at. */
function codeOf(field: string): SetProblem['code'] {
	if (field === 'scenarios') return 'scenarios';
	if (field === 'count') return 'count';
	return field.startsWith('rule') ? 'rule' : 'content';
}

/**
 * @param scenarios the documents that were found for the content's scenarios
 * @returns what the content names that is not there, or cannot be asked so
 */
export function contentProblems(content: SetContent, scenarios: readonly Scenario[]): readonly SetProblem[] {
	return content.scenarios.flatMap(({ id, version, asks }, i): readonly SetProblem[] => {
		const scenario = scenarios.find((one) => one.id === id && one.version === version);
		const field = `scenarios.${i}`;
		if (scenario === undefined) return [setProblem('unknown-scenario', field, 'is not known here', 'choose a published scenario')];
		if (partOf(scenario, asks) !== undefined) return [];
		return [setProblem('asks', `${field}.asks`, 'is no part of this scenario that can be asked by itself', 'give ids of its asks in its order, a decision only with its numbers')];
	});
}
