import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FIXED_GIVEN_IDS, targetKey, type Analysis, analyse } from '#lib/arrest/index.ts';
import { SHIPPED_IDS } from '#lib/course/index.ts';
import { shippedScenario, shippedScenarios } from '#lib/course/shipped.ts';
import { valuesOf } from '#lib/expression/index.ts';
import { RULE_TABLES } from '#lib/rules/index.ts';
import { CHANGED, draw, inputsFor, inspect, numberAsks, storyOf, targetOf, variantsFor, type Problem } from '#lib/scenario/index.ts';
import { BACKDROPS, CELLS } from '#lib/scenario/schema.ts';
import { SLIPS } from '#lib/slips/index.ts';

const scenarios = shippedScenarios();
const each = scenarios.map((scenario) => [scenario.id, scenario] as const);

/** The first draws of every scenario: what a learner can come across. */
const problems: readonly Problem[] = scenarios.flatMap((scenario) =>
	Array.from({ length: 150 }, (_, seed) => draw(scenario, seed)).flatMap((result) => (result.kind === 'drawn' ? [result.problem] : []))
);

function analysisOf(problem: Problem): Analysis {
	const outcome = analyse(problem.drawn.plan);
	if (outcome.kind === 'refused') throw new Error(`refused: ${outcome.refusal.why}`);
	return outcome.analysis;
}

/** Everything that a function finds in the problems, once each, sorted. */
function found<T extends string>(of: (problem: Problem) => readonly T[]): T[] {
	return [...new Set(problems.flatMap(of))].sort();
}

describe('shipped scenarios', () => {
	it('are the files of the folder, listed in the order in which they are offered', () => {
		const files = readdirSync(join(import.meta.dirname, '../../../src/lib/course/scenarios'));
		expect(files.toSorted()).toEqual(SHIPPED_IDS.map((id) => `${id}.json`).toSorted());
		expect(scenarios.map((one) => one.id)).toEqual(SHIPPED_IDS);
		expect(shippedScenario('lift-shaft')?.id).toBe('lift-shaft');
		expect(shippedScenario('no-such')).toBeUndefined();
	});

	it('lead from easy to hard', () => {
		const rank = { easy: 0, middle: 1, hard: 2 };
		const ranks = scenarios.map((one) => rank[one.difficulty]);
		expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
		expect(new Set(ranks).size).toBe(3);
	});

	it.each(each)('%s inspects without a fault over 500 draws', (_, scenario) => {
		const inspection = inspect(scenario, { draws: 500 });
		expect(inspection.findings.filter((one) => one.severity === 'fault')).toEqual([]);
		expect(inspection.drawn).toBe(500);
	});

	it.each(each)('%s asks for a number and for a decision that goes with it', (_, scenario) => {
		expect(numberAsks(scenario).length).toBeGreaterThan(0);
		const decisions = scenario.asks.flatMap((ask) => (ask.kind === 'decision' ? [ask] : []));
		expect(decisions).toHaveLength(1);
		expect(decisions[0]?.with.length).toBeGreaterThan(0);
	});

	it.each(each)('%s tells the same facts and names the same obstacles in both languages', (_, scenario) => {
		const { en, es } = scenario.words;
		expect(Object.keys(es.obstacles)).toEqual(Object.keys(en.obstacles));
		expect(Object.keys(es.places)).toEqual(Object.keys(en.places));
		expect(es.body).toHaveLength(en.body.length);
		const states = (facts: typeof en.facts): string[] =>
			Object.entries(facts).flatMap(([fact, sentences]) => Object.entries(sentences).map(([state, text]) => `${fact} ${state} ${text === ''}`));
		expect(states(es.facts)).toEqual(states(en.facts));
	});

	it.each(each)('%s writes the Spanish names of places and obstacles with their article, small, so that sentences can hold them', (_, scenario) => {
		const { places, obstacles } = scenario.words.es;
		for (const name of [...Object.values(places), ...Object.values(obstacles)]) expect(name).toMatch(/^(el|la|los|las) /);
	});

	it('never call anything safe, and leave no slot unfilled', () => {
		for (const problem of problems) {
			for (const language of ['en', 'es'] as const) {
				const { title, lead, paragraphs } = storyOf(problem, language);
				const text = [title, lead, ...paragraphs].join(' ');
				expect(text).not.toMatch(/\b(un)?safe|\b(in)?segur[oa]/i);
				expect(text).not.toMatch(/[{}]|undefined|NaN/);
			}
		}
	});
});

