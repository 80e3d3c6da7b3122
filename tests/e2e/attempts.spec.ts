import { randomUUID } from 'node:crypto';
import { expect, test, type APIRequestContext } from '@playwright/test';
import { answered, answering, problemOf } from '../support/answered.ts';
import { startOwnServer } from './own-server.ts';

const problem = problemOf('bridge-bearing', 7);

/** A request as a browser has it that was on a learner's page before. */
async function visit(request: APIRequestContext, address = ''): Promise<void> {
	await request.get(`${address}/learn/problem?scenario=bridge-bearing&seed=7`);
}

async function errorsOf(response: { json(): Promise<unknown> }): Promise<unknown> {
	const body = await response.json();
	return typeof body === 'object' && body !== null && 'error' in body ? body.error : body;
}

test('an answer is marked and stored, and shown to its guest alone', async ({ request, playwright, baseURL }) => {
	await visit(request);
	const body = answering(answered(problem), 'free-fall', '1.55 m');
	const reply = await request.post('/api/attempts', { data: body });
	expect(reply.status()).toBe(201);
	const { attempt, grades } = await reply.json();
	expect(attempt).toBe(body.id);
	expect(grades['free-fall']).toMatchObject({ kind: 'number', mark: { kind: 'wrong' }, diagnosis: { certainty: 'asserted' } });

	const found = await request.get(`/api/attempts/${body.id}`);
	expect(found.status()).toBe(200);
	expect(found.headers()['cache-control']).toBe('no-store');
	expect(await found.json()).toMatchObject({ attempt: body.id, seed: 7, answers: body.answers, grades });

	const stranger = await playwright.request.newContext({ baseURL });
	const newcomer = await stranger.get(`/api/attempts/${body.id}`);
	await visit(stranger);
	await stranger.post('/api/attempts', { data: answered(problem) });
	const otherGuest = await stranger.get(`/api/attempts/${body.id}`);
	const nothing = await request.get(`/api/attempts/${randomUUID()}`);
	for (const refused of [newcomer, otherGuest, nothing]) {
		expect(refused.status()).toBe(404);
		expect(await errorsOf(refused)).toEqual(await errorsOf(nothing));
	}
	await stranger.dispose();
});

test('an answer that is sent twice is stored once; its id stands for nothing else', async ({ request, playwright, baseURL }) => {
	await visit(request);
	const body = answered(problem);
	const first = await request.post('/api/attempts', { data: body });
	const second = await request.post('/api/attempts', { data: body });
	expect([first.status(), second.status()]).toEqual([201, 200]);
	expect(await second.json()).toEqual(await first.json());

	const other = await request.post('/api/attempts', { data: answering(body, 'free-fall', '1.55 m') });
	const stranger = await playwright.request.newContext({ baseURL });
	const theirs = await stranger.post('/api/attempts', { data: body });
	for (const refused of [other, theirs]) {
		expect(refused.status()).toBe(409);
		expect(await errorsOf(refused)).toMatchObject([{ field: 'id' }]);
	}
	await stranger.dispose();
});

test('what is no answer is refused with the field, the fault and the remedy', async ({ request }) => {
	await visit(request);
	const body = answered(problem);
	const post = (data: unknown, headers: Record<string, string> = { 'content-type': 'application/json' }) =>
		request.post('/api/attempts', { data: typeof data === 'string' ? data : JSON.stringify(data), headers });
	const cases: [string, Promise<{ status(): number; json(): Promise<unknown> }>, number, string][] = [
		['a score of its own', post({ ...body, score: 1 }), 400, 'score'],
		['a negative seed', post({ ...body, seed: -1 }), 400, 'seed'],
		['NaN', post('{"seed":NaN}'), 400, 'body'],
		['another try', post({ ...body, acceptedTry: problem.acceptedTry + 1 }), 409, 'acceptedTry'],
		['an unknown scenario', post({ ...body, scenario: 'moon-base' }), 404, 'scenario'],
		['an unreadable entry', post(answering(body, 'free-fall', 'much')), 422, 'answers.free-fall'],
		['a megabyte in a field', post(answering(body, 'free-fall', 'x'.repeat(1024 * 1024))), 413, 'body'],
		['65 kB', post({ ...body, scenario: 'x'.repeat(65 * 1024) }), 413, 'body'],
		['text', post(body, { 'content-type': 'text/plain', origin: new URL(test.info().project.use.baseURL ?? '').origin }), 415, 'body'],
		['an id of the wrong form', request.get('/api/attempts/1%27%20or%201=1'), 404, 'id'],
		['another method', request.put(`/api/attempts/${body.id}`, { data: {} }), 405, 'method'],
		['another address', request.get('/api/scores'), 404, 'path']
	];
	for (const [what, sent, status, field] of cases) {
		const reply = await sent;
		expect(reply.status(), what).toBe(status);
		const errors = await errorsOf(reply);
		expect(errors, what).toEqual([{ field, problem: expect.stringMatching(/\S/), remedy: expect.stringMatching(/\S/) }]);
		expect(JSON.stringify(errors), what).not.toMatch(/Error|\.ts|\.js:|node_modules/);
	}
	expect((await request.get(`/api/attempts/${body.id}`)).status()).toBe(404);
});

test('an answer is there when the server is killed between the reply and the reload', async ({ page }, info) => {
	const file = info.outputPath('killed.sqlite');
	const server = await startOwnServer(file);
	const body = answering(answered(problem), 'free-fall', '1.55 m');
	await page.goto(`${server.address}/learn/problem?scenario=bridge-bearing&seed=7`);
	const post = (sent: unknown) =>
		page.evaluate(async (data) => {
			const reply = await fetch('/api/attempts', { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(data) });
			return { status: reply.status, body: await reply.json() };
		}, sent);
	const first = await post(body);
	expect(await server.end('SIGKILL')).toBe('SIGKILL');
	expect(first.status).toBe(201);

	const again = await startOwnServer(file, Number(new URL(server.address).port));
	// A line that the killed server left open may be tried first, and be found dead.
	await expect(() => page.reload()).toPass();
	const found = await page.evaluate(async (id) => (await fetch(`/api/attempts/${id}`)).json(), body.id);
	expect(found).toMatchObject({ attempt: body.id, answers: body.answers, grades: first.body.grades });
	expect(await post(body)).toEqual({ status: 200, body: first.body });
	expect(await again.end('SIGTERM')).toBe(0);
});

test('every answer that was replied to is there, whenever the server is killed', async ({ playwright }, info) => {
	const file = info.outputPath('stream.sqlite');
	const server = await startOwnServer(file);
	const request = await playwright.request.newContext({ baseURL: server.address });
	await visit(request);
	const bodies = Array.from({ length: 40 }, () => answered(problem));
	const replied: string[] = [];
	const sending = bodies.map(async (body) => {
		const reply = await request.post('/api/attempts', { data: body });
		if (reply.ok()) replied.push(body.id);
	});
	await Promise.any(sending);
	await server.end('SIGKILL');
	await Promise.allSettled(sending);
	expect(replied.length).toBeGreaterThan(0);

	const again = await startOwnServer(file, Number(new URL(server.address).port));
	for (const id of replied) expect((await request.get(`/api/attempts/${id}`)).status(), id).toBe(200);
	// What got no reply is sent again, as the device does: stored now or stored before, never twice.
	for (const body of bodies) expect([200, 201]).toContain((await request.post('/api/attempts', { data: body })).status());
	await request.dispose();
	await again.end('SIGTERM');
});
