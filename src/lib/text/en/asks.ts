/** The questions, and from where and by which custom they are meant. */
import type { BodyCustom, Datum } from '#lib/arrest/index.ts';
import type { NumberAsk } from '#lib/scenario/index.ts';
import type { AskText, Explained } from '../parts.ts';

/** Where a clearance is measured from. */
export const datums: Readonly<Record<Datum, Explained>> = {
	anchorage: { name: 'From the anchorage', what: 'From the point on the structure down.' },
	connector: { name: 'From the connector', what: 'From the lower end of the anchorage connector down.' },
	surface: { name: 'From the walking surface', what: 'From the surface the worker walks on down.' },
	'd-ring': { name: 'From the D-ring', what: 'From the D-ring down, where it is before the fall.' }
};

/** How the body is counted into a clearance. */
export const customs: Readonly<Record<BodyCustom, Explained>> = {
	'd-ring-and-stretch': {
		name: 'D-ring height, slide and stretch apart',
		what: 'The body counts from the D-ring down. Slide and stretch are added.'
	},
	'full-height': {
		name: 'Full body height',
		what: 'The body counts with its full height. Only stretch that lifts the D-ring above the head is added.'
	}
};

/** Questions with one datum. */
export const asks: Readonly<Record<Exclude<NumberAsk['quantity'], 'requiredClearance' | 'availableClearance'>, AskText>> = {
	freeFall: {
		question: ({ name }) => `How far does ${name} fall freely?`,
		help: () => 'Until the lanyard pulls tight.'
	},
	swingDrop: {
		question: ({ name }) => `How much deeper does the swing take ${name}?`,
		help: () => 'From where the line is tight down to the low point of the swing.'
	},
	massAttached: {
		question: ({ name }) => `How much mass hangs on ${name}’s harness?`,
		help: () => 'All that falls with the person.'
	},
	lowestCapacity: {
		question: () => 'How much mass may this gear carry?',
		help: () => 'All its parts together.'
	},
	arrestForce: {
		question: ({ name }) => `How hard can the stop pull on ${name}, at most?`,
		help: () => 'As the label states it for this case.'
	},
	expectedElongation: {
		question: () => 'How far is the absorber likely to run out?',
		help: () => 'From the average force. It never shortens a clearance.'
	},
	bodyWeights: {
		question: ({ name }) => `How many times ${name}’s weight is the pull?`,
		help: () => 'The arrest force over the weight of all that hangs on the harness.'
	},
	reachDistance: {
		question: ({ anchorage }) => `How far is it from the D-ring to ${anchorage}?`,
		help: () => 'In a straight line.'
	}
};

export const requiredAsks: Readonly<Record<Datum, AskText>> = {
	anchorage: {
		question: ({ anchorage }) => `How much clearance must there be below ${anchorage}?`,
		help: ({ name }) => `From there down to the first thing ${name} could meet.`
	},
	connector: {
		question: () => 'How much clearance must there be below the anchorage connector?',
		help: ({ name }) => `From its lower end down to the first thing ${name} could meet.`
	},
	surface: {
		question: ({ surface }) => `How much clearance must there be below ${surface}?`,
		help: ({ name, surface }) => `From ${surface} down to the first thing ${name} could meet.`
	},
	'd-ring': {
		question: ({ name }) => `How much clearance must there be below ${name}’s D-ring?`,
		help: () => 'From where the D-ring is before the fall.'
	}
};

export const availableAsks: Readonly<Record<Datum, AskText>> = {
	anchorage: {
		question: ({ anchorage }) => `How much clearance is there below ${anchorage}?`,
		help: ({ name }) => `From there down to the first thing ${name} could meet.`
	},
	connector: {
		question: () => 'How much clearance is there below the anchorage connector?',
		help: ({ name }) => `From its lower end down to the first thing ${name} could meet.`
	},
	surface: {
		question: ({ surface }) => `How much clearance is there below ${surface}?`,
		help: ({ name, surface }) => `From ${surface} down to the first thing ${name} could meet.`
	},
	'd-ring': {
		question: ({ name }) => `How much clearance is there below ${name}’s D-ring?`,
		help: () => 'From where the D-ring is before the fall.'
	}
};

/** The other questions, and the answers they offer. */
export const decision = {
	question: ({ name }: { name: string }) => `Would you let ${name} tie off here?`,
	help: 'It counts only together with your numbers.',
	tieOff: 'Tie off',
	doNotTieOff: 'Do not tie off',
	notStated: 'It cannot be stated from this label',
	notStatedHelp: 'Choose this when the label does not hold for the case.'
};
