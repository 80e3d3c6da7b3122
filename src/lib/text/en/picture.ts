/** What a crew gets wrong. */
import type { CourseCell } from '#lib/course/index.ts';
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');
const times = ({ count, of }: { count: number; of: number }) => `${String(count)} of ${String(of)}`;

export const crewPicture = {
	title: 'What goes wrong',
	titleOf: ({ crew }: { crew: string }) => `What goes wrong: ${crew}`,
	back: 'Back to the crew',
	link: 'See what goes wrong',
	linkLead: 'Who gets what wrong, and by which slip. Trainers of this crew see it; it is no part of any record.',
	lead: ({ last }: { last: number }) => `Each square tells how many of the last ${String(last)} answers went wrong. Whoever needs help most comes first.`,
	people: ({ count }: { count: number }) => plural(count, { one: '1 person', other: `${String(count)} people` }),
	nobody: 'Nobody is on the list of this crew yet.',
	noAnswers: 'There are no answers here yet. They come as your people practise.',
	noAnswersFilter: 'No answers fit this choice. Take another scenario, set or time.',

	/* The filter. */
	filter: 'Choose which answers count',
	filterIs: 'Only some answers are counted here.',
	scenario: 'Scenario',
	allScenarios: 'All scenarios and pictures',
	set: 'Practice set',
	allSets: 'All sets, and all other practice',
	from: 'From this day on',
	to: 'Up to this day',
	show: 'Show these answers',
	all: 'Count all answers',
	filterProblems: {
		unknown: 'This is not on the list any more. Choose another.',
		'no-day': 'Write a day like 2026-11-30.',
		'turned-round': 'This day is before the first one. Choose a later day.'
	},

	/* People by cells. */
	tableCaption: ({ last }: { last: number }) => `Wrong answers of the last ${String(last)}, by person and cell`,
	person: 'Person',
	cells: {
		stages: 'Stages of a fall',
		'label-and-mass': 'Label and mass',
		'free-fall': 'Free fall',
		'required-clearance': 'Required clearance',
		'available-and-verdict': 'Available clearance',
		'force-and-limits': 'Force and limits',
		'swing-and-path': 'Swing and path',
		decisions: 'Decision'
	} as Readonly<Record<CourseCell, string>>,
	legend: { wrong: 'wrong: the larger, the more', critical: 'some on the unsafe side', none: 'none wrong', notMet: 'not met yet' },
	fewer: ({ of }: { of: number }) => `of ${String(of)}`,
	/** Read out in a cell. */
	said: ({ wrong, of }: { wrong: number; of: number }) => `${times({ count: wrong, of })} wrong`,
	saidCritical: ({ wrong, of, critical }: { wrong: number; of: number; critical: number }) => `${times({ count: wrong, of })} wrong, ${String(critical)} on the unsafe side`,
	notMet: 'not met',
	scroll: 'Table of people and cells. It scrolls sideways.',

	/* An opened cell. */
	openedHeading: ({ cell }: { cell: string }) => `${cell}: the finer skills`,
	openedCaption: ({ last }: { last: number }) => `Wrong answers of the last ${String(last)} in each finer skill, by person`,
	scrollSkills: 'Table of people and finer skills. It scrolls sideways.',
	openedNone: 'Nobody has answered here yet.',
	close: 'Close this',
	decision: 'Tie off or not',
	skillFrom: ({ name, from }: { name: string; from: string }) => `${name}: ${from}`,
	/** Finer skills of pictures. */
	skills: {
		inspection: 'Inspecting gear',
		harness: 'Harness',
		lanyard: 'Lanyard',
		absorber: 'Absorber',
		connectors: 'Connectors',
		donning: 'Putting it on',
		webbing: 'Webbing',
		stitching: 'Stitching',
		anchorage: 'Choosing the anchorage',
		edges: 'Edges',
		'one-person': 'One person each',
		absorbers: 'One absorber',
		rescue: 'Rescue',
		'twin-legs': 'Twin legs',
		'tie-back': 'Tie-back',
		restraint: 'Restraint',
		stages: 'Stages',
		lengths: 'Lengths',
		force: 'Force',
		speed: 'Speed'
	} as Readonly<Record<string, string>>,
	oneHeading: ({ name, cell }: { name: string; cell: string }) => `${name}, ${cell}`,
	oneNone: 'No answers here yet.',
	oneSlips: 'Slips in this cell:',
	oneNoSlip: 'No one slip explains what went wrong.',
	slipCount: ({ slip, count }: { slip: string; count: number }) => `${slip} (${String(count)})`,

	/* Slips. */
	slipsHeading: 'Slips',
	slipsLead: 'First come those with most answers on the unsafe side.',
	explained: ({ explained, wrong }: { explained: number; wrong: number }) => `${String(explained)} of ${plural(wrong, { one: '1 wrong answer', other: `${String(wrong)} wrong answers` })} look like one slip.`,
	noSlips: 'No wrong answer looks like one slip.',
	moreSlips: ({ count }: { count: number }) => plural(count, { one: '1 more slip', other: `${String(count)} more slips` }),
	answers: ({ count }: { count: number }) => plural(count, { one: '1 answer', other: `${String(count)} answers` }),
	unsafe: ({ count }: { count: number }) => `${String(count)} on the unsafe side`,

	/* An opened slip. */
	examplesOf: ({ name }: { name: string }) => `Examples of ${name} only.`,
	examplesAll: 'Examples of the whole crew',
	noExamples: 'There is no example of this slip here.',
	example: ({ name, day }: { name: string; day: string }) => `${name}, ${day}`,
	asked: 'Asked for',
	wrote: 'Wrote',
	right: 'Right',
	told: 'What the diagnosis says',
	happens: 'What would have happened',
	stillText: ({ duration }: { duration: string }) => `A figure at marks in time, ${duration} in all.`,

	/* The aimed set. */
	aimHeading: 'Practise exactly this',
	aim: ({ count }: { count: number }) => plural(count, { one: 'Make a set from the first slip', other: `Make a set from the first ${String(count)}` }),
	aimLead: ({ count, slips }: { count: number; slips: string }) => `${String(count)} problems. Their numbers bring out: ${slips}.`,
	aimNone: 'A set can be aimed once an answer looks like one slip.',
	aimNoScenario: 'No scenario brings these slips out often enough. Make a set by hand instead.',
	aimRefused: 'The set could not be made. Try once more, or make a set by hand.',
	aimName: ({ slips }: { slips: string }) => `Aimed at: ${slips}`,

	/* Week by week. */
	trendHeading: 'Week by week',
	trendLead: ({ weeks }: { weeks: number }) => `Share of answers that went wrong, for the last ${String(weeks)} weeks at most. A week begins on Monday.`,
	trendTitle: 'Share of wrong answers, week by week',
	trendText: ({ first, firstShare, last, lastShare }: { first: string; firstShare: string; last: string; lastShare: string }) =>
		`In the week of ${first}, ${firstShare} went wrong. In the week of ${last} it was ${lastShare}.`,
	trendTable: 'The same as a table',
	trendColumns: { week: 'Week from', answers: 'Answers', wrong: 'Wrong', critical: 'On the unsafe side' },
	count: ({ count, share }: { count: number; share: string }) => `${String(count)} (${share})`,
	wrongKey: 'wrong',
	criticalKey: 'on the unsafe side'
};
