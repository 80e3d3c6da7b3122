/** The whole course over HTTP while its server is killed again and again: what was replied to is there, once. */
import { randomInt } from 'node:crypto';
import { expect, test, type Locator } from '@playwright/test';
import { LESSONS } from '#lib/course/index.ts';
import { WANTED_BEFORE_CHECK } from '#lib/flow/index.ts';
import { LESSON_RULE, PASS_RULES } from '#lib/mastery/index.ts';
import { replayed } from '#lib/server/course/state.ts';
import { messages } from '#lib/text/index.ts';
import { chanceFrom } from '../support/chance.ts';
import { CourseDriver } from '../support/course-driver.ts';
import { CHECKS, EVENTS, courseOverHttp, fieldsOf, joinOver, postTo, stateIn, storedCourse, type Post, type Reply } from '../support/course-over-http.ts';
import { CoursePages } from './course-pages.ts';
import { coursePeople } from './course-people.ts';
import { mouse } from './hands.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';

/** How often the server is killed. */
const KILLS = 50;
/** Times that a request is sent before the test gives up. */
const TRIES = 5;

/** The server that runs now; a test that fails leaves none behind. */
let running: OwnServer | undefined;

async function start(file: string, address = 'http://127.0.0.1:0'): Promise<OwnServer> {
	const server = await startOwnServer(file, Number(new URL(address).port));
	running = server;
	return server;
}

async function kill(): Promise<void> {
	expect(await running?.end('SIGKILL')).toBe('SIGKILL');
	running = undefined;
}

test.afterEach(async () => {
	await running?.end('SIGTERM');
	running = undefined;
});

/** How many requests the shortest way through the course takes. */
function leastRequests(): number {
	const [final] = PASS_RULES;
	const items = (rule: typeof LESSON_RULE | undefined) => rule?.stages[0]?.after ?? 0;
	// A check is begun, answered item by item, and handed in.
	const lessons = LESSONS.map(({ example }) => example.steps.length + 1 + WANTED_BEFORE_CHECK + items(LESSON_RULE) + 2);
	return lessons.reduce((sum, one) => sum + one, items(final) + 2);
}

/** Different numbers of requests, in order, spread over the run. */
function momentsOf(chance: () => number, requests: number): ReadonlySet<number> {
	const first = (stretch: number) => Math.floor((stretch * requests) / KILLS);
	return new Set(Array.from({ length: KILLS }, (_, i) => first(i) + Math.floor(chance() * (first(i + 1) - first(i)))));
}

