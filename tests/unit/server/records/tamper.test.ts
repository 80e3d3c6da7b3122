/** Somebody changes the file of the database: whatever it is, verifying finds it and says where. */
import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isUniqueViolation } from '#lib/server/db/people.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { entryHash } from '#lib/server/records/chain.ts';
import type { Break, VerifyResult } from '#lib/server/records/verify/result.ts';
import { verifyRecords } from '#lib/server/records/verify/verify.ts';
import { aRecordHouse, endedTries, type RecordHouse } from './house.ts';
import { Tamperer, disarm, type AnyRow, type Change, type RecordTable } from './tampering.ts';

const SEED = 20261130;
const CHANGES = 1000;

let db: Database;
let house: RecordHouse;
let tables: readonly RecordTable[];
/** Number of the last entry, by organisation. */
let ends: ReadonlyMap<string, number>;

/** Columns of these tables that are no records, and why. */
const NO_RECORDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
	person: {
		answerer_id: 'under which practice is kept; no record names it',
		email: 'how staff sign in; changed at will, and noted in the audit list',
		secret: 'hash of PIN or password; changed at will',
		language: 'of the pages; changed at will',
		closed_at: 'whether the account is open; that somebody left stands in the chain',
		created_at: 'when the row was made; the day of entry stands in the chain'
	}
};

beforeAll(async () => {
	db = await openDatabase('file::memory:');
	house = await aRecordHouse(db);
	await disarm(db);
	ends = new Map((await db.selectFrom('record_head').selectAll().execute()).map(({ organisation_id, seq }) => [organisation_id, seq]));
	const ended = await endedTries(db);
	const ofEnded = (column: string) => (row: AnyRow) => ended.has(String(row[column]));
	tables = [
		{ table: 'record_entry', key: ['organisation_id', 'seq'], columns: ['organisation_id', 'seq', 'kind', 'person_id', 'at', 'payload', 'prev', 'hash'] },
		{ table: 'record_head', key: ['organisation_id'], columns: ['organisation_id', 'seq', 'hash'] },
		{ table: 'record_checkpoint', key: ['organisation_id', 'size'], columns: ['organisation_id', 'size', 'root', 'kid', 'token', 'edge', 'at'] },
		{ table: 'signing_key', key: ['kid'], columns: ['kid', 'use', 'alg', 'jwk', 'since', 'retired_at'] },
		{ table: 'identity', key: ['commitment'], columns: ['commitment', 'organisation_id', 'person_id', 'salt', 'name', 'personal_number', 'at'] },
		{ table: 'person', key: ['id'], columns: ['id', 'organisation_id', 'role', 'name', 'personal_number'] },
		{ table: 'completion', key: ['id'], columns: ['id', 'organisation_id', 'person_id', 'course', 'version', 'check_id', 'supervised', 'language', 'day', 'at'] },
		{ table: 'sign_off', key: ['id'], columns: ['id', 'organisation_id', 'person_id', 'signer_id', 'capacity', 'record', 'record_hash', 'signed', 'language', 'at'] },
		{ table: 'check_try', key: ['id'], columns: ['id', 'person_id', 'lesson', 'nth', 'rule', 'seed', 'language', 'supervision', 'day', 'at'], where: ofEnded('id') },
		{ table: 'check_event', key: ['id'], columns: ['id', 'check_id', 'seq', 'kind', 'sent', 'payload', 'at'], where: ofEnded('check_id') },
		{ table: 'certificate', key: ['code'], columns: ['code', 'organisation_id', 'person_id', 'record_id', 'status_index', 'made_by', 'at'] }
	];
});

afterAll(async () => {
	await db.destroy();
});

function verified(more: { readonly handedOut?: string } = {}): Promise<VerifyResult> {
	return verifyRecords(db, { depth: 'records', ...more });
}

/** Tries a change out, and takes it back. @returns null where the table does not take it */
async function tried<Value>(change: () => Promise<Value | null>, look: (made: Value) => Promise<void>): Promise<boolean> {
	await sql`savepoint tried`.execute(db);
	try {
		const made = await change();
		if (made === null) return false;
		await look(made);
		return true;
	} catch (error) {
		if (isUniqueViolation(error) || (error instanceof Error && /NOT NULL/.test(error.message))) return false;
		throw error;
	} finally {
		await sql`rollback to tried`.execute(db);
		await sql`release tried`.execute(db);
	}
}

function texts(rows: readonly AnyRow[], ...columns: readonly string[]): readonly string[] {
	return rows.flatMap((row) => columns.map((column) => String(row[column])));
}

