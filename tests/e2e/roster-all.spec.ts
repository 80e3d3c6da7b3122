/** Everyone of an organisation by one list, leaving, and forgetting a name: in a browser, without scripts. */
import { expect, test, type Browser, type Page } from '@playwright/test';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { setSecret } from '#lib/server/db/people.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import type { Person } from '#lib/server/people/who.ts';
import { markLeft } from '#lib/server/records/leaving.ts';
import { aLearner, aMember, anOrganisation } from '../unit/server/people/organisation.ts';
import { aCompletion, chainHolds, whereItStands } from '../unit/server/records/trained.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { expectWellMade } from './well-made.ts';

// One server for all tests of this file. What is tested is our own rule of one list for everyone: common practice, no source.
test.describe.configure({ mode: 'serial' });

const PASSWORD = 'three cranes by the river';
let server: OwnServer;
let db: Database;
let organisation: string;
let employer: Person;
let email: string;

test.beforeAll(async () => {
	const file = test.info().outputPath('roster-all.sqlite');
	db = await openDatabase(`file:${file}`);
	organisation = await anOrganisation(db);
	employer = await aMember(db, organisation, 'employer', 'Orla Finch');
	await setSecret(db, employer.id, await hashSecret('password', PASSWORD));
	email = (await db.selectFrom('person').select('email').where('id', '=', employer.id).executeTakeFirstOrThrow()).email ?? '';
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await db.destroy();
	await server.end('SIGTERM');
});

/** @param scripts the pages work without them; what looks at a page needs them */
async function signedIn(browser: Browser, scripts = false): Promise<Page> {
	const context = await browser.newContext({ baseURL: server.address, viewport: test.info().project.use.viewport ?? null, javaScriptEnabled: scripts });
	const page = await context.newPage();
	await page.goto('/sign-in');
	await page.getByLabel('E-mail').fill(email);
	await page.getByLabel('Password').fill(PASSWORD);
	await page.getByRole('button', { name: 'Sign in' }).nth(1).click();
	await expect(page).toHaveURL(/\/records$/);
	return page;
}

/** As a spreadsheet of western Europe saves it: semicolons, one byte a letter. */
function lines(count: number, more: readonly string[] = []): Buffer {
	const people = Array.from({ length: count }, (_, i) => `Núñez ${'ABCDEFGH'[i % 8] ?? ''}${String(i)};N-${String(i)};Cuadrilla ${String(i % 5)}`);
	return Buffer.from(['Nombre;Número;Cuadrilla', ...people, ...more].join('\r\n'), 'latin1');
}

async function look(page: Page, buffer: Buffer): Promise<void> {
	await page.goto('/records/people/list');
	await page.getByLabel('Or choose a file').setInputFiles({ name: 'list.csv', mimeType: 'text/csv', buffer });
	await page.getByRole('button', { name: 'Look at the list' }).click();
}

async function learners(): Promise<readonly { readonly name: string; readonly closed_at: string | null }[]> {
	return db.selectFrom('person').select(['name', 'closed_at']).where('organisation_id', '=', organisation).where('role', '=', 'learner').execute();
}

test('three hundred people come in by a file: what is wrong is named, nothing is changed before, and twice is as once', { tag: '@en' }, async ({ browser }) => {
	test.slow();
	const page = await signedIn(browser);
	await look(page, lines(300, [';N-300;', 'Rio Vance;N-7;']));
	await expect(page.getByText('300 new people')).toBeVisible();
	await expect(page.getByText('2 lines with a problem')).toBeVisible();
	await expect(page.locator('tbody tr').nth(0)).toContainText('The name is missing.');
	await expect(page.locator('tbody tr').nth(1)).toContainText('This number stands in line 9 too.');
	await expect(page.locator('tbody tr').nth(2)).toContainText('joins Cuadrilla 0');
	expect(await learners()).toEqual([]);
	await page.getByRole('button', { name: 'Enter this list' }).click();
	await expect(page.getByRole('status')).toHaveText('Entered. New people: 300. Changed: 0. Left: 0.');
	expect((await learners()).filter(({ name }) => name === 'Núñez H7')).toHaveLength(1);
	await look(page, lines(300));
	await expect(page.getByText('300 people stay as they are')).toBeVisible();
	await expect(page.getByText('This list changes nothing.')).toBeVisible();
	expect(await chainHolds(db, organisation)).toBe(true);
});

test('who is not on the list is named, and has left only where the box was ticked', { tag: '@en' }, async ({ browser }) => {
	const page = await signedIn(browser);
	await look(page, lines(298, ['Nadia Rook;N-298;Cuadrilla 0']));
	await expect(page.getByText('until now Núñez C298')).toBeVisible();
	await expect(page.getByText('moves from Cuadrilla 3 to Cuadrilla 0')).toBeVisible();
	await expect(page.getByRole('heading', { name: '1 person is not on this list' })).toBeVisible();
	await page.getByRole('checkbox', { name: 'This person has left' }).check();
	await page.getByRole('button', { name: 'Enter this list' }).click();
	await expect(page.getByRole('status')).toHaveText('Entered. New people: 0. Changed: 1. Left: 1.');
	expect((await learners()).filter(({ closed_at }) => closed_at !== null).map(({ name }) => name)).toEqual(['Núñez D299']);
	// The account of who left is found by search, and so is that of who is there.
	await page.goto('/records/people');
	await expect(page.getByText('Núñez')).toHaveCount(0);
	await page.getByLabel('Find a worker').fill('nunez n-29');
	await page.getByRole('button', { name: 'Search' }).click();
	await expect(page.getByText('10 workers found')).toBeVisible();
	await expect(page.getByRole('listitem').filter({ hasText: 'Núñez D299' })).toContainText('closed');
	await page.getByRole('button', { name: 'New PIN for Núñez B297' }).click();
	await expect(page.getByRole('status').first()).toContainText('Núñez B297 can now choose a new PIN.');
	// What was looked for stands there still.
	await expect(page.getByLabel('Find a worker')).toHaveValue('nunez n-29');
});

