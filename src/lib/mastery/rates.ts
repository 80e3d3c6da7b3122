/**
 * How often workers of a known reliability pass by a rule, computed exactly.
 *
 * The check is walked page by page over every state it can be in. What a worker does is a product of
 * probabilities: r items right, w wrong. The walk keeps the sum of weights for each (r, w), a polynomial in the
 * probability p of a right answer; independent errors put p^r (1 − p)^w for it, clustered ones the mean of that
 * over a Beta distribution of p from try to try (beta-binomial):
 * E[p^r (1 − p)^w] = Π (a + i) Π (b + j) / Π (a + b + k), i < r, j < w, k < r + w.
 *
 * A wrong number is on the unsafe side with a fixed share. On a failing plan an error on the unsafe side is taken
 * to accept the plan, one on the other side to refuse it. Places of the blueprint that leave open whether their
 * plan fails are taken to hold none, which lets a few more pass.
 */
import { countFailures, countPasses, pageAfter, type Counts } from './judge.ts';
import { cellsOf, type Slot } from './rule.ts';
import type { PassRule } from './schema.ts';

export interface Worker {
	/** Probability that an item is answered right. */
	readonly right: number;
	/** Share of errors on the unsafe side. */
	readonly unsafeShare: number;
	/** How alike errors of one try are: intraclass correlation of the beta-binomial, 0 (left out) for independent ones. */
	readonly cluster?: number;
	/** One cell in which the probability is another. */
	readonly except?: { readonly cell: string; readonly right: number };
}

export interface Rate {
	/** Probability that one try is passed. */
	readonly pass: number;
	/** Items asked in a try, on average. */
	readonly items: number;
}

/** Sums of weights by (items right, items wrong). */
type Polynomial = Map<number, number>;

interface Walked {
	readonly passed: Polynomial;
	/** Weights times the number of items on the page that they are asked. */
	readonly asked: Polynomial;
}

/** More items than any check can ask. @reason keeps (right, wrong) apart in one number */
const WIDE = 1024;

function add(to: Polynomial, right: number, wrong: number, weight: number): void {
	const key = right * WIDE + wrong;
	to.set(key, (to.get(key) ?? 0) + weight);
}

/** A state between two pages: which cells owe, which accepted, the counts, and the items so far. */
interface State extends Counts {
	readonly owing: number;
	/** Index of the cell of the plan accepted on the page before, −1 for none. */
	readonly refuse: number;
	readonly right: number;
	readonly wrong: number;
	readonly weight: number;
}

/** @reason more than any of the parts of a state can be: 60 items and what they bring, at most ten cells */
const PARTS = { refuse: 16, count: 128 };

function keyOf(state: State): number {
	let key = state.owing * PARTS.refuse + state.refuse + 1;
	for (const part of [state.errors, state.unsafe, state.accepted, state.right, state.wrong]) key = key * PARTS.count + part;
	return key;
}

/** Adds a state to those that are the same but for their weight. */
function merge(into: Map<number, State>, state: State): void {
	const key = keyOf(state);
	const there = into.get(key);
	into.set(key, there === undefined ? state : { ...there, weight: there.weight + state.weight });
}

type Exception = { readonly index: number; readonly right: number } | undefined;

/** Every way in which one cell's items of a page leave the check alive, from a state on. */
function* throughCell(state: State, cell: number, slots: readonly Slot[], owes: boolean, share: number, exception: Exception): Generator<State> {
	const n = slots.length;
	const fixed = exception?.index === cell ? exception.right : undefined;
	const weigh = (wrong: number, part: number): State =>
		fixed === undefined
			? { ...state, right: state.right + n - wrong, wrong: state.wrong + wrong, weight: state.weight * part }
			: { ...state, weight: state.weight * part * fixed ** (n - wrong) * (1 - fixed) ** wrong };
	yield weigh(0, 1);
	if (owes) return;
	const failing = slots.filter((slot) => slot.fails === true).length;
	const owing = state.owing | (1 << cell);
	const errors = state.errors + 1;
	if (share < 1) yield { ...weigh(1, n * (1 - share)), owing, errors };
	if (share > 0 && n > failing) yield { ...weigh(1, (n - failing) * share), owing, errors, unsafe: state.unsafe + 1 };
	if (share > 0 && failing > 0) {
		yield { ...weigh(1, failing * share), owing, errors, unsafe: state.unsafe + 1, accepted: state.accepted + 1, refuse: cell };
	}
}