/** Where a change may be found: the tables, and the rows of each. */
function placesOf(change: Change): Readonly<Record<string, readonly string[]>> {
	const { table, rows } = change;
	const organisations = texts(rows, 'organisation_id');
	switch (table) {
		case 'record_entry':
			return { record_entry: entryPlaces(change), ...(moves(change) ? { record_head: organisations, organisation: organisations } : {}) };
		case 'record_head':
			return { record_head: organisations, organisation: organisations };
		case 'record_checkpoint':
			return { record_checkpoint: texts(rows, 'size'), organisation: organisations };
		case 'signing_key':
			return { signing_key: texts(rows, 'kid'), record_checkpoint: texts(rows, 'size') };
		case 'identity':
			return { identity: texts(rows, 'commitment'), organisation: organisations };
		case 'certificate':
			return { certificate: texts(rows, 'record_id'), organisation: organisations };
		case 'check_event':
			// The digest is over a try with all its events.
			return { check_try: texts(rows, 'check_id') };
		default:
			return { [table]: texts(rows, 'id'), organisation: organisations };
	}
}

/** Whether a change leaves a chain with another number of entries, or other numbers. */
function moves({ what, column }: Change): boolean {
	return what === 'row deleted' || what === 'row inserted' || what === 'tail cut' || column === 'seq' || column === 'organisation_id';
}

/** The numbers at which a change to entries may be found: its own; and, where numbers changed, the first and the one behind the end. */
function entryPlaces(change: Change): readonly string[] {
	const own = texts(change.rows, 'seq');
	return moves(change) ? [...own, '1', ...texts(change.rows, 'organisation_id').map((id) => String((ends.get(id) ?? 0) + 1))] : own;
}

function expectFound(change: Change, result: VerifyResult): void {
	const said = `${change.what} in ${change.table}.${change.column ?? '*'}: ${JSON.stringify(change.rows).slice(0, 600)}`;
	if (result.kind === 'holds') expect.fail(`not found: ${said}`);
	const { table, row } = result.broken;
	expect(placesOf(change)[table], `${said}\nfound as ${JSON.stringify(result.broken)}`).toContain(row);
	if (change.table === 'record_entry' && table !== 'organisation') expect(result.broken.seq, said).not.toBeNull();
}

/** What a copy of a row has of its own, so that the tables take it. */
const OWN: Readonly<Record<string, Readonly<Record<string, (before: string | number | null) => string | number | null>>>> = {
	record_entry: { seq: (before) => Number(before) + 1000 },
	record_head: { organisation_id: () => randomUUID() },
	record_checkpoint: { size: (before) => Number(before) + 1000 },
	signing_key: { kid: () => randomUUID() },
	identity: { commitment: () => randomUUID().replaceAll('-', '').repeat(2) },
	person: { id: () => randomUUID(), answerer_id: () => randomUUID(), personal_number: () => randomUUID(), email: () => randomUUID() },
	completion: { id: () => randomUUID(), check_id: () => randomUUID() },
	sign_off: { id: () => randomUUID() },
	check_try: { id: () => randomUUID(), nth: (before) => Number(before) + 100 },
	check_event: { id: () => randomUUID(), seq: (before) => Number(before) + 1000 },
	certificate: { code: () => randomUUID(), record_id: () => randomUUID(), status_index: (before) => Number(before) + 1_000_000 }
};

describe('A database whose file was changed', () => {
	it('holds before', async () => {
		const result = await verified();
		expect(result).toMatchObject({ kind: 'holds', counts: { organisations: 2, completions: 1, signOffs: 1, certificates: 2, checkpoints: 3, clockBack: expect.any(Number) } });
		// Everything that stands in records happened.
		const kinds = (await db.selectFrom('record_entry').select('kind').distinct().execute()).map(({ kind }) => kind);
		expect(kinds.toSorted()).toEqual(
			['acknowledged', 'certificate-made', 'check-ended', 'checkpointed', 'completed', 'employer-acknowledged', 'hands-on', 'identity-erased', 'left', 'named', 'opened', 'prior-training', 'reinstated', 'retraining-ordered', 'retraining-withdrawn', 'returned', 'revoked']
		);
	});

	it('has no column of these tables that is neither a record nor told why it is none', async () => {
		const found = await db.introspection.getTables();
		for (const { table, columns } of tables) {
			const all = found.find(({ name }) => name === table)?.columns.map(({ name }) => name) ?? [];
			expect([...columns, ...Object.keys(NO_RECORDS[table] ?? {})].toSorted(), table).toEqual(all.toSorted());
		}
	});

	it(`shows each of ${CHANGES} changes at its place (seed ${SEED})`, async () => {
		const tamperer = new Tamperer(db, xoroshiro128plus(SEED));
		const cells = tables.flatMap((of) => of.columns.map((column) => ({ of, column })));
		const done: Record<string, number> = {};
		let made = 0;
		for (let nth = 0; made < CHANGES; nth += 1) {
			// Seven of ten change a cell, each column in its turn; the others whole rows, each table in its turn.
			const turn = nth % 10;
			const round = Math.floor(nth / 10);
			const of = tables[round % tables.length];
			const cell = cells[(7 * round + turn) % cells.length];
			if (of === undefined || cell === undefined) throw new Error('No table');
			const change = (): Promise<Change | null> => {
				if (turn < 7) return tamperer.cell(cell.of, cell.column);
				if (turn === 7) return tamperer.deletion(of);
				if (turn === 8) return insertion(tamperer, of);
				return of.table === 'record_head' ? tamperer.tail(house.organisation) : tamperer.swap(of);
			};
			const took = await tried(change, async (one) => {
				expectFound(one, await verified());
				const name = one.what === 'cell' ? `${one.table}.${one.column ?? ''}` : `${one.what} ${one.table}`;
				done[name] = (done[name] ?? 0) + 1;
			});
			if (took) made += 1;
			if (nth > 10 * CHANGES) throw new Error('Too few changes can be made');
		}
		// Every column was changed, and in every table rows were deleted, inserted and, where that changes anything, swapped.
		for (const { of, column } of cells) expect(done, `${of.table}.${column}`).toHaveProperty([`${of.table}.${column}`]);
		for (const { table } of tables) for (const what of ['row deleted', 'row inserted']) expect(done, table).toHaveProperty([`${what} ${table}`]);
		for (const { table } of tables.filter((one) => !['completion', 'sign_off', 'record_head'].includes(one.table))) expect(done, table).toHaveProperty([`cells swapped ${table}`]);
		expect(done['tail cut record_entry']).toBeGreaterThan(5);
		await expect(verified()).resolves.toMatchObject({ kind: 'holds' });
	});
});