describe('between them, what the shipped scenarios draw', () => {
	it('is every given', () => {
		const ids = found(({ resolved, drawn }) => [
			...[...resolved.givens].filter(([, given]) => given.value !== 0).map(([id]) => id as string),
			...Object.keys(drawn.decoys)
		]);
		expect(ids).toEqual(expect.arrayContaining([...FIXED_GIVEN_IDS]));
	});

	it('is every backdrop, cell, unit system and rule table', () => {
		expect([...new Set(scenarios.map((one) => one.backdrop))].sort()).toEqual([...BACKDROPS].sort());
		expect([...new Set(scenarios.flatMap((one) => one.asks.map((ask) => ask.cell)))].sort()).toEqual([...CELLS].sort());
		expect([...new Set(scenarios.map((one) => one.units))].sort()).toEqual(['metric', 'us-decimal', 'us-inch']);
		expect(found(({ drawn }) => [drawn.plan.rules])).toEqual(RULE_TABLES.map((table) => table.id).toSorted());
	});

	it('is kneeling and standing, on the surface and above it, straight below and to one side', () => {
		expect(found(({ drawn }) => [drawn.plan.worker.posture])).toEqual(['kneeling', 'standing']);
		expect(found(({ resolved }) => [String(resolved.shape.raised)])).toEqual(['false', 'true']);
		expect(found(({ resolved }) => [String(resolved.shape.offset)])).toEqual(['false', 'true']);
	});

	it('is connectors that hang, that lie slack, and none; both body customs; gear that is dry, wet or frozen', () => {
		expect(found(({ drawn }) => [drawn.plan.anchorage.connector?.lies ?? 'none'])).toEqual(['hanging', 'none', 'slack']);
		expect(found(({ resolved }) => [resolved.shape.custom])).toEqual(['d-ring-and-stretch', 'full-height']);
		expect(found(({ drawn }) => [drawn.plan.absorber?.condition ?? 'none'])).toEqual(['dry', 'wet-or-frozen']);
	});

	it('is anchorages above the head, between head and D-ring, and below the D-ring', () => {
		const places = found(({ drawn: { plan }, resolved }) => {
			const dRing = (resolved.givens.get('dRingNow')?.value ?? 0) + plan.worker.standingHeight;
			const head = (plan.worker.stature ?? 0) - plan.worker.dRingHeight + dRing;
			return [plan.anchorage.height > head ? 'above-head' : plan.anchorage.height > dRing ? 'between' : 'below'];
		});
		expect(places).toEqual(['above-head', 'below', 'between']);
	});

	it('is obstacles that are always there, that can come, that are there and can go, on the path and off it', () => {
		const kinds = found(({ drawn: { plan }, resolved }) =>
			plan.below.obstacles.map((one) => {
				const path = resolved.shape.obstacles.includes(one.id) ? 'on-path' : 'off-path';
				return `${one.present} ${one.there ? 'there' : 'not-there'} ${path}`;
			})
		);
		expect(kinds).toEqual(['always there off-path', 'always there on-path', 'sometimes not-there on-path', 'sometimes there on-path']);
	});

	it('is every number that can be asked, clearances from every datum', () => {
		const asked = new Set(scenarios.flatMap((one) => numberAsks(one).map((ask) => targetKey(targetOf(ask)))));
		expect([...asked].sort()).toEqual(
			[
				'freeFall',
				'swingDrop',
				'massAttached',
				'lowestCapacity',
				'arrestForce',
				'expectedElongation',
				'bodyWeights',
				'reachDistance',
				...['anchorage', 'connector', 'd-ring', 'surface'].flatMap((datum) => [`requiredClearance@${datum}`, `availableClearance@${datum}`])
			].sort()
		);
	});

	it('gives every slip a place in which it changes the number', () => {
		const acting = found((problem) =>
			numberAsks(problem.scenario).flatMap((ask) => {
				const set = variantsFor(problem, ask);
				const [right = NaN, ...altered] = valuesOf(set.singleProgram, inputsFor(problem, set));
				return set.singles.flatMap((single, i) => {
					const value = altered[i] ?? NaN;
					return value > 0 && Math.abs(value - right) > CHANGED ? single.slips : [];
				});
			})
		);
		expect(acting).toEqual(SLIPS.map((slip) => slip.id).toSorted());
	});

	it('fails by many different checks, and sometimes cannot be shown', () => {
		const topics = found((problem) => {
			const { checks, verdict } = analysisOf(problem);
			if (verdict.result === 'cannot-be-shown') return ['unknown'];
			return checks.filter((check) => check.decides && check.status === 'failed').map((check) => check.topic);
		});
		expect(topics).toEqual([
			'anchorage-strength',
			'capacity',
			'clearance',
			'connectors',
			'deceleration',
			'force',
			'free-fall',
			'lanyard-length',
			'reach',
			'rescue',
			'unknown'
		]);
	});

	it('rests no verdict on a limit that is only remembered', () => {
		for (const problem of problems) {
			const { checks } = analysisOf(problem);
			expect(checks.filter((check) => !check.decides && check.status === 'failed')).toEqual([]);
		}
	});

	it('sometimes leaves the required clearance unstated, because the label does not cover the plan', () => {
		const unstated = problems.filter((problem) => {
			const finding = analysisOf(problem).quantities.get('requiredClearance@surface');
			return finding?.known === false && finding.absence.why === 'outside-label';
		});
		expect(unstated.some((problem) => numberAsks(problem.scenario).some((ask) => ask.quantity === 'requiredClearance'))).toBe(true);
	});
});
