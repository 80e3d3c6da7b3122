/** What is stored of a name so that it is found: for sorting, for searching, and for holding it against another. */
import { nameKey } from '../people/fields.ts';
import { folded } from './folded.ts';

/**
 * Longest of each, characters. A few letters are written out as many when they are folded, and an index takes no
 * endless text.
 * @reason any name in full; together with what else stands in an index below what PostgreSQL takes
 */
const LONGEST = { sorted: 120, searched: 300, key: 300 } as const;

/** @returns a name as it is sorted. */
export function sortedName(name: string): string {
	return folded(name).slice(0, LONGEST.sorted);
}

/** @returns what is searched for a person; the number first, so that no name is too long for it. */
export function searchedText(name: string, number: string | null): string {
	return folded(`${number ?? ''} ${name}`).slice(0, LONGEST.searched);
}

/** @returns what all ways of writing one name have in common, as it is stored. */
export function keyOfName(name: string): string {
	return nameKey(name).slice(0, LONGEST.key);
}