/** A row too many. A try comes with its events: without them it has not ended, and is no record. */
async function insertion(tamperer: Tamperer, of: RecordTable): Promise<Change> {
	const change = await tamperer.insertion(of, OWN[of.table] ?? {});
	const [copy] = change.rows;
	if (of.table !== 'check_try' || copy === undefined) return change;
	const original = await db.selectFrom('check_try').select('id').where('seed', '=', String(copy['seed'])).where('id', '!=', String(copy['id'])).executeTakeFirstOrThrow();
	const events = await db.selectFrom('check_event').selectAll().where('check_id', '=', original.id).execute();
	await db.insertInto('check_event').values(events.map((event) => ({ ...event, id: randomUUID(), check_id: String(copy['id']) }))).execute();
	return change;
}

/** Changes an entry, and makes all hashes behind it anew, the end of the chain too. */
async function rewrite(from: number, payload: (before: string) => string): Promise<void> {
	const rows = await db.selectFrom('record_entry').selectAll().where('organisation_id', '=', house.organisation).where('seq', '>=', from).orderBy('seq').execute();
	let prev = rows[0]?.prev ?? '';
	for (const row of rows) {
		const changed = row.seq === from ? payload(row.payload) : row.payload;
		const hash = entryHash(row.seq, prev, changed);
		await db.updateTable('record_entry').set({ payload: changed, prev, hash }).where('organisation_id', '=', house.organisation).where('seq', '=', row.seq).execute();
		prev = hash;
	}
	await db.updateTable('record_head').set({ hash: prev }).where('organisation_id', '=', house.organisation).execute();
}

async function broken(more: { readonly handedOut?: string } = {}): Promise<Break> {
	const result = await verified(more);
	if (result.kind === 'holds') expect.fail('nothing was found');
	return result.broken;
}

async function orderSeq(): Promise<number> {
	return (await db.selectFrom('record_entry').select('seq').where('kind', '=', 'retraining-ordered').executeTakeFirstOrThrow()).seq;
}

describe('A chain that was made anew from a changed entry on', () => {
	const another = (before: string): string => before.replace('"reason":"yearly-review"', '"reason":"change-of-work"');

	it('is not the one that its checkpoints were signed over', async () => {
		const seq = await orderSeq();
		await tried(
			async () => {
				await rewrite(seq, another);
				return true;
			},
			async () => expect(await broken()).toMatchObject({ table: 'record_checkpoint', problem: 'root-differs' })
		);
	});

	it('is found by a checkpoint handed out before, though its own checkpoints are gone', async () => {
		const seq = await orderSeq();
		const [first] = house.checkpoints;
		await tried(
			async () => {
				// Cut off before the first checkpoint, and every row that would be too many is taken away as well.
				await cutBefore('checkpointed');
				await rewrite(seq, another);
				return true;
			},
			async () => {
				expect(await verified()).toMatchObject({ kind: 'holds' });
				expect(await broken({ handedOut: first ?? '' })).toMatchObject({ table: 'record_entry', problem: 'handed-out-differs' });
			}
		);
	});
});

