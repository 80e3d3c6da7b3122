import { randomUUID } from 'node:crypto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { findOrAddGuest } from '#lib/server/db/guests.ts';
import { currentGuest, giveGuestToken, guestTokenHash, type Cookies } from '#lib/server/guest.ts';

const NOW = '2026-11-25T09:00:00.000Z';

/** A browser's cookies, with what was set on them. */
function browser() {
	const jar = new Map<string, string>();
	const set: { name: string; options: object }[] = [];
	return {
		set,
		cookies: {
			get: (name: string) => jar.get(name),
			set(name: string, value: string, options: object) {
				jar.set(name, value);
				set.push({ name, options });
			}
		},
		jar
	};
}

/** What storing a first answer does with the visitor. */
function answers(db: Database, cookies: Cookies): Promise<string> {
	return findOrAddGuest(db, { id: randomUUID(), tokenHash: guestTokenHash(cookies, true), now: NOW });
}

describe('a guest', () => {
	let db: Database;
	beforeEach(async () => {
		db = await openDatabase('file::memory:');
	});
	afterEach(() => db.destroy());

	it('is unknown before the first answer, and the same one after it', async () => {
		const { cookies } = browser();
		expect(await currentGuest(db, cookies, true)).toBeNull();
		const id = await answers(db, cookies);
		expect(await currentGuest(db, cookies, true)).toBe(id);
		expect(await answers(db, cookies)).toBe(id);
	});

	it('is not entered by looking at a page', async () => {
		const { cookies } = browser();
		giveGuestToken(cookies, true);
		expect(await db.selectFrom('guest').selectAll().execute()).toEqual([]);
	});

	it('keeps the token from before the first answer, so that the answer can be sent again', async () => {
		const { cookies, jar } = browser();
		const token = giveGuestToken(cookies, true);
		await answers(db, cookies);
		expect([...jar.values()]).toEqual([token]);
	});

	it('has a cookie that scripts cannot read and other hosts do not get', () => {
		const { cookies, set } = browser();
		giveGuestToken(cookies, true);
		expect(set).toEqual([
			{
				name: '__Host-guest',
				options: { path: '/', httpOnly: true, sameSite: 'lax', secure: true, maxAge: 34_560_000 }
			}
		]);
	});

	it('has a cookie without Secure on plain HTTP, where the browser would drop it', () => {
		const { cookies, set } = browser();
		giveGuestToken(cookies, false);
		expect(set).toMatchObject([{ name: 'guest', options: { secure: false, httpOnly: true } }]);
	});

	it('is not known by the token in the database', async () => {
		const { cookies, jar } = browser();
		await answers(db, cookies);
		const [token = ''] = jar.values();
		const rows = await db.selectFrom('guest').selectAll().execute();
		expect(JSON.stringify(rows)).not.toContain(token);
		expect(Buffer.from(token, 'base64url')).toHaveLength(32);
	});

	it('gets a new token instead of one that this server never made', async () => {
		const { cookies, jar } = browser();
		jar.set('__Host-guest', '1');
		expect(await currentGuest(db, cookies, true)).toBeNull();
		expect(giveGuestToken(cookies, true)).toHaveLength(43);
	});
});
