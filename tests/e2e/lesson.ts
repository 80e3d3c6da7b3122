/** Somebody in a lesson in a browser, with the answers that the engine has for it. */
import { expect, type Page } from '@playwright/test';
import { lessonOf, type LessonId, type Task } from '#lib/course/index.ts';
import { drawPicture } from '#lib/findings/index.ts';
import { givenSteps, walkOf } from '#lib/grading/index.ts';
import { numberAsks, type Problem } from '#lib/scenario/index.ts';
import { findTask } from '#lib/server/course/book.ts';
import { lessonProblem } from '#lib/server/course/receive.ts';
import { check, enter, rightEntries, typed } from './learner.ts';

/** Which problem is on screen, as the device keeps it. */
export interface OnScreen {
	readonly task: { readonly task: string; readonly seed: number; readonly halfDone?: number };
	readonly nth: number;
	readonly answered: boolean;
}

/** A number that no engine gives. */
const WRONG = '987';

/** @returns the problem that is on screen, once there is one. */
export async function onScreen(page: Page, lesson: LessonId): Promise<OnScreen> {
	const read = (end: string): string | null => {
		const key = Object.keys(localStorage).find((one) => one.startsWith('underfoot.lesson.') && one.endsWith(end));
		return key === undefined ? null : localStorage.getItem(key);
	};
	await page.waitForFunction(read, `.${lesson}`);
	const kept: OnScreen = JSON.parse((await page.evaluate(read, `.${lesson}`)) ?? 'null');
	return kept;
}

/** @returns the task of what is on screen. */
export function taskOf({ task }: OnScreen): Task {
	const found = findTask(task.task);
	if (found === undefined) throw new Error(`no task ${task.task}`);
	return found;
}

/** @returns the site problem that is on screen. */
export function problemOn(at: OnScreen): Problem {
	const task = taskOf(at);
	if (task.kind !== 'site') throw new Error(`${task.id} is no site problem`);
	return lessonProblem(task, at.task.seed);
}

/** Looks at the shown example to its end, by the arrow keys, and goes on by Enter. */
export async function seeExample(page: Page, lesson: LessonId): Promise<void> {
	const { steps } = lessonOf(lesson).example;
	await expect(page.locator('.example')).toBeVisible();
	for (const [i] of steps.entries()) {
		await expect(page.locator('.progress')).toHaveText(new RegExp(`\\b${String(i + 1)}\\b.*\\b${String(steps.length)}\\b`));
		if (i < steps.length - 1) await page.keyboard.press('ArrowRight');
	}
	await page.locator('.bar button.main').press('Enter');
	await expect(page.locator('.example')).toHaveCount(0);
}

/** Answers what is on screen, by the ask's id or all of it right or wrong, and waits for the explanation. */
export async function answerTask(page: Page, lesson: LessonId, right: boolean, entries?: Readonly<Record<string, string>>): Promise<OnScreen> {
	const at = await onScreen(page, lesson);
	const task = taskOf(at);
	if (task.kind === 'finding') await answerPicture(page, at, task.picture, lesson, right);
	else if (at.task.halfDone !== undefined) await answerSteps(page, at, lesson, right);
	else await answerSite(page, at, task.asks, right, entries);
	return at;
}

async function answerSite(page: Page, at: OnScreen, asks: readonly string[], right: boolean, entries?: Readonly<Record<string, string>>): Promise<void> {
	const problem = problemOn(at);
	const all = Object.entries(rightEntries(problem)).filter(([ask]) => asks.includes(ask));
	await expect(page.locator('.work > .answers')).toBeVisible();
	await page.waitForFunction((seed) => Object.keys(localStorage).some((key) => key.startsWith('underfoot.problem.') && key.includes(`.${String(seed)}`)), problem.seed);
	const wrong = (entry: string): string => (right || entry.includes('tie-off') ? entry : WRONG);
	await enter(page, problem, { ...Object.fromEntries(all.map(([ask, entry]) => [ask, wrong(entry)])), ...entries });
	await check(page);
	await expect(page.locator('.explained')).toBeVisible();
}

async function answerSteps(page: Page, at: OnScreen, lesson: LessonId, right: boolean): Promise<void> {
	const problem = problemOn(at);
	const half = lessonOf(lesson).halfDone[at.task.halfDone ?? -1];
	const ask = half?.kind === 'ask' ? numberAsks(problem.scenario).find((one) => one.id === half.ask) : undefined;
	if (half?.kind !== 'ask' || ask === undefined) throw new Error('no half-done example');
	const open = walkOf(problem, ask).slice(givenSteps(problem, ask, half.blank));
	for (const [i, step] of open.entries()) await page.locator(`#open-${String(i)}`).fill(right ? typed(ask, step.value) : WRONG);
	await page.locator('.half button.main').click();
	await expect(page.locator('.half [data-result]')).toBeFocused();
}

async function answerPicture(page: Page, at: OnScreen, id: string, lesson: LessonId, right: boolean): Promise<void> {
	const { shown, key } = drawPicture(id, at.task.seed);
	const given = at.task.halfDone !== undefined && lessonOf(lesson).halfDone[at.task.halfDone]?.blank === 1;
	if (!given) {
		if (key.marks.length === 0) await page.locator('.finding .nothing').click();
		for (const mark of key.marks) await page.locator('.finding .target').nth(shown.parts.findIndex((part) => part.id === mark)).click();
	}
	const choice = shown.choices.findIndex((one) => (one.id === key.choice) === right);
	await page.locator('.finding .choice input').nth(choice).check();
	await page.locator('.picture-task > button.main').click();
	await expect(page.locator('.picture-task [data-result]')).toBeVisible();
}

/** From an explanation to the next problem. */
export async function nextTask(page: Page): Promise<void> {
	const before = await page.evaluate(() => document.querySelector('main')?.className);
	const button = page.getByRole('button', { name: /^(Next problem|Next example|Otro problema|Otro ejemplo)$/ });
	await button.click();
	expect(before).toBeDefined();
	await expect(button).toHaveCount(0);
}
