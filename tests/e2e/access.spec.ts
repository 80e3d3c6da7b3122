/** Site problems for everyone: by keyboard, with a screen reader's rules, small screens, large text, two languages. */
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { answer, check, enter, heading, open, problemOf, ready, rightEntries, slipEntry } from './learner.ts';

const bridge = problemOf('bridge-bearing', 1);
const wrong = { ...rightEntries(bridge), required: slipEntry(bridge, 'required', 'elongation-left-out') };

async function faults(page: Page): Promise<string[]> {
	const { violations } = await new AxeBuilder({ page }).analyze();
	return violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).slice(0, 3).join(', ')}`);
}

async function overflow(page: Page): Promise<number> {
	return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

for (const colours of ['light', 'dark'] as const) {
	// The colours are the same on both screens: by night it is looked at once.
	test(`axe finds nothing on any state, ${colours}`, { tag: colours === 'dark' ? '@en' : [] }, async ({ page }) => {
		await page.emulateMedia({ colorScheme: colours, reducedMotion: 'reduce' });
		await open(page, bridge);
		expect(await faults(page), 'reading').toEqual([]);
		await enter(page, bridge, { 'free-fall': '1,234' });
		await check(page);
		expect(await faults(page), 'missing').toEqual([]);
		await page.getByRole('button', { name: 'All numbers as a list' }).click();
		await expect(page.getByRole('table')).toBeVisible();
		await enter(page, bridge, { ...wrong, 'free-fall': '1,234' });
		await check(page);
		expect(await faults(page), 'asked').toEqual([]);
		await answer(page, bridge, wrong);
		await page.getByText('All checks').click();
		expect(await faults(page), 'explained').toEqual([]);
		await page.getByRole('button', { name: 'Work it through step by step' }).click();
		await page.getByRole('textbox').fill('9');
		await page.getByRole('button', { name: 'Check this step' }).click();
		expect(await faults(page), 'stepping').toEqual([]);
		await page.getByRole('button', { name: 'Leave the steps' }).click();
		await page.getByRole('button', { name: 'Try again' }).click();
		await answer(page, bridge, rightEntries(bridge));
		expect(await faults(page), 'solved').toEqual([]);
	});
}

test('axe finds nothing on the start page, the formulas and an error', async ({ page }) => {
	for (const path of ['/', '/method', '/no-such-page', '/learn/problem?scenario=none&seed=1']) {
		await page.goto(path);
		expect(await faults(page), path).toEqual([]);
	}
});

/** Tabs until a wanted element has the focus; fails after many presses. */
async function tabTo(page: Page, wanted: string): Promise<void> {
	for (let i = 0; i < 80; i += 1) {
		await page.keyboard.press('Tab');
		if (await page.evaluate((selector) => document.activeElement?.matches(selector) === true, wanted)) return;
	}
	throw new Error(`the keyboard never reaches ${wanted}`);
}

test('a problem is finished by keyboard alone', { tag: '@en' }, async ({ page }) => {
	// The layout of a screen that has a keyboard.
	await page.setViewportSize({ width: 1440, height: 900 });
	await page.goto('/');
	await tabTo(page, 'a.main');
	await page.keyboard.press('Enter');
	await ready(page);
	await open(page, bridge);
	const right = rightEntries(bridge);
	await tabTo(page, '#answer-free-fall');
	await page.keyboard.type(right['free-fall'] ?? '');
	await tabTo(page, '#answer-required');
	await page.keyboard.type(wrong.required ?? '');
	await tabTo(page, '.decision button');
	if (right['decision'] === 'do-not-tie-off') await page.keyboard.press('Tab');
	await page.keyboard.press('Space');
	await page.keyboard.press('Shift+Tab');
	await tabTo(page, 'button[type=submit].main');
	await page.keyboard.press('Enter');
	await expect(heading(page)).toHaveText(/is not on your tape/);
	await expect(heading(page)).toBeFocused();
	await tabTo(page, '[role=slider]');
	const at = Number(await page.getByRole('slider').getAttribute('aria-valuenow'));
	await page.keyboard.press('ArrowLeft');
	expect(Number(await page.getByRole('slider').getAttribute('aria-valuenow'))).toBeLessThan(at);
	await expect(page.getByRole('slider')).toHaveAttribute('aria-valuetext', /seconds, .* metres a second/);
	await heading(page).focus();
	await tabTo(page, '.buttons button.main');
	await page.keyboard.press('Enter');
	await tabTo(page, '#answer-required');
	await page.keyboard.press('ControlOrMeta+A');
	await page.keyboard.type(right['required'] ?? '');
	await page.keyboard.press('Enter');
	await expect(heading(page)).toHaveText('Right, all of it.');
	await tabTo(page, '.buttons button.main');
	await page.keyboard.press('Enter');
	await expect(page).not.toHaveURL(/bridge-bearing/);
});

test('with reduced motion nothing moves: play steps from mark to mark', { tag: '@en' }, async ({ page }) => {
	await page.emulateMedia({ reducedMotion: 'reduce' });
	await open(page, bridge);
	await answer(page, bridge, wrong);
	const slider = page.getByRole('slider');
	const step = page.getByRole('button', { name: 'Next mark' });
	await step.click();
	const first = Number(await slider.getAttribute('aria-valuenow'));
	await page.waitForTimeout(500);
	expect(Number(await slider.getAttribute('aria-valuenow'))).toBe(first);
	await step.click();
	expect(Number(await slider.getAttribute('aria-valuenow'))).toBeGreaterThan(first);
});

test('every site fits a screen of 320 px, explained too', { tag: '@narrow' }, async ({ page }) => {
	test.slow();
	await page.setViewportSize({ width: 320, height: 640 });
	for (const scenario of shippedScenarios()) {
		const problem = problemOf(scenario.id, 1);
		await open(page, problem);
		expect(await overflow(page), `${scenario.id}, work`).toBe(0);
		await answer(page, problem, rightEntries(problem));
		await expect(heading(page)).toHaveText('Right, all of it.');
		expect(await overflow(page), `${scenario.id}, explained`).toBe(0);
	}
});

test('text at 200 % stays whole', async ({ page }) => {
	await open(page, bridge);
	await page.evaluate(() => {
		document.documentElement.style.fontSize = '200%';
	});
	expect(await overflow(page)).toBe(0);
	await answer(page, bridge, wrong);
	expect(await overflow(page)).toBe(0);
});

test('every target is at least 44 px high', async ({ page }) => {
	await open(page, bridge);
	const small = () =>
		page.evaluate(() =>
			[...document.querySelectorAll('a, button, summary, input[type=text]')]
				.filter((one) => one.getClientRects().length > 0)
				.map((one) => ({ name: `${one.tagName} ${one.textContent?.trim() ?? ''}`, height: one.getBoundingClientRect().height }))
				.filter((one) => one.height < 43.5)
		);
	expect(await small()).toEqual([]);
	await answer(page, bridge, wrong);
	expect(await small()).toEqual([]);
});

test('the same problem in Spanish: comma, words, explanation', { tag: '@en' }, async ({ page }) => {
	await open(page, bridge);
	await page.getByText('Settings').click();
	await page.getByRole('button', { name: 'Español' }).click();
	await expect(page.locator('html')).toHaveAttribute('lang', 'es');
	await ready(page);
	await enter(page, bridge, { ...rightEntries(bridge, 'es'), required: slipEntry(bridge, 'required', 'elongation-left-out').replace('.', ',') });
	await check(page);
	await expect(heading(page)).toHaveText(/^Parece que /);
	await expect(page.locator('body')).not.toContainText(/\b(undefined|NaN|null)\b/);
	await page.getByRole('button', { name: 'Intentar otra vez' }).click();
	await answer(page, bridge, rightEntries(bridge, 'es'));
	await expect(page.getByText('Guardado.')).toBeVisible();
});

test('the night colours can be chosen, and stay', { tag: '@en' }, async ({ page }) => {
	await open(page, bridge);
	await page.getByText('Settings').click();
	await page.getByRole('button', { name: 'Dark' }).click();
	await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
	await page.goto('/method');
	await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
	await expect(page.locator('body')).toHaveCSS('color', 'rgb(232, 236, 229)');
});
