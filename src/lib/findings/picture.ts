/**
 * What a picture task is: drawn gear, a drawn situation or drawn moments of a fall, with parts that are marked
 * and one choice. `shown` alone is enough to draw it and to answer it; the key stands apart.
 */
export type PictureKind = 'gear' | 'situation' | 'moment';
export type Difficulty = 'easy' | 'middle' | 'hard';

/** Which drawing is made. */
export type DrawingId =
	| 'harness'
	| 'lanyards'
	| 'connectors'
	| 'worn-back'
	| 'worn-front'
	| 'swatches'
	| 'roof-edge'
	| 'twin-legs'
	| 'hook-ups'
	| 'restraint'
	| 'rescue'
	| 'steel'
	| 'one-moment'
	| 'moments';

/** One part that can be marked. */
export interface ShownPart {
	/** Its place in the drawing. */
	readonly id: string;
	/** What kind of thing it is: which looks it can have. */
	readonly form: string;
	/** How it is drawn: a shape by name, never a judgement. */
	readonly look: string;
	/** Lengths that a moment is drawn from, m. */
	readonly numbers?: Readonly<Record<string, number>>;
}

/** One thing to choose. */
export interface ShownChoice {
	readonly id: string;
	/** A length that is the text of this choice, m. */
	readonly length?: number;
	/** A part that this choice names. */
	readonly part?: string;
}

/**
 * All that the drawing and its words need; it may be sent to a browser in a check. Looks are named by what
 * is seen, not by what it means. A determined reader of the program can still map looks to reject signs, as
 * anyone can who knows the trade.
 */
export interface Shown {
	readonly task: string;
	readonly version: number;
	readonly kind: PictureKind;
	readonly drawing: DrawingId;
	readonly parts: readonly ShownPart[];
	readonly choices: readonly ShownChoice[];
	/** Lengths of the whole picture, m; empty but for moments. */
	readonly numbers: Readonly<Record<string, number>>;
}

/** What only the one who grades may know. */
export interface PictureKey {
	/** Ids of the parts to mark, in the order of the parts. */
	readonly marks: readonly string[];
	readonly choice: string;
	/** Choices that are on the unsafe side. */
	readonly criticalChoices: readonly string[];
	/** Whether a part that was left unmarked is on the unsafe side. */
	readonly criticalMarks: boolean;
	/** What explains each part: id of a note, by part. */
	readonly notes: Readonly<Record<string, string>>;
	/** What the engine says of each drawn moment; empty but for moments. */
	readonly facts: Readonly<Record<string, MomentFacts>>;
}

export type Stage = 'standing' | 'free-fall' | 'slowing' | 'hanging';

/** One moment of a fall as the engine has it. */
export interface MomentFacts {
	readonly stage: Stage;
	/** After the start of the fall, s. */
	readonly time: number;
	/** Of the D-ring, m/s. */
	readonly speed: number;
	/** Of the lanyard, in weights of the one who falls: an average, for understanding. */
	readonly pull: number;
}

export interface Picture {
	readonly id: string;
	readonly version: number;
	readonly seed: number;
	readonly kind: PictureKind;
	readonly difficulty: Difficulty;
	readonly skills: readonly string[];
	readonly shown: Shown;
	readonly key: PictureKey;
}

export interface PictureAnswer {
	readonly kind: 'picture';
	readonly marked: readonly string[];
	readonly choice: string;
}

export interface PictureGrade {
	readonly right: boolean;
	/** A reject sign was missed, or going on was chosen where it must not be. */
	readonly critical: boolean;
	/** Parts that should have been marked, and those that should not, in the order of the parts. */
	readonly missed: readonly string[];
	readonly extra: readonly string[];
	readonly choice: { readonly given: string; readonly right: string };
}
