import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LESSON_IDS } from '#lib/course/index.ts';
import { HANDS_ON_CHECKS, validityOf, type EntryOf, type PersonRecord } from '#lib/records/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { closePerson, setSecret } from '#lib/server/db/people.ts';
import { addOpening } from '#lib/server/db/permits.ts';
import type { Tables } from '#lib/server/db/schema.ts';
import { goThroughCourse } from '#lib/server/people/demo-course.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import { signHandsOn, toSign, type HandsOnEntry } from '#lib/server/people/sign-off.ts';
import { closeAccount } from '#lib/server/people/staff.ts';
import type { Person } from '#lib/server/people/who.ts';
import { commitmentTo } from '#lib/server/records/chain.ts';
import { enterEarlierRecords } from '#lib/server/records/earlier.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { brokenIn, entriesOf } from '../../../support/chain-of.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, later } from '../people/organisation.ts';

const PASSWORD = 'three cranes by the river';
/** When the version with the chain is started for the first time. */
const STARTED = later(30 * 86_400);

/** What there was before there was a chain, in an order in which rows may be inserted. */
const BEFORE = ['organisation', 'guest', 'person', 'course_start', 'course_event', 'check_try', 'check_event', 'completion', 'sign_off'] as const satisfies readonly (keyof Tables)[];

/** What a chain says of a person, without when and by whom it was entered, and without salted values. */
function said(record: PersonRecord): unknown {
	const plain = (entry: { readonly at: string; readonly by: string | null }): object => ({ ...entry, at: '', by: '', supervised: undefined });
	const signOff = ({ record: of, signature }: EntryOf<'hands-on'>): object => ({ of, signature: { ...signature, named: '' } });
	const { until, detail } = validityOf(record);
	return {
		left: record.left,
		until,
		detail,
		checks: record.checks.map(({ entry }) => plain(entry)),
		signOffs: record.signOffs.map(({ entry, run }) => ({ run, ...signOff(entry) })),
		trainings: record.trainings.map((one) => ({
			entry: plain(one.entry),
			supervised: one.entry.kind === 'completed' && one.entry.supervised !== null ? { ...one.entry.supervised, named: '' } : null,
			signOff: one.signOff?.id,
			validUntil: one.validUntil
		}))
	};
}

