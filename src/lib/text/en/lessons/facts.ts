/** What is said of each fact that a rule or a practice states. The number comes from the table, with its citation. */
import type { FactId } from '#lib/course/index.ts';
import type { DemandText, FactText } from '../../lesson-text.ts';

/** Facts that have no number. */
export type DemandId = 'anchorage-height' | 'one-person' | 'no-contact' | 'restraint-first' | 'edges' | 'harness' | 'connectors' | 'rescue' | 'training';

export const facts: Readonly<Record<Exclude<FactId, DemandId>, FactText>> = {
	'free-fall-limit': {
		name: 'Free fall, at most',
		states: ({ value }) => `Here the free fall may be ${value} at most.`,
		none: 'For a lanyard with absorber, this table states no number for the free fall. The label of the device does.'
	},
	'force-limit': {
		name: 'Arrest force, at most',
		states: ({ value }) => `Here the arrest force may be ${value} at most.`,
		none: 'This table states no number for the arrest force. The label of the device does.'
	},
	'deceleration-limit': {
		name: 'Deceleration distance, at most',
		states: ({ value }) => `Here the deceleration distance may be ${value} at most.`,
		none: 'This table states no number for the deceleration distance.'
	},
	'mass-limit': {
		name: 'Mass on the harness',
		states: ({ value }) => `Here the mass with tools may be ${value} at most.`,
		beyond: ({ value }) => `Here the mass with tools must be below ${value}.`,
		none: 'This table states no number for the mass. The labels of the gear do.'
	},
	'lanyard-limit': {
		name: 'Lanyard length, at most',
		states: ({ value }) => `Here a lanyard may be ${value} long at most.`,
		none: 'This table states no number for the lanyard length.'
	},
	'anchorage-strength': {
		name: 'Strength of the anchorage',
		states: ({ value }) => `Here an anchorage for one person must hold ${value} at least.`,
		none: 'This table states no number for the strength of an anchorage.'
	},
	'sideways-limit': {
		name: 'Offset, at most',
		states: ({ value }) => `Here the offset may be ${value} at most.`,
		none: 'This table states no number for the offset. The swing counts all the same.'
	},
	'duty-height': {
		name: 'From what height',
		states: ({ value }) => `Here the duty to protect against a fall begins at ${value}.`,
		beyond: ({ value }) => `Here the duty to protect against a fall begins above ${value}.`,
		none: 'This table states no height from which the duty begins.'
	},
	margin: {
		name: 'Margin',
		states: ({ value }) => `Practice here keeps a margin of ${value}.`,
		none: 'This practice states no margin.'
	},
	'slide-and-stretch': {
		name: 'Slide and stretch',
		states: ({ value }) => `Where the harness states nothing, practice here counts ${value} for slide and stretch.`,
		none: 'This practice states no slide and stretch of its own. Take the harness’s own, or count the full body height.'
	},
	'd-ring-height': {
		name: 'D-ring height',
		states: ({ value }) => `Where nobody has measured it, practice here counts ${value} for the D-ring height.`,
		none: 'This practice states no D-ring height. Measure it.'
	},
	'body-height': {
		name: 'Body height',
		states: ({ value }) => `Practice here counts ${value} for the full body height.`,
		none: 'This practice does not count the full body height. It counts the D-ring height.'
	}
};

/** What rules ask for without a number. */
export const demands: Readonly<Record<DemandId, DemandText>> = {
	'anchorage-height': {
		name: 'Height of the anchorage',
		asked: 'The rule here asks for an anchorage that is high enough.',
		none: 'This table asks for no height of the anchorage. A high one is still better.'
	},
	'one-person': {
		name: 'One person to an anchorage',
		asked: 'The rule here allows one person to an anchorage.',
		none: 'This table does not limit the persons as such. The strength of the anchorage does, and its approval.'
	},
	'no-contact': {
		name: 'Nothing may be hit',
		asked: 'The rule here asks that the body meets nothing below.',
		none: 'This table does not say it. The body must meet nothing below all the same.'
	},
	'restraint-first': {
		name: 'What comes first',
		asked: 'The rule here puts other measures before fall arrest.',
		none: 'This table sets no order of measures. Not to fall is still the better way.'
	},
	edges: {
		name: 'Edges',
		asked: 'The rule here bars fall arrest where an edge may cut the line.',
		none: 'This table says nothing about edges. The maker’s instructions do.'
	},
	harness: {
		name: 'Harness',
		asked: 'The rule here asks for a full body harness.',
		none: 'This table does not name the harness. Fall arrest still needs a full body harness.'
	},
	connectors: {
		name: 'Connectors',
		asked: 'The rule here asks for connectors that fit what they hold.',
		none: 'This table does not name the connectors. They must fit all the same.'
	},
	rescue: {
		name: 'Rescue',
		asked: 'The rule here asks that a rescue is arranged.',
		none: 'This table does not name the rescue. Do not begin without one.'
	},
	training: {
		name: 'Training',
		asked: 'The rule here asks for training.',
		none: 'This table does not name the training.'
	}
};
