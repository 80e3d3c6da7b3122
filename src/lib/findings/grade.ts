/** Marks an answered picture. Total: any answer that has the shape of one gets a grade. */
import type { Picture, PictureAnswer, PictureGrade } from './picture.ts';

/**
 * @returns right only if every part that must be marked is marked, no other, and the choice is right.
 * Marks that name no part of the picture count as extra; the same mark twice counts once.
 */
export function gradePicture(picture: Picture, answer: PictureAnswer): PictureGrade {
	const { shown, key } = picture;
	const marked = new Set(answer.marked);
	const wanted = new Set(key.marks);
	const known = shown.parts.map((part) => part.id);
	const strangers = [...marked].filter((id) => !known.includes(id)).sort();
	const missed = known.filter((id) => wanted.has(id) && !marked.has(id));
	const extra = [...known.filter((id) => marked.has(id) && !wanted.has(id)), ...strangers];
	const choice = { given: answer.choice, right: key.choice };
	const chosenRight = answer.choice === key.choice;
	return {
		right: missed.length === 0 && extra.length === 0 && chosenRight,
		critical: (key.criticalMarks && missed.length > 0) || (!chosenRight && key.criticalChoices.includes(answer.choice)),
		missed,
		extra,
		choice
	};
}
