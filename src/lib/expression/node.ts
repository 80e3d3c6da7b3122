/**
 * The expression tree: plain frozen data. What is done with a tree (evaluate, print, walk, rewrite,
 * compile) lives in files of their own, so that one tree serves them all.
 *
 * Every node carries its dimension, checked when the node is built: a sum of a length and a mass
 * cannot exist. Wrong use throws at once and names the culprit.
 */
import {
	nameOfDimension,
	overDimension,
	RATIO,
	rootDimension,
	sameDimension,
	timesDimension,
	type Dimension
} from '#lib/quantity/index.ts';

/** A value read off the story, the drawing or a label. */
export interface Given {
	readonly kind: 'given';
	readonly id: string;
	readonly dimension: Dimension;
}

/** A fixed number with a name: standard gravity, the 2 of a formula. SI. */
export interface Constant {
	readonly kind: 'constant';
	readonly name: string;
	readonly value: number;
	readonly dimension: Dimension;
}

/** One signed part of a sum; its role is what the tape, the steps and the slips call it. */
export interface Term {
	readonly sign: 1 | -1;
	readonly role: string;
	readonly of: Node;
}

export interface Sum {
	readonly kind: 'sum';
	readonly terms: readonly Term[];
	readonly dimension: Dimension;
}

export interface Product {
	readonly kind: 'product';
	readonly factors: readonly Node[];
	readonly dimension: Dimension;
}

export interface Quotient {
	readonly kind: 'quotient';
	readonly over: Node;
	readonly under: Node;
	readonly dimension: Dimension;
}

export interface Square {
	readonly kind: 'square';
	readonly of: Node;
	readonly dimension: Dimension;
}

export interface Root {
	readonly kind: 'root';
	readonly of: Node;
	readonly dimension: Dimension;
}

/** The greatest or the least of several values of one dimension. */
export interface Extreme {
	readonly kind: 'extreme';
	readonly pick: 'greatest' | 'least';
	readonly among: readonly { readonly role: string; readonly of: Node }[];
	readonly dimension: Dimension;
}

/** A quantity with a name of its own: one step of the working. */
export interface Named {
	readonly kind: 'named';
	readonly id: string;
	readonly of: Node;
	readonly dimension: Dimension;
}

export type Node = Given | Constant | Sum | Product | Quotient | Square | Root | Extreme | Named;

/** @returns a given of the stated dimension. */
export function given(id: string, dimension: Dimension): Given {
	return Object.freeze({ kind: 'given', id, dimension });
}

/** @param value SI. @returns a named constant. @throws if the value is not finite. */
export function constant(name: string, value: number, dimension: Dimension = RATIO): Constant {
	if (!Number.isFinite(value)) throw new RangeError(`constant ${name} must be finite, got ${value}`);
	return Object.freeze({ kind: 'constant', name, value, dimension });
}

/** @returns a term that is added. */
export function plus(role: string, of: Node): Term {
	return Object.freeze({ sign: 1, role, of });
}

/** @returns a term that is subtracted. */
export function minus(role: string, of: Node): Term {
	return Object.freeze({ sign: -1, role, of });
}

/** @returns the sum of signed terms of one dimension. @throws on an empty sum or mixed dimensions. */
export function sum(terms: readonly Term[]): Sum {
	const first = terms[0];
	if (first === undefined) throw new RangeError('a sum needs at least one term');
	for (const term of terms) {
		if (!sameDimension(term.of.dimension, first.of.dimension)) {
			throw new TypeError(
				`term ${term.role} is a ${nameOfDimension(term.of.dimension)}, ` +
					`term ${first.role} a ${nameOfDimension(first.of.dimension)}: they cannot be added`
			);
		}
	}
	return Object.freeze({ kind: 'sum', terms: Object.freeze([...terms]), dimension: first.of.dimension });
}

