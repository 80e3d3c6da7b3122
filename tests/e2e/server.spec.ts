import { existsSync } from 'node:fs';
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
	const policy = (await request.get('/')).headers()['content-security-policy'] ?? '';
	expect(policy).toContain("default-src 'self'");
	expect(policy).toMatch(/script-src 'self' 'nonce-[^']+';/);
	expect(policy).toContain("frame-ancestors 'none'");
	expect(policy).not.toContain('unsafe-eval');
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
	expect(await spanish.text()).toContain('<html lang="es">');
	const english = await request.get('/', { headers: { 'accept-language': 'en-GB' } });
	expect(await english.text()).toContain('<html lang="en">');
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
