/** Tapes of a problem after its check: both of an explained answer, and the one that grows with the steps. */
import { formula, isQuantityId } from '#lib/arrest/index.ts';
import { evaluate } from '#lib/expression/index.ts';
import { explain, shownGivens, type Explanation, type TapeTerm as Term } from '#lib/grading/index.ts';
import type { NumberAsk, Problem } from '#lib/scenario/index.ts';
import type { DraftTape, TapeDatum, TapeModel, TapePairModel, TapeTerm, TermId } from '#lib/scene/index.ts';
import { termName as nameOfRole } from '#lib/text/index.ts';
import { datumOf, hasTape, tapeDatum } from './draft.ts';
import { givenName, obstacleLabel, thePlace, type Speech } from './names.ts';
import type { Writer } from './writing.ts';

/** Which hatch a term has, by its role in the formula. */
const TERM_OF_ROLE: Readonly<Record<string, TermId>> = {
	lanyard: 'lanyard',
	line: 'lanyard',
	reachDown: 'lanyard',
	connector: 'connector',
	freeFall: 'free-fall',
	elongation: 'elongation',
	stretch: 'stretch',
	margin: 'margin',
	body: 'body',
	dRing: 'body',
	head: 'body',
	swingDrop: 'swing-drop',
	posture: 'posture',
	standing: 'standing',
	obstacle: 'obstacle'
};

export function termIdOf(role: string): TermId {
	return TERM_OF_ROLE[role] ?? 'other';
}

/** How a term is called on a tape and in the steps; slide alone is no stretch, and an obstacle has its own name. */
export function termName(speech: Speech, role: string, of?: Term['of']): string {
	const { m } = speech;
	if (role === 'whole' && of !== undefined) return isQuantityId(of) ? m.quantities[of].short : givenName(speech, of);
	if (role === 'stretch' && of === 'dRingSlide') return m.terms.slide;
	if (role === 'obstacle' && typeof of === 'string' && of.startsWith('obstacleTop_')) return obstacleLabel(speech, of.slice('obstacleTop_'.length));
	return nameOfRole(m, role) ?? obstacleLabel(speech, role);
}

function tapeTerm(speech: Speech, writer: Writer, ask: NumberAsk, term: Term): TapeTerm {
	const negative = term.value < 0;
	return {
		id: termIdOf(term.role),
		sign: negative ? (term.sign === 1 ? -1 : 1) : term.sign,
		length: Math.abs(term.value),
		name: termName(speech, term.role, term.of),
		label: termText(writer, ask, term)
	};
}

/** A term's length as tape, notes and steps all print it: rounded as the whole ask is, away from danger. */
export function termText(writer: Writer, ask: NumberAsk, term: Term): string {
	return writer.bareQuantity(ask.quantity, Math.abs(term.value));
}

/** The learner's terms. A single number that is a term of the working stands in that term's place. */
export function ownTerms(explanation: Explanation): readonly Term[] | undefined {
	return explanation.ownTape?.map((term) => {
		const same = term.role === 'whole' ? explanation.tape.find((one) => one.of !== undefined && one.of === term.of) : undefined;
		return same === undefined ? term : { ...term, role: same.role };
	});
}

/**
 * The terms in the order in which they lie in the drawing. A free fall hangs from the D-ring: first the rise, up
 * to the anchorage (or down to it), then the line.
 */
function chained(ask: NumberAsk, terms: readonly Term[]): readonly Term[] {
	if (ask.quantity !== 'freeFall') return terms;
	const isRise = (term: Term): boolean => RISE_ROLES.includes(term.role);
	return [...terms.filter(isRise), ...terms.filter((term) => !isRise(term))];
}

/** Roles of what lies between the D-ring and the anchorage. */
const RISE_ROLES: readonly string[] = ['rise', 'anchorage', 'dRing', 'standing', 'otherFloor'];

function totalOf(terms: readonly Term[]): number {
	return terms.reduce((sum, term) => sum + term.sign * term.value, 0);
}

/** Lengths that differ by less are one length, m. */
const SAME = 1e-9;

