import { pluralOf } from '../../plural.ts';

const plural = pluralOf('en');

/** Ordering retraining, and who is due. */
export const retraining = {
	title: 'Retraining',
	/** In the head of the pages. */
	short: 'Retraining',
	lead: 'Who is to be trained again, and until when.',
	people: ({ count }: { count: number }) => plural(count, { one: '1 person', other: `${String(count)} people` }),
	reasons: {
		expiry: 'training runs out',
		'change-of-work': 'change of work or site',
		'change-of-gear-or-system': 'change of gear or system',
		'seen-inadequate': 'seen not to know enough',
		incident: 'incident',
		'yearly-review': 'yearly review'
	},

	openHeading: 'Open orders',
	none: 'No retraining is ordered.',
	open: ({ people }: { people: string }) => `Ordered for ${people}.`,
	overdue: ({ count }: { count: number }) => plural(count, { one: 'For 1 person the day is over.', other: `For ${String(count)} people the day is over.` }),
	columns: { person: 'Person', due: 'Due', reason: 'Reason', state: 'Done so far' },
	late: 'overdue',
	theoryDone: 'theory passed, sign-off missing',
	theoryOpen: 'theory not passed yet',
	pages: 'Pages of the list',
	page: ({ n, of }: { n: number; of: number }) => `Page ${String(n)} of ${String(of)}`,
	before: 'Page before',
	next: 'Next page',

	formHeading: 'Order retraining',
	formLead: 'The course opens again for each person. What they passed stays on record.',
	whom: 'For whom',
	expired: 'All whose training has run out',
	soon: 'All whose training runs out soon',
	crew: ({ name }: { name: string }) => `Crew: ${name}`,
	days: 'Soon means within (days)',
	daysHint: 'Only for training that runs out soon.',
	reason: 'Reason',
	atOnce: 'After an incident, or where someone was seen not to know enough, old training stops counting at once. Else it counts until the due day.',
	due: 'Due day',
	dueHint: 'The last day to be done in time.',
	look: 'See for whom',

	confirmHeading: 'You are about to order',
	confirmRows: { whom: 'For', people: 'People', reason: 'Reason', due: 'Due' },
	withOpen: ({ count }: { count: number }) =>
		plural(count, { one: '1 of them has an open order. The training starts again with this one.', other: `${String(count)} of them have an open order. The training starts again with this one.` }),
	leftOut: 'Whoever has an open order already is left out.',
	endsNow: 'Their old training stops counting today.',
	endsDue: 'Their old training counts until the due day at most.',
	nobody: 'There is nobody to order it for.',
	send: 'Order retraining',
	change: 'Change something',
	done: ({ people }: { people: string }) => `Retraining is ordered for ${people}.`,
	problems: {
		'no-whom': 'Choose for whom.',
		'no-reason': 'Choose a reason.',
		'no-day': 'Give the due day.',
		'due-past': 'This day is over. Give today or a later day.',
		'due-far': 'This day is too far away. Give a day within five years.',
		'bad-days': 'Give a number of days from 1 to 365.',
		'too-many': 'These are too many people at once. Order it crew by crew.',
		changed: 'Something has changed since you looked, so nothing was ordered. Look again, then order.'
	}
};
