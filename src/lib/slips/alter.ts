/** Ways to alter a tree. Each returns undefined when the tree has nothing to alter. */
import { isQuantityId, leafOf, type GivenId, type QuantityId } from '#lib/arrest/index.ts';
import { extreme, named, rewrite, sum, type Node, type Sum, type Term } from '#lib/expression/index.ts';

/** An altered tree and the named step in which it was altered. */
export interface Altered {
	readonly tree: Node;
	readonly step: QuantityId;
}

/**
 * Alters the content of the named quantities; all occurrences alike, since a person who computes a
 * quantity once uses the one value everywhere.
 * @param change gets the content; undefined leaves this occurrence as it is.
 */
export function inside(
	tree: Node,
	ids: readonly QuantityId[],
	change: (of: Node, id: QuantityId) => Node | undefined
): Altered | undefined {
	let step: QuantityId | undefined;
	// From the inside out: one of the quantities can stand within another, as the free fall does in a
	// clearance whose elongation was worked out.
	const visit = (node: Node): Node | undefined => {
		if (node.kind !== 'named') return undefined;
		const id = ids.find((one) => one === node.id);
		if (id === undefined) return undefined;
		const content = rewrite(node.of, visit);
		const of = change(content, id);
		if (of === undefined) return content === node.of ? undefined : named(id, content);
		step = id;
		return named(id, of);
	};
	const altered = rewrite(tree, visit);
	return step === undefined ? undefined : { tree: altered, step };
}

/** Alters the terms of the sums that are the content of the named quantities. */
export function inTerms(
	tree: Node,
	ids: readonly QuantityId[],
	change: (terms: readonly Term[], of: Sum) => readonly Term[] | undefined
): Altered | undefined {
	return inside(tree, ids, (of) => {
		if (of.kind !== 'sum') return undefined;
		const terms = change(of.terms, of);
		return terms === undefined || terms.length === 0 ? undefined : sum(terms);
	});
}

/** Leaves out every term with one of the roles. */
export function leaveOut(tree: Node, ids: readonly QuantityId[], roles: readonly string[]): Altered | undefined {
	return inTerms(tree, ids, (terms) => {
		const kept = terms.filter((t) => !roles.includes(t.role));
		return kept.length === terms.length ? undefined : kept;
	});
}

/** Counts every term with the role twice. */
export function countTwice(tree: Node, ids: readonly QuantityId[], role: string): Altered | undefined {
	return inTerms(tree, ids, (terms) =>
		terms.some((t) => t.role === role) ? terms.flatMap((t) => (t.role === role ? [t, t] : [t])) : undefined
	);
}

/** Turns the sign of every term with the role. */
export function turnSign(tree: Node, ids: readonly QuantityId[], role: string): Altered | undefined {
	return inTerms(tree, ids, (terms) =>
		terms.some((t) => t.role === role)
			? terms.map((t): Term => (t.role === role ? Object.freeze({ ...t, sign: t.sign === 1 ? -1 : 1 }) : t))
			: undefined
	);
}

/** Puts another expression in the place of every term with the role. */
export function exchangeTerm(
	tree: Node,
	ids: readonly QuantityId[],
	role: string,
	by: Node
): Altered | undefined {
	return inTerms(tree, ids, (terms) =>
		terms.some((t) => t.role === role)
			? terms.map((t): Term => (t.role === role ? Object.freeze({ ...t, of: by }) : t))
			: undefined
	);
}

/** Adds a term at the end. */
export function addTerm(tree: Node, ids: readonly QuantityId[], term: Term): Altered | undefined {
	return inTerms(tree, ids, (terms) => [...terms, term]);
}

/**
 * Reads one given for another wherever it stands, but not inside the quantities named in `except`.
 * The step is the innermost named quantity that holds the first occurrence.
 */
export function misread(
	tree: Node,
	id: GivenId,
	by: Node,
	except: readonly QuantityId[] = []
): Altered | undefined {
	const step = stepHolding(tree, id, except);
	if (step === undefined) return undefined;
	const altered = rewrite(tree, (node) => {
		if (node.kind === 'named' && except.some((one) => one === node.id)) return node;
		return node.kind === 'given' && node.id === id ? by : undefined;
	});
	return { tree: altered, step };
}

function stepHolding(tree: Node, id: GivenId, except: readonly QuantityId[]): QuantityId | undefined {
	let found: string | undefined;
	const visit = (node: Node, within: string): void => {
		if (found !== undefined) return;
		if (node.kind === 'given') {
			if (node.id === id) found = within;
			return;
		}
		if (node.kind === 'named') {
			if (except.some((one) => one === node.id)) return;
			visit(node.of, node.id);
			return;
		}
		switch (node.kind) {
			case 'constant':
				return;
			case 'sum':
				for (const t of node.terms) visit(t.of, within);
				return;
			case 'product':
				for (const f of node.factors) visit(f, within);
				return;
			case 'quotient':
				visit(node.over, within);
				visit(node.under, within);
				return;
			case 'square':
			case 'root':
				visit(node.of, within);
				return;
			case 'extreme':
				for (const one of node.among) visit(one.of, within);
		}
	};
	visit(tree, '');
	return found !== undefined && isQuantityId(found) ? found : undefined;
}

/** Leaves obstacles out of the highest thing below; with none left the ground is taken. */
export function overlook(tree: Node, obstacles: readonly string[]): Altered | undefined {
	const gone = new Set(obstacles);
	const within = inside(tree, ['highestBelow'], (of) => {
		if (of.kind !== 'extreme') return undefined;
		const kept = of.among.filter((one) => !gone.has(one.role));
		return kept.length === of.among.length || kept.length === 0 ? undefined : extreme(of.pick, kept);
	});
	if (within !== undefined) return within;
	return inTerms(tree, ['availableClearance'], (terms) => {
		const kept = terms.filter((t) => {
			if (t.role !== 'obstacle') return true;
			return ![...obstacleRoles(t.of)].every((role) => gone.has(role));
		});
		return kept.length === terms.length ? undefined : kept;
	});
}

function obstacleRoles(node: Node): readonly string[] {
	if (node.kind === 'given') return [node.id.slice('obstacleTop_'.length)];
	if (node.kind === 'named') return obstacleRoles(node.of);
	return node.kind === 'extreme' ? node.among.map((one) => one.role) : [];
}

/** @returns a given's leaf; a shorthand for slips. */
export function leaf(id: GivenId): Node {
	return leafOf(id);
}
