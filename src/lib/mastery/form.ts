/**
 * Putting a form together: which task stands in which place, with which seed. Forms of one rule are equally hard
 * because each place fixes cell and difficulty, and because the tasks that may stand in it lie within a narrow
 * band of hardness (learning-and-records.md 6.3 and 6.4).
 */
import { hashOf } from './seed.ts';
import type { Slot } from './rule.ts';
import { DIFFICULTIES, type Difficulty } from './state.ts';

/** A task that a check may ask. */
export interface CheckTask {
	readonly id: string;
	readonly cell: string;
	readonly difficulty: Difficulty;
	/** How hard it is beyond its cell, logit: see `hardnessOf`. */
	readonly hardness: number;
	/** What it is drawn from, so that neighbours tell different stories. */
	readonly source: string;
	/** Of a decision on a plan: about what share of its draws fail. Left out where nothing is decided. */
	readonly failsShare?: number;
}

/** What makes a task hard, as its author declared it. */
export interface Drivers {
	readonly steps: number;
	readonly decoys: number;
	readonly unitChange: boolean;
	readonly signChange: boolean;
}

/** @reason author's guess, logit each, until answers of real learners say more: a change of unit costs about three steps */
const WEIGHTS = { step: 0.1, decoy: 0.1, unitChange: 0.3, signChange: 0.2 };

/** @source learning-and-records.md 6.4: hardness inside one cell of the blueprint differs by 0.3 logit at most */
export const BAND = 0.3;

/** Floating point's share in a difference of two sums. */
const ROUNDING = 1e-9;

/** Seeds tried for one task before another is taken. @reason a plan of a wanted kind comes up at least once in ten */
const SEEDS_PER_TASK = 200;

/** @returns how hard a task with these drivers is, logit above an imagined one without any. */
export function hardnessOf(drivers: Drivers): number {
	return (
		WEIGHTS.step * drivers.steps +
		WEIGHTS.decoy * drivers.decoys +
		(drivers.unitChange ? WEIGHTS.unitChange : 0) +
		(drivers.signChange ? WEIGHTS.signChange : 0)
	);
}

/** One item of a form. */
export interface FormItem {
	readonly slot: Slot;
	readonly task: CheckTask;
	readonly seed: number;
}

export interface FormOptions {
	/** The seed of this try, known to the server only. */
	readonly seed: string;
	/** Items of this try's earlier pages. */
	readonly asked: readonly FormItem[];
	/** Keys (`itemKey`) of items that earlier tries asked: none comes again. */
	readonly used: ReadonlySet<string>;
	/**
	 * Whether a drawn task may stand there: it can be drawn, its plan fails or passes as `slot.fails` says, and it
	 * repeats no content. Of the next seeds the first that fits is taken.
	 */
	readonly fits: (item: FormItem, before: readonly FormItem[]) => boolean;
}

/** @returns what tells an item from all others: its task and its seed. */
export function itemKey(item: { readonly task: { readonly id: string }; readonly seed: number }): string {
	return `${item.task.id} ${item.seed}`;
}

/**
 * @returns the tasks that may stand in a place: of its cell, of its difficulty or, where the cell has none of it,
 * of the nearest (the harder of two), and within one band of hardness: the one that holds most tasks.
 */
export function tasksFor(slot: Slot, tasks: readonly CheckTask[]): readonly CheckTask[] {
	const possible = tasks.filter((task) => task.cell === slot.cell && canBe(task, slot.fails));
	const wanted = DIFFICULTIES.indexOf(slot.difficulty);
	const away = (task: CheckTask): number => {
		const step = DIFFICULTIES.indexOf(task.difficulty) - wanted;
		return step >= 0 ? 2 * step : 1 - 2 * step;
	};
	const nearest = Math.min(...possible.map(away));
	return fullestBand(possible.filter((task) => away(task) === nearest));
}

/** Whether draws of a task can give the plan that a place wants. */
function canBe(task: CheckTask, fails: boolean | undefined): boolean {
	if (fails === undefined) return true;
	if (task.failsShare === undefined) return false;
	return fails ? task.failsShare > 0 : task.failsShare < 1;
}

function fullestBand(tasks: readonly CheckTask[]): readonly CheckTask[] {
	let best: readonly CheckTask[] = [];
	for (const { hardness } of [...tasks].sort((a, b) => a.hardness - b.hardness)) {
		const band = tasks.filter((task) => task.hardness >= hardness && task.hardness <= hardness + BAND + ROUNDING);
		if (band.length > best.length) best = band;
	}
	return best;
}

/**
 * Fills the places of a page. The order is drawn, with neighbours from different cells where that can be; tasks
 * come as evenly as can be, and neighbours from different sources. The same seed, tasks and earlier items
 * give the same page.
 * @returns the items in the order in which they are asked.
 * @throws RangeError if no task fits a place.
 */
export function fillSlots(slots: readonly Slot[], tasks: readonly CheckTask[], options: FormOptions): readonly FormItem[] {
	const page: FormItem[] = [];
	for (const slot of inOrder(slots, options)) page.push(fill(slot, tasks, page, options));
	return page;
}

/** Slots in a drawn order in which cells alternate as far as they can. */
function inOrder(slots: readonly Slot[], options: FormOptions): readonly Slot[] {
	const rest = slots
		.map((slot, i) => ({ slot, rank: hashOf(['order', options.seed, options.asked.length, i]) }))
		.sort((a, b) => a.rank - b.rank)
		.map(({ slot }) => slot);
	const order: Slot[] = [];
	while (rest.length > 0) {
		const last = order.at(-1)?.cell;
		const crowded = rest.findIndex(({ cell }) => cell !== last && 2 * rest.filter((one) => one.cell === cell).length > rest.length);
		const other = rest.findIndex(({ cell }) => cell !== last);
		order.push(...rest.splice(Math.max(0, crowded >= 0 ? crowded : other), 1));
	}
	return order;
}

function fill(slot: Slot, tasks: readonly CheckTask[], page: readonly FormItem[], options: FormOptions): FormItem {
	const before = [...options.asked, ...page];
	const place = before.length;
	const last = page.at(-1);
	const ranked = tasksFor(slot, tasks)
		.map((task) => ({
			task,
			times: before.filter((item) => item.task.id === task.id).length,
			near: task.source === last?.task.source ? 1 : 0,
			rank: hashOf(['task', options.seed, place, task.id])
		}))
		.sort((a, b) => a.times - b.times || a.near - b.near || a.rank - b.rank);
	const taken = new Set(before.map(itemKey));
	for (const { task } of ranked) {
		for (let i = 0; i < SEEDS_PER_TASK; i += 1) {
			const item = { slot, task, seed: hashOf(['check', options.seed, place, task.id, i]) };
			const key = itemKey(item);
			if (!taken.has(key) && !options.used.has(key) && options.fits(item, before)) return item;
		}
	}
	const kind = slot.fails === undefined ? '' : slot.fails ? ' on a plan that fails' : ' on a plan that passes';
	throw new RangeError(`no task of the cell "${slot.cell}"${kind} fits a place of the check`);
}
