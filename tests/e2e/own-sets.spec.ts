/** Practice sets on the learner's phone: worked without signal, sent once, each by whom it was answered. */
import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test';
import { shippedScenario } from '#lib/course/shipped.ts';
import type { SetContent, SetPlace } from '#lib/flow/index.ts';
import type { Database } from '#lib/server/db/open.ts';
import { openDatabase } from '#lib/server/db/open.ts';
import type { Person } from '#lib/server/people/who.ts';
import { assignSet } from '#lib/server/sets/assign.ts';
import { setDesk } from '#lib/server/sets/learner.ts';
import { makeSet } from '#lib/server/sets/make.ts';
import { joinOver } from '../support/course-over-http.ts';
import { coursePeople, type CourseLearner } from './course-people.ts';
import { answer, heading, problemOf, rightEntries, whole, type Entered } from './learner.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

// One server and one crew for all tests of this file.
test.describe.configure({ mode: 'serial' });

let server: OwnServer;
let db: Database;
let learners: readonly CourseLearner[];
const cookies = new Map<string, string>();

test.beforeAll(async () => {
	const file = test.info().outputPath('own-sets.sqlite');
	({ learners } = await coursePeople(file, ['Dario Penn', 'Nora Vale']));
	server = await startOwnServer(file);
	db = await openDatabase(`file:${file}`);
	for (const one of learners) cookies.set(one.person, await joinOver(server.address, one));
});

test.afterAll(async () => {
	await db.destroy();
	await server.end('SIGTERM');
});

/** Somebody as the server's functions take them. */
async function personOf(id: string): Promise<Person> {
	const row = await db.selectFrom('person').selectAll().where('id', '=', id).executeTakeFirstOrThrow();
	return { kind: 'person', id, organisation: row.organisation_id, role: row.role, name: row.name, answerer: row.answerer_id, language: null };
}

/** Hands a set out to the crew. @returns the assignment */
async function handedOut(name: string, change: Partial<SetContent>): Promise<string> {
	const { person_id: trainer, crew_id: crew } = await db.selectFrom('crew_trainer').selectAll().executeTakeFirstOrThrow();
	const who = await personOf(trainer);
	const scenarios = ['bridge-bearing', 'stage-grid'].map((id) => ({ id, version: shippedScenario(id)?.version ?? 0, asks: shippedScenario(id)?.asks.map((ask) => ask.id) ?? [] }));
	const content = { scenarios, count: 2, rule: { right: 2, critical: 0 }, sameForAll: false, language: null, aims: [], ...change };
	const made = await makeSet(db, who, { name, content }, new Date());
	const done = made.kind === 'made' ? await assignSet(db, who, made.id, { crews: [crew], people: [], dueDay: null }, new Date()) : made;
	if (done.kind !== 'assigned') throw new Error(JSON.stringify(done));
	return done.assignments[0] ?? '';
}

async function placesOf(person: string, assignment: string): Promise<readonly SetPlace[]> {
	return (await setDesk(db, await personOf(person), assignment, new Date()))?.places ?? [];
}

/** What counts of a set, of everybody. */
async function counted(assignment: string): Promise<readonly { readonly person_id: string; readonly place: number; readonly all_right: number }[]> {
	return db.selectFrom('set_answer').select(['person_id', 'place', 'all_right']).where('assignment_id', '=', assignment).orderBy('place').execute();
}

