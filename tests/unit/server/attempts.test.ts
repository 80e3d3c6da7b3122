import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
	findAttempt,
	storeAttempt,
	storeFirstAttempt,
	type NewAttempt
} from '#lib/server/db/attempts.ts';
import { findAnsweringGuest, findGuest, findOrAddGuest } from '#lib/server/db/guests.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { DATABASES, type TestDatabase } from './databases.ts';

const NOW = '2026-11-25T09:00:00.000Z';

function anAttempt(guestId: string, change: Partial<NewAttempt> = {}): NewAttempt {
	return {
		id: randomUUID(),
		guest_id: guestId,
		scenario_id: 'roof-edge',
		scenario_version: 1,
		draw_version: 1,
		slip_set_version: 1,
		engine_version: '1',
		seed: '9007199254740993',
		accepted_try: 3,
		plan: '{"dRing":1.5}',
		answers: '{"free-fall":"1.40 m"}',
		result: '{"right":true}',
		language: 'en',
		units: 'metric',
		created_at: NOW,
		...change
	};
}

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let guest: string;
	let other: string;

	const aGuest = () =>
		findOrAddGuest(db, { id: randomUUID(), tokenHash: randomUUID(), now: NOW });

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		guest = await aGuest();
		other = await aGuest();
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	it('what has a zero character in it is asked for like any other text that is not there', async () => {
		for (const text of ['\u0000', `${guest}\u0000`]) {
			expect(await findAttempt(db, guest, text)).toBeNull();
			expect(await findGuest(db, text)).toBeNull();
		}
	});

	it('stores an answer and finds it again, each value as it was', async () => {
		const sent = anAttempt(guest);
		expect(await storeAttempt(db, sent)).toEqual({ kind: 'stored', attempt: sent });
		expect(await findAttempt(db, guest, sent.id)).toEqual(sent);
	});

	it('answers the first grading when the same answer comes twice', async () => {
		const sent = anAttempt(guest);
		await storeAttempt(db, sent);
		const again = { ...sent, result: '{"right":false}', created_at: '2026-11-26T09:00:00.000Z' };
		expect(await storeAttempt(db, again)).toEqual({ kind: 'repeated', attempt: sent });
		expect(await findAttempt(db, guest, sent.id)).toEqual(sent);
	});

	it('stores many that arrive together, though one of them cannot be stored and one comes twice', async () => {
		const many = Array.from({ length: 120 }, () => anAttempt(guest));
		const [twice] = many;
		if (twice === undefined) throw new Error('There are none');
		const orphan = anAttempt(randomUUID());
		const outcomes = await Promise.allSettled([...many, twice, orphan].map((one) => storeAttempt(db, one)));
		const kinds = outcomes.map((outcome) => (outcome.status === 'fulfilled' ? outcome.value.kind : 'failed'));
		expect(kinds).toEqual([...many.map(() => 'stored'), 'repeated', 'failed']);
		for (const one of many) expect(await findAttempt(db, guest, one.id)).toEqual(one);
	});

	it('stores one row when two devices send the same answer at once', async () => {
		const sent = anAttempt(guest);
		const outcomes = await Promise.all([1, 2, 3, 4].map(() => storeAttempt(db, sent)));
		expect(outcomes.map((outcome) => outcome.kind).sort()).toEqual([
			'repeated',
			'repeated',
			'repeated',
			'stored'
		]);
	});

	it.each([
		{ answers: '{"free-fall":"1.50 m"}' },
		{ seed: '9007199254740992' },
		{ scenario_id: 'nacelle' },
		{ scenario_version: 2 },
		{ draw_version: 2 },
		{ slip_set_version: 2 },
		{ accepted_try: 4 },
		{ language: 'es' },
		{ units: 'us' }
	])('refuses an id that stands for other content: %o', async (change) => {
		const sent = anAttempt(guest);
		await storeAttempt(db, sent);
		expect(await storeAttempt(db, { ...sent, ...change })).toEqual({ kind: 'conflict' });
		expect(await findAttempt(db, guest, sent.id)).toEqual(sent);
	});

	it("refuses somebody else's id in the same words, and shows nothing of it", async () => {
		const sent = anAttempt(guest);
		await storeAttempt(db, sent);
		expect(await storeAttempt(db, { ...sent, guest_id: other })).toEqual({ kind: 'conflict' });
		expect(await findAttempt(db, other, sent.id)).toBeNull();
	});

	it('refuses an answer of a guest who does not exist', async () => {
		await expect(storeAttempt(db, anAttempt(randomUUID()))).rejects.toThrow();
	});

	it.each([
		['changing', sql`update attempt set result = '{}'`],
		['deleting', sql`delete from attempt`]
	])('forbids %s a stored answer', async (_name, statement) => {
		const sent = anAttempt(guest);
		await storeAttempt(db, sent);
		await expect(statement.execute(db)).rejects.toThrow('attempt is insert-only');
		expect(await findAttempt(db, guest, sent.id)).toEqual(sent);
	});

	it('finds who answers, and the answer that fills a while, by one query', async () => {
		const tokenHash = randomUUID();
		const busy = await findOrAddGuest(db, { id: randomUUID(), tokenHash, now: NOW });
		for (const second of ['01', '02', '03']) {
			await storeAttempt(db, anAttempt(busy, { created_at: `2026-11-25T09:00:${second}.000Z` }));
		}
		const nth = async (since: string, count: number) => (await findAnsweringGuest(db, tokenHash, since, count))?.nth;
		expect(await findAnsweringGuest(db, tokenHash, NOW, 1)).toEqual({ id: busy, nth: '2026-11-25T09:00:03.000Z' });
		expect(await nth('2026-11-25T09:00:01.000Z', 3)).toBe('2026-11-25T09:00:01.000Z');
		expect(await nth('2026-11-25T09:00:01.000Z', 4)).toBeNull();
		expect(await nth('2026-11-25T09:00:01.001Z', 3)).toBeNull();
		expect(await findAnsweringGuest(db, 'another', NOW, 1)).toBeNull();
	});

	it('stores a first answer and its guest together', async () => {
		const newcomer = { id: randomUUID(), tokenHash: randomUUID(), now: NOW };
		const { guest_id, ...sent } = anAttempt(newcomer.id);
		expect(await storeFirstAttempt(db, newcomer, sent)).toMatchObject({ kind: 'stored', attempt: { id: sent.id, guest_id } });
		expect(await findGuest(db, newcomer.tokenHash)).toBe(newcomer.id);
	});

	it('leaves no guest behind whose first answer is refused or cannot be stored', async () => {
		const taken = anAttempt(guest);
		await storeAttempt(db, taken);
		const newcomer = { id: randomUUID(), tokenHash: randomUUID(), now: NOW };
		expect(await storeFirstAttempt(db, newcomer, taken)).toEqual({ kind: 'conflict' });
		expect(await findGuest(db, newcomer.tokenHash)).toBeNull();
		const broken = { ...anAttempt(newcomer.id), scenario_id: null as unknown as string };
		await expect(storeFirstAttempt(db, newcomer, broken)).rejects.toThrow();
		expect(await findGuest(db, newcomer.tokenHash)).toBeNull();
	});

	it('makes one guest of two different first answers that arrive together', async () => {
		const tokenHash = randomUUID();
		const first = () => storeFirstAttempt(db, { id: randomUUID(), tokenHash, now: NOW }, anAttempt(''));
		const outcomes = await Promise.all([first(), first(), first()]);
		expect(outcomes.map((outcome) => outcome.kind)).toEqual(['stored', 'stored', 'stored']);
		expect(new Set(outcomes.map((outcome) => outcome.kind === 'stored' && outcome.attempt.guest_id)).size).toBe(1);
	});

	it('makes one guest of two first answers that arrive together', async () => {
		const tokenHash = randomUUID();
		const ids = await Promise.all(
			[1, 2, 3].map(() => findOrAddGuest(db, { id: randomUUID(), tokenHash, now: NOW }))
		);
		expect(new Set(ids).size).toBe(1);
		expect(await findGuest(db, tokenHash)).toBe(ids[0]);
		expect(await findGuest(db, 'another')).toBeNull();
	});

	it('keeps everything when it is opened again', async () => {
		const sent = anAttempt(guest);
		await storeAttempt(db, sent);
		const again = await openDatabase(server.address);
		expect(await findAttempt(again, guest, sent.id)).toEqual(sent);
		await again.destroy();
	});
});