/** The states after a page that was handed in, those at an end left out but for passes, which are noted. */
function throughPage(rule: PassRule, cells: readonly string[], from: State, stage: number, staged: boolean, share: number, exception: Exception, walked: Walked): readonly State[] {
	const owed = cells.filter((_, i) => (from.owing & (1 << i)) !== 0);
	const refuse = cells[from.refuse];
	const page = pageAfter(rule, { stage, staged, owing: owed, ...(refuse === undefined ? {} : { refuse }) });
	add(walked.asked, from.right, from.wrong, from.weight * page.length);
	let states: readonly State[] = [{ ...from, owing: 0, refuse: -1 }];
	cells.forEach((cell, i) => {
		const slots = page.filter((slot) => slot.cell === cell);
		if (slots.length === 0) return;
		const owes = (from.owing & (1 << i)) !== 0;
		const next = new Map<number, State>();
		for (const state of states) {
			for (const one of throughCell(state, i, slots, owes, share, exception)) {
				if (one.weight > 0 && countFailures(rule, stage + (staged ? 1 : 0), one).length === 0) merge(next, one);
			}
		}
		states = [...next.values()];
	});
	return states;
}

function walk(rule: PassRule, share: number, exception: Exception): Walked {
	const cells = cellsOf(rule);
	const walked: Walked = { passed: new Map(), asked: new Map() };
	let alive: readonly State[] = [
		{ owing: 0, refuse: -1, errors: 0, unsafe: 0, accepted: 0, right: 0, wrong: 0, weight: 1 }
	];
	for (let stage = 0; stage < rule.stages.length; stage += 1) {
		const goingOn = new Map<number, State>();
		const owedOnly = new Map<number, State>();
		for (const state of alive) {
			for (const after of throughPage(rule, cells, state, stage, true, share, exception, walked)) {
				if (!countPasses(rule, stage + 1, after)) merge(goingOn, after);
				else if (after.owing !== 0) merge(owedOnly, after);
				else add(walked.passed, after.right, after.wrong, after.weight);
			}
		}
		for (const state of owedOnly.values()) {
			for (const after of throughPage(rule, cells, state, stage + 1, false, share, exception, walked)) {
				add(walked.passed, after.right, after.wrong, after.weight);
			}
		}
		alive = [...goingOn.values()];
	}
	return walked;
}

/** Mean of p^r (1 − p)^w. */
function moment(worker: Worker, right: number, wrong: number): number {
	const { right: p, cluster = 0 } = worker;
	if (cluster <= 0 || p <= 0 || p >= 1) return p ** right * (1 - p) ** wrong;
	const both = 1 / cluster - 1;
	let product = 1;
	for (let i = 0; i < right; i += 1) product *= (p * both + i) / (both + i);
	for (let j = 0; j < wrong; j += 1) product *= ((1 - p) * both + j) / (both + right + j);
	return product;
}

function mean(of: Polynomial, worker: Worker): number {
	let sum = 0;
	for (const [key, weight] of of) sum += weight * moment(worker, Math.floor(key / WIDE), key % WIDE);
	return sum;
}

const walks = new WeakMap<PassRule, Map<string, Walked>>();

/** @returns how often such a worker passes one try by a rule with all its clauses, and how many items that takes. */
export function passRate(rule: PassRule, worker: Worker): Rate {
	const { except } = worker;
	const index = except === undefined ? -1 : cellsOf(rule).indexOf(except.cell);
	const exception = except === undefined || index < 0 ? undefined : { index, right: except.right };
	const known = walks.get(rule) ?? new Map<string, Walked>();
	walks.set(rule, known);
	const key = `${worker.unsafeShare} ${exception?.index} ${exception?.right}`;
	const walked = known.get(key) ?? walk(rule, worker.unsafeShare, exception);
	known.set(key, walked);
	return { pass: mean(walked.passed, worker), items: mean(walked.asked, worker) };
}

