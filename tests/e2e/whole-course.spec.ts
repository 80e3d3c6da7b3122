/** The whole course through its screens, on a phone: joined by code, learned, passed, found again elsewhere. */
import { expect, test, type Browser, type BrowserContextOptions, type Page } from '@playwright/test';
import { LESSON_IDS } from '#lib/course/index.ts';
import type { Language } from '#lib/quantity/index.ts';
import { messages } from '#lib/text/index.ts';
import { storedCourse } from '../support/course-over-http.ts';
import { CoursePages, type Rightly } from './course-pages.ts';
import { coursePeople, type CourseLearner } from './course-people.ts';
import { keyboard, touch, type Hands } from './hands.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';

let server: OwnServer;
let file: string;
let learners: readonly CourseLearner[];
let taken = 0;

test.beforeAll(async () => {
	file = test.info().outputPath('whole-course.sqlite');
	({ learners } = await coursePeople(file, ['Ines Okoro', 'Lucía Campos Rey', 'Tomas Eik']));
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

/** What somebody learns on, and how. */
interface Device {
	readonly screen: BrowserContextOptions;
	readonly handsOf: (page: Page) => Hands;
}

/** The screen is that of the project: a phone. */
const PHONE: Device = { screen: {}, handsOf: () => touch };
const COMPUTER: Device = { screen: { viewport: { width: 1280, height: 800 }, isMobile: false, hasTouch: false, deviceScaleFactor: 1 }, handsOf: keyboard };

/** A browser of its own, of somebody who reads a language. */
async function newBrowser(browser: Browser, language: Language, { screen }: Device): Promise<Page> {
	const context = await browser.newContext({ ...screen, locale: language === 'es' ? 'es-MX' : 'en-US' });
	return context.newPage();
}

async function throughTheCourse(browser: Browser, language: Language, device: Device, rightly: Rightly = () => true): Promise<CoursePages> {
	// Some seventy problems, each typed and pressed, on a busy machine.
	test.setTimeout(900_000);
	const learner = learners[taken];
	taken += 1;
	if (learner === undefined) throw new Error('all learners are taken');
	const m = await messages(language);
	const page = await newBrowser(browser, language, device);
	const of = { m, language, address: server.address, file, learner, rightly };
	const pages = new CoursePages({ ...of, page, hands: device.handsOf(page) });
	await pages.join();
	await pages.course();
	await expectPassed(page, language);
	await pages.signOut();
	await page.goto(`${server.address}/learn`);
	await expect(page.locator('body')).not.toContainText(learner.name);

	const elsewhere = await newBrowser(browser, language, device);
	const hands = device.handsOf(elsewhere);
	const again = new CoursePages({ ...of, page: elsewhere, hands });
	await again.signIn();
	await expect(elsewhere.locator('main')).toContainText(learner.name);
	await expectPassed(elsewhere, language);
	await hands.press(elsewhere.getByRole('link', { name: m.learn.lesson({ n: LESSON_IDS.length + 1, title: m.learn.finalName }) }));
	await expect(elsewhere.getByRole('heading', { level: 1 })).toHaveText(m.checkPage.passed);

	const stored = storedCourse(file, learner.person);
	expect(stored.completions).toBe(1);
	expect(stored.events.filter((row) => row.kind === 'check-ended')).toHaveLength(LESSON_IDS.length);
	expect(stored.events.filter((row) => row.kind === 'answered').length + stored.checks.filter((row) => row.kind === 'answered').length).toBe(pages.answered);
	return pages;
}

/** What a learner finds who has passed: every lesson done, the proof, and what is still missing. */
async function expectPassed(page: Page, language: Language): Promise<void> {
	const m = await messages(language);
	await expect(page.locator('html')).toHaveAttribute('lang', language);
	await expect(page.locator('#title')).toHaveText(m.learn.doneTitle);
	// A state mark stands at what is passed: eight lessons and the final check.
	await expect(page.locator('.map .state svg')).toHaveCount(LESSON_IDS.length + 1);
	await expect(page.getByText(m.learn.missing)).toBeVisible();
	await expect(page.locator('body')).not.toContainText(/\b(undefined|NaN|null)\b/);
}

/** Slips at problems with numbers and pictures, at a half-done example, in a lesson's check and in the final one. */
const SLIPS: readonly Parameters<Rightly>[] = [
	['stages', 0, 'picture'],
	['stages', 1, 'picture'],
	['required-clearance', 0, 'site'],
	['required-clearance', 1, 'steps'],
	['swing', 1, 'site'],
	['label', 0, 'item'],
	['final', 4, 'item']
];

test('a new worker joins by code, makes slips that are explained, passes the final check, and finds it on another phone', async ({ browser }) => {
	const asked = (...what: Parameters<Rightly>): string => what.join(' ');
	const slips = SLIPS.map((slip) => asked(...slip));
	const made: string[] = [];
	const pages = await throughTheCourse(browser, 'en', PHONE, (...what) => {
		if (!slips.includes(asked(...what))) return true;
		made.push(asked(...what));
		return false;
	});
	expect(made).toEqual(LESSON_IDS.flatMap((id) => slips.filter((slip) => slip.startsWith(`${id} `))).concat('final 4 item'));
	expect(pages.explained).toBe(slips.filter((slip) => !slip.endsWith(' item')).length);
});

test('the same in Spanish', async ({ browser }) => {
	await throughTheCourse(browser, 'es', PHONE);
});

test('the same on a computer, by keyboard alone', async ({ browser }) => {
	await throughTheCourse(browser, 'en', COMPUTER);
});
