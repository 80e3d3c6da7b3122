import { createHash, randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { canonicalJson, HANDS_ON_CHECKS } from '#lib/records/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { setSecret } from '#lib/server/db/people.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import { signHandsOn, signedOff, toSign, type HandsOnEntry } from '#lib/server/people/sign-off.ts';
import type { Person } from '#lib/server/people/who.ts';
import { appendEntries, lockChain } from '#lib/server/records/append.ts';
import { commitNames, commitmentOf } from '#lib/server/records/names.ts';
import { staffMessages } from '#lib/text/index.ts';
import { completedEntry, orderEntry } from '../../../support/record-entries.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, later, type TestCrew } from './organisation.ts';

const PASSWORD = 'three cranes by the river';

function anEntry(more: Partial<HandsOnEntry> = {}): HandsOnEntry {
	return { id: randomUUID(), checks: HANDS_ON_CHECKS, place: 'Training yard, bay 2', day: '2026-11-24', capacity: 'competent-person', ...more };
}

describe.each(DATABASES)('on %s', (name, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let trainer: Person;
	let crew: TestCrew;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer');
		await setSecret(db, trainer.id, await hashSecret('password', PASSWORD));
		crew = await aCrew(db, organisation, [trainer]);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	let count = 0;
	const learner = () => aLearner(db, organisation, `S-${String((count += 1))}`, [crew]);

	async function sign(person: string, entry: HandsOnEntry, given: { readonly shown?: string; readonly password?: string; readonly who?: Person } = {}, now = NOW) {
		const built = await toSign(db, trainer, crew.id, person, entry, 'en', now);
		const shown = given.shown ?? (built.kind === 'to-sign' ? built.shown : '');
		return signHandsOn(db, given.who ?? trainer, crew.id, person, { entry, shown, password: given.password ?? PASSWORD, language: 'en' }, '192.0.2.7', now);
	}

	it('what is signed is what was shown: record, meaning and signer, bound by the record’s hash', async () => {
		const person = await learner();
		const entry = anEntry();
		expect(await sign(person, entry)).toEqual({ kind: 'signed' });
		const [one] = await signedOff(db, organisation, [person]);
		const { signOff } = await staffMessages('en');
		expect(one).toMatchObject({
			whole: true,
			signer: trainer.name,
			revoked: false,
			record: { person, organisation, checks: HANDS_ON_CHECKS, place: entry.place, day: entry.day, theory: null, scope: 'lanyard-with-energy-absorber' },
			signature: {
				signer: trainer.id,
				named: await commitmentOf(db, trainer.id),
				capacity: 'competent-person',
				meaning: signOff.meaning({ as: 'competent person', what: 'Lanyard with energy absorber' }),
				at: NOW.toISOString()
			}
		});
		// SHA-256 over RFC 8785 text, made by Node itself.
		expect(one?.signature.record).toBe(createHash('sha256').update(canonicalJson(one?.record)).digest('hex'));
		const row = await db.selectFrom('sign_off').selectAll().where('id', '=', entry.id).executeTakeFirstOrThrow();
		expect(`${row.record}${row.signed}`).not.toContain('Dario');
	});

	it('signing twice what was shown once is one signature', async () => {
		const person = await learner();
		const entry = anEntry();
		await sign(person, entry);
		expect(await sign(person, entry, {}, later(5))).toEqual({ kind: 'signed' });
		expect(await signedOff(db, organisation, [person])).toHaveLength(1);
	});

	it('sent twice in the same moment it is signed once, and both are told so', async () => {
		const person = await learner();
		const entry = anEntry();
		const told = await Promise.all([sign(person, entry), sign(person, entry), sign(person, entry)]);
		expect(told).toEqual([{ kind: 'signed' }, { kind: 'signed' }, { kind: 'signed' }]);
		expect(await signedOff(db, organisation, [person])).toHaveLength(1);
	});

	it('a form that was gone back to and filled in anew is another record: nothing is told as signed that is not', async () => {
		const person = await learner();
		const entry = anEntry();
		const first = await toSign(db, trainer, crew.id, person, entry, 'en', NOW);
		await sign(person, entry);
		const anew = { ...entry, place: 'Hall 4' };
		expect(await sign(person, anew, { shown: first.kind === 'to-sign' ? first.shown : '' })).toEqual({ kind: 'changed' });
		expect(await signedOff(db, organisation, [person])).toHaveLength(1);
		const built = await toSign(db, trainer, crew.id, person, anew, 'en', NOW);
		const id = built.kind === 'to-sign' ? built.record.id : '';
		expect(id).not.toBe(entry.id);
		expect(await sign(person, { ...anew, id }, {}, later(60))).toEqual({ kind: 'signed' });
		expect((await signedOff(db, organisation, [person])).map(({ record }) => record.place)).toEqual(['Hall 4', entry.place]);
	});

	it('what changes while the password is checked must be read again: retraining that was ordered, a list that the learner was taken off', async () => {
		const waiting = async (person: string, meanwhile: (transaction: Database) => Promise<unknown>) => {
			const entry = anEntry();
			const built = await toSign(db, trainer, crew.id, person, entry, 'en', NOW);
			let signing: Promise<unknown> = Promise.resolve();
			await db.transaction().execute(async (transaction) => {
				await lockChain(transaction, organisation);
				signing = sign(person, entry, { shown: built.kind === 'to-sign' ? built.shown : '' });
				// PostgreSQL: until the password is checked. On SQLite nothing is looked at before this transaction ends.
				if (name === 'PostgreSQL') for (let waits = 0; waits === 0; ) waits = (await sql`select 1 from pg_locks where not granted`.execute(db)).rows.length;
				await meanwhile(transaction);
			});
			return signing;
		};
		const [one, other] = [await learner(), await learner()];
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [completedEntry(one, '2026-11-20')]));
		expect(await waiting(one, (transaction) => appendEntries(transaction, organisation, [orderEntry(one, '2026-11-25', '2026-12-24')]))).toEqual({ kind: 'changed' });
		expect(await waiting(other, (transaction) => transaction.deleteFrom('crew_learner').where('person_id', '=', other).execute())).toEqual({ kind: 'not-found' });
		expect(await signedOff(db, organisation, [one, other])).toEqual([]);
	});

	it('the id of another person’s record is not taken for this one’s', async () => {
		const [one, other] = [await learner(), await learner()];
		const entry = anEntry();
		await sign(one, entry);
		expect(await sign(other, entry)).toEqual({ kind: 'changed' });
		expect(await signedOff(db, organisation, [other])).toEqual([]);
	});

	it('what is signed says what was read: in another language, or in another capacity, it must be read again', async () => {
		const person = await learner();
		const entry = anEntry();
		const built = await toSign(db, trainer, crew.id, person, entry, 'es', NOW);
		const shown = built.kind === 'to-sign' ? built.shown : '';
		expect(await sign(person, entry, { shown })).toEqual({ kind: 'changed' });
		const english = await toSign(db, trainer, crew.id, person, entry, 'en', NOW);
		expect(await sign(person, { ...entry, capacity: 'qualified-person' }, { shown: english.kind === 'to-sign' ? english.shown : '' })).toEqual({ kind: 'changed' });
		expect(await signedOff(db, organisation, [person])).toEqual([]);
	});

	it('a theory passed by then is named in the record, and what was shown before it must be read again', async () => {
		const person = await learner();
		const entry = anEntry();
		const before = await toSign(db, trainer, crew.id, person, entry, 'en', NOW);
		const passed = completedEntry(person, '2026-11-25', { supervised: { trainer: trainer.id, named: await commitmentOf(db, trainer.id), identified: 'knows him', place: 'Hall 4' } });
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [passed]));
		expect(await sign(person, entry, { shown: before.kind === 'to-sign' ? before.shown : '' })).toEqual({ kind: 'changed' });
		expect(await signedOff(db, organisation, [person])).toEqual([]);
		expect(await sign(person, entry)).toEqual({ kind: 'signed' });
		expect((await signedOff(db, organisation, [person]))[0]?.record.theory).toEqual({ completion: passed.id, course: 'lanyard-orientation', version: 1, day: '2026-11-25', supervised: true });
	});

	it('the theory from before an order of retraining is not named in a sign-off after it', async () => {
		const person = await learner();
		const entries = [completedEntry(person, '2026-11-20'), orderEntry(person, '2026-11-23', '2026-12-31')];
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, entries));
		expect(await sign(person, anEntry())).toEqual({ kind: 'signed' });
		expect((await signedOff(db, organisation, [person]))[0]?.record.theory).toBeNull();
	});

	it('a signer’s name that changed since it was shown must be read again; one that is forgotten is not told', async () => {
		const other = await aMember(db, organisation, 'trainer', 'Marit Oslo');
		await setSecret(db, other.id, await hashSecret('password', PASSWORD));
		const own = await aCrew(db, organisation, [other]);
		const person = await aLearner(db, organisation, 'S-902', [own]);
		const entry = anEntry();
		const read = await toSign(db, other, own.id, person, entry, 'en', NOW);
		const renamed = { id: other.id, role: other.role, name: 'Marit Bergen', number: null };
		await db.transaction().execute(async (transaction) => appendEntries(transaction, organisation, await commitNames(transaction, organisation, [renamed], null, NOW)));
		const given = { entry, shown: read.kind === 'to-sign' ? read.shown : '', password: PASSWORD, language: 'en' } as const;
		expect(await signHandsOn(db, other, own.id, person, given, '192.0.2.9', NOW)).toEqual({ kind: 'changed' });
		const again = await toSign(db, other, own.id, person, entry, 'en', NOW);
		expect(await signHandsOn(db, other, own.id, person, { ...given, shown: again.kind === 'to-sign' ? again.shown : '' }, '192.0.2.9', NOW)).toEqual({ kind: 'signed' });
		expect((await signedOff(db, organisation, [person])).map(({ signer }) => signer)).toEqual(['Marit Bergen']);
		await db.deleteFrom('identity').where('person_id', '=', other.id).execute();
		expect((await signedOff(db, organisation, [person])).map(({ signer, whole }) => ({ signer, whole }))).toEqual([{ signer: null, whole: true }]);
	});

	it('without the password nothing is signed, and tries are counted as at the sign-in', async () => {
		const other = await aMember(db, organisation, 'trainer', 'Tomas Eik');
		await setSecret(db, other.id, await hashSecret('password', PASSWORD));
		const own = await aCrew(db, organisation, [other]);
		const person = await aLearner(db, organisation, 'S-900', [own]);
		const entry = anEntry();
		const built = await toSign(db, other, own.id, person, entry, 'en', NOW);
		const given = { entry, shown: built.kind === 'to-sign' ? built.shown : '', password: 'wrong', language: 'en' } as const;
		const kinds: string[] = [];
		for (let i = 0; i < 7; i += 1) kinds.push((await signHandsOn(db, other, own.id, person, given, '192.0.2.8', NOW)).kind);
		expect(kinds.slice(0, 5)).toEqual(Array.from({ length: 5 }, () => 'wrong-password'));
		expect(kinds.at(-1)).toBe('wait');
		expect(await signedOff(db, organisation, [person])).toEqual([]);
		// Each wrong password is noted; of what only waits nothing was tried.
		const noted = await db.selectFrom('audit').select(['actor_id', 'subject_id']).where('kind', '=', 'signing-refused').where('organisation_id', '=', organisation).execute();
		expect(noted).toEqual(kinds.filter((kind) => kind === 'wrong-password').map(() => ({ actor_id: other.id, subject_id: person })));
	});

	it('a day to come, another’s crew, and a person of no list are refused', async () => {
		const person = await learner();
		expect(await sign(person, anEntry({ day: '2026-11-26' }))).toEqual({ kind: 'day-to-come' });
		const colleague = await aMember(db, organisation, 'trainer', 'Ilan Corvo');
		expect(await sign(person, anEntry(), { who: colleague })).toEqual({ kind: 'not-found' });
		expect(await sign(await aLearner(db, organisation, 'S-901'), anEntry())).toEqual({ kind: 'not-found' });
	});

	it('a sign-off is never changed nor taken away', async () => {
		const person = await learner();
		await sign(person, anEntry());
		await expect(db.updateTable('sign_off').set({ capacity: 'qualified-person' }).where('person_id', '=', person).execute()).rejects.toThrow(/insert-only/);
		await expect(db.deleteFrom('sign_off').where('person_id', '=', person).execute()).rejects.toThrow(/insert-only/);
	});
});
