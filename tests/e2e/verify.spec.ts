/** A certificate in the hands of a stranger: its code opens a page that says whether it holds, and the least of the person. What it needs hangs on no screen but the narrow one, so it runs on a computer. */
import { expect, test, type APIRequestContext, type Page } from '@playwright/test';
import { appendEntries } from '#lib/server/records/append.ts';
import { completedEntry, handsOnEntry } from '../support/record-entries.ts';
import { packed, readPdf } from '../support/pdf-text.ts';
import { inflatedPdf } from '../support/inflated-pdf.ts';
import { coursePeople, type CoursePeople } from './course-people.ts';
import { inDatabase } from './in-database.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

const NAME = 'Lucía Campos Rey';

let server: OwnServer;
let people: CoursePeople;
let person: string;
let record: string;

test.beforeAll(async () => {
	const file = test.info().outputPath('verify.sqlite');
	people = await coursePeople(file, [NAME, 'Dario Penn']);
	person = people.learners[0]?.person ?? '';
	record = await inDatabase(file, async (db) => {
		const { organisation_id: organisation } = await db.selectFrom('person').select('organisation_id').where('id', '=', person).executeTakeFirstOrThrow();
		const entry = completedEntry(person, '2026-03-02', { asked: 97, right: 83 });
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [entry, handsOnEntry(person, '2026-03-03')]));
		return entry.id;
	});
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

/** Something that the employer downloads. */
async function download(request: APIRequestContext, path: string): Promise<Buffer> {
	const response = await request.get(`${server.address}/records/person/${person}/${record}/${path}`, { headers: { cookie: people.employer } });
	expect(response.status()).toBe(200);
	return response.body();
}

/** The code as it stands on a real certificate. */
async function printedCode(request: APIRequestContext): Promise<string> {
	const [page] = readPdf(inflatedPdf(await download(request, 'certificate?size=a4&language=en'))).pages;
	const text = packed(page?.runs.join(' ') ?? '');
	expect(text).toContain(packed(NAME));
	const [, code = ''] = /andtypeinthecode([\w-]{22})Entry|andtypeinthecode([\w-]{22})/.exec(text) ?? [];
	expect(code).toHaveLength(22);
	return code;
}

/** All words of a page that are not there on every page. */
async function told(page: Page): Promise<string> {
	return (await page.locator('main').innerText()).replace(/\s+/g, ' ').trim();
}

test('a stranger sees that a certificate holds, and nothing else of the person', { tag: '@en' }, async ({ page, request }) => {
	const code = await printedCode(request);
	const response = await page.goto(`${server.address}/v/${code}`);
	expect(response?.status()).toBe(200);
	expect(response?.headers()['x-robots-tag']).toBe('noindex');
	// The whole page, word by word.
	expect(await told(page)).toBe(
		[
			'Check a certificate Valid This training was recorded and counts today.',
			'Course Orientation: lanyard with energy absorber System Lanyard with energy absorber Day March 2, 2026 Valid until No fixed end',
			'Employer Harrow Bridges Person L. C. R.',
			'This says what was recorded. It does not say who holds the paper. It allows no work.',
			'This is no proof of an approved programme. It is no proof of practical training where the law asks for that.',
			'This is a training aid, not a design tool. What counts on site is the maker’s instructions, local law, and a competent or qualified person.',
			'Is it the right person? Name on the paper Accents and the order of the names do not matter. Compare the name Check another one'
		].join(' ')
	);
	// Nor does it stand in what is sent and not shown: no names, numbers, scores, ids, hashes.
	const html = (await page.content()).replaceAll(code, '');
	for (const hidden of ['Lucía', 'Campos', 'Dario', 'Helle', 'K-1', record, person]) expect(html, hidden).not.toContain(hidden);
	expect(html).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}-|[0-9a-f]{64}/);
	// The score; names of styles may have such digits.
	expect((await page.locator('main').innerHTML()).replace(/class="[^"]*"/g, '').replaceAll(code, '')).not.toMatch(/83|97/);
	await expectWellMade(page, { targets: true, screens: ['narrowest', 'as it is'] });

	await page.getByLabel('Name on the paper').fill('campos rey, LUCIA');
	await page.getByRole('button', { name: 'Compare the name' }).click();
	await expect(page.getByRole('status')).toHaveText('The name fits this certificate.');
	await page.getByLabel('Name on the paper').fill('Dario Penn');
	await page.getByRole('button', { name: 'Compare the name' }).click();
	await expect(page.getByRole('alert')).toHaveText('The name does not fit this certificate.');
	await expect(page.getByLabel('Name on the paper')).toHaveValue('Dario Penn');
	await expectWellMade(page, { state: 'a name that does not fit', targets: true });
});

