/** From a trainer's new crew to a worker who has joined: by pages alone, on the screen of the project. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Browser, type Page } from '@playwright/test';
import { ROOT } from '../../src/cli/root.ts';
import { answer, heading, problemOf, ready, addressOf, rightEntries } from './learner.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';

// One server and one invented organisation for all tests of this file.
test.describe.configure({ mode: 'default' });

interface Demo {
	readonly staff: readonly { readonly role: string; readonly name: string; readonly email: string; readonly password: string }[];
	readonly crews: readonly { readonly name: string; readonly code: string; readonly learners: readonly { readonly name: string; readonly number: string; readonly pin: string }[] }[];
}

const PIN = '482917';
let server: OwnServer;
let folder: string;
let file: string;
let demo: Demo;
let count = 0;

test.beforeAll(async () => {
	folder = mkdtempSync(join(tmpdir(), 'underfoot-join-'));
	file = join(folder, 'underfoot.sqlite');
	const run = spawnSync(process.execPath, ['src/cli/underfoot.ts', 'demo'], { cwd: ROOT, env: { ...process.env, DATABASE_URL: `file:${file}` }, encoding: 'utf8' });
	if (run.status !== 0) throw new Error(run.stderr);
	demo = JSON.parse(run.stdout);
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
	rmSync(folder, { recursive: true, force: true });
});

async function faults(page: Page): Promise<string[]> {
	const { violations } = await new AxeBuilder({ page }).analyze();
	return violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).slice(0, 3).join(', ')}`);
}

/** Nothing that axe finds, nothing wider than the screen, no target too small, nothing unsaid. */
async function expectWellMade(page: Page, about: string): Promise<void> {
	expect(await faults(page), about).toEqual([]);
	const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
	expect(wider, `${about}: wider than the screen`).toBe(0);
	const small = await page.evaluate(() =>
		[...document.querySelectorAll('main a, main button, main input:not([type=hidden]), main select')]
			.filter((one) => one.getClientRects().length > 0 && one.getBoundingClientRect().height < 43.5)
			.map((one) => `${one.tagName} ${one.textContent?.trim() ?? ''}`)
	);
	expect(small, `${about}: small targets`).toEqual([]);
	await expect(page.locator('body')).not.toContainText(/\b(undefined|NaN|null)\b/);
}

/** A browser of somebody else. */
async function anotherPage(browser: Browser, like: Page, language: 'en' | 'es' = 'en'): Promise<Page> {
	const context = await browser.newContext({ viewport: like.viewportSize(), locale: language === 'es' ? 'es-MX' : 'en-US' });
	return context.newPage();
}

async function signInStaff(page: Page, email: string): Promise<void> {
	const member = demo.staff.find((one) => one.email === email);
	if (member === undefined) throw new Error(`${email} is not of the demo`);
	await page.goto(`${server.address}/sign-in`);
	await page.getByLabel('E-mail').fill(member.email);
	await page.getByLabel('Password').fill(member.password);
	await page.locator('form[action="?/staff"] button[type=submit]').click();
	await expect(page).toHaveURL(/\/(crew|records)$/);
}

async function signInLearner(page: Page, number: string, pin: string): Promise<void> {
	await page.goto(`${server.address}/sign-in`);
	await page.locator('#number').fill(number);
	await page.locator('#pin').fill(pin);
	await page.locator('form[action="?/learner"] button[type=submit]').click();
	// Answered: refused on the page of the action, or led on.
	await expect(page).toHaveURL(/\?\/learner$|\/learn$/);
}

/** Makes a crew with one person on its list, as a trainer does. @returns its join code and address */
async function crewWith(page: Page, name: string, number: string): Promise<{ code: string; address: string }> {
	await signInStaff(page, 'north@demo.example');
	await page.goto(`${server.address}/crew`);
	await page.getByLabel('Name of the crew').fill(`Night shift ${String((count += 1))}`);
	await page.getByRole('button', { name: 'Make the crew' }).click();
	await expect(page.getByRole('status')).toHaveText(/The crew is made/);
	await add(page, name, number);
	await expect(page.getByRole('status')).toHaveText(/on the list and can join/);
	const code = (await page.locator('.large').textContent()) ?? '';
	expect(code).toMatch(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/);
	return { code, address: page.url().replace(/\?.*/, '') };
}

