/** Shapes of the lessons' texts. Numbers come ready written, with their unit: none is typed into a text. */
import type { CaptionParts } from '#lib/course/index.ts';

export interface LessonText {
	readonly title: string;
	/** What one can do after it: one sentence. */
	readonly able: string;
	/** Short paragraphs, with numbers of the lesson's first example. */
	readonly ideas: readonly ((p: CaptionParts) => string)[];
	/** Beside each step of the shown example, by the step's id. */
	readonly captions: Readonly<Record<string, (p: CaptionParts) => string>>;
	/** Cautions of the trade. */
	readonly cautions: readonly string[];
}

/** What is said of a fact that a rule or a practice states. */
export interface FactText {
	readonly name: string;
	/** With the number as the table prints it. */
	readonly states: (p: { readonly value: string }) => string;
	/** Where the table says nothing of it. */
	readonly none: string;
}

/** What is said of a demand that has no number. */
export interface DemandText {
	readonly name: string;
	readonly asked: string;
	readonly none: string;
}
