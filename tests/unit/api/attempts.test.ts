import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { gradeProblem, type Answer } from '#lib/grading/index.ts';
import { MOST_ANSWERS, receiveAnswers, type Receipt } from '#lib/server/attempts/receive.ts';
import { toldAttempt } from '#lib/server/attempts/tell.ts';
import { findAttempt } from '#lib/server/db/attempts.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { currentGuest, type Cookies } from '#lib/server/guest.ts';
import { shippedVersions } from '#lib/server/index.ts';
import { answered, answering, problemOf } from '../../support/answered.ts';
import { DATABASES, type TestDatabase } from '../server/databases.ts';

const NOW = new Date('2026-11-25T09:00:00.000Z');
const problem = problemOf('bridge-bearing', 7);

/** A browser with its cookies. */
function browser(): Cookies {
	const jar = new Map<string, string>();
	return { get: (name) => jar.get(name), set: (name, value) => void jar.set(name, value) };
}

function refusal(receipt: Receipt) {
	if (receipt.kind !== 'refused') throw new Error(`It was stored as ${receipt.attempt}`);
	return receipt;
}

describe.each(DATABASES)('an answered problem, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});
	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const post = (cookies: Cookies, body: unknown, now = NOW) =>
		receiveAnswers(db, { cookies, secure: true, answerer: null }, body, shippedVersions, now);

	async function rows() {
		const [attempts, guests] = await Promise.all([
			db.selectFrom('attempt').select('id').execute(),
			db.selectFrom('guest').select('id').execute()
		]);
		return { attempts: attempts.length, guests: guests.length };
	}

	/** Posts what must be refused, and shows that nothing was stored: no answer, no guest. */
	async function refused(body: unknown, cookies = browser()) {
		const before = await rows();
		const receipt = refusal(await post(cookies, body));
		expect(await rows()).toEqual(before);
		return receipt;
	}

	async function stored(cookies: Cookies, id: string) {
		const guest = await currentGuest(db, cookies, true);
		return guest === null ? null : findAttempt(db, guest, id);
	}

	it('is stored with the server\'s own draw and grades before the reply', async () => {
		const cookies = browser();
		const body = answering(answered(problem), 'free-fall', '1.55 m');
		const receipt = await post(cookies, body);
		const grades = gradeProblem(problem, new Map(Object.entries(body.answers as unknown as Record<string, Answer>)), { language: 'en' });
		const expected = JSON.parse(JSON.stringify(Object.fromEntries(grades)));
		expect(receipt).toMatchObject({ kind: 'stored', status: 201, attempt: body.id });
		expect(receipt.kind === 'stored' && JSON.parse(receipt.grades)).toEqual(expected);
		expect(expected['free-fall']).toMatchObject({ mark: { kind: 'wrong' }, diagnosis: { certainty: 'asserted' } });
		const row = await stored(cookies, body.id);
		if (row === null) throw new Error('It was not stored');
		expect(toldAttempt(row)).toEqual({
			attempt: body.id,
			scenario: 'bridge-bearing',
			version: problem.scenario.version,
			drawVersion: 1,
			slipSetVersion: body.slipSetVersion,
			engineVersion: '1',
			seed: 7,
			acceptedTry: problem.acceptedTry,
			language: 'en',
			units: 'metric',
			createdAt: NOW.toISOString(),
			drawn: JSON.parse(JSON.stringify(problem.drawn)),
			answers: body.answers,
			grades: expected
		});
	});

	it('that is right is marked right in every ask', async () => {
		for (const scenario of ['bridge-bearing', 'turbine-nacelle', 'stage-grid']) {
			const receipt = await post(browser(), answered(problemOf(scenario, 3)));
			const grades: { mark: { kind: string } }[] = receipt.kind === 'stored' ? Object.values(JSON.parse(receipt.grades)) : [];
			expect(grades.length, scenario).toBeGreaterThan(1);
			expect(new Set(grades.map((grade) => grade.mark.kind)), scenario).toEqual(new Set(['right']));
		}
	});

	it('sent twice is stored once, and both replies say the same', async () => {
		const cookies = browser();
		const body = answered(problem);
		const first = await post(cookies, body);
		const between = await rows();
		const second = await post(cookies, body, new Date('2026-11-25T10:00:00.000Z'));
		expect(second).toEqual({ ...first, status: 200 });
		expect(await rows()).toEqual(between);
	});

	it.each([
		['an answer', answering(answered(problem), 'free-fall', '0.7 m')],
		['the language', { ...answered(problem), language: 'es' }],
		['the problem', answered(problemOf('bridge-bearing', 8))]
	])('under a taken id is refused when %s differs, and the first stays as it was', async (_what, other) => {
		const cookies = browser();
		const body = answered(problem);
		await post(cookies, body);
		const before = await stored(cookies, body.id);
		const receipt = await refused({ ...other, id: body.id }, cookies);
		expect(receipt).toMatchObject({ status: 409, problems: [{ field: 'id' }] });
		expect(await stored(cookies, body.id)).toEqual(before);
	});

	it('under an id that is somebody else\'s is refused in the same words', async () => {
		const cookies = browser();
		const body = answered(problem);
		await post(cookies, body);
		const own = await refused(answering(body, 'free-fall', '0.7 m'), cookies);
		const strange = await refused(body);
		expect(strange).toEqual(own);
	});

	it('of a visitor without a cookie makes that visitor a guest, whose answer nobody else sees', async () => {
		const [cookies, stranger] = [browser(), browser()];
		const body = answered(problem);
		expect(await currentGuest(db, cookies, true)).toBeNull();
		await post(cookies, body);
		await post(stranger, answered(problem));
		expect(await stored(cookies, body.id)).not.toBeNull();
		expect(await stored(stranger, body.id)).toBeNull();
		expect(await stored(browser(), body.id)).toBeNull();
	});

	it.each([
		['another try', { acceptedTry: problem.acceptedTry + 1 }, 'acceptedTry', 409],
		['another seed of another try', { seed: 8, acceptedTry: 399 }, 'acceptedTry', 409],
		['another draw version', { drawVersion: 2 }, 'drawVersion', 409],
		['another slip set', { slipSetVersion: 999 }, 'slipSetVersion', 409],
		['another version', { version: 999 }, 'version', 409],
		['an unknown scenario', { scenario: 'moon-base' }, 'scenario', 404],
		['a score', { score: 1 }, 'score', 400],
		['grades', { grades: { 'free-fall': 'right' } }, 'grades', 400],
		['a drawn plan', { drawn: {} }, 'drawn', 400]
	])('that claims %s is refused', async (_what, change, field, status) => {
		const receipt = await refused({ ...answered(problem), ...change });
		expect(receipt).toMatchObject({ status, problems: [{ field }] });
		expect(receipt.problems).toHaveLength(1);
	});

	it.each([
		['en', '', 'There is no number in this.', 'Write a number here, such as 1.40 m.'],
		['en', 'about two', 'There is no number in this.', 'Write something like 1.40 m.'],
		['en', '1.4 kg', '“kg” measures something else.', 'The field counts in m.'],
		['en', '1,234', 'Is this 1.234 m or 1234 m?', 'Which one do you mean?']
	])('with an entry that cannot be read (%s: %j) is no wrong answer: it is asked for again', async (language, text, wrong, remedy) => {
		const receipt = await refused({ ...answering(answered(problem), 'free-fall', text), language });
		expect(receipt.status).toBe(422);
		expect(JSON.parse(JSON.stringify(receipt.problems).replace(/\u00a0/g, ' '))).toEqual([{ field: 'answers.free-fall', problem: wrong, remedy }]);
	});

	it('in Spanish is read with a decimal comma, and asked again in Spanish', async () => {
		const spanish = { ...answering(answered(problem), 'free-fall', '0,69 m'), language: 'es' };
		expect(await post(browser(), spanish)).toMatchObject({ kind: 'stored', grades: expect.stringContaining('"kind":"right"') });
		const receipt = await refused({ ...spanish, id: randomUUID(), answers: { ...spanish.answers, required: { kind: 'number', text: 'mucho' } } });
		expect(receipt.problems[0]?.field).toBe('answers.required');
		expect(receipt.problems[0]?.remedy).toMatch(/1,40.m/);
	});

	it('is refused for a while from a guest who has sent too many, and from nobody else', async () => {
		const cookies = browser();
		const at = (second: number) => new Date(NOW.getTime() + second * 1000);
		for (let i = 0; i < MOST_ANSWERS; i += 1) await post(cookies, answered(problem), at(i));
		const receipt = refusal(await post(cookies, answered(problem), at(400)));
		expect(receipt).toMatchObject({ status: 429, retryAfter: 200, problems: [{ field: 'body', remedy: 'send it again in 200 s' }] });
		expect(await post(browser(), answered(problem), at(400))).toMatchObject({ kind: 'stored' });
		expect(await post(cookies, answered(problem), at(601))).toMatchObject({ kind: 'stored' });
	});
});
