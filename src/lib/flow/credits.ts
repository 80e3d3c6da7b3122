/** What an answered problem says about the learner's skills, cell by cell. */
import type { Grade } from '#lib/grading/index.ts';
import type { Credit } from '#lib/mastery/index.ts';
import type { Ask } from '#lib/scenario/index.ts';

/** @returns the fine skill that an ask takes: its quantity, with the datum where there is one. */
export function skillOf(ask: Ask): string {
	if (ask.kind === 'decision') return 'decision';
	return 'datum' in ask ? `${ask.quantity}@${ask.datum}` : ask.quantity;
}

/** What one grade says of the skill behind it; undefined where it says nothing. */
function evidence(ask: Ask, grade: Grade): boolean | undefined {
	if (grade.kind === 'number') return grade.mark.kind !== 'wrong';
	// A decision that follows from wrong numbers tells of the numbers; what it would have been with right ones, nobody knows.
	if (grade.kind === 'decision' && ask.kind === 'decision') return grade.counts ? grade.mark.kind === 'right' : undefined;
	return undefined;
}

/**
 * One problem credits every cell that it asks of. Each cell gets one observation, right only if all that was
 * asked of it was right; an answer that is right with the learner's own earlier error counts as right, because
 * the error is counted where it was made; a decision counts only where its numbers were right.
 */
export function creditsOf(asks: readonly Ask[], grades: Readonly<Record<string, Grade>>): readonly Credit[] {
	const cells = new Map<string, { skills: string[]; right: boolean }>();
	for (const ask of asks) {
		const grade = grades[ask.id];
		const right = grade === undefined ? undefined : evidence(ask, grade);
		if (right === undefined) continue;
		const cell = cells.get(ask.cell) ?? { skills: [], right: true };
		cells.set(ask.cell, { skills: [...cell.skills, skillOf(ask)], right: cell.right && right });
	}
	return [...cells].map(([cell, { skills, right }]) => ({ cell, skills, right }));
}

/** @returns true if everything asked is right, and every decision with its numbers. */
export function allRight(asks: readonly Ask[], grades: Readonly<Record<string, Grade>>): boolean {
	return asks.every((ask) => {
		const grade = grades[ask.id];
		if (grade === undefined) return false;
		if (grade.kind === 'decision') return grade.counts && grade.mark.kind === 'right';
		return grade.kind === 'number' && (grade.mark.kind === 'right' || grade.mark.kind === 'right-by-rounding');
	});
}
