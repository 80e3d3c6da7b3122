/** How entries hang on each other, and the trees over them. */
import { hash } from 'node:crypto';
import { canonicalJson } from '#lib/records/index.ts';

/** What stands before the first entry. */
export const BEFORE_FIRST = '0'.repeat(64);

/** @returns SHA-256, hexadecimal. */
export function sha256(data: string | Uint8Array): string {
	return hash('sha256', data, 'hex');
}

/**
 * @param payload canonical JSON of the entry
 * @returns the entry's hash: SHA-256 of the canonical JSON of { payload, prev, seq }, hexadecimal
 */
export function entryHash(seq: number, prev: string, payload: string): string {
	// The names stand in the order that RFC 8785 gives them, and the payload is canonical already.
	return sha256(`{"payload":${payload},"prev":"${prev}","seq":${seq}}`);
}

/**
 * What stands in the chain for a name: nobody finds the name without the salt.
 * @param salt 32 random bytes, hexadecimal
 * @param number personal number; null for staff
 */
export function commitmentTo(salt: string, name: string, number: string | null): string {
	return sha256(canonicalJson({ name, number, salt }));
}

function node(prefix: number, ...parts: readonly Uint8Array[]): Buffer {
	return hash('sha256', Buffer.concat([Uint8Array.of(prefix), ...parts]), 'buffer');
}

/**
 * A Merkle tree that grows leaf by leaf and keeps only its edge: as many hashes as its size has binary digits.
 * @source RFC 6962, section 2.1: leaves are hashed behind 0x00, nodes behind 0x01, and a tree is split at the largest power of two below its size
 */
export class GrowingTree {
	/** Roots of whole subtrees, the largest first; their sizes are the binary digits of the tree's size. */
	readonly #edge: { readonly size: number; readonly hash: Buffer }[] = [];
	#size = 0;

	/**
	 * @param size leaves of a tree
	 * @param edge as `edge` gave it
	 * @returns that tree, to be grown on
	 * @throws RangeError if the edge is not one of a tree of this size
	 */
	static from(size: number, edge: readonly string[]): GrowingTree {
		const tree = new GrowingTree();
		const sizes = [...size.toString(2)].flatMap((digit, i, { length }) => (digit === '1' ? [2 ** (length - 1 - i)] : []));
		if (sizes.length !== edge.length) throw new RangeError(`a tree of ${size} leaves has an edge of ${sizes.length} hashes`);
		tree.#edge.push(...sizes.map((one, i) => ({ size: one, hash: Buffer.from(edge[i] ?? '', 'hex') })));
		tree.#size = size;
		return tree;
	}

	/** The hashes it keeps, hexadecimal, the largest subtree first. */
	edge(): readonly string[] {
		return this.#edge.map(({ hash }) => hash.toString('hex'));
	}

	/** How many leaves it has. */
	get size(): number {
		return this.#size;
	}

	add(leaf: Uint8Array): void {
		let grown = { size: 1, hash: node(0, leaf) };
		for (let last = this.#edge.at(-1); last?.size === grown.size; last = this.#edge.at(-1)) {
			grown = { size: 2 * grown.size, hash: node(1, last.hash, grown.hash) };
			this.#edge.pop();
		}
		this.#edge.push(grown);
		this.#size += 1;
	}

	/** Root over all leaves so far, hexadecimal; of an empty tree the hash of nothing. */
	root(): string {
		const [last, ...others] = this.#edge.toReversed();
		if (last === undefined) return sha256('');
		return others.reduce((right, left) => node(1, left.hash, right), last.hash).toString('hex');
	}
}
