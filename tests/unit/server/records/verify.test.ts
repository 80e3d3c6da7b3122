import { sql } from 'kysely';
import { CompactSign, compactVerify, importJWK } from 'jose';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EntryOf } from '#lib/records/index.ts';
import { eventsOf, findTry, type CheckEvent, type CheckTry } from '#lib/server/db/checks.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { readDatabase, readSnapshot } from '#lib/server/db/snapshot.ts';
import { ALL_JOBS, checkNow, handOutCheckpoint, keepingPage, publicKeys, runJob } from '#lib/server/index.ts';
import { checkChain } from '#lib/server/jobs/chain-check.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { CHECKPOINT_TYPE, makeCheckpoint } from '#lib/server/records/checkpoint.ts';
import { signingKey } from '#lib/server/records/keys.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { regradeTry, type Marking } from '#lib/server/records/verify/regrade.ts';
import { verifyRecords } from '#lib/server/records/verify/verify.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { later } from '../people/organisation.ts';
import { aRecordHouse, type RecordHouse } from './house.ts';

const HOUR = 60 * 60;
const AFTER = later(400 * HOUR);

describe.each(DATABASES)('Verifying records on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let house: RecordHouse;
	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		// Nothing here has to survive a crash, and a course writes hundreds of times.
		if (server.address.startsWith('file:')) await sql`pragma synchronous = off`.execute(db);
		house = await aRecordHouse(db);
	}, 60_000);
	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	it('holds for what the program made, every answer marked and drawn again', async () => {
		const told: number[] = [];
		const result = await verifyRecords(db, { depth: 'answers', redraw: { share: 1, seed: 1 }, progress: (done, of) => told.push(done / of) });
		expect(result).toMatchObject({ kind: 'holds', counts: { organisations: 2, completions: 1, signOffs: 1, certificates: 2, checkpoints: 3, notRegradable: 0 } });
		const { regraded, redrawn } = result.counts;
		expect(redrawn).toBe(regraded);
		// Eight lesson checks and a final check of at least twelve items.
		expect(regraded).toBeGreaterThan(8 + 12);
		expect(told.at(-1)).toBe(1);
		expect(told).toEqual(told.toSorted((a, b) => a - b));
	});

	it('draws a share of the items again, the same ones for the same seed', async () => {
		const share = async (seed: number): Promise<number> => (await verifyRecords(db, { depth: 'answers', redraw: { share: 0.5, seed } })).counts.redrawn;
		const [one, again] = [await share(7), await share(7)];
		expect(one).toBe(again);
		const all = (await verifyRecords(db, { depth: 'answers', redraw: { share: 1, seed: 7 } })).counts.redrawn;
		expect(one).toBeGreaterThan(0);
		expect(one).toBeLessThan(all);
	});

	it('looks at the chain alone if that is asked', async () => {
		const result = await verifyRecords(db, { depth: 'hashes', organisation: house.organisation });
		expect(result).toMatchObject({ kind: 'holds', counts: { organisations: 1, people: 0, regraded: 0 } });
	});

	it('reads as of one moment, whatever is entered meanwhile', async () => {
		const entries = (at: Database): Promise<readonly unknown[]> => at.selectFrom('record_entry').select('seq').execute();
		const before = (await entries(db)).length;
		await readSnapshot(db, async (snapshot) => {
			expect((await entries(snapshot)).length).toBe(before);
			await db.transaction().execute((transaction) =>
				appendEntries(transaction, house.other, [{ kind: 'returned', at: AFTER.toISOString(), by: null, person: house.trained.id, day: '2026-12-11' }])
			);
			expect((await entries(snapshot)).length).toBe(before);
		});
		expect((await entries(db)).length).toBe(before + 1);
	});

	it('reads a database by its address, unless it is of another version', async () => {
		const read = await readDatabase(server.address, (snapshot) => verifyRecords(snapshot, { depth: 'records', organisation: house.organisation }));
		expect(read).toMatchObject({ kind: 'read', value: { kind: 'holds' } });
		await db.insertInto('kysely_migration' as 'done_once').values({ name: '9999-later', timestamp: 'now' } as never).execute();
		expect(await readDatabase(server.address, async () => true)).toEqual({ kind: 'other-version' });
		await db.deleteFrom('kysely_migration' as 'done_once').where('name', '=', '9999-later').execute();
	});

	it('tells a job and the page what came out', async () => {
		const job = ALL_JOBS.find(({ name }) => name === 'chain-check');
		if (job === undefined) throw new Error('The chain is not checked');
		const did = await runJob(db, job, house.organisation, () => AFTER);
		const { seq } = await db.selectFrom('record_head').select('seq').where('organisation_id', '=', house.organisation).executeTakeFirstOrThrow();
		expect(did).toMatchObject({ holds: true, entries: seq });
		expect(await checkNow(db, house.employer, () => AFTER, 10_000)).toBe(true);
		const page = await keepingPage(db, house.employer);
		expect(page).toMatchObject({ running: false, head: { seq }, check: { at: AFTER.toISOString(), found: { holds: true, entries: seq } } });
		expect(page.reports.map((one) => one.job)).toEqual(['chain-check', 'chain-check']);
		// Another organisation's employer sees nothing of it.
		expect((await keepingPage(db, { ...house.employer, organisation: house.other })).reports).toEqual([]);
	});
});

