/** The lessons of the course, as data. */
import type { Lesson, LessonId } from './lesson.ts';
import { freeFallLesson } from './lessons/free-fall.ts';

/** In the order in which they are taken. */
export const LESSONS: readonly Lesson[] = [freeFallLesson];

/** @returns a lesson. @throws RangeError on an id that is none. */
export function lessonOf(id: LessonId): Lesson {
	const found = LESSONS.find((lesson) => lesson.id === id);
	if (found === undefined) throw new RangeError(`there is no lesson "${id}"`);
	return found;
}
