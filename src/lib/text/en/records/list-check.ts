/** "Who on this list is current today?": the question that a gate asks. */
import { pluralOf } from '../../plural.ts';

const plural = pluralOf('en');

export const listCheck = {
	title: 'Who on a list is current today',
	/** On the page of everyone. */
	short: 'Ask a list',
	way: 'Who of a list of names or numbers is current today.',
	back: 'Back to everyone',
	lead: 'Paste names or numbers, and see whose training is valid today.',
	paste: 'Names or numbers, one a line',
	hint: ({ most }: { most: string }) => `Lines of a spreadsheet are fine too: name and number in one line. At most ${most} lines.`,
	button: 'Ask',
	otherHeading: 'Ask another list',
	summary: ({ n, of, day }: { n: string; of: string; day: string }) => `${n} of ${of} are current today, ${day}.`,
	byLine: ({ name }: { name: string }) => `By the records of ${name}.`,
	repeated: ({ count }: { count: number }) => plural(count, { one: '1 line stood there twice. It counts once.', other: `${String(count)} lines stood there before. Each counts once.` }),
	print: 'To keep the answer, print this page.',
	notHeading: ({ count }: { count: number }) => `Not current, or not clear: ${String(count)}`,
	currentHeading: ({ count }: { count: number }) => `Current today: ${String(count)}`,
	columns: { line: 'Line', asked: 'On your list', found: 'In the records', until: 'Valid until' },
	captions: { not: 'Lines that are not current or not clear', current: 'Lines that are current' },
	notFound: 'Not found',
	notFoundWhat: 'Nobody here has this name or this number.',
	several: ({ count }: { count: number }) => `${String(count)} people have this name`,
	severalWhat: 'Ask for the number.',
	more: ({ count }: { count: number }) => `and ${String(count)} more`,
	twoPeople: 'Name and number do not belong together',
	refusals: {
		empty: 'Paste at least one name or one number.',
		'too-many': 'This list has too many lines. Ask it in parts.',
		'too-long': 'This list is too long. Ask it in parts.'
	}
};
