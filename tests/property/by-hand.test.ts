/**
 * The engine's altered trees against the same slips worked out by hand (tests/support/by-hand), on
 * random plans of every shape: which slips apply, alone and by two, and what each answers.
 * No outside source: two independent ways to the same number check each other.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { valuesOf } from '#lib/expression/index.ts';
import { inputsFor, numberAsks, variantsFor } from '#lib/scenario/index.ts';
import { SLIPS, variantsOf, type VariantSet } from '#lib/slips/index.ts';
import { problemsOf, shippedScenarios } from '../bench/simulated/shipped.ts';
import { handTargetOf, handValuesOf } from '../support/by-hand/from-problem.ts';
import { engineContext, engineInputs } from '../support/by-hand/to-engine.ts';
import { mistakesIn, SLIPS_IN_ORDER, type HandDatum, type HandTarget, type HandValues } from '../support/by-hand/index.ts';
import { handPlan } from './arbitraries/hand-plan.ts';

const TARGETS: readonly HandTarget[] = [
	...(['anchorage', 'connector', 'surface', 'd-ring'] as const).flatMap((datum: HandDatum) => [
		{ quantity: 'requiredClearance' as const, datum },
		{ quantity: 'availableClearance' as const, datum }
	]),
	{ quantity: 'freeFall' },
	{ quantity: 'swingDrop' },
	{ quantity: 'massAttached' },
	{ quantity: 'lowestCapacity' },
	{ quantity: 'arrestForce' },
	{ quantity: 'expectedElongation' },
	{ quantity: 'bodyWeights' }
];

interface Answers {
	readonly right: number;
	readonly singles: ReadonlyMap<string, number>;
	/** The step in which each single slip acts. */
	readonly steps: ReadonlyMap<string, string>;
	readonly pairs: ReadonlyMap<string, number>;
}

/** What the engine's variants give for a plan by hand. */
function engineAnswers(values: HandValues, target: HandTarget): Answers {
	const set = variantsOf(engineContext(values, target));
	return answersOf(set, valuesOf(set.wholeProgram, engineInputs(values, set.inputs)));
}

/** The variants that apply: those of a finite positive value that is neither the right one nor, of a pair, a single's. */
function answersOf(set: VariantSet, numbers: Float64Array): Answers {
	const right = numbers[0] ?? NaN;
	const differs = (a: number, b: number): boolean => !Number.isFinite(b) || Math.abs(a - b) > 1e-9;
	const applies = (value: number): boolean => Number.isFinite(value) && value > 0 && differs(value, right);
	const alone = new Map(set.singles.map((one, i) => [one.slips[0] ?? '', numbers[1 + i] ?? NaN]));
	const pairs = new Map<string, number>();
	set.pairs.forEach((pair, i) => {
		const value = numbers[1 + set.singles.length + i] ?? NaN;
		if (applies(value) && pair.slips.every((slip) => differs(value, alone.get(slip) ?? NaN))) {
			pairs.set(pair.slips.join(' + '), value);
		}
	});
	const singles = new Map([...alone].filter(([, value]) => applies(value)));
	const steps = new Map(
		set.singles.filter((one) => singles.has(one.slips[0] ?? '')).map((one) => [one.slips[0] ?? '', one.steps[0] ?? ''])
	);
	return { right, singles, steps, pairs };
}

function handAnswers(values: HandValues, target: HandTarget): Answers {
	const { right, singles, pairs } = mistakesIn(values, target);
	const named = (list: typeof singles): Map<string, number> => new Map(list.map((one) => [one.slips.join(' + '), one.value]));
	const steps = new Map(singles.map((one) => [one.slips.join(), one.steps.join()]));
	return { right: right ?? NaN, singles: named(singles), steps, pairs: named(pairs) };
}

/** Disagreements in words, for a message that says what to look at. */
function disagreements(engine: ReadonlyMap<string, number>, hand: ReadonlyMap<string, number>): string[] {
	const found: string[] = [];
	for (const slips of new Set([...engine.keys(), ...hand.keys()])) {
		const a = engine.get(slips);
		const b = hand.get(slips);
		if (a === undefined || b === undefined || Math.abs(a - b) > 1e-9) {
			found.push(`${slips}: engine ${String(a)}, by hand ${String(b)}`);
		}
	}
	return found;
}

describe('the engine and the sheet of paper', () => {
	it('know the same slips in the same order', () => {
		expect(SLIPS.map((slip) => slip.id)).toEqual(SLIPS_IN_ORDER);
	});

	it.each(TARGETS.map((target) => ['datum' in target ? `${target.quantity} from ${target.datum}` : target.quantity, target] as const))(
		'agree on %s: the right answer, each slip, each pair',
		(_, target) => {
			fc.assert(
				fc.property(handPlan(), (values) => {
					const engine = engineAnswers(values, target);
					const hand = handAnswers(values, target);
					expect(engine.right).toBeCloseTo(hand.right, 9);
					expect(disagreements(engine.singles, hand.singles)).toEqual([]);
					expect(Object.fromEntries(engine.steps)).toEqual(Object.fromEntries(hand.steps));
					expect(disagreements(engine.pairs, hand.pairs)).toEqual([]);
				}),
				{ numRuns: 150, seed: 20_260 }
			);
		}
	);

	it.each(shippedScenarios().map((scenario) => [scenario.id, scenario] as const))(
		'agree on the problems drawn from %s',
		(_, scenario) => {
			for (const problem of problemsOf(scenario, 25)) {
				for (const ask of numberAsks(scenario)) {
					const set = variantsFor(problem, ask);
					const engine = answersOf(set, valuesOf(set.wholeProgram, inputsFor(problem, set)));
					const hand = handAnswers(handValuesOf(problem), handTargetOf(ask));
					const where = `${scenario.id} ${problem.seed} ${ask.id}`;
					expect(engine.right, where).toBeCloseTo(hand.right, 9);
					expect(disagreements(engine.singles, hand.singles), where).toEqual([]);
					expect(Object.fromEntries(engine.steps), where).toEqual(Object.fromEntries(hand.steps));
					expect(disagreements(engine.pairs, hand.pairs), where).toEqual([]);
				}
			}
		}
	);
});
