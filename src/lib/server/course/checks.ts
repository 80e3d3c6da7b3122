/** Lesson checks and the final check: begun, answered, handed in and judged on the server. */
import { randomBytes, randomUUID } from 'node:crypto';
import * as z from 'zod';
import { pictureAnswerSchema } from '#lib/findings/schema.ts';
import { COURSE, lessonOf, type CoursePlace } from '#lib/course/index.ts';
import { allPassed, lessonState, type CheckEnd, type CourseRecord, type CourseState } from '#lib/flow/index.ts';
import { LESSON_RULE, firstPage, ruleForCell, standing, type PassRule, type Standing } from '#lib/mastery/index.ts';
import { readQuantity } from '#lib/quantity/index.ts';
import { readingOf } from '#lib/scenario/index.ts';
import { sentSchemaPart } from '../attempts/answer.ts';
import type { NewCourseEvent } from '../db/course.ts';
import { eventsOf, findTry, triesAt, writeCheck, type CheckTry, type CheckWrites, type Completion } from '../db/checks.ts';
import type { Database } from '../db/open.ts';
import { openingsOf, triesOf, type Opening } from '../db/permits.ts';
import { findOrganisation } from '../db/people.ts';
import { fitJson } from '../input.ts';
import { finalRule } from '../people/pass-rules.ts';
import { runsOf } from '../records/run.ts';
import type { Person } from '../people/who.ts';
import type { InputProblem } from '../problems.ts';
import { appendEntries, lockChain } from '../records/append.ts';
import { checkEndEntries } from '../records/check-end.ts';
import { recordSettings } from '../records/found.ts';
import { courseBook } from './book.ts';
import { replayedCheck, supervisionAt, viewOf, type CheckView, type Replayed, type StoredStep, type Supervision } from './check-replay.ts';
import { dayIn } from './day.ts';
import { drawItem, gradeItem, pageItems, type CheckItem, type DrawnItem, type ItemAnswer } from './items.ts';
import { courseOf, payloadText } from './state.ts';

/** How often a step is tried again when another tab comes between. */
const TRIES = 8;
/** The most that is stored of one try. @reason every answer of the longest form can be changed ten times */
const MOST_EVENTS = 500;
/** Bytes of a try's seed. @reason nobody can guess it, so that nobody can draw the form before it is handed out */
const SEED_BYTES = 16;

/** Why a check cannot be begun. */
export type Shut =
	/** The lesson is not ready, or not all lessons are passed. */
	| 'not-ready'
	/** As many tries as a day allows were made today. */
	| 'tomorrow'
	/** The tries are used up: a trainer unlocks. */
	| 'locked'
	/** It is passed already. */
	| 'passed';

export type Refused = { readonly kind: 'refused'; readonly status: number; readonly problems: readonly InputProblem[] };
export type CheckResult = { readonly kind: 'done'; readonly view: CheckView } | { readonly kind: 'shut'; readonly why: Shut } | Refused;

function refused(status: number, field: string, problem: string, remedy: string): Refused {
	return { kind: 'refused', status, problems: [{ field, problem, remedy }] };
}

/** What decides whether a person may begin a check now. */
interface Situation {
	readonly course: CourseState;
	readonly seq: number;
	/** All there were. */
	readonly all: readonly CheckTry[];
	/** Those that count now: of the run at hand, if retraining was ordered. */
	readonly tries: readonly CheckTry[];
	readonly running: Replayed | undefined;
	readonly day: string;
	readonly rule: PassRule;
	readonly opening: Opening | undefined;
	readonly shut: Shut | undefined;
}

async function situationOf(db: Database, person: Person, lesson: CoursePlace, now: Date): Promise<Situation> {
	const organisation = await findOrganisation(db, person.organisation);
	if (organisation === null) throw new Error('A person without an organisation');
	const day = dayIn(organisation.zone, now);
	const { state: course, seq } = await courseOf(db, person.id, now);
	const all = await triesAt(db, person.id, lesson);
	// After an order of retraining, what ended before it is past: only later tries open and shut the check.
	const run = (await runsOf(db, [person.id])).get(person.id);
	const tries = all.filter((one) => run?.endedBefore.has(one.id) !== true);
	const last = tries.at(-1);
	const replayed = last === undefined ? undefined : await replayedCheck(db, last);
	const running = replayed?.end === undefined ? replayed : undefined;
	const rule = lesson === 'final' ? await finalRule(db, organisation.id, organisation.pass_rule) : ruleForCell(LESSON_RULE, lessonOf(lesson).cell);
	const opening = lesson === 'final' ? (await openingsOf(db, [person.id], now.toISOString())).at(-1) : undefined;
	const unlocked = (await triesOf(db, [person.id], lesson)).get(person.id)?.unlockedAfter ?? 0;
	const unlockedAfter = Math.max(0, unlocked - (all.length - tries.length));
	const shut = running !== undefined ? undefined : shutBecause({ course, lesson, tries, passed: replayed?.end?.kind === 'passed', day, rule, unlockedAfter });
	return { course, seq, all, tries, running, day, rule, opening, shut };
}

