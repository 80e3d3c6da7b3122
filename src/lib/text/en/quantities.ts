/** Computed quantities. */
import type { QuantityId } from '#lib/arrest/index.ts';
import type { QuantityText } from '../parts.ts';

export const quantities: Readonly<Record<QuantityId, QuantityText>> = {
	rise: {
		name: 'Rise of the anchorage above the D-ring',
		short: 'Rise',
		the: 'the rise',
		meaning: 'How far the anchorage is above the D-ring. It is negative when the anchorage is below.'
	},
	lineLength: {
		name: 'Line: lanyard and anchorage connector',
		short: 'Line',
		the: 'the line',
		meaning: 'The lanyard and the connector as one line.'
	},
	tautDepth: {
		name: 'Depth at which the line is tight',
		short: 'Tight at',
		the: 'the depth at which the line is tight',
		meaning: 'How far below the anchorage the D-ring is when the line pulls tight.'
	},
	freeFall: {
		name: 'Free fall',
		short: 'Free fall',
		the: 'the free fall',
		meaning: 'How far the D-ring falls until the lanyard pulls tight.'
	},
	swingDrop: {
		name: 'Swing drop',
		short: 'Swing drop',
		the: 'the swing drop',
		meaning: 'How much deeper the low point of the swing is than the point where the line is tight.'
	},
	stretchOut: {
		name: 'Slide and stretch',
		short: 'Slide and stretch',
		the: 'the slide and stretch',
		meaning: 'What the harness gives: the D-ring slides and the webbing stretches.'
	},
	extraStretch: {
		name: 'Stretch beyond the head',
		short: 'Stretch beyond the head',
		the: 'the stretch beyond the head',
		meaning: 'The part of slide and stretch that lifts the D-ring above the head.'
	},
	headAboveDRing: {
		name: 'Head above the D-ring',
		short: 'Head above D-ring',
		the: 'the height of the head above the D-ring',
		meaning: 'The body height less the D-ring height.'
	},
	straightening: {
		name: 'Straightening of the body',
		short: 'Straightening',
		the: 'the straightening of the body',
		meaning: 'How far the soles sink when the legs hang straight after kneeling.'
	},
	requiredClearance: {
		name: 'Required clearance',
		short: 'Needed',
		the: 'the required clearance',
		meaning: 'The free room below that the whole stop needs, with the margin.'
	},
	highestBelow: {
		name: 'Highest thing below',
		short: 'Highest below',
		the: 'the highest thing below',
		meaning: 'The top of the first thing that the body could meet, above the lower level.'
	},
	availableClearance: {
		name: 'Available clearance',
		short: 'There is',
		the: 'the available clearance',
		meaning: 'The free room that there is, down to the first thing the body could meet.'
	},
	spare: {
		name: 'Spare',
		short: 'Spare',
		the: 'the spare',
		meaning: 'Available clearance less required clearance. It is negative when there is too little.'
	},
	reachDistance: {
		name: 'Distance from D-ring to anchorage',
		short: 'Distance',
		the: 'the distance from the D-ring to the anchorage',
		meaning: 'The straight way from the D-ring to the anchorage.'
	},
	reachSpare: {
		name: 'Spare reach',
		short: 'Spare reach',
		the: 'the spare reach',
		meaning: 'The line less the distance to the anchorage. It is negative when the line is too short.'
	},
	massAttached: {
		name: 'Mass on the harness',
		short: 'Mass',
		the: 'the mass on the harness',
		meaning: 'All that falls and hangs on the harness: body, clothing, gear, tools.'
	},
	lowestCapacity: {
		name: 'Lowest capacity',
		short: 'Capacity',
		the: 'the lowest capacity',
		meaning: 'What the weakest part may carry. It decides for the whole.'
	},
	capacitySpare: {
		name: 'Spare capacity',
		short: 'Spare capacity',
		the: 'the spare capacity',
		meaning: 'The lowest capacity less the mass on the harness.'
	},
	totalFall: {
		name: 'Total fall of the D-ring',
		short: 'Total fall',
		the: 'the total fall',
		meaning: 'Free fall, elongation, slide and stretch together.'
	},
	expectedElongation: {
		name: 'Expected elongation',
		short: 'Expected elongation',
		the: 'the expected elongation',
		meaning: 'What the absorber is likely to run out. It explains, and never shortens a clearance.'
	},
	arrestForce: {
		name: 'Arrest force to plan with',
		short: 'Force',
		the: 'the arrest force',
		meaning: 'The greatest pull that the label states for this case.'
	},
	bodyWeights: {
		name: 'Arrest force in body weights',
		short: 'Body weights',
		the: 'the force in body weights',
		meaning: 'The arrest force over the weight of what hangs on the harness.'
	},
	fallSpeed: {
		name: 'Speed when the line is tight',
		short: 'Speed',
		the: 'the speed when the line is tight',
		meaning: 'How fast the body falls at the end of the free fall.'
	},
	fallTime: {
		name: 'Time of the free fall',
		short: 'Time',
		the: 'the time of the free fall',
		meaning: 'From the first instant until the line is tight.'
	},
	swingSpeed: {
		name: 'Speed at the low point of the swing',
		short: 'Swing speed',
		the: 'the speed of the swing',
		meaning: 'How fast the body moves below the anchorage, from the swing drop alone.'
	},
	tightSpeed: {
		name: 'Speed along the line when it is tight',
		short: 'Speed along the line',
		the: 'the speed along the line',
		meaning: 'The part of the speed that the absorber stops.'
	},
	sidewaysSpeed: {
		name: 'Speed across the line when it is tight',
		short: 'Speed across the line',
		the: 'the speed across the line',
		meaning: 'The part of the speed that starts the swing.'
	},
	speedAtObstacle: {
		name: 'Sideways speed at a thing in the swing',
		short: 'Speed at the thing',
		the: 'the sideways speed at the thing',
		meaning: 'How fast the swing can take the body into a thing at the side, at most.'
	},
	stopTime: {
		name: 'Time of the stop',
		short: 'Stop',
		the: 'the time of the stop',
		meaning: 'From the first pull until the body is at rest, under the average force.'
	},
	hangingDepth: {
		name: 'Depth of the soles once the body hangs',
		short: 'Soles hang at',
		the: 'the depth at which the soles hang',
		meaning: 'From the anchorage down to the soles after the stop, without the margin.'
	},
	fallFactor: {
		name: 'Fall factor',
		short: 'Fall factor',
		the: 'the fall factor',
		meaning: 'The free fall over the length of the line.'
	},
	largestMass: {
		name: 'Heaviest mass for this elongation',
		short: 'Heaviest mass',
		the: 'the heaviest mass',
		meaning: 'The mass that the average force would stop within the elongation on the label.'
	},
	largestFreeFall: {
		name: 'Longest free fall for this elongation',
		short: 'Longest free fall',
		the: 'the longest free fall',
		meaning: 'The free fall that the average force would stop within the elongation on the label.'
	}
};
