/** How often workers pass by a rule, as a completion says it of the rule it was passed by. */
import { canonicalJson, type EntryOf } from '#lib/records/index.ts';
import { toldRates, type PassRule } from '#lib/mastery/index.ts';

export type RuleRates = EntryOf<'completed'>['passRule']['rates'];

/** The share of errors on the unsafe side that a completion tells rates for. */
const HALF = 0.5;
/** Parts of one that rates are told in. @reason figures that do not hang on a processor's last digit */
const PARTS = 1_000_000;
/** @reason an organisation has a few rules; one takes some 60 ms to compute, and none is needed for long */
const RULES_KEPT = 50;

/** Of rules as they are stored, the one used last at the end. */
const kept = new Map<string, RuleRates>();

function rounded(rate: number): number {
	return Math.round(rate * PARTS) / PARTS;
}

/** @returns the rates of a rule, half of the errors on the unsafe side, for each worker that rates are told of. */
export function ruleRates(rule: PassRule): RuleRates {
	const key = canonicalJson(rule);
	const rates = kept.get(key) ?? computed(rule);
	kept.delete(key);
	kept.set(key, rates);
	const [oldest] = kept.keys();
	if (kept.size > RULES_KEPT && oldest !== undefined) kept.delete(oldest);
	return rates;
}

function computed(rule: PassRule): RuleRates {
	return toldRates(rule).flatMap(({ right, byShare }) =>
		byShare.filter(({ unsafeShare }) => unsafeShare === HALF).map(({ first, allowed }) => ({ right, firstTry: rounded(first), allowedTries: rounded(allowed) }))
	);
}
