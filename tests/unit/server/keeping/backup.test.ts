/** Backups of a database in use, and their way back. */
import { randomUUID } from 'node:crypto';
import { appendFileSync, copyFileSync, existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storeAttempt, type NewAttempt } from '#lib/server/db/attempts.ts';
import { findOrAddGuest } from '#lib/server/db/guests.ts';
import { connect, openDatabase, type Database } from '#lib/server/db/open.ts';
import { databaseName, makeDatabase, putInPlace, siblingAddress } from '#lib/server/db/postgres-databases.ts';
import { backUp, type BackedUp } from '#lib/server/keeping/backup.ts';
import { KeepingFault } from '#lib/server/keeping/fault.ts';
import { restoreBackup, type RestoreOrder } from '#lib/server/keeping/restore.ts';
import { verifyRecords } from '#lib/server/records/verify/verify.ts';
import { postgresPrograms } from '../../../../src/cli/postgres.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { aLearner, aMember, anOrganisation } from '../people/organisation.ts';

/** pg_dump and pg_restore of the server that the tests start. */
const ENV = { ...process.env, POSTGRES_BIN: postgresPrograms() ?? '' };

function anAttempt(guest: string): NewAttempt {
	return {
		id: randomUUID(),
		guest_id: guest,
		scenario_id: 'roof-edge',
		scenario_version: 1,
		draw_version: 1,
		slip_set_version: 1,
		engine_version: '1',
		seed: '7',
		accepted_try: 3,
		plan: JSON.stringify({ dRing: 1.5, filling: 'x'.repeat(2000) }),
		answers: '{"free-fall":"1.40 m"}',
		result: '{"right":true}',
		language: 'en',
		units: 'metric',
		created_at: new Date().toISOString()
	};
}

/** What a backup or restore was refused with. */
async function faultOf(work: Promise<unknown>): Promise<string> {
	const came = await work.then(() => 'nothing', (error: unknown) => error);
	if (came instanceof KeepingFault) return `${came.field} ${came.problem}`;
	throw came instanceof Error ? came : new Error(String(came));
}

