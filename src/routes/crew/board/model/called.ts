/** What the class calls out: each answer once, with how many said it. No names. */
import type { Answer, Grade } from '#lib/grading/index.ts';

export interface Called {
	/** Different for different answers. */
	readonly id: string;
	readonly answer: Answer;
	/** As it was marked by itself. */
	readonly grade: Grade;
	readonly count: number;
}

/** @reason more numbers than a class calls, and as many as a screen holds. */
export const MOST_CALLED = 12;
/** @reason no class is larger. */
const MOST_VOICES = 99;
/** Values are told apart to this, SI. */
const SAME = 1e-6;

/** Equal for answers that mean the same. */
function idOf(answer: Answer, grade: Grade): string {
	if (answer.kind === 'decision') return answer.decision;
	return grade.kind === 'number' && grade.answer !== undefined ? `number-${Math.round(grade.answer / SAME)}` : answer.kind;
}

/** @returns the list with one more voice for an answer: "2.3" and "2.30 m" are one. Past the longest list nothing is added. */
export function withCalled(list: readonly Called[], answer: Answer, grade: Grade): readonly Called[] {
	const id = idOf(answer, grade);
	if (list.some((one) => one.id === id)) return counted(list, id, 1);
	return list.length >= MOST_CALLED ? list : [...list, { id, answer, grade, count: 1 }];
}

/** @returns the list with a voice more or less for one answer; with the last voice the answer goes. */
export function counted(list: readonly Called[], id: string, by: 1 | -1): readonly Called[] {
	return list.flatMap((one) => {
		if (one.id !== id) return [one];
		const count = Math.min(MOST_VOICES, one.count + by);
		return count < 1 ? [] : [{ ...one, count }];
	});
}