/** @returns the probability that at least one of so many tries is passed, each with a form and a chance of its own. */
export function overTries(pass: number, tries: number): number {
	return 1 - (1 - pass) ** tries;
}

/**
 * The staged count and the cap on unsafe numbers alone, as if no error brought anything: what the rule was chosen by.
 * @returns how often a worker with independent errors passes, and how many items that takes.
 */
export function countsAlone(rule: PassRule, worker: { readonly right: number; readonly unsafeShare: number }): Rate {
	const { right, unsafeShare } = worker;
	let alive = new Map<number, number>([[0, 1]]);
	let pass = 0;
	let items = 0;
	let asked = 0;
	rule.stages.forEach(({ after }, i) => {
		for (const weight of alive.values()) items += weight * (after - asked);
		for (; asked < after; asked += 1) {
			const next = new Map<number, number>();
			for (const [key, weight] of alive) {
				add(next, Math.floor(key / WIDE), key % WIDE, weight * right);
				add(next, Math.floor(key / WIDE) + 1, key % WIDE, weight * (1 - right) * (1 - unsafeShare));
				add(next, Math.floor(key / WIDE) + 1, (key % WIDE) + 1, weight * (1 - right) * unsafeShare);
			}
			alive = next;
		}
		for (const [key, weight] of alive) {
			const counts = { errors: Math.floor(key / WIDE), unsafe: key % WIDE, accepted: 0 };
			const failed = countFailures(rule, i + 1, counts).length > 0;
			if (!failed && !countPasses(rule, i + 1, counts)) continue;
			if (!failed) pass += weight;
			alive.delete(key);
		}
	});
	return { pass, items };
}

/** Workers that a rule's rates are told for. @source learning-and-records.md 6.4: p = .95, .9, .8, .7, .5 */
export const WORKERS: readonly number[] = [0.95, 0.9, 0.8, 0.7, 0.5];

/** What a rule does to one kind of worker, half of whose errors are on the unsafe side and independent. */
export interface RateRow {
	/** How often the worker is right. */
	readonly right: number;
	/** Probability to pass the first try, and one of the tries before a trainer must unlock. */
	readonly first: number;
	readonly allowed: number;
	/** Items asked in a try, on average. */
	readonly items: number;
}

/** @returns what the employer is shown of a rule: how often workers of known reliability pass it, with all its clauses. */
export function rateTable(rule: PassRule): readonly RateRow[] {
	return WORKERS.map((right) => {
		const { pass, items } = passRate(rule, { right, unsafeShare: 0.5 });
		return { right, first: pass, allowed: overTries(pass, rule.tries.beforeUnlock), items };
	});
}

/** @source DESIGN 6: no rule that lets a 70 % worker through more than 5 % of the time over all allowed tries can be saved */
export const FLOOR = { right: 0.7, mostPass: 0.05 };

/** @reason from none to all errors on the unsafe side: the rule must hold whichever way a worker errs */
const SHARES: readonly number[] = [0, 0.5, 1];

export interface Floor {
	readonly ok: boolean;
	/** Probability that a 70 % worker passes one of the tries before a trainer must unlock. */
	readonly rate: number;
	/** The share of unsafe errors at which that is greatest. */
	readonly unsafeShare: number;
}

/** @returns whether a rule of the final check keeps out a worker who gets seven of ten items right, errors independent, whichever way they err. */
export function withinFloor(rule: PassRule): Floor {
	const rates = SHARES.map((unsafeShare) => ({
		unsafeShare,
		rate: overTries(passRate(rule, { right: FLOOR.right, unsafeShare }).pass, rule.tries.beforeUnlock)
	}));
	const worst = rates.reduce((a, b) => (b.rate > a.rate ? b : a));
	return { ok: worst.rate <= FLOOR.mostPass, ...worst };
}
