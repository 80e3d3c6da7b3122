/** Marking and diagnosis of answers. Message keys and numbers, never words. */
import {
	analyse,
	formula,
	givensOf,
	outsideLabel,
	type Analysis,
	type QuantityId
} from '#lib/arrest/index.ts';
import { constant, evaluate, namedIn, rewrite, type Node } from '#lib/expression/index.ts';
import { readQuantity, type Language, type Question, type ReadQuantity, type Unreadable } from '#lib/quantity/index.ts';
import {
	askOf,
	precisionOf,
	readingOf,
	targetOf,
	toleranceOf,
	type Ask,
	type DecisionAsk,
	type NumberAsk,
	type Problem,
	type Tolerance
} from '#lib/scenario/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { diagnose, type Diagnosis, type Hints } from './diagnose.ts';
import { entrySlips } from './entry.ts';

/** What a learner hands in for one ask. */
export type Answer =
	| { readonly kind: 'number'; readonly text: string }
	/** "It cannot be stated from this label." */
	| { readonly kind: 'not-stated' }
	| { readonly kind: 'decision'; readonly decision: 'tie-off' | 'do-not-tie-off' };

export type Mark =
	| { readonly kind: 'right' }
	/** Off by rounding on the way, or rounded to the cautious side. */
	| { readonly kind: 'right-by-rounding' }
	/** Right with the learner's own earlier value: the error is counted where it was made. */
	| { readonly kind: 'follows-own'; readonly ask: string; readonly critical: boolean }
	| { readonly kind: 'wrong'; readonly critical: boolean };

export type Grade =
	| { readonly kind: 'unreadable'; readonly reading: Unreadable }
	| { readonly kind: 'question'; readonly reading: Question }
	| {
			readonly kind: 'number';
			readonly mark: Mark;
			/** What was read, SI; undefined for "cannot be stated". */
			readonly answer: number | undefined;
			readonly read: ReadQuantity | undefined;
			/** The right value, SI; undefined where it cannot be stated. */
			readonly right: number | undefined;
			/** Only for wrong numbers. */
			readonly diagnosis: Diagnosis | undefined;
			/** A number was given though the label does not cover the case, or the other way round. */
			readonly label: 'overlooked' | 'misjudged' | undefined;
	  }
	| {
			readonly kind: 'decision';
			readonly mark: { readonly kind: 'right' } | { readonly kind: 'wrong'; readonly critical: boolean };
			readonly decision: 'tie-off' | 'do-not-tie-off';
			readonly right: 'tie-off' | 'do-not-tie-off';
			/** A decision counts only together with its numbers. */
			readonly counts: boolean;
	  };

export interface GradeOptions {
	readonly language: Language;
	/** How often each slip was this learner's before; a tie-breaker on screen, never stored. */
	readonly history?: ReadonlyMap<SlipId, number> | undefined;
}

/** What the earlier answers of the same problem tell about the next. */
interface Earlier {
	readonly asks: readonly { readonly ask: NumberAsk; readonly grade: Grade }[];
}

const ALONE: Earlier = Object.freeze({ asks: Object.freeze([]) });

/**
 * @returns the grades of all answers, in the order of the scenario's asks. Asks without an answer are left out.
 * Earlier answers help to understand later ones.
 */
export function gradeProblem(
	problem: Problem,
	answers: ReadonlyMap<string, Answer>,
	options: GradeOptions
): ReadonlyMap<string, Grade> {
	const grades = new Map<string, Grade>();
	const earlier: { ask: NumberAsk; grade: Grade }[] = [];
	for (const ask of problem.scenario.asks) {
		const answer = answers.get(ask.id);
		if (answer === undefined) continue;
		if (ask.kind === 'decision') {
			grades.set(ask.id, gradeDecision(problem, ask, answer, grades));
			continue;
		}
		const grade = gradeNumber(problem, ask, answer, options, { asks: earlier });
		grades.set(ask.id, grade);
		earlier.push({ ask, grade });
	}
	return grades;
}

