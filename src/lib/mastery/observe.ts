/**
 * How one answered problem changes what is known.
 *
 * **One problem, several cells and skills.** Each ask that is evidence is one credit: its cell, the finer skills it
 * needs, right or wrong. A problem is one observation of each cell it credits: several asks of one cell are right only
 * if all are. It is one observation of each finer skill too. A right ask speaks for each of its skills. A wrong one is
 * put down to the least certain of them, or to all that are as uncertain; it says nothing of the others. So the doubt
 * gathers where practice goes next, and a task that needs that skill alone settles it. (That a wrong answer is the
 * weakest skill's is a known short cut, from memory; a full sharing out needs more answers than a lesson has.) A skill
 * that several asks need takes the lowest estimate that any of them leaves. A decision counts only when the numbers it
 * rests on are right, since half of all guessed decisions are: with a wrong number it is left out of the credits.
 *
 * **Help.** A problem is aided when a help was used or when it was not the first try at this draw. A right aided answer
 * changes no estimate, for a help gives away part of the answer and a second try its fault. A wrong one lowers the
 * estimate, for even help was not enough, and ends the row of right answers. Neither teaches in the estimate, so that
 * no number of helps ever raises it; what a help does teach shows in the next problem worked alone.
 *
 * **Ready** is what `observe` finds after an unaided answer: the estimate at `READY_AT` or over, the last
 * `TRIES_IN_A_ROW` first tries without help right, among them `DIFFICULTIES_AMONG` difficulties, and the whole row since
 * the last wrong answer too unlikely for chance. Once ready, a cell stays so until a wrong answer: a right one never takes
 * readiness away. Three right answers in a row lift even the lowest estimate over `READY_AT`: with these numbers the row
 * decides, and the estimate steers practice. By itself such a rule lets a half-skilled learner through in the end; that
 * is why it ends practice and never the test.
 *
 * **Chance.** Three typed numbers in a row are enough: guesses alone make such a row 8 times in a million. A picture
 * where nothing is wrong, or a choice of four, is guessed more easily, so such answers make a longer row. Each right
 * answer counts with the share of draws that have it as their right answer. Whatever somebody guesses, always the
 * commonest answer too, a row that begins then gets below a bound with at most that chance (the inverse of the product
 * is a fair game; Ville's inequality, from memory). A cell that took more than `STUCK_AFTER` problems without ever being
 * ready is stuck: the trainer is told, and the bound is `ROW_BY_CHANCE.stuck`, four typed numbers. So in 200 problems
 * at most 25 · 10⁻⁵ + 175 · 10⁻⁶, less than one in 2,000, of those who guess become ready in a cell.
 */
import { dayNumber } from './day.ts';
import { learnt, weigh } from './estimate.ts';
import { afterTry } from './refresh.ts';
import {
	DIFFICULTIES,
	cellOf,
	skillOf,
	type CellState,
	type Credit,
	type FirstTry,
	type Mastery,
	type Outcome,
	type SkillState
} from './state.ts';

/**
 * The estimate from which a cell may be ready.
 * @source reference/learning-and-records.md 5 and 5.1: 0.95 usable, 0.98 better for what follows
 */
export const READY_AT = 0.98;
/**
 * How many first tries without help must be right, one after the other.
 * @source reference/learning-and-records.md 5.1
 */
export const TRIES_IN_A_ROW = 3;
/**
 * Problems in one cell after which a learner who was never ready is stuck.
 * @source reference/learning-and-records.md 5.1, checks
 */
export const STUCK_AFTER = 25;
/**
 * How likely a blind guess is right, where a credit does not say.
 * @source reference/learning-and-records.md 6.2: 1.7 % for a number over its plausible span, rounded up
 */
export const GUESS = 0.02;
/**
 * How likely chance alone may give a row that makes a cell ready: usually, and once the cell is stuck.
 * @reason the least round numbers by which three typed numbers in a row are enough, and four for whoever is stuck
 */
export const ROW_BY_CHANCE = Object.freeze({ usual: 1e-5, stuck: 1e-6 });
/**
 * How many difficulties must be among them.
 * @source reference/learning-and-records.md 5.1
 */
export const DIFFICULTIES_AMONG = 2;

/**
 * @param mastery what was known before.
 * @param outcome one answered problem.
 * @returns what is known after it; nothing given is changed.
 * @throws RangeError if the day is no date of the calendar as YYYY-MM-DD.
 */
