/**
 * Facts that a rule or a practice states, for the lessons: looked up in the organisation's tables each time, so
 * that the course speaks of the law that holds there. A table that states none is said to state none.
 */
import {
	citationOf,
	cite,
	citeValue,
	decides,
	judgeCondition,
	printedBound,
	printedValue,
	type Bound,
	type Citation,
	type FactName,
	type Facts,
	type Limit,
	type PracticeTable,
	type QuantityName,
	type Requirement,
	type RuleTable,
	type RuleUnit,
	type Subject
} from '#lib/rules/index.ts';
import type { Lesson } from './lesson.ts';

/** Where a fact is looked up: a number of the rules, something that they ask without one, or a value of practice. */
type FactSource =
	| { readonly from: 'rule'; readonly states: 'number'; readonly subjects: readonly Subject[]; readonly quantities: readonly QuantityName[] }
	/** With `asks`, only a limit that asks for that fact and nothing else. */
	| { readonly from: 'rule'; readonly states: 'demand'; readonly subjects: readonly Subject[]; readonly asks?: FactName }
	| { readonly from: 'practice'; readonly field: 'margin' | 'stretch' | 'dRingHeight' | 'bodyHeight' };

export const FACTS = {
	'free-fall-limit': { from: 'rule', states: 'number', subjects: ['free-fall'], quantities: ['freeFall'] },
	'force-limit': { from: 'rule', states: 'number', subjects: ['arrest-force', 'free-fall'], quantities: ['peakForce'] },
	'deceleration-limit': { from: 'rule', states: 'number', subjects: ['deceleration'], quantities: ['decelerationDistance'] },
	'mass-limit': { from: 'rule', states: 'number', subjects: ['capacity'], quantities: ['massAttached'] },
	'lanyard-limit': { from: 'rule', states: 'number', subjects: ['lanyard-length'], quantities: ['lanyardLength'] },
	'anchorage-strength': {
		from: 'rule',
		states: 'number',
		subjects: ['anchorage-strength'],
		quantities: ['strengthPerPerson', 'anchorageStrength']
	},
	'anchorage-height': { from: 'rule', states: 'demand', subjects: ['anchorage-height'] },
	'one-person': { from: 'rule', states: 'demand', subjects: ['anchorage-strength'], asks: 'persons' },
	'sideways-limit': { from: 'rule', states: 'number', subjects: ['swing'], quantities: ['offset'] },
	'duty-height': { from: 'rule', states: 'number', subjects: ['trigger-height'], quantities: ['fallHeight'] },
	'no-contact': { from: 'rule', states: 'demand', subjects: ['contact'] },
	'restraint-first': { from: 'rule', states: 'demand', subjects: ['order-of-measures'] },
	edges: { from: 'rule', states: 'demand', subjects: ['edge'] },
	harness: { from: 'rule', states: 'demand', subjects: ['harness'] },
	connectors: { from: 'rule', states: 'demand', subjects: ['connectors'] },
	rescue: { from: 'rule', states: 'demand', subjects: ['rescue'] },
	training: { from: 'rule', states: 'demand', subjects: ['training'] },
	margin: { from: 'practice', field: 'margin' },
	'slide-and-stretch': { from: 'practice', field: 'stretch' },
	'd-ring-height': { from: 'practice', field: 'dRingHeight' },
	'body-height': { from: 'practice', field: 'bodyHeight' }
} as const satisfies Readonly<Record<string, FactSource>>;
export type FactId = keyof typeof FACTS;

/** What a lesson's plan is, as far as the rules ask: a worker alone on the anchorage, full body harness, absorber. */
const SCOPE: Facts = { absorber: true, persons: 1, harness: 'full-body', attachment: 'back', workplace: 'general' };

export type LessonFact =
	| {
			readonly id: FactId;
			readonly kind: 'number';
			readonly side: 'max' | 'min';
			/** The number itself is already too much, or too little. */
			readonly exclusive: boolean;
			readonly value: number;
			readonly unit: RuleUnit;
			/** As the text prints it: "5,000 lbf (22.2 kN)". */
			readonly printed: string;
			/** A remark, as a key of the message catalogue: another way to hold it, where the number is from. */
			readonly note: string | undefined;
			readonly citation: Citation;
			/** False for what is from memory: it decides nothing until a competent person has confirmed it. */
			readonly decides: boolean;
			/** Id of the limit; undefined for practice. */
			readonly limit: string | undefined;
	  }
	| {
			readonly id: FactId;
			/** The table asks for it, without a number. */
			readonly kind: 'demand';
			readonly note: string | undefined;
			readonly citation: Citation;
			readonly decides: boolean;
			readonly limit: string;
	  }
	/** The table says nothing of it. */
	| { readonly id: FactId; readonly kind: 'none' };

