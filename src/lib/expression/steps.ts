import { evaluate, type Givens } from './evaluate.ts';
import { childrenOf, type Named, type Node } from './node.ts';

/** One step of a working: a named part, after the named parts it stands on. */
export interface Step {
	readonly id: string;
	readonly node: Named;
	/** SI. */
	readonly value: number;
}

/** @returns the named parts of a tree, each once, those that others stand on first. */
export function namedIn(node: Node): readonly Named[] {
	const found = new Map<string, Named>();
	const visit = (n: Node): void => {
		for (const child of childrenOf(n)) visit(child);
		if (n.kind === 'named' && !found.has(n.id)) found.set(n.id, n);
	};
	visit(node);
	return [...found.values()];
}

/** @returns the working: every named part with its value, in the order in which one would compute it. */
export function stepsOf(node: Node, givens: Givens): readonly Step[] {
	return namedIn(node).map((n) => ({ id: n.id, node: n, value: evaluate(n, givens) }));
}