test('a list that cannot be read says why, and what was pasted stays', { tag: '@en' }, async ({ browser }) => {
	const page = await signedIn(browser);
	await page.goto('/records/people/list');
	await page.getByLabel('Paste the list here').fill('Nadia Rook\nDario Penn');
	await page.getByRole('button', { name: 'Look at the list' }).click();
	await expect(page.getByRole('alert')).toContainText('Only one column was found.');
	await expect(page.getByLabel('Paste the list here')).toHaveValue('Nadia Rook\nDario Penn');
	await page.getByLabel('Paste the list here').fill('Name;Number\nZoe Marsh;Z-1');
	await page.getByRole('button', { name: 'Look at the list' }).click();
	// Somebody else changes a number's name between looking and entering.
	await aLearner(db, organisation, 'Z-1', [], 'Zoe Marshall');
	await page.getByRole('button', { name: 'Enter this list' }).click();
	await expect(page.getByRole('alert')).toContainText('Something has changed since you looked');
	await expect(page.getByText('new name; until now Zoe Marshall')).toBeVisible();
	expect((await learners()).filter(({ name }) => name.startsWith('Zoe')).map(({ name }) => name)).toEqual(['Zoe Marshall']);
});

test('a name is refused while its person is there, kept with the certification after that, and forgotten where nothing keeps it', { tag: '@en' }, async ({ browser }) => {
	const page = await signedIn(browser, true);
	const today = new Date().toISOString().slice(0, 10);
	const number = `K-${test.info().project.name}`.toUpperCase();
	const there = await aLearner(db, organisation, `${number}1`, [], 'Petra Vole');
	const certified = await aLearner(db, organisation, `${number}2`, [], 'Ulric Thorne');
	await aCompletion(db, organisation, certified, today);
	const free = await aLearner(db, organisation, `${number}3`, [], 'Xenia Quayle');
	for (const person of [certified, free]) await markLeft(db, employer, person, today, new Date());

	await page.goto(`/records/person/${there}/forget`);
	await expect(page.getByText('No. This person is still there.')).toBeVisible();
	await expectWellMade(page, { state: 'refused', screens: ['narrowest', 'as it is'], targets: true });
	await page.getByLabel('Personal number of this person').fill(`${number}9`);
	await page.getByRole('button', { name: 'Note that it was refused' }).click();
	await expect(page.getByLabel('Personal number of this person')).toHaveAccessibleDescription(/This is not the person of this page/);
	await expect(page.getByLabel('Personal number of this person')).toHaveValue(`${number}9`);
	await page.getByLabel('Personal number of this person').fill(`${number}1`);
	await page.getByRole('button', { name: 'Note that it was refused' }).click();
	await expect(page.getByRole('status')).toContainText('Nothing was taken out.');

	await page.goto(`/records/person/${certified}/forget`);
	await expect(page.getByText('The latest certification has to be kept with its name.')).toBeVisible();
	await page.getByLabel('Personal number of this person').fill(`${number}2`);
	await page.getByRole('button', { name: 'Take out all but the name' }).click();
	await expect(page.getByRole('status')).toContainText('All but the name is taken out.');
	expect((await db.selectFrom('person').select('name').where('id', '=', certified).executeTakeFirstOrThrow()).name).toBe('Ulric Thorne');

	await page.goto(`/records/person/${free}/forget`);
	await page.getByLabel('Personal number of this person').fill(`${number}3`.toLowerCase());
	await page.getByRole('button', { name: 'Forget this name' }).click();
	await expect(page.getByRole('status')).toHaveText('The name is forgotten.');
	await expect(page.locator('body')).not.toContainText('Xenia');
	for (const text of ['Xenia', 'Quayle', `${number}3`]) expect(await whereItStands(db, text)).toEqual([]);
	const record = await page.goto(`/records/person/${free}`);
	expect(record?.status()).toBe(200);
	await expect(page.locator('body')).not.toContainText('Xenia');
	expect(await chainHolds(db, organisation)).toBe(true);
});

test('the pages of lists and accounts are well made on the narrowest phone, in Spanish too', { tag: '@en' }, async ({ browser }) => {
	test.slow();
	const context = await browser.newContext({ baseURL: server.address, locale: 'es-MX' });
	const page = await context.newPage();
	await page.goto('/sign-in');
	await page.getByText('Ajustes').click();
	await page.getByRole('button', { name: 'Español' }).click();
	await page.getByLabel('Correo electrónico').fill(email);
	await page.getByLabel('Contraseña').fill(PASSWORD);
	await page.getByRole('button', { name: 'Entrar' }).nth(1).click();
	for (const colorScheme of ['light', 'dark'] as const) {
		await page.emulateMedia({ colorScheme });
		await page.goto('/records/people?search=n-1');
		await expectWellMade(page, { state: `accounts, ${colorScheme}`, targets: true });
		await page.goto('/records/people/list');
		await page.getByLabel('Pegue la lista aquí').fill(`Nombre;Número;Cuadrilla\nNadia Rook;N-1;Torres\n;N-2;\nنادية روك;N-4;\n${'Largo'.repeat(30)};N-5;${'Cuadrilla'.repeat(20)}`);
		await page.getByRole('button', { name: 'Ver la lista' }).click();
		await expect(page.getByText('1 línea con un problema')).toBeVisible();
		await expectWellMade(page, { state: `preview, ${colorScheme}`, targets: true });
	}
});
