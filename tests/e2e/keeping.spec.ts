/** Record keeping, by the employer: the chain checked, a checkpoint handed out and held against the records. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { expect, test, type Browser, type BrowserContext } from '@playwright/test';
import { ROOT } from '../../src/cli/root.ts';
import { coursePeople } from './course-people.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

// One server and one organisation for all tests of this file.
test.describe.configure({ mode: 'serial' });

let server: OwnServer;
let employer: string;
let file: string;
let saved: string;

test.beforeAll(async () => {
	file = test.info().outputPath('keeping.sqlite');
	saved = test.info().outputPath('checkpoint.json');
	({ employer } = await coursePeople(file, ['Dario Penn', 'Marit Oslo']));
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

/** The employer's browser. @param scripts which the page needs none of, but what looks at it does */
async function browserOf(browser: Browser, scripts: boolean): Promise<BrowserContext> {
	const context = await browser.newContext({ baseURL: server.address, locale: 'en-US', javaScriptEnabled: scripts, viewport: test.info().project.use.viewport ?? null });
	await signIn(context, employer, server.address);
	return context;
}

/** What the command says of the database, held against the checkpoint that was saved. */
function verified(): { readonly status: number | null; readonly output: unknown } {
	const { status, stdout } = spawnSync(process.execPath, [join(ROOT, 'src/cli/underfoot.ts'), 'verify-records', '--checkpoint', saved], {
		env: { ...process.env, DATABASE_URL: `file:${file}`, UNDERFOOT_SIGNING_KEYS: '' },
		encoding: 'utf8'
	});
	return { status, output: JSON.parse(stdout) as unknown };
}

test('the chain is checked, a checkpoint is made and saved, and the records are held against it @en', async ({ browser }) => {
	const context = await browserOf(browser, false);
	const page = await context.newPage();
	await page.goto('/records/keeping');
	await page.getByRole('button', { name: 'Check now' }).click();
	await expect(page.getByText('Unbroken', { exact: true })).toBeVisible();
	await expect(page.getByText(/^Entries 1 to \d+, checked /)).toBeVisible();
	await page.getByRole('button', { name: 'Make a checkpoint now' }).click();
	await expect(page.getByText(/^(The checkpoint is made|Nothing was entered since the last checkpoint)\.$/)).toBeVisible();
	await page.getByRole('button', { name: 'Make a checkpoint now' }).click();
	await expect(page.getByText('Nothing was entered since the last checkpoint.')).toBeVisible();
	await expect(page.getByText('Changes after the last checkpoint handed out can be detected.')).toBeVisible();
	const coming = page.waitForEvent('download');
	await page.getByRole('link', { name: /^Save the checkpoint of/ }).first().click();
	await (await coming).saveAs(saved);
	const { note, checkpoint, key, token } = JSON.parse(readFileSync(saved, 'utf8')) as Record<string, unknown>;
	expect({ note, checkpoint, key, token }).toMatchObject({ note: expect.stringContaining('Keep this file'), checkpoint: { size: expect.any(Number) }, key: { kty: 'OKP' }, token: expect.stringMatching(/^[\w-]+\.[\w-]+\.[\w-]+$/) });
	expect(verified()).toMatchObject({ status: 0, output: { kind: 'holds' } });
	await context.close();
});

test('a name changed in the file is found by the page and by the command @en', async ({ browser }) => {
	const database = new DatabaseSync(file, { timeout: 5000 });
	database.exec("update person set name = 'Somebody Else' where name = 'Dario Penn'");
	const context = await browserOf(browser, true);
	const page = await context.newPage();
	await page.goto('/records/keeping');
	await page.getByRole('button', { name: 'Check now' }).click();
	await expect(page.getByText('Broken', { exact: true })).toBeVisible();
	await expect(page.getByText('This field is not what the chain says.')).toBeVisible();
	await expect(page.getByText('the list of people')).toBeVisible();
	await expectWellMade(page, { state: 'a broken chain', screens: ['narrowest'], targets: true });
	expect(verified()).toMatchObject({ status: 1, output: { kind: 'broken', table: 'person', column: 'name' } });
	database.exec("update person set name = 'Dario Penn' where name = 'Somebody Else'");
	database.close();
	await page.getByRole('button', { name: 'Check now' }).click();
	await expect(page.getByText('Unbroken', { exact: true })).toBeVisible();
	await expectWellMade(page, { state: 'a chain that holds', screens: ['narrowest'], targets: true });
	await context.close();
});
