/**
 * Retraining from the employer's order to the training that is done again, training from before, the learner's own copy and
 * the settings of records: by their pages.
 */
import { randomUUID } from 'node:crypto';
import { expect, test, type Browser, type Page } from '@playwright/test';
import { addDays, HANDS_ON_CHECKS } from '#lib/records/index.ts';
import { dayIn } from '#lib/server/course/day.ts';
import { sha256 } from '#lib/server/records/chain.ts';
import type { Database } from '#lib/server/db/open.ts';
import { findPersonById, setSecret } from '#lib/server/db/people.ts';
import { goThroughCourse } from '#lib/server/people/demo-course.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import { signHandsOn, toSign, type HandsOnEntry } from '#lib/server/people/sign-off.ts';
import type { Person } from '#lib/server/people/who.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { messages } from '#lib/text/index.ts';
import { joinOver } from '../support/course-over-http.ts';
import { coursePeople, type CourseLearner, type CoursePeople } from './course-people.ts';
import { inDatabase } from './in-database.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

const PASSWORD = 'four lines over the quay';
const DAY = 24 * 60 * 60 * 1000;
/** The organisation of coursePeople keeps UTC. */
const TODAY = dayIn('UTC', new Date());

let server: OwnServer;
let file: string;
let people: CoursePeople;

test.describe.configure({ mode: 'serial' });

