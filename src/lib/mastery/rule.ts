/**
 * The shipped pass rules. The counts of the default are those of learning-and-records.md 6 as the issue of the
 * orientation course states them; every pass mark is provisional until judges have set it.
 */
import type { PassRule } from './schema.ts';
import type { Difficulty } from './state.ts';

/** Why an item stands in a form: planned, brought by an error in its cell, or by an accepted failing plan. */
export type From = 'blueprint' | 'second-of-cell' | 'refuse-again';

/** One place in a form. */
export interface Slot {
	readonly cell: string;
	readonly difficulty: Difficulty;
	/** A decision on a plan that fails (true) or passes (false); left out: anything of the cell. */
	readonly fails?: boolean;
	readonly from: From;
}

type Place = PassRule['blueprint'][number];

function place(cell: string, difficulty: Difficulty, fails?: boolean): Place {
	return fails === undefined ? { cell, difficulty } : { cell, difficulty, fails };
}

/**
 * Twelve: every cell once; twice the two that a plan stands on, and the two that are asked on pictures, where a
 * guess hits more often than a guessed number does.
 */
const TWELVE: readonly Place[] = [
	place('stages', 'middle'),
	place('label-and-mass', 'middle'),
	place('free-fall', 'middle'),
	place('required-clearance', 'middle'),
	place('available-and-verdict', 'middle'),
	place('force-and-limits', 'middle'),
	place('swing-and-path', 'middle'),
	place('decisions', 'middle', true),
	place('stages', 'hard'),
	place('required-clearance', 'hard'),
	place('available-and-verdict', 'easy'),
	place('decisions', 'middle')
];

/** Six more: the other four cells for the second time, then one decision on a plan that passes. */
const TO_EIGHTEEN: readonly Place[] = [
	place('label-and-mass', 'easy'),
	place('free-fall', 'hard'),
	place('force-and-limits', 'hard'),
	place('swing-and-path', 'middle'),
	place('required-clearance', 'middle'),
	place('decisions', 'hard', false)
];

const TO_TWENTY_FOUR: readonly Place[] = [
	place('free-fall', 'middle'),
	place('required-clearance', 'hard'),
	place('available-and-verdict', 'middle'),
	place('force-and-limits', 'middle'),
	place('label-and-mass', 'middle'),
	place('decisions', 'hard', true)
];

const TO_THIRTY: readonly Place[] = [
	place('stages', 'middle'),
	place('free-fall', 'hard'),
	place('available-and-verdict', 'middle'),
	place('swing-and-path', 'middle'),
	place('required-clearance', 'middle'),
	place('decisions', 'middle', false)
];

const TO_THIRTY_SIX: readonly Place[] = [
	place('label-and-mass', 'easy'),
	place('free-fall', 'middle'),
	place('available-and-verdict', 'middle'),
	place('force-and-limits', 'hard'),
	place('swing-and-path', 'middle'),
	place('decisions', 'middle', true)
];

/** @source issue "The orientation course", default rule of the final check; accepted-plan and cell clauses likewise. */
const STAGED: PassRule = {
	id: 'staged',
	version: 1,
	for: 'final',
	stages: [
		{ after: 12, passAtMost: 0, failAtLeast: 4 },
		{ after: 18, passAtMost: 1, failAtLeast: 5 },
		{ after: 24, passAtMost: 2, failAtLeast: 5 },
		{ after: 30, passAtMost: 4 }
	],
	unsafe: { first: { items: 12, atMost: 1 }, atMost: 2 },
	failingPlan: { extra: 2 },
	cellError: { extra: 1 },
	blueprint: [...TWELVE, ...TO_EIGHTEEN, ...TO_TWENTY_FOUR, ...TO_THIRTY],
	tries: { beforeUnlock: 2, perDay: 2 },
	cut: { kind: 'provisional' }
};

/**
 * One length for everybody, for those who explain a fixed form more easily.
 * @source learning-and-records.md 6.1: 24 items, 21 right is the shortest fixed form with at most 5 % false fails
 * that lets a 70 % worker through in at most 5 % of tries; 6.2: unsafe cap 2 on 24 items.
 */
const FIXED: PassRule = {
	...STAGED,
	id: 'fixed-24',
	stages: [{ after: 24, passAtMost: 3 }],
	unsafe: { first: { items: 24, atMost: 2 }, atMost: 2 },
	blueprint: [...TWELVE, ...TO_EIGHTEEN, ...TO_TWENTY_FOUR]
};

/**
 * The staged rule with six items more at each stage, for those who would rather ask longer than err.
 * @reason after eighteen items without an error a 70 % worker passes in 2 tries of a thousand, instead of 14 after twelve
 */
const LONG: PassRule = {
	...STAGED,
	id: 'staged-long',
	stages: [
		{ after: 18, passAtMost: 0, failAtLeast: 4 },
		{ after: 24, passAtMost: 1, failAtLeast: 5 },
		{ after: 30, passAtMost: 2, failAtLeast: 5 },
		{ after: 36, passAtMost: 4 }
	],
	unsafe: { first: { items: 18, atMost: 1 }, atMost: 2 },
	blueprint: [...TWELVE, ...TO_EIGHTEEN, ...TO_TWENTY_FOUR, ...TO_THIRTY, ...TO_THIRTY_SIX]
};

/** The rules of the final check that an organisation can choose from; the first is the default. */
export const PASS_RULES: readonly PassRule[] = [STAGED, FIXED, LONG];

/**
 * The check at the end of a lesson: it opens the next lesson, certifies nothing, and is short.
 * @reason three right answers in a row, or five of six, show that practice held without help; the final check decides.
 */
export const LESSON_RULE: PassRule = {
	id: 'lesson',
	version: 1,
	for: 'lesson',
	stages: [
		{ after: 3, passAtMost: 0, failAtLeast: 2 },
		{ after: 5, passAtMost: 1 }
	],
	unsafe: { first: { items: 3, atMost: 1 }, atMost: 1 },
	failingPlan: { extra: 2 },
	cellError: { extra: 1 },
	blueprint: [
		place('lesson', 'easy'),
		place('lesson', 'middle'),
		place('lesson', 'hard'),
		place('lesson', 'middle'),
		place('lesson', 'hard')
	],
	// A lesson's check is never locked, for practice has to come between two tries; a day has room for a bad one in each.
	tries: { beforeUnlock: 10, perDay: 4 },
	cut: { kind: 'provisional' }
};

/** @returns the shipped rule of the final check with that id, or undefined. */
export function passRule(id: string): PassRule | undefined {
	return PASS_RULES.find((one) => one.id === id);
}

/** @returns a lesson's rule with the cell that the lesson teaches in all its places. */
export function ruleForCell(rule: PassRule, cell: string): PassRule {
	return { ...rule, blueprint: rule.blueprint.map((one) => ({ ...one, cell })) };
}

/** @returns the cells that a rule asks, each once, in the order of the blueprint. */
export function cellsOf(rule: PassRule): readonly string[] {
	return [...new Set(rule.blueprint.map((one) => one.cell))];
}

/** What the id of a rule begins with that an organisation made; what follows is the shipped rule that it was made from. */
export const OWN_RULE = 'own-';

/** @returns the id of the shipped rule that a rule is, or was made from. */
export function baseOf(id: string): string {
	return id.startsWith(OWN_RULE) ? id.slice(OWN_RULE.length) : id;
}