/** Cuts a chain off before the first entry of a kind, and takes away all that hangs on the rest: what is left holds by itself. */
async function cutBefore(kind: string): Promise<void> {
	const { organisation } = house;
	const { seq } = await db.selectFrom('record_entry').select('seq').where('organisation_id', '=', organisation).where('kind', '=', kind).orderBy('seq').limit(1).executeTakeFirstOrThrow();
	const named = await db.selectFrom('record_entry').select('payload').where('organisation_id', '=', organisation).where('kind', '=', 'named').where('seq', '>=', seq).execute();
	const commitments = named.map(({ payload }) => (JSON.parse(payload) as { commitment: string }).commitment);
	const people = named.map(({ payload }) => (JSON.parse(payload) as { person: string }).person);
	await db.deleteFrom('record_entry').where('organisation_id', '=', organisation).where('seq', '>=', seq).execute();
	const last = await db.selectFrom('record_entry').selectAll().where('organisation_id', '=', organisation).orderBy('seq', 'desc').limit(1).executeTakeFirstOrThrow();
	await db.updateTable('record_head').set({ seq: last.seq, hash: last.hash }).where('organisation_id', '=', organisation).execute();
	await db.deleteFrom('record_checkpoint').where('organisation_id', '=', organisation).execute();
	await db.deleteFrom('identity').where('commitment', 'in', commitments).execute();
	await db.deleteFrom('certificate').where('organisation_id', '=', organisation).where('person_id', 'in', people).execute();
	const tries = (await db.selectFrom('check_try').select('id').where('person_id', 'in', people).execute()).map(({ id }) => id);
	await db.deleteFrom('check_event').where('check_id', 'in', tries).execute();
	await db.deleteFrom('check_try').where('id', 'in', tries).execute();
	await db.deleteFrom('training_state').where('person_id', 'in', people).execute();
	await db.deleteFrom('person').where('id', 'in', people).execute();
}

describe('A chain whose tail was cut off with all that hung on it', () => {
	it('holds by itself, and is too short for the checkpoint that was handed out', async () => {
		await tried(
			async () => {
				await cutBefore('checkpointed');
				return true;
			},
			async () => {
				expect(await verified()).toMatchObject({ kind: 'holds' });
				expect(await broken({ handedOut: house.checkpoints[1] ?? '' })).toMatchObject({ table: 'record_entry', problem: 'cut-off' });
			}
		);
	});
});

describe('A value that is written in another way, or is of another kind', () => {
	/** The last letter of a signature of 64 bytes has four bits that stand for nothing. RFC 4648, section 3.5. */
	const slack = (text: string): string => {
		const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
		return text.slice(0, -1) + (letters[letters.indexOf(text.at(-1) ?? '') ^ 1] ?? '');
	};

	it('is found, though most that reads it would take it for the same', async () => {
		const token = house.checkpoints[1] ?? '';
		const { code } = await db.selectFrom('certificate').select('code').orderBy('code').limit(1).executeTakeFirstOrThrow();
		const id = house.trained.id;
		const cases = [
			['record_checkpoint', sql`update record_checkpoint set token = ${slack(token)} where token = ${token}`],
			['record_checkpoint', sql`update record_checkpoint set token = token || ' ' where token = ${token}`],
			['certificate', sql`update certificate set code = cast(code as blob) where code = ${code}`],
			['certificate', sql`update certificate set code = null where code = ${code}`],
			['person', sql`update person set name = cast(name as blob) where id = ${id}`],
			['identity', sql`update identity set name = cast(name as blob) where person_id = ${id}`]
		] as const;
		for (const [table, change] of cases) {
			const took = await tried(
				async () => Number((await change.execute(db)).numAffectedRows ?? 0n),
				async (rows) => {
					expect(rows).toBe(1);
					expect((await broken()).table).toBe(table);
				}
			);
			expect(took).toBe(true);
		}
		expect(slack(token)).not.toBe(token);
		expect(Buffer.from(slack(token).split('.')[2] ?? '', 'base64url').equals(Buffer.from(token.split('.')[2] ?? '', 'base64url'))).toBe(true);
	});
});

describe('A row that tells how somebody stands', () => {
	it('is no record, and is reported where it is not what the chain makes of it', async () => {
		const changes = { until: '2031-01-01', begun: 0, gone: 1, detail: 'revoked', due: '2026-12-31', record_id: null, record_day: null, erased: 1, sort_name: 'x', search: 'x', name_key: 'x' };
		for (const [column, value] of Object.entries(changes)) {
			const took = await tried(
				async () => {
					await sql`update training_state set ${sql.ref(column)} = ${value} where person_id = ${house.trained.id}`.execute(db);
					return true;
				},
				async () => expect(await broken(), column).toMatchObject({ table: 'training_state', row: house.trained.id, column })
			);
			expect(took).toBe(true);
		}
	});
});