/** One that is only in memory, for what does not hang on the database. */
let db: Database;
let house: RecordHouse;
beforeAll(async () => {
	db = await openDatabase('file::memory:');
	house = await aRecordHouse(db);
}, 60_000);
afterAll(() => db.destroy());

describe('A checkpoint', () => {

	const verified = (handedOut: string) => verifyRecords(db, { depth: 'hashes', handedOut });

	it('is signed over size, root and head, and verifies with the published key', async () => {
		const [, second] = house.checkpoints;
		const file = await handOutCheckpoint(db, house.employer, (await keepingPage(db, house.employer)).checkpoints[0]?.size ?? 0, AFTER);
		expect(file?.token).toBe(second);
		const { payload, protectedHeader } = await compactVerify(second ?? '', await importJWK(file?.key ?? {}, 'EdDSA'));
		expect(protectedHeader).toMatchObject({ alg: 'EdDSA', typ: CHECKPOINT_TYPE });
		expect(JSON.parse(new TextDecoder().decode(payload))).toEqual(file?.checkpoint);
		const audit = await db.selectFrom('audit').select(['kind', 'detail']).where('kind', '=', 'checkpoint-handed-out').execute();
		expect(audit).toEqual([{ kind: 'checkpoint-handed-out', detail: JSON.stringify({ size: file?.checkpoint.size }) }]);
	});

	it('is handed to nobody of another organisation', async () => {
		const size = (await keepingPage(db, house.employer)).checkpoints[0]?.size ?? 0;
		expect(await handOutCheckpoint(db, { ...house.employer, organisation: house.other }, size, AFTER)).toBeNull();
	});

	it('is made anew only when something was entered', async () => {
		expect((await makeCheckpoint(db, house.organisation, AFTER)).kind).toBe('nothing-new');
		const entry: EntryOf<'returned'> = { kind: 'returned', at: AFTER.toISOString(), by: null, person: house.trained.id, day: '2026-12-11' };
		await db.transaction().execute((transaction) => appendEntries(transaction, house.organisation, [entry]));
		const [one, other] = await Promise.all([makeCheckpoint(db, house.organisation, AFTER), makeCheckpoint(db, house.organisation, AFTER)]);
		// Two that are made at once are one.
		expect([one.kind, other.kind].toSorted()).toEqual(['made', 'nothing-new']);
		expect(await checkChain(db, house.organisation)).toMatchObject({ holds: true });
	});

	it('that was handed out is held against the chain', async () => {
		for (const token of house.checkpoints) expect(await verified(token)).toMatchObject({ kind: 'holds' });
	});

	it('of other content, or signed by another key, is not believed', async () => {
		const [first = ''] = house.checkpoints;
		const [header = '', payload = '', signature = ''] = first.split('.');
		const other = Buffer.from(Buffer.from(payload, 'base64url').toString().replace(/"size":\d+/, '"size":3')).toString('base64url');
		expect(await verified([header, other, signature].join('.'))).toMatchObject({ kind: 'broken', broken: { table: 'checkpoint-file', problem: 'signature-wrong' } });
		const { key } = await signingKey(db, 'checkpoint', AFTER);
		const stranger = await new CompactSign(Buffer.from(payload, 'base64url')).setProtectedHeader({ alg: 'EdDSA', kid: 'x', typ: CHECKPOINT_TYPE }).sign(key);
		expect(await verified(stranger)).toMatchObject({ kind: 'broken', broken: { problem: 'key-unknown' } });
		const kid = (await publicKeys(db, 'checkpoint')).at(-1)?.kid ?? '';
		const untyped = await new CompactSign(Buffer.from(payload, 'base64url')).setProtectedHeader({ alg: 'EdDSA', kid }).sign(key);
		expect(await verified(untyped)).toMatchObject({ kind: 'broken', broken: { problem: 'signature-wrong' } });
	});

	it('signed rightly over another chain names what it was handed out for', async () => {
		const { key, kid } = await signingKey(db, 'checkpoint', AFTER);
		const [first = ''] = house.checkpoints;
		const said = JSON.parse(Buffer.from(first.split('.')[1] ?? '', 'base64url').toString()) as Record<string, unknown>;
		const forged = Buffer.from(JSON.stringify(Object.fromEntries(Object.entries({ ...said, root: 'ab'.repeat(32) }).toSorted(([a], [b]) => (a < b ? -1 : 1)))));
		const token = await new CompactSign(forged).setProtectedHeader({ alg: 'EdDSA', kid, typ: CHECKPOINT_TYPE }).sign(key);
		expect(await verified(token)).toMatchObject({ kind: 'broken', broken: { table: 'record_entry', row: String(said['size']), problem: 'handed-out-differs' } });
	});

	it('does not mind a clock that went back', async () => {
		const entry: EntryOf<'returned'> = { kind: 'returned', at: later(-HOUR).toISOString(), by: null, person: house.trained.id, day: '2026-12-11' };
		await db.transaction().execute((transaction) => appendEntries(transaction, house.organisation, [entry]));
		const result = await verifyRecords(db, { depth: 'records', organisation: house.organisation });
		expect(result.kind).toBe('holds');
		expect(result.counts.clockBack).toBeGreaterThan(0);
	});
});

