/** A guest works site problems from the draw to the explained mistake. */
import { expect, test, type Page } from '@playwright/test';
import { numberAsks, type Problem } from '#lib/scenario/index.ts';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { walkOf } from '#lib/grading/index.ts';
import { addressOf, answer, builtFiles, check, enter, heading, lastAttempt, open, problemOf, ready, rightEntries, slipEntry, typed, whole } from './learner.ts';

const bridge = problemOf('bridge-bearing', 1);

test('one click leads from the start page into a site problem', async ({ page }) => {
	await page.goto('/');
	await page.getByRole('link', { name: 'Open a site problem' }).click();
	await expect(page).toHaveURL(/\/learn\/problem\?scenario=[a-z-]+&seed=\d+$/);
	await ready(page);
	await expect(page.getByRole('img', { name: /Elevation to scale/ }).first()).toBeVisible();
});

test('right answers are called right, stored before the reply, and found again', async ({ page }) => {
	await open(page, bridge);
	await answer(page, bridge, rightEntries(bridge));
	await expect(heading(page)).toHaveText('Right, all of it.');
	await expect(page.getByText('Stored.')).toBeVisible();
	const stored = await page.request.get(`/api/attempts/${await lastAttempt(page)}`);
	expect(stored.status()).toBe(200);
	expect(await stored.json()).toMatchObject({ scenario: 'bridge-bearing', seed: 1, acceptedTry: bridge.acceptedTry });
});

const SLIPS = [
	['free-fall', 'lanyard-for-free-fall', /It looks as if you took the whole lanyard, .* for the free fall\./],
	['required', 'elongation-left-out', /It looks as if the absorber’s .* is not on your tape\./],
	['required', 'margin-left-out', /It looks as if the margin of .* is not on your tape\./]
] as const;

test('three different slips are each traced and named, and both tapes shown', async ({ page }) => {
	await open(page, bridge);
	for (const [ask, slip, said] of SLIPS) {
		await answer(page, bridge, { ...rightEntries(bridge), [ask]: slipEntry(bridge, ask, slip) });
		await expect(heading(page)).toHaveText(said);
		await expect(heading(page)).toBeFocused();
		await expect(page.getByRole('img', { name: /Both tapes/ })).toBeVisible();
		await expect(page.getByRole('row').filter({ hasText: /you: / }).first()).toBeVisible();
		await page.getByRole('button', { name: 'Try again' }).click();
		await expect(page.locator('.explained')).toHaveCount(0);
	}
});

test('the step where learner and engine part is marked, with what was left out', async ({ page }) => {
	await open(page, bridge);
	await answer(page, bridge, { ...rightEntries(bridge), required: slipEntry(bridge, 'required', 'elongation-left-out') });
	await expect(page.getByRole('row', { name: /Elongation.*you: left out/ })).toBeVisible();
	await expect(page.getByText('On the unsafe side')).toBeVisible();
});

test('a verdict names its checks with clause and mark, and carries the caution', async ({ page }) => {
	await open(page, bridge);
	await answer(page, bridge, rightEntries(bridge));
	await page.getByText('All checks').click();
	await expect(page.locator('.source').first()).toBeVisible();
	await expect(page.getByText('This is a training aid, not a design tool.')).toBeVisible();
	await expect(page.locator('body')).not.toContainText(/\bsafe\b/i);
});

test('one error counts once: a later step that follows the own value is right', async ({ page }) => {
	await open(page, bridge);
	const required = numberAsks(bridge.scenario).find((ask) => ask.id === 'required');
	if (required === undefined) throw new Error('no such ask');
	await answer(page, bridge, { ...rightEntries(bridge), required: slipEntry(bridge, 'required', 'elongation-left-out') });
	await page.getByRole('button', { name: 'Work it through step by step' }).click();
	const steps = walkOf(bridge, required);
	const off = 0.5;
	for (const [i, step] of steps.entries()) {
		const field = page.getByRole('textbox');
		const value = i === 0 || step.id === 'freeFall' ? step.value + (i === 0 ? off : -off) : step.value;
		await field.fill(typed(required, step.id === 'requiredClearance' ? step.value : value));
		await page.getByRole('button', { name: 'Check this step' }).click();
		const result = page.locator('[data-result]');
		await expect(result).toBeFocused();
		await expect(result).toContainText(i === 0 ? /Here it is/ : step.id === 'freeFall' ? /Right with your own number before/ : /Right/);
		await page.getByRole('button', { name: i === steps.length - 1 ? 'Back to the result' : 'Next step' }).click();
	}
	await expect(page.locator('.explained')).toBeVisible();
});

/** A problem in which the elongation alone is more than the margin: who leaves it out meets the ground. */
function withLongElongation(): Problem {
	for (let seed = 1; seed < 100; seed += 1) {
		const problem = problemOf('bridge-bearing', seed);
		const { absorber, margin } = problem.drawn.plan;
		if ((absorber?.elongation ?? 0) > (margin ?? Infinity)) return problem;
	}
	throw new Error('no such problem among the first hundred');
}

