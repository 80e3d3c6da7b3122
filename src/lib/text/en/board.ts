/** The board view: one problem, large, for a class. */
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const board = {
	title: 'Board',
	lead: 'Choose a site. The class sees it large, with fresh numbers.',
	sites: 'Sites',
	noSites: 'There is no site to show yet.',
	otherSite: 'Other site',
	/** In place of the name of the person in the story. */
	worker: 'the worker',
	noScript: 'The board needs scripts. They are switched off in this browser.',

	/* What is shown. */
	stops: { problem: 'Site', class: 'The class says', answer: 'Right number', fall: 'The fall' },
	stopOf: ({ n, of }: { n: number; of: number }) => `${String(n)} of ${String(of)}`,
	picture: 'Drawing',
	words: 'Words',
	whichAsk: 'Question',
	call: 'A number the class says',
	callHint: 'Enter adds it. Escape goes back to the keys.',
	callButton: 'Add',
	calledHeading: 'Called out',
	noneCalled: 'Nothing yet.',
	voices: ({ count }: { count: number }) => plural(count, { one: '1 voice', other: `${String(count)} voices` }),
	more: ({ value }: { value: string }) => `One voice more for ${value}`,
	fewer: ({ value }: { value: string }) => `One voice less for ${value}`,
	full: 'The list is full. Take one off first.',
	stepOf: ({ n, of }: { n: number; of: number }) => `Step ${String(n)} of ${String(of)}`,
	noWorking: 'There is no working for this one.',
	calledBy: ({ value, count }: { value: string; count: number }) =>
		plural(count, { one: `${value}, said by 1`, other: `${value}, said by ${String(count)}` }),
	playOf: 'Whose fall is played',
	noFall: 'This fall cannot be shown. Nothing tells over what length it would stop.',
	siteOnly: 'This site alone',
	rightDecision: ({ decision }: { decision: string }) => `Right is: ${decision}.`,

	/* Keys. */
	keysOn: 'Keys are on',
	keysOff: 'Keys are off',
	deeds: { next: 'Next step', back: 'Step back', problem: 'Next problem', play: 'Play', full: 'Full screen' },
	keyNames: { next: '→', back: '←', problem: 'N', play: 'P', full: 'F' },
	leaveFull: 'Leave full screen',

	/* A plan of one's own. */
	enter: 'Enter a plan',
	change: 'Change the plan',
	show: 'Show the plan',
	drop: 'Back to the drawn plan',
	ownPlan: 'Plan entered here',
	watermark: 'training',
	forTraining: 'For training. This is no site plan.',
	notPrinted: 'The drawing is not printed. A plan that was entered for training is no site plan.',
	enterHeading: 'Enter a plan',
	enterHint: 'Change any number. The drawing follows when you leave the field.',
	groups: { drawing: 'In the drawing', gear: 'On the gear', person: 'Person and rule', facts: 'What is known' },
	wrongHeading: 'The drawing waits. Look at the marked fields.',
	notWhole: 'These numbers do not go together.',
	range: ({ from, to }: { from: string; to: string }) => `That cannot be. Write a number from ${from} to ${to}.`,
	/** Entries that do not go together. */
	clashes: {
		'above-head': 'The D-ring would be above the head. Check it against the body height.',
		'now-missing': 'Write how high the D-ring is in this posture.',
		'now-above': 'A posture can only lower the D-ring. Write a lower number.',
		'mass-range': 'The least mass is above the greatest. Check both.',
		other: 'This does not fit the rest of the plan. Check it.'
	},
	facts: {
		rescue: { name: 'Rescue', states: { arranged: 'arranged', 'not-arranged': 'not arranged', unknown: 'not known' } },
		connectors: { name: 'Connectors made for each other', states: { yes: 'yes', no: 'no', unknown: 'not known' } },
		posture: { name: 'Posture', states: { standing: 'standing', kneeling: 'kneeling' } },
		condition: { name: 'Absorber', states: { dry: 'dry', 'wet-or-frozen': 'wet or frozen' } },
		persons: { name: 'Persons on this anchorage', states: { '1': '1', '2': '2', '3': '3', '4': '4' } },
		edge: { name: 'The line runs over an edge', states: { no: 'no', yes: 'yes' } },
		direction: { name: 'To one side', states: { 'along-edge': 'along the edge', 'away-from-edge': 'away from the edge' } },
		obstacle: { name: 'Thing below', states: { there: 'stands there', 'can-come': 'can come', none: 'is not there' } }
	} as Readonly<Record<string, { readonly name: string; readonly states: Readonly<Record<string, string>> }>>
};
