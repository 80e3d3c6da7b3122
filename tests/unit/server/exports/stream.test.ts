import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { setResponse } from '@sveltejs/kit/node';
import { afterEach, describe, expect, it } from 'vitest';
import { jsonOf } from '#lib/server/exports/json.ts';
import { bodyOf } from '#lib/server/exports/stream.ts';

/** Long enough that no buffer on the way takes all of it. */
const PART = 'x'.repeat(64 * 1024);

interface Watched {
	readonly parts: AsyncGenerator<string, void, undefined>;
	readonly made: () => number;
	readonly ended: Promise<void>;
}

/** Parts without end, or with a fault at one of them. */
function watched(faultAt = Infinity): Watched {
	let count = 0;
	const { promise: ended, resolve } = Promise.withResolvers<undefined>();
	async function* parts(): AsyncGenerator<string, void, undefined> {
		try {
			for (;;) {
				if (count === faultAt) throw new Error('the database is gone');
				count += 1;
				yield await Promise.resolve(PART);
			}
		} finally {
			resolve(undefined);
		}
	}
	return { parts: parts(), made: () => count, ended };
}

const never = (fault: unknown): void => {
	throw fault;
};

describe('a body that is streamed', () => {
	let server: Server | undefined;
	afterEach(() => void server?.close());

	/** Serves one answer as the server of the program does: by SvelteKit's own hand. */
	async function serve(body: () => ReadableStream<Uint8Array>): Promise<string> {
		server = createServer((_, response) => void setResponse(response, new Response(body(), { headers: { 'content-type': 'text/csv' } })));
		server.listen(0, '127.0.0.1');
		await once(server, 'listening');
		const { port } = server.address() as AddressInfo;
		return `http://127.0.0.1:${String(port)}/`;
	}

	it('is made no faster than it is taken', async () => {
		const { parts, made } = watched();
		const reader = bodyOf(parts, never).getReader();
		expect(made()).toBe(0);
		await reader.read();
		await reader.read();
		expect(made()).toBe(2);
		await reader.cancel();
	});

	it('ends its work when the one who takes it goes away', async () => {
		const { parts, made, ended } = watched();
		const address = await serve(() => bodyOf(parts, never));
		const away = new AbortController();
		const response = await fetch(address, { signal: away.signal });
		await response.body?.getReader().read();
		away.abort();
		await ended;
		const before = made();
		expect((await parts.next()).done).toBe(true);
		expect(made()).toBe(before);
	});

	it('breaks the connection at a fault, so that nobody takes half a file for a whole one', async () => {
		const told: unknown[] = [];
		const { parts } = watched(3);
		const address = await serve(() => bodyOf(parts, (fault) => told.push(fault)));
		const response = await fetch(address);
		expect(response.status).toBe(200);
		await expect(response.text()).rejects.toThrow();
		expect(told).toEqual([new Error('the database is gone')]);
	});

	it('comes whole where there is no fault', async () => {
		async function* parts(): AsyncGenerator<string, void, undefined> {
			yield await Promise.resolve('señal, ');
			yield 'y más';
		}
		const response = await fetch(await serve(() => bodyOf(parts(), never)));
		expect(await response.text()).toBe('señal, y más');
	});
});

describe('a JSON document', () => {
	async function* items(...itemPages: readonly (readonly unknown[])[]): AsyncGenerator<readonly unknown[], void, undefined> {
		for (const page of itemPages) yield await Promise.resolve(page);
	}

	it('is valid only when it is whole, whatever pages its lists come in', async () => {
		const parts: string[] = [];
		for await (const part of jsonOf([['a', 1], ['list', items([1, { b: '"' }], [], [null])], ['none', items()], ['empty', items([])], ['c', { d: [] }]])) parts.push(part);
		expect(JSON.parse(parts.join(''))).toEqual({ a: 1, list: [1, { b: '"' }, null], none: [], empty: [], c: { d: [] } });
		for (let i = 0; i < parts.length; i += 1) expect(() => JSON.parse(parts.slice(0, i).join('')) as unknown, String(i)).toThrow(SyntaxError);
	});
});
