/** Tasks asked on pictures: drawn gear, drawn situations, moments of a fall. */
import { TASKS } from './tasks.ts';
import type { Difficulty, PictureKind } from './picture.ts';

export type {
	Difficulty,
	DrawingId,
	MomentFacts,
	Picture,
	PictureAnswer,
	PictureGrade,
	PictureKey,
	PictureKind,
	Shown,
	ShownChoice,
	ShownPart,
	Stage
} from './picture.ts';
export { FORMS, isFormId, type FormId, type LookId } from './forms.ts';
export { NOTES, sourcesOf, type NoteId, type NoteSource, type SourceMark } from './notes.ts';
export { PICTURE_DRAW_VERSION, drawPicture } from './draw.ts';
export { gradePicture } from './grade.ts';
export { answerKey, guessOf } from './shares.ts';

export interface FindingTask {
	readonly id: string;
	readonly kind: PictureKind;
	readonly difficulty: Difficulty;
	readonly skills: readonly string[];
	readonly version: number;
}

/** The tasks that a course can name. */
export const FINDING_TASKS: readonly FindingTask[] = TASKS.map(({ id, kind, difficulty, skills, version }) => ({
	id,
	kind,
	difficulty,
	skills,
	version
}));