/** @returns the product of one or more factors. @throws on none. */
export function product(factors: readonly Node[]): Product {
	if (factors.length === 0) throw new RangeError('a product needs at least one factor');
	const dimension = factors.map((f) => f.dimension).reduce(timesDimension);
	return Object.freeze({ kind: 'product', factors: Object.freeze([...factors]), dimension });
}

/** @returns over ÷ under. */
export function quotient(over: Node, under: Node): Quotient {
	const dimension = overDimension(over.dimension, under.dimension);
	return Object.freeze({ kind: 'quotient', over, under, dimension });
}

/** @returns the square of a node. */
export function square(of: Node): Square {
	return Object.freeze({ kind: 'square', of, dimension: timesDimension(of.dimension, of.dimension) });
}

/** @returns the square root. @throws if the dimension has no root. */
export function root(of: Node): Root {
	return Object.freeze({ kind: 'root', of, dimension: rootDimension(of.dimension) });
}

/** @returns the greatest or least of one or more nodes of one dimension. @throws on none or mixed dimensions. */
export function extreme(
	pick: Extreme['pick'],
	among: readonly { readonly role: string; readonly of: Node }[]
): Extreme {
	const first = among[0];
	if (first === undefined) throw new RangeError(`the ${pick} of nothing does not exist`);
	for (const one of among) {
		if (!sameDimension(one.of.dimension, first.of.dimension)) {
			throw new TypeError(
				`${one.role} is a ${nameOfDimension(one.of.dimension)}, ` +
					`${first.role} a ${nameOfDimension(first.of.dimension)}: they cannot be compared`
			);
		}
	}
	return Object.freeze({
		kind: 'extreme',
		pick,
		among: Object.freeze(among.map((one) => Object.freeze({ ...one }))),
		dimension: first.of.dimension
	});
}

/** @returns the node as a named quantity: a step of the working. */
export function named(id: string, of: Node): Named {
	return Object.freeze({ kind: 'named', id, of, dimension: of.dimension });
}

/** @returns the direct children of a node, in the order in which they are evaluated. */
export function childrenOf(node: Node): readonly Node[] {
	switch (node.kind) {
		case 'given':
		case 'constant':
			return [];
		case 'sum':
			return node.terms.map((t) => t.of);
		case 'product':
			return node.factors;
		case 'quotient':
			return [node.over, node.under];
		case 'square':
		case 'root':
		case 'named':
			return [node.of];
		case 'extreme':
			return node.among.map((one) => one.of);
	}
}

/** @returns every node of the tree, children before parents, repeated where the tree repeats them. */
export function* walk(node: Node): Generator<Node> {
	for (const child of childrenOf(node)) yield* walk(child);
	yield node;
}

/** The givens of trees looked at before: nodes never change. */
const givensOf = new WeakMap<Node, readonly string[]>();

/** @returns the ids of the givens in the tree, each once, in the order of evaluation. */
export function givensIn(node: Node): readonly string[] {
	if (node.kind === 'given') return [node.id];
	const before = givensOf.get(node);
	if (before !== undefined) return before;
	const ids = Object.freeze([...new Set(childrenOf(node).flatMap(givensIn))]);
	givensOf.set(node, ids);
	return ids;
}

/** @returns true if two trees are the same, node for node. */
export function sameTree(a: Node, b: Node): boolean {
	if (a === b) return true;
	if (a.kind !== b.kind) return false;
	const as = childrenOf(a);
	const bs = childrenOf(b);
	if (as.length !== bs.length || !as.every((child, i) => sameTree(child, bs[i] ?? child))) return false;
	switch (a.kind) {
		case 'given':
			return b.kind === 'given' && a.id === b.id;
		case 'constant':
			return b.kind === 'constant' && a.value === b.value;
		case 'named':
			return b.kind === 'named' && a.id === b.id;
		case 'extreme':
			return b.kind === 'extreme' && a.pick === b.pick;
		case 'sum':
			return b.kind === 'sum' && a.terms.every((t, i) => t.sign === b.terms[i]?.sign);
		case 'product':
		case 'quotient':
		case 'square':
		case 'root':
			return true;
	}
}