describe('Marking answers again', () => {
	let of: CheckTry;
	let events: readonly CheckEvent[];
	let entry: EntryOf<'check-ended'>;
	beforeAll(async () => {
		const final = (await recordOf(db, house.trained.id)).checks.find((one) => one.entry.lesson === 'final');
		const found = await findTry(db, house.trained.id, final?.entry.check ?? '');
		if (final === undefined || found === null) throw new Error('No final check');
		entry = final.entry;
		of = found;
		events = await eventsOf(db, of.id);
	});

	interface Page {
		results: { kind: string; answer: unknown; grades: Record<string, unknown>; outcome: Record<string, unknown>; evidence: { origin: Record<string, unknown>; drawn: Record<string, unknown>; key?: Record<string, unknown> } }[];
		standing: unknown;
		items: unknown[];
	}

	/** Marks the try again with its first page changed. @returns what was found, and what was counted */
	function regraded(change: (page: Page) => void, share = 1): { readonly problem: string | undefined; readonly counts: Readonly<Record<string, number>> } {
		const counts: Record<string, number> = {};
		const marking: Marking = { redraw: { share, seed: 1 }, count: (name, by) => (counts[name] = (counts[name] ?? 0) + by) };
		const first = events.find(({ kind }) => kind === 'handed-in');
		if (first === undefined) throw new Error('Nothing was handed in');
		const page = JSON.parse(first.payload) as Page;
		change(page);
		const changed = events.map((one) => (one === first ? { ...one, payload: JSON.stringify(page) } : one));
		return { problem: regradeTry(of, changed, entry, marking)?.problem, counts };
	}

	const site = (page: Page): Page['results'][number] => page.results.find(({ kind }) => kind === 'site') ?? page.results[0] ?? Object.assign(page.results);
	const picture = (page: Page): Page['results'][number] => page.results.find(({ kind }) => kind === 'picture') ?? page.results[0] ?? Object.assign(page.results);

	it('finds what was stored, and counts it', () => {
		const { problem, counts } = regraded(() => undefined);
		expect(problem).toBeUndefined();
		expect(counts['regraded']).toBeGreaterThanOrEqual(12);
		expect(counts['redrawn']).toBe(counts['regraded']);
	});

	it.each<[string, (page: Page) => void]>([
		['a mark', (page) => Object.assign(Object.values(site(page).grades)[0] ?? {}, { mark: { kind: 'wrong', critical: false } })],
		['an outcome', (page) => (site(page).outcome['right'] = false)],
		['the answer beside the marks', (page) => (site(page).answer = { kind: 'site', answers: {} })],
		['a mark of a picture', (page) => (picture(page).grades['missed'] = ['x'])],
		['a result less', (page) => page.results.pop()]
	])('finds that %s is not what the stored values give', (_, change) => {
		expect(regraded(change, 0).problem).toBe('marks-differ');
	});

	it.each<[string, (page: Page) => void]>([
		['a plan', (page) => (site(page).evidence.drawn['person'] = 'nobody')],
		['a try', (page) => (site(page).evidence.origin['acceptedTry'] = Number(site(page).evidence.origin['acceptedTry']) + 1)],
		['a picture', (page) => (picture(page).evidence.drawn['drawing'] = 'steel')],
		['a key', (page) => Object.assign(picture(page).evidence.key ?? {}, { criticalMarks: 'x' })]
	])('finds, drawing again, that %s was never drawn', (_, change) => {
		expect(regraded(change).problem).toBe('draw-differs');
	});

	it('finds a verdict that the rule does not give', () => {
		expect(regraded((page) => (page.standing = { kind: 'passed', more: true })).problem).toBe('verdict-differs');
		const failed = { ...entry, passed: false };
		expect(regradeTry(of, events, failed, { redraw: { share: 0, seed: 0 }, count: () => undefined })).toMatchObject({ table: 'check_try', row: of.id, problem: 'verdict-differs' });
	});

	it.each<[string, (page: Page) => void]>([
		['scenario', (page) => (site(page).evidence.origin['version'] = 999)],
		['set of slips', (page) => (site(page).evidence.origin['slipSetVersion'] = 999)],
		['engine', (page) => (site(page).evidence.origin['engineVersion'] = '999')],
		['picture', (page) => (picture(page).evidence.origin['version'] = 999)]
	])('counts what another version of the %s drew, and finds no fault in it', (_, change) => {
		const { problem, counts } = regraded(change);
		expect(problem).toBeUndefined();
		expect(counts['notRegradable']).toBe(1);
	});
});
