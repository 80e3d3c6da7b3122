/** A list of everyone of the organisation: what it would do, and what it did. */
import { pluralOf } from '../../plural.ts';
import { roster } from '../roster.ts';

const plural = pluralOf('en');

export const rosterAll = {
	title: 'People by list',
	lead: 'Enter everyone of the organisation at once. The same list may come again: only what differs is changed.',
	back: 'Back to the accounts',
	heading: roster.heading,
	otherHeading: roster.otherHeading,
	listLead: 'Each line holds a name and a personal number, and a crew if you like. Copy it from a spreadsheet, or choose a file. A first line with headings helps.',
	numberLead: 'The number says who is meant. If a known number comes with another name, the name is changed. The old one stays with older records.',
	example: 'Name; Number; Crew\nDario Penn; C-117; Bridges North\nNadia Rook; C-118; Bridges North',
	paste: roster.paste,
	file: roster.file,
	fileHint: roster.fileHint,
	lookButton: roster.lookButton,
	foundHeading: roster.foundHeading,
	added: ({ count }: { count: number }) => plural(count, { one: '1 new person', other: `${String(count)} new people` }),
	changed: ({ count }: { count: number }) => plural(count, { one: '1 person changes', other: `${String(count)} people change` }),
	unchanged: ({ count }: { count: number }) => plural(count, { one: '1 person stays as is', other: `${String(count)} people stay as they are` }),
	wrong: roster.wrong,
	wrongLead: roster.wrongLead,
	caption: roster.caption,
	columns: { line: 'Line', name: 'Name', number: 'Number', crew: 'Crew', happens: 'What happens' },
	empty: roster.nothing,
	happens: {
		isNew: 'is new',
		unchanged: 'stays as is',
		renamed: ({ name }: { name: string }) => `new name; until now ${name}`,
		stranger: 'No word of the name is alike. Check the number.',
		returns: 'comes back after leaving',
		joins: ({ name }: { name: string }) => `joins ${name}`,
		moves: ({ first, second }: { first: string; second: string }) => `moves from ${first} to ${second}`,
		made: 'this crew is made'
	},
	missing: roster.missing,
	tooLong: roster.tooLong,
	crewTooLong: 'The name of the crew is too long. Shorten it.',
	crewNoName: 'This cannot be the name of a crew. Write letters or digits.',
	twice: roster.twice,
	problems: {
		'number-of-staff': 'A trainer or an employer has this number. Give another one.',
		'crew-unclear': 'More than one crew has this name. Rename one of them first.',
		'crew-put-away': 'This crew is put away. Take it up again first, or name another.'
	},
	openQuote: roster.openQuote,
	missingHeading: ({ count }: { count: number }) => plural(count, { one: '1 person is not on this list', other: `${String(count)} people are not on this list` }),
	missingLead: 'They stay as they are, unless you tick the box below.',
	tooMany: 'That is too many to mark as left by one list. Does the list hold everyone?',
	wrongFirst: 'Nobody can be marked as left while a line has a problem.',
	leave: ({ count }: { count: number }) => plural(count, { one: 'This person has left', other: `These ${String(count)} people have left` }),
	leaveDetail: 'They are signed out and leave the usual lists. Their records stay.',
	confirmAll: roster.confirmAll,
	confirmSome: roster.confirmSome,
	enterButton: 'Enter this list',
	nothing: 'This list changes nothing.',
	done: ({ added, changed, gone }: { added: number; changed: number; gone: number }) => `Entered. New people: ${String(added)}. Changed: ${String(changed)}. Left: ${String(gone)}.`,
	refusals: {
		empty: roster.refusals.empty,
		'too-long': roster.refusals['too-long'],
		'too-many': roster.refusals['too-many'],
		'one-column': roster.refusals['one-column'],
		'not-text': roster.refusals['not-text'],
		changed: 'Something has changed since you looked, so nothing was entered. Look at it once more.',
		'cannot-leave': 'Nobody can be marked as left by this list. Nothing was entered.'
	}
};
