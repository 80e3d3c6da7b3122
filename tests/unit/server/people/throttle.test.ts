import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { failuresOf } from '#lib/server/db/throttle.ts';
import { forgetOld } from '#lib/server/people/tidy.ts';
import { accountKey, addressKey, crewKey, mayTry, noteSuccess, unknownAccountKey, unlock, type ThrottleKey } from '#lib/server/people/throttle.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, later } from './organisation.ts';

describe.each(DATABASES)('tries to sign in, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let count = 0;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	function someone(): { id: string; key: ThrottleKey } {
		count += 1;
		return { id: `person-${count}`, key: accountKey(`person-${count}`) };
	}

	async function fail(key: ThrottleKey, times: number, at = NOW): Promise<void> {
		for (let i = 0; i < times; i += 1) expect(await mayTry(db, [key], at)).toEqual({ kind: 'may' });
	}

	it('are free five times, then wait longer and longer, and end at ten', async () => {
		const { key } = someone();
		await fail(key, 5);
		let at = 0;
		for (const seconds of [30, 60, 120, 240, 480]) {
			expect(await mayTry(db, [key], later(at))).toEqual({ kind: 'wait', retryAfter: seconds });
			at += seconds;
			expect(await mayTry(db, [key], later(at - 1))).toEqual({ kind: 'wait', retryAfter: 1 });
			expect(await mayTry(db, [key], later(at))).toEqual({ kind: 'may' });
		}
		expect(await mayTry(db, [key], later(400 * 24 * 60 * 60))).toEqual({ kind: 'locked' });
	});

	it('begin anew after a right one', async () => {
		const { key } = someone();
		await fail(key, 4);
		await fail(key, 1);
		await noteSuccess(db, [key]);
		await fail(key, 5);
	});

	it('begin anew when somebody unlocks the account', async () => {
		const { id, key } = someone();
		for (let i = 0; i < 10; i += 1) await mayTry(db, [key], later(i * 3600));
		expect(await mayTry(db, [key], later(20 * 3600))).toEqual({ kind: 'locked' });
		await unlock(db, id);
		expect(await mayTry(db, [key], later(20 * 3600))).toEqual({ kind: 'may' });
	});

	it('are each counted when many come at once', async () => {
		const { key } = someone();
		const address = addressKey('198.51.100.1');
		const outcomes = await Promise.all(Array.from({ length: 20 }, () => mayTry(db, [key, address], NOW)));
		expect(outcomes.filter(({ kind }) => kind === 'may')).toHaveLength(5);
		expect(await failuresOf(db, key)).toBe(5);
		expect(await failuresOf(db, address)).toBe(5);
	});

	it('do not count while they have to wait, so that waiting ends', async () => {
		const { key } = someone();
		await fail(key, 5);
		for (let i = 0; i < 5; i += 1) await mayTry(db, [key], later(10));
		expect(await failuresOf(db, key)).toBe(5);
		expect(await mayTry(db, [key], later(30))).toEqual({ kind: 'may' });
	});

	it('from one address are many, for a crew signs in from one; one account does not use them up', async () => {
		const address = addressKey('198.51.100.2');
		const tries: ThrottleKey[][] = Array.from({ length: 299 }, () => [someone().key, address]);
		for (const keys of tries) expect((await mayTry(db, keys, NOW)).kind).toBe('may');
		expect((await mayTry(db, [someone().key, address], NOW)).kind).toBe('may');
		expect(await mayTry(db, [someone().key, address], later(60))).toEqual({ kind: 'wait', retryAfter: 14 * 60 });
		expect((await mayTry(db, [someone().key, address], later(15 * 60))).kind).toBe('may');
		expect(await failuresOf(db, address)).toBe(1);
	});

	it('that were right give crew code and address back', async () => {
		const keys = [someone().key, crewKey('bridge-north'), addressKey('198.51.100.3')];
		await mayTry(db, keys, NOW);
		await noteSuccess(db, keys);
		expect(await Promise.all(keys.map((key) => failuresOf(db, key)))).toEqual([0, 0, 0]);
	});

	it('on an account that does not exist wait and lock as on one that does', async () => {
		const [unknown, known] = [unknownAccountKey('nobody@example.org'), someone().key];
		for (let i = 0; i < 12; i += 1) {
			const at = later(i * 100);
			expect(await mayTry(db, [unknown], at)).toEqual(await mayTry(db, [known], at));
		}
	});

	it('of one network of IPv6 count together', () => {
		expect(addressKey('2001:db8:1:2:aaaa::1')).toBe(addressKey('2001:db8:1:2:bbbb::9'));
		expect(addressKey('2001:db8::1')).toBe(addressKey('2001:0DB8:0:0:5::2'));
		expect(addressKey('2001:db8:1:3::1')).not.toBe(addressKey('2001:db8:1:2::1'));
		expect(addressKey('203.0.113.1')).not.toBe(addressKey('203.0.113.2'));
	});

	it('are forgotten after a month, but those of a person’s account stay', async () => {
		const [person, unknown, address] = [someone().key, unknownAccountKey('long ago'), addressKey('198.51.100.99')];
		await mayTry(db, [person, unknown, address], NOW);
		await forgetOld(db, later(29 * 24 * 3600));
		expect(await Promise.all([person, unknown, address].map((key) => failuresOf(db, key)))).toEqual([1, 1, 1]);
		await forgetOld(db, later(31 * 24 * 3600));
		expect(await Promise.all([person, unknown, address].map((key) => failuresOf(db, key)))).toEqual([1, 0, 0]);
	});

	it('leave nothing of what was typed', async () => {
		await mayTry(db, [unknownAccountKey('typed-by-mistake-482917'), crewKey('CREW-CODE'), addressKey('198.51.100.77')], NOW);
		const rows = JSON.stringify(await db.selectFrom('throttle').selectAll().execute());
		expect(rows).not.toMatch(/482917|CREW-CODE|198\.51\.100\.77/i);
	});
});
