/** The employer's page of the pass rule, without scripts, and what it changes for those who take the final check. */
import { expect, test, type Page } from '@playwright/test';
import { coursePeople } from './course-people.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';

test.describe.configure({ mode: 'default' });
test.use({ javaScriptEnabled: false });

let server: OwnServer;
let cookie: string;

test.beforeAll(async () => {
	const file = test.info().outputPath('pass-rule.sqlite');
	({ employer: cookie } = await coursePeople(file, []));
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

async function open(page: Page, path: string): Promise<void> {
	await signIn(page.context(), cookie, server.address);
	await page.goto(server.address + path);
}

const PAGE = '/records/settings/pass-rule';

async function fitsTheScreen(page: Page): Promise<void> {
	const [wide, screen] = await Promise.all([page.locator('html').evaluate((html) => html.scrollWidth), page.locator('html').evaluate((html) => html.clientWidth)]);
	expect(wide).toBeLessThanOrEqual(screen);
}

test('each rule stands with its clauses, its state and its rates', async ({ page }) => {
	await open(page, '/records/settings');
	await page.getByRole('link', { name: 'Look at the pass rule, or change it' }).click();
	await expect(page.getByRole('heading', { level: 1, name: 'Pass rule of the final check' })).toBeVisible();
	const rules = page.getByRole('article');
	await expect(rules).toHaveCount(3);
	const used = rules.first();
	await expect(used).toContainText('In use');
	await expect(used).toContainText('After 12 questions: pass with no error, fail with 4 or more.');
	await expect(used).toContainText('The pass mark is provisional.');
	const rates = used.getByRole('table').first();
	await expect(rates).toHaveAccessibleName(/^Of 100 workers who are right 70 times in 100, [\d.]+ pass one of 2 tries\.$/);
	await expect(rates.getByRole('row')).toHaveCount(6);
	await used.getByText('Workers who err in other ways').click();
	await expect(used.getByRole('table', { name: 'Pass the first try, of 100 workers each' })).toBeVisible();
	await fitsTheScreen(page);
});

test('a rule that is too easy is not saved, and the page says what would help; a stricter one is saved and used', async ({ page }) => {
	await open(page, PAGE);
	await page.getByRole('link', { name: /^Change the counts of: In stages/ }).click();
	const tries = page.getByLabel('Before a trainer must unlock');
	await tries.fill('four');
	await page.getByRole('button', { name: 'Save and use this rule' }).click();
	await expect(tries).toHaveAccessibleDescription('Write a whole number.');
	await tries.fill('4');
	await page.getByRole('button', { name: 'Save and use this rule' }).click();
	const alert = page.getByRole('alert');
	await expect(alert).toContainText(/It would let [\d.]+ of 100 workers through who are right only 70 times in 100\. At most 5 may get through\./);
	await expect(alert.getByRole('listitem').first()).toContainText(/^2 tries before a trainer must unlock\. Then [\d.]+ of 100 get through\.$/);
	await fitsTheScreen(page);
	await expect(tries).toHaveValue('4');
	await tries.fill('2');
	await page.getByLabel('Passes with at most so many errors').last().fill('3');
	await page.getByRole('button', { name: 'Save and use this rule' }).click();
	await expect(page.getByRole('status')).toHaveText('Your rule is saved, and in use from now on.');
	const used = page.getByRole('article').first();
	await expect(used).toContainText('Your own rule, made from “In stages: 12 to 30 questions”');
	await expect(used).toContainText('After 30 questions: pass with at most 3 errors.');
	await expect(used).toContainText('Version 1');
	// Other settings leave it alone.
	await open(page, '/records/settings');
	await page.getByRole('button', { name: 'Save' }).click();
	await expect(page.getByText('In use: Your own rule')).toBeVisible();
});

test('a review needs three judges and a day that has come; then the pass mark is theirs', async ({ page }) => {
	await open(page, PAGE);
	const link = page.getByRole('link', { name: /^Enter a review by judges of: One length/ });
	await link.click();
	await page.getByLabel('Day of the review').fill('2100-01-01');
	await page.getByLabel('Names of the judges').fill('Ana Mora\nJo Reed\n Ana  Mora ');
	await page.getByLabel('Where it is written down').fill('Minutes 14');
	await page.getByRole('button', { name: 'Enter the review' }).click();
	await expect(page.getByLabel('Day of the review')).toHaveAccessibleDescription('This day is still to come.');
	await expect(page.getByLabel('Names of the judges')).toHaveAccessibleDescription(/Name at least three different judges/);
	await page.getByLabel('Day of the review').fill('2026-03-02');
	await page.getByLabel('Names of the judges').fill('Ana Mora\nJo Reed\nLena Voss');
	await page.getByRole('button', { name: 'Enter the review' }).click();
	await expect(page.getByRole('status')).toHaveText('The review is entered. New checks say who set the pass mark.');
	const rule = page.getByRole('article').filter({ hasText: 'One length: 24 questions' }).filter({ hasText: 'Judges set' });
	await expect(rule).toContainText('Judges set the pass mark on March 2, 2026: Ana Mora, Jo Reed and Lena Voss.');
	await page.getByRole('button', { name: /^Use this rule: One length/ }).click();
	await expect(page.getByRole('status')).toHaveText('The rule is in use from now on.');
	await expect(page.getByRole('article').first()).toContainText('After 24 questions: pass with at most 3 errors.');
});

test('the method page says how practice and the final check decide, and fits the screen', async ({ page }) => {
	await page.goto(`${server.address}/method`);
	await expect(page.getByRole('heading', { name: 'How practice decides that you are ready' })).toBeVisible();
	const check = page.getByRole('region', { name: 'The final check' });
	await expect(check).toContainText('The pass mark is provisional.');
	await expect(check.getByRole('table').first()).toHaveAccessibleName(/Of 100 workers who are right 70 times in 100/);
	await fitsTheScreen(page);
});
