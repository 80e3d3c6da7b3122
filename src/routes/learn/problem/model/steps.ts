/** The working of an ask as rows: each term with its numbers worked, its value, and what the learner had. */
import { formula, givenDimension, givenSymbol, isGivenId, isQuantityId, QUANTITIES, type GivenId, type QuantityId } from '#lib/arrest/index.ts';
import { evaluate, printText, walk, type Node } from '#lib/expression/index.ts';
import { shownGivens, type Explanation, type TapeTerm } from '#lib/grading/index.ts';
import { FORCE, LENGTH, MASS, sameDimension, writeQuantity } from '#lib/quantity/index.ts';
import { precisionOf, targetOf, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import type { StepRow, TermId } from '#lib/scene/index.ts';
import type { Speech } from './names.ts';
import { ownTerms, termIdOf, termName, termText } from './tapes.ts';
import type { Writer } from './writing.ts';

/** Numbers closer than this are one number, SI. */
const SAME = 1e-9;

/** A formula with its symbols: "L − (h_A − h_D)". */
export function inSymbols(node: Node): string {
	return printText(node, {
		given: (id) => (isGivenId(id) ? givenSymbol(id) : id),
		named: (id) => (isQuantityId(id) ? QUANTITIES[id].symbol : undefined),
		constant: (name) => name,
		signs: 'typeset'
	});
}

/**
 * A formula with its numbers: "2.00 − (2.10 − 1.50)". Steps on the way are written out. Where a mass becomes a
 * weight the numbers are of one system, so that they come out as printed: newtons beside kilograms and 9.81;
 * pounds of force beside pounds, of which each weighs one.
 */
export function inNumbers(speech: Speech, writer: Writer, node: Node): string {
	const givens = shownGivens(speech.problem);
	const parts = [...walk(node)];
	const weighs = parts.some((one) => one.kind === 'constant' && one.name === 'g') && parts.some((one) => one.kind === 'given' && sameDimension(one.dimension, MASS));
	const metric = speech.problem.scenario.units === 'metric';
	const number = (id: GivenId): string => {
		const dimension = givenDimension(id);
		if (!weighs || !metric || !sameDimension(dimension, FORCE)) return writer.bare(givens(id), dimension);
		return writeQuantity(givens(id), { unit: 'N', decimals: 0, language: writer.language, withUnit: false });
	};
	const constant = (name: string, value: number): string => {
		if (/^[\d.]+$/.test(name)) return name;
		return weighs && !metric ? '1' : writer.bare(value, LENGTH);
	};
	return printText(node, { given: (id) => (isGivenId(id) ? number(id) : id), named: () => undefined, constant, signs: 'typeset' });
}

/** Where a given is read off. */
export function whereRead(speech: Speech, id: GivenId): string {
	const { m, problem } = speech;
	const found = problem.resolved.givens.get(id);
	if (found?.origin.from === 'practice') return m.page.where.rule;
	if (sameDimension(givenDimension(id), MASS) && !isLabelGiven(id)) return '';
	if (isLabelGiven(id)) return m.page.where.label;
	if (isHarnessGiven(id)) return m.page.where.harness;
	return id === 'margin' ? m.page.where.rule : m.page.where.drawing;
}

const ON_LABEL: readonly GivenId[] = [
	'lanyardLength',
	'elongation',
	'peakForce',
	'conditionedForce',
	'averageForce',
	'labelMassMin',
	'labelMassMax',
	'labelFreeFall',
	'statedDeceleration',
	'lanyardCapacity'
];

function isLabelGiven(id: GivenId): boolean {
	return ON_LABEL.includes(id);
}

function isHarnessGiven(id: GivenId): boolean {
	return id === 'dRingSlide' || id === 'harnessStretch' || id === 'harnessCapacity';
}

/** The node of each term of an ask's outermost sum. */
function termNodes(problem: Problem, ask: NumberAsk): ReadonlyMap<string, Node> {
	const tree = formula(targetOf(ask), problem.resolved.shape);
	const content = tree.kind === 'named' ? tree.of : tree;
	return new Map(content.kind === 'sum' ? content.terms.map((term) => [term.role, term.of]) : [['whole', content]]);
}

function writtenTerm(writer: Writer, ask: NumberAsk, term: TapeTerm): string {
	const signed = term.sign * term.value;
	const text = termText(writer, ask, term);
	return signed < 0 ? `−${text}` : text;
}

/**
 * @param answer the learner's number, SI.
 * @returns the rows of an ask's working: its terms, then the whole, then what there is and the spare where the
 * ask is a clearance needed. Terms of the learner's that are none of the working's come as rows of their own.
 */
export function stepRows(speech: Speech, writer: Writer, ask: NumberAsk, answer: number | undefined, explanation: Explanation): readonly StepRow[] {
	const { problem, m } = speech;
	const single = explanation.tape.length === 1;
	const rows: StepRow[] = single ? [] : [...termRows(speech, writer, ask, explanation)];
	const tree = formula(targetOf(ask), problem.resolved.shape);
	const right = explanation.steps.at(-1)?.value;
	const same = answer !== undefined && right !== undefined && Math.abs(answer - right) <= precisionOf(ask) / 2 + SAME;
	rows.push({
		id: 'total',
		kind: 'sum',
		name: m.quantities[ask.quantity].name,
		working: rows.length > 0 ? '' : inNumbers(speech, writer, tree),
		value: right === undefined ? '' : writer.bareQuantity(ask.quantity, right),
		own: answer === undefined ? '' : same ? m.tape.youSame : m.tape.you({ value: writer.bare(answer, QUANTITIES[ask.quantity].dimension) }),
		differs: false
	});
	if (ask.quantity !== 'requiredClearance' || right === undefined) return rows;
	return [...rows, ...roomRows(speech, writer, ask, right)];
}

function termRows(speech: Speech, writer: Writer, ask: NumberAsk, explanation: Explanation): readonly StepRow[] {
	const { m } = speech;
	const nodes = termNodes(speech.problem, ask);
	const mine = ownTerms(explanation);
	const own = mine === undefined ? undefined : [...mine];
	const rows = explanation.tape.map((term): StepRow => {
		const at = own?.findIndex((one) => one.role === term.role) ?? -1;
		const other = own?.[at];
		if (other !== undefined) own?.splice(at, 1);
		const unequal = other !== undefined && Math.abs(other.sign * other.value - term.sign * term.value) > SAME;
		const you = other === undefined ? m.tape.youLeftOut : unequal ? m.tape.you({ value: writtenTerm(writer, ask, other) }) : m.tape.youSame;
		return {
			id: term.role,
			kind: 'term',
			...swatch(ask, term.role),
			name: termName(speech, term.role, term.of),
			working: workedText(speech, writer, term.of, nodes.get(term.role)),
			value: writtenTerm(writer, ask, term),
			own: explanation.ownTape === undefined ? '' : you,
			differs: explanation.ownTape !== undefined && (other === undefined || unequal)
		};
	});
	const added = (own ?? []).map((term, i): StepRow => {
		const twice = explanation.tape.some((one) => one.role === term.role);
		return {
			id: `added-${i}-${term.role}`,
			kind: 'term',
			...swatch(ask, term.role),
			name: termName(speech, term.role, term.of),
			working: '',
			value: '',
			own: twice ? m.tape.youTwice : m.tape.you({ value: writtenTerm(writer, ask, term) }),
			differs: true
		};
	});
	return [...rows, ...added];
}

/** What there is, from the same datum, and what is to spare or short. */
function roomRows(speech: Speech, writer: Writer, ask: NumberAsk, required: number): readonly StepRow[] {
	const { problem, m } = speech;
	if (!('datum' in ask)) return [];
	const tree = formula({ quantity: 'availableClearance', datum: ask.datum }, problem.resolved.shape);
	const available = evaluate(tree, shownGivens(problem));
	const spare = available - required;
	const content = tree.kind === 'named' ? tree.of : tree;
	const worked = content.kind === 'sum' && content.terms.length > 1 ? inNumbers(speech, writer, tree) : '';
	return [
		{ id: 'there', kind: 'there', name: m.tape.thereIs, working: worked, value: writer.bareQuantity('availableClearance', available), own: '', differs: false },
		{
			id: 'spare',
			kind: 'result',
			name: spare < 0 ? m.tape.shortBy : m.tape.spare,
			working: '',
			value: writer.bareLength(Math.abs(spare), spare < 0 ? 'up' : 'down'),
			own: '',
			differs: false
		}
	];
}

/** The hatch of a term; a mass or a force is no length and has none. */
function swatch(ask: NumberAsk, role: string): { readonly term?: TermId } {
	return isLength(ask) ? { term: termIdOf(role) } : {};
}

function workedText(speech: Speech, writer: Writer, of: QuantityId | GivenId | undefined, node: Node | undefined): string {
	if (of !== undefined && isGivenId(of)) return whereRead(speech, of);
	return node === undefined ? '' : inNumbers(speech, writer, node);
}

/** @returns true where an ask is a length, and so has a tape. */
function isLength(ask: NumberAsk): boolean {
	return sameDimension(QUANTITIES[ask.quantity].dimension, LENGTH);
}
