/** How far a person is in the course: replayed from what is stored. */
import { randomInt } from 'node:crypto';
import { COURSE } from '#lib/course/index.ts';
import { replayCourse, startCourse, stepCourse, type CourseRecord, type CourseState } from '#lib/flow/index.ts';
import { courseSeed, recordsAfter } from '../db/course.ts';
import type { Database } from '../db/open.ts';
import { courseBook } from './book.ts';
import type { Evidence } from './origin.ts';

/** @source seeds of practice stay below 2³⁰ (mastery/seed.ts); a learner's own number does as well. */
const SEEDS = 2 ** 30;
/** @reason the people who are at work at the same time; a state is a few kB */
const PEOPLE_KEPT = 500;

/** A person's course, and how many events it was made of. */
export interface PersonCourse {
	readonly state: CourseState;
	/** Place of the last event; 0 before the first. */
	readonly seq: number;
}

/** What was replayed lately. Events are only ever appended, so that what comes later can be added. */
const kept = new WeakMap<Database, Map<string, PersonCourse>>();

/** What an event's stored payload holds. */
export interface StoredPayload {
	/** The record that is replayed. */
	readonly record: CourseRecord;
	/** Of pictures and half-done steps, which are no attempts: how they were graded, and what was drawn. */
	readonly detail?: { readonly grades: unknown; readonly evidence: Evidence };
}

/** Payloads are our own, written by `payloadText` alone. */
export function readPayload(text: string): StoredPayload {
	return JSON.parse(text) as StoredPayload;
}

/** @returns a payload as it is stored. */
export function payloadText(payload: StoredPayload): string {
	return JSON.stringify(payload);
}

/**
 * A person's course as it stands; begun if it was not yet.
 * @param now the server's time
 */
export async function courseOf(db: Database, person: string, now: Date): Promise<PersonCourse> {
	const people = kept.get(db) ?? new Map<string, PersonCourse>();
	kept.set(db, people);
	const known = people.get(person) ?? (await begun(db, person, now));
	const later = await recordsAfter(db, person, known.seq);
	const book = courseBook();
	let { state, seq } = known;
	for (const row of later) {
		state = stepCourse(book, state, readPayload(row.payload).record);
		seq = row.seq;
	}
	const course = { state, seq };
	people.delete(person);
	people.set(person, course);
	if (people.size > PEOPLE_KEPT) {
		const [oldest] = people.keys();
		if (oldest !== undefined) people.delete(oldest);
	}
	return course;
}

async function begun(db: Database, person: string, now: Date): Promise<PersonCourse> {
	const seed = await courseSeed(db, {
		person,
		course: COURSE.id,
		version: COURSE.version,
		seed: randomInt(SEEDS),
		now: now.toISOString()
	});
	return { state: startCourse(courseBook(), seed), seq: 0 };
}

/** @returns the course that stored payloads give, from nothing: what `courseOf` must agree with. */
export function replayed(seed: number, payloads: readonly string[]): CourseState {
	return replayCourse(courseBook(), seed, payloads.map((text) => readPayload(text).record));
}
