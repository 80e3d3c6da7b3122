/**
 * A learner's way through the course, made by replaying what happened. The server replays what it stored, a
 * guest's device what it kept: the same events give the same state. What a client says is judged outside; here
 * only happens what was found to be true.
 */
import { getInitialSnapshot, getNextSnapshot } from 'xstate';
import type { CourseCell, LessonId } from '#lib/course/index.ts';
import { NOTHING_KNOWN, hashOf, isReady, nextTask, observe, readySince, seedOf, type Mastery, type Outcome, type TaskFacts } from '#lib/mastery/index.ts';
import type { HelpLevel } from './context.ts';
import { lessonMachine, type LessonContext, type LessonEvent, type LessonPlace } from './lesson.ts';

/** What the flow needs to know of a lesson. */
export interface BookLesson {
	readonly id: LessonId;
	readonly cell: CourseCell;
	/** How many steps its shown example has. */
	readonly steps: number;
	/** Ids of the tasks of its half-done examples, from the most given to the least. */
	readonly halfDone: readonly string[];
	/** What its practice draws from. */
	readonly tasks: readonly TaskFacts[];
}

/** The course as the flow sees it: the lessons in their order. Plain data, so that a browser can be given it. */
export type CourseBook = readonly BookLesson[];

/** A problem of a lesson: what is drawn, from which seed; of a half-done example also how much of it is left. */
export interface LessonTask {
	readonly task: string;
	readonly seed: number;
	/** Index of the half-done example, or undefined for a whole problem. */
	readonly halfDone: number | undefined;
}

/** What happened in the course. Plain data: stored by the server, kept on a guest's device. */
export type CourseRecord =
	| { readonly kind: 'shown'; readonly lesson: LessonId; readonly step: number }
	| { readonly kind: 'went-on'; readonly lesson: LessonId }
	| { readonly kind: 'helped'; readonly lesson: LessonId; readonly level: HelpLevel }
	| { readonly kind: 'answered'; readonly lesson: LessonId; readonly right: boolean; readonly outcome: Outcome }
	| { readonly kind: 'check-started'; readonly lesson: LessonId }
	| { readonly kind: 'check-ended'; readonly lesson: LessonId; readonly passed: boolean }
	| { readonly kind: 'reopened'; readonly lesson: LessonId };

export interface LessonState {
	readonly place: LessonPlace;
	readonly context: LessonContext;
	/** The problem at hand; undefined where none is asked. */
	readonly next: LessonTask | undefined;
	/** The greatest help that was used at the problem at hand. */
	readonly help: HelpLevel | 0;
}

export interface CourseState {
	/** The learner's own number: all problems come from it. */
	readonly seed: number;
	/** By id of the lesson. */
	readonly lessons: Readonly<Record<string, LessonState>>;
	readonly mastery: Mastery;
}

type Snapshot = ReturnType<typeof lessonMachine.resolveState>;

function snapshotOf(state: LessonState): Snapshot {
	return lessonMachine.resolveState({ value: state.place, context: state.context });
}

/** @returns the course of somebody who has done nothing yet. */
export function startCourse(book: CourseBook, seed: number): CourseState {
	const lessons = book.map(({ id, steps, halfDone }): [string, LessonState] => {
		const { context } = getInitialSnapshot(lessonMachine, { lesson: id, steps, rungs: halfDone.length });
		return [id, { place: 'showing', context, next: undefined, help: 0 }];
	});
	return { seed, lessons: Object.fromEntries(lessons), mastery: NOTHING_KNOWN };
}

/** @returns a lesson of the book. @throws RangeError on an id the book does not have. */
export function bookLesson(book: CourseBook, id: string): BookLesson {
	const lesson = book.find((one) => one.id === id);
	if (lesson === undefined) throw new RangeError(`the course has no lesson "${id}"`);
	return lesson;
}

/** @returns how a lesson stands. @throws RangeError on an id the course does not have. */
export function lessonState(course: CourseState, id: string): LessonState {
	const state = course.lessons[id];
	if (state === undefined) throw new RangeError(`the course has no lesson "${id}"`);
	return state;
}