async function add(page: Page, name: string, number: string): Promise<void> {
	await page.locator('#add-name').fill(name);
	await page.locator('#add-number').fill(number);
	await page.getByRole('button', { name: 'Add', exact: true }).click();
}

async function claim(page: Page, code: string, name: string, number: string): Promise<void> {
	await page.goto(`${server.address}/join`);
	await page.locator('#code').fill(code);
	await page.locator('#name').fill(name);
	await page.locator('#number').fill(number);
	await page.locator('form[action="?/find"] button[type=submit]').click();
}

async function choosePin(page: Page, pin: string, again = pin): Promise<void> {
	await page.locator('#pin').fill(pin);
	await page.locator('#again').fill(again);
	await page.locator('form[action="?/join"] button[type=submit]').click();
}

/** Whether this browser is signed in, and as whom. */
async function signedInAs(page: Page): Promise<string> {
	await page.goto(`${server.address}/sign-in`);
	return (await page.locator('main').textContent()) ?? '';
}

/** Lets a wait be over, as time does. */
function letTimePass(): void {
	const db = new DatabaseSync(file, { timeout: 5000 });
	db.exec('update throttle set wait_until = null');
	db.close();
}

test('a trainer makes a crew and adds a person; a guest practises, joins, and signs in on another device', async ({ page, browser }) => {
	test.slow();
	const number = `W-${String((count += 1))}`;
	const trainer = await anotherPage(browser, page);
	const { code } = await crewWith(trainer, 'Marit Oslo', number);
	await expectWellMade(trainer, 'the crew');

	// Practice as a guest: one problem, all right.
	const problem = problemOf('bridge-bearing', 1);
	await page.goto(server.address + addressOf(problem));
	await ready(page);
	await answer(page, problem, rightEntries(problem));
	await expect(heading(page)).toHaveText('Right, all of it.');
	await expect(page.getByText('Stored.')).toBeVisible();

	// Somebody else's name: the words help, and say nothing of who is on the list.
	await claim(page, code, 'Nadia Rook', number);
	await expect(page.getByRole('alert')).toContainText('ask your trainer to add you');
	await expect(page.locator('#name')).toHaveValue('Nadia Rook');
	await expectWellMade(page, 'not on the list');

	await claim(page, code.toLowerCase().replace('-', ' '), 'oslo, marit', number.toLowerCase());
	await expect(heading(page)).toHaveText('Choose your PIN');
	await expect(page.getByText('What you practised on this device comes with you.')).toBeVisible();
	await expectWellMade(page, 'choosing the PIN');
	await choosePin(page, '123456');
	await expect(page.locator('#pin-problem')).toHaveText('This PIN is too easy to guess. Mix the digits.');
	await choosePin(page, '4829');
	await expect(page.locator('#pin-problem')).toHaveText('Write six digits.');
	await choosePin(page, PIN, '482971');
	await expect(page.locator('#again-problem')).toHaveText('This is not the same PIN.');
	await expectWellMade(page, 'PINs that differ');
	await choosePin(page, PIN);
	await expect(page).toHaveURL(`${server.address}/learn`);
	expect(await signedInAs(page)).toContain('Marit Oslo');

	// What was practised is hers: graded again, and alike.
	const db = new DatabaseSync(file, { timeout: 5000 });
	const practised = db.prepare('select all_right, regraded from practised join person on person.id = person_id where personal_number = ?').all(number);
	db.close();
	expect(practised.map((row) => ({ ...row }))).toEqual([{ all_right: 1, regraded: 'alike' }]);

	// Signed out; on another device with number and PIN.
	await page.locator('main').getByRole('button', { name: 'Sign out' }).click();
	await expect(page).toHaveURL(`${server.address}/`);
	expect(await signedInAs(page)).not.toContain('Marit Oslo');
	const other = await anotherPage(browser, page);
	await signInLearner(other, ` ${number.toLowerCase()} `, PIN);
	await expect(other).toHaveURL(`${server.address}/learn`);
	expect(await signedInAs(other)).toContain('Marit Oslo');

	// Who has joined is sent to sign in.
	await claim(page, code, 'Marit Oslo', number);
	await expect(heading(page)).toHaveText('You have joined already');
	await expectWellMade(page, 'joined already');
});

