/** Takes in what a signed-in learner did in a lesson: judged here, stored once, and replayed ever after. */
import { drawPicture, gradePicture, type PictureGrade } from '#lib/findings/index.ts';
import { lessonOf, type HalfDone, type Task } from '#lib/course/index.ts';
import {
	allRight,
	creditsOf,
	lessonState,
	openLessons,
	pictureCredits,
	stepCourse,
	type CourseRecord,
	type CourseState,
	type LessonState
} from '#lib/flow/index.ts';
import { gradeHalfDone, type StepGrade } from '#lib/grading/index.ts';
import type { Outcome } from '#lib/mastery/index.ts';
import { firstDrawn, numberAsks, type Problem } from '#lib/scenario/index.ts';
import { markAnswers, problemOfSeed, type Scenarios } from '../attempts/mark.ts';
import { pictureOutcome, siteOutcomes } from '../attempts/outcomes.ts';
import { MOST_ANSWERS, answerWindow, attemptRow, notRead } from '../attempts/receive.ts';
import { appendEvents, eventsWithin, findEvent, type NewCourseEvent } from '../db/course.ts';
import { findAttempt, storeAttempt } from '../db/attempts.ts';
import { nthAnswer } from '../db/guests.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation } from '../db/people.ts';
import type { OutcomeTable } from '../db/schema.ts';
import { fitJson } from '../input.ts';
import type { Person } from '../people/who.ts';
import type { InputProblem } from '../problems.ts';
import { asksOf, courseBook, findTask, scenarioOf } from './book.ts';
import { dayIn } from './day.ts';
import { sentEventSchema, type SentEvent } from './sent.ts';
import { pictureEvidence, siteEvidence } from './origin.ts';
import { courseOf, payloadText, readPayload, type StoredPayload } from './state.ts';

/** How many events a person may store in a while, and how long it is, s. A learner in a hurry stays far below. */
export const MOST_EVENTS = 600;
const WHILE = 600;
/** How often an event is tried again when others of the same person come between. @reason two tabs, a few devices */
const TRIES = 8;

/** What the client is told. */
export type EventReceipt =
	| {
			readonly kind: 'stored';
			readonly status: 200 | 201;
			/** False for an answer to a problem that is no longer at hand: kept as practice, and moves nothing. */
			readonly counts: boolean;
			/** The server's own grades, as the answer asks for them. */
			readonly grades: unknown;
			/** The whole course as it stands now. */
			readonly state: CourseState;
	  }
	| { readonly kind: 'refused'; readonly status: number; readonly problems: readonly InputProblem[]; readonly retryAfter?: number };

/** What the server made of an event. */
type Judged =
	| { readonly kind: 'judged'; readonly record: CourseRecord; readonly detail?: StoredPayload['detail']; readonly attempt?: AttemptRow; readonly outcomes?: readonly OutcomeTable[]; readonly counts: boolean; readonly grades?: unknown }
	| Extract<EventReceipt, { kind: 'refused' }>;

type AttemptRow = ReturnType<typeof attemptRow>;

function refused(status: number, field: string, problem: string, remedy: string): Extract<EventReceipt, { kind: 'refused' }> {
	return { kind: 'refused', status, problems: [{ field, problem, remedy }] };
}

/**
 * Judges an event by the course as it stands, and stores it before it returns. An event that was stored before is
 * answered as it was then; an answer to a problem that is not at hand (another tab was faster, another seed was
 * chosen) is kept as practice and counts for nothing.
 */
export async function receiveEvent(db: Database, person: Person, input: unknown, scenarios: Scenarios, now: Date): Promise<EventReceipt> {
	const read = fitJson(input, sentEventSchema);
	if (read.kind === 'refused') return read;
	const sent = read.value;
	const earlier = await storedBefore(db, person, sent, now);
	if (earlier !== undefined) return earlier;
	const window = answerWindow(now);
	if ((await eventsWithin(db, person.id, window)) >= MOST_EVENTS) {
		return tooMany();
	}
	const organisation = await findOrganisation(db, person.organisation);
	if (organisation === null) throw new Error('A person without an organisation');
	const day = dayIn(organisation.zone, now);
	for (let tries = 0; tries < TRIES; tries += 1) {
		const course = await courseOf(db, person.id, now);
		const judged = await judge(sent, course.state, scenarios, person, day, now);
		if (judged.kind === 'refused') return judged;
		if (!judged.counts) return keepAsPractice(db, judged, course.state, window);
		const row = eventRow(sent, judged, { person: person.id, seq: course.seq + 1, day, now });
		if (await appendEvents(db, [row], judged.attempt ?? null, judged.outcomes)) {
			const state = stepCourse(courseBook(), course.state, judged.record);
			return { kind: 'stored', status: 201, counts: true, grades: judged.grades ?? null, state };
		}
		const between = await storedBefore(db, person, sent, now);
		if (between !== undefined) return between;
	}
	return refused(409, 'id', 'could not be stored beside other events', 'send it again under a new UUID');
}

