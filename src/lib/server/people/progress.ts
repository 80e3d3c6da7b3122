import type { LessonId } from '#lib/course/index.ts';
import { lessonState } from '#lib/flow/index.ts';
import { isStuck } from '#lib/mastery/index.ts';
import { courseBook } from '../course/book.ts';
import { courseOf } from '../course/state.ts';
import { lastDaysOf } from '../db/crew-list.ts';
import type { Database } from '../db/open.ts';
import { passedInRun } from '../records/run.ts';

/** How far somebody is in the course, in one line. */
export interface Progress {
	/** Lessons whose check is passed, and how many there are. */
	readonly passed: number;
	readonly of: number;
	/** Whether the final check is passed, since retraining was ordered if it was. */
	readonly finished: boolean;
	/** Lessons in which somebody practised much without ever being ready: the trainer is to help. */
	readonly stuck: readonly LessonId[];
	/** Local day at the site on which something was done last. */
	readonly lastDay: string;
}

/** @returns how far some people are, by id; who has not begun is left out. Whose people they are, the caller has asked. */
export async function progressOf(db: Database, people: readonly string[], now: Date): Promise<ReadonlyMap<string, Progress>> {
	const book = courseBook();
	const finished = await passedInRun(db, people);
	const found = new Map<string, Progress>();
	for (const [person, lastDay] of await lastDaysOf(db, people)) {
		const { state } = await courseOf(db, person, now);
		const passed = book.filter((lesson) => lessonState(state, lesson.id).context.passed).length;
		const stuck = book.filter(({ cell }) => isStuck(state.mastery, cell)).map(({ id }) => id);
		found.set(person, { passed, of: book.length, finished: finished.has(person), stuck, lastDay });
	}
	return found;
}
