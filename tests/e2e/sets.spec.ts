/** Practice sets from the trainer's side: made, assigned, watched live, recalled, looked at. On a computer, and as narrow as a phone where that matters. */
import { expect, test, type Browser, type BrowserContext, type Locator, type Page } from '@playwright/test';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { asksOfPlace, placesOf, type SetContent } from '#lib/flow/index.ts';
import type { Problem } from '#lib/scenario/index.ts';
import { openDatabase } from '#lib/server/db/open.ts';
import { joinOver } from '../support/course-over-http.ts';
import { coursePeople, type CourseLearner } from './course-people.ts';
import { answer, check, problemOf, ready, rightEntries, type Entered } from './learner.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

// One server and one crew for all tests of this file.
test.describe.configure({ mode: 'serial' });

/** As long as names get, and one that is written from right to left. */
const NAMES = ['Dario Penn', 'ليلى عبد الرحمن', `Maximiliana ${'van den Oudenbroek-'.repeat(6)}Ruiz`];
const SET = 'Before the mast job';

let server: OwnServer;
let file: string;
let trainer: string;
let learners: readonly CourseLearner[];

test.beforeAll(async () => {
	file = test.info().outputPath('sets.sqlite');
	({ trainer, learners } = await coursePeople(file, NAMES));
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

/** The browser of somebody who is signed in. */
async function browserOf(browser: Browser, cookie: string, options: { readonly width?: number; readonly javaScriptEnabled?: boolean } = {}): Promise<BrowserContext> {
	const { width = 1280, javaScriptEnabled = true } = options;
	const context = await browser.newContext({ baseURL: server.address, viewport: { width, height: 844 }, javaScriptEnabled });
	await signIn(context, cookie, server.address);
	return context;
}

/** Where the page says whether it is live. */
function liveness(page: Page): Locator {
	return page.locator('.status');
}

/** What a person is asked at the places of a set that the crew has, and what is right there. */
async function problemsFor(set: string, person: string): Promise<readonly { readonly problem: Problem; readonly entries: Readonly<Record<string, Entered>> }[]> {
	const db = await openDatabase(`file:${file}`);
	const { content: text } = await db.selectFrom('practice_set').select('content').where('id', '=', set).executeTakeFirstOrThrow();
	const { seed } = await db.selectFrom('set_assignment').select('seed').where('set_id', '=', set).executeTakeFirstOrThrow();
	await db.destroy();
	const content = JSON.parse(text) as SetContent;
	return placesOf(content, shippedScenarios(), seed, person, 0).map((place) => {
		const problem = problemOf(place.scenario, place.seed);
		const right = rightEntries(problem);
		return { problem, entries: Object.fromEntries(asksOfPlace(problem.scenario, place).flatMap(({ id }) => (right[id] === undefined ? [] : [[id, right[id]]]))) };
	});
}

test('a set is made, assigned, answered, seen live without a reload, and recalled @en', async ({ browser }) => {
	const page = await (await browserOf(browser, trainer)).newPage();
	await page.goto('/crew/sets');
	await expect(page.getByText('There is no set yet.')).toBeVisible();
	await page.getByRole('link', { name: 'Make a set' }).click();

	// The list follows the choice, and how many must be right follows how many there are.
	await page.getByLabel('Free fall').check();
	await expect(page.locator('#scenario-stage-grid')).toBeHidden();
	await page.getByLabel('River viaduct, east abutment').check();
	await page.getByLabel('How many problems').fill('10');
	await expect(page.getByLabel('Right, at least')).toHaveValue('8');
	await page.getByLabel('How many problems').fill('2');
	await expect(page.getByLabel('Right, at least')).toHaveValue('2');
	await page.getByLabel('Name of the set').fill(SET);
	await expectWellMade(page, { targets: true });
	await page.getByRole('button', { name: 'Make the set' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText(SET);
	await expect(page.getByText('Passed with at least 2 of 2 right, and none on the unsafe side.')).toBeVisible();

	await page.getByRole('button', { name: 'Assign', exact: true }).click();
	await expect(page.getByRole('alert')).toHaveText('Choose a crew or a person.');
	await page.getByRole('checkbox', { name: 'Bridges North' }).check();
	await page.getByRole('button', { name: 'Assign', exact: true }).click();
	await expect(page.getByRole('status')).toHaveText(/The set is assigned/);
	const row = page.getByRole('row', { name: /^Dario Penn/ });
	await expect(row).toContainText('not started');
	await expect(liveness(page)).toHaveText(/Live\./);
	await page.evaluate(() => (document.body.dataset['kept'] = 'yes'));

	const [learner] = learners;
	if (learner === undefined) throw new Error('nobody is on the list');
	const device = await (await browserOf(browser, await joinOver(server.address, learner), { width: 390 })).newPage();
	await device.goto('/learn');
	await device.getByRole('link', { name: new RegExp(SET) }).click();
	await ready(device);
	const set = /sets\/([^?/]+)/.exec(page.url())?.[1] ?? '';
	const [first] = await problemsFor(set, learner.person);
	if (first === undefined) throw new Error('the set has no problem');
	await answer(device, first.problem, first.entries);

	await expect(row).toContainText('under way, 1 of 2');
	await expect(row).toContainText('1 right of 1');
	expect(await page.evaluate(() => document.body.dataset['kept'])).toBe('yes');
	await expectWellMade(page, { targets: true });
	await page.goto('/crew/sets');
	await expect(page.getByRole('listitem').filter({ hasText: SET })).toContainText(/Assigned to Bridges North, no due day.*Under way: 1.*Not started: 2/s);
	await expectWellMade(page, { targets: true });

	await page.goto(`/crew/sets/${set}`);
	await page.getByRole('link', { name: 'Recall from Bridges North' }).click();
	await expect(page.getByRole('heading', { name: 'Recall this set from Bridges North?' })).toBeVisible();
	await page.getByRole('button', { name: 'Recall it' }).click();
	await expect(page.getByRole('status')).toHaveText(/The set is recalled/);
	await device.goto('/learn');
	await expect(device.getByRole('heading', { level: 1 })).toBeVisible();
	await expect(device.getByRole('link', { name: new RegExp(SET) })).toHaveCount(0);
});

test('the page says so when it is not live, and when it is again @en', async ({ browser }) => {
	const context = await browserOf(browser, trainer);
	const page = await context.newPage();
	await page.goto('/crew/sets');
	await page.getByRole('link', { name: SET }).click();
	await page.getByRole('checkbox', { name: 'Bridges North' }).check();
	await page.getByRole('button', { name: 'Assign', exact: true }).click();
	await expect(liveness(page)).toHaveText(/Live\./);
	await context.setOffline(true);
	await expect(liveness(page)).toHaveText(/Not live now/);
	await context.setOffline(false);
	await expect(liveness(page)).toHaveText(/Live\./);
	// Signed out elsewhere: no other try helps.
	await context.clearCookies();
	await expect(liveness(page)).toHaveText(/Not live any more/);
});

test('without scripts a list is narrowed, nothing that was entered is lost, and faults are told at their fields @en', async ({ browser }) => {
	const page = await (await browserOf(browser, trainer, { javaScriptEnabled: false })).newPage();
	await page.goto('/crew/sets/new');
	await expect(page.locator('#scenario-yard-mast')).toBeHidden();
	await page.getByLabel('Name of the set').fill('Masts and roofs');
	await page.getByLabel('River viaduct, east abutment').check();
	await page.getByLabel('Required clearance').check();
	await page.getByLabel('Units').selectOption('Feet and pounds');
	await page.getByRole('button', { name: 'Narrow the list' }).click();
	await expect(page.locator('#scenario-yard-mast')).toBeVisible();
	// What was chosen stays in the list; what asks for nothing that is practised leaves it.
	await expect(page.getByLabel('River viaduct, east abutment')).toBeChecked();
	await expect(page.locator('#scenario-dock-sign')).toBeHidden();
	await expect(page.getByLabel('Name of the set')).toHaveValue('Masts and roofs');

	await page.getByLabel('How many problems').fill('50');
	await page.getByLabel('Right, at least').fill('all');
	await page.getByRole('button', { name: 'Make the set' }).click();
	await expect(page.getByLabel('How many problems')).toHaveValue('50');
	await expect(page.locator('#count-problem')).toHaveText(/from 1 to 40/);
	await expect(page.locator('#right-problem')).toHaveText(/whole number/);
	await page.getByLabel('How many problems').fill('3');
	await page.getByLabel('Right, at least').fill('2');
	await page.getByRole('button', { name: 'Make the set' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Masts and roofs');

	await page.getByRole('button', { name: 'Put this set away' }).click();
	await expect(page.getByRole('status')).toHaveText(/put away/);
	await expect(page.getByRole('button', { name: 'Assign', exact: true })).toHaveCount(0);
	await page.getByRole('link', { name: 'Make a copy' }).click();
	await expect(page.getByText('Copy of Masts and roofs')).toBeVisible();
	await expect(page.getByLabel('Required clearance')).toBeChecked();
	await expect(page.getByLabel('River viaduct, east abutment')).toBeChecked();
});

test('a preview shows the problems as they come, and leaves no trace @en', async ({ browser }) => {
	const page = await (await browserOf(browser, trainer)).newPage();
	const sent: string[] = [];
	page.on('request', (request) => {
		if (request.url().includes('/api/')) sent.push(`${request.method()} ${new URL(request.url()).pathname}`);
	});
	await page.goto('/crew/sets');
	await page.getByRole('link', { name: SET }).click();
	await page.getByRole('link', { name: 'See it as they do' }).click();
	await expect(page.getByText('Preview: problem 1 of 2')).toBeVisible();
	await expectWellMade(page, { targets: true });
	sent.length = 0;
	await page.locator('#answer-free-fall').fill('19.5');
	await check(page);
	await expect(page.locator('.explained')).toBeVisible();
	await page.getByRole('button', { name: 'Next problem of the set' }).click();
	await expect(page.getByText('Preview: problem 2 of 2')).toBeVisible();
	await page.reload();
	await expect(page.locator('#answer-free-fall')).toHaveValue('');
	expect(sent).toEqual([]);
	expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('underfoot.problem.') || key === 'underfoot.outbox'))).toEqual([]);
	await page.goto('/crew/sets');
	await page.getByRole('link', { name: SET }).click();
	await expect(page.getByRole('row', { name: /^Dario Penn/ })).toContainText('not started');
});
