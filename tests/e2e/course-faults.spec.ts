/** What a course's addresses are sent that they must not take: nothing is lost, counted twice or gained by it. */
import { randomUUID } from 'node:crypto';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from '@playwright/test';
import type { LessonId } from '#lib/course/index.ts';
import { lessonState, type CourseState, type LessonTask } from '#lib/flow/index.ts';
import { rightValue } from '#lib/grading/index.ts';
import { replayed } from '#lib/server/course/state.ts';
import { drawItem, type CheckItem } from '#lib/server/course/items.ts';
import { CourseDriver, answerEvent, checkAnswer, type Transport } from '../support/course-driver.ts';
import { CHECKS, EVENTS, courseOverHttp, fieldsOf, joinOver, postTo, signInOver, stateIn, storedCourse, type Reply, type StoredCourse } from '../support/course-over-http.ts';
import { coursePeople, type CourseLearner, type CoursePeople } from './course-people.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';

// One server for all tests; each takes learners of its own.
test.describe.configure({ mode: 'default' });

const NAMES = Array.from({ length: 24 }, (_, i) => `Learner ${i + 1}`);

let server: OwnServer;
let file: string;
let people: CoursePeople;
let taken = 0;

test.beforeAll(async () => {
	file = test.info().outputPath('course-faults.sqlite');
	people = await coursePeople(file, NAMES);
	server = await startOwnServer(file);
});

test.afterAll(async () => {
	await server.end('SIGTERM');
});

/** A signed-in learner, and ways to the server. */
interface Signed {
	readonly learner: CourseLearner;
	readonly cookie: string;
	readonly post: (path: string, body: unknown, headers?: Readonly<Record<string, string>>) => Promise<Reply>;
	readonly to: Transport;
	readonly driver: CourseDriver;
	readonly stored: () => StoredCourse;
}

function signedAs(learner: CourseLearner, cookie: string): Signed {
	const post: Signed['post'] = (path, body, headers = {}) => postTo(server.address, path, body, { cookie, ...headers });
	const to = courseOverHttp(post, file);
	return { learner, cookie, post, to, driver: new CourseDriver(to), stored: () => storedCourse(file, learner.person) };
}

async function joined(): Promise<Signed> {
	const learner = people.learners[taken];
	taken += 1;
	if (learner === undefined) throw new Error('all learners are taken');
	return signedAs(learner, await joinOver(server.address, learner));
}

const FROM_NOTHING: CourseState = replayed(0, []);

function atHand(state: CourseState, lesson: LessonId): LessonTask {
	const { next } = lessonState(state, lesson);
	if (next === undefined) throw new Error(`${lesson} asks nothing`);
	return next;
}

/** A learner with the first lesson's check begun. */
interface Checked extends Signed {
	readonly check: string;
	readonly items: readonly CheckItem[];
}

async function inCheck(): Promise<Checked> {
	const who = await joined();
	await who.driver.practise('stages', FROM_NOTHING);
	const { id } = await who.to.begin('stages');
	return { ...who, check: id, items: await who.to.items(id) };
}

function answerTo(item: CheckItem | undefined): { id: string; item: string; answer: Record<string, unknown> } {
	if (item === undefined) throw new Error('no item');
	return { id: randomUUID(), item: item.id, answer: checkAnswer(item, true) };
}

/** A refusal says of every fault which field, what is wrong, what would be right; and nothing of the program. */
function expectRefused(reply: Reply, status: number, field: string, about: string): void {
	expect(reply.status, about).toBe(status);
	const errors = fieldsOf(reply.body)['error'];
	expect(errors, about).toContainEqual({ field, problem: expect.stringMatching(/\S/), remedy: expect.stringMatching(/\S/) });
	expect(JSON.stringify(errors), about).not.toMatch(/Error\b|\.ts|\.js:|node_modules/);
}

test('an event that two connections post at once is stored once; its id stands for nothing else', async () => {
	const who = await joined();
	const state = await who.driver.show('stages');
	const event = answerEvent('stages', atHand(state, 'stages'), true);
	const replies = await Promise.all([who.post(EVENTS, event), who.post(EVENTS, event)]);
	expect(replies.map((one) => one.status).sort()).toEqual([200, 201]);
	expect(replies[0]?.body).toEqual(replies[1]?.body);
	const { events } = who.stored();
	expect(events.filter((row) => row.id === event['id'])).toHaveLength(1);

	const otherAnswer = { ...event, answer: answerEvent('stages', atHand(state, 'stages'), false)['answer'] };
	const others = [otherAnswer, { id: event['id'], kind: 'went-on', lesson: 'stages' }];
	for (const other of others) expectRefused(await who.post(EVENTS, other), 409, 'id', JSON.stringify(other));
	expect(who.stored().events).toEqual(events);
});

