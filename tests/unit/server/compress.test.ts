import { gunzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { compressPage } from '#lib/server/compress.ts';
import { answer } from '#lib/server/respond.ts';

const page = () =>
	new Response('<p>drawing</p>'.repeat(500), {
		status: 404,
		headers: { 'content-type': 'text/html; charset=utf-8', etag: '"1"' }
	});

it('sends a page compressed to a browser that takes it, with its status and headers', async () => {
	const response = compressPage(page(), 'br, gzip');
	const body = Buffer.from(await response.arrayBuffer());
	expect(body.length).toBeLessThan(500);
	expect(gunzipSync(body).toString()).toBe(await page().text());
	expect(response.status).toBe(404);
	expect(Object.fromEntries(response.headers)).toMatchObject({
		'content-encoding': 'gzip',
		vary: 'accept-encoding',
		etag: '"1"'
	});
});

it.each([null, 'br', 'gzip;q=0', 'gzip; q=0.0, br'])(
	'sends a page as it is when the browser accepts %s',
	async (accepted) => {
		const response = compressPage(page(), accepted);
		expect(response.headers.has('content-encoding')).toBe(false);
		expect(response.headers.get('vary')).toBe('accept-encoding');
		expect(await response.text()).toBe(await page().text());
	}
);

it('leaves answers of the API as they are', () => {
	const response = Response.json({ ok: true });
	expect(compressPage(response, 'gzip')).toBe(response);
});

it('sends a long answer of the API compressed, and a short one as it is', async () => {
	const long = JSON.stringify(Array.from({ length: 200 }, (_, i) => ({ person: `Person ${String(i)}`, state: 'under-way', right: 3 })));
	const response = compressPage(answer(200, long), 'gzip');
	expect(response.headers.get('content-encoding')).toBe('gzip');
	expect(response.headers.has('content-length')).toBe(false);
	const body = Buffer.from(await response.arrayBuffer());
	expect(body.length).toBeLessThan(long.length / 5);
	expect(gunzipSync(body).toString()).toBe(long);
	const short = answer(201, JSON.stringify({ stored: true }));
	expect(compressPage(short, 'gzip')).toBe(short);
});