function shutBecause(of: {
	readonly course: CourseState;
	readonly lesson: CoursePlace;
	readonly tries: readonly CheckTry[];
	readonly passed: boolean;
	readonly day: string;
	readonly rule: PassRule;
	/** How many of the tries there had been at the last unlocking. */
	readonly unlockedAfter: number;
}): Shut | undefined {
	const { course, lesson, tries, day, rule } = of;
	if (lesson === 'final') {
		if (of.passed) return 'passed';
		if (!allPassed(courseBook(), course)) return 'not-ready';
	} else {
		const { place, context } = lessonState(course, lesson);
		if (context.passed) return 'passed';
		if (place !== 'ready') return 'not-ready';
	}
	// Before another try at a lesson's check stands practice; at the final check stands a trainer.
	if (lesson === 'final' && tries.length - of.unlockedAfter >= rule.tries.beforeUnlock) return 'locked';
	return tries.filter((one) => one.day === day).length >= rule.tries.perDay ? 'tomorrow' : undefined;
}

/** Where a person stands with a check: the running one, or the last that ended, or whether one can be begun. */
export interface CheckDesk {
	readonly view: CheckView | undefined;
	/** Why none can be begun; undefined if one can, or one runs. */
	readonly shut: Shut | undefined;
	/** A trainer who is present has opened the next one. */
	readonly supervised: Supervision | null;
	readonly rule: PassRule;
	readonly tries: number;
}

/** @returns where a person stands with a check. */
export async function checkDesk(db: Database, person: Person, lesson: CoursePlace, now: Date): Promise<CheckDesk> {
	const { tries, running, rule, opening, shut } = await situationOf(db, person, lesson, now);
	const last = tries.at(-1);
	const shown = running ?? (last === undefined ? undefined : await replayedCheck(db, last));
	return {
		view: shown === undefined ? undefined : viewOf(shown),
		shut,
		supervised: opening === undefined ? null : supervisionOf(opening),
		rule,
		tries: tries.length
	};
}

function supervisionOf(opening: Opening): Supervision {
	return { trainer: opening.trainer, identified: opening.identified, place: opening.place, until: opening.expiresAt };
}

function courseRow(person: string, seq: number, record: CourseRecord, day: string, now: Date): NewCourseEvent {
	return {
		id: randomUUID(),
		person_id: person,
		seq,
		lesson: record.lesson,
		kind: record.kind,
		sent: 'null',
		payload: payloadText({ record }),
		day,
		at: now.toISOString()
	};
}

function eventRow(check: string, seq: number, stored: StoredStep, sent: unknown, now: Date, id: string = randomUUID()): CheckWrites['events'][number] {
	return { id, check_id: check, seq, kind: stored.kind, sent: JSON.stringify(sent ?? null), payload: JSON.stringify(stored), at: now.toISOString() };
}

/** Begins a check, or goes on with the one that runs: whoever asks twice gets the same. */
export async function beginCheck(db: Database, person: Person, lesson: CoursePlace, language: 'en' | 'es', now: Date): Promise<CheckResult> {
	for (let tries = 0; tries < TRIES; tries += 1) {
		const situation = await situationOf(db, person, lesson, now);
		if (situation.running !== undefined) return { kind: 'done', view: viewOf(situation.running) };
		if (situation.shut !== undefined) return { kind: 'shut', why: situation.shut };
		const { day, rule, opening, seq } = situation;
		const seed = randomBytes(SEED_BYTES).toString('hex');
		const used = await itemsOf(db, situation.all);
		const start: CheckTry = {
			id: randomUUID(),
			person_id: person.id,
			lesson,
			nth: situation.all.length + 1,
			rule: JSON.stringify(rule),
			seed,
			language,
			supervision: opening === undefined ? null : JSON.stringify(supervisionOf(opening)),
			day,
			at: now.toISOString()
		};
		const page: StoredStep = { kind: 'page', items: pageItems(firstPage(rule), seed, [], used) };
		const wrote = await writeCheck(db, {
			start,
			events: [eventRow(start.id, 1, page, null, now)],
			course: lesson === 'final' ? [] : [courseRow(person.id, seq + 1, { kind: 'check-started', lesson }, day, now)],
			...(opening === undefined ? {} : { opening: opening.id })
		});
		if (wrote) return { kind: 'done', view: viewOf(await replayedCheck(db, start)) };
	}
	return refused(409, 'check', 'could not be begun beside another tab', 'open it again');
}

