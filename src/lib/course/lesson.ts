/** What a lesson is made of. Words are in the catalogue (`lessons`); numbers come from the engine when they are shown. */
import type { GivenId, Target } from '#lib/arrest/index.ts';
import type { NumberAsk } from '#lib/scenario/index.ts';
import type { ShippedId } from './index.ts';
import type { FactId } from './facts.ts';
import type { CourseCell } from './cells.ts';

/** The lessons, in their order. The final check follows them. */
export const LESSON_IDS = [
	'stages',
	'label',
	'free-fall',
	'required-clearance',
	'available-clearance',
	'force',
	'swing',
	'before-and-after'
] as const;
export type LessonId = (typeof LESSON_IDS)[number];

/** A place in the course: a lesson, or the check at its end. */
export type CoursePlace = LessonId | 'final';

/** Stages of a fall at which the playback can stand still. */
export const FALL_STAGES = ['standing', 'taut', 'absorber-end', 'hanging', 'contact'] as const;
export type FallStage = (typeof FALL_STAGES)[number];
/** Stages of the swing after it. */
export const SWING_STAGES = ['taut', 'low', 'far-side'] as const;
export type SwingStage = (typeof SWING_STAGES)[number];

/** A quantity that can be asked for, with its datum where it has one: what a tape or a working shows. */
export type AskedTarget =
	| Extract<Target, { datum: unknown }>
	| { readonly quantity: Exclude<NumberAsk['quantity'], 'requiredClearance' | 'availableClearance'> };

/** What a step of a shown example looks at. */
export type View =
	| { readonly view: 'story' }
	| { readonly view: 'labels' }
	| { readonly view: 'drawing' }
	| { readonly view: 'tape'; readonly of: AskedTarget }
	/** The steps of `walkOf` (grading) up to this one, counted from 1; the step itself is the one that is told. */
	| { readonly view: 'working'; readonly of: AskedTarget; readonly step: number | 'all' }
	| { readonly view: 'fall'; readonly at: FallStage }
	| { readonly view: 'swing'; readonly at: SwingStage };

/** Where a number of a caption comes from. */
export type NumberRef =
	| { readonly given: GivenId }
	| { readonly quantity: Target }
	/** Seconds since the start of the fall. */
	| { readonly time: FallStage | SwingStage }
	| { readonly speed: FallStage | SwingStage };

/** Slots of captions that hold a number, written in the units of the plan and the language of the page. */
export const NUMBER_SLOTS = [
	'length',
	'strap',
	'dRingAt',
	'anchorageAt',
	'rises',
	'falls',
	'opens',
	'slides',
	'body',
	'margin',
	'required',
	'available',
	'left',
	'depth',
	'top',
	'sideways',
	'drop',
	'mass',
	'bodyMass',
	'tied',
	'limit',
	'least',
	'most',
	'force',
	'wet',
	'average',
	'weights',
	'speed',
	'time',
	'total'
] as const;
export type NumberSlot = (typeof NUMBER_SLOTS)[number];

/** Slots that hold a name; always filled from the plan's story. `thing` is what the body would meet first. */
export const NAME_SLOTS = ['name', 'surface', 'lowerLevel', 'anchorage', 'thing'] as const;
export type NameSlot = (typeof NAME_SLOTS)[number];

/** What captions are given. A number slot that the step does not name holds an empty text, and its caption does not read it. */
export type CaptionParts = Readonly<Record<NumberSlot | NameSlot, string>>;

export type Numbers = Readonly<Partial<Record<NumberSlot, NumberRef>>>;

/** A scenario drawn with a seed. */
export interface DrawnPlan {
	readonly scenario: ShippedId;
	readonly seed: number;
}

export interface PlanStep {
	/** The caption's key in the lesson's texts. */
	readonly id: string;
	/** Which of the example's plans it shows, from 0. */
	readonly plan: number;
	readonly show: View;
	readonly numbers: Numbers;
}

/** A picture task of findings, drawn with a seed. */
export interface DrawnPicture {
	readonly picture: string;
	readonly seed: number;
}

/** A picture with what is to be marked in it already marked. */
export interface PictureStep extends DrawnPicture {
	/** The caption's key in the lesson's texts. */
	readonly id: string;
}

/** A shown example: captions beside views of real plans, or beside pictures, at the learner's own pace. */
export type Example =
	| { readonly kind: 'plans'; readonly plans: readonly [DrawnPlan, ...DrawnPlan[]]; readonly steps: readonly PlanStep[] }
	| { readonly kind: 'pictures'; readonly steps: readonly PictureStep[] };

/**
 * A half-done example: the first steps are given, the last `blank` of them are the learner's. In this order they
 * fade: one blank, then two, then all. For an ask the steps are those of `walkOf` (grading); where that has a single
 * step, nothing can be given but the question. For a picture, 1 leaves the choice alone: the marks are given.
 */
export type HalfDone =
	| { readonly kind: 'ask'; readonly task: string; readonly ask: string; readonly blank: 1 | 2 | 'all' }
	| { readonly kind: 'finding'; readonly task: string; readonly blank: 1 | 2 | 'all' };

export interface Lesson {
	readonly id: LessonId;
	readonly cell: CourseCell;
	readonly example: Example;
	/** Numbers that the lesson's ideas speak of, from the first plan of its example. */
	readonly numbers: Numbers;
	readonly halfDone: readonly HalfDone[];
	/** What rule and practice state here; resolved by `lessonFacts`. */
	readonly facts: readonly FactId[];
}
