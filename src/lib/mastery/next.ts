/**
 * Which task comes next in practice. Among the tasks of the cells in focus, in this order:
 *
 * 1. **another kind** than the problem before, whenever there is one, and another task;
 * 2. **the difficulty** that the cell asks for: from easy, one step up from each task solved alone at the first try, one
 *    down after a wrong answer, help or none. After two right in a row of one difficulty another one is asked for, so
 *    that the third can make the cell ready;
 * 3. **the weakest skill**: the task whose least certain finer skill is the least certain of all;
 * 4. among equals, by chance from the seed.
 */
import { DIFFICULTIES, cellOf, skillOf, type CellState, type Difficulty, type Mastery } from './state.ts';
import { TRIES_IN_A_ROW } from './observe.ts';
import { hashOf, seedOf } from './seed.ts';

/** What the choice needs to know of a task. */
export interface TaskFacts {
	readonly id: string;
	/** The cell it is practice for. */
	readonly cell: string;
	/** All cells that its asks credit. */
	readonly credits: readonly string[];
	/** The finer skills that it needs. */
	readonly skills: readonly string[];
	/** What interleaving tells apart: the procedure, the site. */
	readonly kind: string;
	readonly difficulty: Difficulty;
}

/** Whose turn it is. */
export interface Turn {
	/** A number of this learner. */
	readonly seed: number;
	/** How many problems the learner was given before, from 0. */
	readonly nth: number;
}

/** A task and the seed to draw it with. */
export interface NextTask {
	readonly task: TaskFacts;
	readonly seed: number;
}

/** What tells two tasks apart, the weightiest first; the lowest is chosen. */
type Marks = readonly number[];

/**
 * @param tasks all tasks there are.
 * @param mastery what is known of the learner.
 * @param focus the cells to practise. Where no task is practice for them, tasks that credit them are taken.
 * @param turn whose turn it is.
 * @returns the next task and its seed. The same arguments give the same task; no two turns of a learner share a seed.
 * @throws RangeError if no task belongs to the focus.
 */
export function nextTask(
	tasks: readonly TaskFacts[],
	mastery: Mastery,
	focus: { readonly cells: readonly string[] },
	turn: Turn
): NextTask {
	const own = tasks.filter((task) => focus.cells.includes(task.cell));
	const choice = own.length > 0 ? own : tasks.filter((task) => task.credits.some((cell) => focus.cells.includes(cell)));
	let best: Marks | undefined;
	let equals: TaskFacts[] = [];
	for (const task of choice) {
		const marks = marksOf(task, mastery);
		const order = best === undefined ? -1 : compared(marks, best);
		if (order > 0) continue;
		equals = order < 0 ? [task] : [...equals, task];
		best = marks;
	}
	const [task] = byChance(equals, turn);
	if (task === undefined) throw new RangeError(`no task for ${focus.cells.join(', ')}`);
	return { task, seed: seedOf(turn.seed, turn.nth) };
}

/** Tasks in an order that the turn fixes, whatever order they come in. */
function byChance(tasks: readonly TaskFacts[], turn: Turn): readonly TaskFacts[] {
	return tasks
		.map((task) => ({ task, place: hashOf(['choice', turn.seed, turn.nth, task.id]) }))
		.sort((a, b) => a.place - b.place)
		.map(({ task }) => task);
}

/**
 * @param cell what is known of a cell.
 * @returns how far each difficulty is from the one that the cell asks for next, 0 being it.
 */
export function difficultyWanted(cell: CellState): (difficulty: Difficulty) => number {
	const row = cell.tries.slice(1 - TRIES_IN_A_ROW);
	const [first] = row;
	const alike =
		row.length === TRIES_IN_A_ROW - 1 && row.every((one) => one.right && one.difficulty === first?.difficulty);
	return (difficulty) => {
		const distance = Math.abs(DIFFICULTIES.indexOf(difficulty) - cell.level);
		return alike && difficulty === first?.difficulty ? distance + DIFFICULTIES.length : distance;
	};
}

/** The marks of the first three rules above, in their order. */
function marksOf(task: TaskFacts, mastery: Mastery): Marks {
	const { last } = mastery;
	const cell = cellOf(mastery, task.cell);
	return [
		last?.kind === task.kind ? 1 : 0,
		last?.task === task.id ? 1 : 0,
		difficultyWanted(cell)(task.difficulty),
		task.skills.length === 0 ? cell.p : Math.min(...task.skills.map((skill) => skillOf(mastery, skill).p))
	];
}

/** Below 0 if the first marks come first, 0 if nothing tells them apart. */
function compared(a: Marks, b: Marks): number {
	const at = a.findIndex((mark, i) => mark !== b[i]);
	return at < 0 ? 0 : (a[at] ?? 0) - (b[at] ?? 0);
}
