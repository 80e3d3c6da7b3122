/**
 * A limit against a plan. Where a limit applies only under a condition, what is asked is
 * "not the condition, or the requirement", so that an unknown condition over a failed requirement
 * is unknown, and over a held one is held.
 */
import { FORCE, sameDimension, toSI } from '#lib/quantity/index.ts';
import { cite, printedBound } from './citation.ts';
import type { Citation } from './citation.ts';
import { allOf, anyOf, not } from './kleene.ts';
import type { Status } from './kleene.ts';
import { QUANTITIES } from './quantity-names.ts';
import type { FactName, Facts, Quantities, QuantityName } from './quantity-names.ts';
import type { Bound, Check, Condition, FactIs, Limit, Requirement, Subject, Trigger } from './schema.ts';

export interface JudgedBound {
	readonly quantity: QuantityName;
	readonly side: 'max' | 'min';
	/** The very limit already fails. */
	readonly exclusive: boolean;
	/** Set for a limit that is a multiple of another quantity of the plan: twice the arrest force. */
	readonly multiple: { readonly times: number; readonly of: QuantityName } | undefined;
	/** SI; undefined for a multiple of a quantity that is not known. */
	readonly limitSI: number | undefined;
	readonly valueSI: number | undefined;
	/** SI, by how much it is held; negative by how much it fails. */
	readonly slack: number | undefined;
	readonly status: Status;
	readonly citation: Citation;
}

export interface JudgedFact {
	readonly fact: FactName;
	readonly asked: boolean | number | string;
	readonly status: Status;
}

export interface Judgement {
	/** Id of the limit. */
	readonly limit: string;
	readonly subject: Subject;
	/** Whether its condition holds; held for a limit without one. */
	readonly applies: Status;
	readonly status: Status;
	/** False for a limit from memory that nobody has confirmed: it is shown, but settles nothing. */
	readonly decides: boolean;
	/** Every bound of the requirement, in the order of the text, whether or not it settled it. */
	readonly bounds: readonly JudgedBound[];
	/** Every fact of the requirement, likewise. */
	readonly facts: readonly JudgedFact[];
	readonly citation: Citation;
}

export interface JudgeOptions {
	/** Ids of limits from memory that a named competent person of the organisation has confirmed. */
	readonly confirmed?: ReadonlySet<string> | undefined;
}

/**
 * Judges one limit.
 * @param quantities in SI; one that is left out is unknown.
 * @throws RangeError for a quantity that is not a finite number: the caller mistook unknown for NaN.
 */
export function judge(limit: Check, facts: Facts, quantities: Quantities, options: JudgeOptions = {}): Judgement {
	const applies = limit.when === undefined ? 'held' : judgeCondition(limit.when, facts);
	const bounds: JudgedBound[] = [];
	const asked: JudgedFact[] = [];
	const required = walk(limit.require);
	return Object.freeze({
		limit: limit.id,
		subject: limit.subject,
		applies,
		status: anyOf([not(applies), required]),
		decides: decides(limit, options.confirmed),
		bounds: Object.freeze(bounds),
		facts: Object.freeze(asked),
		citation: citationOf(limit)
	});

	function walk(part: Requirement): Status {
		if ('all' in part) return allOf(part.all.map(walk));
		if ('any' in part) return anyOf(part.any.map(walk));
		if ('fact' in part) {
			const status = judgeFact(part, facts);
			asked.push(Object.freeze({ fact: part.fact, asked: part.is, status }));
			return status;
		}
		const judged = judgeBound(part, limit, quantities);
		bounds.push(judged);
		return judged.status;
	}
}

/** Whether a condition over facts holds; a fact that is not known makes it unknown. */
export function judgeCondition(condition: Condition, facts: Facts): Status {
	if ('all' in condition) return allOf(condition.all.map((part) => judgeCondition(part, facts)));
	if ('any' in condition) return anyOf(condition.any.map((part) => judgeCondition(part, facts)));
	if ('not' in condition) return not(judgeCondition(condition.not, facts));
	return judgeFact(condition, facts);
}