function tooMany(): Extract<EventReceipt, { kind: 'refused' }> {
	return { ...refused(429, 'body', 'is one event too many for now', `send it again in ${WHILE} s`), retryAfter: WHILE };
}

/** An event that is stored already; refused if the id stands for something else. */
async function storedBefore(db: Database, person: Person, sent: SentEvent, now: Date): Promise<EventReceipt | undefined> {
	const known = await findEvent(db, person.id, sent.id);
	if (known === null) return undefined;
	if (known.sent !== JSON.stringify(sent)) return refused(409, 'id', 'stands for another event', 'send this one under a new UUID');
	const { state } = await courseOf(db, person.id, now);
	const attempt = sent.kind === 'answered-site' ? await findAttempt(db, person.answerer, sent.id) : null;
	const grades: unknown = attempt === null ? (readPayload(known.payload).detail?.grades ?? null) : JSON.parse(attempt.result);
	return { kind: 'stored', status: 200, counts: true, grades, state };
}

/** An answer that moves nothing: a site problem is still kept, as free practice is. */
async function keepAsPractice(db: Database, judged: Extract<Judged, { kind: 'judged' }>, state: CourseState, { since, until }: ReturnType<typeof answerWindow>): Promise<EventReceipt> {
	if (judged.attempt !== undefined) {
		if ((await nthAnswer(db, judged.attempt.guest_id, since, MOST_ANSWERS, until)) !== null) return tooMany();
		const outcome = await storeAttempt(db, judged.attempt, { outcomes: judged.outcomes ?? [] });
		if (outcome.kind === 'conflict') return refused(409, 'id', 'stands for another answer', 'send this one under a new UUID');
	}
	return { kind: 'stored', status: 200, counts: false, grades: judged.grades ?? null, state };
}

function eventRow(
	sent: SentEvent,
	judged: Extract<Judged, { kind: 'judged' }>,
	at: { readonly person: string; readonly seq: number; readonly day: string; readonly now: Date }
): NewCourseEvent {
	return {
		id: sent.id,
		person_id: at.person,
		seq: at.seq,
		lesson: sent.lesson,
		kind: judged.record.kind,
		sent: JSON.stringify(sent),
		payload: payloadText({ record: judged.record, ...(judged.detail === undefined ? {} : { detail: judged.detail }) }),
		day: at.day,
		at: at.now.toISOString()
	};
}

async function judge(sent: SentEvent, course: CourseState, scenarios: Scenarios, person: Person, day: string, now: Date): Promise<Judged> {
	const { lesson } = sent;
	if (!openLessons(courseBook(), course).includes(lesson)) {
		return refused(409, 'lesson', 'is not open yet', 'finish the lessons before it first');
	}
	const state = lessonState(course, lesson);
	if (sent.kind === 'shown') return { kind: 'judged', counts: true, record: { kind: 'shown', lesson, step: sent.step } };
	if (sent.kind === 'went-on') return { kind: 'judged', counts: true, record: { kind: 'went-on', lesson } };
	const task = findTask(sent.task);
	if (task === undefined) return refused(404, 'task', 'is not known here', 'open the lesson again');
	const counts = state.next !== undefined && state.next.task === sent.task && atHand(task, state, sent.seed);
	if (sent.kind === 'helped') {
		return { kind: 'judged', counts, record: { kind: 'helped', lesson, level: sent.level } };
	}
	const half = counts && state.next?.halfDone !== undefined ? lessonOf(lesson).halfDone[state.next.halfDone] : undefined;
	const of = { lesson, task, state, day, half, counts };
	switch (sent.kind) {
		case 'answered-site':
			return judgeSite(sent, of, scenarios, person, now);
		case 'answered-steps':
			return judgeSteps(sent, of);
		case 'answered-picture':
			return judgePicture(sent, of, person, now);
	}
}

interface Judging {
	readonly lesson: SentEvent['lesson'];
	readonly task: Task;
	readonly state: LessonState;
	readonly day: string;
	/** The half-done example at hand, or undefined for a whole problem. */
	readonly half: HalfDone | undefined;
	readonly counts: boolean;
}

