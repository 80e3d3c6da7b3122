/** Goes through the pages of the course as a learner who knows the answers, with chosen slips. */
import { expect, type Locator, type Page } from '@playwright/test';
import { LESSON_IDS, lessonOf, type CoursePlace, type LessonId, type Task } from '#lib/course/index.ts';
import { drawPicture, type Picture } from '#lib/findings/index.ts';
import { givenSteps, walkOf } from '#lib/grading/index.ts';
import type { Language } from '#lib/quantity/index.ts';
import { numberAsks, type Problem } from '#lib/scenario/index.ts';
import { findTask } from '#lib/server/course/book.ts';
import { drawItem, type CheckItem } from '#lib/server/course/items.ts';
import { lessonProblem } from '#lib/server/course/receive.ts';
import type { Messages } from '#lib/text/index.ts';
import { readItems, storedCourse } from '../support/course-over-http.ts';
import type { CourseLearner } from './course-people.ts';
import type { Hands } from './hands.ts';
import { rightEntries, typed, type Entered } from './learner.ts';

/** Which problem of a lesson is on screen, as the device keeps it. */
interface OnScreen {
	readonly task: { readonly task: string; readonly seed: number; readonly halfDone?: number };
}

/** What is answered: a problem of a lesson in its three forms, or an item of a check. */
type Asked = 'site' | 'picture' | 'steps' | 'item';

/** Whether an answer shall be right: of the nth (from 0) in a lesson, or in a check. */
export type Rightly = (place: CoursePlace, nth: number, what: Asked) => boolean;

/** More problems than a lesson takes, even with slips. */
const MOST_PROBLEMS = 40;

/** A number that no engine gives, over everything that is asked. */
const FAR_OVER = '987';

export interface CoursePagesOptions {
	readonly page: Page;
	readonly hands: Hands;
	readonly m: Messages;
	readonly language: Language;
	/** The server's address and its database, where the items of a running check are read. */
	readonly address: string;
	readonly file: string;
	readonly learner: CourseLearner;
	readonly rightly?: Rightly;
	/** Comes between what is entered for an item of a check (the nth, from 0) and the button that keeps it. */
	readonly beforeKept?: (nth: number, keep: Locator) => Promise<void>;
}

export class CoursePages {
	readonly #page: Page;
	readonly #hands: Hands;
	readonly #m: Messages;
	readonly #of: CoursePagesOptions;
	readonly #rightly: Rightly;
	/** Problems answered in lessons, and items in checks. */
	answered = 0;
	/** Wrong answers to which the explanation came. */
	explained = 0;

	constructor(of: CoursePagesOptions) {
		this.#of = of;
		this.#page = of.page;
		this.#hands = of.hands;
		this.#m = of.m;
		this.#rightly = of.rightly ?? (() => true);
	}

