/** Chance from a seed: the only source of it in the core. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A source of whole numbers that a seed fixes. */
export interface Chance {
	/** @returns a whole number from 0 to `count − 1`, each as likely. */
	below(count: number): number;
}

/** @source offset basis of the 32-bit FNV-1a hash (IETF draft-eastlake-fnv, from memory). */
const OFFSET_BASIS = 0x811c9dc5;
/** @source prime of the 32-bit FNV-1a hash (IETF draft-eastlake-fnv, from memory). */
const PRIME = 0x01000193;

/**
 * @param parts what makes this source its own; joined with a separator, so that no two lists of parts
 * meet in one seed by being glued together.
 * @returns a source whose numbers are the same on every machine.
 */
export function chanceOf(parts: readonly (string | number)[]): Chance {
	let hash = OFFSET_BASIS;
	for (const char of parts.join('\u0000')) {
		hash = Math.imul(hash ^ (char.codePointAt(0) ?? 0), PRIME);
	}
	const generator = xoroshiro128plus(hash);
	return { below: (count) => uniformInt(generator, 0, count - 1) };
}
