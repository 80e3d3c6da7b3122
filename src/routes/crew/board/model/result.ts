/** What the engine says of one question of a plan, also of a plan that somebody entered. */
import { analyse, targetKey, type Absence, type Refusal } from '#lib/arrest/index.ts';
import { targetOf, type NumberAsk, type Problem } from '#lib/scenario/index.ts';

export type Result =
	| { readonly kind: 'refused'; readonly refusal: Refusal }
	| { readonly kind: 'absent'; readonly absence: Absence }
	/** SI */
	| { readonly kind: 'known'; readonly value: number };

/** @returns the value of a number ask, or why there is none. */
export function resultOf(problem: Problem, ask: NumberAsk): Result {
	const outcome = analyse(problem.drawn.plan);
	if (outcome.kind === 'refused') return outcome;
	const finding = outcome.analysis.quantities.get(targetKey(targetOf(ask)));
	if (finding === undefined) return { kind: 'absent', absence: { why: 'missing', givens: [] } };
	return finding.known ? { kind: 'known', value: finding.value } : { kind: 'absent', absence: finding.absence };
}

/** @returns whether numbers for the ask can be marked: the value is known, or that it cannot be stated is itself the answer. */
export function canBeMarked(ask: NumberAsk, result: Result): boolean {
	return result.kind === 'known' || (result.kind === 'absent' && result.absence.why === 'outside-label' && ask.quantity === 'requiredClearance');
}