test('five wrong PINs wait, ten lock, the trainer resets, and the person joins anew', async ({ page, browser }) => {
	test.slow();
	const number = `W-${String((count += 1))}`;
	const trainer = await anotherPage(browser, page);
	const { code, address } = await crewWith(trainer, 'Dario Penn', number);
	await claim(page, code, 'Dario Penn', number);
	await choosePin(page, PIN);
	await expect(page).toHaveURL(`${server.address}/learn`);

	const stranger = await anotherPage(browser, page);
	for (let i = 0; i < 5; i += 1) await signInLearner(stranger, number, '000000');
	await signInLearner(stranger, number, PIN);
	await expect(stranger.getByRole('alert')).toContainText(/Try again in \d+ seconds/);
	await expectWellMade(stranger, 'waiting');
	for (let i = 5; i < 10; i += 1) {
		letTimePass();
		await signInLearner(stranger, number, '000000');
	}
	letTimePass();
	await signInLearner(stranger, number, PIN);
	await expect(stranger.getByRole('alert')).toContainText('Your trainer can give you a new PIN');

	await trainer.goto(address);
	await expect(trainer.getByRole('row', { name: /Dario Penn/ })).toContainText('locked after too many tries');
	await trainer.getByRole('link', { name: 'Dario Penn' }).click();
	await expectWellMade(trainer, 'the panel of a person');
	await trainer.getByRole('button', { name: 'Reset the PIN' }).click();
	await expect(trainer.getByRole('status')).toHaveText(/The PIN is reset/);
	await expect(trainer.getByRole('row', { name: /Dario Penn/ })).toContainText('has not joined yet');

	// The session from before has ended, the old PIN too.
	expect(await signedInAs(page)).not.toContain('Dario Penn');
	await signInLearner(page, number, PIN);
	await expect(page.getByRole('alert')).toBeVisible();
	await claim(page, code, 'Dario Penn', number);
	await choosePin(page, '719284');
	await expect(page).toHaveURL(`${server.address}/learn`);
	await signInLearner(stranger, number, '719284');
	await expect(stranger).toHaveURL(`${server.address}/learn`);
});

test('the words are Spanish for who reads Spanish, and stay so on another device', async ({ page, browser }) => {
	test.slow();
	const number = `W-${String((count += 1))}`;
	const trainer = await anotherPage(browser, page);
	const { code } = await crewWith(trainer, 'Lucía Campos Rey', number);
	const worker = await anotherPage(browser, page, 'es');
	await worker.goto(`${server.address}/join?code=${code}`);
	await expect(worker.locator('html')).toHaveAttribute('lang', 'es');
	await expect(worker.locator('#code')).toHaveValue(code);
	await worker.locator('#name').fill('Nadie');
	await worker.locator('#number').fill(number);
	await worker.locator('form[action="?/find"] button[type=submit]').click();
	await expect(worker.getByRole('alert')).toContainText('pida a su instructor que lo agregue');
	await expectWellMade(worker, 'no está en la lista');
	await worker.getByText('Ajustes').click();
	await worker.getByRole('button', { name: 'Español' }).click();
	await claim(worker, code, 'lucia campos rey', number);
	await expect(heading(worker)).toHaveText('Elija su PIN');
	await expectWellMade(worker, 'elegir el PIN');
	await choosePin(worker, '111111');
	await expect(worker.locator('#pin-problem')).toHaveText('Este PIN es muy fácil de adivinar. Mezcle los dígitos.');
	await choosePin(worker, PIN);
	await expect(worker).toHaveURL(`${server.address}/learn`);
	const english = await anotherPage(browser, page);
	await signInLearner(english, number, PIN);
	await expect(english.locator('html')).toHaveAttribute('lang', 'es');

	// The other trainer, whose language the other tests of this file do not need.
	const second = await anotherPage(browser, page);
	await signInStaff(second, 'towers@demo.example');
	await second.getByText('Settings').click();
	await second.getByRole('button', { name: 'Español' }).click();
	await expect(heading(second)).toHaveText('Cuadrillas');
	await expectWellMade(second, 'las cuadrillas');
	await second.getByRole('link', { name: 'Towers and Tanks' }).click();
	await expect(second.getByRole('heading', { name: 'Personas' })).toBeVisible();
	await expectWellMade(second, 'la cuadrilla');
	await second.getByRole('link', { name: 'Lucía Campos Rey' }).click();
	await expect(second.getByRole('button', { name: 'Anular el PIN' })).toBeVisible();
	await expectWellMade(second, 'la persona');
});

