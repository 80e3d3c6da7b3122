/** Checks, verdicts, the caution, refusals, absences. */
import type { Absence, CheckStatus, OwnCheckId, Refusal, RefusedPlan, Topic } from '#lib/arrest/index.ts';
import type { CheckText } from '../parts.ts';

const by = (amount: string | undefined): string => (amount === undefined ? '' : ` by ${amount}`);
const spare = (amount: string | undefined): string => (amount === undefined ? '' : ` ${amount} to spare.`);

/** Checks that geometry, labels and the plan itself demand. */
export const ownChecks: Readonly<Record<OwnCheckId, CheckText>> = {
	reach: {
		name: 'Reach: can it be rigged?',
		short: 'reach',
		held: ({ amount }) => `The line reaches the D-ring.${spare(amount)}`,
		failed: ({ amount }) => `The line is too short${by(amount)}. It cannot be rigged.`,
		unknown: 'It is not known whether the line reaches the D-ring.'
	},
	'too-heavy': {
		name: 'Mass against the lowest capacity',
		short: 'too heavy for the gear',
		held: ({ amount }) => `The mass is within the lowest capacity.${spare(amount)}`,
		failed: ({ amount }) => `The mass is over the lowest capacity${by(amount)}.`,
		unknown: 'The mass or a capacity is not known.'
	},
	'too-light': {
		name: 'Mass against the least on the label',
		short: 'too light for the absorber',
		held: ({ amount }) => `The mass is above the least on the label.${spare(amount)}`,
		failed: ({ amount }) => `The mass is below the least on the label${by(amount)}. The pull can be too hard.`,
		unknown: 'The mass is not known.'
	},
	'label-free-fall': {
		name: 'Free fall against the label',
		short: 'free fall beyond the label',
		held: ({ amount }) => `The free fall is within the label.${spare(amount)}`,
		failed: ({ amount }) => `The free fall is beyond the label${by(amount)}. Its figures do not hold.`,
		unknown: 'The free fall is not known.'
	},
	clearance: {
		name: 'Clearance: needed against available',
		short: 'clearance',
		held: ({ amount }) => `There is enough clearance.${spare(amount)}`,
		failed: ({ amount }) => `The clearance is short${by(amount)}.`,
		unknown: 'The required clearance or the available clearance is not known.'
	},
	connectors: {
		name: 'Connectors made for each other',
		short: 'connectors',
		held: () => 'All connectors that meet are made for each other.',
		failed: () => 'Two connectors meet that are not made for each other.',
		unknown: 'It is not known whether the connectors fit each other.'
	},
	rescue: {
		name: 'Rescue arranged',
		short: 'rescue',
		held: () => 'Prompt rescue is arranged.',
		failed: () => 'No rescue is arranged.',
		unknown: 'It is not known whether a rescue is arranged.'
	}
};

