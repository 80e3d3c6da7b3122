/** Numbers that can be read off story, drawing or label. */
import type { FixedGivenId } from '#lib/arrest/index.ts';
import type { GivenText } from '../parts.ts';

export const givens: Readonly<Record<FixedGivenId, GivenText>> = {
	lanyardLength: {
		name: 'Lanyard length, hook to hook',
		short: 'lanyard',
		the: 'the lanyard length',
		what: 'The whole lanyard with its hooks, the absorber closed.'
	},
	connectorLength: {
		name: 'Anchorage connector',
		short: 'connector',
		the: 'the length of the anchorage connector',
		what: 'The strap or sling between the structure and the lanyard, as long as it hangs.'
	},
	dRingHeight: {
		name: 'D-ring height, standing',
		short: 'D-ring',
		the: 'the D-ring height',
		what: 'From the soles up to the D-ring on the back, standing.'
	},
	dRingNow: {
		name: 'D-ring height, kneeling',
		short: 'D-ring, kneeling',
		the: 'the D-ring height in this posture',
		what: 'From the standing place up to the D-ring, in the posture of the work.'
	},
	standingHeight: {
		name: 'Standing place above the surface',
		short: 'standing place',
		the: 'the height of the standing place',
		what: 'From the walking surface up to the soles: a step, a rung, a box.'
	},
	anchorageHeight: {
		name: 'Anchorage height',
		short: 'anchorage',
		the: 'the anchorage height',
		what: 'From the walking surface up to the point on the structure.'
	},
	offset: {
		name: 'Offset along the edge',
		short: 'offset',
		the: 'the offset',
		what: 'How far to one side of the anchorage the worker stands.'
	},
	stature: {
		name: 'Body height',
		short: 'body height',
		the: 'the body height',
		what: 'From the soles to the top of the head.'
	},
	elongation: {
		name: 'Elongation, at most',
		short: 'elongation',
		the: 'the elongation',
		what: 'The most that the absorber gets longer while it stops a fall.'
	},
	dRingSlide: {
		name: 'D-ring slide',
		short: 'slide',
		the: 'the D-ring slide',
		what: 'How far the D-ring slides up the harness when the pull comes.'
	},
	harnessStretch: {
		name: 'Harness stretch',
		short: 'stretch',
		the: 'the harness stretch',
		what: 'How much the webbing of the harness gets longer under the pull.'
	},
	margin: {
		name: 'Margin',
		short: 'margin',
		the: 'the margin',
		what: 'Air that must stay free below the soles. It is practice, not law.'
	},
	lowerLevelDepth: {
		name: 'Depth of the lower level',
		short: 'lower level',
		the: 'the depth of the lower level',
		what: 'From the walking surface down to the next level one could fall to.'
	},
	bodyMass: { name: 'Body', short: 'body', the: 'the mass of the body', what: 'The mass of the body alone.' },
	clothingMass: {
		name: 'Clothing',
		short: 'clothing',
		the: 'the mass of the clothing',
		what: 'Work clothes and boots.'
	},
	equipmentMass: {
		name: 'Harness and gear worn',
		short: 'gear',
		the: 'the mass of the gear',
		what: 'Harness, lanyard, helmet and what else is worn.'
	},
	toolsMass: {
		name: 'Tools on the person',
		short: 'tools',
		the: 'the mass of the tools',
		what: 'Tools that hang on the person and fall with them.'
	},
	tetheredMass: {
		name: 'Tools tied to the structure',
		short: 'tied tools',
		the: 'the mass of the tied tools',
		what: 'Tools on a tether to the structure. They do not fall with the person.'
	},
	labelMassMin: {
		name: 'User with tools, at least',
		short: 'mass, at least',
		the: 'the least mass on the label',
		what: 'Below this mass the figures on the label do not hold.'
	},
	labelMassMax: {
		name: 'User with tools, at most',
		short: 'mass, at most',
		the: 'the greatest mass on the label',
		what: 'Above this mass the figures on the label do not hold.'
	},
	lanyardCapacity: {
		name: 'Capacity of the lanyard',
		short: 'lanyard',
		the: 'the capacity of the lanyard',
		what: 'The greatest mass that the lanyard is made for.'
	},
	harnessCapacity: {
		name: 'Capacity of the harness',
		short: 'harness',
		the: 'the capacity of the harness',
		what: 'The greatest mass that the harness is made for.'
	},
	connectorCapacity: {
		name: 'Capacity of the connectors',
		short: 'connectors',
		the: 'the capacity of the connectors',
		what: 'The greatest mass that the hooks and links are made for.'
	},
	peakForce: {
		name: 'Arrest force, at most',
		short: 'force, at most',
		the: 'the greatest arrest force',
		what: 'The greatest pull on the body while the absorber stops a fall.'
	},
	conditionedForce: {
		name: 'Arrest force wet or frozen, at most',
		short: 'force, wet or frozen',
		the: 'the greatest arrest force when wet or frozen',
		what: 'The greatest pull when the absorber is wet, or has frozen.'
	},
	averageForce: {
		name: 'Average force',
		short: 'force, average',
		the: 'the average force',
		what: 'The pull while the absorber opens, taken as an average. The peak is higher.'
	},
	labelFreeFall: {
		name: 'Free fall, at most',
		short: 'free fall, at most',
		the: 'the greatest free fall on the label',
		what: 'Above this free fall the figures on the label do not hold.'
	},
	statedDeceleration: {
		name: 'Deceleration distance stated',
		short: 'deceleration',
		the: 'the stated deceleration distance',
		what: 'What the maker states for this mass and this free fall.'
	},
	anchorageStrength: {
		name: 'Strength of the anchorage',
		short: 'anchorage strength',
		the: 'the strength of the anchorage',
		what: 'The pull that the anchorage is rated to hold.'
	},
	otherMargin: {
		name: 'Margin of another practice',
		short: 'other margin',
		the: 'the margin of another practice',
		what: 'A margin that holds elsewhere.'
	},
	otherElongation: {
		name: 'Elongation of another absorber',
		short: 'other elongation',
		the: 'the elongation of another absorber',
		what: 'The label of an absorber that is not in use here.'
	},
	otherFloorDrop: {
		name: 'Other floor, below the surface',
		short: 'other floor',
		the: 'the distance to the other floor',
		what: 'From the walking surface down to a floor where nobody stands.'
	},
	freeFallLimit: {
		name: 'Free fall allowed, at most',
		short: 'free fall allowed',
		the: 'the limit of the free fall',
		what: 'The greatest free fall that the rule here allows.'
	},
	slackShown: {
		name: 'Slack in the lanyard',
		short: 'slack',
		the: 'the slack',
		what: 'The part of the lanyard that hangs loose before a fall.'
	},
	railHeight: {
		name: 'Height of the rail',
		short: 'rail',
		the: 'the height of the rail',
		what: 'From the walking surface up to the rail.'
	}
};

/** The top of a thing below, named with its article: "the stacked panels". */
export const obstacleTop = {
	name: ({ thing }: { thing: string }) => `Top of ${thing}`,
	the: ({ thing }: { thing: string }) => `the height of ${thing}`,
	what: ({ thing }: { thing: string }) => `From the lower level up to the top of ${thing}.`
};

/** The nearest part of a thing below, sideways from below the anchorage. */
export const obstacleAside = {
	name: ({ thing }: { thing: string }) => `Sideways to ${thing}`,
	the: ({ thing }: { thing: string }) => `the sideways distance to ${thing}`,
	what: ({ thing }: { thing: string }) => `From below the anchorage sideways to the nearest part of ${thing}.`
};