/** What a note beside the learner's tape says where the two chains part, by the hatch of the term. */
function notesOf(speech: Speech, writer: Writer, ask: NumberAsk, explanation: Explanation): { readonly id: TermId; readonly text: string }[] {
	const { m } = speech;
	const notes: { id: TermId; text: string }[] = [];
	const own = [...(ownTerms(explanation) ?? [])];
	for (const term of explanation.tape) {
		const at = own.findIndex((one) => one.role === term.role);
		const other = own[at];
		if (other === undefined) {
			notes.push({ id: termIdOf(term.role), text: m.tape.missing({ amount: termText(writer, ask, term) }) });
			continue;
		}
		own.splice(at, 1);
		const difference = other.sign * other.value - term.sign * term.value;
		if (Math.abs(difference) > SAME) {
			notes.push({ id: termIdOf(term.role), text: m.tape.instead({ amount: termText(writer, ask, other), right: termText(writer, ask, term) }) });
		}
	}
	for (const term of own) {
		notes.push({ id: termIdOf(term.role), text: m.tape.tooMuch({ amount: termText(writer, ask, term) }) });
	}
	return notes;
}

/**
 * @param answer the learner's number, SI.
 * @param explanation both chains; the learner's only where a slip explains the number.
 * @returns both tapes of an explained ask, hung from its datum.
 */
export function tapePair(speech: Speech, writer: Writer, ask: NumberAsk, answer: number | undefined, explanation: Explanation): TapePairModel {
	const { problem, m } = speech;
	const datum = datumOf(problem, ask);
	const at = tapeDatum(speech, datum);
	const right = totalOf(explanation.tape);
	const needed: TapeModel = {
		datum: at,
		title: ask.quantity === 'requiredClearance' ? m.tape.needed : m.quantities[ask.quantity].short,
		terms: chained(ask, explanation.tape).map((term) => tapeTerm(speech, writer, ask, term)),
		total: right,
		totalLabel: writer.bareQuantity(ask.quantity, right)
	};
	return {
		needed,
		own: answer === undefined ? null : ownTape(speech, writer, ask, at, answer, explanation),
		firstMet: ask.quantity === 'requiredClearance' ? firstMet(speech, writer, at.z) : null,
		notes: explanation.ownTape === undefined ? [] : notesOf(speech, writer, ask, explanation)
	};
}

function ownTape(speech: Speech, writer: Writer, ask: NumberAsk, at: TapeDatum, answer: number, explanation: Explanation): TapeModel {
	const own = ownTerms(explanation);
	const terms = (own === undefined ? undefined : chained(ask, own))?.map((term) => tapeTerm(speech, writer, ask, term)) ?? [
		{ id: 'other' as const, sign: 1 as const, length: answer, name: speech.m.page.yourNumber, label: writer.bareLength(answer) }
	];
	return { datum: at, title: speech.m.tape.own, terms, total: answer, totalLabel: writer.bareLength(answer) };
}

/** The level of the first thing that the body could meet, measured from where the tape hangs. */
function firstMet(speech: Speech, writer: Writer, from: number): TapePairModel['firstMet'] {
	const { problem, m } = speech;
	const top = firstThing(problem);
	return {
		z: top.z,
		label: writer.bareLength(from - top.z, 'down'),
		name: top.obstacle === undefined ? thePlace(speech, 'lowerLevel') : m.tape.topOf({ thing: obstacleLabel(speech, top.obstacle) })
	};
}

/** The first thing below that the body's path meets, and its height above the walking surface, m. */
export function firstThing(problem: Problem): { readonly z: number; readonly obstacle: string | undefined } {
	const { shape } = problem.resolved;
	const { below } = problem.drawn.plan;
	const onPath = below.obstacles.filter((one) => shape.obstacles.includes(one.id));
	const highest = onPath.reduce<(typeof onPath)[number] | undefined>((best, one) => (best === undefined || one.top > best.top ? one : best), undefined);
	return { z: (highest?.top ?? 0) - below.depth, obstacle: highest?.id };
}

/**
 * @param worked ids of the steps that are worked out so far.
 * @returns the tape of an ask as it grows step by step; undefined for an ask that is no chain of lengths.
 */
export function walkTape(speech: Speech, writer: Writer, ask: NumberAsk, worked: ReadonlySet<string>): DraftTape | undefined {
	const { problem, m } = speech;
	if (!hasTape(ask)) return undefined;
	const datum = tapeDatum(speech, datumOf(problem, ask));
	const { tape } = explain(problem, ask, []);
	return {
		datum,
		title: m.tape.own,
		zeroLabel: m.tape.zero({ place: datum.name }),
		terms: chained(ask, tape)
			.filter((term) => term.of !== undefined && worked.has(term.of))
			.map((term) => tapeTerm(speech, writer, ask, term)),
		end: null,
		reach: datum.z + problem.drawn.plan.below.depth
	};
}

/** @returns the value of a quantity at the walking surface for a problem, SI. */
export function atSurface(problem: Problem, quantity: 'requiredClearance' | 'availableClearance'): number {
	return evaluate(formula({ quantity, datum: 'surface' }, problem.resolved.shape), shownGivens(problem));
}
