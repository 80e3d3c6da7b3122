/** Addresses of the list of who is trained: what stands in it by itself is left out. */
import type { AskedList } from '#lib/server/index.ts';

/** @returns the search of an address that asks for a list; empty for what is shown by itself. */
export function listSearch({ search, filter, crew, sort, page }: AskedList): string {
	const said = new URLSearchParams();
	if (search !== '') said.set('q', search);
	if (filter !== 'all') said.set('state', filter);
	if (crew !== '') said.set('crew', crew);
	if (sort !== 'until') said.set('sort', sort);
	if (page > 1) said.set('page', String(page));
	return said.toString();
}
