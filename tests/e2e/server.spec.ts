import { existsSync, readdirSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { startOwnServer } from './own-server.ts';

test('every answer carries the security headers', async ({ request }) => {
	for (const path of ['/', '/icon.svg', '/health', '/no-such-page']) {
		const headers = (await request.get(path)).headers();
		expect(headers['x-content-type-options'], path).toBe('nosniff');
		expect(headers['x-frame-options'], path).toBe('DENY');
		expect(headers['referrer-policy'], path).toBe('same-origin');
	}
});

test('a page may load and run only what is our own', async ({ request }) => {
	const page = await request.get('/learn/problem?scenario=bridge-bearing&seed=1');
	const policy = page.headers()['content-security-policy'] ?? '';
	expect(policy).toContain("default-src 'self'");
	expect(policy).toMatch(/script-src 'self' 'nonce-[^']+';/);
	expect(policy).toContain("frame-ancestors 'none'");
	expect(policy).not.toContain('unsafe-eval');
});

test('pages that only say something carry no script at all', async ({ request }) => {
	for (const path of ['/', '/method']) {
		const page = await request.get(path);
		expect(page.status(), path).toBe(200);
		expect(await page.text(), path).not.toContain('<script');
	}
});

test('a choice of language and colours leads back to a page of this site and to no other', async ({ request, baseURL }) => {
	const choose = (form: Record<string, string>) =>
		request.post('/settings', { form, headers: { origin: new URL(baseURL ?? '').origin }, maxRedirects: 0 });
	expect((await choose({ language: 'es', to: '/method' })).headers()['location']).toMatch(/\/method$/);
	for (const to of ['//elsewhere.example', '/\\elsewhere.example', 'https://elsewhere.example', 'method']) {
		const reply = await choose({ theme: 'dark', to });
		expect(reply.status(), to).toBe(303);
		expect(new URL(reply.headers()['location'] ?? '', baseURL).pathname, to).toBe('/');
	}
	expect((await choose({ language: 'xx' })).status()).toBe(400);
	expect((await choose({ theme: '<script>' })).status()).toBe(400);
});

test('a form post from another site is refused', async ({ request }) => {
	const response = await request.post('/', {
		headers: { origin: 'https://elsewhere.example' },
		form: { answer: '1.40' }
	});
	expect(response.status()).toBe(403);
});

test('pages come in the language of the browser', async ({ request }) => {
	const spanish = await request.get('/', { headers: { 'accept-language': 'es-MX,en;q=0.5' } });
	expect(await spanish.text()).toMatch(/<html lang="es"[ >]/);
	const english = await request.get('/', { headers: { 'accept-language': 'en-GB' } });
	expect(await english.text()).toMatch(/<html lang="en"[ >]/);
});

test('a server told to stop closes its database and ends well', async ({ request }, info) => {
	const file = info.outputPath('stopped.sqlite');
	const server = await startOwnServer(file);
	await expect((await request.get(`${server.address}/health`)).json()).resolves.toEqual({ ok: true });
	expect(existsSync(`${file}-wal`)).toBe(true);
	expect(await server.end('SIGTERM')).toBe(0);
	expect(existsSync(file)).toBe(true);
	expect(existsSync(`${file}-wal`)).toBe(false);
});

test('a server told to stop while it takes its daily backup ends well, and leaves a whole one or none', async () => {
	const info = test.info();
	const [file, folder] = [info.outputPath('daily.sqlite'), info.outputPath('daily')];
	const start = () => startOwnServer(file, 0, { UNDERFOOT_BACKUPS: folder });
	const names = () => (existsSync(folder) ? readdirSync(folder) : []);
	const first = await start();
	expect(await first.end('SIGTERM')).toBe(0);
	expect(names().filter((name) => !/^underfoot-\d{8}T\d{9}Z\.sqlite(\.json)?$/.test(name))).toEqual([]);
	expect([0, 2]).toContain(names().length);
	// One that is left to it takes it by itself, and not twice on a day.
	const second = await start();
	await expect.poll(() => names().length, { timeout: 30_000 }).toBe(2);
	expect(await second.end('SIGTERM')).toBe(0);
	const third = await start();
	expect(await third.end('SIGTERM')).toBe(0);
	expect(names()).toHaveLength(2);
});
