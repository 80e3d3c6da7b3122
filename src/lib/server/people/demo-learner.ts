/**
 * Goes through the course as a learner does who knows the answers, or gives chosen wrong ones. How events are sent
 * is up to who drives: to the functions of the server, or to its addresses.
 */
import { randomUUID } from 'node:crypto';
import { LESSON_IDS, lessonOf, type CoursePlace, type LessonId, type Task } from '#lib/course/index.ts';
import { drawPicture, type PictureAnswer } from '#lib/findings/index.ts';
import { lessonState, type CourseState, type LessonTask } from '#lib/flow/index.ts';
import { givenSteps, walkOf } from '#lib/grading/index.ts';
import { numberAsks, type Problem } from '#lib/scenario/index.ts';
import { writeQuantity } from '#lib/quantity/index.ts';
import { findTask } from '../course/book.ts';
import { drawItem, type CheckItem } from '../course/items.ts';
import { lessonProblem } from '../course/receive.ts';
import { answered } from './demo-answers.ts';

/** What the driver is told after an event. */
export interface Told {
	readonly counts: boolean;
	readonly state: CourseState;
}

/** What the driver is told of a check. */
export interface ToldOfCheck {
	readonly id: string;
	readonly end: string | null;
	readonly items: readonly { readonly id: string; readonly filled: boolean }[];
}

export interface Transport {
	readonly event: (event: Readonly<Record<string, unknown>>) => Promise<Told>;
	readonly begin: (lesson: CoursePlace) => Promise<ToldOfCheck>;
	readonly answer: (check: string, body: Readonly<Record<string, unknown>>) => Promise<ToldOfCheck>;
	readonly page: (check: string, body: Readonly<Record<string, unknown>>) => Promise<ToldOfCheck>;
	/** The items of a running check, which only the server knows. */
	readonly items: (check: string) => Promise<readonly CheckItem[]>;
}

/** Whether the nth answer (from 0) shall be right. */
export type Plan = (nth: number, what: { readonly lesson: CoursePlace; readonly task: string }) => boolean;

const ALWAYS: Plan = () => true;

/** A number that no engine gives: far over everything asked, so on one side of the right one. */
const WRONG = '987654';

/** @returns answers to a problem's asks, all right or all numbers wrong. */
function answersTo(problem: Problem, asks: readonly string[], right: boolean): Record<string, Record<string, string>> {
	const all = answered(problem).answers;
	return Object.fromEntries(
		asks.map((ask) => {
			const answer = all[ask] ?? {};
			return [ask, right || answer['kind'] === 'decision' ? answer : { kind: 'number', text: WRONG }];
		})
	);
}

function pictureAnswer(picture: string, seed: number, right: boolean): PictureAnswer {
	const { key, shown } = drawPicture(picture, seed);
	const wrong = shown.choices.find((choice) => choice.id !== key.choice)?.id ?? key.choice;
	return { kind: 'picture', marked: key.marks, choice: right ? key.choice : wrong };
}

/** @returns the event that answers the problem at hand of a lesson. */
export function answerEvent(lesson: LessonId, next: LessonTask, right: boolean): Record<string, unknown> {
	const task = findTask(next.task);
	if (task === undefined) throw new Error(`no task ${next.task}`);
	const base = { id: randomUUID(), lesson, task: next.task };
	if (task.kind === 'finding') {
		return { ...base, kind: 'answered-picture', seed: next.seed, answer: pictureAnswer(task.picture, next.seed, right) };
	}
	const problem = lessonProblem(task, next.seed);
	const half = next.halfDone === undefined ? undefined : lessonOf(lesson).halfDone[next.halfDone];
	if (half?.kind === 'ask') return { ...base, ...stepsEvent(problem, half.ask, half.blank, right) };
	return { ...base, ...siteEvent(task, problem, right) };
}

function stepsEvent(problem: Problem, askId: string, blank: 1 | 2 | 'all', right: boolean): Record<string, unknown> {
	const ask = numberAsks(problem.scenario).find((one) => one.id === askId);
	if (ask === undefined) throw new Error(`no ask ${askId}`);
	const { unit } = ask.precision;
	const texts = walkOf(problem, ask)
		.slice(givenSteps(problem, ask, blank))
		.map((step) =>
			!right ? WRONG : unit === 'in' ? writeQuantity(step.value, { unit: 'ft-in', inchDenominator: 16, language: 'en' }) : writeQuantity(step.value, { unit, decimals: 5, language: 'en' })
		);
	return { kind: 'answered-steps', seed: problem.seed, texts, language: 'en' };
}

