/** What an answered problem says about the learner's skills, cell by cell. */
import { guessOf as shareOf, type Picture } from '#lib/findings/index.ts';
import type { Grade } from '#lib/grading/index.ts';
import { GUESS, type Credit } from '#lib/mastery/index.ts';
import type { Ask } from '#lib/scenario/index.ts';

/** @returns the fine skill that an ask takes: its quantity, with the datum where there is one. */
export function skillOf(ask: Ask): string {
	if (ask.kind === 'decision') return 'decision';
	return 'datum' in ask ? `${ask.quantity}@${ask.datum}` : ask.quantity;
}

/**
 * How likely an answer is right by chance where that is more than a typed number in general: a capacity is one of few
 * that gear is made for.
 * @reason counted over draws of stage-grid: another draw's right capacity is right in one of five
 */
const EASY_TO_GUESS: Readonly<Record<string, number>> = { lowestCapacity: 0.2 };
/** @reason one of two */
const DECISION = 0.5;

function guessOf(ask: Ask): number {
	return ask.kind === 'decision' ? DECISION : (EASY_TO_GUESS[ask.quantity] ?? GUESS);
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
 * the error is counted where it was made; a decision counts only where its numbers were right, and whoever guesses it
 * has to guess them too.
 */
export function creditsOf(asks: readonly Ask[], grades: Readonly<Record<string, Grade>>): readonly Credit[] {
	const cells = new Map<string, { skills: string[]; right: boolean; guess: number }>();
	for (const ask of asks) {
		const grade = grades[ask.id];
		const right = grade === undefined ? undefined : evidence(ask, grade);
		if (right === undefined) continue;
		const cell = cells.get(ask.cell) ?? { skills: [], right: true, guess: 1 };
		const numbers = ask.kind === 'decision' ? asks.filter((one) => ask.with.includes(one.id)) : [];
		const guess = [ask, ...numbers].reduce((product, one) => product * guessOf(one), 1);
		cells.set(ask.cell, { skills: [...cell.skills, skillOf(ask)], right: cell.right && right, guess: cell.guess * guess });
	}
	return [...cells].map(([cell, { skills, right, guess }]) => ({ cell, skills, right, guess }));
}

/** A picture is one observation of its lesson's cell and of all skills that it takes. */
export function pictureCredits(cell: string, picture: Picture, right: boolean): readonly Credit[] {
	return [{ cell, skills: picture.skills, right, guess: shareOf(picture) }];
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
