/** A server that finds no room on its disk: it says so, stores nothing half, and goes on when there is room. */
import { execFileSync } from 'node:child_process';
import { DatabaseSync } from 'node:sqlite';
import { expect, test } from '@playwright/test';
import { recordMessages } from '#lib/text/index.ts';
import { answered } from '../support/answered.ts';
import { postTo } from '../support/course-over-http.ts';
import { coursePeople } from './course-people.ts';
import { addressOf, answer, heading, lastAttempt, problemOf, ready, rightEntries, whole } from './learner.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';

let running: OwnServer | undefined;
test.afterEach(async () => {
	await running?.end('SIGTERM');
	running = undefined;
});

/** How far a process may write into any file from now on: what lies beyond is refused as on a full disk. @source prlimit(1), setrlimit(2): RLIMIT_FSIZE */
function limit(pid: number, bytes: number | 'unlimited'): void {
	execFileSync('prlimit', ['--pid', String(pid), `--fsize=${bytes}:unlimited`]);
}

test('a full disk is told in words, what was answered waits on the device, and goes on its way when there is room', { tag: '@en' }, async ({ browser }) => {
	const file = test.info().outputPath('full.sqlite');
	const [learner] = (await coursePeople(file, ['Ines Okoro'])).learners;
	running = await startOwnServer(file);
	const { address, pid } = running;
	const context = await browser.newContext();
	const page = await context.newPage();
	const bridge = problemOf('bridge-bearing', 1);
	await page.goto(address + addressOf(bridge));
	await ready(page);
	await whole(page);
	const cookie = (await context.cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
	const send = (body: unknown) => postTo(address, '/api/attempts', body, { cookie });
	expect((await send(answered(problemOf('bridge-bearing', 2)))).status).toBe(201);

	limit(pid, 4096);
	const body = answered(problemOf('bridge-bearing', 3));
	for (let i = 0; i < 3; i += 1) {
		expect(await send(body)).toEqual({ status: 507, body: { error: [{ field: 'disk', problem: 'of the server is full, and nothing was stored', remedy: 'send it again later' }] } });
	}
	await answer(page, bridge, rightEntries(bridge));
	await expect(heading(page)).toHaveText('Right, all of it.');
	await expect(page.getByText('1 answer waits on this device to be sent.')).toBeVisible();
	const kept = await lastAttempt(page);

	// A form, in both languages; what only reads goes on.
	for (const language of ['en', 'es'] as const) {
		const { faults } = await recordMessages(language);
		const reply = await fetch(`${address}/sign-in?/learner`, {
			method: 'POST',
			headers: { origin: address, accept: 'text/html', 'accept-language': language },
			body: new URLSearchParams({ number: learner?.number ?? '', pin: '000000' }),
			redirect: 'manual'
		});
		expect(reply.status).toBe(507);
		expect(await reply.text()).toContain(faults.noRoom);
	}
	expect((await fetch(address)).status).toBe(200);
	expect((await fetch(`${address}/api/attempts/${body.id}`, { headers: { cookie } })).status).toBe(404);

	limit(pid, 'unlimited');
	expect((await send(body)).status).toBe(201);
	await page.reload();
	await expect.poll(async () => (await page.request.get(`${address}/api/attempts/${kept}`)).status()).toBe(200);
	await context.close();

	expect(await running.end('SIGTERM')).toBe(0);
	running = undefined;
	const db = new DatabaseSync(file);
	expect(db.prepare('pragma integrity_check').all()).toEqual([{ integrity_check: 'ok' }]);
	expect(db.prepare('select count(*) as stored from attempt').get()).toEqual({ stored: 3 });
	db.close();
});