test.beforeAll(async () => {
	file = test.info().outputPath('retraining.sqlite');
	people = await coursePeople(file, ['Wen Abara', 'Ilan Corvo']);
	await inDatabase(file, async (db) => {
		const secret = await hashSecret('password', PASSWORD);
		for (const { id } of await db.selectFrom('person').select('id').where('role', '!=', 'learner').execute()) await setSecret(db, id, secret);
		await train(db, learner(0), new Date(Date.now() - 3 * DAY));
	});
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

function learner(nth: number): CourseLearner {
	const found = people.learners[nth];
	if (found === undefined) throw new Error('no such learner');
	return found;
}

async function asPerson(db: Database, id: string): Promise<Person> {
	const row = await findPersonById(db, id);
	if (row === null) throw new Error('nobody');
	return { kind: 'person', id, organisation: row.organisation_id, role: row.role, name: row.name, answerer: row.answerer_id, language: null };
}

/** Takes a learner through the course, and has the trainer sign. */
async function train(db: Database, { person }: CourseLearner, start: Date): Promise<void> {
	const now = await goThroughCourse(db, await asPerson(db, person), start);
	const { id } = await db.selectFrom('person').select('id').where('role', '=', 'trainer').executeTakeFirstOrThrow();
	const { id: crew } = await db.selectFrom('crew').select('id').executeTakeFirstOrThrow();
	const trainer = await asPerson(db, id);
	const entry: HandsOnEntry = { id: randomUUID(), checks: HANDS_ON_CHECKS, place: 'Training yard', day: dayIn('UTC', now), capacity: 'competent-person' };
	const built = await toSign(db, trainer, crew, person, entry, 'en', now);
	if (built.kind !== 'to-sign') throw new Error(built.kind);
	expect(await signHandsOn(db, trainer, crew, person, { entry, shown: built.shown, password: PASSWORD, language: 'en' }, '192.0.2.5', now)).toEqual({ kind: 'signed' });
}

async function pageOf(browser: Browser, cookie: string): Promise<Page> {
	const context = await browser.newContext({ baseURL: server.address });
	await signIn(context, cookie, server.address);
	return context.newPage();
}

test('an employer orders retraining for a crew; the learner sees it, does the course again, and it is open until the hands-on part is signed @en', async ({ browser }) => {
	test.setTimeout(120_000);
	const m = await messages('en');
	const [employer, wen] = [await pageOf(browser, people.employer), await pageOf(browser, await joinOver(server.address, learner(0)))];
	await wen.goto('/learn/record');
	await expect(wen.getByRole('heading', { name: 'Record of training' })).toBeVisible();
	await expect(wen.getByRole('link', { name: 'Certificate (PDF)' })).toBeVisible();

	await employer.goto('/records/retraining');
	await expect(employer.getByText('No retraining is ordered.')).toBeVisible();
	await expectWellMade(employer, { targets: true });
	// Nothing is ordered by a form that is not in order; what was typed stays.
	await employer.getByLabel('Reason').selectOption({ label: 'change of gear or system' });
	await employer.getByLabel('Due day').fill(addDays(TODAY, -1));
	await employer.getByRole('button', { name: 'See for whom' }).click();
	await expect(employer.getByLabel('Due day')).toHaveAccessibleDescription(/This day is over/);
	await expect(employer.getByLabel('For whom')).toHaveAccessibleDescription(/Choose for whom/);
	await expect(employer.getByLabel('Reason')).toHaveValue('change-of-gear-or-system');
	const due = addDays(TODAY, 9);
	await employer.getByLabel('For whom').selectOption({ label: 'Crew: Bridges North' });
	await employer.getByLabel('Due day').fill(due);
	await employer.getByRole('button', { name: 'See for whom' }).click();
	const confirm = employer.getByRole('form', { name: 'You are about to order' });
	await expect(confirm).toContainText('2 people');
	await expectWellMade(employer, { state: 'confirming', targets: true });
	await confirm.getByRole('button', { name: 'Order retraining' }).click();
	await expect(employer.getByRole('status')).toHaveText('Retraining is ordered for 2 people.');
	// The same form once more, as by a double press, orders nothing.
	const crewId = await inDatabase(file, async (db) => (await db.selectFrom('crew').select('id').executeTakeFirstOrThrow()).id);
	const form = { whom: `crew:${crewId}`, days: '', reason: 'change-of-gear-or-system', due, people: '2', withOpen: '0' };
	const again = await employer.request.post('/records/retraining?/order', { form, headers: { origin: server.address, accept: 'text/html' } });
	expect(await again.text()).toContain('Something has changed since you looked');
	expect(await inDatabase(file, (db) => db.selectFrom('record_entry').select('seq').where('kind', '=', 'retraining-ordered').execute())).toHaveLength(2);
	const row = employer.getByRole('row').filter({ hasText: 'Wen Abara' });
	await expect(row).toContainText('theory not passed yet');
	await expectWellMade(employer, { state: 'who is due' });

	await wen.goto('/learn');
	await expect(wen.getByText(/^Retraining is ordered\. Finish by /)).toBeVisible();
	await expect(wen.getByText(m.learn.finalShut)).toBeVisible();
	await expect(wen.getByText(m.learn.doneTitle)).toHaveCount(0);
	await expectWellMade(wen, { state: 'the start page with an order' });
	await wen.getByRole('link', { name: 'My training record' }).click();
	await expect(wen.getByText('From before the last order. It stays on record.')).toBeVisible();
	await expect(wen.getByText(/Reason: your gear or system changes\./)).toBeVisible();
	await expectWellMade(wen, { state: 'the own copy', targets: true });

	// The course once more: answered by the driver, in the same database.
	await inDatabase(file, async (db) => goThroughCourse(db, await asPerson(db, learner(0).person), new Date()));
	await wen.reload();
	await expect(wen.getByRole('heading', { name: 'Record of theory training' })).toBeVisible();
	await expect(wen.getByText('missing: a trainer signs what you can do with your hands')).toBeVisible();
	await employer.goto('/records/retraining');
	await expect(row).toContainText('theory passed, sign-off missing');

	// The trainer signs again, by the page.
	const trainer = await pageOf(browser, people.trainer);
	const crew = await inDatabase(file, async (db) => (await db.selectFrom('crew').select('id').executeTakeFirstOrThrow()).id);
	await trainer.goto(`/crew/${crew}/sign-off/${learner(0).person}`);
	for (const box of await trainer.getByRole('checkbox').all()) await box.check();
	await trainer.getByLabel('Where').fill('Training yard');
	await trainer.getByRole('radio', { name: 'competent person' }).check();
	await trainer.getByRole('button', { name: 'Read what you sign' }).click();
	await trainer.getByLabel('Your password once more').fill(PASSWORD);
	await trainer.getByRole('button', { name: 'Sign', exact: true }).click();
	await expect(trainer.getByRole('status')).toHaveText('The hands-on part is signed off.');

	await wen.reload();
	await expect(wen.getByText('Retraining is ordered', { exact: true })).toHaveCount(0);
	await expect(wen.getByRole('heading', { name: 'Record of training', exact: true })).toHaveCount(2);
	// The optional word of the worker, once.
	await wen.getByRole('button', { name: 'Confirm' }).click();
	await expect(wen.getByRole('status')).toHaveText('Confirmed. It is on record.');
	await expect(wen.getByRole('button', { name: 'Confirm' })).toHaveCount(0);
	await employer.goto('/records/retraining');
	await expect(row).toHaveCount(0);
	await expect(employer.getByRole('row').filter({ hasText: 'Ilan Corvo' })).toBeVisible();
});

test('training from before is read, then signed with the password, and stands in the learner’s own copy in Spanish too @en', async ({ browser }) => {
	const { person } = learner(1);
	const employer = await pageOf(browser, people.employer);
	await employer.goto(`/records/person/${person}/prior`);
	await expectWellMade(employer, { targets: true });
	await employer.getByLabel('Paper that you judged it by').setInputFiles({ name: 'scan.pdf', mimeType: 'application/pdf', buffer: Buffer.alloc(2 * 1024 * 1024) });
	await employer.getByRole('button', { name: 'Read what you sign' }).click();
	await expect(employer.getByLabel('Paper that you judged it by')).toHaveAccessibleDescription(/too large/);
	await employer.getByRole('button', { name: 'Read what you sign' }).click();
	await expect(employer.getByLabel('What training, and who gave it')).toHaveAccessibleDescription(/Fill this in/);
	await employer.getByLabel('What training, and who gave it').fill('Two-day course, yard of the last employer');
	await employer.getByLabel('Approved provider').evaluate((field: HTMLInputElement) => field.removeAttribute('maxlength'));
	await employer.getByLabel('Approved provider').fill('Quay '.repeat(50));
	await employer.getByLabel('Approved programme').fill('14-337');
	await employer.getByLabel('Day of that training').fill(addDays(TODAY, 2));
	await employer.getByLabel('Paper that you judged it by').setInputFiles({ name: 'course.pdf', mimeType: 'application/pdf', buffer: Buffer.from('a paper') });
	await employer.getByRole('button', { name: 'Read what you sign' }).click();
	await expect(employer.getByLabel('Approved provider')).toHaveAccessibleDescription(/too long/);
	await employer.getByLabel('Approved provider').fill('Quay Street Training');
	await employer.getByRole('button', { name: 'Read what you sign' }).click();
	await expect(employer.getByLabel('Day of that training')).toHaveAccessibleDescription(/cannot be after/);
	// The fingerprint that was taken stays, though a browser sends no file twice.
	await expect(employer.getByText(`Fingerprint taken: ${sha256('a paper')}`)).toBeVisible();
	await employer.getByLabel('Day of that training').fill(addDays(TODAY, -40));
	await employer.getByRole('button', { name: 'Read what you sign' }).click();
	const sign = employer.getByRole('form', { name: 'You are about to sign' });
	await expect(sign).toContainText('I judged this training adequate');
	await expect(sign).toContainText(sha256('a paper'));
	await expect(sign).toContainText('Quay Street Training');
	await expectWellMade(employer, { state: 'about to sign', targets: true });
	// Who goes back to change something finds what was typed.
	await sign.getByRole('button', { name: 'Change something' }).click();
	await expect(employer.getByLabel('What training, and who gave it')).toHaveValue('Two-day course, yard of the last employer');
	await employer.getByRole('button', { name: 'Read what you sign' }).click();
	await sign.getByLabel('Your password once more').fill('five lines over the quay');
	await sign.getByRole('button', { name: 'Sign', exact: true }).click();
	await expect(sign.getByLabel('Your password once more')).toHaveAccessibleDescription('This is not your password.');
	await sign.getByLabel('Your password once more').fill(PASSWORD);
	await sign.getByRole('button', { name: 'Sign', exact: true }).click();
	await expect(employer.getByRole('status')).toHaveText('The training from before is entered and signed.');
	const record = await inDatabase(file, (db) => recordOf(db, person));
	expect(record.trainings.map(({ entry }) => (entry.kind === 'prior-training' ? [entry.record.document, entry.signature.capacity] : []))).toEqual([[sha256('a paper'), 'employer']]);
	// The employer's own word, where a law asks for it.
	await employer.goto(`/records/person/${person}`);
	await expect(employer.getByText('Not confirmed by the employer')).toBeVisible();
	await employer.getByText('Confirm it for the employer').click();
	await expect(employer.getByText('I confirm for the employer that this worker had this training')).toBeVisible();
	await expectWellMade(employer, { state: 'about to confirm', targets: true });
	await employer.getByRole('button', { name: 'Confirm', exact: true }).click();
	await expect(employer.getByRole('status')).toHaveText('Confirmed. It is on record.');
	await expect(employer.getByText(/^Confirmed by .+ on /)).toBeVisible();
	await expect(employer.getByText('Confirm it for the employer')).toHaveCount(0);
	// It came after the order, so that nothing is open any more.
	await employer.goto('/records/retraining');
	await expect(employer.getByText('No retraining is ordered.')).toBeVisible();

	const ilan = await pageOf(browser, await joinOver(server.address, learner(1)));
	await ilan.context().addCookies([{ name: 'language', value: 'es', url: server.address }]);
	await ilan.goto('/learn/record');
	await expect(ilan.getByRole('heading', { name: 'Capacitación previa' })).toBeVisible();
	await expect(ilan.getByText('Two-day course, yard of the last employer')).toBeVisible();
	await expect(ilan.getByText('Quay Street Training')).toBeVisible();
	await expect(ilan.getByText(/^Su empleador lo confirmó el /)).toBeVisible();
	await expectWellMade(ilan, { state: 'the own copy in Spanish', targets: true });
});

test('settings of records are checked, kept and held against the law of the place @en', async ({ browser }) => {
	const employer = await pageOf(browser, people.employer);
	await employer.goto('/records/settings');
	await employer.getByRole('link', { name: 'How long training is valid, and how long names are kept' }).click();
	await expect(employer.getByText('The law here sets no fixed period.')).toBeVisible();
	await expectWellMade(employer, { targets: true });
	await employer.getByLabel('Valid for (months)').fill('two years');
	await employer.getByLabel('Expires soon means within (days)').fill('0');
	await employer.getByRole('button', { name: 'Save' }).click();
	await expect(employer.getByLabel('Valid for (months)')).toHaveAccessibleDescription(/whole number of months from 1 to 120/);
	await expect(employer.getByLabel('Expires soon means within (days)')).toHaveAccessibleDescription(/from 1 to 365/);
	await expect(employer.getByLabel('Valid for (months)')).toHaveValue('two years');
	await employer.getByLabel('Valid for (months)').fill('48');
	await employer.getByLabel('Expires soon means within (days)').fill('14');
	await employer.getByLabel('Forget the name after (months)').fill('');
	await employer.getByRole('button', { name: 'Save' }).click();
	await expect(employer.getByRole('status')).toHaveText('Saved.');
	await employer.reload();
	await expect(employer.getByLabel('Forget the name after (months)')).toHaveValue('');
	// Under the law of Ontario an own period of four years says nothing: three hold.
	await inDatabase(file, (db) => db.updateTable('organisation').set({ rules: 'ca-ontario' }).execute());
	await employer.goto('/records/settings/records');
	await expect(employer.getByText('By law here, training is valid for 36 months.')).toBeVisible();
	await employer.getByRole('button', { name: 'Save' }).click();
	await expect(employer.getByLabel('Valid for (months)')).toHaveAccessibleDescription(/The law here is stricter/);
});
