/** What a crew gets wrong: learners answer with slips of the test's choice, and the trainer's picture names exactly those. */
import { randomUUID } from 'node:crypto';
import { expect, test, type APIRequestContext, type Browser, type Page } from '@playwright/test';
import { putOnList } from '#lib/server/db/crew-list.ts';
import { addCrew, addTrainer } from '#lib/server/db/crews.ts';
import { openDatabase } from '#lib/server/db/open.ts';
import { insertOrganisation, type NewPerson } from '#lib/server/db/people.ts';
import { startSession } from '#lib/server/people/session.ts';
import { enterPeople } from '#lib/server/records/names.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { answered, answering, problemOf } from '../support/answered.ts';
import { slipEntry } from './learner.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

// One server, on which the answers are given once.
test.describe.configure({ mode: 'serial' });

/** Whose name is written the other way round, and is longer than its place. */
const LONG = 'נועה בן־דוד Aurelia-Philomena Vandenbergh-Castellanos';

let server: OwnServer;
let crew: string;
const cookies = new Map<string, string>();

/** A page of somebody who is signed in, and has chosen a language. */
async function pageOf(browser: Browser, who: string, language: 'en' | 'es' = 'en'): Promise<Page> {
	const context = await browser.newContext({ baseURL: server.address, viewport: test.info().project.use.viewport ?? null });
	await signIn(context, cookies.get(who) ?? '', server.address);
	await context.addCookies([{ name: 'language', value: language, url: server.address }]);
	return context.newPage();
}

/** Somebody answers a problem over the interface, right but for one slip. */
async function answer(request: APIRequestContext, who: string, seed: number, ask?: string, slip?: SlipId): Promise<void> {
	const problem = problemOf('bridge-bearing', seed);
	const right = answered(problem);
	const body = ask === undefined || slip === undefined ? right : answering(right, ask, slipEntry(problem, ask, slip));
	const response = await request.post(`${server.address}/api/attempts`, { data: body, headers: { cookie: cookies.get(who) ?? '', origin: server.address } });
	expect(response.status()).toBe(201);
}

