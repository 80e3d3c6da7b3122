/** The staff of an organisation, from the set-up code to signing out: in two languages, by keyboard, without scripts. */
import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Browser, type Page } from '@playwright/test';
import { openDatabase } from '#lib/server/db/open.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';

// One server, on which an organisation is set up once.
test.describe.configure({ mode: 'serial' });

const PASSWORD = 'three cranes by the river';
const OTHER = 'four barges under the bridge';
const EMPLOYER = 'orla@example.org';
const TRAINER = 'helle@example.org';

let server: OwnServer;
let file: string;

test.beforeAll(async () => {
	file = test.info().outputPath('people.sqlite');
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

async function faults(page: Page): Promise<string[]> {
	const { violations } = await new AxeBuilder({ page }).analyze();
	return violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).slice(0, 3).join(', ')}`);
}

async function overflow(page: Page): Promise<number> {
	return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** A visitor of their own. */
async function visitor(browser: Browser, locale = 'en-US'): Promise<Page> {
	const context = await browser.newContext({ baseURL: server.address, locale, viewport: test.info().project.use.viewport ?? null });
	return context.newPage();
}

async function signIn(page: Page, email: string, password: string): Promise<void> {
	await page.goto('/sign-in');
	await page.getByLabel('E-mail').fill(email);
	await page.getByLabel('Password').fill(password);
	await page.getByRole('button', { name: 'Sign in' }).nth(1).click();
}

async function fillSetUp(page: Page, code: string): Promise<void> {
	await page.getByLabel('Set-up code').fill(code);
	await page.getByLabel('Name of the organisation').fill('Harrow Bridges');
	await page.getByLabel('Rule table').selectOption('us-construction');
	await page.getByLabel('Time zone').selectOption('America/Denver');
	await page.getByLabel('Your name').fill('Orla Finch');
	await page.getByLabel('E-mail').fill(EMPLOYER);
	await page.getByLabel('Password').fill(PASSWORD);
}

test('the set-up code of the console makes an organisation and its employer', async ({ browser }) => {
	test.slow();
	const code = server.setUpCode ?? '';
	expect(code).not.toBe('');
	const page = await visitor(browser);
	await page.goto('/setup');
	expect(await faults(page), 'empty').toEqual([]);
	await fillSetUp(page, 'AAAA-BBBB-CCCC-DDDD');
	await page.getByLabel('Password').fill('short');
	await page.getByRole('button', { name: 'Set it up' }).click();
	await expect(page.getByRole('alert')).toHaveText(/Look at the marked fields/);
	await expect(page.getByLabel('Password')).toHaveAccessibleDescription(/This is too short/);
	expect(await faults(page), 'with what is wrong').toEqual([]);
	// Entries are kept, the password is not.
	await expect(page.getByLabel('Name of the organisation')).toHaveValue('Harrow Bridges');
	await expect(page.getByLabel('Time zone')).toHaveValue('America/Denver');
	await expect(page.getByLabel('Password')).toHaveValue('');
	await page.getByLabel('Password').fill(PASSWORD);
	await page.getByRole('button', { name: 'Set it up' }).click();
	await expect(page.getByLabel('Set-up code')).toHaveAccessibleDescription(/not known, was used before, or has run out/);
	expect(await page.content()).not.toContain(PASSWORD);
	await fillSetUp(page, code.toLowerCase());
	await page.getByRole('button', { name: 'Set it up' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Who is trained today');
	await page.goto('/records/log');
	await expect(page.getByText('organisation set up', { exact: true }).last()).toBeVisible();
	// The code is worth nothing any more.
	await page.goto('/setup');
	await fillSetUp(page, code);
	await page.getByRole('button', { name: 'Set it up' }).click();
	await expect(page.getByLabel('Set-up code')).toHaveAccessibleDescription(/was used before/);
});

test('an employer invites a trainer, who chooses a password and signs in and out', async ({ browser }) => {
	const employer = await visitor(browser);
	await signIn(employer, EMPLOYER, PASSWORD);
	await expect(employer).toHaveURL(/\/records$/);
	await employer.getByRole('link', { name: 'Accounts' }).click();
	await employer.getByLabel('Name').fill('Helle Brandt');
	await employer.getByLabel('E-mail').fill('not an e-mail');
	await employer.getByRole('button', { name: 'Make a code' }).click();
	await expect(employer.getByLabel('E-mail')).toHaveAccessibleDescription(/Write an e-mail address/);
	await expect(employer.getByLabel('Name')).toHaveValue('Helle Brandt');
	await employer.getByLabel('E-mail').fill(TRAINER);
	await employer.getByRole('button', { name: 'Make a code' }).click();
	const code = (await employer.locator('.code').textContent()) ?? '';
	expect(code).toMatch(/^[0-9A-Z]{4}(-[0-9A-Z]{4}){3}$/);
	expect(await faults(employer), 'people').toEqual([]);
	expect(await overflow(employer)).toBe(0);
	// Shown once.
	await employer.goto('/records/people');
	expect(await employer.content()).not.toContain(code);
	await expect(employer.getByText('has not chosen a secret yet')).toBeVisible();

	const trainer = await visitor(browser);
	await trainer.goto('/enrol');
	expect(await faults(trainer), 'enrol').toEqual([]);
	await trainer.getByLabel('Code').fill(code);
	await trainer.getByLabel('Password').fill(OTHER);
	await trainer.getByRole('button', { name: 'Save my password' }).click();
	await expect(trainer).toHaveURL(/\/crew$/);
	// Not the employer's pages; they read as if they were not there.
	const refused = await trainer.goto('/records/people');
	expect(refused?.status()).toBe(404);
	await expect(trainer.getByText('There is no page at this address.')).toBeVisible();
	await trainer.goto('/');
	await trainer.locator('summary').first().click();
	await expect(trainer.getByText('You are signed in as Helle Brandt.')).toBeVisible();
	await trainer.getByRole('button', { name: 'Sign out' }).click();
	await trainer.goto('/crew');
	await expect(trainer).toHaveURL(/\/sign-in\?to=%2Fcrew$/);
	await trainer.getByLabel('E-mail').fill(TRAINER);
	await trainer.getByLabel('Password').fill(OTHER);
	await trainer.getByRole('button', { name: 'Sign in' }).nth(1).click();
	await expect(trainer).toHaveURL(/\/crew$/);
});

test('a wrong password, an unknown e-mail and a number nobody has are told in the same words', { tag: '@en' }, async ({ browser }) => {
	const page = await visitor(browser);
	await signIn(page, EMPLOYER, OTHER);
	const wrong = await page.getByRole('alert').innerText();
	await expect(page.getByLabel('E-mail')).toHaveValue(EMPLOYER);
	await expect(page.getByLabel('Password')).toHaveValue('');
	await signIn(page, 'nobody@example.org', OTHER);
	expect(await page.getByRole('alert').innerText()).toBe(wrong);
	expect(await page.content()).not.toContain(OTHER);
	await page.getByLabel('Personal number').fill('Z-99');
	await page.getByLabel('PIN').fill('482917');
	await page.getByRole('button', { name: 'Sign in' }).first().click();
	await expect(page.getByRole('alert')).toHaveText(/number and this PIN do not fit together/);
	await expect(page.getByLabel('Personal number')).toHaveValue('Z-99');
	expect(await faults(page), 'refused').toEqual([]);
});

test('a session that has ended leads to the sign-in page and back', { tag: '@en' }, async ({ browser }) => {
	const page = await visitor(browser);
	await signIn(page, EMPLOYER, PASSWORD);
	await expect(page).toHaveURL(/\/records$/);
	const db = await openDatabase(`file:${file}`);
	await db.updateTable('session').set({ expires_at: '2020-01-01T00:00:00.000Z' }).execute();
	await db.destroy();
	await page.goto('/records/settings');
	await expect(page).toHaveURL(/\/sign-in\?to=%2Frecords%2Fsettings$/);
	await expect(page.getByText('If you were signed in, that has ended.')).toBeVisible();
	await page.getByLabel('E-mail').fill(EMPLOYER);
	await page.getByLabel('Password').fill(OTHER);
	await page.getByRole('button', { name: 'Sign in' }).nth(1).click();
	await expect(page.getByRole('alert')).toBeVisible();
	await page.getByLabel('Password').fill(PASSWORD);
	await page.getByRole('button', { name: 'Sign in' }).nth(1).click();
	await expect(page).toHaveURL(/\/records\/settings$/);
	await page.getByLabel('Name of the organisation').fill('');
	await page.getByRole('button', { name: 'Save' }).click();
	await expect(page.getByLabel('Name of the organisation')).toHaveAccessibleDescription(/Fill this in/);
	await page.getByLabel('Name of the organisation').fill('Harrow Bridges');
	await page.getByLabel('Units').selectOption('us');
	await page.getByRole('button', { name: 'Save' }).click();
	await expect(page.getByRole('status')).toHaveText('Saved.');
	await expect(page.getByLabel('Units')).toHaveValue('us');
	expect(await faults(page), 'settings').toEqual([]);
	expect(await overflow(page)).toBe(0);
});

/** Tabs until a wanted element has the focus; fails after many presses. */
async function tabTo(page: Page, wanted: string): Promise<void> {
	for (let i = 0; i < 60; i += 1) {
		await page.keyboard.press('Tab');
		if (await page.evaluate((selector) => document.activeElement?.matches(selector) === true, wanted)) return;
	}
	throw new Error(`the keyboard never reaches ${wanted}`);
}

test('staff sign in, invite and sign out by keyboard alone', { tag: '@en' }, async ({ browser }) => {
	const page = await visitor(browser);
	await page.goto('/sign-in');
	await tabTo(page, '#email');
	await page.keyboard.type(EMPLOYER);
	await page.keyboard.press('Tab');
	await page.keyboard.type(PASSWORD);
	await page.keyboard.press('Enter');
	await expect(page).toHaveURL(/\/records$/);
	await tabTo(page, 'a[href$="records/people"]');
	await page.keyboard.press('Enter');
	await expect(page).toHaveURL(/\/people$/);
	await tabTo(page, '#name');
	await page.keyboard.type('Tomas Eik');
	await page.keyboard.press('Tab');
	await page.keyboard.type('tomas@example.org');
	await page.keyboard.press('Tab');
	await page.keyboard.press('ArrowDown');
	await tabTo(page, 'button[type=submit].main');
	await page.keyboard.press('Enter');
	await expect(page.getByRole('heading', { name: 'Code for Tomas Eik' })).toBeVisible();
	await expect(page.getByRole('listitem').filter({ hasText: 'Tomas Eik' })).toContainText('Employer');
	await tabTo(page, 'summary');
	await page.keyboard.press('Enter');
	await tabTo(page, 'form[action$="sign-out"] button');
	await page.keyboard.press('Enter');
	await expect(page).toHaveURL(/\/$/);
	expect((await page.goto('/records'))?.url()).toMatch(/\/sign-in/);
});

test('the pages of staff in Spanish, by day and by night', async ({ browser }) => {
	test.slow();
	const page = await visitor(browser, 'es-MX');
	await page.goto('/setup');
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Cree su organización');
	await page.getByRole('button', { name: 'Crear' }).click();
	for (const colorScheme of ['light', 'dark'] as const) {
		await page.emulateMedia({ colorScheme });
		expect(await faults(page), `set-up, ${colorScheme}`).toEqual([]);
	}
	await page.goto('/enrol');
	expect(await faults(page), 'enrol').toEqual([]);
	await page.goto('/sign-in');
	expect(await faults(page), 'sign in').toEqual([]);
	// Else the organisation's language would hold for its people.
	await page.getByText('Ajustes').click();
	await page.getByRole('button', { name: 'Español' }).click();
	await page.getByLabel('Correo electrónico').fill(EMPLOYER);
	await page.getByLabel('Contraseña').fill(PASSWORD);
	await page.getByRole('button', { name: 'Entrar' }).nth(1).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Quién está capacitado hoy');
	for (const path of ['/records', '/records/people', '/records/people/list', '/records/settings']) {
		for (const colorScheme of ['light', 'dark'] as const) {
			await page.emulateMedia({ colorScheme });
			await page.goto(path);
			expect(await faults(page), `${path}, ${colorScheme}`).toEqual([]);
			expect(await overflow(page), path).toBe(0);
			await expect(page.locator('body')).not.toContainText(/\b(undefined|NaN|null)\b/);
		}
	}
});

test('the pages of staff carry no scripts, and every target is at least 44 px high', async ({ browser }) => {
	const page = await visitor(browser);
	await signIn(page, EMPLOYER, PASSWORD);
	for (const path of ['/sign-in', '/setup', '/enrol', '/records', '/records/people', '/records/people/list', '/records/settings']) {
		await page.goto(path);
		// They are forms and lists, and work without scripts.
		expect(await page.content(), path).not.toContain('<script');
		const small = await page.evaluate(() =>
			[...document.querySelectorAll('a, button, summary, input:not([type=hidden]), select')]
				.filter((one) => one.getClientRects().length > 0)
				.map((one) => ({ name: `${one.tagName} ${one.textContent?.trim() ?? ''}`, height: one.getBoundingClientRect().height }))
				.filter((one) => one.height < 43.5)
		);
		expect(small, path).toEqual([]);
	}
});
