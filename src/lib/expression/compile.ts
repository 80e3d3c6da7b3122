/**
 * Many trees as one flat program: equal sub-expressions are computed once, values live in one
 * Float64Array, and there is no generated code (the content security policy forbids it).
 */
import type { Node } from './node.ts';

/** Codes of the operations. @reason names for small whole numbers in a byte array. */
const OPERATION = Object.freeze({ add: 0, subtract: 1, multiply: 2, divide: 3, root: 4, greatest: 5, least: 6, negate: 7 });

// Bare constants, tested in the order of how often they occur: measured faster than a switch over a table.
const { add: ADD, subtract: SUBTRACT, multiply: MULTIPLY, divide: DIVIDE } = OPERATION;
const { root: ROOT, greatest: GREATEST, least: LEAST, negate: NEGATE } = OPERATION;

/** A compiled set of trees. Registers: inputs first, then constants, then one per operation. */
export interface Program {
	/** Ids of the givens, in the order in which `run` takes them. */
	readonly inputs: readonly string[];
	/** The register in which each tree's value ends. */
	readonly outputs: Int32Array;
	readonly operations: Uint8Array;
	readonly left: Int32Array;
	readonly right: Int32Array;
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
	const operations: number[] = [];
	const left: number[] = [];
	const right: number[] = [];
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

	const emit = (operation: number, a: number, b: number): number => {
		const key = `${operation},${a},${b}`;
		const before = known.get(key);
		if (before !== undefined) return before;
		const register = base + operations.length;
		operations.push(operation);
		left.push(a);
		right.push(b);
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
				let total = -1;
				for (const term of node.terms) {
					const value = place(term.of);
					if (total < 0) total = term.sign === 1 ? value : emit(NEGATE, value, value);
					else total = emit(term.sign === 1 ? ADD : SUBTRACT, total, value);
				}
				return total;
			}
			case 'product':
				return node.factors.map(place).reduce((a, b) => emit(MULTIPLY, a, b));
			case 'quotient':
				return emit(DIVIDE, place(node.over), place(node.under));
			case 'square': {
				const value = place(node.of);
				return emit(MULTIPLY, value, value);
			}
			case 'root': {
				const value = place(node.of);
				return emit(ROOT, value, value);
			}
			case 'extreme':
				return node.among
					.map((one) => place(one.of))
					.reduce((a, b) => emit(node.pick === 'greatest' ? GREATEST : LEAST, a, b));
		}
	};

	const outputs = Int32Array.from(trees.map(place));
	const registers = new Float64Array(base + operations.length);
	registers.set(constants, inputs.length);
	return Object.freeze({
		inputs: Object.freeze([...inputs]),
		outputs,
		operations: Uint8Array.from(operations),
		left: Int32Array.from(left),
		right: Int32Array.from(right),
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
	const { operations, left, right, registers } = program;
	for (let i = 0; i < program.inputs.length; i += 1) registers[i] = values[i] ?? NaN;
	let target = program.inputs.length + program.constants.length;
	for (let i = 0; i < operations.length; i += 1, target += 1) {
		const a = registers[left[i] ?? 0] ?? NaN;
		const b = registers[right[i] ?? 0] ?? NaN;
		const operation = operations[i];
		if (operation === ADD) registers[target] = a + b;
		else if (operation === SUBTRACT) registers[target] = a - b;
		else if (operation === MULTIPLY) registers[target] = a * b;
		else if (operation === DIVIDE) registers[target] = a / b;
		else if (operation === ROOT) registers[target] = Math.sqrt(a);
		else if (operation === GREATEST) registers[target] = Math.max(a, b);
		else if (operation === LEAST) registers[target] = Math.min(a, b);
		else registers[target] = -a;
	}
	return registers;
}

/** @returns the value of every tree, in order. */
export function valuesOf(program: Program, values: ArrayLike<number>): Float64Array {
	const registers = run(program, values);
	return Float64Array.from(program.outputs, (register) => registers[register] ?? NaN);
}
