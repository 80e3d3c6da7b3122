/** Shapes of entries that several languages fill alike. Numbers come ready written, with their unit. */

/** The words for a number that can be read off story, drawing or label. */
export interface GivenText {
	/** In a list: "Lanyard length, hook to hook". */
	readonly name: string;
	/** In the drawing and on a plate: a word or two. */
	readonly short: string;
	/** In a sentence, with its article: "the lanyard length". */
	readonly the: string;
	/** What it is, in one sentence. */
	readonly what: string;
}

/** The words for a computed quantity. */
export interface QuantityText {
	readonly name: string;
	/** On the tape and in a row of the working. */
	readonly short: string;
	/** In a sentence, with its article: "the free fall". */
	readonly the: string;
	/** What it is, in one sentence. */
	readonly meaning: string;
}

/** Who and where a question is about. Places come with their article: "the shelf". */
export interface AskParts {
	readonly name: string;
	readonly surface: string;
	readonly anchorage: string;
}

/** A question as it stands over an answer field, and the line below it. */
export interface AskText {
	readonly question: (p: AskParts) => string;
	readonly help: (p: AskParts) => string;
}

/** What a message about a slip can say. */
export interface SlipParts {
	/** The worker's name. */
	readonly name: string;
	/** The step in which the slip acts, as the slip makes it. */
	readonly value: string;
	/** The same step as it is. */
	readonly right: string;
	/** By how much the slip changes the step: the size of what was left out or added. */
	readonly term: string;
	/** What the slip is about below, with its article: "the stacked panels"; the lower level where nothing else is. */
	readonly thing: string;
	/** Where the question measures from, with its article: "the shelf". */
	readonly from: string;
}

/** What is said of a slip. */
export interface SlipText {
	/** For a list or a choice: "Elongation left out". */
	readonly label: string;
	/** What is wrong with the number, as part of a sentence after "it looks as if" or "could be:". */
	readonly clause: (p: SlipParts) => string;
	/** The same as a sentence of its own, over the tapes. */
	readonly title: (p: SlipParts) => string;
	/** Why it matters. */
	readonly why: (p: SlipParts) => string;
	/** The right rule, in one line. */
	readonly rule: string;
	/** What to look at before the next try, without the answer. */
	readonly hint: string;
}

/** A slip as a language writes it: the title follows from the clause. */
export type SlipSource = Omit<SlipText, 'title'>;

/** @returns a clause as a sentence: a capital in front, a full stop behind. */
export function sentence(clause: string): string {
	return `${clause.charAt(0).toLocaleUpperCase('en')}${clause.slice(1)}.`;
}

/** @returns all slips with their titles. */
export function withTitles<Id extends string>(sources: Readonly<Record<Id, SlipSource>>): Readonly<Record<Id, SlipText>> {
	const withTitle = ([id, source]: [string, SlipSource]): [string, SlipText] => [
		id,
		Object.freeze({ ...source, title: (p: SlipParts) => sentence(source.clause(p)) })
	];
	return Object.freeze(Object.fromEntries(Object.entries<SlipSource>(sources).map(withTitle))) as Readonly<Record<Id, SlipText>>;
}

/** What a message about a slip of the pen can say. Numbers as written, with their unit. */
export interface EntryParts {
	/** The number as typed, as it was understood. */
	readonly typed: string;
	/** The right number of the whole question. */
	readonly right: string;
	/** The unit that was meant, written out as a symbol: "ft". Empty where no unit is meant. */
	readonly unit: string;
	/** The given or the step that was handed in, with its article. Empty where there is none. */
	readonly the: string;
}

export interface EntryText {
	readonly label: string;
	readonly title: (p: EntryParts) => string;
	readonly hint: string;
}

/** A name and what it stands for. */
export interface Explained {
	readonly name: string;
	readonly what: string;
}

/** What a message about a check's outcome can say: how much is to spare or short, where it is a matter of size. */
export interface CheckParts {
	readonly amount: string | undefined;
}

/** A check: its name, and what is said of each outcome. */
export interface CheckText {
	readonly name: string;
	/** In a verdict after "fails:" or "cannot be shown adequate:". */
	readonly short: string;
	readonly held: (p: CheckParts) => string;
	readonly failed: (p: CheckParts) => string;
	readonly unknown: string;
}
