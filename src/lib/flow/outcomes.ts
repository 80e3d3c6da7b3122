/** What the answer to each ask came to, in few words: what questions about many answers are asked of. */
import type { Grade } from '#lib/grading/index.ts';
import type { Ask } from '#lib/scenario/index.ts';
import { skillOf } from './credits.ts';
import { foundSlips } from './found-slips.ts';

/** What one answer came to. */
export interface AskOutcome {
	readonly ask: string;
	readonly cell: string;
	readonly skill: string;
	readonly wrong: boolean;
	/** On the unsafe side: a failing plan accepted, a clearance under-stated. */
	readonly critical: boolean;
	/** The one slip that a wrong number looked like. */
	readonly slip: OutcomeSlip | undefined;
}

/** Slips of the catalogue, and a number that was stated although the label does not hold for the case. */
export type OutcomeSlip = ReturnType<typeof foundSlips>[number] | 'label-range-overlooked';

/**
 * @returns what the answers to these asks came to. A number that is right with the learner's own earlier error is
 * right: the error is counted where it was made. A decision that went wrong with wrong numbers is counted only if it
 * accepts a plan that fails; with right numbers it always counts.
 */
export function outcomesOf(asks: readonly Ask[], grades: Readonly<Record<string, Grade>>): readonly AskOutcome[] {
	return asks.flatMap((ask): AskOutcome[] => {
		const grade = grades[ask.id];
		const of = { ask: ask.id, cell: ask.cell, skill: skillOf(ask) };
		if (grade?.kind === 'number') {
			const wrong = grade.mark.kind === 'wrong';
			return [{ ...of, wrong, critical: grade.mark.kind === 'wrong' && grade.mark.critical, slip: wrong ? slipOf(ask.id, grade) : undefined }];
		}
		if (grade?.kind !== 'decision') return [];
		const { mark, counts } = grade;
		const critical = mark.kind === 'wrong' && mark.critical;
		if (!counts && !critical) return [];
		return [{ ...of, wrong: mark.kind === 'wrong', critical, slip: undefined }];
	});
}

function slipOf(ask: string, grade: Extract<Grade, { kind: 'number' }>): OutcomeSlip | undefined {
	return grade.label === 'overlooked' ? 'label-range-overlooked' : foundSlips({ [ask]: grade })[0];
}
