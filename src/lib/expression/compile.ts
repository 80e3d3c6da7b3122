/**
 * Many trees as one flat program: equal sub-expressions are computed once, values live in one
 * Float64Array, and there is no generated code (the content security policy forbids it).
 */
import type { Node } from './node.ts';
import { KIND, schedule, type Operation } from './schedule.ts';

/** A compiled set of trees. Registers: inputs first, then constants, then one per operation, run by run. */
export interface Program {
	/** Ids of the givens, in the order in which `run` takes them. */
	readonly inputs: readonly string[];
	/** The register in which each tree's value ends. */
	readonly outputs: Int32Array;
	/** The kind of the operations of each run. */
	readonly kinds: Uint8Array;
	/** How many registers each operation of a run reads. */
	readonly widths: Uint8Array;
	/** The register after the last of each run. */
	readonly ends: Int32Array;
	/** The registers that the operations read, one operation after the other. */
	readonly operands: Int32Array;
	readonly constants: Float64Array;
	/** Working memory, one register per value; overwritten by each run. */
	readonly registers: Float64Array;
}

/**
 * @param trees the expressions, each giving one output.
 * @param inputs ids of all givens the trees read, in the order in which `run` will be given them.
 * @throws if a tree reads a given that is not among the inputs.
 */
export function compile(trees: readonly Node[], inputs: readonly string[]): Program {
	const operations: Operation[] = [];
	const inputRegister = new Map(inputs.map((id, i) => [id, i]));
	const constants: number[] = [];
	const constantRegister = new Map<number, number>();
	const seen = new Map<Node, number>();
	const known = new Map<string, number>();

	// Constants are counted first, so that operation registers can follow them.
	const collect = (node: Node): void => {
		switch (node.kind) {
			case 'given':
				return;
			case 'constant':
				if (!constantRegister.has(node.value)) {
					constantRegister.set(node.value, inputs.length + constants.length);
					constants.push(node.value);
				}
				return;
			case 'sum':
				for (const t of node.terms) collect(t.of);
				return;
			case 'product':
				for (const f of node.factors) collect(f);
				return;
			case 'quotient':
				collect(node.over);
				collect(node.under);
				return;
			case 'square':
			case 'root':
			case 'named':
				collect(node.of);
				return;
			case 'extreme':
				for (const one of node.among) collect(one.of);
		}
	};
	for (const tree of trees) collect(tree);
	const base = inputs.length + constants.length;

	const emit = (kind: number, ...operands: readonly number[]): number => {
		const key = `${kind},${operands.join()}`;
		const before = known.get(key);
		if (before !== undefined) return before;
		const register = base + operations.length;
		operations.push({ kind, operands });
		known.set(key, register);
		return register;
	};

	const place = (node: Node): number => {
		const before = seen.get(node);
		if (before !== undefined) return before;
		const register = placeNew(node);
		seen.set(node, register);
		return register;
	};

	const placeNew = (node: Node): number => {
		switch (node.kind) {
			case 'given': {
				const register = inputRegister.get(node.id);
				if (register === undefined) throw new ReferenceError(`the given ${node.id} is not among the inputs`);
				return register;
			}
			case 'constant': {
				const register = constantRegister.get(node.value);
				if (register === undefined) throw new ReferenceError(`the constant ${node.name} was not collected`);
				return register;
			}
			case 'named':
				return place(node.of);
			case 'sum': {
				// Adding the negative is subtracting, to the last bit.
				return node.terms
					.map((term) => (term.sign === 1 ? place(term.of) : emit(KIND.negate, place(term.of))))
					.reduce((total, value) => emit(KIND.sum, total, value));
			}
			case 'product':
				return node.factors.map(place).reduce((a, b) => emit(KIND.multiply, a, b));
			case 'quotient':
				return emit(KIND.divide, place(node.over), place(node.under));
			case 'square': {
				const value = place(node.of);
				return emit(KIND.multiply, value, value);
			}
			case 'root':
				return emit(KIND.root, place(node.of));
			case 'extreme':
				return node.among
					.map((one) => place(one.of))
					.reduce((a, b) => emit(node.pick === 'greatest' ? KIND.greatest : KIND.least, a, b));
		}
	};

	const asked = trees.map(place);
	const { count, outputs, ...runs } = schedule(operations, base, asked);
	const registers = new Float64Array(base + count);
	registers.set(constants, inputs.length);
	return Object.freeze({
		inputs: Object.freeze([...inputs]),
		outputs,
		...runs,
		constants: Float64Array.from(constants),
		registers
	});
}

/**
 * @param values one SI value per input, in the program's order.
 * @returns the register file: the value of tree i is at `program.outputs[i]`. It is the program's own
 * memory: read what is needed before the next run.
 */
export function run(program: Program, values: ArrayLike<number>): Float64Array {
	const { kinds, widths, ends, operands, registers } = program;
	const inputs = program.inputs.length;
	for (let i = 0; i < inputs; i += 1) registers[i] = values[i] ?? NaN;
	const read = (i: number): number => registers[operands[i] ?? 0] ?? NaN;
	let to = inputs + program.constants.length;
	let i = 0;
	for (let r = 0; r < kinds.length; r += 1) {
		const end = ends[r] ?? 0;
		const width = widths[r] ?? 0;
		switch (kinds[r]) {
			case KIND.sum:
				for (; to < end; to += 1, i += width) {
					let total = read(i);
					for (let k = 1; k < width; k += 1) total += read(i + k);
					registers[to] = total;
				}
				break;
			case KIND.multiply:
				for (; to < end; to += 1, i += width) registers[to] = read(i) * read(i + 1);
				break;
			case KIND.divide:
				for (; to < end; to += 1, i += width) registers[to] = read(i) / read(i + 1);
				break;
			case KIND.root:
				for (; to < end; to += 1, i += width) registers[to] = Math.sqrt(read(i));
				break;
			case KIND.greatest:
				for (; to < end; to += 1, i += width) registers[to] = Math.max(read(i), read(i + 1));
				break;
			case KIND.least:
				for (; to < end; to += 1, i += width) registers[to] = Math.min(read(i), read(i + 1));
				break;
			default:
				for (; to < end; to += 1, i += width) registers[to] = -read(i);
		}
	}
	return registers;
}

/** @returns the value of every tree, in order. */
export function valuesOf(program: Program, values: ArrayLike<number>): Float64Array {
	const registers = run(program, values);
	const { outputs } = program;
	const found = new Float64Array(outputs.length);
	for (let i = 0; i < outputs.length; i += 1) found[i] = registers[outputs[i] ?? 0] ?? NaN;
	return found;
}