test('another seed than the one at hand is kept as practice and moves nothing', async () => {
	const who = await joined();
	await who.driver.practise('stages', FROM_NOTHING);
	await who.driver.check('stages');
	const state = await who.driver.show('label');
	const next = atHand(state, 'label');
	const before = who.stored();
	const easier = answerEvent('label', { ...next, seed: next.seed + 1000 }, true);
	const reply = await who.post(EVENTS, easier);
	expect(reply).toMatchObject({ status: 200, body: { counts: false } });
	expect(stateIn(reply)).toEqual(state);
	const after = who.stored();
	expect(after.events).toEqual(before.events);
	expect(after.attempts).toEqual([...before.attempts, easier['id']]);
});

test('a lesson that is not open, and a check of one that is not ready, are refused', async () => {
	const who = await joined();
	expectRefused(await who.post(EVENTS, { id: randomUUID(), kind: 'shown', lesson: 'swing', step: 0 }), 409, 'lesson', 'swing');
	for (const lesson of ['stages', 'final']) expectRefused(await who.post(CHECKS, { lesson, language: 'en' }), 409, 'lesson', lesson);
	expect(who.stored()).toMatchObject({ events: [], tries: [] });
});

test('a score, a grade or a state in the body is refused, and nothing of it is stored', async () => {
	const who = await inCheck();
	const [item] = who.items;
	const state = stateNow(who);
	const answers = `${CHECKS}/${who.check}/answers`;
	const pages = `${CHECKS}/${who.check}/pages`;
	const event = answerEvent('stages', atHandOr(state), true);
	const before = who.stored();
	const page = { id: randomUUID(), items: who.items.map((one) => one.id) };
	const cases: readonly [path: string, body: Readonly<Record<string, unknown>>, extra: readonly string[]][] = [
		[EVENTS, event, ['right', 'score', 'state', 'outcome', 'aided', 'counts', 'record']],
		[answers, answerTo(item), ['right', 'score', 'grades', 'unsafe', 'seed']],
		[pages, page, ['passed', 'standing', 'results', 'supervised']],
		[CHECKS, { lesson: 'stages', language: 'en' }, ['seed', 'rule', 'supervision', 'nth']]
	];
	for (const [path, body, extra] of cases) {
		for (const field of extra) expectRefused(await who.post(path, { ...body, [field]: 1 }), 400, field, `${path} with ${field}`);
	}
	expect(who.stored()).toEqual(before);
});

/** The course as it is stored. */
function stateNow(who: Signed): CourseState {
	const { seed, events } = who.stored();
	if (seed === undefined) throw new Error('the course is not begun');
	return replayed(seed, events.map((row) => row.payload));
}

/** The problem at hand, or one like it where none is asked: for bodies that are refused unread. */
function atHandOr(state: CourseState): LessonTask {
	return lessonState(state, 'stages').next ?? { task: 'moment-now', seed: 1, halfDone: undefined };
}

test('what is no JSON, too much, or sent by another method is refused with the field, the fault and the remedy', async () => {
	const who = await inCheck();
	const paths = [EVENTS, CHECKS, `${CHECKS}/${who.check}/answers`, `${CHECKS}/${who.check}/pages`];
	const before = who.stored();
	for (const path of paths) {
		expectRefused(await who.post(path, `{"id":"${'x'.repeat(65 * 1024)}"}`), 413, 'body', path);
		expectRefused(await who.post(path, '{}', { 'content-type': 'text/plain', origin: server.address }), 415, 'body', path);
		expectRefused(await who.post(path, '{"seed":NaN}'), 400, 'body', path);
		expect((await who.post(path, '[]')).status, path).toBe(400);
		expect((await who.post(path, 'null')).status, path).toBe(400);
		const put = await fetch(server.address + path, { method: 'PUT', headers: { cookie: who.cookie, 'content-type': 'application/json' }, body: '{}' });
		expect(put.status, path).toBe(405);
	}
	expect(who.stored()).toEqual(before);
});

test('somebody else’s check and none read the same, and take nothing', async () => {
	const [who, other] = [await inCheck(), await inCheck()];
	const before = other.stored();
	const answer = answerTo(other.items[0]);
	const page = { id: randomUUID(), items: other.items.map((item) => item.id) };
	for (const [last, body] of [['answers', answer], ['pages', page]] as const) {
		const foreign = await who.post(`${CHECKS}/${other.check}/${last}`, body);
		expectRefused(foreign, 404, 'check', last);
		expect(foreign).toEqual(await who.post(`${CHECKS}/${randomUUID()}/${last}`, body));
		expect(foreign).toEqual(await who.post(`${CHECKS}/1%27%20or%201=1/${last}`, body));
	}
	expect(other.stored()).toEqual(before);
});

