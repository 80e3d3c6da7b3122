/**
 * What a rule can speak of: the quantities that an engine works out for a plan, all in SI, and the
 * facts of the plan that are no quantities. The lists are closed, so that a misspelt name in a rule
 * table is found by its schema and not by a limit that silently never bites.
 */
import { FORCE, LENGTH, MASS } from '#lib/quantity/index.ts';
import type { Dimension } from '#lib/quantity/index.ts';

/** Each quantity with what it measures; values are handed over in SI. */
export const QUANTITIES = Object.freeze({
	/** Free fall of the attachment point, m. */
	freeFall: LENGTH,
	/** Greatest force on the body that the label admits, N. */
	peakForce: FORCE,
	/** Deceleration distance that the maker states for this mass and fall, m. */
	decelerationDistance: LENGTH,
	/** Everything that hangs on the harness: body, clothing, gear, tools on the person, kg. */
	massAttached: MASS,
	/** Strength of the anchorage as a whole, N. */
	anchorageStrength: FORCE,
	/** Strength of the anchorage divided by the persons attached to it, N. */
	strengthPerPerson: FORCE,
	/** Stated strength of the weakest connector or line, N. */
	componentStrength: FORCE,
	/** Length of the lanyard with absorber and connectors, m. */
	lanyardLength: LENGTH,
	/** Clearance left: available minus required, m. A rule of no contact asks for at least 0. */
	spare: LENGTH,
	/** Height of the anchorage above the dorsal D-ring, m; negative below it. */
	anchorageAboveDRing: LENGTH,
	/** Height of the anchorage above the worker's shoulder, m; negative below it. */
	anchorageAboveShoulder: LENGTH,
	/** Horizontal distance from below the anchorage to the worker, m. */
	offset: LENGTH,
	/** Height of the place of work above the next lower level, m. */
	fallHeight: LENGTH
} satisfies Readonly<Record<string, Dimension>>);

export type QuantityName = keyof typeof QUANTITIES;

/** What is known of a plan's quantities; one left out or undefined is unknown. */
export type Quantities = Readonly<Partial<Record<QuantityName, number | undefined>>>;

/** Facts that are true or false. */
export const YES_NO_FACTS = [
	/** The connecting line has an energy absorber. */
	'absorber',
	/** The maker designed and tested the system for a longer free fall than the general limit. */
	'makerTestedLongerFreeFall',
	/** The absorber is used within its label and instructions: mass range, free fall, conditions. */
	'usedAsInstructed',
	/** Criteria and tests were adapted to the mass by someone entitled to do so. */
	'systemAdaptedToMass',
	/** Anchorage is part of a complete system with a safety factor, under a qualified person or engineer. */
	'factorTwoDesign',
	/** The anchorage carries nothing of the platform that the worker stands on. */
	'anchorageIndependent',
	/** Each pair of connectors that meet is made for one another. */
	'connectorsCompatible',
	/** The line touches, or in a fall would touch, an edge. */
	'lineMeetsEdge',
	/** The line may be cut or worn where it runs. */
	'lineMayBeCut',
	/** Prompt rescue, or sure self-rescue, is arranged. */
	'rescueArranged',
	/** The free fall is a "limited free fall" as AS/NZS 1891.4 defines it. */
	'limitedFreeFall'
] as const;

/** Facts with a closed list of answers. */
export const CHOICE_FACTS = Object.freeze({
	harness: ['full-body', 'body-belt'],
	/** Where on the harness the line is attached. */
	attachment: ['back', 'above-head', 'chest'],
	/** What kind of place it is, where laws set different heights. */
	workplace: ['general', 'scaffold', 'steel-erection', 'permanent']
} as const);

/** Facts that are counts. */
export const COUNT_FACTS = [
	/** Persons attached to the same anchorage. */
	'persons'
] as const;

/** Facts that are an id of another file: the absorber's class in shared/equipment. */
export const ID_FACTS = ['absorberClass'] as const;

export type YesNoFact = (typeof YES_NO_FACTS)[number];
export type ChoiceFact = keyof typeof CHOICE_FACTS;
export type CountFact = (typeof COUNT_FACTS)[number];
export type IdFact = (typeof ID_FACTS)[number];
export type FactName = YesNoFact | ChoiceFact | CountFact | IdFact;

/** What is known of a plan's facts; one left out, undefined or 'unknown' is unknown. */
export type Facts = Readonly<
	{ [F in YesNoFact]?: boolean | 'unknown' | undefined } & {
		[F in ChoiceFact]?: (typeof CHOICE_FACTS)[F][number] | 'unknown' | undefined;
	} & { [F in CountFact]?: number | 'unknown' | undefined } & {
		[F in IdFact]?: string | 'unknown' | undefined;
	}
>;