/**
 * @returns what the tables state of each fact of a lesson, in the lesson's order. One table may state nothing of a
 * fact: then its kind is `none`, and the screen says so.
 */
export function lessonFacts(lesson: Pick<Lesson, 'facts'>, rules: RuleTable, practice: PracticeTable): readonly LessonFact[] {
	return lesson.facts.map((id) => factOf(id, rules, practice));
}

/** @returns what the tables state of one fact. */
export function factOf(id: FactId, rules: RuleTable, practice: PracticeTable): LessonFact {
	const source: FactSource = FACTS[id];
	if (source.from === 'practice') return fromPractice(id, practice, source.field);
	const limits = rules.limits.filter((limit) => source.subjects.includes(limit.subject) && applies(limit));
	if (source.states === 'demand') {
		const limit = limits.find((one) => source.asks === undefined || asksFor(one, source.asks));
		return limit === undefined
			? { id, kind: 'none' }
			: { id, kind: 'demand', note: limit.note, citation: citationOf(limit), decides: decides(limit), limit: limit.id };
	}
	for (const quantity of source.quantities) {
		for (const limit of limits) {
			const bound = mildest(limit, quantity);
			if (bound !== undefined) return numbered(id, limit, bound);
		}
	}
	return { id, kind: 'none' };
}

function asksFor(limit: Limit, fact: FactName): boolean {
	return limit.role === 'check' && 'fact' in limit.require && limit.require.fact === fact;
}

function fromPractice(id: FactId, practice: PracticeTable, field: 'margin' | 'stretch' | 'dRingHeight' | 'bodyHeight'): LessonFact {
	const value = practice[field];
	if (value === undefined) return { id, kind: 'none' };
	return {
		id,
		kind: 'number',
		side: 'min',
		exclusive: false,
		value: value.value,
		unit: value.unit,
		// What practice prints beside its number are remarks in words; they stand on the method page.
		printed: printedValue({ value: value.value, unit: value.unit }),
		note: value.note,
		citation: citeValue(value),
		decides: value.mark !== 'memory',
		limit: undefined
	};
}

/** Whether a limit is about such a plan at all; one whose condition is not known may be. */
function applies(limit: Limit): boolean {
	return limit.when === undefined || judgeCondition(limit.when, SCOPE) === 'held';
}

/** A bound whose limit is a number of its own. */
interface NumberedBound {
	readonly bound: Bound;
	readonly side: 'max' | 'min';
	readonly value: number;
	readonly unit: RuleUnit;
}

function numbersIn(bound: Bound): readonly NumberedBound[] {
	const side = 'max' in bound ? 'max' : 'min';
	const by = 'max' in bound ? bound.max : bound.min;
	return 'of' in by ? [] : [{ bound, side, value: by.value, unit: by.unit }];
}

/**
 * The bound that such a plan must hold: of several that each suffice, the least asked, as long as nothing but the
 * plan's scope is needed for it. What needs more (a design by an engineer, a test by the maker) is told by the note.
 */
function mildest(limit: Limit, quantity: QuantityName): NumberedBound | undefined {
	if (limit.role === 'statement') return undefined;
	const found = (limit.role === 'trigger' ? [limit.from] : reachable(limit.require))
		.filter((bound) => bound.quantity === quantity)
		.flatMap(numbersIn);
	return found.toSorted((one, other) => (one.side === 'max' ? other.value - one.value : one.value - other.value))[0];
}

/** The bounds of a requirement that stand with the scope's facts alone. */
function reachable(part: Requirement): readonly Bound[] {
	if ('any' in part) return part.any.flatMap(reachable);
	if ('all' in part) {
		const facts = part.all.filter((one) => 'fact' in one);
		if (facts.some((fact) => judgeCondition(fact, SCOPE) !== 'held')) return [];
		return part.all.flatMap(reachable);
	}
	return 'fact' in part ? [] : [part];
}

function numbered(id: FactId, limit: Limit, { bound, side, value, unit }: NumberedBound): LessonFact {
	const citation = cite(limit, printedBound(bound));
	return {
		id,
		kind: 'number',
		side,
		exclusive: bound.exclusive ?? false,
		value,
		unit,
		printed: citation.printedAs[0] ?? '',
		note: limit.note,
		citation,
		decides: decides(limit),
		limit: limit.id
	};
}
