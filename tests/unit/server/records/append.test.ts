import { randomUUID } from 'node:crypto';
import { setTimeout } from 'node:timers/promises';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HANDS_ON_CHECKS } from '#lib/records/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { renameTo, setSecret } from '#lib/server/db/people.ts';
import { goThroughCourse } from '#lib/server/people/demo-course.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import { signHandsOn, toSign, type HandsOnEntry } from '#lib/server/people/sign-off.ts';
import type { Person } from '#lib/server/people/who.ts';
import { appendEntries, lockChain } from '#lib/server/records/append.ts';
import { handOutCertificate } from '#lib/server/records/certificate.ts';
import { commitmentTo } from '#lib/server/records/chain.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { enterPeople } from '#lib/server/records/names.ts';
import { orderRetraining } from '#lib/server/records/retraining.ts';
import { brokenIn, entriesOf } from '../../../support/chain-of.ts';
import { completedEntry, handsOnEntry, orderEntry } from '../../../support/record-entries.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation } from '../people/organisation.ts';

const PASSWORD = 'three cranes by the river';

/** What tests here hold: issue "The employer", the chain of records; hashes by Node's own SHA-256 over RFC 8785 text. */
/** @returns when somebody waits for a lock on PostgreSQL. On SQLite, who comes second has no connection before. */
async function somebodyWaits(db: Database): Promise<void> {
	for (;;) {
		const { rows } = await sql<{ one: number }>`select 1 as one from pg_locks where not granted`.execute(db);
		if (rows.length > 0) return;
		await setTimeout(5);
	}
}

