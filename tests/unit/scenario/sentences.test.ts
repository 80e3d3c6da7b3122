import { describe, expect, it } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { LENGTH, MASS } from '#lib/quantity/index.ts';
import { SENTENCES, constraintOf, draw, sentenceNamed, sentenceOf, type Constraint } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import { documentWith, scenarioWith } from './document.ts';

const HALF_METRE = { value: 0.5, unit: 'm' } as const;

describe('a sentence', () => {
	it.each(SENTENCES.map((one) => [one.id, one] as const))('%s builds a constraint that the schema takes and that is told by it', (id, sentence) => {
		const amount = sentence.amount === undefined ? undefined : sentence.amount === LENGTH ? HALF_METRE : sentence.amount === MASS ? ({ value: 90, unit: 'kg' } as const) : ({ value: 4, unit: 'kN' } as const);
		const constraint = sentence.build(amount);
		expect(scenarioSchema.safeParse({ ...documentWith(), constraints: [constraint] }).error?.issues ?? []).toEqual([]);
		expect(sentenceOf(constraint)).toEqual([amount === undefined ? { id } : { id, amount }]);
	});

	it('says what it builds: an anchorage above the D-ring is a rise of nought or more', () => {
		expect(sentenceNamed('anchorage-above-d-ring')?.build()).toEqual({ of: 'rise', atLeast: { value: 0, unit: 'm' } });
		expect(sentenceNamed('free-fall-at-most')?.build({ value: 6, unit: 'ft' })).toEqual({ of: 'freeFall', atMost: { value: 6, unit: 'ft' } });
		expect(sentenceNamed('mass-at-least')?.amount).toBe(MASS);
	});

	it('binds the draws', () => {
		const shallow = sentenceNamed('free-fall-at-most')?.build({ value: 0.8, unit: 'm' });
		const scenario = { ...scenarioWith(), constraints: shallow === undefined ? [] : [shallow] };
		let drawn = 0;
		for (let seed = 0; seed < 20; seed += 1) {
			const result = draw(scenario, seed);
			if (result.kind !== 'drawn') continue;
			drawn += 1;
			const { lanyard, anchorage, worker } = result.problem.drawn.plan;
			expect(lanyard.length - (anchorage.height - worker.dRingHeight)).toBeLessThanOrEqual(0.8 + 1e-9);
		}
		expect(drawn).toBeGreaterThan(10);
	});

	it('refuses to build without its amount, or with one of another kind', () => {
		expect(() => sentenceNamed('free-fall-at-most')?.build()).toThrow('needs an amount');
		expect(() => sentenceNamed('free-fall-at-most')?.build({ value: 80, unit: 'kg' })).toThrow('kg');
		expect(sentenceNamed('free-fall')).toBeUndefined();
	});
});

describe('a constraint', () => {
	const known: Constraint[] = [
		{ of: 'freeFall', atLeast: { value: 0.4, unit: 'm' }, atMost: { value: 3, unit: 'm' } },
		{ of: 'rise', atLeast: { value: 0, unit: 'ft' } },
		{ of: 'rise', atMost: { value: -0.3, unit: 'm' } },
		{ of: 'fallFactor', atMost: { value: 1.5, unit: '1' } },
		{ of: 'obstacleTop_stack', atLeast: { value: 0.7, unit: 'm' } }
	];

	it('is told by a sentence for each of its bounds', () => {
		expect(known.map(sentenceOf)).toEqual([
			[
				{ id: 'free-fall-at-least', amount: { value: 0.4, unit: 'm' } },
				{ id: 'free-fall-at-most', amount: { value: 3, unit: 'm' } }
			],
			[{ id: 'anchorage-above-d-ring' }],
			[{ id: 'anchorage-above-d-ring-at-most', amount: { value: -0.3, unit: 'm' } }],
			[{ id: 'at-most', of: 'fallFactor', amount: { value: 1.5, unit: '1' } }],
			[{ id: 'at-least', of: 'obstacleTop_stack', amount: { value: 0.7, unit: 'm' } }]
		]);
	});

	it('comes back from what it is told by, and so does every shipped one', () => {
		const shipped = shippedScenarios().flatMap((scenario) => scenario.constraints);
		expect(shipped.length).toBeGreaterThan(20);
		for (const constraint of [...known.filter((one) => one.of !== 'rise'), ...shipped]) {
			const back = constraintOf(sentenceOf(constraint));
			expect(back.of.replace('@surface', '')).toBe(constraint.of);
			expect([back.atLeast, back.atMost]).toEqual([constraint.atLeast, constraint.atMost]);
		}
	});

	it('is about one thing', () => {
		expect(() => constraintOf([])).toThrow(RangeError);
		expect(() => constraintOf([{ id: 'anchorage-above-d-ring' }, { id: 'free-fall-at-most', amount: HALF_METRE }])).toThrow('one thing');
	});
});