test('a page that is handed in twice at once is judged once, and after the end nothing is taken', async () => {
	const who = await inCheck();
	const answers = `${CHECKS}/${who.check}/answers`;
	const pages = `${CHECKS}/${who.check}/pages`;
	const items = who.items.map((item) => item.id);
	expectRefused(await who.post(pages, { id: randomUUID(), items }), 422, items[0] ?? '', 'nothing is answered');
	// Both tabs answer all at once.
	await Promise.all(who.items.flatMap((item) => [who.post(answers, answerTo(item)), who.post(answers, answerTo(item))]));
	const [one, other] = [{ id: randomUUID(), items }, { id: randomUUID(), items }];
	const replies = await Promise.all([who.post(pages, one), who.post(pages, one), who.post(pages, other)]);
	expect(replies.some((reply) => fieldsOf(reply.body)['end'] === 'passed')).toBe(true);
	for (const reply of replies) expect([200, 409]).toContain(reply.status);
	const ended = who.stored();
	expect(ended.checks.filter((row) => row.kind === 'handed-in')).toHaveLength(1);
	expect(ended.events.filter((row) => row.kind === 'check-ended')).toHaveLength(1);

	expectRefused(await who.post(answers, answerTo(who.items[0])), 409, 'check', 'an answer after the end');
	expectRefused(await who.post(pages, { id: randomUUID(), items }), 409, 'check', 'a page after the end');
	expectRefused(await who.post(CHECKS, { lesson: 'stages', language: 'en' }), 409, 'lesson', 'begun again');
	expect(who.stored()).toEqual(ended);
});

test('a session that ends during a check is told in words, and after signing in again the same answer counts once', async () => {
	const who = await inCheck();
	const before = who.stored();
	const answer = answerTo(who.items[0]);
	const steps: [string, unknown][] = [
		[EVENTS, { id: randomUUID(), kind: 'shown', lesson: 'stages', step: 0 }],
		[CHECKS, { lesson: 'stages', language: 'en' }],
		[`${CHECKS}/${who.check}/answers`, answer],
		[`${CHECKS}/${who.check}/pages`, { id: randomUUID(), items: who.items.map((item) => item.id) }]
	];
	const db = new DatabaseSync(file, { timeout: 10_000 });
	db.prepare(`update session set expires_at = '2020-01-01T00:00:00.000Z' where person_id = ?`).run(who.learner.person);
	db.close();
	for (const [path, body] of steps) {
		const reply = await who.post(path, body);
		expectRefused(reply, 401, 'session', path);
		expect(JSON.stringify(reply.body), path).toContain('sign in');
	}
	expect(who.stored()).toEqual(before);

	const back = signedAs(who.learner, await signInOver(server.address, who.learner));
	expect(await back.to.begin('stages')).toMatchObject({ id: who.check, end: null });
	expect((await back.post(`${CHECKS}/${who.check}/answers`, answer)).status).toBe(200);
	expect((await back.post(`${CHECKS}/${who.check}/answers`, answer)).status).toBe(200);
	expect(back.stored().checks).toHaveLength(before.checks.length + 1);
	expect(await back.driver.check('stages')).toBe('passed');
});

test('what waited on a device is not stored for somebody else who signed in there meanwhile', async () => {
	const [who, other] = [await joined(), await joined()];
	const event = { id: randomUUID(), kind: 'shown', lesson: 'stages', step: 0 };
	const wrong = await other.post(EVENTS, event, { 'underfoot-person': who.learner.person });
	expectRefused(wrong, 401, 'session', 'another person');
	expect(other.stored().events).toEqual([]);
	expect(who.stored().events).toEqual([]);
	expect((await who.post(EVENTS, event, { 'underfoot-person': who.learner.person })).status).toBe(201);
	expect(who.stored().events.map((row) => row.id)).toEqual([event.id]);
});

test('trainers and employers take no checks', async () => {
	const who = await inCheck();
	const before = who.stored();
	for (const cookie of [people.trainer, people.employer]) {
		for (const path of [CHECKS, `${CHECKS}/${who.check}/answers`, `${CHECKS}/${who.check}/pages`]) {
			expectRefused(await postTo(server.address, path, { lesson: 'stages', language: 'en' }, { cookie }), 404, 'path', path);
		}
		expect((await fetch(`${server.address}/learn/check/stages`, { headers: { cookie } })).status).toBe(404);
	}
	expect(who.stored()).toEqual(before);
});

