/**
 * From a wrong number to the thought behind it: every slip and pair that gives the number, ranked.
 *
 * A candidate's weight is the sum of how common its slips are (the author's tiers), of what a second
 * slip costs, and of how well its value fits the number as people round. Weights count in powers of
 * about four; they rank, they are no probabilities.
 */
import { type QuantityId } from '#lib/arrest/index.ts';
import { run, type Program } from '#lib/expression/index.ts';
import { CHANGED, inputsFor, variantsFor, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import { slipOf, type SlipId, type Variant, type VariantSet } from '#lib/slips/index.ts';
import type { EntrySlip } from './entry.ts';

/** One explanation of a wrong number. */
export type Candidate =
	| {
			readonly kind: 'slips';
			/** One slip or two. */
			readonly slips: readonly SlipId[];
			/** The steps in which they act. */
			readonly steps: readonly QuantityId[];
			/** The value they give, SI. */
			readonly value: number;
			readonly weight: number;
	  }
	| { readonly kind: 'entry'; readonly slip: EntrySlip; readonly value: number; readonly weight: number };

export type Certainty =
	/** One single slip leads by far: "it looks as if". */
	| 'asserted'
	/** A pair or a slip of the pen leads: "could be". */
	| 'could-be'
	/** Several fit alike: one more question, or the step-through, decides. */
	| 'ambiguous'
	/** No pattern. */
	| 'none';

export interface Diagnosis {
	readonly certainty: Certainty;
	/** Best first. */
	readonly candidates: readonly Candidate[];
	/** The step that all leading candidates name, where they agree. */
	readonly step: QuantityId | undefined;
}

/** What is known beside the number itself. */
export interface Hints {
	/** Slips that explained earlier answers of the same problem. */
	readonly earlierSlips: ReadonlySet<SlipId>;
	/** Steps whose values the learner handed in right in the same problem. */
	readonly rightSteps: ReadonlySet<QuantityId>;
	/** How often each slip was this learner's before; a tie-breaker on screen only. */
	readonly history?: ReadonlyMap<SlipId, number> | undefined;
}

/**
 * How a value fits a number on its grid.
 * @reason ranking weights in powers of about four, tried on simulated learners (npm run bench -- diagnosis).
 */
const FIT = Object.freeze({ exact: 0, nearest: -0.25, neighbour: -1, stepwise: -2, offGrid: -4 });
/** @reason as FIT: two slips at once are rare against one. */
const SECOND_SLIP = -5;
/** @reason as FIT: the author's tiers, less than a power apart. */
const TIER = Object.freeze({ common: 0, occasional: -0.75, rare: -1.5 });
/** A lead of this much makes a single slip the asserted one. */
const LEAD = 1;
/** A slip that fits worse than this is never asserted. */
const ASSERTED_FIT = -1;
/** @reason as FIT: what an earlier answer of the same problem shows outweighs how common a slip is. */
const EARLIER = 3;
const HISTORY = 0.5;
/** @reason what a screen can offer and a trainer can read. */
const MOST_CANDIDATES = 8;
/** @reason a number rounded at two or three steps lies at most this many steps from its exact value. */
const FARTHEST = 1.5;
/** Relative size of float noise against the grid. */
const NOISE = 1e-6;

/**
 * @param typed what the learner answered, SI. @param step the coarser of the ask's grid and the last place typed, SI.
 * @param typedStep the last place typed, SI.
 */
export interface TypedNumber {
	readonly typed: number;
	readonly step: number;
	readonly typedStep: number;
}

/** @returns how well a value explains a typed number, 0 best; undefined if it does not. */
export function fitOf(value: number, { typed, step, typedStep }: TypedNumber): number | undefined {
	const distance = Math.abs(typed - value);
	const noise = step * NOISE;
	if (distance > FARTHEST * step + noise) return undefined;
	const places = value / step;
	const onGrid = Math.abs(places - Math.round(places)) < NOISE * Math.max(1, Math.abs(places));
	if (onGrid) {
		if (distance <= Math.min(typedStep, step) / 2 + noise) return FIT.exact;
		return distance <= step + noise ? FIT.offGrid : undefined;
	}
	if (distance <= step / 2 + noise) return FIT.nearest;
	return distance <= step + noise ? FIT.neighbour : FIT.stepwise;
}

/** Variants and inputs of problems at hand: a problem never changes, and is answered more than once. */
const ready = new WeakMap<Problem, Map<NumberAsk, { readonly set: VariantSet; readonly inputs: Float64Array }>>();

function readyAsk(problem: Problem, ask: NumberAsk): { readonly set: VariantSet; readonly inputs: Float64Array } {
	let asks = ready.get(problem);
	if (asks === undefined) {
		asks = new Map();
		ready.set(problem, asks);
	}
	let found = asks.get(ask);
	if (found === undefined) {
		const set = variantsFor(problem, ask);
		found = { set, inputs: inputsFor(problem, set) };
		asks.set(ask, found);
	}
	return found;
}

/** @returns every explanation of a wrong number, best first, and how sure it is. */
export function diagnose(
	problem: Problem,
	ask: NumberAsk,
	number: TypedNumber,
	entries: readonly EntrySlip[],
	hints: Hints
): Diagnosis {
	const { set, inputs } = readyAsk(problem, ask);
	const program = set.wholeProgram;
	const registers = run(program, inputs);
	const reach = FARTHEST * number.step * (1 + NOISE);
	const found: { candidate: Candidate; fit: number }[] = [];
	const right = output(registers, program, 0);
	const applies = (value: number): boolean => value > 0 && Math.abs(value - right) > CHANGED;

	const consider = (variant: Variant, value: number): void => {
		const fit = fitOf(value, number);
		if (fit === undefined) return;
		const weight = fit + weightOf(variant, hints);
		found.push({ fit, candidate: { kind: 'slips', slips: variant.slips, steps: variant.steps, value, weight } });
	};
	const singleValues = new Map<SlipId, number>();
	set.singles.forEach((variant, i) => {
		const value = output(registers, program, 1 + i);
		const slip = variant.slips[0];
		if (slip !== undefined) singleValues.set(slip, value);
		if (applies(value)) consider(variant, value);
	});
	set.pairs.forEach((variant, i) => {
		const value = output(registers, program, 1 + set.singles.length + i);
		// Most pairs lie far off: they are passed over first.
		if (!(Math.abs(value - number.typed) <= reach) || !applies(value)) return;
		if (variant.slips.some((slip) => Math.abs((singleValues.get(slip) ?? NaN) - value) <= CHANGED)) return;
		consider(variant, value);
	});
	for (const slip of entries) {
		found.push({ fit: 0, candidate: { kind: 'entry', slip, value: number.typed, weight: ENTRY_WEIGHT[slip.entry] } });
	}
	found.sort((a, b) => b.candidate.weight - a.candidate.weight);
	const leading = found.slice(0, MOST_CANDIDATES);
	return {
		certainty: certaintyOf(leading),
		candidates: leading.map((one) => one.candidate),
		step: commonStep(leading.map((one) => one.candidate))
	};
}

/** @reason as FIT: slips of the pen stand behind named slips and before most pairs. */
const ENTRY_WEIGHT: Readonly<Record<EntrySlip['entry'], number>> = Object.freeze({
	'other-unit': -2.5,
	'inches-as-decimals': -1.5,
	sign: -1.5,
	'step-handed-in': -2.5,
	'given-handed-in': -3,
	'decimal-shifted': -3,
	'digits-swapped': -3.5
});

function output(registers: Float64Array, program: Program, i: number): number {
	return registers[program.outputs[i] ?? 0] ?? NaN;
}

function weightOf(variant: Variant, hints: Hints): number {
	let weight = variant.slips.length > 1 ? SECOND_SLIP : 0;
	for (const id of variant.slips) {
		weight += TIER[slipOf(id)?.tier ?? 'rare'];
		if (hints.earlierSlips.has(id)) weight += EARLIER;
		weight += HISTORY * Math.min(2, hints.history?.get(id) ?? 0);
	}
	for (const step of variant.steps) if (hints.rightSteps.has(step)) weight -= EARLIER;
	return weight;
}

function certaintyOf(found: readonly { candidate: Candidate; fit: number }[]): Certainty {
	const best = found[0];
	if (best === undefined) return 'none';
	const second = found[1];
	const leads = second === undefined || best.candidate.weight - second.candidate.weight >= LEAD;
	if (!leads) return 'ambiguous';
	const single = best.candidate.kind === 'slips' && best.candidate.slips.length === 1;
	return single && best.fit >= ASSERTED_FIT ? 'asserted' : 'could-be';
}

/** The first step of all candidates within reach of the best, where it is the same. */
function commonStep(candidates: readonly Candidate[]): QuantityId | undefined {
	const best = candidates[0];
	if (best?.kind !== 'slips') return undefined;
	const near = candidates.filter((one) => best.weight - one.weight < LEAD);
	const steps = new Set(near.flatMap((one) => (one.kind === 'slips' ? one.steps.slice(0, 1) : ['entry'])));
	return steps.size === 1 ? best.steps[0] : undefined;
}

/** @returns the variant of a set that has just these slips, or undefined. */
export function variantWith(set: VariantSet, slips: readonly SlipId[]): Variant | undefined {
	return [...set.singles, ...set.pairs].find(
		(variant) => variant.slips.length === slips.length && variant.slips.every((slip, i) => slip === slips[i])
	);
}
