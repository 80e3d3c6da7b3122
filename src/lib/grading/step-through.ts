/** The step-through: every step of one ask by itself, each graded with the learner's own earlier values. */
import { formula, isGivenId, isQuantityId, type GivenId, type QuantityId } from '#lib/arrest/index.ts';
import { constant, evaluate, namedIn, rewrite, type Node } from '#lib/expression/index.ts';
import { readQuantity, sameDimension, type Language, type Question, type Unreadable } from '#lib/quantity/index.ts';
import { precisionOf, readingOf, targetOf, toleranceOf, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import { shownGivens } from './explain.ts';

/** One step that is worked by itself. */
export interface WalkStep {
	/** A given that is read off, or a quantity that is worked out. */
	readonly id: GivenId | QuantityId;
	readonly kind: 'given' | 'quantity';
	readonly node: Node;
	/** SI. */
	readonly value: number;
}

export type StepGrade =
	| { readonly kind: 'unreadable'; readonly reading: Unreadable }
	| { readonly kind: 'question'; readonly reading: Question }
	| {
			readonly kind: 'step';
			/** `follows-own`: right with an earlier step's own value, which was the error. */
			readonly mark: 'right' | 'follows-own' | 'wrong';
			/** SI. */
			readonly answer: number;
			/** SI. */
			readonly right: number;
	  };

/**
 * @returns the steps of an ask in the order in which one works them: what must be worked out first, then the
 * terms of the last sum that are read off, then the whole. A step of another dimension than the ask is left out.
 */
export function walkOf(problem: Problem, ask: NumberAsk): readonly WalkStep[] {
	const tree = formula(targetOf(ask), problem.resolved.shape);
	const givens = shownGivens(problem);
	const steps: WalkStep[] = [];
	const add = (node: Node): void => {
		if (node.kind !== 'named' && node.kind !== 'given') return;
		const { id } = node;
		if (steps.some((step) => step.id === id) || !sameDimension(node.dimension, tree.dimension)) return;
		if (isQuantityId(id)) steps.push({ id, kind: 'quantity', node, value: evaluate(node, givens) });
		else if (isGivenId(id)) steps.push({ id, kind: 'given', node, value: evaluate(node, givens) });
	};
	const content = tree.kind === 'named' ? tree.of : tree;
	for (const one of namedIn(tree)) if (one !== tree) add(one);
	if (content.kind === 'sum' && steps.length > 0) for (const term of content.terms) add(term.of);
	add(tree);
	return steps;
}

/**
 * @param own the learner's values of earlier steps that were wrong, by the step's id, SI.
 * @returns the grade of one step: right, right with the own earlier value, or wrong.
 */
export function gradeStep(
	problem: Problem,
	ask: NumberAsk,
	step: WalkStep,
	text: string,
	own: ReadonlyMap<string, number>,
	language: Language
): StepGrade {
	const reading = readQuantity(text, readingOf(problem.scenario, ask, language));
	if (reading.kind === 'unreadable') return { kind: 'unreadable', reading };
	if (reading.kind === 'question') return { kind: 'question', reading };
	const near = precisionOf(ask) / 2;
	const close = (value: number): boolean => Math.abs(value - reading.si) <= near * (1 + 1e-6);
	const known = { kind: 'step', answer: reading.si, right: step.value } as const;
	if (close(step.value)) return { ...known, mark: 'right' };
	if (step.kind === 'quantity' && own.size > 0) {
		const carried = rewrite(step.node, (node) => {
			if (node === step.node || (node.kind !== 'named' && node.kind !== 'given')) return undefined;
			const value = own.get(node.id);
			return value === undefined ? undefined : constant(node.id, value, node.dimension);
		});
		if (carried !== step.node && close(evaluate(carried, shownGivens(problem)))) return { ...known, mark: 'follows-own' };
	}
	if (step.id !== ask.quantity) return { ...known, mark: 'wrong' };
	const tolerance = toleranceOf(problem.scenario, ask, step.value);
	const beyond = (reading.si - step.value) * tolerance.cautiousSign;
	return { ...known, mark: beyond > 0 && beyond <= tolerance.cautious * (1 + 1e-6) ? 'right' : 'wrong' };
}

/**
 * @param texts what was typed for each step, in order; empty where nothing was.
 * @returns the grades of a step-through; later steps are graded with the own values of the wrong ones before.
 */
export function gradeWalk(
	problem: Problem,
	ask: NumberAsk,
	texts: readonly string[],
	language: Language
): readonly (StepGrade | undefined)[] {
	return gradeHalfDone(problem, ask, 'all', texts, language);
}

/** @returns how many of an ask's steps are given in a half-done example that leaves the last ones blank; at least one is left. */
export function givenSteps(problem: Problem, ask: NumberAsk, blank: number | 'all'): number {
	const steps = walkOf(problem, ask).length;
	return blank === 'all' ? 0 : Math.max(0, steps - Math.max(1, blank));
}

/**
 * A half-done example: the first steps are given, the rest is the learner's.
 * @param texts what was typed for each blank step, in order.
 * @returns the grades of the blank steps, in order.
 */
export function gradeHalfDone(
	problem: Problem,
	ask: NumberAsk,
	blank: number | 'all',
	texts: readonly string[],
	language: Language
): readonly (StepGrade | undefined)[] {
	const given = givenSteps(problem, ask, blank);
	const own = new Map<string, number>();
	return walkOf(problem, ask)
		.slice(given)
		.map((step, i) => {
			const text = texts[i] ?? '';
			if (text.trim() === '') return undefined;
			const grade = gradeStep(problem, ask, step, text, own, language);
			if (grade.kind === 'step' && grade.mark !== 'right') own.set(step.id, grade.answer);
			return grade;
		});
}