async function itemsOf(db: Database, tries: readonly CheckTry[]): Promise<readonly CheckItem[]> {
	const all: CheckItem[] = [];
	for (const one of tries) all.push(...(await replayedCheck(db, one)).asked);
	return all;
}

/** Something that was sent before under this id: done already, or refused if it said something else. */
function repeated(check: Replayed, sent: { readonly id: string }): CheckResult | undefined {
	const before = check.sent.get(sent.id);
	if (before === undefined) return undefined;
	return before === JSON.stringify(sent) ? { kind: 'done', view: viewOf(check) } : refused(409, 'id', 'stands for something else', 'send this under a new UUID');
}

const siteAnswer = z.strictObject({ kind: z.literal('site'), answers: z.record(z.string().max(40), z.unknown()) });
const sentAnswer = z.strictObject({
	/** Made by the client, so that an answer that is sent twice is stored once. */
	id: z.uuid().lowercase(),
	item: z.string().min(1).max(12),
	answer: z.union([siteAnswer, pictureAnswerSchema])
});

/** Stores the answer to an item of the page at hand; a later one takes its place. Nothing is said of right or wrong. */
export async function answerItem(db: Database, person: Person, check: string, input: unknown, now: Date): Promise<CheckResult> {
	const read = fitJson(input, sentAnswer);
	if (read.kind === 'refused') return read;
	const sent = read.value;
	for (let tries = 0; tries < TRIES; tries += 1) {
		const of = await findTry(db, person.id, check);
		if (of === null) return refused(404, 'check', 'is not among your checks', 'open the check again');
		const replayed = await replayedCheck(db, of);
		const before = repeated(replayed, sent);
		if (before !== undefined) return before;
		if (replayed.end !== undefined) return refused(409, 'check', 'has ended', 'see how it went');
		const item = replayed.items.find((one) => one.id === sent.item);
		if (item === undefined) return refused(409, 'item', 'is not on the page at hand', 'open the check again');
		const answer = fitAnswer(drawItem(item), sent.answer, replayed.of.language === 'es' ? 'es' : 'en');
		if (answer.kind === 'refused') return answer;
		if (JSON.stringify(replayed.answers[item.id]) === JSON.stringify(answer.value)) return { kind: 'done', view: viewOf(replayed) };
		if (replayed.seq >= MOST_EVENTS) return refused(429, 'body', 'is one change too many for one check', 'hand the page in');
		const row = eventRow(check, replayed.seq + 1, { kind: 'answered', item: item.id, answer: answer.value }, sent, now, sent.id);
		if (await writeCheck(db, { events: [row], course: [] })) return { kind: 'done', view: viewOf(await replayedCheck(db, of)) };
	}
	return refused(409, 'id', 'could not be stored beside other answers', 'send it again');
}

/** Holds an answer against what the item asks. An entry that cannot be read is asked for again, as in practice. */
function fitAnswer(drawn: DrawnItem, answer: z.output<typeof sentAnswer>['answer'], language: 'en' | 'es'): { kind: 'read'; value: ItemAnswer } | Refused {
	if (drawn.kind === 'picture') {
		return answer.kind === 'picture' ? { kind: 'read', value: answer } : refused(400, 'answer', 'is no answer to a picture', 'mark what is to be seen, and choose');
	}
	if (answer.kind !== 'site') return refused(400, 'answer', 'marks no picture here', 'answer what is asked');
	const read = fitJson(answer.answers, sentSchemaPart(drawn.asks));
	if (read.kind === 'refused') return read;
	for (const ask of drawn.asks) {
		const one = read.value[ask.id];
		if (ask.kind !== 'number' || one?.kind !== 'number') continue;
		const reading = readQuantity(one.text, readingOf(drawn.problem.scenario, ask, language));
		if (reading.kind === 'unreadable' || reading.kind === 'question') {
			return refused(422, `answer.${ask.id}`, 'cannot be read as one number', 'write a number with its unit');
		}
	}
	return { kind: 'read', value: { kind: 'site', answers: read.value } };
}

