/** What the invented organisation's second crew has behind it: courses passed long ago and lately, signed off or not. For looking around only. */
import { randomUUID } from 'node:crypto';
import type { CoursePlace } from '#lib/course/index.ts';
import { HANDS_ON_CHECKS, addMonths } from '#lib/records/index.ts';
import { dayIn } from '../course/day.ts';
import { findPersonById } from '../db/people.ts';
import { putRecordSettings } from '../db/records.ts';
import type { Database } from '../db/open.ts';
import { goThroughCourse } from './demo-course.ts';
import { signHandsOn, toSign, type HandsOnEntry } from './sign-off.ts';
import type { Person } from './who.ts';

const VALID_MONTHS = 24;
const SOON_DAYS = 30;
const KEEP_MONTHS = 36;
const DAY = 24 * 60 * 60 * 1000;
/** @reason no place on the network: nobody came from there */
const ADDRESS = 'demo';

/** How far each learner of the crew got, in the order in which it happened; by place on the list. */
const STORIES: readonly { readonly learner: number; readonly monthsAgo: number; readonly daysAgo: number; readonly until: CoursePlace; readonly signed: boolean }[] = [
	{ learner: 0, monthsAgo: 25, daysAgo: 4, until: 'final', signed: true },
	{ learner: 1, monthsAgo: 23, daysAgo: 12, until: 'final', signed: true },
	{ learner: 2, monthsAgo: 5, daysAgo: 3, until: 'final', signed: true },
	{ learner: 3, monthsAgo: 0, daysAgo: 9, until: 'final', signed: false },
	{ learner: 4, monthsAgo: 0, daysAgo: 3, until: 'available-clearance', signed: false }
];

/** When the organisation of the demo was set up: before everything that happened in it. */
export function demoBegan(now: Date): Date {
	return at(now, 30, 0);
}

/** Some months and days before now, in the middle of the day. */
function at(now: Date, months: number, days: number): Date {
	return new Date(Date.parse(`${addMonths(dayIn('UTC', now), -months)}T08:00:00.000Z`) - days * DAY);
}

/** A crew whose people have learned something, and its trainer with the password that signs. */
export interface TrainedCrew {
	readonly crew: string;
	readonly trainer: Person;
	readonly password: string;
	/** Ids, in the order of the list. */
	readonly learners: readonly string[];
}

/** Lets the people of a crew go through the course at their times, and has the trainer sign. */
export async function fillDemoRecords(db: Database, { crew, trainer, password, learners }: TrainedCrew, now: Date): Promise<void> {
	const changedAt = demoBegan(now).toISOString();
	await putRecordSettings(db, { organisation_id: trainer.organisation, validity_months: VALID_MONTHS, soon_days: SOON_DAYS, keep_months: KEEP_MONTHS, changed_at: changedAt });
	for (const { learner, monthsAgo, daysAgo, until, signed } of STORIES) {
		const id = learners[learner];
		const row = id === undefined ? null : await findPersonById(db, id);
		if (row === null) throw new Error('A learner of the demo is not there');
		const who: Person = { kind: 'person', id: row.id, organisation: row.organisation_id, role: 'learner', name: row.name, answerer: row.answerer_id, language: null };
		const ended = await goThroughCourse(db, who, at(now, monthsAgo, daysAgo), until);
		if (signed) await sign(db, trainer, crew, row.id, password, new Date(ended.getTime() + DAY));
	}
}

async function sign(db: Database, trainer: Person, crew: string, person: string, password: string, when: Date): Promise<void> {
	const entry: HandsOnEntry = { id: randomUUID(), checks: HANDS_ON_CHECKS, place: 'Training yard, tower 2', day: dayIn('UTC', when), capacity: 'competent-person' };
	const read = await toSign(db, trainer, crew, person, entry, 'en', when);
	if (read.kind !== 'to-sign') throw new Error('A sign-off of the demo cannot be signed');
	const signed = await signHandsOn(db, trainer, crew, person, { entry, shown: read.shown, password, language: 'en' }, ADDRESS, when);
	if (signed.kind !== 'signed') throw new Error('A sign-off of the demo was refused');
}