describe('on SQLite', () => {
	it('forbids replacing a stored answer by inserting over it', async () => {
		const db = await openDatabase('file::memory:');
		const guest = await findOrAddGuest(db, { id: randomUUID(), tokenHash: 'x', now: NOW });
		const sent = anAttempt(guest);
		await storeAttempt(db, sent);
		await expect(
			db.replaceInto('attempt').values({ ...sent, result: '{}' }).execute()
		).rejects.toThrow('attempt is insert-only');
		expect(await findAttempt(db, guest, sent.id)).toEqual(sent);
		await db.destroy();
	});

	it('holds the write lock from the beginning of a transaction, so that a read in it stays true', async () => {
		const folder = mkdtempSync(join(tmpdir(), 'underfoot-sqlite-'));
		const file = join(folder, 'one.sqlite');
		const db = await openDatabase(`file:${file}`);
		const second = new DatabaseSync(file, { timeout: 0 });
		await db.transaction().execute(async (transaction) => {
			await transaction.selectFrom('guest').selectAll().execute();
			expect(() => second.exec('begin immediate')).toThrow('database is locked');
		});
		second.exec('begin immediate');
		second.close();
		await db.destroy();
		rmSync(folder, { recursive: true });
	});

	it('has each commit on the disk before it answers', async () => {
		const db = await openDatabase('file::memory:');
		const { rows } = await sql<{ synchronous: number }>`PRAGMA synchronous`.execute(db);
		expect(rows[0]?.synchronous).toBe(2);
		await db.destroy();
	});
});

it('refuses an address of neither database, and says which there are', async () => {
	await expect(openDatabase('mysql://localhost/x')).rejects.toThrow(
		'DATABASE_URL must begin with postgres:// (a server) or file: (a SQLite file)'
	);
});