/**
 * Whether the duty to protect arises at this height: held, failed or unknown. No plan fails by it.
 * @throws RangeError as `judge`.
 */
export function dutyArises(trigger: Trigger, facts: Facts, quantities: Quantities): Status {
	const applies = trigger.when === undefined ? 'held' : judgeCondition(trigger.when, facts);
	return allOf([applies, judgeBound(trigger.from, trigger, quantities).status]);
}

/** Citations made before: limits and their bounds are read once and never change. */
const citations = new WeakMap<Limit | Bound, Citation>();

function once(of: Limit | Bound, make: () => Citation): Citation {
	const before = citations.get(of);
	if (before !== undefined) return before;
	const made = make();
	citations.set(of, made);
	return made;
}

/** The citation of a limit, with every number that it prints. */
export function citationOf(limit: Limit): Citation {
	return once(limit, () => writtenCitation(limit));
}

function writtenCitation(limit: Limit): Citation {
	switch (limit.role) {
		case 'check':
			return cite(limit, boundsIn(limit.require).flatMap(printedBound));
		case 'trigger':
			return cite(limit, printedBound(limit.from));
		case 'statement':
			return cite(limit, []);
	}
}

/** Whether a limit may settle anything: it was read, or somebody entitled has confirmed it. */
export function decides(limit: Limit, confirmed?: ReadonlySet<string>): boolean {
	return limit.mark !== 'memory' || (confirmed?.has(limit.id) ?? false);
}

function boundsIn(part: Requirement): readonly Bound[] {
	if ('all' in part) return part.all.flatMap(boundsIn);
	if ('any' in part) return part.any.flatMap(boundsIn);
	return 'fact' in part ? [] : [part];
}

function judgeFact(asked: FactIs, facts: Facts): Status {
	const known = facts[asked.fact];
	if (known === undefined || known === 'unknown') return 'unknown';
	return known === asked.is ? 'held' : 'failed';
}

function judgeBound(bound: Bound, limit: Limit, quantities: Quantities): JudgedBound {
	const side = 'max' in bound ? 'max' : 'min';
	const by = 'max' in bound ? bound.max : bound.min;
	const valueSI = known(bound.quantity, quantities);
	const limitSI = 'of' in by ? timesKnown(by.times, known(by.of, quantities)) : toSI(by.value, by.unit);
	const slack = slackOf(side, valueSI, limitSI);
	return Object.freeze({
		quantity: bound.quantity,
		side,
		exclusive: bound.exclusive ?? false,
		multiple: 'of' in by ? by : undefined,
		limitSI,
		valueSI,
		slack,
		status: statusOf(slack, bound),
		citation: once(bound, () => cite(limit, printedBound(bound)))
	});
}

function known(name: QuantityName, quantities: Quantities): number | undefined {
	const value = quantities[name];
	if (value !== undefined && !Number.isFinite(value))
		throw new RangeError(`The quantity ${name} must be a finite number or left out, not ${String(value)}.`);
	return value;
}

function timesKnown(times: number, value: number | undefined): number | undefined {
	return value === undefined ? undefined : times * value;
}

function slackOf(side: 'max' | 'min', value: number | undefined, limit: number | undefined): number | undefined {
	if (value === undefined || limit === undefined) return undefined;
	return side === 'max' ? limit - value : value - limit;
}

/**
 * Float noise forgiven when a value stands on its limit: sums of feet do not land on 1.8288 m to
 * the last bit. A nanometre, a microgram, a micronewton: far below what anyone can measure.
 */
function noise(name: QuantityName): number {
	return sameDimension(QUANTITIES[name], FORCE) ? 1e-6 : 1e-9;
}

function statusOf(slack: number | undefined, bound: Bound): Status {
	if (slack === undefined) return 'unknown';
	const forgiven = noise(bound.quantity);
	return (bound.exclusive === true ? slack > forgiven : slack >= -forgiven) ? 'held' : 'failed';
}
