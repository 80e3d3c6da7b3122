/** Nothing that is wrong with a scenario is passed over, and each fault is told by field, fault and remedy. */
import { describe, expect, it } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { draw, drawTry } from '#lib/scenario/index.ts';
import type { InputProblem } from '#lib/server/index.ts';
import { readScenario } from '../../src/cli/underfoot/files.ts';
import { FULL_SCENARIO } from '../support/documents.ts';
import { fieldOf, mutationsOf, withValue, type Mutation, type Path } from '../support/mutations.ts';

/** What a scenario may leave out, beside what its base plan may; a list may lose an entry as long as one is left. */
const OPTIONAL = [
	/^people\.\d+$/,
	/^words\.(en|es)\.(facts|facts\..+|body\.0|places\.(standing|otherFloor))$/,
	/^draws\.\d+$/,
	/^draws\.1\.above$/,
	/^draws\.\d+\.among\.\d+$/,
	/^(decoys|constraints|equalSlips)(\.\d+)?$/,
	/^constraints\.0\.(atLeast|atMost)$/,
	/^aims\.\d+$/,
	// Without an ask the decision that stands on it is at fault: see below.
	/^asks\.[012]$/,
	/^asks\.2\.with\.\d+$/
];

/** Lists of one entry must keep it. */
const LAST_OF_ITS_LIST = new Set(['draws.5.among.0', 'draws.6.among.0']);

/** What the base plan may leave out is proved in bad-input-plan.test.ts. */
function mayBeLeftOut(field: string): boolean {
	if (field.startsWith('base.')) return true;
	return !LAST_OF_ITS_LIST.has(field) && OPTIONAL.some((one) => one.test(field));
}

function problemsWith(document: unknown): readonly InputProblem[] {
	const read = readScenario(document);
	return read.kind === 'refused' ? read.problems : [];
}

/** Where a problem of a mutation may be told: at its field, or, for a part of one form among several, beside it. */
function isNamed(mutation: Mutation, problems: readonly InputProblem[]): boolean {
	const field = mutation.path.length === 0 ? 'scenario' : fieldOf(mutation.path);
	if (problems.some((problem) => problem.field === field)) return true;
	// An entry that a list lost is the list's own fault.
	const isEntry = typeof mutation.path.at(-1) === 'number';
	// A form that lost the field it is told by may be taken for another form: then a field beside it is named.
	const parent = fieldOf(mutation.path.slice(0, -1));
	if (mutation.how === 'left out' && isEntry) return problems.some((problem) => problem.field === parent || parent.startsWith(`${problem.field}.`));
	// A bound without a side is the bound's own fault.
	if (mutation.how === 'left out' && field === 'constraints.1.atLeast') return problems.some((problem) => problem.field === parent);
	return mutation.how === 'left out' && /^(draws|decoys)\.\d+$/.test(parent) && problems.some((problem) => problem.field.startsWith(`${parent}.`));
}