describe.each(DATABASES)('records from before the chain on %s', (_, start) => {
	/** Written by the program as it is now. */
	let source: { server: TestDatabase; db: Database };
	/** The same without a chain, as a version before would have left it. */
	let older: { server: TestDatabase; db: Database };
	let organisation: string;
	let trainer: Person;
	let learners: readonly string[];

	beforeAll(async () => {
		const server = await start();
		source = { server, db: await openDatabase(server.address) };
		await fillSource(source.db);
		const other = await start();
		older = { server: other, db: await openDatabase(other.address) };
		await copyBefore(source.db, older.db);
	});

	afterAll(async () => {
		for (const { db, server } of [source, older]) {
			await db.destroy();
			server.stop();
		}
	});

	async function fillSource(db: Database): Promise<void> {
		organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer');
		const employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		await setSecret(db, trainer.id, await hashSecret('password', PASSWORD));
		const crew = await aCrew(db, organisation, [trainer]);
		const [whole, theory, begun, gone, idle] = await Promise.all([1, 2, 3, 4, 5].map((i) => aLearner(db, organisation, `O-${String(i)}`, [crew], `Worker ${String(i)}`)));
		learners = [whole, theory, begun, gone, idle].flatMap((one) => one ?? []);
		const person = async (id = ''): Promise<Person> => {
			const { answerer_id: answerer, name } = await db.selectFrom('person').select(['answerer_id', 'name']).where('id', '=', id).executeTakeFirstOrThrow();
			return { kind: 'person', id, organisation, role: 'learner', name, answerer, language: null };
		};
		await addOpening(db, { id: randomUUID(), person: whole ?? '', trainer: trainer.id, place: 'Training yard', identified: 'Site badge', now: NOW.toISOString(), expiresAt: later(90_000).toISOString() });
		await goThroughCourse(db, await person(whole), NOW);
		const entry: HandsOnEntry = { id: randomUUID(), checks: HANDS_ON_CHECKS, place: 'Hall 4', day: '2026-11-25', capacity: 'qualified-person' };
		const read = await toSign(db, trainer, crew.id, whole ?? '', entry, 'en', later(40_000));
		const given = { entry, shown: read.kind === 'to-sign' ? read.shown : '', password: PASSWORD, language: 'en' } as const;
		expect(await signHandsOn(db, trainer, crew.id, whole ?? '', given, '192.0.2.7', later(40_000))).toEqual({ kind: 'signed' });
		// Some answers are wrong, so that some checks are not passed.
		await goThroughCourse(db, await person(theory), NOW, 'final', (nth) => nth % 7 !== 3).catch(() => undefined);
		await goThroughCourse(db, await person(begun), NOW, LESSON_IDS[1]);
		expect(await closeAccount(db, employer, gone ?? '', later(50_000))).toBe(true);
	}

	/** Copies row by row; signatures as they were then, with the name in them. */
	async function copyBefore(from: Database, to: Database): Promise<void> {
		await to.transaction().execute(async (transaction) => {
			for (const table of BEFORE) {
				for (const row of await from.selectFrom(table).selectAll().execute()) {
					const old = 'signed' in row ? { ...row, signed: withName(row.signed) } : row;
					await transaction.insertInto(table).values(old).execute();
				}
			}
		});
	}

	function withName(signed: string): string {
		// JSON leaves out what is undefined.
		return JSON.stringify({ ...(JSON.parse(signed) as EntryOf<'hands-on'>['signature']), named: undefined, name: trainer.name });
	}

	const states = (db: Database) => db.selectFrom('training_state').selectAll().where('organisation_id', '=', organisation).orderBy('person_id').execute();

	it('are entered at the first start: the same is said of everybody as if they had been entered at once', async () => {
		expect(await entriesOf(older.db, organisation)).toEqual([]);
		const entered = await enterEarlierRecords(older.db, STARTED);
		expect(entered).toBeGreaterThan(20);
		for (const id of learners) expect(said(await recordOf(older.db, id))).toEqual(said(await recordOf(source.db, id)));
		expect(await states(older.db)).toEqual(await states(source.db));
		expect(await brokenIn(older.db, organisation)).toEqual([]);
		const records = await Promise.all(learners.map((id) => recordOf(older.db, id)));
		expect(records.map(({ trainings }) => trainings.length)).toEqual([1, 0, 0, 0, 0]);
		expect(records[0]?.trainings[0]).toMatchObject({ entry: { supervised: { trainer: trainer.id } }, signOff: { run: 0 } });
		expect(records[1]?.checks.some(({ entry }) => !entry.passed)).toBe(true);
	});

	it('are entered as what they are: later, by the program, with names that open their commitments', async () => {
		const entries = await entriesOf(older.db, organisation);
		for (const entry of entries) expect(entry).toMatchObject({ at: STARTED.toISOString(), by: null });
		expect(JSON.stringify(entries)).not.toContain(trainer.name);
		const rows = await older.db.selectFrom('identity').selectAll().where('organisation_id', '=', organisation).execute();
		const people = await older.db.selectFrom('person').select(['id', 'name', 'personal_number']).where('organisation_id', '=', organisation).execute();
		expect(rows).toHaveLength(people.length);
		for (const { id, name, personal_number } of people) {
			const row = rows.find((one) => one.person_id === id);
			expect((await recordOf(older.db, id)).named).toBe(commitmentTo(row?.salt ?? '', name, personal_number));
		}
		const hands = entries.flatMap((entry) => (entry.kind === 'hands-on' ? [entry.signature] : []));
		expect(hands).toMatchObject([{ signer: trainer.id, named: (await recordOf(older.db, trainer.id)).named }]);
	});

	it('are not entered twice, even where the work is done again or was cut short', async () => {
		const before = await entriesOf(older.db, organisation);
		expect(await enterEarlierRecords(older.db, STARTED)).toBe(0);
		await older.db.deleteFrom('done_once').execute();
		expect(await enterEarlierRecords(older.db, STARTED)).toBe(0);
		await older.db.deleteFrom('done_once').execute();
		const added = randomUUID();
		await older.db.insertInto('guest').values({ id: added, token_hash: 'a late one', created_at: NOW.toISOString() }).execute();
		await older.db
			.insertInto('person')
			.values({ id: added, organisation_id: organisation, answerer_id: added, role: 'learner', name: 'Late One', personal_number: 'O-9', email: null, secret: null, language: null, closed_at: null, created_at: NOW.toISOString() })
			.execute();
		await closePerson(older.db, organisation, added, '2026-11-27T12:00:00.000Z');
		expect(await Promise.all([enterEarlierRecords(older.db, STARTED), enterEarlierRecords(older.db, STARTED)])).toContain(2);
		expect((await entriesOf(older.db, organisation)).slice(before.length)).toMatchObject([
			{ kind: 'named', person: added },
			{ kind: 'left', person: added, day: '2026-11-27' }
		]);
		expect(await brokenIn(older.db, organisation)).toEqual([]);
	});

	it('are none where everything was entered at once', async () => {
		const before = await entriesOf(source.db, organisation);
		expect(await enterEarlierRecords(source.db, STARTED)).toBe(0);
		expect(await entriesOf(source.db, organisation)).toEqual(before);
	});
});
