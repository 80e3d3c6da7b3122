/** Shapes of what is said to authors of scenarios. Numbers come ready written, with their unit. */

/** What a finding can name. Each is empty where the finding has no such thing. */
export interface FindingParts {
	/** A share in words: "3 of 100". */
	readonly share: string;
	/** A state, a check, a reason, a slot: what tells two findings of one kind apart. */
	readonly which: string;
	/** Why, as a sentence. */
	readonly why: string;
	/** A given's name. */
	readonly given: string;
	/** A number that a rule binds, and that of another rule. */
	readonly of: string;
	readonly other: string;
	/** Two slips, or a slip and the right answer. */
	readonly first: string;
	readonly second: string;
	readonly value: string;
	readonly least: string;
	readonly greatest: string;
	readonly mean: string;
	readonly most: string;
	readonly steps: string;
	readonly words: string;
	readonly count: string;
	readonly name: string;
}

/** What is wrong, and what to do about it. */
export interface FindingWords {
	readonly what: (p: FindingParts) => string;
	readonly fix: (p: FindingParts) => string;
}

/** What can be named of a part that does not fit the schema. */
export interface ProblemParts {
	/** The bound that is broken. */
	readonly bound: string;
	/** What stands in braces. */
	readonly which: string;
	/** The schema's own words. */
	readonly words: string;
}

export type ProblemWords = Readonly<Record<string, { readonly what: (p: ProblemParts) => string; readonly fix: (p: ProblemParts) => string }>>;
