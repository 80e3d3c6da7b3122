/**
 * What the drawing is told. Lengths in metres, x to the right, z up; z = 0 is the walking surface and
 * x = 0 the plumb line of the anchorage. Every word and every formatted number comes in from outside:
 * the scene computes where things stand, never what is needed.
 */

export type BackdropId =
	| 'bridge-bearing'
	| 'flat-roof-edge'
	| 'turbine-nacelle'
	| 'silo-top'
	| 'loading-dock'
	| 'stage-grid'
	| 'telecom-mast'
	| 'tank-roof'
	| 'lift-shaft'
	| 'formwork-deck';

export type ObstacleKind = 'stack' | 'vehicle' | 'beam' | 'railing' | 'machine' | 'tank' | 'water' | 'canopy';

/** The terms a tape is made of. One term, one hatch, everywhere. */
export type TermId =
	| 'free-fall'
	| 'elongation'
	| 'stretch'
	| 'margin'
	| 'body'
	| 'lanyard'
	| 'connector'
	| 'swing-drop'
	| 'posture'
	| 'standing'
	| 'obstacle'
	| 'sag'
	| 'other';

export interface SiteWorker {
	/** D-ring height standing, above the soles. */
	readonly dRingHeight: number;
	/** D-ring height in this posture, above the standing place. */
	readonly dRingNow: number;
	readonly stature: number;
	readonly posture: 'standing' | 'kneeling';
	/** Standing place above the walking surface (a step, a box). */
	readonly standingHeight: number;
	/** Horizontal distance of the D-ring from the plumb line of the anchorage; 0 = straight below. */
	readonly offset: number;
}

export interface SiteAnchorage {
	/** Structure point above the walking surface; may be negative. */
	readonly height: number;
	/** Length of the anchorage connector; 0 = none. */
	readonly connectorLength: number;
	readonly connectorLies: 'hanging' | 'slack';
}

export interface SiteObstacle {
	readonly id: string;
	readonly name: string;
	readonly kind: ObstacleKind;
	/** Top above the lower level. */
	readonly top: number;
	readonly from: number;
	readonly to: number;
	readonly sometimes: boolean;
	/** Drawn solid now; else a dashed outline: planned, but not there at this moment. */
	readonly there: boolean;
}

export type VerticalRef = 'surface' | 'standing' | 'lower-level' | { readonly z: number };

interface DimensionCommon {
	readonly id: string;
	/** The number, already formatted, without its unit. */
	readonly label: string;
	/** What is measured; may be empty when the drawing says it by itself. */
	readonly name: string;
}

export interface VerticalDimension extends DimensionCommon {
	readonly axis: 'vertical';
	readonly from: VerticalRef;
	readonly to: { readonly z: number };
	/** Where the measured thing stands, for its extension line. Left out: found from the model. */
	readonly at?: number;
}

export interface HorizontalDimension extends DimensionCommon {
	readonly axis: 'horizontal';
	readonly from: { readonly x: number };
	readonly to: { readonly x: number };
	/** Height of what is measured; the line stands a little above or below it. */
	readonly at: number;
}

export type SiteDimension = VerticalDimension | HorizontalDimension;

export interface SiteLevel {
	readonly z: number;
	readonly name: string;
}

export interface SiteModel {
	readonly units: 'metric' | 'us-decimal' | 'us-inch';
	readonly language: string;
	readonly backdrop: BackdropId;
	readonly worker: SiteWorker;
	readonly anchorage: SiteAnchorage;
	readonly lanyard: { readonly length: number };
	/** Depth below the walking surface. */
	readonly lowerLevel: { readonly depth: number; readonly name: string };
	readonly obstacles: readonly SiteObstacle[];
	/** Givens and decoys only, never an answer. */
	readonly dimensions: readonly SiteDimension[];
	/** Datum triangles. */
	readonly levels: readonly SiteLevel[];
}

export interface TapeTerm {
	readonly id: TermId;
	readonly sign: 1 | -1;
	readonly length: number;
	readonly name: string;
	readonly label: string;
}

export interface TapeDatum {
	readonly z: number;
	readonly name: string;
}

/** A finished chain of lengths, hung from its datum. */
export interface TapeModel {
	readonly datum: TapeDatum;
	readonly terms: readonly TapeTerm[];
	readonly total: number;
	readonly totalLabel: string;
	/** What stands over it: "Needed", "Your tape". */
	readonly title: string;
}

/** The learner's tape while numbers are being typed. It never says whether a number is right. */
export interface DraftTape {
	readonly datum: TapeDatum;
	readonly title: string;
	/** "0 = landing" */
	readonly zeroLabel: string;
	readonly terms: readonly TapeTerm[];
	/** A total alone is an end bar, not a segment. */
	readonly end: { readonly length: number; readonly label: string; readonly name: string } | null;
	/** How far the empty outline hangs: down to the lower level. */
	readonly reach: number;
}

/** Both tapes of an explained answer. */
export interface TapePairModel {
	readonly needed: TapeModel;
	/** Null when the learner's number tells no chain of its own. */
	readonly own: TapeModel | null;
	/** The first thing one would meet: a level through both tapes. */
	readonly firstMet: { readonly z: number; readonly label: string; readonly name: string } | null;
	/** Notes at the terms where the two part, by term: "1.20 missing". */
	readonly notes: readonly { readonly id: TermId; readonly text: string }[];
}

export type PlaybackPhase = 'free-fall' | 'stopping' | 'swinging' | 'at-rest';

/** One instant of a fall; a frame of the simulation fits. x positive to the worker's side of the plumb line. */
export interface PlaybackFrame {
	readonly dRing: { readonly x: number; readonly z: number };
	readonly soles: { readonly x: number; readonly z: number };
	/** m/s */
	readonly speed: number;
	/** Length torn out of the absorber so far. */
	readonly deployed: number;
	/** D-ring slide and harness stretch so far. */
	readonly slid: number;
	readonly phase: PlaybackPhase;
}

export type PlaybackEventId =
	| 'start'
	| 'lanyard-tight'
	| 'passes-learner-level'
	| 'absorber-done'
	| 'lowest'
	| 'rest'
	| 'contact';

export interface PlaybackEvent {
	readonly id: PlaybackEventId;
	/** s */
	readonly t: number;
	/** Short name over the upright ("lanyard tight"); empty: a bold time without an upright. */
	readonly name: string;
}

/** One fall, from the first instant to rest or contact. */
export interface PlaybackCase {
	readonly id: string;
	/** On the switch: "This site", "Ground at your 2.30 m". */
	readonly name: string;
	/** s */
	readonly duration: number;
	readonly at: (t: number) => PlaybackFrame;
	readonly events: readonly PlaybackEvent[];
	/** Levels that run across: walking surface, what is met, ground. */
	readonly levels: readonly {
		readonly z: number;
		readonly name: string;
		readonly kind: 'surface' | 'obstacle' | 'ground';
	}[];
	/** The level the learner's number means; a diamond where the soles pass it. */
	readonly learner: { readonly z: number; readonly text: string } | null;
}

export interface PlaybackModel {
	readonly worker: SiteWorker;
	readonly anchorage: SiteAnchorage;
	readonly lanyard: { readonly length: number };
	/** One case, or the true one first and what the learner's number means second. */
	readonly cases: readonly PlaybackCase[];
}
