/** What happened in the course, read back by hand from a device's store: what is broken is dropped. */
import { LESSON_IDS, type LessonId } from '#lib/course/index.ts';
import type { CourseRecord, HelpLevel } from '#lib/flow/index.ts';
import { DIFFICULTIES, type Credit, type Outcome } from '#lib/mastery/index.ts';
import { isCount, isFields } from './store.ts';

const LEVELS: readonly HelpLevel[] = [1, 2, 3];

/** @returns a kept record, or undefined where it is none. Checks happen on the server only, and are never kept here. */
export function recordFrom(value: unknown): CourseRecord | undefined {
	if (!isFields(value)) return undefined;
	const lesson = LESSON_IDS.find((id) => id === value['lesson']);
	return lesson === undefined ? undefined : ofLesson(value, lesson);
}

function ofLesson(value: Readonly<Record<string, unknown>>, lesson: LessonId): CourseRecord | undefined {
	const { kind, step, level, right } = value;
	if (kind === 'shown') return isCount(step) ? { kind, lesson, step } : undefined;
	if (kind === 'went-on') return { kind, lesson };
	if (kind === 'helped') {
		const known = LEVELS.find((one) => one === level);
		return known === undefined ? undefined : { kind, lesson, level: known };
	}
	if (kind !== 'answered' || typeof right !== 'boolean') return undefined;
	const outcome = outcomeFrom(value['outcome']);
	return outcome === undefined ? undefined : { kind, lesson, right, outcome };
}

function outcomeFrom(value: unknown): Outcome | undefined {
	if (!isFields(value)) return undefined;
	const { task, kind, day, aided, credits } = value;
	const difficulty = DIFFICULTIES.find((one) => one === value['difficulty']);
	if (typeof task !== 'string' || typeof kind !== 'string' || typeof aided !== 'boolean' || difficulty === undefined) return undefined;
	if (!isDay(day) || !Array.isArray(credits)) return undefined;
	const read = credits.map(creditFrom);
	if (read.includes(undefined)) return undefined;
	return { task, kind, difficulty, day, aided, credits: read.filter((credit) => credit !== undefined) };
}

function creditFrom(value: unknown): Credit | undefined {
	if (!isFields(value)) return undefined;
	const { cell, skills, right, guess } = value;
	if (typeof cell !== 'string' || typeof right !== 'boolean' || !Array.isArray(skills)) return undefined;
	if (!skills.every((skill) => typeof skill === 'string')) return undefined;
	if (guess === undefined) return { cell, skills, right };
	return typeof guess === 'number' && guess > 0 && guess <= 1 ? { cell, skills, right, guess } : undefined;
}

/** A date of the calendar, YYYY-MM-DD. */
function isDay(value: unknown): value is string {
	if (typeof value !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(value)) return false;
	const date = new Date(`${value}T00:00:00Z`);
	return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(value);
}
