/** The page of a check: answered, looked over, handed in; and what may go wrong on the way. */
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test';
import { replayed } from '#lib/server/course/state.ts';
import { openDatabase } from '#lib/server/db/open.ts';
import { CourseDriver } from '../support/course-driver.ts';
import { courseOverHttp, joinOver, postTo } from '../support/course-over-http.ts';
import { coursePeople, type CourseLearner } from './course-people.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';

// One server; every test has a learner of its own on it.
test.describe.configure({ mode: 'serial' });

const NAMES = ['Ines Okoro', 'Dario Penn', 'Noor Haddad', 'Maren Vik', 'Sefa Lindt'];

let server: OwnServer;
let file: string;
let learners: readonly CourseLearner[];

test.beforeAll(async () => {
	file = test.info().outputPath('check.sqlite');
	({ learners } = await coursePeople(file, NAMES));
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

/** A learner who has passed the first lesson and is ready for the check of the second, in a browser of their own. */
async function ready(browser: Browser, nth: number, language: 'en' | 'es' = 'en'): Promise<{ context: BrowserContext; page: Page }> {
	const learner = learners[nth];
	if (learner === undefined) throw new Error('no such learner');
	const cookie = await joinOver(server.address, learner);
	const post = (path: string, body: unknown) => postTo(server.address, path, body, { cookie });
	const driver = new CourseDriver(courseOverHttp(post, file));
	await driver.practise('stages', replayed(0, []));
	expect(await driver.check('stages')).toBe('passed');
	await driver.practise('label', replayed(0, []));
	const [name = '', value = ''] = cookie.split('=');
	const { viewport, hasTouch, isMobile } = test.info().project.use;
	const context = await browser.newContext({ baseURL: server.address, viewport: viewport ?? null, hasTouch: hasTouch ?? false, isMobile: isMobile ?? false });
	await context.addCookies([
		{ name, value, url: server.address },
		{ name: 'language', value: language, url: server.address }
	]);
	return { context, page: await context.newPage() };
}

async function begin(page: Page): Promise<void> {
	await page.goto('/learn/check/label');
	await page.getByRole('button', { name: /Begin the check|Comenzar la prueba/ }).click();
	await expect(page.getByText(/Question 1 of 3|Pregunta 1 de 3/)).toBeVisible();
}

/** Fills every field on screen and every decision, with a number that is far off. */
async function fill(page: Page, text = '41.5'): Promise<void> {
	for (const field of await page.locator('main input[type="text"]').all()) await field.fill(text);
	const decision = page.getByRole('button', { name: /^(Do not tie off|No amarrarse)$/ });
	if ((await decision.count()) > 0) await decision.click();
}

const keep = (page: Page) => page.getByRole('button', { name: /^(Keep and|Guardar y)/ });

async function answerAll(page: Page): Promise<void> {
	for (let n = 1; n <= 3; n += 1) {
		await expect(page.getByText(new RegExp(`(Question|Pregunta) ${n} (of|de) 3`))).toBeVisible();
		await fill(page);
		await keep(page).click();
	}
	await expect(page.getByRole('heading', { name: /Look the page over|Revise la página/ })).toBeVisible();
}

test('nothing is handed in that is empty or cannot be read, everything can be changed before, and the reasons come after', async ({ browser }) => {
	const { context, page } = await ready(browser, 0);
	await begin(page);

	await keep(page).click();
	await expect(page.getByRole('status')).toHaveText('Answer everything that is asked here.');
	await expect(page.locator('input[aria-invalid="true"]')).toBeFocused();

	await fill(page, 'about forty');
	await keep(page).click();
	await expect(page.locator('input[aria-invalid="true"]').first()).toBeFocused();
	await expect(page.getByText('Question 1 of 3')).toBeVisible();

	await page.getByRole('button', { name: 'Look the page over' }).click();
	await page.getByRole('button', { name: 'Hand the page in' }).click();
	await expect(page.getByRole('status')).toHaveText('3 questions are not answered yet.');
	await page.getByRole('button', { name: 'Change question 1' }).click();

	await answerAll(page);
	await expect(page.getByText(/41\.5 (kg|lb)/).first()).toBeVisible();
	await page.getByRole('button', { name: 'Change question 2' }).click();
	await expect(page.getByText('Question 2 of 3')).toBeVisible();
	await fill(page, '42.5');
	await keep(page).click();
	await expect(page.getByText(/42\.5 (kg|lb)/).first()).toBeVisible();

	await page.getByRole('button', { name: 'Hand the page in' }).click();
	await expect(page.getByRole('heading', { level: 1, name: /Not passed/ })).toBeVisible();
	await expect(page.getByText('Your answer').first()).toBeVisible();
	await expect(page.getByText('Right answer').first()).toBeVisible();
	await page.goto('/learn/check/label');
	await expect(page.getByText('This check is not open yet. Finish the practice first.')).toBeVisible();
	await context.close();
});

test('a lost connection, the back button, a reload and another window lose nothing and count nothing twice', async ({ browser }) => {
	const { context, page } = await ready(browser, 1);
	await begin(page);

	await fill(page);
	await context.setOffline(true);
	await keep(page).click();
	await expect(page.getByRole('status')).toContainText('No connection');
	await context.setOffline(false);
	// A server without room: the real one is in `full-disk.spec.ts`.
	await page.route('**/api/course/checks/*/answers', (route) => route.fulfill({ status: 507 }));
	await keep(page).click();
	await expect(page.getByRole('status')).toContainText('The server cannot store answers just now');
	await page.unroute('**/api/course/checks/*/answers');
	await keep(page).click();
	await expect(page.getByText('Question 2 of 3')).toBeVisible();

	// Entered, not kept: a reload and the way back find it.
	await fill(page, '43.5');
	await page.reload();
	await expect(page.getByText('Question 2 of 3')).toBeVisible();
	await expect(page.locator('main input[type="text"]').first()).toHaveValue('43.5');
	await page.goto('/learn');
	await page.goBack();
	await expect(page.locator('main input[type="text"]').first()).toHaveValue('43.5');

	const other = await context.newPage();
	await other.goto('/learn/check/label');
	await expect(other.getByText('Question 2 of 3')).toBeVisible();
	for (let n = 2; n <= 3; n += 1) {
		await expect(other.getByText(`Question ${n} of 3`)).toBeVisible();
		await fill(other);
		await keep(other).click();
	}
	await other.getByRole('button', { name: 'Hand the page in' }).click();
	await expect(other.getByRole('heading', { level: 1, name: /passed/i })).toBeVisible();

	await keep(page).click();
	await expect(page.getByRole('heading', { level: 1, name: /passed/i })).toBeVisible();
	const db = await openDatabase(`file:${file}`);
	const tries = await db.selectFrom('check_try').select('id').where('lesson', '=', 'label').where('person_id', '=', learners[1]?.person ?? '').execute();
	expect(tries).toHaveLength(1);
	const handed = await db.selectFrom('check_event').select('id').where('check_id', '=', tries[0]?.id ?? '').where('kind', '=', 'handed-in').execute();
	expect(handed).toHaveLength(1);
	await db.destroy();
	await context.close();
});

test('a session that is over is told in words, and signing in goes on where it stopped', async ({ browser }) => {
	const { context, page } = await ready(browser, 2);
	await begin(page);
	await fill(page, '44.5');
	await context.clearCookies({ name: 'session' });
	await keep(page).click();
	await expect(page.getByRole('status')).toContainText('You are no longer signed in');
	await page.reload();
	await expect(page).toHaveURL(/sign-in/);
	await page.getByLabel('Personal number').fill(learners[2]?.number ?? '');
	await page.getByLabel('PIN').fill(learners[2]?.pin ?? '');
	await page.getByRole('button', { name: 'Sign in' }).first().click();
	await expect(page.getByText('Question 1 of 3')).toBeVisible();
	await expect(page.locator('main input[type="text"]').first()).toHaveValue('44.5');
	await context.close();
});

test('nothing can be entered before the page’s scripts are there to keep it', async ({ browser }) => {
	const { context, page } = await ready(browser, 4);
	await begin(page);
	let release = (): void => undefined;
	const held = new Promise<void>((done) => (release = done));
	await context.route('**/*.js', async (route) => {
		await held;
		await route.continue();
	});
	await page.goto('/learn/check/label', { waitUntil: 'commit' });
	const field = page.locator('main input[type="text"]').first();
	await expect(field).toBeVisible();
	await expect(field).not.toBeEditable();
	await expect(keep(page)).toBeDisabled();
	release();
	await fill(page, '46.5');
	await keep(page).click();
	await expect(page.getByText('Question 2 of 3')).toBeVisible();
	await context.close();
});

test('axe finds nothing on any state of the page, nothing runs over, and it is Spanish throughout', async ({ browser }) => {
	const { context, page } = await ready(browser, 3, 'es');
	const sound = async (): Promise<void> => {
		const { violations } = await new AxeBuilder({ page }).analyze();
		expect(violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).join(', ')}`)).toEqual([]);
		expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
	};
	await page.goto('/learn/check/label');
	await expect(page.getByRole('heading', { level: 1 })).toContainText('Prueba');
	await sound();
	await begin(page);
	await sound();
	await keep(page).click();
	await sound();
	await answerAll(page);
	await sound();
	await page.getByRole('button', { name: 'Entregar la página' }).click();
	await expect(page.getByText('Su respuesta').first()).toBeVisible();
	await sound();
	expect(await page.locator('main').innerText()).not.toMatch(/\b(answer|check|the|passed)\b/i);
	await context.close();
});
