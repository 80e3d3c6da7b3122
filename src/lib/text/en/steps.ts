/** Why each step of a working is taken. */
import type { QuantityId } from '#lib/arrest/index.ts';

export const steps: Readonly<Record<QuantityId, string>> = {
	rise: 'The fall starts at the D-ring, so the height of the anchorage counts from there.',
	lineLength: 'The lanyard hangs from the connector. Both together are the line.',
	tautDepth: 'The line runs to one side. A slanted line reaches less far down than its length.',
	freeFall: 'The line less the rise is the way down until it pulls tight.',
	swingDrop: 'The body swings in under the anchorage, and there the whole line hangs straight down.',
	stretchOut: 'The D-ring slides and the webbing stretches. The body sinks by both.',
	extraStretch: 'The full height holds the D-ring up to the head. Only what goes beyond is added.',
	headAboveDRing: 'The D-ring may rise to the level of the head. That much is in the full height.',
	straightening: 'The legs were bent and hang straight at the end. The soles sink by that much.',
	requiredClearance: 'Each length follows on the one before. The margin comes last.',
	highestBelow: 'The body meets the highest thing first.',
	availableClearance: 'What stands below takes its height off the room.',
	spare: 'What there is, less what is needed. Below zero, it does not fit.',
	reachDistance: 'The lanyard must reach from the anchorage to the D-ring before it can be hooked in.',
	reachSpare: 'A line shorter than the way cannot be rigged.',
	massAttached: 'The absorber must stop all that hangs on the harness.',
	lowestCapacity: 'The weakest part fails first, so it decides.',
	capacitySpare: 'The mass must stay below what the weakest part can carry.',
	totalFall: 'So far the D-ring moves down in all.',
	expectedElongation: 'The work of the force takes up the energy of the fall. The weight works on during the stop.',
	arrestForce: 'Plan with the greatest force, because it is the one that can hurt or break.',
	bodyWeights: 'It is easier to picture a force as so many times the own weight.',
	fallSpeed: 'The longer the free fall, the faster the body when the line is tight.',
	fallTime: 'This is all the time there is.',
	swingSpeed: 'The swing turns drop into speed, sideways.',
	tightSpeed: 'The line stops only what runs along it.',
	sidewaysSpeed: 'What runs across the line is not stopped. It starts the swing.',
	speedAtObstacle: 'All the drop so far may have turned into speed by then.',
	stopTime: 'The pull less the weight slows the body down.',
	hangingDepth: 'Each length follows on the one before, down to the soles.',
	fallFactor: 'It tells how far one falls for each length of line.',
	largestMass: 'A heavier mass needs more elongation than the label gives.',
	largestFreeFall: 'A longer free fall needs more elongation than the label gives.'
};

