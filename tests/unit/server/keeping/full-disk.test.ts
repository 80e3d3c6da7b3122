/** A full disk, over the functions that store: refused and known as such, nothing half there, and taken once there is room. */
import { randomUUID } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PersonCourse } from '#lib/server/index.ts';
import { HANDS_ON_CHECKS } from '#lib/records/index.ts';
import { lacksRoom } from '#lib/server/db/no-room.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { setSecret } from '#lib/server/db/people.ts';
import { beginCheck, answerItem, courseOf, handIn, receiveAnswers, receiveEvent, shippedVersions, signHandsOn, toldCheck, type CheckItem, type Person, type Visitor } from '#lib/server/index.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import { toSign, type HandsOnEntry } from '#lib/server/people/sign-off.ts';
import { answered, problemOf } from '../../../support/answered.ts';
import { CourseDriver, checkAnswer } from '../../../support/course-driver.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, type TestCrew } from '../people/organisation.ts';

const PASSWORD = 'three cranes by the river';

/** What no row may be added to while there is no room. Failures that are counted and looks at sessions are no answers and no entries. */
const KEPT = ['guest', 'attempt', 'outcome', 'course_event', 'check_try', 'check_event', 'completion', 'sign_off', 'audit', 'record_head', 'record_entry', 'identity', 'training_state'] as const;

/** Takes the room away, and gives it back. */
interface Room {
	readonly prepare: (address: string) => void;
	readonly none: (db: Database) => Promise<void>;
	readonly again: (db: Database) => Promise<void>;
}

const INSERTED = ['attempt', 'course_event', 'check_event', 'sign_off'] as const;

/** @source https://sqlite.org/pragma.html#pragma_max_page_count; PostgreSQL's disk_full is raised by the database itself, through a trigger, for no disk is filled here */
const ROOMS: Readonly<Record<string, Room>> = {
	SQLite: {
		prepare: (address) => {
			const path = address.slice('file:'.length);
			mkdirSync(dirname(path), { recursive: true });
			const file = new DatabaseSync(path);
			// Pages so small that no row of an answer or an entry fits into what is left of one.
			file.exec('PRAGMA page_size = 512; CREATE TABLE filling (text TEXT)');
			file.close();
		},
		none: async (db) => {
			await sql`PRAGMA max_page_count = 1`.execute(db);
			// What is free within the file is used up.
			for (const size of [400, 1]) {
				let full = false;
				for (let rows = 0; !full && rows < 1000; rows += 1) full = await sql`INSERT INTO filling VALUES (${'x'.repeat(size)})`.execute(db).then(() => false, () => true);
				expect(full).toBe(true);
			}
		},
		again: async (db) => {
			await sql`PRAGMA max_page_count = 1073741823`.execute(db);
		}
	},
	PostgreSQL: {
		prepare: () => undefined,
		none: async (db) => {
			await sql`create function no_room() returns trigger language plpgsql as $$ begin raise exception 'could not extend file' using errcode = 'disk_full'; end $$`.execute(db);
			for (const table of INSERTED) await sql`create trigger no_room after insert on ${sql.table(table)} for each row execute function no_room()`.execute(db);
		},
		again: async (db) => {
			await sql`drop function no_room() cascade`.execute(db);
		}
	}
};

