/** What a site problem's flow remembers, and what can happen to it. Plain data: it is kept as JSON. */
import type { Answer, Grade, StepGrade } from '#lib/grading/index.ts';

/** The scenario version and the draw that the learner works on. */
export interface Drawing {
	readonly scenario: string;
	readonly version: number;
	readonly drawVersion: number;
	readonly seed: number;
	readonly acceptedTry: number;
}

/** An answer of a learner as it stands in the fields: what was typed, and nothing read into it. */
export interface Entry {
	readonly text: string;
	/** "It cannot be stated from this label." */
	readonly notStated: boolean;
	readonly decision: 'tie-off' | 'do-not-tie-off' | undefined;
}

/** How much is given away of a problem: where to look, the rule, the whole working. */
export type HelpLevel = 1 | 2 | 3;

/** What became of an answer that was handed in. */
export type SendState =
	| 'sending'
	/** No signal: it waits on the device. */
	| 'waiting'
	| 'stored'
	/** The server cannot take it, and will not the next time either. */
	| 'refused';

export interface Sent {
	readonly id: string;
	readonly state: SendState;
}

/** One step of the step-through as the learner worked it. */
export interface WalkedStep {
	readonly text: string;
	readonly grade: StepGrade | undefined;
}

/** Where the step-through stands. */
export interface Walk {
	readonly ask: string;
	/** The step at hand, from 0. */
	readonly at: number;
	/** How many steps there are. */
	readonly of: number;
	readonly steps: readonly WalkedStep[];
}

export type Grades = Readonly<Record<string, Grade>>;

export interface FlowContext {
	readonly drawing: Drawing;
	/** Ids of all asks, in order. */
	readonly asks: readonly string[];
	/** Ids of those asks that are decisions. */
	readonly decisions: readonly string[];
	readonly entries: Readonly<Record<string, Entry>>;
	/** Asks that were still empty when the learner wanted to know. */
	readonly missing: readonly string[];
	/** The grades of the last check; the server's once they are there. */
	readonly grades: Grades | undefined;
	/** The server marked otherwise than the device did. */
	readonly serverDiffers: boolean;
	/** The ask whose explanation is shown. */
	readonly focus: string | undefined;
	/** Which explanation the learner said it was, by ask: its place among the candidates. */
	readonly chosen: Readonly<Record<string, number>>;
	readonly walk: Walk | undefined;
	/** How much was given away before the check, by ask. */
	readonly help: Readonly<Record<string, HelpLevel>>;
	/** Every answer that was handed in, the last at the end. */
	readonly sent: readonly Sent[];
}

export type FlowEvent =
	/** From reading on to the answers. */
	| { readonly type: 'WORK' }
	| { readonly type: 'TYPE'; readonly ask: string; readonly text: string }
	| { readonly type: 'NOT_STATED'; readonly ask: string; readonly on: boolean }
	| { readonly type: 'DECIDE'; readonly ask: string; readonly decision: 'tie-off' | 'do-not-tie-off' }
	/** Help with an ask; each level follows the one before. */
	| { readonly type: 'HELP'; readonly ask: string; readonly level: HelpLevel }
	| { readonly type: 'CHECK' }
	/** From outside: the answers were graded. The id is the attempt's, should they count as one. */
	| { readonly type: 'GRADED'; readonly grades: Grades; readonly attempt: string }
	| { readonly type: 'SENT'; readonly id: string; readonly state: SendState }
	/** The server's own grades of an attempt. */
	| { readonly type: 'SERVER_GRADED'; readonly id: string; readonly grades: Grades }
	| { readonly type: 'CHOOSE'; readonly ask: string; readonly candidate: number }
	| { readonly type: 'FOCUS'; readonly ask: string }
	| { readonly type: 'TRY_AGAIN' }
	| { readonly type: 'STEP_THROUGH'; readonly ask: string; readonly of: number }
	| { readonly type: 'TYPE_STEP'; readonly text: string }
	/** From outside: the step at hand was graded. */
	| { readonly type: 'STEP_GRADED'; readonly grade: StepGrade }
	| { readonly type: 'NEXT_STEP' }
	| { readonly type: 'LEAVE_STEPS' }
	| { readonly type: 'NEXT' };

export const EMPTY_ENTRY: Entry = Object.freeze({ text: '', notStated: false, decision: undefined });

/** @returns the entry of an ask; an empty one where nothing was entered yet. */
export function entryOf(context: Pick<FlowContext, 'entries'>, ask: string): Entry {
	return context.entries[ask] ?? EMPTY_ENTRY;
}

/** @returns an entry as an answer to be graded, or undefined while it is empty. */
export function answerOf(entry: Entry): Answer | undefined {
	if (entry.decision !== undefined) return { kind: 'decision', decision: entry.decision };
	if (entry.notStated) return { kind: 'not-stated' };
	return entry.text.trim() === '' ? undefined : { kind: 'number', text: entry.text };
}

/** @returns all answers by ask, in the order of the asks; empty entries are left out. */
export function answersOf(context: Pick<FlowContext, 'asks' | 'entries'>): ReadonlyMap<string, Answer> {
	const answers = new Map<string, Answer>();
	for (const ask of context.asks) {
		const answer = answerOf(entryOf(context, ask));
		if (answer !== undefined) answers.set(ask, answer);
	}
	return answers;
}

/** @returns true if a grade says that its entry could not be taken as an answer: it is asked about, never marked wrong. */
export function isQuery(grade: Grade): boolean {
	return grade.kind === 'unreadable' || grade.kind === 'question';
}

/** @returns true if an answer is right, by rounding too. */
export function isRight(grade: Grade): boolean {
	return (grade.kind === 'number' || grade.kind === 'decision') && (grade.mark.kind === 'right' || grade.mark.kind === 'right-by-rounding');
}

/** @returns ids of the asks whose grades can be asked about or are wrong, in order. */
export function notRight(asks: readonly string[], grades: Grades): readonly string[] {
	return asks.filter((ask) => {
		const grade = grades[ask];
		return grade !== undefined && !isRight(grade);
	});
}

/** @returns true if two gradings mark every ask alike. */
export function sameMarks(one: Grades, other: Grades): boolean {
	const ids = new Set([...Object.keys(one), ...Object.keys(other)]);
	return [...ids].every((id) => markKey(one[id]) === markKey(other[id]));
}

function markKey(grade: Grade | undefined): string {
	if (grade === undefined) return '';
	if (grade.kind === 'number' || grade.kind === 'decision') return `${grade.kind}:${grade.mark.kind}`;
	return grade.kind;
}
