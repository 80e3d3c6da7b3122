/** What is told of a pass rule to those who answer for it: its rates in full, and what would bring a lax one down. */
import { FLOOR, WORKERS, overTries, passRate, withinFloor } from './rates.ts';
import type { PassRule } from './schema.ts';

/** Shares of errors on the unsafe side that rates are told for. @source issue "The orientation course", acceptance 4 */
export const UNSAFE_SHARES: readonly number[] = Object.freeze([0, 0.5, 1]);

/**
 * How alike the errors of one try are, where they come in clusters.
 * @reason no data yet; a tenth spreads a 70 % worker's tries from about 45 to 92 % right
 */
export const CLUSTER = 0.1;

/** How likely some worker passes: one try, and one of the tries before a trainer must unlock. */
export interface Passes {
	readonly first: number;
	readonly allowed: number;
}

/** What a rule does to workers of one reliability. */
export interface ToldRate {
	/** How often they are right. */
	readonly right: number;
	/** Items asked in a try, on average, half of the errors on the unsafe side. */
	readonly items: number;
	/** Errors independent, in the order of `UNSAFE_SHARES`. */
	readonly byShare: readonly (Passes & { readonly unsafeShare: number })[];
	/** Half of the errors on the unsafe side, those of one try alike. */
	readonly clustered: Passes;
}

/** The share that single figures are told for. */
const HALF = 0.5;

/** @returns the rates of a rule with all its clauses, for each of `WORKERS`. */
export function toldRates(rule: PassRule): readonly ToldRate[] {
	const passes = (pass: number): Passes => ({ first: pass, allowed: overTries(pass, rule.tries.beforeUnlock) });
	return WORKERS.map((right) => ({
		right,
		items: passRate(rule, { right, unsafeShare: HALF }).items,
		byShare: UNSAFE_SHARES.map((unsafeShare) => ({ unsafeShare, ...passes(passRate(rule, { right, unsafeShare }).pass) })),
		clustered: passes(passRate(rule, { right, unsafeShare: HALF, cluster: CLUSTER }).pass)
	}));
}

/** @returns the likelihood that the worker of the floor passes one of the allowed tries, half of the errors unsafe. */
export function floorWorker(rule: PassRule): Passes {
	const { pass } = passRate(rule, { right: FLOOR.right, unsafeShare: HALF });
	return { first: pass, allowed: overTries(pass, rule.tries.beforeUnlock) };
}

/** One change that alone would bring a rule within the floor: the greatest count that does. */
export type Remedy =
	| { readonly kind: 'tries' | 'unsafe'; readonly to: number; readonly rate: number }
	/** `stage`: index among the stages. */
	| { readonly kind: 'pass'; readonly stage: number; readonly to: number; readonly rate: number };

function withTries(rule: PassRule, beforeUnlock: number): PassRule {
	return { ...rule, tries: { beforeUnlock, perDay: Math.min(rule.tries.perDay, beforeUnlock) } };
}

function withUnsafe(rule: PassRule, atMost: number): PassRule {
	const { first } = rule.unsafe;
	return { ...rule, unsafe: { first: { ...first, atMost: Math.min(first.atMost, atMost) }, atMost } };
}

function withPass(rule: PassRule, stage: number, passAtMost: number): PassRule {
	// What fails at the last stage is whatever does not pass.
	return { ...rule, stages: rule.stages.map((one, i) => (i !== stage ? one : i === rule.stages.length - 1 ? { after: one.after, passAtMost } : { ...one, passAtMost })) };
}

/** The greatest count below the one there is that holds, if any. */
function greatest(below: number, least: number, changed: (to: number) => PassRule): { readonly to: number; readonly rate: number } | undefined {
	for (let to = below - 1; to >= least; to -= 1) {
		const { ok, rate } = withinFloor(changed(to));
		if (ok) return { to, rate };
	}
	return undefined;
}

/** @returns the changes of one count each that would bring a rule within the floor; empty if none alone is enough. */
export function remediesOf(rule: PassRule): readonly Remedy[] {
	const found: Remedy[] = [];
	const tries = greatest(rule.tries.beforeUnlock, 1, (to) => withTries(rule, to));
	if (tries !== undefined) found.push({ kind: 'tries', ...tries });
	rule.stages.forEach(({ passAtMost }, stage) => {
		const pass = greatest(passAtMost, 0, (to) => withPass(rule, stage, to));
		if (pass !== undefined) found.push({ kind: 'pass', stage, ...pass });
	});
	const unsafe = greatest(rule.unsafe.atMost, 0, (to) => withUnsafe(rule, to));
	if (unsafe !== undefined) found.push({ kind: 'unsafe', ...unsafe });
	return found;
}
