/** Where somebody stands in the course, in words. */
import { lessonState, type BookLesson, type CourseState } from '#lib/flow/index.ts';
import { isMastered, isReady, rowOf } from '#lib/mastery/index.ts';
import type { Messages } from '#lib/text/index.ts';

/** How a lesson stands: in words, and how much of it is done, 0 to 1. */
export interface LessonStanding {
	readonly words: string;
	readonly done: number;
}

/** @reason the example and what follows it fill one half of a lesson's part of the band, the row of right answers the other */
const HALF = 0.5;

/** @returns how a lesson stands. @param open whether it may be entered */
export function standingOf(m: Messages, lesson: BookLesson, state: CourseState, open: boolean): LessonStanding {
	const { place, context } = lessonState(state, lesson.id);
	const w = m.learn.states;
	if (!open) return { words: w.shut, done: 0 };
	switch (place) {
		case 'showing': {
			const seen = context.steps === 0 ? 0 : context.seen / context.steps;
			return seen === 0 ? { words: w.open, done: 0 } : { words: w.example({ n: context.seen, of: context.steps }), done: (seen * HALF) / 2 };
		}
		case 'trying':
			return { words: w.trying, done: HALF / 2 };
		case 'fading':
			return { words: w.fading, done: HALF / 2 + ((HALF / 2) * context.rung) / Math.max(1, context.rungs) };
		case 'practising': {
			const { n, of } = rowIn(lesson, state);
			return { words: w.practising({ n, of }), done: HALF + (HALF * n) / (of + 1) };
		}
		case 'ready':
			return { words: w.ready, done: HALF + HALF * (1 - 1 / Math.max(2, context.steps)) };
		case 'checking':
			return { words: w.checking, done: HALF + HALF * (1 - 1 / Math.max(2, context.steps)) };
		case 'passed':
			return { words: isMastered(state.mastery, lesson.cell) ? w.mastered : w.passed, done: 1 };
	}
}

/**
 * How far the practice of a lesson is: right answers so far, of those that its check needs. What is missing is what
 * the cell's row needs or what this lesson still wants to see, whichever is more.
 */
export function rowIn(lesson: BookLesson, state: CourseState): { readonly n: number; readonly of: number } {
	const { wanted } = lessonState(state, lesson.id).context;
	const { right, needed } = rowOf(state.mastery, lesson.cell);
	const missing = Math.max(wanted, isReady(state.mastery, lesson.cell) ? 0 : Math.max(1, needed - right));
	return { n: Math.max(0, needed - missing), of: Math.max(needed, missing) };
}
