/** A learner at a site problem in a browser, and the answers that the engine has for it. */
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import { analysisOf, rightValue } from '#lib/grading/index.ts';
import { writeQuantity, type Language } from '#lib/quantity/index.ts';
import { inputsFor, numberAsks, variantsFor, type Ask, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import { valuesOf } from '#lib/expression/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { problemOf } from '../support/answered.ts';

export { problemOf };

/** What is entered for one ask. */
export type Entered = string | 'not-stated' | 'tie-off' | 'do-not-tie-off';

/** A value as fine as the ask wants it, as people write it. */
export function typed(ask: NumberAsk, si: number, language: Language = 'en'): string {
	const { unit, value } = ask.precision;
	if (unit === 'in') return writeQuantity(si, { unit: 'ft-in', inchDenominator: value < 1 ? 2 : 1, language });
	return writeQuantity(si, { unit, decimals: Math.max(0, Math.ceil(-Math.log10(value))), language, withUnit: false });
}

function rightEntry(problem: Problem, ask: Ask, language: Language): Entered {
	if (ask.kind === 'decision') return analysisOf(problem).verdict.decision;
	const right = rightValue(problem, ask);
	return right === undefined ? 'not-stated' : typed(ask, right, language);
}

/** @returns the right answer to every ask, by the ask's id. */
export function rightEntries(problem: Problem, language: Language = 'en'): Record<string, Entered> {
	return Object.fromEntries(problem.scenario.asks.map((ask) => [ask.id, rightEntry(problem, ask, language)]));
}

/** @returns what a learner writes who makes one slip in one ask. */
export function slipEntry(problem: Problem, askId: string, slip: SlipId): string {
	const ask = numberAsks(problem.scenario).find((one) => one.id === askId);
	if (ask === undefined) throw new Error(`${problem.scenario.id} has no number ask ${askId}`);
	const set = variantsFor(problem, ask);
	const at = set.singles.findIndex((one) => one.slips[0] === slip);
	const value = valuesOf(set.singleProgram, inputsFor(problem, set))[at + 1];
	if (at < 0 || value === undefined) throw new Error(`${slip} does not apply to ${problem.scenario.id}`);
	return typed(ask, value);
}

/** The address of a problem. */
export function addressOf(problem: Pick<Problem, 'scenario' | 'seed'>): string {
	return `/learn/problem?scenario=${problem.scenario.id}&seed=${problem.seed}`;
}

/** Opens a problem, and waits until it takes answers. */
export async function open(page: Page, problem: Problem): Promise<void> {
	await page.goto(addressOf(problem));
	await ready(page);
}

/** Waits until the page has taken over: from then on what is typed is kept. */
export async function ready(page: Page): Promise<void> {
	await page.waitForFunction(() => Object.keys(localStorage).some((key) => key.startsWith('underfoot.problem.')));
}

interface BuiltFile {
	readonly file: string;
	readonly imports?: readonly string[];
}

/** The built files of some source files, and of all that they import. @param sources paths in the repository */
export function builtFiles(...sources: readonly string[]): readonly string[] {
	const manifest = JSON.parse(readFileSync('.svelte-kit/output/client/.vite/manifest.json', 'utf8')) as Record<string, BuiltFile>;
	const found = new Map<string, BuiltFile>();
	const find = (name: string): void => {
		const built = manifest[name];
		if (built === undefined) throw new Error(`${name} is not built by itself`);
		if (found.has(name)) return;
		found.set(name, built);
		built.imports?.forEach(find);
	};
	sources.forEach(find);
	return [...found.values()].map(({ file }) => file);
}

/** Waits until the page of a problem has all that comes behind its first paint, so that it can go on without signal. */
export async function whole(page: Page): Promise<void> {
	const files = builtFiles(...['grading', 'later', 'typing'].map((name) => `src/routes/learn/problem/parts/${name}.ts`), 'src/lib/text/en/index.ts');
	await page.waitForFunction((names) => {
		const here = performance.getEntriesByType('resource').map(({ name }) => name);
		return names.every((name) => here.some((one) => one.endsWith(name)));
	}, files);
	await page.waitForLoadState('networkidle');
}

export function heading(page: Page): Locator {
	return page.getByRole('heading', { level: 1 });
}

/** Enters answers, by the ask's id. */
export async function enter(page: Page, problem: Problem, entries: Readonly<Record<string, Entered>>): Promise<void> {
	for (const ask of problem.scenario.asks) {
		const entry = entries[ask.id];
		if (entry === undefined) continue;
		if (ask.kind === 'decision') {
			const decision = page.locator('.decision button').nth(entry === 'tie-off' ? 0 : 1);
			// A press comes at once after scrolling to it, faster than any hand: what the scrolling brings, as the bar below, can come between its two halves.
			await expect(async () => {
				await decision.click();
				await expect(decision).toHaveAttribute('aria-pressed', 'true', { timeout: 1000 });
			}).toPass();
		} else if (entry === 'not-stated') {
			await page.locator(`.ask:has(#answer-${ask.id})`).getByRole('checkbox').check();
		} else {
			await page.locator(`#answer-${ask.id}`).fill(entry);
		}
	}
}

/** Presses the button that checks, wherever it stands on this screen. */
export async function check(page: Page): Promise<void> {
	const inForm = page.locator('form button[type=submit]:visible').filter({ hasNot: page.locator('[name]') });
	const inBar = page.locator('.bar button.main');
	if (await inBar.isVisible()) {
		if ((await page.locator('.bar button').count()) === 1) await inBar.click();
		await page.locator('.bar button.main').click();
		return;
	}
	await inForm.last().click();
}

/** Answers a problem, and waits for the result. */
export async function answer(page: Page, problem: Problem, entries: Readonly<Record<string, Entered>>): Promise<void> {
	await enter(page, problem, entries);
	await check(page);
	await expect(page.locator('.explained')).toBeVisible();
}

/** The id of the last answer that this device handed in. */
export async function lastAttempt(page: Page): Promise<string> {
	const id = await page.evaluate(() => {
		const key = Object.keys(localStorage).find((one) => one.startsWith('underfoot.problem.'));
		const kept: { sent?: { id: string }[] } = JSON.parse(localStorage.getItem(key ?? '') ?? '{}');
		return kept.sent?.at(-1)?.id;
	});
	if (id === undefined) throw new Error('nothing was handed in');
	return id;
}