test('the fall plays to its end, and shows what the learner’s number means', async ({ page }) => {
	const long = withLongElongation();
	await open(page, long);
	await answer(page, long, { ...rightEntries(long), required: slipEntry(long, 'required', 'elongation-left-out') });
	const slider = page.getByRole('slider');
	const end = Number(await slider.getAttribute('aria-valuemax'));
	await page.getByRole('button', { name: 'True speed' }).click();
	await page.getByRole('button', { name: 'Play' }).click();
	await expect.poll(async () => Number(await slider.getAttribute('aria-valuenow'))).toBeLessThan(end);
	await expect.poll(async () => Number(await slider.getAttribute('aria-valuenow')), { timeout: 15_000 }).toBe(end);
	await page.getByRole('button', { name: /Ground at your/ }).click();
	await expect(page.getByText(/Not arrested: /)).toBeVisible();
	await expect(page.getByText('The same fall, with the ground just where your number says it fits.')).toBeVisible();
});

test('an entry that cannot be read, or can be read in two ways, is asked about and never wrong', { tag: '@en' }, async ({ page }) => {
	await open(page, bridge);
	const before = rightEntries(bridge);
	await enter(page, bridge, { ...before, 'free-fall': 'about one', required: '1,234' });
	await check(page);
	await expect(page.getByText('This is not counted as wrong.')).toHaveCount(2);
	await expect(page.locator('#answer-free-fall')).toBeFocused();
	await page.getByRole('group', { name: 'Which one do you mean?' }).getByRole('button').first().click();
	await expect(page.getByText('This is not counted as wrong.')).toHaveCount(1);
	await enter(page, bridge, before);
	await check(page);
	await expect(heading(page)).toHaveText('Right, all of it.');
	const sent = await page.evaluate(() => JSON.parse(localStorage.getItem('underfoot.problem.bridge-bearing.1') ?? '{}').sent.length);
	expect(sent).toBe(1);
});

test('an empty field is asked for before anything is marked', async ({ page }) => {
	await open(page, bridge);
	await enter(page, bridge, { 'free-fall': '1.00' });
	await check(page);
	await expect(page.locator('#answer-required')).toBeFocused();
	await expect(page.getByText('Write an answer here first.')).toBeVisible();
	await expect(page.getByText('Choose one of the two first.')).toBeVisible();
});

test('a reload goes on where it was: typed numbers, the explanation, the steps', async ({ page }) => {
	await open(page, bridge);
	await enter(page, bridge, { 'free-fall': '1.23' });
	await page.reload();
	await expect(page.locator('#answer-free-fall')).toHaveValue('1.23');
	await answer(page, bridge, { ...rightEntries(bridge), required: slipEntry(bridge, 'required', 'elongation-left-out') });
	const said = await heading(page).textContent();
	await page.reload();
	await expect(heading(page)).toHaveText(said ?? '');
	await page.getByRole('button', { name: 'Work it through step by step' }).click();
	await page.locator('#step-0').fill('0.77');
	await page.reload();
	await expect(page.locator('#step-0')).toHaveValue('0.77');
});

test('a broken store starts over and saves what was typed', { tag: '@en' }, async ({ page }) => {
	await open(page, bridge);
	await enter(page, bridge, { 'free-fall': '1.23' });
	await page.evaluate(() => {
		const key = 'underfoot.problem.bridge-bearing.1';
		const kept = JSON.parse(localStorage.getItem(key) ?? '{}');
		localStorage.setItem(key, JSON.stringify({ ...kept, machine: 99, state: 'flying' }));
		localStorage.setItem('underfoot.outbox', '{"not":"a list"}');
	});
	await page.reload();
	await expect(page.locator('#answer-free-fall')).toHaveValue('1.23');
	await answer(page, bridge, rightEntries(bridge));
	await expect(page.getByText('Stored.')).toBeVisible();
});

test('without signal an answer is graded, waits on the device, and is sent once the signal is back', async ({ page, context }) => {
	await open(page, bridge);
	await whole(page);
	await context.setOffline(true);
	await answer(page, bridge, rightEntries(bridge));
	await expect(heading(page)).toHaveText('Right, all of it.');
	await expect(page.getByText('1 answer waits on this device to be sent.')).toBeVisible();
	const id = await lastAttempt(page);
	await context.setOffline(false);
	await expect(page.getByText('Stored.')).toBeVisible();
	expect((await page.request.get(`/api/attempts/${id}`)).status()).toBe(200);
});

test('the server’s word counts where it marks otherwise, and that is said', { tag: '@en' }, async ({ page }) => {
	await page.route('**/api/attempts', async (route) => {
		const response = await route.fetch();
		const body = await response.json();
		body.grades.required = { ...body.grades.required, mark: { kind: 'wrong', critical: true } };
		await route.fulfill({ response, json: body });
	});
	await open(page, bridge);
	await answer(page, bridge, rightEntries(bridge));
	await expect(page.getByText('The server marked this otherwise than this device. Its word counts.')).toBeVisible();
	await expect(heading(page)).not.toHaveText('Right, all of it.');
});

