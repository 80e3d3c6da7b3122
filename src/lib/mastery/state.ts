/** What is known of one learner: plain data, made by `observe` alone. */
import { TRACING } from './estimate.ts';

/** How hard a task is, by the drivers its author declared. */
export type Difficulty = 'easy' | 'middle' | 'hard';

/** The difficulties, from the easiest up. */
export const DIFFICULTIES: readonly Difficulty[] = Object.freeze(['easy', 'middle', 'hard']);

/** What one answered ask says about one cell and the finer skills that the ask needs. */
export interface Credit {
	readonly cell: string;
	readonly skills: readonly string[];
	readonly right: boolean;
	/**
	 * How likely chance alone gives this answer: of all draws of the task, the share whose right answer is this one.
	 * `GUESS` if left out.
	 */
	readonly guess?: number;
}

/** One answered problem. */
export interface Outcome {
	/** Id of the task. */
	readonly task: string;
	/** What interleaving tells apart: the procedure, the site. */
	readonly kind: string;
	readonly difficulty: Difficulty;
	/** Date at the learner's place, YYYY-MM-DD. */
	readonly day: string;
	/** A help was used, or it was not the first try at this draw. */
	readonly aided: boolean;
	/** One for each ask that is evidence. A decision is left out when one of its numbers was wrong. */
	readonly credits: readonly Credit[];
}

/** What is known of one finer skill. */
export interface SkillState {
	/** How likely the learner has it, 0 to 1. */
	readonly p: number;
	/** How many problems asked for it; trying one again does not count. */
	readonly seen: number;
}

/** A first try without help. */
export interface FirstTry {
	readonly right: boolean;
	readonly difficulty: Difficulty;
	readonly day: string;
}

/** Where a cell stands on the ladder of refreshers. */
export interface Refresh {
	/** How many refreshers in a row were right: place in `REFRESH_DAYS`. */
	readonly rung: number;
	/** The day from which the next one is counted. */
	readonly from: string;
}

/** What is known of one cell. */
export interface CellState extends SkillState {
	/** The last first tries without help, oldest first, at most `TRIES_IN_A_ROW`. */
	readonly tries: readonly FirstTry[];
	/** How many first tries without help were right since the last wrong answer. */
	readonly row: number;
	/** How likely chance alone gives such a row; 1 for none. */
	readonly rowByChance: number;
	/** How hard the next task should be: place in `DIFFICULTIES`. */
	readonly level: number;
	/** Whether the cell is ready now. */
	readonly ready: boolean;
	/** The first day on which it was ready; null if it never was. Stays when readiness is lost. */
	readonly readySince: string | null;
	/** Null until the cell is ready for the first time. */
	readonly refresh: Refresh | null;
}

/** The problem answered last. */
export interface LastProblem {
	readonly task: string;
	readonly kind: string;
}

/** All that is known of one learner. */
export interface Mastery {
	readonly cells: Readonly<Record<string, CellState>>;
	readonly skills: Readonly<Record<string, SkillState>>;
	/** Null before the first problem. */
	readonly last: LastProblem | null;
}

/** A learner of whom nothing is known yet. */
export const NOTHING_KNOWN: Mastery = Object.freeze({
	cells: Object.freeze({}),
	skills: Object.freeze({}),
	last: null
});

const NEW_SKILL: SkillState = Object.freeze({ p: TRACING.start, seen: 0 });
const NEW_CELL: CellState = Object.freeze({
	...NEW_SKILL,
	tries: Object.freeze([]),
	row: 0,
	rowByChance: 1,
	level: 0,
	ready: false,
	readySince: null,
	refresh: null
});

/** @returns what is known of a cell; of one never asked for, what is assumed at the start. */
export function cellOf(mastery: Mastery, cell: string): CellState {
	return own(mastery.cells, cell) ?? NEW_CELL;
}

/** @returns what is known of a finer skill; of one never asked for, what is assumed at the start. */
export function skillOf(mastery: Mastery, skill: string): SkillState {
	return own(mastery.skills, skill) ?? NEW_SKILL;
}

/** A member that the record itself holds, not one that every object has. */
function own<T>(record: Readonly<Record<string, T>>, key: string): T | undefined {
	return Object.hasOwn(record, key) ? record[key] : undefined;
}
