/** The board for the projector: a class number is named, steps come one by one, a plan is entered on the drawing. By keyboard. */
import { expect, test, type Page } from '@playwright/test';
import { analyse, targetKey } from '#lib/arrest/index.ts';
import { rightValue } from '#lib/grading/index.ts';
import { targetOf, type NumberAsk } from '#lib/scenario/index.ts';
import { coursePeople } from './course-people.ts';
import { problemOf } from './learner.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { signIn } from './signed-in.ts';
import { expectWellMade } from './well-made.ts';

// One server for all tests of this file.
test.describe.configure({ mode: 'serial' });

const SEED = 5;
const ADDRESS = `/crew/board?scenario=bridge-bearing&seed=${SEED}`;
const problem = problemOf('bridge-bearing', SEED);
const ask = problem.scenario.asks.find((one): one is NumberAsk => one.kind === 'number' && one.quantity === 'requiredClearance');
if (ask === undefined) throw new Error('the scenario asks for a clearance');
const right = rightValue(problem, ask) ?? NaN;

let server: OwnServer;
let trainer: string;

test.beforeAll(async () => {
	const file = test.info().outputPath('board.sqlite');
	({ trainer } = await coursePeople(file, ['Dario Penn']));
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

test.beforeEach(async ({ context }) => {
	await signIn(context, trainer, server.address);
});

async function open(page: Page, address = ADDRESS): Promise<void> {
	await page.goto(`${server.address}${address}`);
	// Scripts are there when keys work.
	await expect(async () => {
		// What came late, on a busy machine, is taken back.
		await page.keyboard.press('ArrowLeft');
		await page.keyboard.press('ArrowRight');
		await expect(page.getByText('A number the class says')).toBeVisible({ timeout: 500 });
	}).toPass();
}

test('a number with a known slip is named; steps and tape come one by one, by keyboard @en', async ({ page }) => {
	await page.setViewportSize({ width: 1280, height: 720 });
	await open(page);
	await page.getByLabel('Question').selectOption(ask.id);
	const field = page.getByLabel('A number the class says');
	await field.fill((right - (problem.drawn.plan.absorber?.elongation ?? 0)).toFixed(2));
	await field.press('Enter');
	await field.fill('n p f');
	// Letters in a field are letters.
	await expect(page).toHaveURL(`${server.address}${ADDRESS}`);
	await field.press('Enter');
	await expect(field).toHaveAccessibleDescription(/.+/);
	await field.fill(right.toFixed(2));
	await field.press('Enter');
	await expect(page.getByText('1 voice')).toHaveCount(2);
	await expectWellMade(page, { state: 'class', screens: ['as it is'] });

	await field.press('Escape');
	const rows = page.locator('.steps tbody tr');
	await page.keyboard.press('ArrowRight');
	await expect(rows).toHaveCount(1);
	await page.keyboard.press('ArrowRight');
	await expect(rows).toHaveCount(2);
	await page.keyboard.press('ArrowLeft');
	await expect(rows).toHaveCount(1);
	await expect(page.locator('[data-right]')).toHaveCount(0);
	await expect(page.getByText(right.toFixed(2), { exact: false })).toHaveCount(0);
	while ((await page.locator('[data-right]').count()) === 0) await page.keyboard.press('ArrowRight');
	await expect(page.locator('[data-right]')).toHaveText(`${right.toFixed(2)} m`);
	await expect(page.getByText(/This is a training aid/)).toBeVisible();

	await page.keyboard.press('ArrowRight');
	await expect(page.getByRole('heading', { level: 2 })).toHaveText(/absorber’s .* is not on your tape/);
	await expect(page.getByText('On the unsafe side')).toBeVisible();
	await expectWellMade(page, { state: 'called', screens: ['as it is'] });
	await page.keyboard.press('p');
	await expect(page.getByRole('button', { name: /Ground at your/ })).toBeVisible();
	await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
	await expectWellMade(page, { state: 'fall', screens: ['as it is'] });
	// Nobody's name, of the story or of the list.
	for (const name of [...problem.scenario.people, 'Dario']) await expect(page.locator('.board')).not.toContainText(name);

	const before = page.url();
	await page.keyboard.press('n');
	await expect(page).not.toHaveURL(before);
	await expect(page).toHaveURL(/scenario=bridge-bearing&seed=\d+/);
});

test('a plan entered on the drawing changes the answer as the engine has it, and is marked and not printed @en', async ({ page }) => {
	await page.setViewportSize({ width: 1280, height: 720 });
	await open(page);
	await expect(page.locator('[data-watermark]')).toHaveCount(0);
	await page.getByRole('button', { name: 'Enter a plan' }).click();
	const onDrawing = page.locator('.picture input');
	await expect(onDrawing).toHaveCount(5);
	const anchorage = page.locator('.picture #plan-anchorageHeight');
	await anchorage.fill('99');
	await anchorage.press('Tab');
	await expect(anchorage).toHaveAccessibleDescription(/Write a number from .* to 10\.00\sm/);
	await expectWellMade(page, { state: 'entering', screens: ['as it is'] });
	await anchorage.fill('2.05');
	await anchorage.press('Enter');
	await expect(anchorage).toHaveAccessibleDescription('');
	await page.locator('#plan-elongation').fill('1.05');
	await page.locator('#plan-elongation').press('Tab');
	await page.getByRole('button', { name: 'Show the plan' }).click();
	await expect(page.locator('[data-watermark]')).toBeVisible();
	await expect(page.locator('.panel').getByText('For training. This is no site plan.')).toBeVisible();

	const { plan } = problem.drawn;
	const outcome = analyse({ ...plan, anchorage: { ...plan.anchorage, height: 2.05 }, absorber: plan.absorber === null ? null : { ...plan.absorber, elongation: 1.05 } });
	const finding = outcome.kind === 'analysed' ? outcome.analysis.quantities.get(targetKey(targetOf(ask))) : undefined;
	const answer = finding?.known === true ? finding.value : NaN;
	expect(Math.abs(answer - right)).toBeGreaterThan(0.01);

	async function expectAnswer(): Promise<void> {
		await page.getByLabel('Question').selectOption(ask?.id ?? '');
		while ((await page.locator('[data-right]').count()) === 0) await page.getByRole('button', { name: 'Next step' }).click();
		await expect(page.locator('[data-right]')).toHaveText(`${answer.toFixed(2)} m`);
	}
	await expectAnswer();
	await expect(page.locator('[data-watermark]')).toBeVisible();

	await page.emulateMedia({ media: 'print' });
	await expect(page.locator('.drawing')).toBeHidden();
	await expect(page.getByText(/The drawing is not printed/)).toBeVisible();
	await page.emulateMedia({ media: 'screen' });

	// A reload finds it; the server never had it.
	await page.reload();
	await expect(page.locator('[data-watermark]')).toBeVisible();
	await expectAnswer();

	await page.getByRole('button', { name: 'Change the plan' }).click();
	await page.getByLabel('The line runs over an edge').selectOption('yes');
	await page.getByRole('button', { name: 'Show the plan' }).click();
	await expect(page.getByText(/The line would run over an edge/)).toBeVisible();
	await expect(page.getByRole('button', { name: 'Next step' })).toHaveCount(0);
	await page.getByRole('button', { name: 'Change the plan' }).click();
	await page.getByRole('button', { name: 'Back to the drawn plan' }).click();
	await expect(page.locator('[data-watermark]')).toHaveCount(0);
});

test('it works on a trainer’s phone, in Spanish, at night, and with the choice of sites @en', async ({ page, context }) => {
	await page.setViewportSize({ width: 320, height: 700 });
	await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });
	await context.addCookies([{ name: 'language', value: 'es', url: server.address }]);
	await page.goto(`${server.address}/crew/board`);
	await expectWellMade(page, { state: 'choice', screens: ['as it is'] });
	await page.getByRole('link', { name: 'Viaducto del río, estribo este' }).click();
	await expect(page).toHaveURL(/scenario=bridge-bearing&seed=\d+/);
	await expect(page.getByRole('heading', { level: 1 })).toHaveText('Viaducto del río, estribo este');
	await expectWellMade(page, { state: 'site', screens: ['as it is'] });
	await page.getByRole('button', { name: 'Anotar un plan' }).click();
	// On a narrow screen every number has its row.
	await expect(page.locator('.picture input')).toHaveCount(0);
	await page.locator('#plan-anchorageHeight').fill('2,6');
	await page.locator('#plan-anchorageHeight').press('Enter');
	await expectWellMade(page, { state: 'entering', screens: ['as it is'] });
	await page.getByRole('button', { name: 'Mostrar el plan' }).click();
	await expect(page.locator('.drawing')).toContainText('2,60');
	await page.getByRole('button', { name: 'Ver', exact: true }).click();
	await expect(page.getByRole('button', { name: 'Marca siguiente' })).toBeVisible();
	await expectWellMade(page, { state: 'fall', screens: ['as it is'] });
});