test('another site can send nothing in a learner’s name', async () => {
	const who = await inCheck();
	const before = who.stored();
	const event = { id: randomUUID(), kind: 'shown', lesson: 'stages', step: 1 };
	const answer = answerTo(who.items[0]);
	for (const origin of ['https://elsewhere.example', 'null', server.address.replace('http:', 'https:')]) {
		for (const [path, body] of [[EVENTS, event], [`${CHECKS}/${who.check}/answers`, answer]] as const) {
			expect((await who.post(path, body, { origin })).status, `${origin} ${path}`).toBe(403);
			expect((await who.post(path, body, { origin, 'content-type': 'text/plain' })).status, `${origin} ${path}`).toBe(403);
			// Nor does a browser let it try: it asks first.
			const asked = await fetch(server.address + path, { method: 'OPTIONS', headers: { origin, 'access-control-request-method': 'POST', 'access-control-request-headers': 'content-type' } });
			expect(asked.headers.get('access-control-allow-origin'), origin).toBeNull();
		}
	}
	expect(who.stored()).toEqual(before);
	expect((await who.post(EVENTS, event, { origin: server.address })).status).toBe(201);
});

/** Fields of what the server knows of an item. */
const KEPT_BACK = ['seed', 'key', 'marks', 'criticalChoices', 'problem', 'drawn', 'plan', 'acceptedTry', 'slot', 'outcome', 'results', 'right', 'grades', 'verdict'];

/** Digits that no chance brings into a page: a number with fewer may stand there for itself. */
const TELLING = 6;

test('while a check runs, its page holds neither seed nor key of an item', async () => {
	// Numbers are asked from the second lesson on.
	const who = await joined();
	await who.driver.practise('stages', FROM_NOTHING);
	await who.driver.check('stages');
	await who.driver.practise('label', stateNow(who));
	await who.driver.check('label');
	await who.driver.practise('free-fall', stateNow(who));
	const { id } = await who.to.begin('free-fall');
	await expectNothingTold(who, 'free-fall', id);
	const pictures = await inCheck();
	await expectNothingTold(pictures, 'stages', pictures.check);
});

async function expectNothingTold(who: Signed, lesson: string, check: string): Promise<void> {
	const items = await who.to.items(check);
	const [first] = items;
	await who.to.answer(check, answerTo(first));
	const given = new Set(items.flatMap(givenNumbers).map(String));
	// A rail of 3.4 feet may be as high as a fall is long: what is given for itself gives nothing away.
	const secrets = [...who.stored().tries.map((one) => one.seed), ...items.flatMap(secretsOf).filter((secret) => !given.has(secret))];
	expect(secrets.length).toBeGreaterThan(items.length);
	for (const path of [`/learn/check/${lesson}`, `/learn/check/${lesson}/__data.json`]) {
		const reply = await fetch(server.address + path, { headers: { cookie: who.cookie } });
		expect(reply.status, path).toBe(200);
		const text = await reply.text();
		for (const secret of secrets) expect(text, path).not.toContain(secret);
		if (path.endsWith('.json')) {
			const names = namesIn(JSON.parse(text));
			expect(KEPT_BACK.filter((name) => names.has(name)), path).toEqual([]);
			// What is shown of the items is there.
			expect([...names], path).toContain(lesson === 'stages' ? 'choices' : 'asks');
		}
	}
}

/** What would give an item away: its seed, and right values with more digits than anything that is shown. */
function secretsOf(item: CheckItem): readonly string[] {
	const drawn = drawItem(item);
	const values = drawn.kind === 'picture' ? [] : drawn.asks.flatMap((ask) => (ask.kind === 'number' ? [rightValue(drawn.problem, ask)] : []));
	return [item.seed, ...values].flatMap((value) => {
		const text = value === undefined ? '' : String(value);
		return text.replace(/\D/g, '').length >= TELLING ? [text] : [];
	});
}

/** Every number that a site was drawn with. */
function givenNumbers(item: CheckItem): readonly number[] {
	const drawn = drawItem(item);
	return drawn.kind === 'picture' ? [] : numbersIn(drawn.problem.drawn);
}

function numbersIn(value: unknown): readonly number[] {
	if (typeof value === 'number') return [value];
	return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

/** Names of fields at any depth of what a page loads. */
function namesIn(value: unknown, found = new Set<string>()): ReadonlySet<string> {
	if (typeof value !== 'object' || value === null) return found;
	for (const [name, inner] of Object.entries(value)) {
		if (!Array.isArray(value)) found.add(name);
		namesIn(inner, found);
	}
	return found;
}
