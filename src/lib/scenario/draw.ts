/** From a scenario and a seed to a site problem. Pure and total: a problem, or the reason why none fits. */
import { analyse, formula, givensOf, isGivenId, isQuantityId, type Analysis, type Check } from '#lib/arrest/index.ts';
import { evaluate, givensIn, run } from '#lib/expression/index.ts';
import { toSI } from '#lib/quantity/index.ts';
import { VariantMemory, type VariantSet } from '#lib/slips/index.ts';
import { chanceOf } from './chance.ts';
import { DRAW_VERSION, givenValue, slipContextOf, type Problem } from './problem.ts';
import { problemOf } from './rebuild.ts';
import { sample } from './sample.ts';
import type { NumberAsk, Scenario } from './schema.ts';
import { bandOf, toleranceOf } from './tolerance.ts';

/** Why a try was turned down. */
export type TurnedDown =
	| 'refused'
	| 'constraint'
	| 'no-answer'
	| 'near-limit'
	| 'slip-looks-right'
	| 'slips-look-alike'
	| 'other-outcome'
	| 'from-memory';

/** How many tries were turned down, by reason. */
export type TurnedDownCounts = Readonly<Partial<Record<TurnedDown, number>>>;

export type DrawResult =
	| { readonly kind: 'drawn'; readonly problem: Problem; readonly tries: number; readonly reasons: TurnedDownCounts }
	| { readonly kind: 'none'; readonly tries: number; readonly reasons: TurnedDownCounts };

/** Tries for one aim before the next aim is taken. @reason a few milliseconds at most; good scenarios need under ten. */
export const TRIES_PER_AIM = 400;
/** A value that a slip changes by less than this is not changed, SI. */
export const CHANGED = 1e-9;

/** @reason contexts of all shipped scenarios fit in many times over. */
const REMEMBERED_SETS = 1024;
const memory = new VariantMemory(REMEMBERED_SETS);

/** @returns the variants of a number ask of a problem; equal contexts share them. */
export function variantsFor(problem: Problem, ask: NumberAsk): VariantSet {
	return memory.of(slipContextOf(problem, ask));
}

/** @returns the values of a variant set's inputs for a problem, in the order of its programs; NaN where not known. */
export function inputsFor(problem: Problem, set: VariantSet): Float64Array {
	return Float64Array.from(set.inputs, (id) => (isGivenId(id) ? (givenValue(problem, id) ?? NaN) : NaN));
}

/**
 * @param seed any whole number.
 * @returns the site problem of the seed. The same scenario version, draw version and seed give the same
 * problem on every machine.
 */
export function draw(scenario: Scenario, seed: number): DrawResult {
	const steps = drawSteps(scenario, seed);
	for (;;) {
		const step = steps.next();
		if (step.done === true) return step.value;
	}
}

/** @reason well under a millisecond; some ten where every try is of a new kind of plan. Who draws in slices can stop that soon. */
const TRIES_A_STEP = 10;

/** As `draw`, in steps: yields after every few tries that were turned down. */
export function* drawSteps(scenario: Scenario, seed: number): Generator<void, DrawResult, void> {
	const reasons: Partial<Record<TurnedDown, number>> = {};
	const order = aimOrder(scenario, seed);
	const most = TRIES_PER_AIM * order.length;
	for (let t = 0; t < most; t += 1) {
		const outcome = attempt(scenario, seed, t, order);
		if (typeof outcome !== 'string') return { kind: 'drawn', problem: outcome, tries: t + 1, reasons };
		reasons[outcome] = (reasons[outcome] ?? 0) + 1;
		if (t % TRIES_A_STEP === TRIES_A_STEP - 1) yield;
	}
	return { kind: 'none', tries: most, reasons };
}

/** Seeds tried one after the other for one problem. @reason published scenarios draw nearly always; a hundred misses in a row mean that none fits. */
const SEEDS_TRIED = 100;

/**
 * @param drawn draws a seed: `draw` of a scenario, or a memory of it.
 * @returns the problem of the first seed from this one on that gives one.
 * @throws RangeError if a hundred seeds in a row give none.
 */
export function firstDrawn(drawn: (seed: number) => DrawResult, seed: number): Problem {
	for (let i = 0; i < SEEDS_TRIED; i += 1) {
		const result = drawn(seed + i);
		if (result.kind === 'drawn') return result.problem;
	}
	throw new RangeError(`no problem fits the seeds ${seed} to ${seed + SEEDS_TRIED - 1}`);
}

/** @returns the problem of one known try, or why that try is none: the quick proof that stored values were drawn. */
export function drawTry(scenario: Scenario, seed: number, acceptedTry: number): Problem | TurnedDown {
	return attempt(scenario, seed, acceptedTry, aimOrder(scenario, seed));
}

/** The aims of a scenario, the one that this seed is for first, the others after it. */
function aimOrder(scenario: Scenario, seed: number): readonly string[] {
	const total = scenario.aims.reduce((sum, aim) => sum + aim.weight, 0);
	let at = chanceOf([scenario.id, scenario.version, DRAW_VERSION, seed, 'aim']).below(total);
	const first = scenario.aims.findIndex((aim) => {
		at -= aim.weight;
		return at < 0;
	});
	return [...scenario.aims.slice(first), ...scenario.aims.slice(0, first)].map((aim) => aim.fails);
}