	#main(): Locator {
		return this.#page.locator('main');
	}

	#button(name: string): Locator {
		return this.#page.getByRole('button', { name, exact: true });
	}

	/** Joins the crew by its code, and comes to the course. */
	async join(): Promise<void> {
		const { address, learner } = this.#of;
		await this.#page.goto(`${address}/join`);
		await this.#hands.write(this.#page.locator('#code'), learner.code);
		await this.#hands.write(this.#page.locator('#name'), learner.name);
		await this.#hands.write(this.#page.locator('#number'), learner.number);
		await this.#hands.press(this.#page.locator('form[action="?/find"] button[type=submit]'));
		await this.#hands.write(this.#page.locator('#pin'), learner.pin);
		await this.#hands.write(this.#page.locator('#again'), learner.pin);
		await this.#hands.press(this.#page.locator('form[action="?/join"] button[type=submit]'));
		await expect(this.#page).toHaveURL(`${address}/learn`);
	}

	/** Signs in by number and PIN, and comes to the course. */
	async signIn(): Promise<void> {
		const { address, learner } = this.#of;
		await this.#page.goto(`${address}/sign-in`);
		await this.#hands.write(this.#page.locator('#number'), learner.number);
		await this.#hands.write(this.#page.locator('#pin'), learner.pin);
		await this.#hands.press(this.#page.locator('form[action="?/learner"] button[type=submit]'));
		await expect(this.#page).toHaveURL(`${address}/learn`);
	}

	async signOut(): Promise<void> {
		await this.#hands.press(this.#page.locator('summary').first());
		await this.#hands.press(this.#page.locator('form[action="/sign-out"] button'));
		await expect(this.#page).toHaveURL(`${this.#of.address}/`);
	}

	/** From the start page through all lessons and their checks, and the final check, back to the start page. */
	async course(): Promise<void> {
		for (const lesson of LESSON_IDS) {
			await expect(this.#page.locator('#title')).toContainText(lesson === 'stages' ? this.#m.learn.startTitle : this.#m.lessons.of[lesson].title);
			await this.#hands.press(this.#page.locator('.go a.main'));
			await this.lesson(lesson);
			await this.check(lesson);
		}
		await expect(this.#page.locator('#title')).toHaveText(this.#m.learn.finalTitle);
		await this.#hands.press(this.#page.locator('.go a.main'));
		await this.check('final');
	}

	/** A lesson, from its first screen until the way to its check is taken. */
	async lesson(lesson: LessonId): Promise<void> {
		await expect(this.#page).toHaveURL(new RegExp(`/learn/lesson/${lesson}$`));
		const toCheck = this.#page.locator('.strip a.check');
		for (let nth = 0; nth < MOST_PROBLEMS; ) {
			await expect(this.#page.locator('.example, .strip').first()).toBeVisible();
			if (await this.#page.locator('.example').isVisible()) {
				await this.#example(lesson);
				continue;
			}
			await this.#answer(lesson, nth);
			nth += 1;
			if (await toCheck.isVisible()) {
				await this.#hands.press(toCheck);
				return;
			}
			const { nextProblem, nextExample } = this.#m.lessonPage;
			const next = this.#page.locator('main').getByRole('button', { name: nextProblem, exact: true }).or(this.#button(nextExample));
			await this.#hands.press(next);
			await expect(this.#page.locator('.explained, [data-result]')).toHaveCount(0);
		}
		throw new Error(`${lesson} was not ready after ${MOST_PROBLEMS} problems`);
	}

	async #example(lesson: LessonId): Promise<void> {
		const { steps } = lessonOf(lesson).example;
		const caption = this.#page.locator('.example .caption');
		for (const i of steps.keys()) {
			await expect(this.#page.locator('.example')).toContainText(this.#m.lessons.course.stepOf({ n: i + 1, of: steps.length }));
			await expect(caption).toHaveText(/\S/);
			await this.#hands.press(this.#page.locator('.bar button.main'));
		}
		await expect(this.#page.locator('.example')).toHaveCount(0);
	}

	/** The problem on screen. */
	async #onScreen(lesson: LessonId): Promise<OnScreen['task']> {
		const key = `underfoot.lesson.${this.#of.learner.person}.${lesson}`;
		await this.#page.waitForFunction((kept) => localStorage.getItem(kept)?.includes('"answered":false') === true, key);
		const kept: OnScreen = JSON.parse((await this.#page.evaluate((one) => localStorage.getItem(one), key)) ?? '{}');
		return kept.task;
	}

	async #answer(lesson: LessonId, nth: number): Promise<void> {
		const { task: id, seed, halfDone } = await this.#onScreen(lesson);
		const task = findTask(id);
		if (task === undefined) throw new Error(`no task ${id}`);
		const half = halfDone === undefined ? undefined : lessonOf(lesson).halfDone[halfDone];
		const kind = task.kind === 'finding' ? 'picture' : half === undefined ? 'site' : 'steps';
		const right = this.#rightly(lesson, nth, kind);
		this.answered += 1;
		if (task.kind === 'finding') {
			await this.#mark(drawPicture(task.picture, seed), right, half?.blank !== 1);
			await this.#hands.press(this.#button(this.#m.lessonPage.checkPicture));
		} else if (half?.kind === 'ask') await this.#steps(lessonProblem(task, seed), half.ask, half.blank, right);
		else await this.#site(lessonProblem(task, seed), task, right);
		await this.#expectTold(kind, right);
	}

	/** After every answer stands what was right and why, never a bare "wrong". */
	async #expectTold(kind: Exclude<Asked, 'item'>, right: boolean): Promise<void> {
		const { pictureRight, stepsRight } = this.#m.lessonPage;
		const result = kind === 'site' ? this.#page.locator('.explained h1') : this.#page.locator('[data-result]');
		await expect(result).toBeVisible();
		const allRight = kind === 'site' ? this.#m.page.rightAll : kind === 'picture' ? pictureRight : stepsRight;
		if (right) {
			await expect(result).toHaveText(allRight);
			return;
		}
		await expect(result).not.toHaveText(allRight);
		await expect(kind === 'site' ? this.#page.locator('.explained table') : this.#main()).toHaveText(/\S/);
		this.explained += 1;
	}

	async #site(problem: Problem, task: Extract<Task, { kind: 'site' }>, right: boolean): Promise<void> {
		const entries = rightEntries(problem, this.#of.language);
		await this.#page.waitForFunction((seed) => Object.keys(localStorage).some((key) => key.startsWith('underfoot.problem.') && key.includes(`.${seed}`)), problem.seed);
		for (const ask of problem.scenario.asks.filter((one) => task.asks.includes(one.id))) {
			const entry = entries[ask.id] ?? '';
			await this.#enter(ask.id, ask.kind === 'number' && !right ? FAR_OVER : entry, this.#page.locator('.ask'));
		}
		const bar = this.#page.locator('.bar button.main');
		await this.#hands.press((await bar.isVisible()) ? bar : this.#page.locator('form .check button'));
	}

	/** Enters one answer. @param places where asks stand, in practice or in a check */
	async #enter(field: string, entry: Entered, places: Locator): Promise<void> {
		if (entry === 'tie-off' || entry === 'do-not-tie-off') {
			await this.#hands.press(this.#page.locator('.decision button').nth(entry === 'tie-off' ? 0 : 1));
		} else if (entry === 'not-stated') {
			await this.#hands.tick(places.filter({ has: this.#page.locator(`#answer-${field}`) }).getByRole('checkbox'));
		} else {
			await this.#hands.write(this.#page.locator(`#answer-${field}`), entry);
		}
	}

	async #steps(problem: Problem, askId: string, blank: 1 | 2 | 'all', right: boolean): Promise<void> {
		const ask = numberAsks(problem.scenario).find((one) => one.id === askId);
		if (ask === undefined) throw new Error(`no ask ${askId}`);
		const open = walkOf(problem, ask).slice(givenSteps(problem, ask, blank));
		for (const [i, step] of open.entries()) await this.#hands.write(this.#page.locator(`#open-${i}`), right ? typed(ask, step.value, this.#of.language) : FAR_OVER);
		await this.#hands.press(this.#button(this.#m.lessonPage.checkSteps));
	}

	async #mark({ shown, key }: Picture, right: boolean, marks: boolean): Promise<void> {
		if (marks) {
			if (key.marks.length === 0) await this.#hands.press(this.#page.locator('.finding .nothing'));
			for (const mark of key.marks) await this.#hands.press(this.#page.locator('.finding .target').nth(shown.parts.findIndex((part) => part.id === mark)));
		}
		const choice = shown.choices.findIndex((one) => (one.id === key.choice) === right);
		await this.#hands.choose(this.#page.locator('.finding .choice input').nth(choice));
	}

	/** A check, from its first screen to its end and back to the start page. */
	async check(place: CoursePlace): Promise<void> {
		const c = this.#m.checkPage;
		await expect(this.#page).toHaveURL(new RegExp(`/learn/check/${place}$`));
		await this.#hands.press(this.#button(c.begin));
		const { file, learner } = this.#of;
		const passed = this.#page.getByRole('heading', { level: 1, name: c.passed, exact: true });
		let nth = 0;
		let wrong = 0;
		while (!(await passed.isVisible())) {
			await expect(this.#page.locator('[data-check-lead]')).toBeVisible();
			const items = readItems(file, storedCourse(file, learner.person).tries.at(-1)?.id ?? '');
			for (const [i, item] of items.entries()) {
				await expect(this.#page.locator('[data-check-lead]')).toHaveText(c.item({ n: i + 1, of: items.length }));
				const right = this.#rightly(place, nth, 'item');
				await this.#item(item, nth, right, i === items.length - 1 ? c.saveLast : c.save);
				nth += 1;
				wrong += right ? 0 : 1;
			}
			await expect(this.#page.getByRole('heading', { level: 1 })).toHaveText(c.reviewTitle);
			await this.#hands.press(this.#button(c.handIn));
			await expect(passed.or(this.#page.getByText(c.nextPage))).toBeVisible();
		}
		// After the end every item is told: right or wrong, with the reasons.
		const told = this.#page.locator('.items > li');
		await expect(told).toHaveCount(nth);
		const toldWrong = told.filter({ has: this.#page.getByRole('heading', { name: new RegExp(`: ${c.itemWrong}$`) }) });
		await expect(toldWrong).toHaveCount(wrong);
		await this.#hands.press(this.#page.getByRole('link', { name: c.toCourse, exact: true }));
		await expect(this.#page).toHaveURL(`${this.#of.address}/learn`);
	}

	async #item(item: CheckItem, nth: number, right: boolean, done: string): Promise<void> {
		const drawn = drawItem(item);
		this.answered += 1;
		if (drawn.kind === 'picture') {
			await this.#mark(drawn.picture, right, true);
		} else {
			const entries = rightEntries(drawn.problem, this.#of.language);
			for (const ask of drawn.asks) {
				const entry = ask.kind === 'number' && !right ? FAR_OVER : (entries[ask.id] ?? '');
				await this.#enter(`${item.id}-${ask.id}`, entry, this.#page.locator('.asks > *'));
			}
		}
		await this.#of.beforeKept?.(nth, this.#button(done));
		await this.#hands.press(this.#button(done));
	}
}