describe.each(DATABASES)('a full disk under %s', (name, start) => {
	const room = ROOMS[name];
	if (room === undefined) throw new Error(`no room for ${name}`);
	let server: TestDatabase;
	let db: Database;
	let trainer: Person;
	let crew: TestCrew;
	let learner: Person;

	beforeAll(async () => {
		server = await start();
		room.prepare(server.address);
		db = await openDatabase(server.address);
		const organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer');
		await setSecret(db, trainer.id, await hashSecret('password', PASSWORD));
		crew = await aCrew(db, organisation, [trainer]);
		const id = await aLearner(db, organisation, 'F-1', [crew]);
		const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', id).executeTakeFirstOrThrow();
		learner = { kind: 'person', id, organisation, role: 'learner', name: 'Dario Penn', answerer, language: null };
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	/** Every row of what is kept, as text. */
	async function stored(): Promise<Readonly<Record<string, readonly string[]>>> {
		const all: Record<string, readonly string[]> = {};
		for (const table of KEPT) all[table] = (await db.selectFrom(table).selectAll().execute()).map((row) => JSON.stringify(row)).toSorted();
		return all;
	}

	/** A browser that nobody has signed in on. */
	function visitor(): Visitor {
		const token = randomUUID().replaceAll('-', '').padEnd(43, 'A');
		return { cookies: { get: () => token, set: () => undefined }, secure: false, answerer: null };
	}

	const course = (): Promise<PersonCourse> => courseOf(db, learner.id, NOW);

	/** A check of which every item is answered but the last. */
	async function almostAnswered(): Promise<{ check: string; page: readonly string[]; last: { id: string; body: Record<string, unknown> } }> {
		const driver = new CourseDriver({
			event: async (event) => {
				const receipt = await receiveEvent(db, learner, event, shippedVersions, NOW);
				if (receipt.kind !== 'stored') throw new Error(JSON.stringify(receipt));
				return receipt;
			},
			begin: () => Promise.reject(new Error('is begun below')),
			answer: () => Promise.reject(new Error('is answered below')),
			page: () => Promise.reject(new Error('is handed in below')),
			items: () => Promise.reject(new Error('are read below'))
		});
		await driver.practise('stages', (await course()).state);
		const begun = await beginCheck(db, learner, 'stages', 'en', NOW);
		if (begun.kind !== 'done') throw new Error(JSON.stringify(begun));
		const check = begun.view.id;
		const { payload } = await db.selectFrom('check_event').select('payload').where('check_id', '=', check).executeTakeFirstOrThrow();
		const { items } = JSON.parse(payload) as { items: readonly CheckItem[] };
		const bodies = items.map((item) => ({ id: randomUUID(), item: item.id, answer: checkAnswer(item, true) }));
		for (const body of bodies.slice(0, -1)) expect((await answerItem(db, learner, check, body, NOW)).kind).toBe('done');
		const last = bodies.at(-1);
		if (last === undefined) throw new Error('a check without items');
		return { check, page: toldCheck(begun.view).items.map((one) => one.id), last: { id: last.id, body: last } };
	}

	it('refuses an answer, an item of a check and a sign-off with nothing half stored, and takes the same again when there is room', async () => {
		const [newcomer, known] = [visitor(), visitor()];
		const bodies = Array.from({ length: 12 }, (_, i) => answered(problemOf('bridge-bearing', i + 1)));
		const [first, second, ...others] = bodies;
		expect((await receiveAnswers(db, known, first, shippedVersions, NOW)).kind).toBe('stored');
		const { check, page, last } = await almostAnswered();
		const entry: HandsOnEntry = { id: randomUUID(), checks: HANDS_ON_CHECKS, place: 'Training yard, bay 2', day: '2026-11-24', capacity: 'competent-person' };
		const built = await toSign(db, trainer, crew.id, learner.id, entry, 'en', NOW);
		if (built.kind !== 'to-sign') throw new Error(built.kind);

		const ofLearner: Visitor = { ...visitor(), answerer: learner.answerer, who: learner };
		const deeds: Readonly<Record<string, () => Promise<{ readonly kind: string }>>> = {
			'first answer of a guest': () => receiveAnswers(db, newcomer, first === undefined ? second : { ...first, id: randomUUID() }, shippedVersions, NOW),
			'answer of a known guest': () => receiveAnswers(db, known, second, shippedVersions, NOW),
			'item of a check': () => answerItem(db, learner, check, last.body, NOW),
			'sign-off': () => signHandsOn(db, trainer, crew.id, learner.id, { entry, shown: built.shown, password: PASSWORD, language: 'en' }, '192.0.2.7', NOW)
		};
		const together = () => Promise.allSettled(others.map((body) => receiveAnswers(db, ofLearner, body, shippedVersions, NOW)));

		const before = await stored();
		await room.none(db);
		for (const [deed, does] of Object.entries(deeds)) {
			const came = await does().then((told): unknown => told, (error: unknown) => error);
			expect(lacksRoom(came), `${deed}: ${JSON.stringify(came)}`).toBe(true);
			expect(await stored(), deed).toEqual(before);
		}
		// Answers that arrive together share a commit: each of them is refused, and none is stored.
		const refused = await together();
		expect(refused.map((one) => one.status === 'rejected' && lacksRoom(one.reason))).toEqual(others.map(() => true));
		expect(await stored()).toEqual(before);

		await room.again(db);
		for (const [deed, does] of Object.entries(deeds)) expect((await does()).kind, deed).toMatch(/^(stored|done|signed)$/);
		expect((await together()).map((one) => one.status === 'fulfilled' && one.value.kind)).toEqual(others.map(() => 'stored'));
		expect(await db.selectFrom('sign_off').select('id').where('person_id', '=', learner.id).execute()).toEqual([{ id: entry.id }]);

		// The hand-in, which writes the most: page, end of the check, and what it does to the course.
		const almost = await stored();
		await room.none(db);
		const sent = { id: randomUUID(), items: page };
		const came = await handIn(db, learner, check, sent, NOW).then((told): unknown => told, (error: unknown) => error);
		expect(lacksRoom(came), JSON.stringify(came)).toBe(true);
		expect(await stored()).toEqual(almost);
		await room.again(db);
		const handed = await handIn(db, learner, check, sent, NOW);
		expect(handed.kind === 'done' && handed.view.end?.kind).toBe('passed');
	});
});

describe('what says that there is no room', () => {
	const sqlite = (errcode: number): Error => Object.assign(new Error('of SQLite'), { code: 'ERR_SQLITE_ERROR', errcode });

	// https://sqlite.org/rescode.html: SQLITE_FULL; SQLITE_IOERR_WRITE, _FSYNC, _SHMSIZE.
	it.each([13, 778, 1034, 4874])('is SQLite’s code %i', (code) => expect(lacksRoom(sqlite(code))).toBe(true));
	// SQLITE_BUSY, SQLITE_CORRUPT, SQLITE_IOERR_READ, SQLITE_CONSTRAINT_UNIQUE: other faults, with other remedies.
	it.each([5, 11, 266, 2067])('is not SQLite’s code %i', (code) => expect(lacksRoom(sqlite(code))).toBe(false));

	it('is disk_full of PostgreSQL, and what a system says of files, as the cause of another error too', () => {
		expect(lacksRoom(Object.assign(new Error('x'), { code: '53100' }))).toBe(true);
		expect(lacksRoom(new Error('wrapped', { cause: Object.assign(new Error('x'), { code: 'ENOSPC' }) }))).toBe(true);
		expect(lacksRoom(Object.assign(new Error('x'), { code: '53300' }))).toBe(false);
		for (const none of [undefined, null, 'ENOSPC', { code: 'ENOSPC' }]) expect(lacksRoom(none)).toBe(false);
	});
});
