/** Every way in which one slip, or two, can act on a question: trees and compiled programs. */
import { formula, shapeKey, targetKey, type GivenId, type QuantityId } from '#lib/arrest/index.ts';
import { compile, givensIn, type Node, type Program } from '#lib/expression/index.ts';
import { SLIPS, type SlipId } from './catalogue.ts';
import type { SlipContext } from './slip.ts';

/** One slip or two at work: the altered tree, and the step in which each acts. */
export interface Variant {
	readonly slips: readonly SlipId[];
	readonly steps: readonly QuantityId[];
	readonly tree: Node;
}

/** All variants of one question for plans of one shape. */
export interface VariantSet {
	readonly right: Node;
	readonly singles: readonly Variant[];
	readonly pairs: readonly Variant[];
	/** Ids of all givens that any of the trees reads, in the order the programs take them. */
	readonly inputs: readonly string[];
	/** Outputs: the right tree, then the singles. */
	readonly singleProgram: Program;
	/** Outputs: the right tree, the singles, the pairs. */
	readonly wholeProgram: Program;
}

/** Givens whose presence changes which slips apply. */
const TELLING: readonly GivenId[] = Object.freeze([
	'labelFreeFall',
	'freeFallLimit',
	'averageForce',
	'bodyMass',
	'otherElongation',
	'otherMargin',
	'stature',
	'otherFloorDrop',
	'slackShown',
	'tetheredMass'
]);

/** @returns a text that is equal for contexts with equal variants. */
export function contextKey(context: SlipContext): string {
	return [
		targetKey(context.target),
		shapeKey(context.shape),
		TELLING.map((id) => (context.shown(id) ? '1' : '0')).join(''),
		context.absentObstacles.join('.'),
		context.strayObstacles.join('.')
	].join('/');
}

/**
 * @returns the right tree and every altered one. A pair is two slips that both find a place, the first
 * of the catalogue acting first. Whether a variant changes the value is for its values to say.
 */
export function variantsOf(context: SlipContext): VariantSet {
	const right = formula(context.target, context.shape);
	const singles: Variant[] = [];
	for (const slip of SLIPS) {
		const altered = slip.alter(right, context);
		if (altered !== undefined) singles.push({ slips: [slip.id], steps: [altered.step], tree: altered.tree });
	}
	const trees = [right, ...singles.map((v) => v.tree)];
	// A slip brings the same givens into any tree, so that pairs read no others than singles do.
	const inputs = Object.freeze([...new Set(trees.flatMap((tree) => givensIn(tree)))]);
	let whole: { readonly pairs: readonly Variant[]; readonly program: Program } | undefined;
	const both = (): { readonly pairs: readonly Variant[]; readonly program: Program } => {
		if (whole !== undefined) return whole;
		const pairs = pairsOf(singles, context);
		whole = { pairs, program: compile([...trees, ...pairs.map((v) => v.tree)], inputs) };
		return whole;
	};
	return Object.freeze({
		right,
		singles: Object.freeze(singles),
		inputs,
		singleProgram: compile(trees, inputs),
		// Drawing looks at singles alone: pairs are worked out when an answer is first looked at.
		get pairs() {
			return both().pairs;
		},
		get wholeProgram() {
			return both().program;
		}
	});
}

function pairsOf(singles: readonly Variant[], context: SlipContext): readonly Variant[] {
	const placed = new Set(singles.flatMap((single) => single.slips));
	const pairs: Variant[] = [];
	for (const first of singles) {
		const start = SLIPS.findIndex((slip) => slip.id === first.slips[0]);
		for (const second of SLIPS.slice(start + 1)) {
			if (!placed.has(second.id)) continue;
			const altered = second.alter(first.tree, context);
			if (altered === undefined) continue;
			pairs.push({
				slips: [...first.slips, second.id],
				steps: [...first.steps, altered.step],
				tree: altered.tree
			});
		}
	}
	return Object.freeze(pairs);
}

/** A memory of variant sets by context, bounded; sets depend on nothing else. */
export class VariantMemory {
	readonly #sets = new Map<string, VariantSet>();
	readonly #most: number;

	/** @param most how many sets are kept before the oldest is dropped. */
	constructor(most: number) {
		this.#most = most;
	}

	/** @returns the variants of a context, computed at most once while remembered. */
	of(context: SlipContext): VariantSet {
		const key = contextKey(context);
		const before = this.#sets.get(key);
		if (before !== undefined) return before;
		const set = variantsOf(context);
		if (this.#sets.size >= this.#most) {
			const oldest = this.#sets.keys().next().value;
			if (oldest !== undefined) this.#sets.delete(oldest);
		}
		this.#sets.set(key, set);
		return set;
	}
}
