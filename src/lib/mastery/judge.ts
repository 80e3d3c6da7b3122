/**
 * How a check stands after the pages handed in so far.
 *
 * A page is what is handed in at one time. The first is the blueprint's first stage; each later one is the
 * next stage with the extra items that errors brought. The clauses work together like this:
 *
 * - The staged count counts the errors of blueprint items only, against the number of blueprint items. Extra
 *   items are asked beside it: one that is wrong cannot pass anyway, one that is right only clears its cell.
 * - An error leaves its cell *owing*, and brings one more item of the cell to the next page, beside what the
 *   blueprint asks there. If the cell's items on that page are all right, the cell is cleared, and a later error
 *   makes it owe anew. If one is wrong, or if two items of a cell are wrong on one page, both are wrong: the cell
 *   is open, and the check ends not passed until that lesson is done again. (Were the blueprint's own next item
 *   of the cell taken for the second one, a 70 % worker would pass one of two tries 6.4 % of the time, which is
 *   more than the floor allows; see rates.ts.)
 * - A failing plan that was accepted is an error of its cell; what it brings are two failing plans of that
 *   cell, in place of the cell's second item. A second acceptance, anywhere in the check, fails.
 * - The cap on unsafe-side numbers counts every item asked, extra ones too.
 * - A count that passes while a cell still owes brings a last page with the owed items alone.
 *
 * So a check always ends: each page is either the next stage, of which there are as many as the rule says, or
 * the last.
 */
import type { From, Slot } from './rule.ts';
import type { PassRule } from './schema.ts';

/** How one item was answered, as the server graded it. */
export interface ItemOutcome {
	readonly cell: string;
	/** Every part of the answer was right. */
	readonly right: boolean;
	/** A number was wrong on the unsafe side. */
	readonly unsafe: boolean;
	/** The item asked for a decision on a plan whose right decision is not to tie off. */
	readonly failingPlan: boolean;
	/** That plan was accepted. */
	readonly acceptedFailingPlan: boolean;
	readonly from: From;
}

export type FailReason = 'errors' | 'unsafe-numbers' | 'failing-plan-accepted-again';

export type Standing =
	| { readonly kind: 'passed' }
	/** `cells`: those with both items wrong, whose lessons come before the next try. */
	| { readonly kind: 'failed'; readonly why: readonly FailReason[]; readonly cells: readonly string[] }
	| { readonly kind: 'cells-open'; readonly cells: readonly string[] }
	| { readonly kind: 'more'; readonly slots: readonly Slot[] };

/** What the count clauses look at. */
export interface Counts {
	/** Wrong blueprint items. */
	readonly errors: number;
	/** Items with an unsafe-side number, extra items included. */
	readonly unsafe: number;
	/** Failing plans accepted. */
	readonly accepted: number;
}

/** Where a check is between two pages. */
export interface Progress {
	/** Stages of the blueprint handed in. */
	readonly stage: number;
	/** Whether the page to come is the blueprint's next stage, or owed items alone. */
	readonly staged: boolean;
	readonly owing: readonly string[];
	/** The cell of the failing plan that was accepted on the page before. */
	readonly refuse?: string;
}

/** Before the first page. */
export const START: Progress = { stage: 0, staged: true, owing: [] };

/** @returns why the counts fail after that many stages; empty if they do not. */
export function countFailures(rule: PassRule, stage: number, counts: Counts): readonly FailReason[] {
	const at = rule.stages[stage - 1];
	const why: FailReason[] = [];
	if (at === undefined) return why;
	const last = stage === rule.stages.length;
	if (counts.errors >= (at.failAtLeast ?? (last ? at.passAtMost + 1 : Infinity))) why.push('errors');
	const early = at.after <= rule.unsafe.first.items;
	if (counts.unsafe > (early ? rule.unsafe.first.atMost : rule.unsafe.atMost)) why.push('unsafe-numbers');
	if (counts.accepted > 1) why.push('failing-plan-accepted-again');
	return why;
}

/** @returns whether the count of errors passes after that many stages. */
export function countPasses(rule: PassRule, stage: number, counts: Counts): boolean {
	const at = rule.stages[stage - 1];
	return at !== undefined && counts.errors <= at.passAtMost;
}

/** @returns what the next page asks: the next stage unless owed items come alone, then what errors brought. */
export function pageAfter(rule: PassRule, progress: Progress): readonly Slot[] {
	const { stage, staged, owing, refuse } = progress;
	const from = rule.stages[stage - 1]?.after ?? 0;
	const to = staged ? (rule.stages[stage]?.after ?? from) : from;
	const slots: Slot[] = rule.blueprint.slice(from, to).map((place) => ({ ...place, from: 'blueprint' }));
	if (refuse !== undefined) {
		for (let i = 0; i < rule.failingPlan.extra; i += 1) {
			slots.push({ cell: refuse, difficulty: 'middle', fails: true, from: 'refuse-again' });
		}
	}
	for (const cell of owing) {
		const refused = cell === refuse ? rule.failingPlan.extra : 0;
		for (let i = refused; i < rule.cellError.extra; i += 1) {
			slots.push({ cell, difficulty: 'middle', from: 'second-of-cell' });
		}
	}
	return slots;
}