const sentPage = z.strictObject({ id: z.uuid().lowercase(), items: z.array(z.string().max(12)).min(1).max(60) });

/**
 * Hands the page at hand in: grades it, judges by the rule, and brings the next page or the end, with all that
 * hangs on it, in one step. A page that was handed in before is not judged twice.
 */
export async function handIn(db: Database, person: Person, check: string, input: unknown, now: Date): Promise<CheckResult> {
	const read = fitJson(input, sentPage);
	if (read.kind === 'refused') return read;
	const sent = read.value;
	for (let tries = 0; tries < TRIES; tries += 1) {
		const of = await findTry(db, person.id, check);
		if (of === null) return refused(404, 'check', 'is not among your checks', 'open the check again');
		const replayed = await replayedCheck(db, of);
		const before = repeated(replayed, sent);
		if (before !== undefined) return before;
		if (replayed.end !== undefined) return refused(409, 'check', 'has ended', 'see how it went');
		const page = replayed.items.map((item) => item.id);
		if (page.join() !== sent.items.join()) return refused(409, 'items', 'are not the page at hand', 'open the check again');
		const missing = page.filter((id) => replayed.answers[id] === undefined);
		if (missing.length > 0) return refused(422, missing[0] ?? 'items', 'is not answered yet', 'answer every question of the page first');
		const writes = await judged(db, person, replayed, sent, now);
		if (await writeCheck(db, writes)) return { kind: 'done', view: viewOf(await replayedCheck(db, of)) };
	}
	return refused(409, 'id', 'could not be handed in beside another tab', 'open the check again');
}

async function judged(db: Database, person: Person, check: Replayed, sent: z.output<typeof sentPage>, now: Date): Promise<CheckWrites> {
	const { of, rule } = check;
	const language = of.language === 'es' ? 'es' : 'en';
	const results = check.items.map((item) => gradeItem(item, check.answers[item.id], language));
	const verdict = standing(rule, [...check.results, ...results].map((one) => one.outcome));
	const earlier = await triesAt(db, person.id, of.lesson);
	const used = await itemsOf(db, earlier.filter((one) => one.id !== of.id));
	const items = verdict.kind === 'more' ? pageItems(verdict.slots, of.seed, check.asked, used) : [];
	const event = eventRow(of.id, check.seq + 1, { kind: 'handed-in', results, standing: verdict, items }, sent, now, sent.id);
	if (verdict.kind === 'more') return { events: [event], course: [] };
	const organisation = await findOrganisation(db, person.organisation);
	if (organisation === null) throw new Error('A person without an organisation');
	const day = dayIn(organisation.zone, now);
	const { seq } = await courseOf(db, person.id, now);
	const course = recordsOfEnd(of.lesson as CoursePlace, verdict).map((record, i) => courseRow(person.id, seq + 1 + i, record, day, now));
	const at = now.toISOString();
	const completion: Completion | undefined =
		of.lesson !== 'final' || verdict.kind !== 'passed'
			? undefined
			: {
					id: randomUUID(),
					organisation_id: person.organisation,
					person_id: person.id,
					course: COURSE.id,
					version: COURSE.version,
					check_id: of.id,
					supervised: supervisionAt(of, at) === null ? 0 : 1,
					language: of.language,
					day,
					at
				};
	return {
		events: [event],
		course,
		...(completion === undefined ? {} : { completion }),
		first: (transaction) => lockChain(transaction, organisation.id),
		beside: async (transaction) => {
			// Read again as it is stored: that is what the digest holds.
			const stored = await findTry(transaction, person.id, of.id);
			if (stored === null) throw new Error('A check that is not there any more');
			const settings = await recordSettings(transaction, organisation.id);
			const events = await eventsOf(transaction, of.id);
			const ended = { organisation, settings, of: stored, events, passed: verdict.kind === 'passed', day, completion, at, by: person.id };
			await appendEntries(transaction, organisation.id, await checkEndEntries(transaction, ended));
		}
	};
}

/** What the end of a check does to the course: it ends the lesson's check, or opens again the lessons of cells not passed. */
function recordsOfEnd(lesson: CoursePlace, end: Extract<Standing, { kind: CheckEnd }>): readonly CourseRecord[] {
	if (lesson !== 'final') return [{ kind: 'check-ended', lesson, passed: end.kind === 'passed' }];
	const cells = end.kind === 'passed' ? [] : end.cells;
	return courseBook()
		.filter((one) => cells.includes(one.cell))
		.map((one) => ({ kind: 'reopened', lesson: one.id }));
}
