/** People by list: reading a file or a pasted table. */
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const roster = {
	title: 'Add people by list',
	back: 'Back to the crew',
	heading: 'Your list',
	otherHeading: 'Look at another list',
	lead: 'Each line holds a name and a personal number. Copy it from a spreadsheet, or choose a file. A first line with headings helps.',
	example: 'Name; Number\nDario Penn; C-117\nNadia Rook; C-118',
	paste: 'Paste the list here',
	file: 'Or choose a file',
	fileHint: 'CSV or text, as a spreadsheet saves it. If you choose a file, the pasted text is not read.',
	lookButton: 'Look at the list',
	foundHeading: 'What this list would do',
	toAdd: ({ count }: { count: number }) => plural(count, { one: '1 person to add', other: `${String(count)} people to add` }),
	before: ({ count }: { count: number }) => plural(count, { one: '1 person on the list already', other: `${String(count)} people on the list already` }),
	wrong: ({ count }: { count: number }) => plural(count, { one: '1 line with a problem', other: `${String(count)} lines with a problem` }),
	wrongLead: 'These lines stand first. Put them right in your list and look again, or go on without them.',
	confirmAll: 'Nothing is changed yet.',
	confirmSome: 'Nothing is changed yet. Lines with a problem will be left out.',
	nothingToAdd: 'There is nobody to add.',
	enterButton: ({ count }: { count: number }) => plural(count, { one: 'Add 1 person', other: `Add ${String(count)} people` }),
	caption: 'Lines of the list',
	columns: { line: 'Line', state: 'What happens' },
	states: { new: 'will be added', known: 'will be added; is known here', 'on-list': 'is on the list already' },
	nothing: '(nothing)',
	missing: { name: 'The name is missing. Write first and last name.', number: 'The number is missing. Write the personal number.' },
	twice: ({ n }: { n: number }) => `This number stands in line ${String(n)} too. Keep one of the two.`,
	tooLong: { name: 'The name is too long. Shorten it.', number: 'The number is too long. Shorten it.' },
	openQuote: ({ n }: { n: number }) => `A quotation mark in line ${String(n)} is never closed. Take it out or close it.`,
	refusals: {
		empty: 'There is nothing in this list. Paste lines with a name and a number, or choose a file.',
		'too-long': 'This list is too long. Cut it in parts of at most 1000 people.',
		'too-many': 'There are more than 1000 people in this list. Cut it in parts.',
		'one-column': 'Only one column was found. Part name and number by a comma, a semicolon or a tab.',
		'not-text': 'This file is no text. Save the list as CSV in your spreadsheet, or copy its cells and paste them.',
		archived: 'This crew is put away. Take it up again first.'
	}
};
