/** Reading many rows without holding them: by keyset, a page after the other. */

/** Rows of a page. @reason a page of entries of the chain is a few hundred kilobytes, and a question takes a few milliseconds */
export const PAGE_ROWS = 200;

/**
 * Pages of rows, each asked for when the one before was used up. Rows that come or go meanwhile are in it or not; none
 * comes twice as long as its key does not change.
 * @param next the rows behind one, in the order of their keys, at most `size`; behind nothing for the first page
 */
export async function* pages<Row>(next: (after: Row | undefined, size: number) => Promise<readonly Row[]>, size: number = PAGE_ROWS): AsyncGenerator<readonly Row[], void, undefined> {
	let after: Row | undefined;
	for (;;) {
		const rows = await next(after, size);
		if (rows.length > 0) yield rows;
		if (rows.length < size) return;
		after = rows.at(-1);
	}
}
