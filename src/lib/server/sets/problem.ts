import type { InputProblem } from '../problems.ts';

/** What can be wrong with a set or an assignment: pages have words for each. */
export type SetFault =
	/** The name is missing, too long, or holds no letter. */
	| 'name'
	/** Too few scenarios, or too many. */
	| 'scenarios'
	| 'unknown-scenario'
	/** An ask that the scenario has not, or a decision without its numbers. */
	| 'asks'
	/** No number of problems that a set can have. */
	| 'count'
	/** More right or more unsafe answers than problems. */
	| 'rule'
	/** Whatever else does not fit. */
	| 'content'
	/** Neither a crew nor a person was chosen. */
	| 'nobody'
	/** Too many at once. */
	| 'too-many'
	/** Not a crew of theirs, or one that was put away. */
	| 'crew'
	/** Nobody on the list of a crew of theirs. */
	| 'person'
	/** No day of the calendar. */
	| 'day'
	/** Before today at the site. */
	| 'day-past'
	/** They have the set already, with another due day. */
	| 'has-it'
	/** The set was put away. */
	| 'archived';

/** What is wrong, for programs and, by its code, for pages. */
export interface SetProblem extends InputProblem {
	readonly code: SetFault;
	/** Where it is about a crew or a person: whom. */
	readonly about?: string;
}

export function setProblem(code: SetFault, field: string, problem: string, remedy: string, about?: string): SetProblem {
	return { code, field, problem, remedy, ...(about === undefined ? {} : { about }) };
}

/** Refused: what is wrong; nothing was stored. */
export interface SetRefused {
	readonly kind: 'refused';
	readonly problems: readonly SetProblem[];
}

export function refusedFor(...problems: readonly SetProblem[]): SetRefused {
	return { kind: 'refused', problems };
}
