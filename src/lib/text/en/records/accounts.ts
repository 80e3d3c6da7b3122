/** Who may sign in: staff, and learners by search. */
import { pluralOf } from '../../plural.ts';

const plural = pluralOf('en');

export const accounts = {
	lead: 'Who may sign in here. How people are trained stands on the page of records.',
	toList: 'Enter people by list',
	toListLead: 'Joiners, leavers and new names of the whole organisation come in by one list.',
	staffHeading: ({ count }: { count: number }) => plural(count, { one: '1 trainer or employer', other: `${String(count)} trainers and employers` }),
	learnersHeading: 'Workers',
	learnersLead: 'By name or number, or a part of it. The others are not listed here.',
	search: 'Find a worker',
	searchButton: 'Search',
	found: ({ count, number }: { count: number; number: string }) => plural(count, { one: '1 worker found', other: `${number} workers found` }),
	none: 'No worker has this name or number. Try a part of it.',
	toRecord: ({ name }: { name: string }) => `Record of ${name}`,
	pagesLabel: 'Parts of this list',
	page: ({ n, of }: { n: string; of: string }) => `Page ${n} of ${of}`,
	previous: 'Previous page',
	next: 'Next page'
};