/**
 * @returns the grade of one answer by itself.
 * @throws RangeError on an ask the scenario does not have, TypeError on an answer of another kind than the ask.
 */
export function gradeAsk(problem: Problem, askId: string, answer: Answer, options: GradeOptions): Grade {
	const ask: Ask = askOf(problem.scenario, askId);
	return ask.kind === 'decision'
		? gradeDecision(problem, ask, answer, new Map())
		: gradeNumber(problem, ask, answer, options, ALONE);
}

/** @returns the right value of a number ask, SI, or undefined where the label does not cover the case. */
export function rightValue(problem: Problem, ask: NumberAsk): number | undefined {
	const { resolved } = problem;
	const value = evaluate(formula(targetOf(ask), resolved.shape), givensOf(resolved));
	return ask.quantity === 'requiredClearance' && isOutsideLabel(problem) ? undefined : value;
}

function isOutsideLabel(problem: Problem): boolean {
	const { resolved, drawn } = problem;
	const givens = givensOf(resolved);
	const mass =
		drawn.plan.worker.mass === undefined ? undefined : evaluate(formula({ quantity: 'massAttached' }, resolved.shape), givens);
	return outsideLabel(resolved, mass, evaluate(formula({ quantity: 'freeFall' }, resolved.shape), givens));
}

/** Analyses of problems at hand: a problem never changes, and its analysis is asked for by every decision. */
const analyses = new WeakMap<Problem, Analysis>();

/** @returns the analysis behind a problem. @throws if its plan is refused, which no drawn plan is. */
export function analysisOf(problem: Problem): Analysis {
	const before = analyses.get(problem);
	if (before !== undefined) return before;
	const outcome = analyse(problem.drawn.plan);
	if (outcome.kind === 'refused') throw new RangeError(`a drawn plan cannot be refused: ${outcome.refusal.why}`);
	analyses.set(problem, outcome.analysis);
	return outcome.analysis;
}

function gradeNumber(
	problem: Problem,
	ask: NumberAsk,
	answer: Answer,
	options: GradeOptions,
	earlier: Earlier
): Grade {
	if (answer.kind === 'decision') throw new TypeError(`the ask "${ask.id}" takes a number, not a decision`);
	const right = rightValue(problem, ask);
	if (answer.kind === 'not-stated') {
		const mark: Mark = right === undefined ? { kind: 'right' } : { kind: 'wrong', critical: false };
		return { kind: 'number', mark, answer: undefined, read: undefined, right, diagnosis: undefined, label: right === undefined ? undefined : 'misjudged' };
	}
	const reading = readQuantity(answer.text, readingOf(problem.scenario, ask, options.language));
	if (reading.kind === 'unreadable') return { kind: 'unreadable', reading };
	if (reading.kind === 'question') return { kind: 'question', reading };
	const known = { kind: 'number', answer: reading.si, read: reading } as const;
	if (right === undefined) {
		return { ...known, mark: { kind: 'wrong', critical: true }, right, diagnosis: undefined, label: 'overlooked' };
	}
	const tolerance = toleranceOf(problem.scenario, ask, right);
	const tree = formula(targetOf(ask), problem.resolved.shape);
	const givens = givensOf(problem.resolved);
	const mark = markOf(reading, right, tolerance, roundedSteps(tree, problem, ask));
	if (mark.kind !== 'wrong') return { ...known, mark, right, diagnosis: undefined, label: undefined };
	const own = followsOwn(problem, ask, tree, reading, earlier);
	if (own !== undefined) {
		return { ...known, mark: { kind: 'follows-own', ask: own, critical: mark.critical }, right, diagnosis: undefined, label: undefined };
	}
	const step = Math.max(precisionOf(ask), reading.step);
	const entries = entrySlips(problem, tree, givens, reading, right, step / 2);
	const number = { typed: reading.si, step, typedStep: reading.step };
	const diagnosis = diagnose(problem, ask, number, entries, hintsOf(earlier, options));
	return { ...known, mark, right, diagnosis, label: undefined };
}