test('the next problem is another site, also after a reload', { tag: '@en' }, async ({ page }) => {
	await open(page, bridge);
	await answer(page, bridge, rightEntries(bridge));
	await page.getByRole('button', { name: 'Next problem' }).click();
	await expect(page).not.toHaveURL(addressOf(bridge));
	await expect(page).not.toHaveURL(/scenario=bridge-bearing/);
	const second = page.url();
	await expect(page.getByRole('textbox').first()).toBeVisible();
	await page.reload();
	expect(page.url()).toBe(second);
});

test('without signal the next problem is another case of the same site', async ({ page, context }) => {
	await open(page, bridge);
	await whole(page);
	await context.setOffline(true);
	await answer(page, bridge, rightEntries(bridge));
	await page.getByRole('button', { name: 'Next problem' }).click();
	await expect(page).toHaveURL(/scenario=bridge-bearing&seed=(?!1$)\d+$/);
	await expect(page.locator('#answer-free-fall')).toHaveValue('');
	await expect(page.locator('.explained')).toHaveCount(0);
});

test('where several slips fit, one more question decides; none of them leads to the steps', { tag: '@en' }, async ({ page }) => {
	await open(page, bridge);
	const { absorber, margin } = bridge.drawn.plan;
	// By hand: leaving out 0.95 m of elongation or 1.00 m of margin ends near 1.8 m, and so coarsely it was typed.
	expect([absorber?.elongation, margin]).toEqual([0.95, 1]);
	await answer(page, bridge, { ...rightEntries(bridge), required: '1.8' });
	await expect(heading(page)).toHaveText('1.8 m is not the number here.');
	const which = page.getByRole('group', { name: /fit your number/ });
	await which.getByRole('button', { name: 'Elongation left out' }).click();
	await expect(heading(page)).toHaveText('So it was this: the absorber’s 0.95 m is not on your tape.');
	await expect(page.getByRole('row', { name: /Elongation.*you: left out/ })).toBeVisible();
	await page.reload();
	await expect(heading(page)).toHaveText(/^So it was this: /);

	await page.getByRole('button', { name: 'Try again' }).click();
	await answer(page, bridge, { ...rightEntries(bridge), required: '1.8' });
	await which.getByRole('button', { name: 'None of these' }).click();
	await expect(heading(page)).toHaveText('No pattern fits this number.');
	await expect(page.locator('.buttons button').first()).toHaveText('Work it through step by step');
});

test('a wrong decision over right numbers is what the explanation is about', async ({ page }) => {
	await open(page, bridge);
	const right = rightEntries(bridge);
	expect(right['decision']).toBe('tie-off');
	await answer(page, bridge, { ...right, decision: 'do-not-tie-off' });
	await expect(heading(page)).toHaveText('You turned down a tie-off that passes.');
});

for (const [language, solved] of [
	['en', 'Right, all of it.'],
	['es', 'Bien, todo.']
] as const) {
	test(`every site is solved, and no word is missing, ${language}`, { tag: `@${language}` }, async ({ page, baseURL }) => {
		test.slow();
		await page.context().addCookies([{ name: 'language', value: language, url: baseURL ?? '' }]);
		for (const { id } of shippedScenarios()) {
			const problem = problemOf(id, 2);
			await open(page, problem);
			await page.locator('.list-link').click();
			await expect(page.locator('caption').first()).toBeVisible();
			await answer(page, problem, rightEntries(problem, language));
			await expect(heading(page), id).toHaveText(solved);
			await page.locator('summary').last().click();
			await expect(page.locator('body'), id).not.toContainText(/undefined|NaN|\[object|\{[a-zA-Z]+\}/);
		}
	});
}

/** Holds the code that marks back. @returns what lets it go */
async function holdMarking(page: Page): Promise<() => void> {
	const [file = ''] = builtFiles('src/routes/learn/problem/parts/grading.ts');
	let release = (): void => undefined;
	const held = new Promise<void>((done) => (release = done));
	await page.route(`**/${file}`, async (route) => {
		await held;
		await route.continue();
	});
	return release;
}

test('a check pressed before the code that marks has come is marked once it has', { tag: '@en' }, async ({ page }) => {
	const release = await holdMarking(page);
	await open(page, bridge);
	await enter(page, bridge, { ...rightEntries(bridge), 'free-fall': slipEntry(bridge, 'free-fall', 'lanyard-for-free-fall') });
	await check(page);
	await expect(page.getByText('Your answers are checked as soon as the rest of this page has come.')).toBeVisible();
	await expect(page.locator('.explained')).toHaveCount(0);
	release();
	await expect(heading(page)).toHaveText(/It looks as if you took the whole lanyard/);
});

test('what cannot be read is in focus also where the code that marks came after the check', { tag: '@en' }, async ({ page }) => {
	const release = await holdMarking(page);
	await open(page, bridge);
	await enter(page, bridge, { ...rightEntries(bridge), 'free-fall': 'about one' });
	await check(page);
	await expect(page.getByText('Your answers are checked as soon as the rest of this page has come.')).toBeVisible();
	release();
	await expect(page.getByText('This is not counted as wrong.')).toBeVisible();
	await expect(page.locator('#answer-free-fall')).toBeFocused();
});