function attempt(scenario: Scenario, seed: number, t: number, order: readonly string[]): Problem | TurnedDown {
	const chance = chanceOf([scenario.id, scenario.version, DRAW_VERSION, seed, t]);
	const problem = problemOf(scenario, sample(scenario, chance), seed, t);
	const apart = slipsApart(problem);
	if (apart !== undefined) return apart;
	const outcome = analyse(problem.drawn.plan);
	if (outcome.kind === 'refused') return 'refused';
	const { analysis } = outcome;
	if (!keepsConstraints(scenario, problem, analysis)) return 'constraint';
	const fromMemory = analysis.checks.some((check) => !check.decides && check.status === 'failed');
	if (fromMemory) return 'from-memory';
	const aim = order[Math.floor(t / TRIES_PER_AIM)] ?? 'nothing';
	if (!meetsAim(analysis, aim)) return 'other-outcome';
	if (nearLimit(scenario, analysis.checks)) return 'near-limit';
	return problem;
}

/** Whether slips give numbers that can be told from the right one and from each other. */
function slipsApart(problem: Problem): TurnedDown | undefined {
	const { scenario } = problem;
	for (const ask of scenario.asks) {
		if (ask.kind !== 'number') continue;
		const set = variantsFor(problem, ask);
		const registers = run(set.singleProgram, inputsFor(problem, set));
		const valueAt = (i: number): number => registers[set.singleProgram.outputs[i] ?? 0] ?? NaN;
		const right = valueAt(0);
		if (!(right > 0)) return 'no-answer';
		const tolerance = toleranceOf(scenario, ask, right);
		const values: { id: string; value: number }[] = [];
		for (const [i, single] of set.singles.entries()) {
			const value = valueAt(i + 1);
			const difference = Math.abs(value - right);
			if (!(value > 0) || difference <= CHANGED) continue;
			if (difference <= 2 * tolerance.cautious) return 'slip-looks-right';
			values.push({ id: single.slips[0] ?? '', value });
		}
		values.sort((a, b) => a.value - b.value);
		for (let i = 1; i < values.length; i += 1) {
			const low = values[i - 1];
			const high = values[i];
			if (low === undefined || high === undefined || high.value - low.value > 2 * tolerance.apart) continue;
			if (!declaredEqual(scenario, low.id, high.id)) return 'slips-look-alike';
		}
	}
	return undefined;
}

function declaredEqual(scenario: Scenario, a: string, b: string): boolean {
	return scenario.equalSlips.some(([x, y]) => (x === a && y === b) || (x === b && y === a));
}

function keepsConstraints(scenario: Scenario, problem: Problem, analysis: Analysis): boolean {
	return scenario.constraints.every((constraint) => keeps(constraint, constrained(problem, analysis, constraint.of)));
}

/** @param value SI. @returns whether a value keeps a bound; one that is not known keeps none. */
export function keeps({ atLeast, atMost }: Scenario['constraints'][number], value: number | undefined): boolean {
	if (value === undefined) return false;
	return (
		(atLeast === undefined || value >= toSI(atLeast.value, atLeast.unit) - CHANGED) &&
		(atMost === undefined || value <= toSI(atMost.value, atMost.unit) + CHANGED)
	);
}

/** @returns the value that a constraint bounds, SI, or undefined if the problem has none. */
export function constrained(problem: Problem, analysis: Analysis, of: string): number | undefined {
	if (isGivenId(of)) return givenValue(problem, of);
	const finding = analysis.quantities.get(of);
	if (finding !== undefined) return finding.known ? finding.value : undefined;
	const [name = ''] = of.split('@');
	if (!isQuantityId(name)) throw new RangeError(`${problem.scenario.id}: a constraint names "${of}", which is neither a given nor a quantity`);
	// Without a datum, from the surface; and also where the label leaves it open.
	if (of !== 'requiredClearance' && of !== 'availableClearance') return undefined;
	const tree = formula({ quantity: of, datum: 'surface' }, problem.resolved.shape);
	const known: ReadonlyMap<string, unknown> = problem.resolved.givens;
	return givensIn(tree).every((id) => known.has(id)) ? evaluate(tree, givensOf(problem.resolved)) : undefined;
}

/** Whether the plan comes out as this share of the draws shall: by this one topic, or by none. */
function meetsAim(analysis: Analysis, aim: string): boolean {
	const { verdict, checks } = analysis;
	if (aim === 'nothing') return verdict.result === 'passes';
	if (aim === 'unknown') return verdict.result === 'cannot-be-shown';
	const topics = new Set(checks.filter((check) => check.decides && check.status === 'failed').map((check) => check.topic));
	return topics.size === 1 && [...topics].every((topic) => topic === aim);
}

/** Whether a computed quantity comes so near its limit that a rounded answer could fall on the other side. */
function nearLimit(scenario: Scenario, checks: readonly Check[]): boolean {
	return checks.some((check) => {
		if (check.target === undefined || check.slack === undefined || !check.decides) return false;
		return Math.abs(check.slack) <= 2 * bandOf(scenario, check.target.quantity, check.value ?? 0);
	});
}