export function observe(mastery: Mastery, outcome: Outcome): Mastery {
	dayNumber(outcome.day);
	const cells = new Map<string, CellState>();
	for (const { cell } of outcome.credits) {
		if (!cells.has(cell)) cells.set(cell, cellAfter(mastery, cell, outcome));
	}
	const skills = new Map<string, SkillState>();
	for (const skill of outcome.credits.flatMap((credit) => credit.skills)) {
		if (!skills.has(skill)) skills.set(skill, skillAfter(mastery, skill, outcome));
	}
	return {
		cells: { ...mastery.cells, ...Object.fromEntries(cells) },
		skills: { ...mastery.skills, ...Object.fromEntries(skills) },
		last: { task: outcome.task, kind: outcome.kind }
	};
}

/** The estimate after an answer that is evidence of it. */
function moved(p: number, right: boolean, aided: boolean): number {
	if (aided) return right ? p : weigh(p, false);
	return learnt(weigh(p, right));
}

function skillAfter(mastery: Mastery, skill: string, outcome: Outcome): SkillState {
	const before = skillOf(mastery, skill);
	const estimates = outcome.credits
		.filter((credit) => credit.skills.includes(skill))
		.map((credit) =>
			credit.right || isLeastCertain(mastery, skill, credit) ? moved(before.p, credit.right, outcome.aided) : before.p
		);
	return { p: Math.min(...estimates), seen: seenAfter(mastery, before, outcome) };
}

/** A problem tried again, which only an aided outcome of the same task can be, is the same problem. */
function seenAfter({ last }: Mastery, { seen }: SkillState, { aided, task }: Outcome): number {
	return aided && last?.task === task ? Math.max(seen, 1) : seen + 1;
}

function isLeastCertain(mastery: Mastery, skill: string, credit: Credit): boolean {
	return credit.skills.every((one) => skillOf(mastery, one).p >= skillOf(mastery, skill).p);
}

function cellAfter(mastery: Mastery, cell: string, outcome: Outcome): CellState {
	const before = cellOf(mastery, cell);
	const credits = outcome.credits.filter((credit) => credit.cell === cell);
	const right = credits.every((credit) => credit.right);
	const after = {
		...before,
		seen: seenAfter(mastery, before, outcome),
		p: moved(before.p, right, outcome.aided)
	};
	if (outcome.aided && right) return after;
	const broken = { ...after, row: 0, rowByChance: 1, level: easier(before.level), ready: false };
	if (outcome.aided) return { ...broken, tries: [] };

	const tried: FirstTry = { right, difficulty: outcome.difficulty, day: outcome.day };
	const tries = [...before.tries, tried].slice(-TRIES_IN_A_ROW);
	if (!right) return { ...broken, tries, refresh: afterTry(before.refresh, tried, false) };

	const row = before.row + 1;
	const guesses = credits.map(({ guess = GUESS }) => guess).sort((a, b) => a - b);
	const rowByChance = guesses.reduce((product, guess) => product * guess, before.rowByChance);
	const longer = { ...after, tries, row, rowByChance, level: harderThan(outcome.difficulty) };
	const ready = before.ready || reaches(longer);
	return {
		...longer,
		ready,
		readySince: before.readySince ?? (ready ? outcome.day : null),
		refresh: afterTry(before.refresh, tried, ready)
	};
}

/**
 * @param cell what is known of a cell.
 * @returns whether it took more than `STUCK_AFTER` problems without ever being ready.
 */
export function stuck({ seen, readySince }: CellState): boolean {
	return readySince === null && seen > STUCK_AFTER;
}

/**
 * @param cell what is known of a cell.
 * @returns how long the row of right first tries without help must be if what comes is as hard to guess as a typed
 * number. It gets longer by answers that are easier to guess.
 */
export function rowNeeded(cell: CellState): number {
	let needed = cell.row;
	for (let byChance = cell.rowByChance; byChance > boundFor(cell); byChance *= GUESS) needed += 1;
	return Math.max(needed, TRIES_IN_A_ROW);
}

function boundFor(cell: CellState): number {
	return stuck(cell) ? ROW_BY_CHANCE.stuck : ROW_BY_CHANCE.usual;
}

function reaches(cell: CellState): boolean {
	const { p, tries, row, rowByChance } = cell;
	return (
		p >= READY_AT &&
		row >= TRIES_IN_A_ROW &&
		new Set(tries.map((one) => one.difficulty)).size >= DIFFICULTIES_AMONG &&
		rowByChance <= boundFor(cell)
	);
}

function easier(level: number): number {
	return Math.max(level - 1, 0);
}

/** One step up from what was solved. */
function harderThan(difficulty: FirstTry['difficulty']): number {
	return Math.min(DIFFICULTIES.indexOf(difficulty) + 1, DIFFICULTIES.length - 1);
}
