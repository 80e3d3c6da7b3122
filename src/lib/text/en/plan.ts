/** The plan as it is shown: plates, facts, things below, the drawing's text equivalent. */
import type { LanyardPlan } from '#lib/arrest/index.ts';
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const plan = {
	/** Plates of the gear, with how many there are. */
	plates: {
		absorber: 'Lanyard with energy absorber',
		lanyard: 'Lanyard without absorber',
		harness: 'Full body harness',
		connectors: 'Connectors',
		anchorage: 'Anchorage',
		worker: 'Worker',
		site: 'Site'
	},
	plateOf: ({ n, of }: { n: number; of: number }) => `label ${String(n)} of ${String(of)}`,
	upTo: ({ value }: { value: string }) => `up to ${value}`,
	range: ({ from, to }: { from: string; to: string }) => `${from} to ${to}`,
	userWithTools: 'User with tools',
	class: 'Class',
	/** Where a number comes from when the plan does not state it. */
	fromPractice: ({ table }: { table: string }) => `from practice: ${table}`,
	fromClass: ({ name }: { name: string }) => `from the class: ${name}`,
	ruleHere: 'Rule here',
	keepMargin: ({ value }: { value: string }) => `Keep a margin of ${value} under the soles.`,
	/** Facts that are no numbers. */
	posture: { standing: 'standing', kneeling: 'kneeling' } as Readonly<Record<LanyardPlan['worker']['posture'], string>>,
	condition: { dry: 'dry', 'wet-or-frozen': 'wet or frozen' } as Readonly<
		Record<NonNullable<LanyardPlan['absorber']>['condition'], string>
	>,
	rescue: {
		arranged: 'Prompt rescue is arranged.',
		'not-arranged': 'No rescue is arranged.',
		unknown: 'It is not known whether a rescue is arranged.'
	} as Readonly<Record<LanyardPlan['rescue'], string>>,
	compatible: {
		yes: 'The connectors are made for each other.',
		no: 'The connectors are not made for each other.',
		unknown: 'It is not known whether the connectors fit each other.'
	} as Readonly<Record<LanyardPlan['connectors']['compatible'], string>>,
	connectorLies: { hanging: 'hangs', slack: 'lies slack' },
	persons: ({ count }: { count: number }) =>
		plural(count, { one: 'One person on this anchorage.', other: `${String(count)} persons on this anchorage.` }),
	/** Things below, named with their article. */
	obstacle: {
		always: ({ thing }: { thing: string }) => `On the way down: ${thing}.`,
		there: ({ thing }: { thing: string }) => `There now, but not always: ${thing}.`,
		canCome: ({ thing }: { thing: string }) => `Not there now, but it can come: ${thing}.`,
		off: ({ thing }: { thing: string }) => `Off to one side: ${thing}.`
	},
	sometimes: 'at times',
	/** The drawing in words. */
	drawing: {
		title: ({ site }: { site: string }) => `Drawing of the site: ${site}`,
		description: ({ name, surface, lowerLevel }: { name: string; surface: string; lowerLevel: string }) =>
			`Side view, to scale. ${name} works on ${surface}, above ${lowerLevel}. All numbers stand in the list.`,
		scale: ({ length, unit }: { length: string; unit: string }) => `${length}. Elevation to scale, lengths in ${unit}.`,
		units: { metric: 'metres', 'us-decimal': 'feet', 'us-inch': 'feet and inches' }
	},
	list: {
		heading: 'All numbers as a list',
		given: 'What',
		value: 'Value',
		where: 'Where it stands',
		inDrawing: 'drawing',
		onLabel: 'label',
		inStory: 'story',
		inRule: 'rule here'
	}
};

/** What labels and instructions state, by the id of the field in shared/equipment. */
export const labelFields = {
	maker: 'Maker',
	'type-and-serial': 'Type and serial number',
	'standard-and-class': 'Standard and class',
	'year-of-make': 'Made in',
	'mass-range': 'User with tools, from and to',
	'free-fall-max': 'Free fall, at most',
	'deployment-max': 'Elongation, at most',
	'deployment-factor': 'Elongation factor',
	'average-force': 'Average force',
	'arrest-force-max': 'Arrest force, at most',
	length: 'Length',
	strength: 'Strength',
	'anchorage-needs': 'What the anchorage must hold',
	'clearance-below': 'Clearance needed below',
	'read-the-instructions': 'Read the instructions',
	'inspection-record': 'Record of inspections'
};
