/** Which slips were found in graded answers: what somebody keeps getting wrong is counted from these. */
import type { Candidate } from '#lib/grading/index.ts';
import type { Grades } from './context.ts';

type Slips = Extract<Candidate, { kind: 'slips' }>['slips'];

/** @returns of each wrong number the slip that was said to look so, each once; guesses are left out. */
export function foundSlips(grades: Grades): Slips {
	const found = Object.values(grades).flatMap((grade) => {
		const best = grade.kind === 'number' && grade.diagnosis?.certainty === 'asserted' ? grade.diagnosis.candidates[0] : undefined;
		return best?.kind === 'slips' ? best.slips : [];
	});
	return [...new Set(found)];
}

/** How many slips are told. @reason what can be kept in mind */
const MOST_TOLD = 3;

/** @returns the slips that were found most often, the most frequent first. @param found the slips of each answer. */
export function mostFrequent<Slip extends string>(found: readonly (readonly Slip[])[]): readonly { readonly slip: Slip; readonly count: number }[] {
	const counts = new Map<Slip, number>();
	for (const slip of found.flat()) counts.set(slip, (counts.get(slip) ?? 0) + 1);
	return [...counts]
		.map(([slip, count]) => ({ slip, count }))
		.toSorted((a, b) => b.count - a.count || (a.slip < b.slip ? -1 : 1))
		.slice(0, MOST_TOLD);
}
