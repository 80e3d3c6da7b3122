/**
 * Ordering operations for speed: a sum that only the next sum reads is drawn into it, and operations of
 * one kind stand together, so that running them is a few tight loops instead of a choice for each.
 * Nothing is added up in another order than the tree says.
 */

/** What an operation does with its operands: a sum has two or more, a root and a negation one, the others two. @reason names for small whole numbers in a byte array. */
export const KIND = Object.freeze({ sum: 0, multiply: 1, divide: 2, root: 3, greatest: 4, least: 5, negate: 6 });

/** One step of a program: its operands are registers, those of operation i being `base + i`. */
export interface Operation {
	readonly kind: number;
	readonly operands: readonly number[];
}

/** Operations of one kind and equally many operands side by side. */
export interface Schedule {
	/** The kind of each run of operations. */
	readonly kinds: Uint8Array;
	/** How many operands each operation of a run has. */
	readonly widths: Uint8Array;
	/** The register after the last of each run. */
	readonly ends: Int32Array;
	/** The operands of all operations, one after the other. */
	readonly operands: Int32Array;
	/** Where each register asked for has come to stand. */
	readonly outputs: Int32Array;
	readonly count: number;
}

/** More operands than any sum has: what one number of kind and width is counted in. @reason a byte holds a width. */
const WIDTHS = 256;

/** Which operations can stand in one run. */
function runOf({ kind, operands }: Operation): number {
	return kind * WIDTHS + operands.length;
}

/** Draws each sum that one other operation alone reads, as its first operand, into that one. */
function drawnTogether(operations: readonly Operation[], base: number, outputs: readonly number[]): Map<number, Operation> {
	const reads = new Map<number, number>();
	for (const register of [...operations.flatMap((one) => one.operands), ...outputs]) {
		reads.set(register, (reads.get(register) ?? 0) + 1);
	}
	const kept = new Map<number, Operation>();
	operations.forEach((operation, i) => {
		const [first = -1, ...rest] = operation.operands;
		const before = kept.get(first);
		const joins =
			before !== undefined &&
			operation.kind === KIND.sum &&
			before.kind === KIND.sum &&
			reads.get(first) === 1 &&
			before.operands.length + rest.length < WIDTHS;
		if (joins) {
			kept.delete(first);
			kept.set(base + i, { kind: KIND.sum, operands: [...before.operands, ...rest] });
		} else kept.set(base + i, operation);
	});
	return kept;
}

/** The operations in an order in which each comes after its operands and few changes of kind are needed. */
function inOrder(operations: ReadonlyMap<number, Operation>): readonly number[] {
	const waitsFor = new Map<number, number>();
	const readers = new Map<number, number[]>();
	const ready = new Map<number, number[]>();
	const release = (register: number, operation: Operation): void => {
		const run = runOf(operation);
		const queue = ready.get(run);
		if (queue === undefined) ready.set(run, [register]);
		else queue.push(register);
	};
	for (const [register, operation] of operations) {
		const open = operation.operands.filter((operand) => operations.has(operand));
		waitsFor.set(register, open.length);
		for (const operand of open) {
			const list = readers.get(operand);
			if (list === undefined) readers.set(operand, [register]);
			else list.push(register);
		}
		if (open.length === 0) release(register, operation);
	}
	const order: number[] = [];
	while (ready.size > 0) {
		const [run, queue] = [...ready].reduce((longest, one) => (one[1].length > longest[1].length ? one : longest));
		// The queue grows while it is gone through: what becomes ready of its kind follows at once.
		for (const register of queue) {
			order.push(register);
			for (const reader of readers.get(register) ?? []) {
				const open = (waitsFor.get(reader) ?? 0) - 1;
				waitsFor.set(reader, open);
				const operation = operations.get(reader);
				if (open === 0 && operation !== undefined) release(reader, operation);
			}
		}
		ready.delete(run);
	}
	return order;
}

/**
 * @param operations each may read registers below `base` and those of operations before it.
 * @param base the register of the first operation. @param outputs registers whose values are asked for.
 * @returns the same values from fewer and better ordered operations, from register `base` on.
 */
export function schedule(operations: readonly Operation[], base: number, outputs: readonly number[]): Schedule {
	const kept = drawnTogether(operations, base, outputs);
	const order = inOrder(kept);
	const place = new Map(order.map((register, i) => [register, base + i]));
	const placed = (register: number): number => place.get(register) ?? register;
	const runs: { kind: number; width: number; end: number }[] = [];
	const operands: number[] = [];
	order.forEach((register, i) => {
		const operation = kept.get(register);
		if (operation === undefined) return;
		operands.push(...operation.operands.map(placed));
		const end = base + i + 1;
		const last = runs.at(-1);
		const width = operation.operands.length;
		if (last?.kind === operation.kind && last.width === width) last.end = end;
		else runs.push({ kind: operation.kind, width, end });
	});
	return {
		kinds: Uint8Array.from(runs, (one) => one.kind),
		widths: Uint8Array.from(runs, (one) => one.width),
		ends: Int32Array.from(runs, (one) => one.end),
		operands: Int32Array.from(operands),
		outputs: Int32Array.from(outputs, placed),
		count: order.length
	};
}
