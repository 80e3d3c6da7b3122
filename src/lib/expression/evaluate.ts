import type { Node } from './node.ts';

/** Values of givens by id, SI. */
export type Givens = (id: string) => number;

/** @returns a look-up over a record. @throws on reading a given the record lacks. */
export function fromRecord(values: Readonly<Record<string, number>>): Givens {
	return (id) => {
		const value = values[id];
		if (value === undefined) throw new ReferenceError(`no value for the given ${id}`);
		return value;
	};
}

/**
 * @returns the value of the tree, SI. NaN where a root has nothing real to give.
 * The order of operations is the order of the tree; `compile` keeps to the same order, so both give
 * the same bits.
 */
export function evaluate(node: Node, givens: Givens): number {
	switch (node.kind) {
		case 'given':
			return givens(node.id);
		case 'constant':
			return node.value;
		case 'named':
			return evaluate(node.of, givens);
		case 'sum': {
			let total = 0;
			node.terms.forEach((term, i) => {
				const value = evaluate(term.of, givens);
				if (i === 0) total = term.sign === 1 ? value : -value;
				else total = term.sign === 1 ? total + value : total - value;
			});
			return total;
		}
		case 'product':
			return node.factors.map((f) => evaluate(f, givens)).reduce((a, b) => a * b);
		case 'quotient':
			return evaluate(node.over, givens) / evaluate(node.under, givens);
		case 'square': {
			const value = evaluate(node.of, givens);
			return value * value;
		}
		case 'root':
			return Math.sqrt(evaluate(node.of, givens));
		case 'extreme': {
			const values = node.among.map((one) => evaluate(one.of, givens));
			return values.reduce((a, b) => (node.pick === 'greatest' ? Math.max(a, b) : Math.min(a, b)));
		}
	}
}