test('every answer that was replied to is there, once, when the server is killed at 50 random moments of a whole course', async () => {
	const info = test.info();
	test.setTimeout(360_000);
	const seed = Number(process.env['E2E_SEED'] ?? randomInt(2 ** 31));
	console.log(`killed at the moments of E2E_SEED=${seed}`);
	const chance = chanceFrom(seed);
	const moments = momentsOf(chance, leastRequests());
	expect(moments.size, `seed ${seed}`).toBe(KILLS);

	const file = info.outputPath('killed-course.sqlite');
	const [learner] = (await coursePeople(file, ['Ines Okoro'])).learners;
	if (learner === undefined) throw new Error('nobody was made');
	const { address } = await start(file);
	const cookie = await joinOver(address, learner);

	/** Ids that were replied to, and the last event among them. */
	const acknowledged: string[] = [];
	let lastEvent: unknown;
	let requests = 0;
	let kills = 0;
	let unanswered = 0;
	/** How long replies take just now, ms. */
	let usual = 10;

	const noted = (path: string, body: unknown, reply: Reply): Reply => {
		const { id } = fieldsOf(body);
		if (reply.status < 300 && typeof id === 'string') acknowledged.push(id);
		if (reply.status < 300 && path === EVENTS) lastEvent = body;
		return reply;
	};

	/** What must hold after every restart. */
	async function expectKept(): Promise<void> {
		const about = `seed ${seed}, kill ${kills}, request ${requests}`;
		const stored = storedCourse(file, learner?.person ?? '');
		const ids = [...stored.events, ...stored.checks].map((row) => row.id);
		expect(acknowledged.filter((id) => !ids.includes(id)), `${about}: replied to and lost`).toEqual([]);
		expect(new Set(ids).size, `${about}: stored twice`).toBe(ids.length);
		expect(stored.events.map((row) => row.seq), about).toEqual(stored.events.map((_, i) => i + 1));
		for (const { id, lesson } of stored.tries) {
			const rows = stored.checks.filter((row) => row.of === id);
			expect(rows.map((row) => row.seq), `${about}, ${lesson}`).toEqual(rows.map((_, i) => i + 1));
			// All answers are right: every check has one page, and is judged at most once.
			expect(rows.filter((row) => row.kind === 'page').length, `${about}, ${lesson}: pages`).toBe(1);
			expect(rows.filter((row) => row.kind === 'handed-in').length, `${about}, ${lesson}: judged`).toBeLessThanOrEqual(1);
		}
		expect(new Set(stored.tries.map((one) => one.lesson)).size, `${about}: begun twice`).toBe(stored.tries.length);
		expect(stored.completions, about).toBeLessThanOrEqual(1);
		if (lastEvent === undefined || stored.seed === undefined) return;
		// Sent once more, an event is answered with the course as it stands, and stored no second time.
		const again = await postTo(address, EVENTS, lastEvent, { cookie });
		expect(again.status, about).toBe(200);
		const told: unknown = stateIn(again);
		expect(told, about).toEqual(JSON.parse(JSON.stringify(replayed(stored.seed, stored.events.map((row) => row.payload)))));
		expect(storedCourse(file, learner?.person ?? '').events.length, about).toBe(stored.events.length);
	}

	async function killDuring(sent: Promise<Reply>): Promise<Reply | undefined> {
		// Before, while and after it is worked on.
		const settled = sent.catch(() => undefined);
		await new Promise((done) => setTimeout(done, chance() * 1.5 * usual));
		await kill();
		kills += 1;
		return settled;
	}

	const post: Post = async (path, body) => {
		const killed = moments.has(requests);
		requests += 1;
		for (let tries = 0; tries < TRIES; tries += 1) {
			const since = performance.now();
			const sent = postTo(address, path, body, { cookie });
			if (killed && tries === 0) {
				const reply = await killDuring(sent);
				if (reply !== undefined) noted(path, body, reply);
				await start(file, address);
				await expectKept();
				if (reply !== undefined) return reply;
				unanswered += 1;
				continue;
			}
			const reply = await sent.catch(() => undefined);
			if (reply === undefined) continue;
			usual = (usual + performance.now() - since) / 2;
			return noted(path, body, reply);
		}
		throw new Error(`${path} was never answered`);
	};

	// A slip at the first problem of two lessons leads through half-done examples as well.
	const slips = new Set(['label', 'force']);
	const driver = new CourseDriver(courseOverHttp(post, file), (_, { lesson }) => !slips.delete(lesson));
	const begun = replayed(0, []);
	expect(await driver.course(begun), `seed ${seed}`).toBe('passed');
	expect(slips.size).toBe(0);
	expect(kills, `seed ${seed}: of ${requests} requests`).toBe(KILLS);
	// Of moments spread over a request's whole way some hit before the reply.
	expect(unanswered, `seed ${seed}`).toBeGreaterThan(0);
	console.log(`killed ${kills} times in ${requests} requests, ${unanswered} times before the reply`);

	const stored = storedCourse(file, learner.person);
	expect(stored.completions, `seed ${seed}`).toBe(1);
	expect(stored.events.filter((row) => row.kind === 'answered').length).toBeGreaterThanOrEqual(LESSONS.length * WANTED_BEFORE_CHECK);
	const once = await postTo(address, CHECKS, { lesson: 'final', language: 'en' }, { cookie });
	expect(once).toMatchObject({ status: 409, body: { error: [{ field: 'lesson', problem: 'is passed already' }] } });
});

test('a check on screen goes on when the server was killed in its middle: told in words, kept once', async ({ browser }) => {
	const file = test.info().outputPath('killed-check.sqlite');
	const [learner] = (await coursePeople(file, ['Ines Okoro'])).learners;
	if (learner === undefined) throw new Error('nobody was made');
	const { address } = await start(file);
	const cookie = await joinOver(address, learner);
	await new CourseDriver(courseOverHttp((path, body) => postTo(address, path, body, { cookie }), file)).practise('stages', replayed(0, []));

	const context = await browser.newContext();
	const [name = '', value = ''] = cookie.split('=');
	await context.addCookies([{ name, value, url: address }]);
	const page = await context.newPage();
	const m = await messages('en');
	let kills = 0;
	const beforeKept = async (nth: number, keep: Locator): Promise<void> => {
		if (nth !== 1) return;
		kills += 1;
		await kill();
		await keep.click();
		await expect(page.getByRole('status')).toHaveText(m.checkPage.notSaved);
		await start(file, address);
	};
	await page.goto(`${address}/learn/check/stages`);
	await new CoursePages({ page, hands: mouse, m, language: 'en', address, file, learner, beforeKept }).check('stages');
	expect(kills).toBe(1);
	const { checks, tries } = storedCourse(file, learner.person);
	expect(tries).toHaveLength(1);
	expect(checks.map((row) => row.kind)).toEqual(['page', 'answered', 'answered', 'answered', 'handed-in']);
	await context.close();
});