function siteEvent(task: Extract<Task, { kind: 'site' }>, problem: Problem, right: boolean): Record<string, unknown> {
	const { scenario, version, drawVersion, slipSetVersion, seed, acceptedTry, language } = answered(problem);
	const origin = { scenario, version, drawVersion, slipSetVersion, acceptedTry, language };
	return { kind: 'answered-site', seed, site: { ...origin, asks: task.asks, answers: answersTo(problem, task.asks, right) } };
}

export class CourseDriver {
	readonly #to: Transport;
	readonly #plan: Plan;
	/** Problems answered so far, in lessons and checks. */
	answered = 0;

	constructor(to: Transport, plan: Plan = ALWAYS) {
		this.#to = to;
		this.#plan = plan;
	}

	/** Looks at the shown example of a lesson, and goes on. */
	async show(lesson: LessonId): Promise<CourseState> {
		for (const [step] of lessonOf(lesson).example.steps.entries()) await this.#to.event({ id: randomUUID(), kind: 'shown', lesson, step });
		return (await this.#to.event({ id: randomUUID(), kind: 'went-on', lesson })).state;
	}

	/** Answers the problem at hand of a lesson. */
	async answer(lesson: LessonId, state: CourseState): Promise<Told> {
		const { next } = lessonState(state, lesson);
		if (next === undefined) throw new Error(`${lesson} asks nothing now`);
		const right = this.#plan(this.answered, { lesson, task: next.task });
		this.answered += 1;
		return this.#to.event(answerEvent(lesson, next, right));
	}

	/** Practises a lesson until its check is open. @param most problems at most */
	async practise(lesson: LessonId, from: CourseState, most = 80): Promise<CourseState> {
		let state = from;
		for (let i = 0; i < most; i += 1) {
			const { place } = lessonState(state, lesson);
			if (place === 'ready' || place === 'passed') return state;
			state = place === 'showing' ? await this.show(lesson) : (await this.answer(lesson, state)).state;
		}
		throw new Error(`${lesson} was not ready after ${most} problems`);
	}

	/** Takes a check to its end. @returns how it ended */
	async check(lesson: CoursePlace): Promise<string> {
		let check = await this.#to.begin(lesson);
		while (check.end === null) {
			const items = await this.#to.items(check.id);
			for (const { id, filled } of check.items) {
				const item = items.find((one) => one.id === id);
				if (filled || item === undefined) continue;
				const right = this.#plan(this.answered, { lesson, task: item.task });
				this.answered += 1;
				await this.#to.answer(check.id, { id: randomUUID(), item: id, answer: checkAnswer(item, right) });
			}
			check = await this.#to.page(check.id, { id: randomUUID(), items: check.items.map((item) => item.id) });
		}
		return check.end;
	}

	/**
	 * The course: all lessons with their checks, then the final check.
	 * @param until the last place that is gone to
	 * @returns how its check ended
	 */
	async course(state: CourseState, until: CoursePlace = 'final'): Promise<string> {
		let now = state;
		for (const lesson of LESSON_IDS) {
			if (lessonState(now, lesson).context.passed) continue;
			if (lessonState(now, lesson).place === 'showing') now = await this.show(lesson);
			if (lessonState(now, lesson).place !== 'checking') now = await this.practise(lesson, now);
			const end = await this.check(lesson);
			if (lesson === until) return end;
		}
		return this.check('final');
	}
}

/** @returns the answer to an item of a check. */
export function checkAnswer(item: CheckItem, right: boolean): Record<string, unknown> {
	const drawn = drawItem(item);
	if (drawn.kind === 'picture') return { ...pictureAnswer(drawn.picture.id, drawn.picture.seed, right) };
	const asks = drawn.asks.map((ask) => ask.id);
	return { kind: 'site', answers: answersTo(drawn.problem, asks, right) };
}
