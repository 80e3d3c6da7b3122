/** Paper: a set is printed, what was written on it is typed in, and a slip on paper is found. What it needs hangs on no screen but the narrow one, so it runs on a computer. */
import { expect, test, type Page } from '@playwright/test';
import { shippedScenario } from '#lib/course/shipped.ts';
import { gradeAsk } from '#lib/grading/index.ts';
import { slipsWithEffect } from '#lib/scenario/index.ts';
import { paperPlaces, type PaperPlace } from '#lib/server/paper/places.ts';
import type { Person } from '#lib/server/people/who.ts';
import { makeSet } from '#lib/server/sets/make.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { messages } from '#lib/text/index.ts';
import { coursePeople, type CourseLearner } from './course-people.ts';
import { inDatabase } from './in-database.ts';
import { rightEntries, slipEntry, type Entered } from './learner.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

const SCENARIOS = ['viaduct-lamp', 'tank-landing'].flatMap((id) => shippedScenario(id) ?? []);
const CONTENT = {
	scenarios: SCENARIOS.map(({ id, version, asks }) => ({ id, version, asks: asks.map((ask) => ask.id) })),
	count: 2,
	rule: { right: 2, critical: 0 },
	sameForAll: false,
	language: null,
	aims: []
};

let server: OwnServer;
let file: string;
let trainer: string;
let learner: CourseLearner;
let set: string;

