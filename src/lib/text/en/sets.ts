/** Practice sets: what trainers make, assign and watch. */
import type { Cell } from '#lib/scenario/index.ts';
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const sets = {
	title: 'Practice sets',
	all: 'All practice sets',

	/* The list. */
	lead: 'A set is a few site problems that you hand out. People find it on their start page.',
	none: 'There is no set yet.',
	makeLink: 'Make a set',
	awayHeading: 'Sets put away',
	notAssigned: 'Not assigned to anybody yet.',
	assigned: ({ name, due }: { name: string; due: string }) => `Assigned to ${name}, ${due}`,
	more: ({ count }: { count: number }) => `${String(count)} more`,
	by: ({ name }: { name: string }) => `by ${name}`,
	due: ({ day }: { day: string }) => `due on ${day}`,
	wasDue: ({ day }: { day: string }) => `was due on ${day}`,
	noDue: 'no due day',

	/* What is in a set. */
	size: ({ count, scenarios }: { count: number; scenarios: string }) => `${plural(count, { one: '1 problem', other: `${String(count)} problems` })}, ${scenarios}`,
	scenarios: ({ count }: { count: number }) => plural(count, { one: '1 scenario', other: `${String(count)} scenarios` }),
	contentHeading: 'What is in it',
	madeOn: ({ name, day }: { name: string; day: string }) => `Made by ${name} on ${day}.`,
	contentColumns: { scenario: 'Scenario', asks: 'Asks for' },
	contentCaption: 'The scenarios of this set and what they ask for',
	gone: 'a scenario that cannot be shown any more',
	passed: ({ right, of, unsafe }: { right: number; of: number; unsafe: string }) => `Passed with at least ${String(right)} of ${String(of)} right, and ${unsafe} on the unsafe side.`,
	unsafeAtMost: ({ count }: { count: number }) => (count === 0 ? 'none' : `at most ${String(count)}`),
	untilPassed: 'Whoever does not pass gets a new round with fresh problems.',
	alike: 'Everyone gets the same problems.',
	apart: 'Each person gets problems of their own.',
	inOwnLanguage: 'In each person’s own language.',
	inLanguage: ({ language }: { language: string }) => `In this language: ${language}.`,
	aimedAt: ({ slips }: { slips: string }) => `Aimed at: ${slips}.`,

	/* What is practised: short names of the cells. */
	skills: {
		'label-and-mass': 'label and mass',
		'free-fall': 'free fall',
		'required-clearance': 'required clearance',
		'available-and-verdict': 'available clearance',
		'force-and-limits': 'force and limits',
		'swing-and-path': 'swing and path',
		decisions: 'decision'
	} as Readonly<Record<Cell, string>>,
	/** A decision in a list of what is asked. */
	decision: 'decision',

	/* Making one. */
	newTitle: 'Make a practice set',
	newLead: 'Choose what to practise and where. The numbers are drawn when the set is handed out.',
	copyOf: ({ name }: { name: string }) => `Copy of ${name}`,
	leftOut: ({ count }: { count: number }) =>
		plural(count, { one: '1 scenario of that set is no longer offered and was left out.', other: `${String(count)} scenarios of that set are no longer offered and were left out.` }),
	skillsHeading: 'What to practise',
	skillsLead: 'Tick what is to be asked. With nothing ticked, all is asked. A decision always comes with its numbers.',
	scenariosHeading: 'Where',
	units: 'Units',
	unitChoices: { metric: 'Metres and kilograms', us: 'Feet and pounds', all: 'Both' },
	difficulty: 'How hard',
	difficulties: { all: 'Any', easy: 'Easy', middle: 'Middle', hard: 'Hard' },
	/** Behind the difficulty, of one scenario. */
	unitsOf: { metric: 'metres', us: 'feet' },
	own: 'your own',
	narrow: 'Narrow the list',
	shown: ({ n, of }: { n: number; of: number }) => `${String(n)} of ${String(of)} scenarios fit.`,
	noneFits: 'No scenario fits. Choose other units, another level or more to practise.',
	/** Of one scenario: what it is like, and what is asked of it. */
	asksFor: ({ what, asks }: { what: string; asks: string }) => `${what}: ${asks}`,
	asksNothing: 'nothing that you chose',
	aimsHeading: 'Aimed at these slips',
	aimsLead: 'The numbers are drawn so that such a slip shows.',
	name: 'Name of the set',
	nameHint: 'People see it. Say what it is about.',
	count: 'How many problems',
	countHint: ({ of }: { of: number }) => `From 1 to ${String(of)}. The scenarios take turns.`,
	ruleHeading: 'Passed with',
	right: 'Right, at least',
	unsafe: 'On the unsafe side, at most',
	unsafeHint: 'A number or a choice that would let somebody tie off where the fall does not end well.',
	sameHeading: 'Which numbers',
	sameChoices: { apart: 'Each person their own', alike: 'The same for everyone' },
	sameHint: 'The same ones can be talked through together.',
	language: 'Language',
	ownLanguage: 'Each person’s own',
	makeButton: 'Make the set',
	chosen: ({ scenarios, problems }: { scenarios: string; problems: string }) => `Chosen: ${scenarios}. ${problems}.`,
	problems: ({ count }: { count: number }) => plural(count, { one: '1 problem', other: `${String(count)} problems` }),
	refused: {
		'no-scenario': 'Choose at least one scenario.',
		'too-many': 'These are too many scenarios for one set. Take some out.',
		'asks-nothing': 'This scenario asks for nothing that you chose. Take it out, or practise more.',
		'not-whole': 'Write a whole number.',
		'count-bounds': 'This number of problems cannot be handed out. Write one from 1 to 40.',
		'right-bounds': 'Write a number from 1 to the number of problems.',
		'unsafe-bounds': 'Write a number from 0 to the number of problems.',
		gone: 'Something you chose is no longer there. Look at the list once more.'
	},

	/* One set. */
	preview: 'See it as they do',
	paper: 'On paper',
	copy: 'Make a copy',
	putAway: 'Put this set away',
	putAwayLead: 'Once put away, it leaves your list. Whoever has it keeps it until you recall it.',
	takeUp: 'Take this set up again',
	isAway: 'This set is put away. Take it up again to assign it.',
	assignHeading: 'Assign it',
	assignLead: 'Whoever joins a crew later finds its open sets too.',
	crews: 'Crews',
	people: 'Single people',
	peopleOf: ({ name, count }: { name: string; count: number }) => `${name}: ${plural(count, { one: '1 person', other: `${String(count)} people` })}`,
	noCrews: 'You have no crew that works yet.',
	hasIt: ({ due }: { due: string }) => `has it, ${due}`,
	dueDay: 'Due day',
	dueHint: 'Leave it empty if there is none. The day counts to its end, by the clock of your sites.',
	assignButton: 'Assign',
	recall: 'Recall',
	recallOf: ({ name }: { name: string }) => `Recall from ${name}`,
	recallHeading: ({ name }: { name: string }) => `Recall this set from ${name}?`,
	recallLead: 'It leaves their start page. What was answered stays.',
	recallButton: 'Recall it',
	keep: 'Leave it assigned',
	recalled: 'Recalled',
	refusedAssign: {
		nobody: 'Choose a crew or a person.',
		'too-many': 'These are too many at once. Assign it in several goes.',
		crew: 'A crew that you chose is not there any more.',
		person: 'A person whom you chose is not there any more.',
		day: 'Write a day, as in 2026-05-31.',
		'day-past': 'This day is over. Choose today or a later one.',
		'has-it': 'This set is with some of them already, with another due day. Recall it first, or leave them out.',
		archived: 'This set is put away. Take it up again first.'
	},

	/* How far they are. */
	statesHeading: 'How far everyone is',
	states: { 'not-started': 'not started', done: 'done, passed' },
	late: 'late',
	counts: { 'not-started': 'Not started', 'under-way': 'Under way', done: 'Done', late: 'Late' },
	countsRow: ({ name, count }: { name: string; count: number }) => `${name}: ${String(count)}`,
	nobody: 'Nobody is on the list of this crew.',
	single: 'Single people',
	columns: { name: 'Name', state: 'State', answers: 'Answers', last: 'Last answer' },
	caption: ({ name }: { name: string }) => `How far ${name} is with this set`,
	underWay: ({ n, of }: { n: number; of: number }) => `under way, ${String(n)} of ${String(of)}`,
	again: ({ n }: { n: number }) => `round ${String(n)}, none passed before`,
	rightOf: ({ right, of }: { right: number; of: number }) => `${String(right)} right of ${String(of)}`,
	unsafeCount: ({ count }: { count: number }) => `${String(count)} on the unsafe side`,
	noAnswer: 'no answer yet',
	live: ({ time }: { time: string }) => `Live. Last change ${time}.`,
	still: ({ time }: { time: string }) => `As of ${time}. Load the page again to see more.`,
	notLive: ({ time }: { time: string }) => `Not live now: this is how it was at ${time}. The page keeps trying.`,
	ended: ({ time }: { time: string }) => `Not live any more: this is how it was at ${time}. Load the page again.`,
	summary: ({ done, underWay, of }: { done: number; underWay: number; of: number }) => `Done: ${String(done)} of ${String(of)}. Under way: ${String(underWay)}.`,

	/* What was done. */
	did: {
		made: 'The set is made. Assign it now.',
		assigned: 'The set is assigned. They find it on their start page.',
		recalled: 'The set is recalled.',
		'put-away': 'The set is put away.',
		'taken-up': 'The set is taken up again.'
	},

	/* Seeing it as they do. */
	previewTitle: 'Preview',
	previewStrip: ({ n, of }: { n: number; of: number }) => `Preview: problem ${String(n)} of ${String(of)}`,
	previewLead: 'Nothing here is stored or counted.',
	previewApart: 'Each person gets other numbers.',
	previous: 'Previous',
	next: 'Next',
	nextProblem: 'Next problem of the set',
	toSet: 'Back to the set',
	notShown: 'This problem cannot be shown: its scenario is no longer there.'
};
