/** The lessons' texts: their shapes, and what is said of a fact. Numbers come ready written, with their unit: none is typed into a text. */
import type { CaptionParts, LessonFact } from '#lib/course/index.ts';
import type { Messages } from './en/index.ts';

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
	/** The same where the number itself is already beyond the limit. */
	readonly beyond?: (p: { readonly value: string }) => string;
	/** Where the table says nothing of it. */
	readonly none: string;
}

/** What is said of a demand that has no number. */
export interface DemandText {
	readonly name: string;
	readonly asked: string;
	readonly none: string;
}

function isDemand(messages: Messages, id: LessonFact['id']): id is keyof Messages['lessons']['demands'] {
	return Object.hasOwn(messages.lessons.demands, id);
}

/** @returns a fact of a lesson in words: its name, and what the table states of it or that it states nothing. */
export function factWords(messages: Messages, fact: LessonFact): { readonly name: string; readonly text: string } {
	if (isDemand(messages, fact.id)) {
		const { name, asked, none } = messages.lessons.demands[fact.id];
		return { name, text: fact.kind === 'none' ? none : asked };
	}
	const { name, states, beyond, none } = messages.lessons.facts[fact.id];
	if (fact.kind !== 'number') return { name, text: none };
	return { name, text: ((fact.exclusive ? beyond : undefined) ?? states)({ value: messages.lessons.printed({ value: fact.printed }) }) };
}
