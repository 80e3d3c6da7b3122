/** A lesson in a browser: as a guest on the device, and signed in on the server. */
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test';
import { openDatabase } from '#lib/server/db/open.ts';
import { recordsAfter } from '#lib/server/db/course.ts';
import { startSession } from '#lib/server/people/session.ts';
import { coursePeople, type CourseLearner } from './course-people.ts';
import { answerTask, nextTask, onScreen, problemOn, seeExample } from './lesson.ts';
import { heading, slipEntry, whole } from './learner.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';

const LESSON = 'free-fall';

async function faults(page: Page): Promise<string[]> {
	const { violations } = await new AxeBuilder({ page }).analyze();
	return violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).slice(0, 3).join(', ')}`);
}

async function overflow(page: Page): Promise<number> {
	return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Answers right until the lesson is ready for its check. @returns how many problems it took */
async function practise(page: Page, ready: RegExp): Promise<number> {
	for (let nth = 1; nth <= 25; nth += 1) {
		await answerTask(page, LESSON, true);
		if (await page.locator('[data-strip]').filter({ hasText: ready }).count()) return nth;
		await nextTask(page);
	}
	throw new Error('not ready after 25 right answers');
}

test.describe('a guest', () => {
	test('sees the example by keyboard, errs, works half-done examples, and becomes ready; a reload goes on where it was', async ({ page }) => {
		await page.goto('/learn');
		await page.getByRole('link', { name: /^3\. / }).click();
		await seeExample(page, LESSON);
		await expect(page.locator('[data-strip]')).toContainText('A first problem');

		const problem = problemOn(await onScreen(page, LESSON));
		await answerTask(page, LESSON, true, { 'free-fall': slipEntry(problem, 'free-fall', 'lanyard-for-free-fall') });
		await expect(heading(page)).toHaveText(/It looks as if you took the whole lanyard/);
		await expect(page.locator('[data-strip]')).toContainText('Half-done examples come next.');
		await page.reload();
		await expect(heading(page)).toHaveText(/It looks as if you took the whole lanyard/);
		await nextTask(page);

		await expect(page.locator('.half')).toContainText('Given');
		await page.locator('#open-0').fill('1.23');
		await page.reload();
		await expect(page.locator('#open-0')).toHaveValue('1.23');
		await answerTask(page, LESSON, false);
		await expect(page.getByText('Not yet. The working is below.')).toBeVisible();
		await nextTask(page);
		for (let i = 0; i < 3; i += 1) {
			await answerTask(page, LESSON, true);
			await expect(page.getByText('Right, all of it.')).toBeVisible();
			await nextTask(page);
		}
		await expect(page.locator('[data-strip]')).toContainText('Practice');
		await practise(page, /You are ready for the check/);
		await expect(page.locator('[data-strip]').getByRole('link', { name: 'Join your crew' })).toBeVisible();

		await page.goto('/learn');
		await expect(page.getByRole('listitem').filter({ hasText: '3. Free fall' })).toContainText('ready for its check');
		await expect(page.locator('.slips')).toContainText('Lanyard length in place of the free fall');
	});

	test('answers without signal, and the next problem comes all the same', async ({ page, context }) => {
		await page.goto(`/learn/lesson/${LESSON}`);
		await seeExample(page, LESSON);
		await whole(page);
		await context.setOffline(true);
		await answerTask(page, LESSON, true);
		await expect(heading(page)).toHaveText('Right, all of it.');
		await nextTask(page);
		await answerTask(page, LESSON, true);
		await context.setOffline(false);
		await expect(page.getByText('Stored.')).toBeVisible();
	});

	test('gets help in levels, with a pause between them, and a problem with help does not count', async ({ page }) => {
		await page.goto(`/learn/lesson/${LESSON}`);
		await seeExample(page, LESSON);
		await page.getByRole('button', { name: 'Help with question 1' }).click();
		await expect(page.getByText('A problem with help does not count toward the check.')).toBeVisible();
		await page.getByRole('button', { name: 'Show where to look' }).click();
		await expect(page.getByText(/^Read the lanyard length and the two heights/)).toBeVisible();
		await page.getByRole('button', { name: 'Show the rule' }).click({ force: true });
		await expect(page.locator('.help .formula')).toHaveCount(0);
		await expect(page.getByText('More help opens in a few seconds.')).toBeVisible();
		await expect(page.getByText('More help opens in a few seconds.')).toHaveCount(0, { timeout: 10_000 });
		await page.getByRole('button', { name: 'Show the rule' }).click();
		await expect(page.locator('.help .formula')).toHaveText(/^h = /);
		await expect(page.getByText('Help was used here. This problem does not count.')).toBeVisible();
		await answerTask(page, LESSON, true);
		await expect(page.locator('[data-strip]')).toContainText('Half-done examples come next.');
	});

	test('finds a broken store begun anew', async ({ page }) => {
		await page.goto('/learn');
		await page.evaluate(() => {
			localStorage.setItem('underfoot.course', '{"log":1,"course":"lanyard-orientation","version":1,"seed":-3,"records":[7]}');
			localStorage.setItem('underfoot.lesson.guest.free-fall', '[');
		});
		await page.goto(`/learn/lesson/${LESSON}`);
		await seeExample(page, LESSON);
		await answerTask(page, LESSON, true);
		await expect(heading(page)).toHaveText('Right, all of it.');
	});

	for (const locale of ['en-US', 'es-MX']) {
		test(`finds every state of a lesson without faults of access, and on a narrow screen, in ${locale}`, async ({ browser, baseURL }) => {
			const { viewport } = test.info().project.use;
			const context = await browser.newContext({ baseURL: baseURL ?? '', locale, viewport: viewport ?? null });
			const page = await context.newPage();
			const found: string[] = [];
			const look = async (state: string): Promise<void> => {
				found.push(...(await faults(page)).map((one) => `${state}: ${one}`));
				if ((await overflow(page)) > 0) found.push(`${state} is too wide`);
				await page.setViewportSize({ width: 320, height: 640 });
				if ((await overflow(page)) > 0) found.push(`${state} is too wide at 320 px`);
				await page.setViewportSize(viewport ?? { width: 390, height: 844 });
			};
			await page.goto('/learn');
			await look('start page');
			await page.goto(`/learn/lesson/${LESSON}`);
			await expect(page.locator('.example')).toBeVisible();
			await look('example');
			await seeExample(page, LESSON);
			await expect(page.locator('.help .open')).toBeVisible();
			await page.locator('.help .open').click();
			await page.locator('.help .more').click();
			await look('first problem');
			await answerTask(page, LESSON, false);
			await look('explained');
			await nextTask(page);
			await look('half-done');
			await answerTask(page, LESSON, false);
			await look('half-done, explained');
			await page.goto('/learn/lesson/before-and-after');
			await expect(page.locator('.example')).toBeVisible();
			await look('pictures shown');
			await seeExample(page, 'before-and-after');
			await look('picture');
			await answerTask(page, 'before-and-after', false);
			await look('picture explained');
			expect(found).toEqual([]);
			await context.close();
		});
	}
});

test.describe('a learner who is signed in', () => {
	test.describe.configure({ mode: 'serial' });

	let server: OwnServer;
	let file: string;
	let learners: readonly CourseLearner[];
	const cookies: string[] = [];

	test.beforeAll(async () => {
		file = test.info().outputPath('lesson.sqlite');
		({ learners } = await coursePeople(file, ['Ilan Mora', 'Petra Sund', 'Kofi Adu']));
		const db = await openDatabase(`file:${file}`);
		for (const { person } of learners) {
			await startSession(db, { get: () => undefined, set: (_: string, value: string) => void cookies.push(value), delete: () => undefined }, false, person, new Date());
		}
		await db.destroy();
		server = await startOwnServer(file);
	});

	test.afterAll(async () => {
		await server.end('SIGTERM');
	});

	async function signedIn(browser: Browser, nth: number): Promise<BrowserContext> {
		const context = await browser.newContext({ baseURL: server.address, locale: 'en-US', viewport: test.info().project.use.viewport ?? null });
		await context.addCookies([{ name: 'session', value: cookies[nth] ?? '', url: server.address }]);
		return context;
	}

	/** What the server holds of a learner's course. */
	async function stored(nth: number): Promise<readonly string[]> {
		const db = await openDatabase(`file:${file}`);
		const rows = await recordsAfter(db, learners[nth]?.person ?? '', 0);
		await db.destroy();
		return rows.map(({ payload }) => (JSON.parse(payload) as { record: { kind: string } }).record.kind);
	}

	test('does the first lesson on the server, finds it on another device, and is led to its check', async ({ browser }) => {
		const context = await signedIn(browser, 0);
		const page = await context.newPage();
		await page.goto('/learn');
		await expect(page.getByText('Ilan Mora', { exact: true })).toBeVisible();
		await expect(page.getByRole('link', { name: /^2\. / })).toHaveCount(0);
		await page.getByRole('link', { name: 'Begin' }).click();
		await seeExample(page, 'stages');
		await answerTask(page, 'stages', true);
		await nextTask(page);
		await answerTask(page, 'stages', true);
		await expect.poll(() => stored(0)).toContain('answered');
		await expect.poll(async () => (await stored(0)).filter((kind) => kind === 'answered').length).toBe(2);

		const other = await signedIn(browser, 0);
		const again = await other.newPage();
		await again.goto('/learn/lesson/stages');
		await expect(again.locator('[data-strip]')).toContainText('Practice');
		for (let nth = 0; nth < 12; nth += 1) {
			await answerTask(again, 'stages', true);
			if (await again.locator('[data-strip]').filter({ hasText: 'You are ready' }).count()) break;
			await nextTask(again);
		}
		await expect(again.locator('[data-strip]').getByRole('link', { name: 'To the lesson check' })).toBeVisible();
		await again.goto('/learn');
		await expect(again.getByText('You are ready for its check.')).toBeVisible();
		await expect(again.getByRole('link', { name: /^2\. / })).toBeVisible();
		await context.close();
		await other.close();
	});

	test('answers the same problem in two tabs: one counts, the other is told so', async ({ browser }) => {
		const context = await signedIn(browser, 1);
		const first = await context.newPage();
		await first.goto('/learn/lesson/stages');
		await seeExample(first, 'stages');
		await expect.poll(() => stored(1)).toContain('went-on');
		const second = await context.newPage();
		await second.goto('/learn/lesson/stages');
		await onScreen(second, 'stages');
		await expect(second.locator('.picture-task')).toBeVisible();
		const at = await answerTask(first, 'stages', true);
		await expect.poll(async () => (await stored(1)).filter((kind) => kind === 'answered').length).toBe(1);
		// The second tab still shows the problem that is answered by now: hand it in there as well.
		await second.evaluate((kept) => {
			const key = Object.keys(localStorage).find((one) => one.endsWith('.stages'));
			if (key !== undefined) localStorage.setItem(key, JSON.stringify(kept));
		}, at);
		await answerTask(second, 'stages', false);
		await expect(second.getByText('This problem was answered in another tab or on another device.')).toBeVisible();
		expect((await stored(1)).filter((kind) => kind === 'answered')).toHaveLength(1);
		await context.close();
	});

	test('loses the signal, then the session: nothing is lost, and all is sent after signing in again', async ({ browser }) => {
		const context = await signedIn(browser, 2);
		const page = await context.newPage();
		await page.goto('/learn/lesson/stages');
		await seeExample(page, 'stages');
		await expect.poll(() => stored(2)).toContain('went-on');
		await page.waitForLoadState('networkidle');
		await context.setOffline(true);
		await answerTask(page, 'stages', true);
		await expect(page.getByText('1 step waits on this device to be sent.')).toBeVisible();
		await context.clearCookies();
		await context.setOffline(false);
		await expect(page.getByText('You are no longer signed in.')).toBeVisible();
		expect(await stored(2)).not.toContain('answered');
		await context.addCookies([{ name: 'session', value: cookies[2] ?? '', url: server.address }]);
		await page.reload();
		await expect.poll(() => stored(2)).toContain('answered');
		await expect(page.getByText('You are no longer signed in.')).toHaveCount(0);
		await expect(page.locator('.picture-task [data-result]')).toBeVisible();
		await context.close();
	});
});