async function phone(browser: Browser): Promise<BrowserContext> {
	return browser.newContext({ baseURL: server.address, viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
}

/** Answers the problem on screen: everything right, or a number that nothing gives. */
async function work(page: Page, place: SetPlace | undefined, right: boolean, language: 'en' | 'es' = 'en'): Promise<void> {
	if (place === undefined) throw new Error('the set has no such place');
	const problem = problemOf(place.scenario, place.seed);
	const entries = rightEntries(problem, language);
	const wrong = Object.fromEntries(Object.entries(entries).map(([ask, entry]): [string, Entered] => [ask, entry === 'tie-off' || entry === 'do-not-tie-off' ? entry : '0.5']));
	await expect(page.locator('.work')).toBeVisible();
	await answer(page, problem, right ? entries : wrong);
}

test('a round is worked without signal, is sent once, and goes on with fresh problems until it is passed @narrow', async ({ browser }) => {
	const [learner] = learners;
	if (learner === undefined) throw new Error('nobody is on the list');
	const assignment = await handedOut('Night shift', {});
	const places = await placesOf(learner.person, assignment);
	const context = await phone(browser);
	await signIn(context, cookies.get(learner.person) ?? '', server.address);
	const page = await context.newPage();
	await page.goto('/learn');
	await page.getByRole('link', { name: /Night shift.*2 problems/s }).click();
	await expect(page.getByText('Problem 1 of 2')).toBeVisible();
	await expectWellMade(page, { screens: ['as it is', 'narrowest'] });
	await work(page, places[0], false);
	await expect(page.getByText(/This problem is answered/)).toBeVisible();
	await expect.poll(() => counted(assignment)).toHaveLength(1);
	// A reload finds the explanation again, and trying again is practice.
	await page.reload();
	await expect(page.locator('.explained')).toBeVisible();
	await expect(page.getByText('Problem 1 of 2')).toBeVisible();

	await context.setOffline(true);
	await page.getByRole('button', { name: 'Next problem' }).click();
	await expect(page.getByText('Problem 2 of 2')).toBeVisible();
	await work(page, places[1], true);
	await expect(page.getByText('1 answer waits on this device to be sent.')).toBeVisible();
	await page.getByRole('button', { name: 'See how it went' }).click();
	await expect(heading(page)).toHaveText(/Not passed yet/);
	await expect(page.getByText('1 of 2 right.')).toBeVisible();
	await expect(page.getByText('The fresh problems come with the signal.')).toBeVisible();
	expect(await counted(assignment)).toHaveLength(1);

	await context.setOffline(false);
	const again = page.getByRole('button', { name: 'Work it again' });
	await expect(again).toBeVisible();
	expect(await counted(assignment)).toMatchObject([{ place: 0, all_right: 0 }, { place: 1, all_right: 1 }]);
	expect(await db.selectFrom('attempt').select('id').execute()).toHaveLength(2);
	await expectWellMade(page, { screens: ['as it is', 'narrowest'] });

	await again.click();
	const fresh = await placesOf(learner.person, assignment);
	await expect(page.getByText('Problem 1 of 2, round 2')).toBeVisible();
	await work(page, fresh[0], true);
	await page.getByRole('button', { name: 'Next problem' }).click();
	await work(page, fresh[1], true);
	await page.getByRole('button', { name: 'See how it went' }).click();
	await expect(heading(page)).toHaveText(/You passed this set/);
	await expect.poll(() => counted(assignment)).toHaveLength(4);
	await page.getByRole('link', { name: 'To your start page' }).click();
	await expect(page.getByRole('link', { name: /Night shift.*passed/s })).toBeVisible();
	await context.close();
});

test('the last problem of a round stays explained until the learner goes on, though fresh ones have come @narrow', async ({ browser }) => {
	const [learner] = learners;
	if (learner === undefined) throw new Error('nobody is on the list');
	const assignment = await handedOut('One only', { count: 1, rule: { right: 1, critical: 0 } });
	const places = await placesOf(learner.person, assignment);
	const context = await phone(browser);
	await signIn(context, cookies.get(learner.person) ?? '', server.address);
	const page = await context.newPage();
	await page.goto(`/learn/set/${assignment}`);
	await expect(page.locator('.work')).toBeVisible();
	const fresh = page.waitForResponse((response) => response.url().includes('__data.json'));
	await work(page, places[0], false);
	await fresh;
	await whole(page);
	await expect(page.locator('.explained')).toBeVisible();
	await page.getByRole('button', { name: 'See how it went' }).click();
	await expect(heading(page)).toHaveText(/Not passed yet/);
	await page.getByRole('button', { name: 'Work it again' }).click();
	await expect(page.getByText('Problem 1 of 1, round 2')).toBeVisible();
	await context.close();
});

test('what one person answered on a shared phone waits for them, and is never sent as another’s @narrow', async ({ browser }) => {
	const [dario, nora] = learners;
	if (dario === undefined || nora === undefined) throw new Error('nobody is on the list');
	const assignment = await handedOut('The same for all', { sameForAll: true });
	const places = await placesOf(dario.person, assignment);
	const context = await phone(browser);
	await signIn(context, cookies.get(dario.person) ?? '', server.address);
	const page = await context.newPage();
	await page.goto(`/learn/set/${assignment}`);
	await expect(page.locator('.work')).toBeVisible();
	await whole(page);
	await context.setOffline(true);
	await work(page, places[0], true);
	await expect(page.getByText('1 answer waits on this device to be sent.')).toBeVisible();

	// The next one signs in while the page of the first is still open.
	await context.clearCookies();
	await signIn(context, cookies.get(nora.person) ?? '', server.address);
	await context.setOffline(false);
	await expect(page.getByText(/You are no longer signed in/)).toBeVisible();
	await page.goto(`/learn/set/${assignment}`);
	await expect(page.getByText('Problem 1 of 2')).toBeVisible();
	// Nothing of what the first one typed is there.
	await expect(page.locator('.work')).toBeVisible();
	await work(page, places[0], false);
	await expect.poll(() => counted(assignment)).toEqual([{ person_id: nora.person, place: 0, all_right: 0 }]);

	await context.clearCookies();
	await signIn(context, cookies.get(dario.person) ?? '', server.address);
	await page.goto('/learn');
	await expect.poll(() => counted(assignment)).toHaveLength(2);
	expect((await counted(assignment)).find((one) => one.person_id === dario.person)).toMatchObject({ place: 0, all_right: 1 });
	await expect(page.getByRole('link', { name: /The same for all.*1 of 2 answered/s })).toBeVisible();
	await context.close();
});

test('a set in another language than the learner’s brings its page in that language, and leaves the others as they are @narrow', async ({ browser }) => {
	const [, learner] = learners;
	if (learner === undefined) throw new Error('nobody is on the list');
	const assignment = await handedOut('En español', { language: 'es' });
	const places = await placesOf(learner.person, assignment);
	const context = await phone(browser);
	await signIn(context, cookies.get(learner.person) ?? '', server.address);
	const page = await context.newPage();
	await page.goto('/learn');
	await page.getByRole('link', { name: /En español/ }).click();
	await expect(page.getByText('Problema 1 de 2')).toBeVisible();
	await expect(page.locator('html')).toHaveAttribute('lang', 'es');
	await work(page, places[0], true, 'es');
	await expect.poll(() => counted(assignment)).toMatchObject([{ all_right: 1 }]);
	expect(await db.selectFrom('attempt').innerJoin('set_answer', 'set_answer.attempt_id', 'attempt.id').select('language').where('assignment_id', '=', assignment).execute()).toEqual([{ language: 'es' }]);
	await page.reload();
	await expect(page.locator('html')).toHaveAttribute('lang', 'es');
	await page.getByRole('link', { name: 'Inicio' }).click();
	await expect(page.getByRole('heading', { name: 'From your trainer' })).toBeVisible();
	await expect(page.locator('html')).toHaveAttribute('lang', 'en');
	await context.close();
});