/** How many steps of the working end off the answer grid, so that rounding them can move the result. */
function roundedSteps(tree: Node, problem: Problem, ask: NumberAsk): number {
	const step = precisionOf(ask);
	const givens = givensOf(problem.resolved);
	return namedIn(tree).filter((one) => {
		const places = evaluate(one.of, givens) / step;
		return Math.abs(places - Math.round(places)) > 1e-6;
	}).length;
}

/**
 * Marks a number: within half the last place is right; on the unsafe side each rounded step excuses half a
 * place more; on the cautious side the band of shared/marking.json holds.
 */
function markOf(read: ReadQuantity, right: number, tolerance: Tolerance, rounded: number): Mark {
	const noise = tolerance.unsafe * 1e-6;
	const difference = (read.si - right) * tolerance.cautiousSign;
	if (Math.abs(difference) <= tolerance.unsafe + noise) return { kind: 'right' };
	if (difference < 0) {
		const excused = tolerance.unsafe * Math.max(1, rounded);
		return difference >= -excused - noise ? { kind: 'right-by-rounding' } : { kind: 'wrong', critical: true };
	}
	return difference <= tolerance.cautious + noise ? { kind: 'right-by-rounding' } : { kind: 'wrong', critical: false };
}

/** The earlier ask whose wrong value, carried on rightly, gives this answer. */
function followsOwn(
	problem: Problem,
	ask: NumberAsk,
	tree: Node,
	read: ReadQuantity,
	earlier: Earlier
): string | undefined {
	for (const before of earlier.asks) {
		const { grade } = before;
		if (grade.kind !== 'number' || grade.mark.kind !== 'wrong' || grade.answer === undefined) continue;
		const { id, quantity } = before.ask;
		const { answer } = grade;
		const carried = rewrite(tree, (node) =>
			node !== tree && node.kind === 'named' && node.id === quantity && !('datum' in before.ask)
				? constant(id, answer, node.dimension)
				: undefined
		);
		if (carried === tree) continue;
		const value = evaluate(carried, givensOf(problem.resolved));
		const step = Math.max(precisionOf(ask), read.step);
		if (Math.abs(value - read.si) <= step / 2 + step * 1e-6) return before.ask.id;
	}
	return undefined;
}

function hintsOf(earlier: Earlier, options: GradeOptions): Hints {
	const earlierSlips = new Set<SlipId>();
	const rightSteps = new Set<QuantityId>();
	for (const { ask, grade } of earlier.asks) {
		if (grade.kind !== 'number') continue;
		if (grade.mark.kind === 'right' || grade.mark.kind === 'right-by-rounding') rightSteps.add(ask.quantity);
		const best = grade.diagnosis?.candidates[0];
		if (best?.kind === 'slips' && grade.diagnosis?.certainty !== 'ambiguous') for (const slip of best.slips) earlierSlips.add(slip);
	}
	return { earlierSlips, rightSteps, history: options.history };
}

function gradeDecision(
	problem: Problem,
	ask: DecisionAsk,
	answer: Answer,
	grades: ReadonlyMap<string, Grade>
): Grade {
	if (answer.kind !== 'decision') throw new TypeError(`the ask "${ask.id}" takes a decision`);
	const right = analysisOf(problem).verdict.decision;
	const counts = ask.with.every((id) => {
		const grade = grades.get(id);
		return grade?.kind === 'number' && (grade.mark.kind === 'right' || grade.mark.kind === 'right-by-rounding');
	});
	const mark =
		answer.decision === right
			? ({ kind: 'right' } as const)
			: ({ kind: 'wrong', critical: answer.decision === 'tie-off' } as const);
	return { kind: 'decision', mark, decision: answer.decision, right, counts };
}
