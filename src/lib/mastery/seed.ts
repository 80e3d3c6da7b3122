/** Seeds of a learner's problems: all different, and the same on every machine. */

/** @source offset basis of the 32-bit FNV-1a hash (IETF draft-eastlake-fnv, from memory) */
const OFFSET_BASIS = 0x811c9dc5;
/** @source prime of the 32-bit FNV-1a hash (IETF draft-eastlake-fnv, from memory) */
const PRIME = 0x01000193;
/** @source final mix of the 32-bit MurmurHash3 (Appleby, public domain, from memory): shifts and factors */
const MIX = { first: 16, times: 0x85ebca6b, second: 13, again: 0xc2b2ae35 };
/** @reason two halves of a seed of 30 bits, which stays short in an address: about a thousand million seeds */
const HALF = 2 ** 15;
/** @source rounds after which a Feistel network cannot be told from chance (Luby and Rackoff 1988, from memory) */
const ROUNDS = 4;

/**
 * @param parts what makes this number its own; joined with a separator, so that no two lists of parts meet in one
 * number by being glued together.
 * @returns a whole number from 0 to 2³² − 1.
 */
export function hashOf(parts: readonly (string | number)[]): number {
	let hash = OFFSET_BASIS;
	for (const char of parts.join('\u0000')) {
		hash = Math.imul(hash ^ (char.codePointAt(0) ?? 0), PRIME);
	}
	hash = Math.imul(hash ^ (hash >>> MIX.first), MIX.times);
	hash = Math.imul(hash ^ (hash >>> MIX.second), MIX.again);
	return (hash ^ (hash >>> MIX.first)) >>> 0;
}

/**
 * @param learner a number of this learner, so that two people get different problems.
 * @param nth how many problems came before, from 0.
 * @returns the seed of that problem, below 2³⁰. Two places of one learner never get the same seed: the halves of the
 * place are mixed in rounds that can be undone (a Feistel network over the hash).
 */
export function seedOf(learner: number, nth: number): number {
	let high = Math.floor(nth / HALF) % HALF;
	let low = nth % HALF;
	for (let round = 0; round < ROUNDS; round += 1) {
		const mixed = (high ^ hashOf(['practice', learner, round, low])) & (HALF - 1);
		high = low;
		low = mixed;
	}
	return high * HALF + low;
}
