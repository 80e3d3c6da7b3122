/**
 * What an employer does from a list of 300 people to an inspection, by pages: training ordered, workers who pass, a
 * trainer who signs, certificates handed out, a stranger who looks one up, one revoked, files exported, a name
 * forgotten. At the end the command that verifies finds nothing changed.
 */
import { execFileSync } from 'node:child_process';
import { parse } from 'csv-parse/sync';
import { expect, test, type Browser, type BrowserContext, type Page } from '@playwright/test';
import { addDays, addMonths } from '#lib/records/index.ts';
import { dayIn } from '#lib/server/course/day.ts';
import { replayed } from '#lib/server/course/state.ts';
import { setSecret } from '#lib/server/db/people.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import { ROOT } from '../../src/cli/root.ts';
import { CourseDriver } from '../support/course-driver.ts';
import { courseOverHttp, joinOver, postTo } from '../support/course-over-http.ts';
import { coursePeople, type CoursePeople } from './course-people.ts';
import { inDatabase } from './in-database.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

const PEOPLE = 300;
const PASSWORD = 'four lines over the quay';
/** Who passes, in the order of the list. */
const WORKERS = [0, 1, 2] as const;
/** The organisation of coursePeople keeps UTC. */
const TODAY = dayIn('UTC', new Date());

let server: OwnServer;
let file: string;
let people: CoursePeople;

