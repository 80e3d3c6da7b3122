/** The list of an organisation's scenarios, a page of forms alone: making one, copying one, saving it as a file and bringing it in again. */
import { readFile } from 'node:fs/promises';
import { expect, test, type Page } from '@playwright/test';
import { shippedDocument } from '#lib/course/shipped.ts';
import { coursePeople } from './course-people.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

test.describe.configure({ mode: 'serial' });

let server: OwnServer;
let cookie: string;

test.beforeAll(async () => {
	const file = test.info().outputPath('scenario-list.sqlite');
	({ trainer: cookie } = await coursePeople(file, []));
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

async function open(page: Page, language: 'en' | 'es' = 'en'): Promise<void> {
	await signIn(page.context(), cookie, server.address);
	await page.context().addCookies([{ name: 'language', value: language, url: server.address }]);
	await page.goto(`${server.address}/crew/scenarios`);
}

function own(page: Page) {
	return page.getByRole('region', { name: 'Your own scenarios' });
}

test('one is made and one copied; what is saved as a file comes in again as it was @en', async ({ page }) => {
	await open(page);
	await expect(own(page)).toContainText('There is none yet.');
	await page.getByRole('button', { name: 'Make a new scenario' }).click();
	await expect(page).toHaveURL(/\/crew\/scenarios\/own-[a-z0-9]{10}$/);
	await open(page);
	await page.getByRole('button', { name: 'Copy: Grain silo 3, top hatch' }).click();
	await expect(page).toHaveURL(/\/crew\/scenarios\/own-[a-z0-9]{10}$/);
	await open(page);
	await expect(own(page).getByRole('listitem')).toHaveCount(2);
	const silo = own(page).getByRole('listitem').first();
	await expect(silo).toContainText('Draft, not published yet');
	await expect(silo).toContainText('Made by Helle Brandt, changed on');
	await expect(silo).toContainText('Top of a silo, metres');
	await expectWellMade(page, { screens: ['as it is', 'narrowest'] });

	const [download] = await Promise.all([page.waitForEvent('download'), silo.getByRole('link', { name: 'Save as a file: Grain silo 3, top hatch' }).click()]);
	expect(download.suggestedFilename()).toMatch(/^own-[a-z0-9]{10}-draft\.json$/);
	const text = await readFile(await download.path(), 'utf8');
	expect({ ...(JSON.parse(text) as object), id: 'silo-top' }).toEqual(shippedDocument('silo-top'));
	await page.getByLabel('File', { exact: true }).setInputFiles({ name: 'silo.json', mimeType: 'application/json', buffer: Buffer.from(text) });
	await page.getByRole('button', { name: 'Bring it in' }).click();
	await expect(page).toHaveURL(/\/crew\/scenarios\/own-[a-z0-9]{10}$/);
	await open(page);
	await expect(own(page).getByRole('link', { name: 'Grain silo 3, top hatch', exact: true })).toHaveCount(2);
});

test('what does not fit is told by field, its text stays to be mended, and nothing comes in @en', async ({ page }) => {
	await open(page);
	const before = await own(page).getByRole('listitem').count();
	const bring = async (text: string) => {
		await page.getByLabel('Or its text').fill(text);
		await page.getByRole('button', { name: 'Bring it in' }).click();
	};
	const problems = page.getByRole('region', { name: 'What does not fit' });

	await bring('{\n"draws": [1,');
	await expect(page.getByRole('alert')).toContainText('Nothing was brought in. This is not JSON.');
	await expect(problems).toContainText('is not JSON at line 2, column');
	await expect(page.getByLabel('Or its text')).toHaveValue('{\n"draws": [1,');

	const hostile = JSON.stringify({ ...shippedDocument('silo-top'), people: ['<script>alert(1)</script>'], colour: 'red' });
	await bring(hostile);
	await expect(problems.getByRole('listitem')).toHaveText([/^colour is not known here leave it out$/]);
	await bring(hostile.replace(',"colour":"red"', ''));
	await expect(problems).toContainText('people.0 holds a tag');
	await expect(page.locator('main script')).toHaveCount(0);
	await expectWellMade(page);

	await page.getByLabel('File', { exact: true }).setInputFiles({ name: 'huge.json', mimeType: 'application/json', buffer: Buffer.alloc(5_000_000, ' ') });
	await page.getByRole('button', { name: 'Bring it in' }).click();
	await expect(page.getByRole('alert')).toContainText('It is far too long for a scenario.');
	await page.getByLabel('File', { exact: true }).setInputFiles({ name: 'old.json', mimeType: 'application/json', buffer: Buffer.from('{"title":"Cañón"}', 'latin1') });
	await page.getByRole('button', { name: 'Bring it in' }).click();
	await expect(page.getByRole('alert')).toContainText('Save it as UTF-8');
	await expect(own(page).getByRole('listitem')).toHaveCount(before);
});

test('in Spanish the words of the schema are marked as English @en', async ({ page }) => {
	await open(page, 'es');
	await page.getByLabel('O su texto').fill('{}');
	await page.getByRole('button', { name: 'Traerlo' }).click();
	await expect(page.getByRole('alert')).toContainText('No entró nada.');
	await expect(page.getByRole('region', { name: 'Qué no es válido' }).locator('ul')).toHaveAttribute('lang', 'en');
	await expectWellMade(page);
});