describe.each(DATABASES)('a backup of %s', (name, start) => {
	let server: TestDatabase;
	let db: Database;
	let folder: string;
	let guest: string;
	let taken: BackedUp;
	let clock = Date.now();

	/** Another database of the same kind, which is not there yet. */
	const elsewhere = (): string => (name === 'SQLite' ? `file:${join(folder, `${randomUUID()}.sqlite`)}` : siblingAddress(server.address, `restored_${randomUUID().slice(0, 8)}`));
	/** One that is there, with empty tables. */
	async function anEmptyOne(): Promise<{ address: string; db: Database }> {
		const address = elsewhere();
		if (name !== 'SQLite') await makeDatabase(server.address, databaseName(address));
		return { address, db: await openDatabase(address) };
	}
	const take = (address = server.address, to = join(folder, 'backups')): Promise<BackedUp> =>
		backUp({ address, folder: to, program: '0.0.1', now: new Date((clock += 1)), step: () => undefined, env: ENV });
	const restore = (order: Partial<RestoreOrder>): ReturnType<typeof restoreBackup> =>
		restoreBackup({ file: taken.path, address: server.address, replace: false, now: new Date((clock += 1)), step: () => undefined, env: ENV, ...order });

	async function idsIn(address: string): Promise<ReadonlySet<string>> {
		const other = await openDatabase(address);
		try {
			return new Set((await other.selectFrom('attempt').select('id').execute()).map(({ id }) => id));
		} finally {
			await other.destroy();
		}
	}

	beforeAll(async () => {
		server = await start();
		folder = mkdtempSync(join(tmpdir(), 'underfoot-backup-'));
		db = await openDatabase(server.address);
		guest = await findOrAddGuest(db, { id: randomUUID(), tokenHash: randomUUID(), now: new Date().toISOString() });
		const organisation = await anOrganisation(db);
		await aMember(db, organisation, 'trainer');
		for (let i = 0; i < 5; i += 1) await aLearner(db, organisation, `B-${i}`);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
		rmSync(folder, { recursive: true, force: true });
	});

	it('taken under load holds every answer that was acknowledged before it began, and its records verify', async () => {
		const acknowledged: string[] = [];
		let going = true;
		const load = Array.from({ length: 8 }, async () => {
			while (going) {
				const stored = await storeAttempt(db, anAttempt(guest));
				if (stored.kind === 'stored') acknowledged.push(stored.attempt.id);
			}
		});
		while (acknowledged.length < 500) await new Promise((done) => setTimeout(done, 5));
		const before = [...acknowledged];
		taken = await take();
		const during = acknowledged.length - before.length;
		going = false;
		await Promise.all(load);
		// Answers came in all the while: the backup made nobody wait for its end.
		expect(during).toBeGreaterThan(10);
		const address = elsewhere();
		const { chains, aside } = await restore({ address });
		expect({ chains, aside }).toEqual({ chains: { organisations: 1, entries: taken.manifest.heads[0]?.seq }, aside: null });
		const there = await idsIn(address);
		expect(before.filter((id) => !there.has(id))).toEqual([]);
		expect(there.size).toBe(taken.manifest.rows['attempt']);
		expect(there.size).toBeLessThanOrEqual(acknowledged.length);
		const other = await openDatabase(address);
		expect(await verifyRecords(other, { depth: 'records' })).toMatchObject({ kind: 'holds', counts: { people: 6 } });
		// Nothing may be changed in it that could not be changed before.
		await expect(sql`update record_entry set hash = ''`.execute(other)).rejects.toThrow(/insert-only/);
		await other.destroy();
	});

	it('leaves nothing when the program ends between the note beside it and its own name', async () => {
		const to = join(folder, 'ended');
		const listening = new Set(process.listeners('exit'));
		const taking = backUp({ address: server.address, folder: to, program: '0.0.1', now: new Date((clock += 1)), step: () => undefined, env: ENV });
		const noted = (): boolean => existsSync(to) && readdirSync(to).some((name) => name.endsWith('.json'));
		let over = false;
		const ended = taking.then(() => undefined, () => undefined).finally(() => (over = true));
		while (!over && !noted()) await new Promise((turn) => setImmediate(turn));
		expect(over).toBe(false);
		for (const listener of process.listeners('exit')) if (!listening.has(listener)) Reflect.apply(listener, process, [0]);
		const left = readdirSync(to);
		await ended;
		expect(left).toEqual([]);
	});

	it('is told by what stands beside it, for its owner alone, and leaves nothing else', () => {
		expect(readdirSync(join(folder, 'backups')).toSorted()).toEqual([taken.manifest.file, `${taken.manifest.file}.json`]);
		expect(JSON.parse(readFileSync(`${taken.path}.json`, 'utf8'))).toEqual(taken.manifest);
		expect(statSync(taken.path).size).toBe(taken.manifest.bytes);
		expect(statSync(taken.path).mode & 0o077).toBe(0);
		expect(taken.manifest).toMatchObject({ program: '0.0.1', migration: '0007-records', heads: [{ hash: expect.stringMatching(/^[0-9a-f]{64}$/) }] });
	});

	it('does not go over an organisation, but with --replace moves it aside and keeps it', async () => {
		const { address, db: other } = await anEmptyOne();
		await anOrganisation(other);
		await other.destroy();
		expect(await faultOf(restore({ address }))).toContain('has an organisation already');
		const { aside } = await restore({ address, replace: true });
		const old = await openDatabase(name === 'SQLite' ? `file:${aside ?? ''}` : siblingAddress(server.address, aside ?? ''));
		expect(await old.selectFrom('attempt').select('id').execute()).toEqual([]);
		expect(await old.selectFrom('organisation').select('id').execute()).toHaveLength(1);
		await old.destroy();
		expect((await idsIn(address)).size).toBe(taken.manifest.rows['attempt']);
	});

	if (name === 'PostgreSQL') {
		it('leaves the old database in its place where the new one cannot take it', async () => {
			const old = await anEmptyOne();
			const organisation = await anOrganisation(old.db);
			await old.db.destroy();
			await expect(putInPlace(old.address, 'not_there', `${databaseName(old.address)}_before`)).rejects.toThrow(/does not exist/);
			const { db: still } = connect(old.address);
			expect(await still.selectFrom('organisation').select('id').execute()).toEqual([{ id: organisation }]);
			await still.destroy();
		});
	}

	it('is not put in place while a server has the database open', async () => {
		const { address, db: other } = await anEmptyOne();
		await sql`select 1`.execute(other);
		expect(await faultOf(restore({ address, replace: true }))).toMatch(/open|connected/);
		expect(await other.selectFrom('attempt').select('id').execute()).toEqual([]);
		await other.destroy();
	});

	it('is refused with a byte changed, cut short, or without what stands beside it', async () => {
		const copy = join(folder, taken.manifest.file);
		const again = (): void => {
			copyFileSync(taken.path, copy);
			copyFileSync(`${taken.path}.json`, `${copy}.json`);
		};
		again();
		const bytes = readFileSync(copy);
		const middle = Math.floor(bytes.length / 2);
		bytes[middle] = (bytes[middle] ?? 0) ^ 1;
		writeFileSync(copy, bytes);
		const address = elsewhere();
		expect(await faultOf(restore({ file: copy, address }))).toContain('is damaged');
		again();
		appendFileSync(copy, 'x');
		expect(await faultOf(restore({ file: copy, address }))).toContain('is damaged');
		again();
		rmSync(`${copy}.json`);
		expect(await faultOf(restore({ file: copy, address }))).toContain('.json beside it');
		again();
		writeFileSync(`${copy}.json`, '{"kind":"underfoot-backup"}');
		expect(await faultOf(restore({ file: copy, address }))).toContain('tells of no backup');
		again();
		writeFileSync(`${copy}.json`, JSON.stringify({ ...taken.manifest, rows: { ...taken.manifest.rows, attempt: 1 } }));
		expect(await faultOf(restore({ file: copy, address }))).toContain('holds other rows');
		expect(await faultOf(restore({ file: join(folder, 'none'), address }))).toContain('does not exist');
	});

	it('is refused when it is of a newer version, or its records were changed', async () => {
		const address = elsewhere();
		await restore({ address });
		const other = await openDatabase(address);
		await sql`insert into kysely_migration (name, timestamp) values ('9999-to-come', ${new Date().toISOString()})`.execute(other);
		await other.destroy();
		const newer = await take(address, join(folder, 'newer'));
		expect(await faultOf(restore({ file: newer.path, address: elsewhere() }))).toContain('is of a newer version of this program (0.0.1): it has gone through 9999-to-come');

		const changed = elsewhere();
		await restore({ address: changed });
		const theirs = await openDatabase(changed);
		await sql`update record_head set hash = ${'0'.repeat(64)}`.execute(theirs);
		await theirs.destroy();
		const tampered = await take(changed, join(folder, 'tampered'));
		expect(await faultOf(restore({ file: tampered.path, address: elsewhere() }))).toMatch(/holds records that were changed: record_head/);
	});

	it('that fails half-way leaves nothing behind', async () => {
		const to = join(folder, 'failing');
		const address = name === 'SQLite' ? `file:${join(folder, 'torn.sqlite')}` : server.address;
		if (name === 'SQLite') {
			copyFileSync(taken.path, join(folder, 'torn.sqlite'));
			const torn = readFileSync(join(folder, 'torn.sqlite'));
			writeFileSync(join(folder, 'torn.sqlite'), torn.fill(0xff, 40_000, 60_000));
		}
		const env = name === 'SQLite' ? ENV : { ...process.env, POSTGRES_BIN: folder };
		expect(await faultOf(backUp({ address, folder: to, program: '0.0.1', now: new Date(), step: () => undefined, env }))).toMatch(/damaged|names no folder with pg_dump/);
		expect(existsSync(to) ? readdirSync(to) : []).toEqual([]);
	});
});
