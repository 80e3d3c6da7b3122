import { describe, expect, it } from 'vitest';
import { analyse } from '#lib/arrest/index.ts';
import { TRIES_PER_AIM, draw, drawTry, type TurnedDown } from '#lib/scenario/index.ts';
import type { Scenario } from '#lib/scenario/schema.ts';
import { scenarioWith, type Document } from './document.ts';

/** Why the first tries of a scenario are turned down, when it has nothing but one draw that changes little. */
function reasonsOf(change: (document: Document) => object): readonly TurnedDown[] {
	const scenario = scenarioWith((document) => ({
		...document,
		draws: [{ sets: ['bodyMass'], from: 80, to: 90, step: 1, unit: 'kg' }],
		constraints: [],
		aims: [{ fails: 'nothing', weight: 1 }],
		...change(document)
	}));
	const result = draw(scenario, 1);
	return Object.keys(result.reasons) as TurnedDown[];
}

const base = (document: Document, part: object): object => ({ base: { ...document.base, ...part } });
const depth = (document: Document, to: string): object => base(document, { below: { depth: to, obstacles: document.base.below.obstacles } });

describe('a try is turned down', () => {
	it('never, if the plan is a good problem', () => {
		expect(reasonsOf((document) => depth(document, '6 m'))).toEqual([]);
	});

	it.each<[TurnedDown, (document: Document) => object]>([
		['refused', (document) => base(document, { lineMeetsEdge: true })],
		['constraint', () => ({ constraints: [{ of: 'availableClearance', atLeast: { value: 20, unit: 'm' } }] })],
		// Line and rise are equal: there is no free fall to ask for.
		['no-answer', (document) => base(document, { anchorage: { height: '3.38 m', strength: '15 kN' } })],
		// Required 3.78 m, available 4.90 − 1.10 = 3.80 m.
		['near-limit', (document) => depth(document, '4.9 m')],
		// A slide of 1 cm, left out, is within the tolerance of the right answer.
		['slip-looks-right', (document) => base(document, { harness: { slide: '0.01 m', capacity: '140 kg' } })],
		// The margin is as long as the elongation.
		['slips-look-alike', (document) => base(document, { margin: '1.2 m' })],
		['other-outcome', (document) => base(document, { rescue: 'not-arranged', below: { depth: '7 m', obstacles: document.base.below.obstacles } })],
		// EN 795: 12 kN, from memory.
		['from-memory', (document) => base(document, { anchorage: { height: '2.1 m', strength: '11 kN' } })]
	])('as %s', (reason, change) => {
		expect(reasonsOf(change)).toEqual([reason]);
	});

	it('as no aim of the scenario, whatever the seed, after the tries of every aim', () => {
		const scenario = scenarioWith((document) => ({
			...document,
			aims: [
				{ fails: 'rescue', weight: 1 },
				{ fails: 'connectors', weight: 1 }
			]
		}));
		for (const seed of [1, 2, 3]) {
			const result = draw(scenario, seed);
			expect(result.kind).toBe('none');
			expect(result.tries).toBe(2 * TRIES_PER_AIM);
			expect(Object.values(result.reasons).reduce((sum, count) => sum + count, 0)).toBe(result.tries);
		}
	});
});

describe('a draw', () => {
	it('comes out as its aims weigh', () => {
		const scenario = scenarioWith((document) => ({
			...document,
			aims: [
				{ fails: 'nothing', weight: 1 },
				{ fails: 'clearance', weight: 3 }
			]
		}));
		let failing = 0;
		const count = 400;
		for (let seed = 0; seed < count; seed += 1) {
			const result = draw(scenario, seed);
			if (result.kind !== 'drawn') continue;
			const outcome = analyse(result.problem.drawn.plan);
			if (outcome.kind === 'analysed' && outcome.analysis.verdict.result === 'fails') failing += 1;
		}
		expect(failing / count).toBeGreaterThan(0.68);
		expect(failing / count).toBeLessThan(0.82);
	});

	it('takes the next aim where the first cannot be met', () => {
		const scenario = scenarioWith((document) => ({
			...document,
			aims: [
				{ fails: 'rescue', weight: 99 },
				{ fails: 'nothing', weight: 1 }
			]
		}));
		const tries = [0, 1, 2, 3].map((seed) => draw(scenario, seed)).map((result) => (result.kind === 'drawn' ? result.tries : 0));
		expect(tries.every((one) => one > TRIES_PER_AIM)).toBe(true);
	});

	it('changes with the version of the scenario', () => {
		const scenario = scenarioWith();
		const next: Scenario = { ...scenario, version: scenario.version + 1 };
		const [now, then] = [draw(scenario, 7), draw(next, 7)];
		expect(now.kind === 'drawn' && then.kind === 'drawn' && now.problem.drawn).not.toEqual(then.kind === 'drawn' && then.problem.drawn);
	});

	it('of a try that was not accepted says why', () => {
		const scenario = scenarioWith();
		const later = [...Array(40).keys()].map((seed) => draw(scenario, seed)).find((result) => result.tries > 1);
		if (later?.kind !== 'drawn') throw new Error('no seed of these needs a second try');
		expect(Object.keys(later.reasons)).toContain(drawTry(scenario, later.problem.seed, 0));
	});

	it('throws if a constraint names nothing that a plan has', () => {
		// The schema refuses such a document; a scenario put together in the program has not passed it.
		const scenario: Scenario = { ...scenarioWith(), constraints: [{ of: 'girth', atLeast: { value: 1, unit: 'm' } }] };
		expect(() => draw(scenario, 1)).toThrow('girth');
	});
});