test('a code that leads nowhere has a page of the same shape, and a typed one is read with its spaces', { tag: '@en' }, async ({ page, request, browser }) => {
	const code = await printedCode(request);
	await page.goto(`${server.address}/v`);
	await expectWellMade(page, { targets: true });
	await page.getByLabel('Code or credential').fill('nothing');
	await page.getByRole('button', { name: 'Check it' }).click();
	await expect(page.getByRole('alert')).toContainText('This is no code and no credential.');
	await expect(page.getByLabel('Code or credential')).toHaveValue('nothing');
	await page.getByLabel('Code or credential').fill((code.match(/.{1,4}/g) ?? []).join(' '));
	await page.getByRole('button', { name: 'Check it' }).click();
	await expect(page).toHaveURL(`${server.address}/v/${code}`);
	await expect(page.getByRole('heading', { name: 'Valid' })).toBeVisible();

	const response = await page.goto(`${server.address}/v/${code.slice(0, -1)}${code.endsWith('A') ? 'B' : 'A'}`);
	expect(response?.status()).toBe(404);
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Check a certificate');
	await expect(page.getByRole('heading', { name: 'Unknown' })).toBeVisible();
	await expectWellMade(page, { state: 'an unknown code', targets: true });

	const context = await browser.newContext({ locale: 'es-MX' });
	const spanish = await context.newPage();
	await spanish.goto(`${server.address}/v/${code}`);
	await expect(spanish.getByRole('heading', { name: 'Válido' })).toBeVisible();
	await expectWellMade(spanish, { state: 'in Spanish', targets: true });
	await context.close();
});

test('the employer revokes, and the stranger sees it on the page, in the credential and in the list', { tag: '@en' }, async ({ page, request, browser }) => {
	const code = await printedCode(request);
	const token = (await download(request, 'credential')).toString('utf8');
	const check = async (text: string): Promise<void> => {
		await page.goto(`${server.address}/v`);
		await page.getByLabel('Code or credential').fill(text);
		await page.getByRole('button', { name: 'Check it' }).click();
	};
	await check(token);
	await expect(page.getByRole('heading', { name: 'The credential holds' })).toBeVisible();
	await expect(page.locator('main')).toContainText('Harrow Bridges');
	await expectWellMade(page, { state: 'a credential that holds', targets: true });
	const [header = '', payload = '', signature = ''] = token.split('.');
	await check(`${header}.${payload}.${signature.startsWith('A') ? 'B' : 'A'}${signature.slice(1)}`);
	await expect(page.getByRole('heading', { name: 'Changed after it was signed' })).toBeVisible();
	await page.goto(`${server.address}/v`);
	await page.getByLabel('Or a file with the credential').setInputFiles({ name: 'credential.jwt', mimeType: 'application/jwt', buffer: Buffer.from(token) });
	await page.getByRole('button', { name: 'Check it' }).click();
	await expect(page.getByRole('heading', { name: 'The credential holds' })).toBeVisible();
	await page.getByLabel('Or a file with the credential').setInputFiles({ name: 'long.txt', mimeType: 'text/plain', buffer: Buffer.alloc(30_000, 'x') });
	await page.getByRole('button', { name: 'Check it' }).click();
	await expect(page.getByRole('alert')).toContainText('This is too long for a credential.');

	const { issuer } = JSON.parse(Buffer.from(payload, 'base64url').toString('utf8')) as { issuer: { id: string } };
	const before = await (await request.get(`${issuer.id}/revoked`)).text();
	const context = await browser.newContext();
	await signIn(context, people.employer, server.address);
	const revoked = await context.request.post(`${server.address}/records/person/${person}?/revoke`, { form: { record, reason: 'entered-by-mistake' }, headers: { origin: server.address } });
	expect(revoked.ok()).toBe(true);
	await context.close();

	await page.goto(`${server.address}/v/${code}`);
	await expect(page.getByRole('heading', { name: /^Revoked since / })).toBeVisible();
	await expect(page.locator('main')).toContainText('The employer took this record back. It does not count.');
	await expectWellMade(page, { state: 'revoked', targets: true });
	await check(token);
	await expect(page.getByRole('heading', { name: 'Revoked' })).toBeVisible();
	expect(await (await request.get(`${issuer.id}/revoked`)).text()).not.toBe(before);
	// It is printed as what it is now.
	expect(packed(readPdf(inflatedPdf(await download(request, 'certificate'))).pages[0]?.runs.join(' ') ?? '')).toContain('REVOKED');
	expect((await request.get(`${server.address}/records/person/${person}/${record}/credential`, { headers: { cookie: people.employer } })).status()).toBe(404);
});
