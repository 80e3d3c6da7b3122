/** Who is trained today: the list of people, and the words for how somebody stands. */
import type { TrainingState } from '#lib/records/index.ts';
import { pluralOf } from '../../plural.ts';

const plural = pluralOf('en');

export const training = {
	title: 'Who is trained today',
	/** In the head of the pages: this one, the page of who may sign in, and that of the organisation's settings. */
	short: 'Who is trained',
	accounts: 'Accounts',
	organisation: 'Organisation',
	/** How many there are, with the number written out for the language. */
	line: ({ day, count, number }: { day: string; count: number; number: string }) => `${day}. ${plural(count, { one: '1 person', other: `${number} people` })}.`,
	found: ({ day, count, number }: { day: string; count: number; number: string }) =>
		`${day}. ${plural(count, { one: '1 person fits', other: `${number} people fit` })} what you asked for.`,
	search: 'Name, number or crew',
	crew: 'Crew',
	allCrews: 'All crews',
	sort: 'Order',
	sorts: { until: 'What ends first', name: 'Name', state: 'State' },
	show: 'Show',
	again: 'Show everybody again',
	filtersLabel: 'By state',
	filters: { all: 'All', left: 'Left' },
	states: {
		current: 'Current',
		'expires-soon': 'Expires soon',
		expired: 'Expired',
		'in-training': 'In training',
		never: 'Never trained'
	} as Readonly<Record<TrainingState, string>>,
	caption: 'People, and how their training stands',
	columns: { name: 'Name', number: 'Number', crews: 'Crews', state: 'State', until: 'Valid until', remark: 'What there is to know' },
	erased: 'Identity erased',
	/** Where there is no day. */
	noDay: '–',
	noEnd: 'No fixed end',
	remarks: {
		left: 'has left',
		daysLeft: ({ count }: { count: number }) => plural(count, { one: '1 day left', other: `${String(count)} days left` }),
		daysAgo: ({ count }: { count: number }) => plural(count, { one: '1 day ago', other: `${String(count)} days ago` }),
		monthsLeft: ({ count }: { count: number }) => plural(count, { one: '1 month left', other: `${String(count)} months left` }),
		monthsAgo: ({ count }: { count: number }) => plural(count, { one: '1 month ago', other: `${String(count)} months ago` }),
		lastDay: 'today is the last day',
		noEnd: 'no fixed end',
		retrainingDue: ({ day }: { day: string }) => `retraining due ${day}`,
		signOffMissing: 'sign-off missing',
		revoked: 'record revoked',
		lessons: ({ n, of }: { n: number; of: number }) => `${String(n)} of ${String(of)} lessons`,
		notBegun: 'not begun'
	},
	none: 'Nobody is in the records yet. Add people to a crew first.',
	noneFits: 'Nobody fits what you asked for.',
	pagesLabel: 'Parts of this list',
	page: ({ n, of }: { n: string; of: string }) => `Page ${n} of ${of}`,
	previous: 'Previous page',
	next: 'Next page'
};
