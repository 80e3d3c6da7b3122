/**
 * What a person has in front of them who works an ask out by hand: plain SI numbers, and no part of the
 * engine. The names follow the words in which the slips are told to people.
 */

export type HandDatum = 'anchorage' | 'connector' | 'surface' | 'd-ring';

/** What is asked for; clearances with the datum they are measured from. */
export type HandTarget =
	| { readonly quantity: 'requiredClearance' | 'availableClearance'; readonly datum: HandDatum }
	| {
			readonly quantity:
				| 'rise'
				| 'lineLength'
				| 'tautDepth'
				| 'freeFall'
				| 'swingDrop'
				| 'stretchOut'
				| 'massAttached'
				| 'lowestCapacity'
				| 'arrestForce'
				| 'expectedElongation'
				| 'bodyWeights'
				| 'reachDistance';
	  };

/** A quantity that a working has as a step of its own. */
export type HandStep = HandTarget['quantity'] | 'headAboveDRing' | 'straightening' | 'highestBelow';

/** Something below that the body could meet. */
export interface HandObstacle {
	/** Height of its top above the lower level, m. */
	readonly top: number;
	/** Whether the body's path meets it. */
	readonly onPath: boolean;
	/** Whether it stands there now. */
	readonly there: boolean;
	/** Whether it comes and goes. */
	readonly sometimes: boolean;
}

/** Numbers of one problem, m, kg and N. A number that the problem does not show is left out. */
export interface HandValues {
	/** Of the anchorage above the walking surface. */
	readonly anchorageHeight: number;
	/** D-ring above the soles, standing. */
	readonly dRingHeight: number;
	/** D-ring above the standing place in the posture of work. */
	readonly dRingNow: number;
	readonly kneeling: boolean;
	/** Standing place above the walking surface. */
	readonly standingHeight: number;
	readonly lanyardLength: number;
	/** 0: no connector. */
	readonly connectorLength: number;
	/** Along the edge; 0: straight below the anchorage. */
	readonly offset: number;
	/** The label's; left out without an absorber. */
	readonly elongation?: number;
	readonly dRingSlide: number;
	readonly harnessStretch: number;
	readonly margin?: number;
	readonly stature?: number;
	readonly custom: 'd-ring-and-stretch' | 'full-height';
	readonly lowerLevelDepth?: number;
	readonly obstacles: readonly HandObstacle[];
	readonly bodyMass?: number;
	/** 0: not among the parts. */
	readonly clothingMass: number;
	readonly equipmentMass: number;
	readonly toolsMass: number;
	readonly tetheredMass?: number;
	readonly capacities: readonly number[];
	readonly peakForce?: number;
	readonly conditionedForce?: number;
	readonly averageForce?: number;
	/** Wet or frozen. */
	readonly conditioned: boolean;
	readonly labelFreeFall?: number;
	readonly freeFallLimit?: number;
	readonly otherMargin?: number;
	readonly otherElongation?: number;
	readonly otherFloorDrop?: number;
	readonly slackShown?: number;
}

/** Rounds what a person writes down on the way; each of these answers with the number written. */
export interface HandRounding {
	readonly length: (metres: number) => number;
	readonly mass: (kilograms: number) => number;
	readonly force: (newtons: number) => number;
}

/** Every slip in the order in which two of them act. */
export const SLIPS_IN_ORDER: readonly string[] = [
	'datum-anchorage',
	'datum-d-ring',
	'datum-surface',
	'expected-elongation',
	'limit-for-value',
	'lanyard-for-free-fall',
	'free-fall-for-line',
	'other-class-elongation',
	'other-margin',
	'stature-for-d-ring',
	'posture-ignored',
	'kneeling-shortens-clearance',
	'wrong-floor',
	'offset-ignored',
	'offset-subtracted',
	'offset-for-swing-drop',
	'average-for-peak',
	'dry-for-conditioned',
	'strongest-capacity',
	'heights-wrong-way',
	'anchorage-height-added',
	'heights-left-out',
	'd-ring-left-out',
	'standing-place-ignored',
	'connector-left-out',
	'elongation-left-out',
	'margin-left-out',
	'body-left-out',
	'stretch-left-out',
	'swing-drop-left-out',
	'straightening-left-out',
	'obstacle-overlooked',
	'sometimes-obstacle-ignored',
	'body-mass-alone',
	'tools-left-out',
	'equipment-left-out',
	'weight-ignored',
	'connector-twice',
	'stretch-twice',
	'elongation-in-free-fall',
	'slack-added',
	'body-from-surface',
	'tethered-counted',
	'off-path-counted'
];
