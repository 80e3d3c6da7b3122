/** Finding: who is trained today, a person's page with every answer, and a list that is held against the records. */
import { expect, test, type Browser, type Page } from '@playwright/test';
import { addDays } from '#lib/records/index.ts';
import { dayIn } from '#lib/server/course/day.ts';
import { findPersonById } from '#lib/server/db/people.ts';
import { goThroughCourse } from '#lib/server/people/demo-course.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { handsOnEntry, priorTrainingEntry } from '../support/record-entries.ts';
import { coursePeople, type CoursePeople } from './course-people.ts';
import { inDatabase } from './in-database.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

// One server, on which one thing is done after the other.
test.describe.configure({ mode: 'serial' });

const DAY = 24 * 60 * 60 * 1000;
/** The organisation of coursePeople keeps UTC. */
const TODAY = dayIn('UTC', new Date());
/** Whose name is written the other way round, and is longer than its place. */
const LONG = 'נועה בן־דוד Aurelia-Philomena Vandenbergh-Castellanos';
const NAMES = ['Wen Abara', LONG, 'Tomas Eik', 'Dario Penn', 'Dario Penn'];

let server: OwnServer;
let people: CoursePeople;

test.beforeAll(async () => {
	const file = test.info().outputPath('records.sqlite');
	people = await coursePeople(file, NAMES);
	const [wen, long, tomas] = people.learners.map(({ person }) => person);
	await inDatabase(file, async (db) => {
		const row = await findPersonById(db, wen ?? '');
		if (row === null) throw new Error('nobody');
		const { id, organisation_id: organisation, name, answerer_id: answerer } = row;
		const end = await goThroughCourse(db, { kind: 'person', id, organisation, role: 'learner', name, answerer, language: null }, new Date(Date.now() - 2 * DAY));
		await db.transaction().execute((transaction) =>
			appendEntries(transaction, organisation, [
				handsOnEntry(id, dayIn('UTC', end)),
				priorTrainingEntry(long ?? '', addDays(TODAY, -300), addDays(TODAY, 10)),
				priorTrainingEntry(tomas ?? '', addDays(TODAY, -300), addDays(TODAY, -11))
			])
		);
	});
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

async function employerPage(browser: Browser, language: 'en' | 'es' = 'en'): Promise<Page> {
	const context = await browser.newContext({ baseURL: server.address });
	await signIn(context, people.employer, server.address);
	await context.addCookies([{ name: 'language', value: language, url: server.address }]);
	return context.newPage();
}

/** The rows of the table as words, but for the crew and the day. */
const rowsOf = (page: Page) => page.getByRole('table').getByRole('row').filter({ has: page.getByRole('rowheader') });

test('the list tells at a glance who is trained, and is searched, filtered and sorted @en', async ({ browser }) => {
	const page = await employerPage(browser);
	await page.goto('/records');
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Who is trained today');
	await expect(page.getByText('5 people.')).toBeVisible();
	const rows = rowsOf(page);
	await expect(rows).toHaveCount(5);
	// What ends first stands first; those without an end last.
	await expect(rows.nth(0)).toContainText(/Tomas Eik.*K-3.*Bridges North.*Expired.*11 days ago/s);
	await expect(rows.nth(1)).toContainText(/Expires soon.*10 days left/s);
	await expect(rows.nth(2)).toContainText(/Wen Abara.*Current/s);
	await expect(rows.nth(4)).toContainText(/Dario Penn.*Never trained.*not begun/s);
	await expectWellMade(page, { state: 'the list', screens: ['as it is', 'narrowest'], targets: true });

	const filters = page.getByRole('navigation', { name: 'By state' });
	await filters.getByRole('link', { name: 'Never trained 2' }).click();
	await expect(rows).toHaveCount(2);
	await page.getByLabel('Name, number or crew').fill('k-5 PENN');
	await page.getByRole('button', { name: 'Show', exact: true }).click();
	await expect(page).toHaveURL(/q=k-5\+PENN/);
	await expect(rows).toHaveCount(1);
	await expect(filters.getByRole('link', { name: 'Never trained 1' })).toHaveAttribute('aria-current', 'true');
	await filters.getByRole('link', { name: 'Current 0' }).click();
	await expect(page.getByText('Nobody fits what you asked for.')).toBeVisible();
	await page.getByRole('link', { name: 'Show everybody again' }).click();
	await page.getByLabel('Order').selectOption('Name');
	await page.getByRole('button', { name: 'Show', exact: true }).click();
	await expect(rows.nth(0)).toContainText('Dario Penn');
	// A press anywhere on a row opens the person.
	await rows.filter({ hasText: 'Wen Abara' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Wen Abara');
});

test('a person’s page holds records, tries and history; each answer is there, without what went wrong unless it is asked for @en', async ({ browser }) => {
	const page = await employerPage(browser);
	await page.goto(`/records/person/${people.learners[0]?.person ?? ''}`);
	const records = page.getByRole('region', { name: 'Records', exact: true });
	await expect(records).toContainText('This record counts today.');
	await expect(records).toContainText('Orientation: lanyard with energy absorber, version 1');
	await expect(records).toContainText('Horizontal lifelines');
	await expect(records).toContainText(/all five checks were seen/);
	const tries = page.getByRole('region', { name: 'Tries at checks' });
	await expect(tries.getByRole('rowheader')).toHaveCount(1);
	await tries.getByText('8 tries at checks of lessons').click();
	await expect(tries.getByRole('rowheader')).toHaveCount(9);
	const history = page.getByRole('region', { name: 'History' });
	await history.getByText(/^Show \d+ entries$/).click();
	await expect(history.getByRole('listitem').filter({ hasText: 'Passed: Final check, try 1' })).toBeVisible();
	await expectWellMade(page, { state: 'a person', screens: ['as it is', 'narrowest'], targets: true });

	await records.getByRole('link', { name: 'See every answer' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Final check, try 1');
	const items = page.getByRole('list', { name: 'Questions, with answers' }).locator('> li');
	expect(await items.count()).toBeGreaterThanOrEqual(12);
	await expect(items.first()).toContainText(/Right answer/);
	await expect(items.first()).toContainText(/Scenario: .*version \d+\. Seed: \d+/);
	await expect(page.getByText('What probably went wrong is meant for teaching.')).toHaveCount(0);
	await expectWellMade(page, { state: 'a try', targets: true });
	await page.getByRole('link', { name: 'Show what probably went wrong' }).click();
	await expect(page.getByText('What probably went wrong is meant for teaching.')).toBeVisible();
	// A try of one person is not found as another's.
	const other = page.url().replace(people.learners[0]?.person ?? '', people.learners[1]?.person ?? '');
	expect((await page.goto(other))?.status()).toBe(404);
});

test('retraining is ordered and withdrawn, a record revoked and counted again, a person leaves and comes back @en', async ({ browser }) => {
	const page = await employerPage(browser);
	await page.goto(`/records/person/${people.learners[0]?.person ?? ''}`);
	const state = page.locator('dl').first();
	await expect(state).toContainText('Current');

	await page.getByText('Order retraining').click();
	await page.getByLabel('To be done until').fill(addDays(TODAY, -1));
	await page.getByRole('button', { name: 'Order it' }).click();
	// What was typed stays, and what is wrong stands beside it.
	await expect(page.getByLabel('Reason', { exact: true }).last()).toHaveAccessibleDescription(/Choose a reason/);
	await expect(page.getByLabel('To be done until')).toHaveValue(addDays(TODAY, -1));
	await page.locator('#order-reason').selectOption('incident');
	await page.getByRole('button', { name: 'Order it' }).click();
	await expect(page.getByLabel('To be done until')).toHaveAccessibleDescription(/This day is over/);
	await page.getByLabel('To be done until').fill(addDays(TODAY, 14));
	await page.getByRole('button', { name: 'Order it' }).click();
	await expect(page.getByRole('status')).toHaveText('Retraining is ordered. The course is open again.');
	// The same form sent once more, as by a double press, is no second order.
	const again = { reason: 'incident', due: addDays(TODAY, 14) };
	expect((await page.request.post(`/records/person/${people.learners[0]?.person ?? ''}?/order`, { form: again, headers: { origin: new URL(page.url()).origin } })).ok()).toBe(true);
	await page.reload();
	await expect(page.getByRole('button', { name: 'Withdraw this order' })).toHaveCount(1);
	await expect(state).toContainText('Expired, retraining due');
	await page.getByRole('button', { name: 'Withdraw this order' }).click();
	await expect(page.getByRole('status')).toHaveText('The order is withdrawn.');
	await expect(state).toContainText('Current');

	const records = page.getByRole('region', { name: 'Records', exact: true });
	await records.getByText('Revoke this record').click();
	await records.getByRole('button', { name: 'Revoke it' }).click();
	await expect(records.getByLabel('Reason')).toHaveAccessibleDescription(/Choose a reason/);
	await records.getByLabel('Reason').selectOption('Entered by mistake');
	await records.getByRole('button', { name: 'Revoke it' }).click();
	await expect(records).toContainText(/Revoked on .*Entered by mistake\. It counts no more\./);
	await expect(state).toContainText('In training, record revoked');
	await expectWellMade(page, { state: 'a revoked record' });
	await records.getByRole('button', { name: 'Let it count again' }).click();
	await expect(state).toContainText('Current');

	await page.getByText('Mark as left').first().click();
	await page.getByLabel('Last day here').fill(addDays(TODAY, 1));
	await page.getByRole('button', { name: 'Mark as left' }).click();
	await expect(page.getByLabel('Last day here')).toHaveAccessibleDescription(/a day that has come/);
	await page.getByLabel('Last day here').fill(TODAY);
	await page.getByRole('button', { name: 'Mark as left' }).click();
	await expect(state).toContainText('has left');
	await page.goto('/records?state=left');
	await expect(rowsOf(page)).toHaveCount(1);
	await page.goto(`/records/person/${people.learners[0]?.person ?? ''}`);
	await page.getByRole('button', { name: 'Mark as back' }).click();
	await expect(state).toContainText('Current');
	await page.getByText(/^Show \d+ entries$/).click();
	await expect(page.getByRole('region', { name: 'History' }).getByRole('listitem').first()).toContainText('Came back on');
});

test('a pasted list is answered line by line, and on paper by the answer alone; on the smallest phone in Spanish as well @en', async ({ browser }) => {
	const page = await employerPage(browser);
	await page.goto('/records/list');
	await page.getByRole('button', { name: 'Ask', exact: true }).click();
	await expect(page.getByRole('alert')).toHaveText('Paste at least one name or one number.');
	const list = page.getByLabel('Names or numbers, one a line');
	await list.fill('Name\nabara, wen\nK-2\nTomas Eik\nDario Penn\nNobody Here');
	await page.getByRole('button', { name: 'Ask', exact: true }).click();
	await expect(page.getByRole('heading', { level: 2 }).first()).toHaveText(/^2 of 5 are current today/);
	const not = page.getByRole('region', { name: 'Not current, or not clear: 3' });
	await expect(not.getByRole('row').filter({ hasText: 'Tomas Eik' })).toContainText('Expired, 11 days ago');
	await expect(not.getByRole('row').filter({ hasText: 'Dario Penn' })).toContainText(/2 people have this name.*K-4.*K-5/s);
	await expect(not.getByRole('row').filter({ hasText: 'Nobody Here' })).toContainText('Not found.');
	await expect(page.getByRole('region', { name: 'Current today: 2' })).toContainText(/Wen Abara.*Current.*Vandenbergh.*Expires soon, 10 days left/s);
	await expect(list).toHaveValue(/Nobody Here/);
	await expectWellMade(page, { state: 'an answered list', screens: ['as it is', 'narrowest'], targets: true });
	await page.emulateMedia({ media: 'print' });
	await expect(list).toBeHidden();
	await expect(page.getByRole('banner')).toBeHidden();
	await expect(not).toBeVisible();

	const spanish = await employerPage(browser, 'es');
	await spanish.setViewportSize({ width: 390, height: 844 });
	await spanish.goto(`/records/person/${people.learners[1]?.person ?? ''}`);
	await expect(spanish.getByText('Vence pronto, quedan 10 días')).toBeVisible();
	await expectWellMade(spanish, { state: 'a person, in Spanish', targets: true });
	await spanish.goto('/records?q=puentes');
	await expect(spanish.getByText('Nadie coincide con lo que pidió.')).toBeVisible();
	await spanish.goto('/records');
	await expect(rowsOf(spanish).nth(1)).toContainText('Vence pronto');
	await expectWellMade(spanish, { state: 'the list, in Spanish', targets: true });
});
