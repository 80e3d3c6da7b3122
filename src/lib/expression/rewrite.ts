import {
	extreme,
	named,
	product,
	quotient,
	root,
	square,
	sum,
	type Node
} from './node.ts';

/**
 * @param visit asked for every node from the root down; a returned node takes its place (and is not
 * visited again), undefined means: go on into the children.
 * @returns the transformed tree. Untouched parts are the same objects; an untouched tree is the same
 * object. @throws if the replacement breaks a dimension.
 */
export function rewrite(node: Node, visit: (node: Node) => Node | undefined): Node {
	const replaced = visit(node);
	if (replaced !== undefined) return replaced;
	const deeper = (child: Node): Node => rewrite(child, visit);
	switch (node.kind) {
		case 'given':
		case 'constant':
			return node;
		case 'named': {
			const of = deeper(node.of);
			return of === node.of ? node : named(node.id, of);
		}
		case 'sum': {
			const terms = node.terms.map((t) => {
				const of = deeper(t.of);
				return of === t.of ? t : Object.freeze({ ...t, of });
			});
			return terms.every((t, i) => t === node.terms[i]) ? node : sum(terms);
		}
		case 'product': {
			const factors = node.factors.map(deeper);
			return factors.every((f, i) => f === node.factors[i]) ? node : product(factors);
		}
		case 'quotient': {
			const over = deeper(node.over);
			const under = deeper(node.under);
			return over === node.over && under === node.under ? node : quotient(over, under);
		}
		case 'square': {
			const of = deeper(node.of);
			return of === node.of ? node : square(of);
		}
		case 'root': {
			const of = deeper(node.of);
			return of === node.of ? node : root(of);
		}
		case 'extreme': {
			const among = node.among.map((one) => {
				const of = deeper(one.of);
				return of === one.of ? one : { ...one, of };
			});
			return among.every((one, i) => one === node.among[i]) ? node : extreme(node.pick, among);
		}
	}
}