function eventOf(record: CourseRecord, lesson: BookLesson, mastery: Mastery): LessonEvent | undefined {
	switch (record.kind) {
		case 'shown':
			return { type: 'SHOWN', step: record.step };
		case 'went-on':
			return { type: 'GO_ON' };
		case 'helped':
			return undefined;
		case 'answered':
			return {
				type: 'ANSWERED',
				right: record.right,
				aided: record.outcome.aided,
				ready: isReady(mastery, lesson.cell)
			};
		case 'check-started':
			return { type: 'CHECK_STARTED' };
		case 'check-ended':
			return { type: 'CHECK_ENDED', passed: record.passed };
		case 'reopened':
			return { type: 'REOPENED' };
	}
}

/** @returns the course after something happened; nothing given is changed. */
export function stepCourse(book: CourseBook, course: CourseState, record: CourseRecord): CourseState {
	const lesson = bookLesson(book, record.lesson);
	const before = lessonState(course, record.lesson);
	if (record.kind === 'helped') {
		const help = Math.max(before.help, record.level) as HelpLevel;
		return withLesson(course, record.lesson, { ...before, help });
	}
	const mastery = record.kind === 'answered' ? observe(course.mastery, asObserved(record, before)) : course.mastery;
	const event = eventOf(record, lesson, mastery);
	if (event === undefined) return course;
	const after = getNextSnapshot(lessonMachine, snapshotOf(before), event);
	const place = after.value;
	const moved: CourseState = { ...course, mastery };
	const asked = place !== before.place || record.kind === 'answered';
	return withLesson(moved, record.lesson, {
		place,
		context: after.context,
		next: asked ? taskAt(moved, lesson, place, after.context) : before.next,
		help: asked ? 0 : before.help
	});
}

/** A half-done example gives steps away: as evidence it is an aided answer. */
function asObserved(record: Extract<CourseRecord, { kind: 'answered' }>, before: LessonState): Outcome {
	return before.place === 'fading' ? { ...record.outcome, aided: true } : record.outcome;
}

function withLesson(course: CourseState, lesson: string, state: LessonState): CourseState {
	return { ...course, lessons: { ...course.lessons, [lesson]: state } };
}

/** @returns the course after all that happened, in order. */
export function replayCourse(book: CourseBook, seed: number, records: Iterable<CourseRecord>): CourseState {
	let course = startCourse(book, seed);
	for (const record of records) course = stepCourse(book, course, record);
	return course;
}

/** The problem that is asked at a place of a lesson. Its seed depends on how many came before it in this lesson. */
function taskAt(course: CourseState, lesson: BookLesson, place: LessonPlace, context: LessonContext): LessonTask | undefined {
	if (place === 'showing' || place === 'checking') return undefined;
	const seed = hashOf([course.seed, lesson.id]);
	const half = place === 'fading' ? lesson.halfDone[context.rung] : undefined;
	if (half !== undefined) return { task: half, seed: seedOf(seed, context.answered), halfDone: context.rung };
	const next = nextTask(lesson.tasks, course.mastery, { cells: [lesson.cell] }, { seed, nth: context.answered });
	return { task: next.task.id, seed: next.seed, halfDone: undefined };
}

/**
 * @returns the ids of the open lessons, in order: the first, and each whose forerunner has been ready once or
 * passed. A lesson that was opened does not close again.
 */
export function openLessons(book: CourseBook, course: CourseState): readonly LessonId[] {
	const shut = book.findIndex(({ id, cell }) => !lessonState(course, id).context.passed && readySince(course.mastery, cell) === undefined);
	return book.slice(0, shut < 0 ? book.length : shut + 1).map(({ id }) => id);
}

/** @returns true if every lesson's check is passed, so that the final check is open. */
export function allPassed(book: CourseBook, course: CourseState): boolean {
	return book.every(({ id }) => lessonState(course, id).context.passed);
}

/** @returns the lesson to go on with: the first open one that is not passed, or undefined after the last. */
export function lessonAtHand(book: CourseBook, course: CourseState): LessonId | undefined {
	return openLessons(book, course).find((id) => !lessonState(course, id).context.passed);
}