test.beforeAll(async () => {
	file = test.info().outputPath('employer-day.sqlite');
	people = await coursePeople(file, []);
	const secret = await hashSecret('password', PASSWORD);
	await inDatabase(file, async (db) => {
		for (const { id } of await db.selectFrom('person').select('id').execute()) await setSecret(db, id, secret);
	});
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

const nameOf = (n: number): string => `Núñez Abara ${String(n + 1)}`;
const numberOf = (n: number): string => `B-${String(n + 1)}`;

/** Every third of them belongs to the crew that is there; the other crew is made. */
function roster(): Buffer {
	const lines = Array.from({ length: PEOPLE }, (_, n) => `${nameOf(n)};${numberOf(n)};${n % 3 === 0 || n < 3 ? 'Bridges North' : 'Tanks'}`);
	return Buffer.from(['Name;Number;Crew', ...lines].join('\r\n'), 'latin1');
}
const IN_CREW = Array.from({ length: PEOPLE }, (_, n) => n).filter((n) => n % 3 === 0 || n < 3).length;

async function contextOf(browser: Browser, cookie?: string): Promise<BrowserContext> {
	const context = await browser.newContext({ baseURL: server.address, viewport: { width: 1280, height: 844 } });
	context.setDefaultTimeout(30_000);
	if (cookie !== undefined) await signIn(context, cookie, server.address);
	return context;
}

/** A worker joins and goes through the course, over the addresses that a browser uses. */
async function pass(nth: number, code: string): Promise<void> {
	const cookie = await joinOver(server.address, { code, name: nameOf(nth), number: numberOf(nth), pin: '482917' });
	const driver = new CourseDriver(courseOverHttp((path, body) => postTo(server.address, path, body, { cookie }), file));
	expect(await driver.course(replayed(0, []))).toBe('passed');
}

const idOf = (nth: number): Promise<string> =>
	inDatabase(file, async (db) => (await db.selectFrom('person').select('id').where('personal_number', '=', numberOf(nth)).executeTakeFirstOrThrow()).id);

/** How many people a filter of the list says it has. */
async function expectCount(page: Page, filter: string, count: number): Promise<void> {
	await expect(page.getByRole('link', { name: new RegExp(`^${filter}\\s*${String(count)}$`) })).toBeVisible();
}

async function sign(page: Page, crew: string, person: string): Promise<void> {
	await page.goto(`/crew/${crew}/sign-off/${person}`);
	for (const box of await page.getByRole('checkbox').all()) await box.check();
	await page.getByLabel('Where').fill('Training yard');
	await page.getByRole('radio', { name: 'competent person' }).check();
	await page.getByRole('button', { name: 'Read what you sign' }).click();
	await page.getByLabel('Your password once more').fill(PASSWORD);
	await page.getByRole('button', { name: 'Sign', exact: true }).click();
	await expect(page.getByRole('status')).toHaveText('The hands-on part is signed off.');
}

/** What the command says of the database, while the server runs. */
function verified(): Readonly<Record<string, unknown>> {
	const printed = execFileSync(process.execPath, ['src/cli/underfoot.ts', 'verify-records'], {
		cwd: ROOT,
		env: { ...process.env, DATABASE_URL: `file:${file}` },
		encoding: 'utf8',
		stdio: ['ignore', 'pipe', 'ignore']
	});
	return JSON.parse(printed) as ReturnType<typeof verified>;
}

test('from a list of 300 people to certificates, a stranger, a revocation, files, a name forgotten, and records that verify @en', async ({ browser }) => {
	test.setTimeout(300_000);
	const employerContext = await contextOf(browser, people.employer);
	const employer = await employerContext.newPage();

	// Everyone by one list.
	await employer.goto('/records/people/list');
	await employer.getByLabel('Or choose a file').setInputFiles({ name: 'people.csv', mimeType: 'text/csv', buffer: roster() });
	await employer.getByRole('button', { name: 'Look at the list' }).click();
	await expect(employer.getByText(`${String(PEOPLE)} new people`)).toBeVisible();
	await employer.getByRole('button', { name: 'Enter this list' }).click();
	await expect(employer.getByRole('status')).toHaveText(`Entered. New people: ${String(PEOPLE)}. Changed: 0. Left: 0.`);
	await employer.goto('/records');
	await expectCount(employer, 'Never trained', PEOPLE);

	// Training for one crew.
	await employer.goto('/records/retraining');
	await employer.getByLabel('For whom').selectOption({ label: 'Crew: Bridges North' });
	await employer.getByLabel('Reason').selectOption({ label: 'change of work or site' });
	await employer.getByLabel('Due day').fill(addDays(TODAY, 14));
	await employer.getByRole('button', { name: 'See for whom' }).click();
	await employer.getByRole('button', { name: 'Order retraining' }).click();
	await expect(employer.getByRole('status')).toHaveText(`Retraining is ordered for ${String(IN_CREW)} people.`);

	// Validity by the employer's own rule.
	await employer.goto('/records/settings/records');
	await employer.getByLabel('Valid for (months)').fill('24');
	await employer.getByRole('button', { name: 'Save', exact: true }).click();
	await expect(employer.getByRole('status')).toBeVisible();

	// Three workers pass.
	const { crew, code } = await inDatabase(file, async (db) => {
		const row = await db.selectFrom('crew').select(['id', 'join_code']).where('name', '=', 'Bridges North').executeTakeFirstOrThrow();
		return { crew: row.id, code: row.join_code };
	});
	await Promise.all(WORKERS.map((nth) => pass(nth, code)));
	await employer.goto('/records');
	await expectCount(employer, 'In training', WORKERS.length);
	await employer.getByRole('link', { name: /^In training/ }).click();
	await expect(employer.getByText('sign-off missing')).toHaveCount(WORKERS.length);

	// A trainer signs for two of them.
	const trainer = await (await contextOf(browser, people.trainer)).newPage();
	const [first, second] = [await idOf(0), await idOf(1)];
	await sign(trainer, crew, first);
	await sign(trainer, crew, second);
	await employer.goto('/records');
	await expectCount(employer, 'Current', 2);
	await expectCount(employer, 'In training', 1);
	await employer.getByLabel('Name, number or crew').fill('b-1');
	await employer.getByRole('button', { name: 'Show' }).click();
	await employer.getByRole('link', { name: nameOf(0), exact: true }).click();
	await expect(employer.getByText('This record counts today.')).toBeVisible();
	await expectWellMade(employer, { state: 'a person with a record' });

	// Certificates, and what they lead to.
	for (const name of ['PDF, A4, English', 'PDF, Letter, Español']) {
		const pdf = await inFile(employerContext, (await employer.getByRole('link', { name }).getAttribute('href')) ?? '');
		expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
	}
	const certificate = await inDatabase(file, async (db) => (await db.selectFrom('certificate').select('code').executeTakeFirstOrThrow()).code);
	const stranger = await (await contextOf(browser)).newPage();
	await stranger.goto(`/v/${certificate}`);
	await expect(stranger.getByText('Valid', { exact: true })).toBeVisible();
	const until = addMonths(TODAY, 24);
	await expect(stranger.getByRole('main')).toContainText(new Intl.DateTimeFormat('en', { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(`${until}T12:00:00Z`)));
	await expect(stranger.getByRole('main')).not.toContainText('Núñez');
	await stranger.getByLabel('Name on the paper').fill('abara nunez 1');
	await stranger.getByRole('button', { name: 'Compare the name' }).click();
	await expect(stranger.getByText('The name fits this certificate.')).toBeVisible();

	// The employer takes it back; the stranger sees it.
	await employer.goto(`/records/person/${first}`);
	const record = employer.getByRole('article').first();
	await record.getByText('Revoke this record').click();
	await record.getByLabel('Reason').selectOption({ label: 'It was not done as recorded' });
	await record.getByRole('button', { name: 'Revoke it' }).click();
	await expect(employer.getByRole('status')).toHaveText('The record is revoked.');
	await stranger.goto(`/v/${certificate}`);
	await expect(stranger.getByRole('heading', { name: /^Revoked since / })).toBeVisible();
	await employer.goto('/records');
	await expectCount(employer, 'Current', 1);

	// The gate guard's question.
	await employer.goto('/records/list');
	await employer.getByRole('textbox').first().fill([nameOf(0), numberOf(1), numberOf(2), 'Nobody Known'].join('\n'));
	await employer.getByRole('button', { name: 'Ask', exact: true }).click();
	await expect(employer.getByText(/1 of 4/)).toBeVisible();

	// Files.
	await employer.goto('/records/exports');
	const csv = await inFile(employerContext, '/records/exports/completions.csv');
	const rows: Record<string, string>[] = parse(csv, { columns: true, bom: true });
	expect(rows).toHaveLength(WORKERS.length);
	expect(rows.map((row) => Object.values(row).includes(numberOf(0)))).toContain(true);
	const everything = JSON.parse((await inFile(employerContext, '/records/exports/everything.json')).toString()) as Record<string, unknown>;
	expect(Object.keys(everything).length).toBeGreaterThan(5);

	// Somebody leaves and asks to be forgotten: the latest certification stays with its name; of who has none nothing stays.
	const leaver = await idOf(PEOPLE - 1);
	await employer.goto(`/records/person/${leaver}`);
	await employer.getByRole('group').filter({ hasText: 'Mark as left' }).locator('summary').click();
	await employer.getByLabel('Last day here').fill(TODAY);
	await employer.getByRole('button', { name: 'Mark as left' }).click();
	await expect(employer.getByRole('status')).toHaveText('Marked as left.');
	await employer.getByRole('link', { name: 'Forget the name' }).click();
	await employer.getByLabel('Why').selectOption({ label: 'The person asked for it' });
	await employer.getByLabel('Personal number of this person').fill(numberOf(PEOPLE - 1));
	await employer.getByRole('button', { name: 'Forget this name' }).click();
	await expect(employer.getByRole('status')).toHaveText('The name is forgotten.');
	await employer.goto(`/records/person/${leaver}`);
	await expect(employer.getByRole('heading', { level: 1 })).toHaveText(/identity erased/i);

	// Nothing was changed behind the program's back, and every answer comes to the same grade again.
	const result = verified();
	expect(result).toMatchObject({ kind: 'holds', completions: WORKERS.length, signOffs: 2, certificates: 1, notRegradable: 0 });
	expect(result['regraded']).toBeGreaterThan(100);
	expect(result['redrawn']).toBe(result['regraded']);

	await inDatabase(file, async (db) => {
		const kinds = (await db.selectFrom('audit').select('kind').distinct().execute()).map(({ kind }) => kind);
		expect(kinds).toEqual(expect.arrayContaining(['retraining-ordered', 'hands-on-signed', 'certificate-handed-out', 'record-revoked', 'records-exported', 'person-left', 'name-forgotten']));
	});
});

async function inFile(context: BrowserContext, path: string): Promise<Buffer> {
	const reply = await context.request.get(path);
	expect(reply.status()).toBe(200);
	return reply.body();
}
