/** What the explanation shows: the engine's working and tape beside the learner's. */
import { formula, givensOf, isGivenId, isQuantityId, type QuantityId, type GivenId } from '#lib/arrest/index.ts';
import { evaluate, stepsOf, type Givens, type Node } from '#lib/expression/index.ts';
import { givenValue, targetOf, variantsFor, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { variantWith } from './diagnose.ts';

/** One signed length of a tape. */
export interface TapeTerm {
	readonly role: string;
	readonly sign: 1 | -1;
	/** SI; may be negative by itself. */
	readonly value: number;
	/** The named quantity or given it is, where it is one. */
	readonly of: QuantityId | GivenId | undefined;
}

export interface WorkingStep {
	readonly id: QuantityId;
	readonly node: Node;
	readonly value: number;
	/** The learner's value of the same step, where the explanation has one and it differs. */
	readonly own: number | undefined;
	/** True where a slip of the explanation acts. */
	readonly slip: boolean;
}

export interface Explanation {
	readonly target: NumberAsk;
	readonly tree: Node;
	readonly ownTree: Node | undefined;
	readonly tape: readonly TapeTerm[];
	readonly ownTape: readonly TapeTerm[] | undefined;
	readonly steps: readonly WorkingStep[];
}

/** @returns a look-up of all numbers that stand in a problem, decoys too. */
export function shownGivens(problem: Problem): Givens {
	const plan = givensOf(problem.resolved);
	return (id) => (isGivenId(id) ? (givenValue(problem, id) ?? plan(id)) : plan(id));
}

/** @returns the terms of a tree's outermost sum, in order; a single value is one term. */
export function tapeOf(tree: Node, givens: Givens): readonly TapeTerm[] {
	const content = tree.kind === 'named' ? tree.of : tree;
	const terms = content.kind === 'sum' ? content.terms : [{ sign: 1 as const, role: 'whole', of: content }];
	return terms.map((term) => ({
		role: term.role,
		sign: term.sign,
		value: evaluate(term.of, givens),
		of: idOf(term.of)
	}));
}

function idOf(node: Node): QuantityId | GivenId | undefined {
	if (node.kind === 'named' && isQuantityId(node.id)) return node.id;
	return node.kind === 'given' && isGivenId(node.id) ? node.id : undefined;
}

/**
 * @param slips the slips of the explanation chosen; none gives the engine's working alone.
 * @returns both workings and both tapes of one ask.
 */
export function explain(problem: Problem, ask: NumberAsk, slips: readonly SlipId[]): Explanation {
	const tree = formula(targetOf(ask), problem.resolved.shape);
	const givens = shownGivens(problem);
	const variant = slips.length === 0 ? undefined : variantWith(variantsFor(problem, ask), slips);
	const own = new Map(variant === undefined ? [] : stepsOf(variant.tree, givens).map((step) => [step.id, step.value]));
	const steps: WorkingStep[] = [];
	for (const step of stepsOf(tree, givens)) {
		if (!isQuantityId(step.id)) continue;
		const id = step.id;
		const value = own.get(id);
		const differs = value !== undefined && Math.abs(value - step.value) > 1e-9;
		steps.push({ id, node: step.node, value: step.value, own: differs ? value : undefined, slip: variant?.steps.includes(id) ?? false });
	}
	return {
		target: ask,
		tree,
		ownTree: variant?.tree,
		tape: tapeOf(tree, givens),
		ownTape: variant === undefined ? undefined : tapeOf(variant.tree, givens),
		steps
	};
}
