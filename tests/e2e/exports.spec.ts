/** Records as files and the log of who did what, by the employer: without scripts, looked at on a computer and on the narrowest phone. */
import { createReadStream } from 'node:fs';
import { text } from 'node:stream/consumers';
import { parse } from 'csv-parse/sync';
import { expect, test, type Browser, type BrowserContext, type Download, type Page } from '@playwright/test';
import { coursePeople, type CourseLearner } from './course-people.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

// One server and one organisation for all tests of this file.
test.describe.configure({ mode: 'serial' });

/** What a spreadsheet would run, and a name that is written from right to left. */
const NAMES = ['=1+1', 'ليلى عبد الرحمن'];

let server: OwnServer;
let employer: string;
let trainer: string;
let learners: readonly CourseLearner[];

test.beforeAll(async () => {
	const file = test.info().outputPath('exports.sqlite');
	({ employer, trainer, learners } = await coursePeople(file, NAMES));
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

/** The employer's browser. These pages need no scripts; what looks whether they are well made does. */
async function browserOf(browser: Browser, locale = 'en-US', cookie = employer, scripts = true): Promise<BrowserContext> {
	const context = await browser.newContext({ baseURL: server.address, locale, javaScriptEnabled: scripts, viewport: test.info().project.use.viewport ?? null });
	await signIn(context, cookie, server.address);
	return context;
}

async function textOf(download: Download): Promise<string> {
	return text(createReadStream(await download.path(), 'utf8'));
}

async function downloadOf(page: Page, name: string): Promise<Download> {
	const coming = page.waitForEvent('download');
	await page.getByRole('button', { name: `Download ${name}` }).click();
	return coming;
}

test('a file comes by one click, with the days and the mark that were asked for', { tag: '@en' }, async ({ browser }) => {
	const context = await browserOf(browser, 'en-US', employer, false);
	const page = await context.newPage();
	await page.goto('/records/exports');
	await page.getByLabel('For a spreadsheet program').check();
	const people = await downloadOf(page, 'people.csv');
	expect(people.suggestedFilename()).toBe('people.csv');
	const content = await textOf(people);
	expect(content.startsWith('\ufeff')).toBe(true);
	const rows: readonly Readonly<Record<string, string>>[] = parse(content, { columns: true, bom: true });
	// The formula is guarded, the other name is as it was entered.
	expect(rows.map((row) => row['name']).filter((name) => name !== 'Helle Brandt').sort()).toEqual(["'=1+1", NAMES[1]]);
	expect(rows.find((row) => row['name'] === NAMES[1])).toMatchObject({ personal_number: 'K-2', crews: 'Bridges North', state: 'never' });

	await page.getByLabel('First day').fill('2030-01-01');
	const later: readonly unknown[] = parse(await textOf(await downloadOf(page, 'log.csv')), { columns: true, bom: true });
	expect(later).toEqual([]);
	const everything = JSON.parse(await textOf(await downloadOf(page, 'everything.json'))) as { readonly people: readonly unknown[]; readonly entries: readonly unknown[] };
	expect(everything.people).toHaveLength(4);
	expect(everything.entries.length).toBeGreaterThanOrEqual(4);
	await context.close();
});

test('days that do not fit are said on the page, with what was typed', { tag: '@en' }, async ({ browser }) => {
	const context = await browserOf(browser);
	const page = await context.newPage();
	await page.goto('/records/exports');
	await page.getByLabel('First day').fill('2026-03-02');
	await page.getByLabel('Last day').fill('2026-03-01');
	await page.getByRole('button', { name: 'Download completions.csv' }).click();
	await expect(page.getByRole('alert')).toBeVisible();
	await expect(page.getByLabel('Last day')).toHaveAccessibleDescription(/before the first day/);
	await expect(page.getByLabel('First day')).toHaveValue('2026-03-02');
	await expectWellMade(page, { state: 'exports, days that do not fit', screens: ['narrowest', 'as it is'], targets: true });
	await context.close();
});

test('all that is kept of one person is one file', { tag: '@en' }, async ({ browser }) => {
	const context = await browserOf(browser);
	const { person = '', name = '' } = learners[1] ?? {};
	const response = await context.request.get(`/records/person/${person}/data`);
	expect(response.headers()['content-disposition']).toBe(`attachment; filename="person-${person}.json"`);
	expect(response.headers()['cache-control']).toBe('no-store');
	expect(await response.json()).toMatchObject({ format: 'underfoot-person', account: { id: person, name }, crews: [{ name: 'Bridges North' }] });
	await context.close();
});

test('the log tells who took what, and is looked through by what, by whom and by days', { tag: '@en' }, async ({ browser }) => {
	const context = await browserOf(browser);
	const page = await context.newPage();
	await page.goto('/records/log');
	const deeds = page.getByRole('list').filter({ has: page.locator('.what') }).getByRole('listitem');
	await expect(deeds.filter({ hasText: 'data of a person exported' }).filter({ hasText: NAMES[1] ?? '' })).toHaveCount(1);
	await expect(deeds.filter({ hasText: 'records exported' })).toHaveCount(3);
	await expect(deeds.filter({ hasText: 'log.csv' })).toContainText('Jan 1, 2030');
	await expectWellMade(page, { state: 'log', screens: ['narrowest', 'as it is'], targets: true });
	await page.getByLabel('What', { exact: true }).selectOption('Sign-ins');
	await page.getByRole('button', { name: 'Show' }).click();
	await expect(page.getByText('Nothing was noted that fits.')).toBeVisible();
	await page.getByLabel('What', { exact: true }).selectOption('Exports and certificates');
	await page.getByLabel('Done by').fill('brandt');
	await page.getByRole('button', { name: 'Show' }).click();
	await expect(deeds).toHaveCount(4);
	await page.getByLabel('Done by').fill('nobody at all');
	await page.getByRole('button', { name: 'Show' }).click();
	await expect(page.getByRole('status')).toHaveText('No trainer or employer has this name.');
	await expect(page.getByLabel('Done by')).toHaveValue('nobody at all');
	await page.getByRole('link', { name: 'Show everything' }).click();
	await expect(deeds).not.toHaveCount(0);
	await context.close();
});

test('both pages read in Spanish, and a trainer has neither', { tag: '@en' }, async ({ browser }) => {
	const context = await browserOf(browser, 'es-MX');
	await context.addCookies([{ name: 'language', value: 'es', url: server.address }]);
	const page = await context.newPage();
	await page.goto('/records/exports');
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Exportar');
	await expectWellMade(page, { state: 'exports in Spanish', screens: ['narrowest', 'as it is'], targets: true });
	await page.goto('/records/log');
	await expect(page.getByText('registros exportados').first()).toBeVisible();
	await expectWellMade(page, { state: 'log in Spanish', screens: ['narrowest', 'as it is'], targets: true });
	await context.close();
	const other = await browserOf(browser, 'en-US', trainer);
	for (const path of ['/records/exports', '/records/log', '/records/exports/everything.json']) expect((await other.request.get(path)).status(), path).toBe(404);
	await other.close();
});