describe.each(DATABASES)('the chain on %s', (name, start) => {
	let server: TestDatabase;
	let db: Database;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	it('opens with the first entry, and hangs each on the one before', async () => {
		const organisation = await anOrganisation(db);
		const person = await aLearner(db, organisation, 'A-1');
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [completedEntry(person, '2026-11-20'), handsOnEntry(person, '2026-11-20')]));
		expect((await entriesOf(db, organisation)).map(({ kind }) => kind)).toEqual(['opened', 'named', 'completed', 'hands-on']);
		expect(await brokenIn(db, organisation)).toEqual([]);
	});

	it('ten trainers who sign in the same moment make ten entries without a gap', async () => {
		const organisation = await anOrganisation(db);
		const secret = await hashSecret('password', PASSWORD);
		const pairs = [];
		for (let i = 0; i < 10; i += 1) {
			const trainer = await aMember(db, organisation, 'trainer', `Trainer ${String(i)}`);
			await setSecret(db, trainer.id, secret);
			const crew = await aCrew(db, organisation, [trainer]);
			pairs.push({ trainer, crew, person: await aLearner(db, organisation, `T-${String(i)}`, [crew]) });
		}
		const before = (await entriesOf(db, organisation)).length;
		const told = await Promise.all(
			pairs.map(async ({ trainer, crew, person }, i) => {
				const entry: HandsOnEntry = { id: randomUUID(), checks: HANDS_ON_CHECKS, place: `Yard ${String(i)}`, day: '2026-11-24', capacity: 'competent-person' };
				const read = await toSign(db, trainer, crew.id, person, entry, 'en', NOW);
				const given = { entry, shown: read.kind === 'to-sign' ? read.shown : '', password: PASSWORD, language: 'en' } as const;
				return (await signHandsOn(db, trainer, crew.id, person, given, `192.0.2.${String(i + 1)}`, NOW)).kind;
			})
		);
		expect(new Set(told)).toEqual(new Set(['signed']));
		const signed = (await entriesOf(db, organisation)).slice(before);
		expect(signed.map(({ kind }) => kind)).toEqual(Array.from({ length: 10 }, () => 'hands-on'));
		expect(new Set(signed.flatMap((one) => (one.kind === 'hands-on' ? [one.signature.signer] : []))).size).toBe(10);
		expect(await brokenIn(db, organisation)).toEqual([]);
	});

	it('is taken first by whoever signs, hands out, orders or ends a check: nobody is parted from who gives a person another number', async () => {
		const organisation = await anOrganisation(db);
		const employer = await aMember(db, organisation, 'employer');
		const trainer = await aMember(db, organisation, 'trainer');
		await setSecret(db, trainer.id, await hashSecret('password', PASSWORD));
		const crew = await aCrew(db, organisation, [trainer]);
		const person = await aLearner(db, organisation, 'N-1', [crew]);
		const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', person).executeTakeFirstOrThrow();
		const learner: Person = { kind: 'person', id: person, organisation, role: 'learner', name: 'Dario Penn', answerer, language: null };
		const completed = completedEntry(person, '2026-11-20');
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [completed]));
		const entry: HandsOnEntry = { id: randomUUID(), checks: HANDS_ON_CHECKS, place: 'Yard', day: '2026-11-24', capacity: 'competent-person' };
		const read = await toSign(db, trainer, crew.id, person, entry, 'en', NOW);
		const given = { entry, shown: read.kind === 'to-sign' ? read.shown : '', password: PASSWORD, language: 'en' } as const;
		const deeds: readonly (() => Promise<unknown>)[] = [
			() => goThroughCourse(db, learner, NOW, 'stages'),
			() => signHandsOn(db, trainer, crew.id, person, given, '192.0.2.9', NOW),
			() => handOutCertificate(db, employer, person, completed.id, NOW),
			() => orderRetraining(db, employer, { people: [person] }, { reason: 'yearly-review', due: '2026-12-24' }, NOW)
		];
		for (const [i, deed] of deeds.entries()) {
			let doing: Promise<unknown> = Promise.resolve();
			await db.transaction().execute(async (transaction) => {
				await lockChain(transaction, organisation);
				doing = deed();
				if (name === 'PostgreSQL') await somebodyWaits(db);
				await renameTo(transaction, organisation, person, 'Dario Penn', `N-1${String(i)}`);
			});
			await doing;
		}
		const kinds = (await entriesOf(db, organisation)).map(({ kind }) => kind);
		expect(kinds.slice(kinds.indexOf('completed') + 1)).toEqual(['check-ended', 'hands-on', 'certificate-made', 'retraining-ordered']);
	});

	it('leaves nothing when the transaction of the deed fails', async () => {
		const organisation = await anOrganisation(db);
		const failing = db.transaction().execute(async (transaction) => {
			await enterPeople(transaction, organisation, [{ role: 'learner', name: 'Dario Penn', personalNumber: 'F-1' }], null, NOW);
			throw new Error('the deed fails');
		});
		await expect(failing).rejects.toThrow('the deed fails');
		for (const table of ['record_entry', 'record_head', 'person', 'identity', 'training_state'] as const) {
			expect(await db.selectFrom(table).selectAll().where('organisation_id', '=', organisation).execute()).toEqual([]);
		}
	});

	it('takes nothing that is no entry, and nothing else of the same deed', async () => {
		const organisation = await anOrganisation(db);
		const person = await aLearner(db, organisation, 'A-2');
		const before = await entriesOf(db, organisation);
		const wrong = { ...completedEntry(person, '2026-11-20'), day: '2026-02-30' };
		await expect(db.transaction().execute((transaction) => appendEntries(transaction, organisation, [handsOnEntry(person, '2026-11-20'), wrong]))).rejects.toThrow();
		expect(await entriesOf(db, organisation)).toEqual(before);
		expect(await brokenIn(db, organisation)).toEqual([]);
	});

	it('is never changed nor taken away', async () => {
		const organisation = await anOrganisation(db);
		await aLearner(db, organisation, 'A-3');
		await expect(db.updateTable('record_entry').set({ at: NOW.toISOString() }).where('organisation_id', '=', organisation).execute()).rejects.toThrow(/insert-only/);
		await expect(db.deleteFrom('record_entry').where('organisation_id', '=', organisation).execute()).rejects.toThrow(/insert-only/);
		await expect(db.updateTable('identity').set({ name: 'Other' }).where('organisation_id', '=', organisation).execute()).rejects.toThrow(/not changed/);
	});

	it('holds no name, and a swap of two people’s names is found: their commitments open no more', async () => {
		const organisation = await anOrganisation(db);
		const [one, other] = [await aLearner(db, organisation, 'W-1', [], 'Dario Penn'), await aLearner(db, organisation, 'W-2', [], 'Nadia Rook')];
		const text = JSON.stringify(await entriesOf(db, organisation));
		for (const told of ['Dario', 'Nadia', 'W-1']) expect(text).not.toContain(told);
		const opens = async (person: string): Promise<boolean> => {
			const { named } = await recordOf(db, person);
			const { salt } = await db.selectFrom('identity').select('salt').where('commitment', '=', named ?? '').executeTakeFirstOrThrow();
			const { name, personal_number } = await db.selectFrom('person').select(['name', 'personal_number']).where('id', '=', person).executeTakeFirstOrThrow();
			return commitmentTo(salt, name, personal_number) === named;
		};
		expect([await opens(one), await opens(other)]).toEqual([true, true]);
		await db.updateTable('person').set({ name: 'Nadia Rook' }).where('id', '=', one).execute();
		await db.updateTable('person').set({ name: 'Dario Penn' }).where('id', '=', other).execute();
		expect([await opens(one), await opens(other)]).toEqual([false, false]);
	});

	it('renews how a person stands with every entry', async () => {
		const organisation = await anOrganisation(db);
		const person = await aLearner(db, organisation, 'R-1', [], 'Tomás  Herrero');
		const state = () => db.selectFrom('training_state').selectAll().where('person_id', '=', person).executeTakeFirstOrThrow();
		const append = (...entries: Parameters<typeof appendEntries>[2]) => db.transaction().execute((transaction) => appendEntries(transaction, organisation, entries));
		expect(await state()).toMatchObject({ gone: 0, sort_name: 'tomas herrero', begun: 0, until: null, record_id: null, detail: '' });
		const passed = completedEntry(person, '2026-11-20', { validity: { months: 24, by: 'law', until: '2028-11-20' } });
		await append(passed);
		expect(await state()).toMatchObject({ until: null, detail: 'sign-off-missing' });
		await append(handsOnEntry(person, '2026-11-21'));
		expect(await state()).toMatchObject({ until: '2028-11-20', record_id: passed.id, record_day: '2026-11-20', detail: '' });
		await append(orderEntry(person, '2026-11-22', '2026-12-31'));
		expect(await state()).toMatchObject({ until: '2026-12-31', due: '2026-12-31', detail: 'retraining-ordered' });
		await append({ kind: 'left', at: NOW.toISOString(), by: null, person, day: '2026-11-25' });
		expect(await state()).toMatchObject({ gone: 1 });
	});
});