test.beforeAll(async () => {
	file = test.info().outputPath('paper.sqlite');
	const people = await coursePeople(file, ['Dario Penn', 'ليلى عبد الرحمن']);
	trainer = people.trainer;
	const [first] = people.learners;
	if (first === undefined) throw new Error('no learner');
	learner = first;
	set = await inDatabase(file, async (db) => {
		const { id, organisation_id: organisation } = await db.selectFrom('person').select(['id', 'organisation_id']).where('role', '=', 'trainer').executeTakeFirstOrThrow();
		const who: Person = { kind: 'person', id, organisation, role: 'trainer', name: 'Helle Brandt', answerer: '', language: null };
		const made = await makeSet(db, who, { name: 'Before the mast job', content: CONTENT }, new Date());
		if (made.kind === 'refused') throw new Error(JSON.stringify(made.problems));
		return made.id;
	});
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

/** The problems of a copy of the newest sheet. */
async function problemsOf(copy: number): Promise<readonly PaperPlace[]> {
	const row = await inDatabase(file, (db) => db.selectFrom('paper_sheet').selectAll().executeTakeFirstOrThrow());
	return [...paperPlaces(CONTENT, SCENARIOS, { seed: row.seed, alike: row.alike === 1 }, copy)];
}

/** A number that the diagnosis traces to one slip. */
function slipIn(places: readonly PaperPlace[]): { readonly place: number; readonly ask: string; readonly slip: SlipId; readonly text: string } | undefined {
	for (const { place, problem, asks } of places) {
		for (const ask of asks) {
			if (ask.kind !== 'number') continue;
			for (const slip of slipsWithEffect(problem, ask)) {
				const text = slipEntry(problem, ask.id, slip);
				const grade = gradeAsk(problem, ask.id, { kind: 'number', text }, { language: 'en' });
				const best = grade.kind === 'number' && grade.diagnosis?.certainty === 'asserted' ? grade.diagnosis.candidates[0] : undefined;
				if (best?.kind === 'slips' && best.slips.length === 1 && best.slips[0] === slip) return { place, ask: ask.id, slip, text };
			}
		}
	}
	return undefined;
}

async function fill(page: Page, place: number, ask: string, entry: Entered): Promise<void> {
	const field = `[id="p${place}.${ask}"]`;
	if (entry === 'not-stated') await page.locator(`[id="p${place}.${ask}.not-stated"]`).check();
	else if (entry === 'tie-off' || entry === 'do-not-tie-off') await page.locator(field).selectOption(entry);
	else await page.locator(field).fill(entry);
}

test('a set is printed, typed in, graded, its slip named, and marked as paper @en', async ({ browser }) => {
	const m = await messages('en');
	const context = await browser.newContext({ baseURL: server.address, viewport: { width: 1280, height: 844 } });
	await signIn(context, trainer, server.address);
	const page = await context.newPage();

	await page.goto(`/crew/sets/${set}/paper`);
	await page.getByLabel('How many copies').fill('no');
	await page.getByRole('button', { name: 'Make the sheet' }).click();
	await expect(page.getByText('Write a whole number from 1 to 40.')).toBeVisible();
	await expect(page.getByLabel('How many copies')).toHaveValue('no');
	await page.getByLabel('How many copies').fill('8');
	await page.getByLabel('Paper size').selectOption('letter');
	await page.getByRole('button', { name: 'Make the sheet' }).click();
	await expect(page.getByText('The sheet is made.')).toBeVisible();
	await expectWellMade(page, { targets: true });

	// Eight copies of two problems, a page each.
	const code = (await page.locator('.code').textContent())?.trim() ?? '';
	const link = page.getByRole('link', { name: `Sheet, Letter, of ${code} (PDF)` });
	const pdf = await context.request.get((await link.getAttribute('href')) ?? '');
	expect(pdf.headers()['content-type']).toBe('application/pdf');
	const bytes = await pdf.body();
	expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
	expect(bytes.toString('latin1').match(/\/Type \/Page\n/g)).toHaveLength(16);
	expect(bytes.toString('latin1')).toContain('/MediaBox [0 0 612 792]');
	const key = await context.request.get((await page.getByRole('link', { name: `Key, A4, of ${code} (PDF)` }).getAttribute('href')) ?? '');
	expect(key.headers()['content-type']).toBe('application/pdf');

	await page.goto('/crew/paper');
	await expectWellMade(page, { targets: true });
	await page.getByLabel('Sheet code').fill(`${code}-09`);
	await page.getByRole('button', { name: 'Open this copy' }).click();
	await expect(page.getByText('This sheet does not have so many copies.')).toBeVisible();

	let copy = 1;
	let places = await problemsOf(copy);
	let slip = slipIn(places);
	for (; slip === undefined && copy < 8; slip = slipIn(places)) places = await problemsOf((copy += 1));
	if (slip === undefined) throw new Error('no copy has a slip that is told apart');
	await page.getByLabel('Sheet code').fill(`${code.toLowerCase()} ${copy}`);
	await page.getByLabel('Who wrote it').selectOption(learner.person);
	await page.getByRole('button', { name: 'Open this copy' }).click();

	// What cannot be read is asked for again at its field; what else was typed stays.
	for (const { place, problem, asks } of places) {
		for (const ask of asks) await fill(page, place, ask.id, rightEntries(problem)[ask.id] ?? '');
	}
	await fill(page, slip.place, slip.ask, 'two');
	await page.getByRole('button', { name: 'Grade these answers' }).click();
	await expect(page.getByText('Nothing is stored yet.')).toBeVisible();
	const field = page.locator(`[id="p${slip.place}.${slip.ask}"]`);
	await expect(field).toHaveAttribute('aria-invalid', 'true');
	await expect(field).toHaveValue('two');
	await expectWellMade(page, { targets: true });
	await field.fill(slip.text);
	await page.getByRole('button', { name: 'Grade these answers' }).click();

	await expect(page.getByText('The answers are stored and graded.')).toBeVisible();
	await expect(page.getByText('From paper, practice only')).toBeVisible();
	await expect(page.getByText('Not all right.')).toHaveCount(1);
	await expect(page.getByText('All right.', { exact: true })).toHaveCount(1);
	await expect(page.getByText(m.slips[slip.slip].rule).first()).toBeVisible();
	await expectWellMade(page, { targets: true });

	// It cannot be typed in again: there are no fields left.
	await page.goto(`/crew/paper?code=${code}-${String(copy).padStart(2, '0')}&person=${learner.person}`);
	await expect(page.getByText('All of this copy is typed in for this person.')).toBeVisible();
	await expect(page.locator('form input[type=text]')).toHaveCount(0);

	const outcomes = await inDatabase(file, (db) => db.selectFrom('outcome').select(['way', 'wrong', 'slip']).execute());
	expect(outcomes.every(({ way }) => way === 'paper')).toBe(true);
	expect(outcomes.filter(({ wrong }) => wrong === 1).map((one) => one.slip)).toContain(slip.slip);
	await context.close();
});