test('a trainer renames, puts away and takes up a crew, moves a person and takes one off, without scripts too', async ({ browser, page: like }) => {
	const number = `W-${String((count += 1))}`;
	const context = await browser.newContext({ javaScriptEnabled: false, viewport: like.viewportSize() });
	const page = await context.newPage();
	const { address } = await crewWith(page, 'Jo Marchetti', number);
	await add(page, 'Jo Marchetti', `${number}-B`);
	await add(page, 'Jo Marchetti', number);
	await expect(page.locator('#add-number-problem')).toHaveText('This person is on the list already.');
	await add(page, 'Somebody Else', number);
	await expect(page.locator('#add-number-problem')).toHaveText(/Somebody else in your organisation has this number/);
	await expect(page.locator('#add-name')).toHaveValue('Somebody Else');
	await add(page, '   ', '');
	await expect(page.locator('#add-name-problem')).toHaveText('Fill this in.');
	await page.locator('#rename-name').fill('قاعة الجسر '.repeat(9));
	await page.getByRole('button', { name: 'Rename' }).click();
	await expect(heading(page)).toContainText('قاعة الجسر');
	await add(page, `${'نادية '.repeat(20)}${'x'.repeat(60)}`, `${number}-C`);
	await expect(page.getByRole('row')).toHaveCount(4);
	const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
	expect(wider, 'long names make the page wider than the screen').toBe(0);
	await page.getByRole('button', { name: 'Put this crew away' }).click();
	await expect(page.getByText('Nobody can join it.').first()).toBeVisible();
	await expect(page.locator('#add-name')).toHaveCount(0);
	await page.getByRole('button', { name: 'Take this crew up again' }).click();
	await page.getByRole('link', { name: 'Jo Marchetti' }).first().click();
	await page.getByRole('button', { name: 'Open the final check' }).click();
	await expect(page.locator('#place-problem')).toHaveText('Fill this in.');
	await page.locator('#place').fill('Site hut, Pier 4');
	await page.locator('#identified').fill('Badge with photo');
	await page.getByRole('button', { name: 'Open the final check' }).click();
	await expect(page.getByText(/^Open until \d\d:\d\d, Site hut, Pier 4\.$/)).toBeVisible();
	await page.locator('#to').selectOption({ label: 'Bridges North' });
	await page.getByRole('button', { name: 'Move', exact: true }).click();
	await expect(page.getByRole('row')).toHaveCount(3);
	await page.getByRole('link', { name: 'Jo Marchetti' }).click();
	await page.getByRole('button', { name: 'Take off the list' }).click();
	await expect(page.getByRole('row')).toHaveCount(2);
	expect(address).toBe(page.url().replace(/\?.*/, ''));
	await context.close();
});

test('an employer sees all crews and puts a trainer in charge; another trainer’s crew is not there', async ({ page, browser }) => {
	const trainer = await anotherPage(browser, page);
	const { address } = await crewWith(trainer, 'Wen Abara', `W-${String((count += 1))}`);
	const other = await anotherPage(browser, page);
	await signInStaff(other, 'towers@demo.example');
	expect((await other.goto(address))?.status()).toBe(404);
	await signInStaff(page, 'employer@demo.example');
	await page.goto(`${server.address}/crew`);
	await expect(page.getByText('Trainers: Tomás Herrero Vidal')).toBeVisible();
	await expectWellMade(page, 'all crews');
	await page.goto(address);
	await page.locator('#trainer').selectOption({ label: 'Tomás Herrero Vidal (towers@demo.example)' });
	await page.getByRole('button', { name: 'Put in charge' }).click();
	await expect(page.getByRole('status')).toHaveText(/in charge of this crew now/);
	await expectWellMade(page, 'a crew as the employer sees it');
	expect((await other.goto(address))?.status()).toBe(200);
	await page.getByRole('button', { name: 'Release Tomás Herrero Vidal' }).click();
	expect((await other.goto(address))?.status()).toBe(404);
});
