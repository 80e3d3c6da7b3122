/** The scenarios that are shipped, and problems drawn from them for the benches. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { draw, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import { ROOT } from '../../../src/cli/root.ts';

const FOLDER = join(ROOT, 'src/lib/course/scenarios');

/** @returns all shipped scenarios, in the order of their files' names. @throws if one cannot be read. */
export function shippedScenarios(): readonly Scenario[] {
	return readdirSync(FOLDER)
		.filter((file) => file.endsWith('.json'))
		.sort()
		.map((file) => scenarioSchema.parse(JSON.parse(readFileSync(join(FOLDER, file), 'utf8'))));
}

/** Seeds that may pass without a problem before a scenario counts as one that cannot be drawn. */
const MOST_EMPTY = 200;

/** @returns the first `count` problems of a scenario, from seed 0 up. @throws if it draws next to none. */
export function problemsOf(scenario: Scenario, count: number): readonly Problem[] {
	const problems: Problem[] = [];
	for (let seed = 0, empty = 0; problems.length < count; seed += 1) {
		const result = draw(scenario, seed);
		if (result.kind === 'drawn') problems.push(result.problem);
		else empty += 1;
		if (empty > MOST_EMPTY) throw new Error(`${scenario.id}: ${empty} seeds without a problem`);
	}
	return problems;
}