/** Checks of a rule table, by what they are about. */
export const ruleChecks: Readonly<Record<Topic, CheckText>> = {
	reach: {
		name: 'Reach by the rule here',
		short: 'reach',
		held: ({ amount }) => `The reach holds.${spare(amount)}`,
		failed: ({ amount }) => `The reach is missed${by(amount)}.`,
		unknown: 'The reach is not known.'
	},
	capacity: {
		name: 'Mass by the rule here',
		short: 'mass beyond the rule',
		held: ({ amount }) => `The mass is within the rule.${spare(amount)}`,
		failed: ({ amount }) => `The mass is beyond the rule${by(amount)}.`,
		unknown: 'It is not known whether the rule admits this mass.'
	},
	'free-fall': {
		name: 'Free fall by the rule here',
		short: 'free fall',
		held: ({ amount }) => `The free fall is within the rule.${spare(amount)}`,
		failed: ({ amount }) => `The free fall is over the limit${by(amount)}.`,
		unknown: 'It is not known whether the free fall is within the rule.'
	},
	clearance: {
		name: 'No contact with a lower level',
		short: 'contact with a lower level',
		held: ({ amount }) => `The body meets nothing below.${spare(amount)}`,
		failed: ({ amount }) => `The body would meet what is below. It is short${by(amount)}.`,
		unknown: 'It is not known whether the body would meet what is below.'
	},
	force: {
		name: 'Arrest force by the rule here',
		short: 'arrest force',
		held: ({ amount }) => `The arrest force is within the rule.${spare(amount)}`,
		failed: ({ amount }) => `The arrest force is over the limit${by(amount)}.`,
		unknown: 'The greatest arrest force is not known.'
	},
	deceleration: {
		name: 'Deceleration distance by the rule here',
		short: 'deceleration distance',
		held: ({ amount }) => `The stated distance is within the rule.${spare(amount)}`,
		failed: ({ amount }) => `The stated distance is over the limit${by(amount)}.`,
		unknown: 'This needs the maker’s statement for this mass and fall.'
	},
	'anchorage-strength': {
		name: 'Strength of the anchorage',
		short: 'anchorage strength',
		held: ({ amount }) => `The anchorage is strong enough.${spare(amount)}`,
		failed: ({ amount }) => `The anchorage is too weak${by(amount)}.`,
		unknown: 'It is not known whether the anchorage is strong enough.'
	},
	'anchorage-height': {
		name: 'Height of the anchorage',
		short: 'anchorage height',
		held: ({ amount }) => `The anchorage is high enough.${spare(amount)}`,
		failed: ({ amount }) => `The anchorage is too low${by(amount)}.`,
		unknown: 'It is not known whether the anchorage is high enough.'
	},
	'lanyard-length': {
		name: 'Length of the lanyard',
		short: 'lanyard length',
		held: ({ amount }) => `The lanyard is within the rule.${spare(amount)}`,
		failed: ({ amount }) => `The lanyard is too long${by(amount)}.`,
		unknown: 'The length of the lanyard is not known.'
	},
	connectors: {
		name: 'Connectors by the rule here',
		short: 'connectors',
		held: () => 'All connectors that meet are made for each other.',
		failed: () => 'Two connectors meet that are not made for each other.',
		unknown: 'It is not known whether the connectors fit each other.'
	},
	swing: {
		name: 'Sideways distance by the rule here',
		short: 'offset',
		held: ({ amount }) => `The offset is within the rule.${spare(amount)}`,
		failed: ({ amount }) => `The offset is over the limit${by(amount)}. The swing is too wide.`,
		unknown: 'The offset is not known.'
	},
	edge: {
		name: 'The line and the edge',
		short: 'line over an edge',
		held: () => 'The line meets no edge.',
		failed: () => 'The line meets an edge that can cut it.',
		unknown: 'It is not known whether the line meets an edge.'
	},
	rescue: {
		name: 'Rescue by the rule here',
		short: 'rescue',
		held: () => 'Prompt rescue is arranged.',
		failed: () => 'No rescue is arranged.',
		unknown: 'It is not known whether a rescue is arranged.'
	}
};

export const status: Readonly<Record<CheckStatus, string>> = { held: 'Held', failed: 'Failed', unknown: 'Not known' };

/** Systems that are refused, by name. */
export const systems: Readonly<Record<RefusedPlan['system'], string>> = {
	'self-retracting-device': 'self-retracting device',
	'horizontal-lifeline': 'horizontal lifeline',
	'vertical-lifeline': 'vertical lifeline',
	'travel-restraint': 'travel restraint',
	'over-edge': 'line over an edge',
	'powered-platform': 'powered platform',
	'climbing-rail': 'climbing rail',
	'rope-access': 'rope access',
	positioning: 'work positioning',
	'yielding-anchorage': 'anchorage that gives way'
};

/** Why a plan is not worked out at all. */
export const refusals: Readonly<Record<Refusal['why'], (p: { readonly what: string }) => string>> = {
	'line-over-edge': () => 'The line would run over an edge. Such plans need gear made for edges and are not worked out here.',
	'away-from-edge': () => 'The worker stands away from the edge, so the line would run over it. Such plans are not worked out here.',
	'system-not-built': ({ what }) => `This kind of system is not built in yet: ${what}.`,
	'system-outside-scope': ({ what }) => `This kind of system is not part of this program: ${what}.`,
	'no-such-table': ({ what }) => `There is no table of this name: ${what}.`
};

/** Why a quantity has no value. */
export const absences: Readonly<Record<Absence['why'], (p: { readonly what: string }) => string>> = {
	missing: ({ what }) => `Not known: ${what}.`,
	'not-rigged': () => 'The line does not reach the D-ring, so nothing can be rigged.',
	'outside-label': () => 'It cannot be stated from this label: the mass or the free fall is outside its range.',
	'does-not-stop': () => 'The average force is less than the weight. Such a fall does not stop.'
};