/** @returns what the first page of a check asks. */
export function firstPage(rule: PassRule): readonly Slot[] {
	return pageAfter(rule, START);
}

/** A page split into what the clauses look at. */
interface PageTally extends Counts {
	readonly wrongIn: ReadonlyMap<string, number>;
	readonly acceptedIn?: string;
}

function tally(page: readonly ItemOutcome[]): PageTally {
	const wrongIn = new Map<string, number>();
	for (const item of page) if (isWrong(item)) wrongIn.set(item.cell, (wrongIn.get(item.cell) ?? 0) + 1);
	const acceptedIn = page.find((item) => item.acceptedFailingPlan)?.cell;
	return {
		errors: page.filter((item) => item.from === 'blueprint' && isWrong(item)).length,
		unsafe: page.filter((item) => item.unsafe).length,
		accepted: page.filter((item) => item.acceptedFailingPlan).length,
		wrongIn,
		...(acceptedIn === undefined ? {} : { acceptedIn })
	};
}

/** An unsafe number and an accepted failing plan are wrong, whatever else was said of the item. */
function isWrong(item: ItemOutcome): boolean {
	return !item.right || item.unsafe || item.acceptedFailingPlan;
}

/** Whether the outcomes of a page answer what its places asked, in any order. */
function answers(page: readonly ItemOutcome[], slots: readonly Slot[]): boolean {
	const key = (of: { cell: string; from: From }): string => `${of.from} ${of.cell}`;
	const sorted = (list: readonly { cell: string; from: From }[]): string => list.map(key).sort().join();
	return sorted(page) === sorted(slots);
}

/**
 * @param outcomes of all items of the pages handed in so far, page after page; inside a page in any order.
 * @returns how the check stands.
 * @throws RangeError if they are not whole pages of this rule.
 */
export function standing(rule: PassRule, outcomes: readonly ItemOutcome[]): Standing {
	let progress = START;
	let counts: Counts = { errors: 0, unsafe: 0, accepted: 0 };
	for (let done = 0; ; ) {
		const slots = pageAfter(rule, progress);
		if (done === outcomes.length) return { kind: 'more', slots };
		const page = outcomes.slice(done, done + slots.length);
		if (!answers(page, slots)) {
			throw new RangeError(`${rule.id}: items ${done + 1} to ${done + page.length} do not answer the page of ${slots.length} that this rule asks there`);
		}
		done += page.length;
		const seen = tally(page);
		counts = { errors: counts.errors + seen.errors, unsafe: counts.unsafe + seen.unsafe, accepted: counts.accepted + seen.accepted };
		const stage = progress.stage + (progress.staged ? 1 : 0);
		const why = countFailures(rule, stage, counts);
		const cells = openCells(progress.owing, seen.wrongIn);
		const end: Standing | undefined =
			why.length > 0 ? { kind: 'failed', why, cells } : cells.length > 0 ? { kind: 'cells-open', cells } : undefined;
		if (end !== undefined) return atTheEnd(rule, done, outcomes, end);
		const owing = [...seen.wrongIn.keys()];
		const enough = countPasses(rule, stage, counts);
		if (enough && owing.length === 0) return atTheEnd(rule, done, outcomes, { kind: 'passed' });
		progress = { stage, staged: !enough, owing, ...(seen.acceptedIn === undefined ? {} : { refuse: seen.acceptedIn }) };
	}
}

/** Cells with both wrong: an error in one that owed, or two errors on one page. */
function openCells(owing: readonly string[], wrongIn: ReadonlyMap<string, number>): readonly string[] {
	return [...wrongIn].filter(([cell, wrong]) => wrong > 1 || owing.includes(cell)).map(([cell]) => cell);
}

function atTheEnd(rule: PassRule, done: number, outcomes: readonly ItemOutcome[], end: Standing): Standing {
	if (done < outcomes.length) throw new RangeError(`${rule.id}: ${outcomes.length - done} items come after the end of the check`);
	return end;
}

/**
 * @returns the most items that a check by this rule can ask. Errors that did not end the check bring at most
 * `cellError.extra` items each, and the one acceptance `failingPlan.extra` in their place.
 */
export function longestForm(rule: PassRule): number {
	const { extra } = rule.cellError;
	const plan = Math.max(0, rule.failingPlan.extra - extra);
	return Math.max(
		...rule.stages.map((stage, i) => {
			const before = rule.stages[i - 1];
			const wentOn = before === undefined ? 0 : Math.min(before.after, (before.failAtLeast ?? before.after + 1) - 1);
			return stage.after + extra * Math.max(wentOn, stage.passAtMost) + (i === 0 && stage.passAtMost === 0 ? 0 : plan);
		})
	);
}
