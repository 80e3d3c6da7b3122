/** The lessons of the course, as data. */
import type { Lesson, LessonId } from './lesson.ts';
import { availableClearanceLesson } from './lessons/available-clearance.ts';
import { beforeAndAfterLesson } from './lessons/before-and-after.ts';
import { forceLesson } from './lessons/force.ts';
import { freeFallLesson } from './lessons/free-fall.ts';
import { labelLesson } from './lessons/label.ts';
import { requiredClearanceLesson } from './lessons/required-clearance.ts';
import { stagesLesson } from './lessons/stages.ts';
import { swingLesson } from './lessons/swing.ts';

/** In the order in which they are taken. */
export const LESSONS: readonly Lesson[] = [
	stagesLesson,
	labelLesson,
	freeFallLesson,
	requiredClearanceLesson,
	availableClearanceLesson,
	forceLesson,
	swingLesson,
	beforeAndAfterLesson
];

/** @returns a lesson. @throws RangeError on an id that is none. */
export function lessonOf(id: LessonId): Lesson {
	const found = LESSONS.find((lesson) => lesson.id === id);
	if (found === undefined) throw new RangeError(`there is no lesson "${id}"`);
	return found;
}
