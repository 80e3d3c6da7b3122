/**
 * A trainer's first day with a crew, by pages alone: 25 people from a list, a scenario of their own, a set assigned,
 * answered by all with slips of the test's choice, the picture that names exactly these, the board, and paper.
 */
import { expect, test } from '@playwright/test';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { asksOfPlace, placesOf, type SetContent } from '#lib/flow/index.ts';
import { gradeProblem, type Answer } from '#lib/grading/index.ts';
import { draw, numberAsks, slipsWithEffect, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { messages } from '#lib/text/index.ts';
import { answered, answering, type SentBody } from '../support/answered.ts';
import { joinOver } from '../support/course-over-http.ts';
import { coursePeople } from './course-people.ts';
import { inDatabase } from './in-database.ts';
import { slipEntry } from './learner.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

const CREW = 'Tank farm, day shift';
const SITE = 'Tank farm, valve platform';
const SET = 'Before the valve job';
const PEOPLE = 25;
const PROBLEMS = 2;
/** What goes wrong: the slips that learners make, in turn. */
const CHOSEN: readonly SlipId[] = ['elongation-left-out', 'margin-left-out', 'lanyard-for-free-fall'];

let server: OwnServer;
let file: string;
let trainer: string;

test.beforeAll(async () => {
	file = test.info().outputPath('trainer-day.sqlite');
	({ trainer } = await coursePeople(file, []));
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

/** A list as a spreadsheet on Windows saves it: semicolons, Windows-1252, and two lines that cannot be taken. */
function listOfPeople(): Buffer {
	const lines = Array.from({ length: PEOPLE }, (_, i) => `Persona Núñez ${String(i + 1)};T-${String(i + 1)}`);
	return Buffer.from(['Nombre;Número', ...lines, ';T-90', 'Otra Persona;T-1'].join('\r\n'), 'latin1');
}

/** A problem of the set with one chosen slip that the engine tells apart, or right where there is none. */
function answeredWith(problem: Problem, asks: readonly string[], wanted: readonly SlipId[]): { readonly body: SentBody; readonly slip: SlipId | undefined } {
	const whole = answered(problem);
	const right: SentBody = { ...whole, answers: Object.fromEntries(Object.entries(whole.answers).filter(([ask]) => asks.includes(ask))) };
	for (const slip of wanted) {
		for (const ask of numberAsks(problem.scenario).filter(({ id }) => asks.includes(id))) {
			if (!slipsWithEffect(problem, ask).includes(slip)) continue;
			const body = answering(right, ask.id, slipEntry(problem, ask.id, slip));
			const grade = gradeProblem(problem, new Map(Object.entries(body.answers as Record<string, Answer>)), { language: 'en' }).get(ask.id);
			const best = grade?.kind === 'number' && grade.diagnosis?.certainty === 'asserted' ? grade.diagnosis.candidates[0] : undefined;
			if (best?.kind === 'slips' && best.slips.length === 1 && best.slips[0] === slip) return { body, slip };
		}
	}
	return { body: right, slip: undefined };
}

/** All learners join and answer the first round of the set, each with the slip of their turn. @returns how often each slip was made */
async function answeredByAll(code: string): Promise<ReadonlyMap<SlipId, number>> {
	const { people, assignment, seed, content, own } = await inDatabase(file, async (db) => {
		const row = await db.selectFrom('set_assignment').innerJoin('practice_set', 'practice_set.id', 'set_assignment.set_id').select(['set_assignment.id', 'seed', 'content']).executeTakeFirstOrThrow();
		const version = await db.selectFrom('own_scenario_version').select('document').executeTakeFirstOrThrow();
		return {
			people: await db.selectFrom('person').select(['id', 'name', 'personal_number']).where('role', '=', 'learner').orderBy('personal_number').execute(),
			assignment: row.id,
			seed: row.seed,
			content: JSON.parse(row.content) as SetContent,
			own: scenarioSchema.parse(JSON.parse(version.document))
		};
	});
	const scenarios: readonly Scenario[] = [own, ...shippedScenarios()];
	const made = new Map<SlipId, number>();
	const work = async ({ id, name, personal_number: number }: (typeof people)[number], nth: number): Promise<void> => {
		const cookie = await joinOver(server.address, { code, name, number: number ?? '', pin: '482917' });
		for (const [place, of] of placesOf(content, scenarios, seed, id, 0).entries()) {
			const scenario = scenarios.find((one) => one.id === of.scenario && one.version === of.version);
			const drawn = scenario === undefined ? undefined : draw(scenario, of.seed);
			if (scenario === undefined || drawn?.kind !== 'drawn') throw new Error('a place of the set cannot be drawn');
			const asks = asksOfPlace(scenario, of).map((ask) => ask.id);
			const { body, slip } = answeredWith(drawn.problem, asks, place === 0 ? [CHOSEN[nth % CHOSEN.length] ?? 'margin-left-out'] : []);
			if (slip !== undefined) made.set(slip, (made.get(slip) ?? 0) + 1);
			const part = asks.length === scenario.asks.length ? {} : { asks };
			const reply = await fetch(`${server.address}/api/attempts`, {
				method: 'POST',
				headers: { 'content-type': 'application/json', cookie, origin: server.address },
				body: JSON.stringify({ ...body, ...part, set: { assignment, place } })
			});
			expect(reply.status, await reply.text()).toBe(201);
		}
	};
	// A few at the same time, as a crew in a room.
	const queue = [...people.entries()];
	await Promise.all(
		Array.from({ length: 5 }, async () => {
			for (let next = queue.shift(); next !== undefined; next = queue.shift()) await work(next[1], next[0]);
		})
	);
	return made;
}

test('from an empty organisation to a crew whose slips are seen, talked about and practised on paper @en', async ({ browser }) => {
	test.setTimeout(240_000);
	const m = await messages('en');
	const context = await browser.newContext({ baseURL: server.address, viewport: { width: 1280, height: 844 } });
	await signIn(context, trainer, server.address);
	const page = await context.newPage();

	// A crew of 25 from a list; bad lines are named, and nothing is entered before it is confirmed.
	await page.goto('/crew');
	await page.getByLabel('Name of the crew').fill(CREW);
	await page.getByRole('button', { name: 'Make the crew' }).click();
	const code = (await page.locator('.code .large').textContent()) ?? '';
	await expect(page.getByRole('img', { name: /QR code/ })).toBeVisible();
	await page.getByRole('link', { name: 'Add many people by list' }).click();
	await page.getByLabel('Or choose a file').setInputFiles({ name: 'crew.csv', mimeType: 'text/csv', buffer: listOfPeople() });
	await page.getByRole('button', { name: 'Look at the list' }).click();
	await expect(page.getByRole('row', { name: /^27 / })).toContainText('The name is missing.');
	await expect(page.getByRole('row', { name: /^28 / })).toContainText('stands in line 2 too');
	await expectWellMade(page);
	expect(await inDatabase(file, (db) => db.selectFrom('person').select('id').where('role', '=', 'learner').execute())).toHaveLength(0);
	await page.getByRole('button', { name: 'Add 25 people' }).click();
	await expect(page.getByRole('status')).toHaveText('25 people were added.');
	await expect(page.getByRole('rowheader')).toHaveCount(PEOPLE);

	// A scenario of their own.
	await page.getByRole('link', { name: 'Scenarios' }).click();
	await page.getByRole('button', { name: 'Make a new scenario' }).click();
	// The form is the page's own once something was inspected.
	await page.waitForFunction(() => performance.getEntriesByName('authoring:inspected').length > 0);
	await page.getByLabel('Title', { exact: true }).fill(SITE);
	await expect(page.getByRole('heading', { level: 1 })).toHaveText(SITE);
	await page.getByRole('button', { name: /^Publish/ }).click();
	await expect(page.getByText(/^Version 1 is published\. It never changes/)).toBeVisible();

	// A set of it, for the crew.
	await page.getByRole('link', { name: 'Practice sets' }).click();
	await page.getByRole('link', { name: 'Make a set' }).click();
	await page.getByLabel(SITE).check();
	await page.getByLabel('River viaduct, east abutment').check();
	await page.getByLabel('How many problems').fill(String(PROBLEMS));
	await page.getByLabel('Name of the set').fill(SET);
	await page.getByRole('button', { name: 'Make the set' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toHaveText(SET);
	const set = page.url().replace(/[?#].*$/, '');
	await page.getByRole('checkbox', { name: CREW }).check();
	await page.getByRole('button', { name: 'Assign', exact: true }).click();
	await expect(page.getByText(/Live\./)).toBeVisible();

	// All 25 answer; the page that is open sees it.
	const made = await answeredByAll(code.replaceAll('-', ''));
	expect([...made.keys()].toSorted()).toEqual(CHOSEN.toSorted());
	await expect(page.locator('tbody').getByText('round 2, none passed before')).toHaveCount([...made.values()].reduce((sum, n) => sum + n, 0));

	// The picture names exactly the slips that were made.
	await page.getByRole('link', { name: 'Crews', exact: true }).click();
	// The page of the set has a link that recalls it from the crew.
	await page.getByRole('link', { name: CREW, exact: true }).click();
	await page.getByRole('link', { name: 'See what goes wrong' }).click();
	const slips = page.getByRole('region', { name: 'Slips', exact: true });
	await expect(slips.getByRole('listitem')).toHaveCount(made.size);
	for (const [slip, count] of made) {
		const line = slips.getByRole('listitem').filter({ has: page.getByRole('link', { name: m.slips[slip].label, exact: true }) });
		await expect(line).toContainText(`${String(count)} answers, ${String(count)} people`);
	}
	await slips.getByRole('link', { name: m.slips['elongation-left-out'].label }).click();
	await expect(page.getByRole('article').first()).toBeVisible();
	await page.getByRole('button', { name: 'Make a set from the first 3' }).click();
	await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
	await expect(page).toHaveURL(/\/crew\/sets\/[0-9a-f-]+/);

	// The board, with the site of their own.
	await page.getByRole('link', { name: 'Board', exact: true }).click();
	await expect(page).toHaveURL(/\/crew\/board/);
	await page.getByRole('link', { name: SITE }).first().click();
	await expect(page.getByRole('img', { name: new RegExp(SITE) })).toBeVisible();
	await expect(page.locator('body')).not.toContainText('Persona Núñez');

	// On paper.
	await page.goto(`${set}/paper`);
	await page.getByLabel('How many copies').fill('2');
	await page.getByRole('button', { name: 'Make the sheet' }).click();
	const sheet = (await page.locator('.code').first().textContent())?.trim() ?? '';
	const pdf = await context.request.get((await page.getByRole('link', { name: `Sheet, A4, of ${sheet} (PDF)` }).getAttribute('href')) ?? '');
	expect((await pdf.body()).toString('latin1').match(/\/Type \/Page\n/g)?.length).toBeGreaterThanOrEqual(2 * PROBLEMS);
	await page.goto('/crew/paper');
	await page.getByLabel('Sheet code').fill(`${sheet}-02`);
	await page.getByLabel('Who wrote it').selectOption({ index: 1 });
	await page.getByRole('button', { name: 'Open this copy' }).click();
	await expect(page.getByRole('button', { name: 'Grade these answers' })).toBeVisible();
	for (const field of await page.locator('form input[type=text]').all()) await field.fill('9');
	for (const field of await page.locator('form select[id^=p]').all()) await field.selectOption('tie-off');
	await page.getByRole('button', { name: 'Grade these answers' }).click();
	await expect(page.getByText('The answers are stored and graded.')).toBeVisible();
	await expect(page.getByText('From paper, practice only')).toBeVisible();
	await context.close();
});