describe('a scenario', () => {
	it('is read when nothing is wrong with it', () => {
		expect(problemsWith(FULL_SCENARIO)).toEqual([]);
	});

	it('is refused for every wrong field, by its name, with what is wrong and what would be right', () => {
		let seen = 0;
		for (const mutation of mutationsOf(FULL_SCENARIO)) {
			const field = fieldOf(mutation.path);
			const told = problemsWith(mutation.document);
			const what = `${field}: ${mutation.how}: ${JSON.stringify(told).slice(0, 300)}`;
			if (mutation.how === 'left out' && mayBeLeftOut(field)) continue;
			expect(isNamed(mutation, told), what).toBe(true);
			for (const problem of told) {
				expect(problem.problem, what).toMatch(/^is ./);
				expect(problem.remedy, what).toMatch(/^(give|write|leave|use|check|measure|put|a posture|an obstacle) /);
				expect(JSON.stringify(problem).length, what).toBeLessThan(2500);
				expect(JSON.stringify(problem), what).not.toMatch(/Invalid|undefined|\[object|Error|\.ts:/);
			}
			seen += 1;
		}
		expect(seen).toBeGreaterThan(1500);
	});

	it.each<[Path, unknown, string, RegExp]>([
		[['base', 'rules'], 'moon', 'base.rules', /no rule table.*one of us-construction/],
		[['base', 'practice'], 'moon', 'base.practice', /no practice table/],
		[['base', 'absorber', 'class'], 'moon', 'base.absorber.class', /no absorber class/],
		[['base', 'worker', 'dRingHeight'], '1.9 m', 'base.worker.dRingHeight', /above the head/],
		[['base', 'lanyard', 'length'], '3 km', 'base.lanyard.length', /0.3 m to 6 m/],
		[['draws', 0, 'sets', 0], 'toString', 'draws.0.sets.0', /no id of a given/],
		[['draws', 0, 'sets', 0], 'obstacleTop_crane', 'draws.0.sets.0', /no obstacle of the base plan/],
		[['draws', 0, 'unit'], 'kg', 'draws.0.unit', /measures no length/],
		[['draws', 0, 'to'], 1, 'draws.0.to', /below "from"/],
		[['draws', 0, 'step'], -0.01, 'draws.0.step', /more than 0/],
		[['draws', 0, 'step'], 1e-9, 'draws.0.step', /coarser/],
		[['draws', 1, 'above'], 'anchorageHeight', 'draws.1.above', /set by no draw before/],
		[['draws', 8, 'id'], 'crane', 'draws.8.id', /no obstacle of the base plan.*panels/],
		[['draws', 7, 'among', 0], -1, 'draws.7.among.0', /at least 1/],
		[['decoys', 2, 'limit'], 'moon', 'decoys.2.limit', /no limit of the rule table/],
		[['decoys', 3, 'practice'], 'moon', 'decoys.3.practice', /no practice table/],
		[['decoys', 4, 'class'], 'moon', 'decoys.4.class', /no absorber class/],
		[['constraints', 0, 'of'], 'constructor', 'constraints.0.of', /neither a given nor a quantity/],
		[['constraints', 0, 'atLeast', 'unit'], 'kg', 'constraints.0.atLeast.unit', /measures no length/],
		[['aims', 0, 'fails'], 'gravity', 'aims.0.fails', /one of "nothing"/],
		[['aims', 0, 'weight'], 0, 'aims.0.weight', /at least 1/],
		[['equalSlips', 0, 1], 'laziness', 'equalSlips.0.1', /no slip that there is/],
		[['asks', 0, 'precision', 'unit'], 'kg', 'asks.0.precision.unit', /measures no length/],
		[['asks', 0, 'precision', 'value'], 0, 'asks.0.precision.value', /more than 0/],
		[['asks', 1, 'id'], 'free-fall', 'asks.1.id', /used twice/],
		[['asks', 2, 'with', 0], 'later', 'asks.2.with', /no ask before it/],
		[['words', 'es', 'lead'], '{moon}', 'words.es.lead', /has the slot/],
		[['words', 'en', 'obstacles', 'panels'], undefined, 'words.en.obstacles.panels', /missing.*give the obstacle a name/],
		[['words', 'en', 'facts', 'weather'], { fine: 'x' }, 'words.en.facts.weather', /no fact of the plan/],
		[['words', 'en', 'facts', 'rescue', 'maybe'], 'x', 'words.en.facts.rescue.maybe', /no state of this fact/],
		[['version'], -1, 'version', /at least 1/],
		[['id'], 'Silo Top', 'id', /no short name/]
	])('is refused where %j is %j', (path, value, field, words) => {
		const told = problemsWith(withValue(FULL_SCENARIO, path, value));
		const found = told.find((problem) => problem.field === field);
		expect(`${found?.problem} ${found?.remedy}`, JSON.stringify(told)).toMatch(words);
	});

	it('that needs an absorber for a draw is refused when its plan has none', () => {
		const told = problemsWith(withValue(FULL_SCENARIO, ['base', 'absorber'], null));
		expect(told.map((problem) => problem.field)).toContain('draws.5.fact');
	});

	it('that is read can be drawn, whatever was left out of it', () => {
		let seen = 0;
		for (const mutation of mutationsOf(FULL_SCENARIO)) {
			if (mutation.how !== 'left out') continue;
			const read = readScenario(mutation.document);
			if (read.kind === 'refused') continue;
			// A single aim that is never met is looked for longest: one try is as good as all.
			expect(() => drawTry(read.value, 1, 0), fieldOf(mutation.path)).not.toThrow();
			seen += 1;
		}
		expect(seen).toBeGreaterThan(50);
	});

	it('that is shipped is read, and draws without a fault', () => {
		for (const scenario of shippedScenarios()) {
			for (let seed = 0; seed < 3; seed += 1) expect(draw(scenario, seed).tries, scenario.id).toBeGreaterThan(0);
		}
	});
});