test.beforeAll(async ({ request }) => {
	const file = test.info().outputPath('picture.sqlite');
	server = await startOwnServer(file);
	const db = await openDatabase(`file:${file}`);
	const now = new Date();
	const organisation = randomUUID();
	await insertOrganisation(db, { id: organisation, name: 'Harrow Bridges', rules: 'us-construction', units: 'metric', language: 'en', zone: 'America/Denver', pass_rule: 'staged', created_at: now.toISOString() });
	const person = async (key: string, of: Omit<NewPerson, 'organisation'>): Promise<string> => {
		const [id = ''] = await db.transaction().execute((transaction) => enterPeople(transaction, organisation, [of], null, now));
		let token = '';
		await startSession(db, { get: () => undefined, set: (_: string, value: string) => void (token = value), delete: () => undefined }, false, id, now);
		cookies.set(key, `session=${token}`);
		return id;
	};
	const trainer = await person('trainer', { role: 'trainer', name: 'Helle Brandt', email: 'helle@example.org' });
	await person('employer', { role: 'employer', name: 'Orla Finch', email: 'orla@example.org' });
	crew = randomUUID();
	await addCrew(db, { id: crew, organisation, name: 'Bridges North', joinCode: 'HARR0W23', now: now.toISOString() });
	await addTrainer(db, crew, trainer, now.toISOString());
	for (const [key, name] of [['dario', 'Dario Penn'], ['nadia', LONG], ['wen', 'Wen Abara']] as const) {
		await putOnList(db, crew, await person(key, { role: 'learner', name, personalNumber: key }), now.toISOString());
	}
	await db.destroy();
	await answer(request, 'dario', 1, 'required', 'elongation-left-out');
	await answer(request, 'dario', 2, 'required', 'elongation-left-out');
	await answer(request, 'nadia', 3, 'required', 'margin-left-out');
	await answer(request, 'nadia', 4);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

test('names exactly the slips that were made, and opens down to the answers @en', async ({ browser }) => {
	const page = await pageOf(browser, 'trainer');
	await page.goto(`/crew/${crew}`);
	await page.getByRole('link', { name: 'See what goes wrong' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('What goes wrong: Bridges North');
	const slips = page.getByRole('region', { name: 'Slips', exact: true });
	await expect(slips.getByRole('link')).toHaveText(['Elongation left out', 'Margin left out']);
	await expect(slips).toContainText('3 of 3 wrong answers look like one slip.');
	await expect(slips.getByRole('listitem').first()).toContainText('2 answers, 1 person');
	await expect(slips.getByRole('listitem').first()).toContainText('2 on the unsafe side');
	// The table says in words what its squares show; whoever needs help most comes first.
	const table = page.getByRole('table').first();
	await expect(table.getByRole('rowheader')).toHaveText(['Dario Penn', LONG, 'Wen Abara']);
	const row = table.getByRole('row').filter({ hasText: 'Dario Penn' });
	await expect(row.getByRole('link', { name: 'Dario Penn, Required clearance: 2 of 2 wrong, 2 on the unsafe side' })).toBeVisible();
	await expect(table.getByRole('row').filter({ hasText: 'Wen Abara' }).getByRole('cell').first()).toHaveText('not met');
	await expectWellMade(page, { state: 'the picture', screens: ['as it is', 'narrowest'] });

	await row.getByRole('link').click();
	const opened = page.getByRole('region', { name: 'Dario Penn: Required clearance' });
	await expect(opened).toContainText('2 of 2 wrong, 2 on the unsafe side');
	await opened.getByRole('link', { name: 'Elongation left out (2)' }).click();
	const examples = page.getByRole('article');
	await expect(examples).toHaveCount(2);
	const problem = problemOf('bridge-bearing', 2);
	await expect(examples.first()).toContainText(slipEntry(problem, 'required', 'elongation-left-out'));
	await expect(examples.first()).toContainText('On the unsafe side');
	await expect(examples.first().getByRole('img', { name: /Both tapes/ })).toBeVisible();
	await expect(examples.first()).toContainText('What would have happened');
	await expectWellMade(page, { state: 'with examples', screens: ['as it is', 'narrowest'] });
});

test('counts what is chosen, says what it cannot read, and fits the smallest phone in Spanish @en', async ({ browser }) => {
	const page = await pageOf(browser, 'trainer', 'es');
	await page.setViewportSize({ width: 320, height: 640 });
	await page.goto(`/crew/${crew}/picture?cell=required-clearance&scenario=silo-top`);
	await expect(page.getByText('Nada cabe en lo que eligió.')).toBeVisible();
	await page.goto(`/crew/${crew}/picture?from=2026-13-01`);
	await expect(page.getByLabel('Desde este día')).toHaveAccessibleDescription(/Escriba un día/);
	await expect(page.getByRole('region', { name: 'Errores', exact: true }).getByRole('link')).toHaveCount(2);
	await expectWellMade(page);
	// The table is wider: it has a place in the row of what the keyboard reaches, and scrolls there.
	const scroll = page.getByRole('region', { name: 'Tabla de personas y temas. Se desplaza de lado.' });
	await scroll.focus();
	await expect(scroll).toBeFocused();
	expect(await scroll.evaluate((one) => one.scrollWidth > one.clientWidth)).toBe(true);
	await page.keyboard.press('ArrowRight');
	await expect.poll(() => scroll.evaluate((one) => one.scrollLeft)).toBeGreaterThan(0);
});

test('makes a set from the first slips; an employer who does not teach the crew finds nothing @en', async ({ browser }) => {
	const page = await pageOf(browser, 'trainer');
	await page.goto(`/crew/${crew}/picture`);
	await page.getByRole('button', { name: 'Make a set from the first 2' }).click();
	await expect(page).toHaveURL(/\/crew\/sets\/[0-9a-f-]{36}$/);
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Aimed at: Elongation left out and Margin left out');
	const employer = await pageOf(browser, 'employer');
	await employer.goto(`/crew/${crew}`);
	await expect(employer.getByRole('heading', { level: 1 })).toHaveText('Bridges North');
	await expect(employer.getByRole('link', { name: 'See what goes wrong' })).toHaveCount(0);
	expect((await employer.goto(`/crew/${crew}/picture`))?.status()).toBe(404);
});