/** The drawn problem of a task and the seed that the flow chose. */
export function lessonProblem(task: Extract<Task, { kind: 'site' }>, seed: number): Problem {
	const scenario = scenarioOf(task);
	return firstDrawn((one) => problemOfSeed(scenario, one), seed);
}

/** Whether a seed is that of the problem at hand; of a site problem the first that draws from the flow's seed on. */
function atHand(task: Task, state: LessonState, seed: number): boolean {
	if (state.next === undefined) return false;
	return task.kind === 'finding' ? seed === state.next.seed : seed === lessonProblem(task, state.next.seed).seed;
}

function outcomeOf(of: Judging, credits: Outcome['credits']): Outcome {
	const facts = courseBook().flatMap((lesson) => lesson.tasks).find((one) => one.id === of.task.id);
	return {
		task: of.task.id,
		kind: facts?.kind ?? of.task.id,
		difficulty: of.task.difficulty,
		day: of.day,
		aided: of.state.help > 0,
		credits
	};
}

async function judgeSite(
	sent: Extract<SentEvent, { kind: 'answered-site' }>,
	of: Judging,
	scenarios: Scenarios,
	person: Person,
	now: Date
): Promise<Judged> {
	if (of.task.kind !== 'site' || of.half !== undefined) return wrongKind();
	const marked = markAnswers({ ...sent.site, id: sent.id, seed: sent.seed }, scenarios);
	if (marked.kind === 'refused') return marked;
	if (marked.kind === 'unread') return notRead(marked);
	const { value } = marked;
	const asks = asksOf(of.task);
	const same = value.scenario.id === of.task.scenario && asks.every((ask) => value.grades[ask.id] !== undefined) && Object.keys(value.grades).length === asks.length;
	if (!same) return refused(409, 'site', 'answers another problem than this task asks', 'open the lesson again');
	const right = allRight(asks, value.grades);
	return {
		kind: 'judged',
		counts: of.counts,
		record: { kind: 'answered', lesson: of.lesson, right, outcome: outcomeOf(of, creditsOf(asks, value.grades)) },
		attempt: attemptRow(value, person.answerer, now),
		outcomes: siteOutcomes(value, { answerer: person.answerer, way: 'course', now }),
		grades: value.grades
	};
}

function wrongKind(): Judged {
	return refused(409, 'kind', 'is another kind of answer than this problem takes', 'open the lesson again');
}

function judgeSteps(sent: Extract<SentEvent, { kind: 'answered-steps' }>, of: Judging): Judged {
	const { task, half } = of;
	if (task.kind !== 'site' || half?.kind !== 'ask') return wrongKind();
	const problem = lessonProblem(task, sent.seed);
	const ask = numberAsks(problem.scenario).find((one) => one.id === half.ask);
	if (ask === undefined) throw new RangeError(`the half-done example of "${task.id}" names the ask "${half.ask}", which is no number`);
	const grades = gradeHalfDone(problem, ask, half.blank, sent.texts, sent.language);
	if (grades.length !== sent.texts.length || grades.some((grade) => grade?.kind !== 'step')) {
		return refused(422, 'texts', 'are not one readable number for each blank step', 'write a number for each step that is not given');
	}
	const right = grades.every((grade: StepGrade | undefined) => grade?.kind === 'step' && grade.mark === 'right');
	const credits = [{ cell: task.cell, skills: [], right }];
	return {
		kind: 'judged',
		counts: of.counts,
		record: { kind: 'answered', lesson: of.lesson, right, outcome: outcomeOf(of, credits) },
		detail: { grades, evidence: siteEvidence(problem) },
		grades
	};
}

function judgePicture(sent: Extract<SentEvent, { kind: 'answered-picture' }>, of: Judging, person: Person, now: Date): Judged {
	const { task, half } = of;
	if (task.kind !== 'finding') return wrongKind();
	const picture = drawPicture(task.picture, sent.seed);
	const grade: PictureGrade = gradePicture(picture, sent.answer);
	const credits = pictureCredits(task.cell, picture, grade.right);
	return {
		kind: 'judged',
		counts: of.counts && (half === undefined || half.kind === 'finding'),
		record: { kind: 'answered', lesson: of.lesson, right: grade.right, outcome: outcomeOf(of, credits) },
		outcomes: [pictureOutcome(sent.id, task.cell, picture, grade, { answerer: person.answerer, way: 'course', now })],
		detail: { grades: grade, evidence: pictureEvidence(picture) },
		grades: grade
	};
}
