import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { learnersOf } from '#lib/server/db/crew-list.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { findPersonById } from '#lib/server/db/people.ts';
import { insertSession } from '#lib/server/db/sessions.ts';
import { closeAccount } from '#lib/server/people/staff.ts';
import type { Person } from '#lib/server/people/who.ts';
import { identitiesOf } from '#lib/server/db/records.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { markLeft, markReturned } from '#lib/server/records/leaving.ts';
import { renamePerson } from '#lib/server/records/renaming.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, later } from '../people/organisation.ts';
import { aCompletion, breakChain, chainHolds } from './trained.ts';

const TODAY = '2026-11-25';

// Leavers keep their records, and one employer always stays. Common practice, no source.
describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	beforeEach(async () => {
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function signedIn(person: string): Promise<void> {
		await insertSession(db, { token_hash: randomUUID(), person_id: person, created_at: NOW.toISOString(), seen_at: NOW.toISOString(), expires_at: later(900).toISOString() });
	}

	async function sessions(person: string): Promise<number> {
		return (await db.selectFrom('session').select('token_hash').where('person_id', '=', person).execute()).length;
	}

	async function moves(person: string): Promise<readonly (readonly [string, string])[]> {
		return (await recordOf(db, person)).entries.flatMap(({ entry }) => (entry.kind === 'left' || entry.kind === 'returned' ? [[entry.kind, entry.day] as const] : []));
	}

	async function openEmployers(): Promise<readonly string[]> {
		const rows = await db.selectFrom('person').select('id').where('organisation_id', '=', organisation).where('role', '=', 'employer').where('closed_at', 'is', null).execute();
		return rows.map(({ id }) => id);
	}

	it('who leaves is signed out and on no list; the record stays, and all of it comes back with them', async () => {
		const crew = await aCrew(db, organisation);
		const person = await aLearner(db, organisation, 'C-1', [crew]);
		const record = await aCompletion(db, organisation, person, '2026-10-01');
		await signedIn(person);
		expect(await markLeft(db, employer, person, '2026-11-20', NOW)).toEqual({ kind: 'done' });
		expect(await sessions(person)).toBe(0);
		expect(await learnersOf(db, employer, crew.id)).toEqual([]);
		expect(await recordOf(db, person)).toMatchObject({ left: '2026-11-20', trainings: [{ id: record }] });
		expect(await db.selectFrom('training_state').select('gone').where('person_id', '=', person).executeTakeFirst()).toEqual({ gone: 1 });
		expect(await markReturned(db, employer, person, later(60))).toEqual({ kind: 'done' });
		expect((await learnersOf(db, employer, crew.id)).map(({ id, number }) => [id, number])).toEqual([[person, 'C-1']]);
		expect(await recordOf(db, person)).toMatchObject({ left: undefined, trainings: [{ id: record }] });
		expect(await db.selectFrom('training_state').select('gone').where('person_id', '=', person).executeTakeFirst()).toEqual({ gone: 0 });
		expect(await chainHolds(db, organisation)).toBe(true);
	});

	it('leaving and coming back twice is as once, and each is noted once', async () => {
		const person = await aLearner(db, organisation, 'C-2');
		for (const day of ['2026-11-20', '2026-11-21']) expect(await markLeft(db, employer, person, day, NOW)).toEqual({ kind: 'done' });
		for (const seconds of [1, 2]) expect(await markReturned(db, employer, person, later(seconds))).toEqual({ kind: 'done' });
		expect(await moves(person)).toEqual([['left', '2026-11-20'], ['returned', TODAY]]);
		const noted = await db.selectFrom('audit').select(['kind', 'actor_id']).where('subject_id', '=', person).orderBy('at').execute();
		expect(noted).toEqual([{ kind: 'person-left', actor_id: employer.id }, { kind: 'person-returned', actor_id: employer.id }]);
	});

	it('two who mark the same person in the same moment mark it once', async () => {
		const person = await aLearner(db, organisation, 'C-3');
		const second = await aMember(db, organisation, 'employer');
		await Promise.all([markLeft(db, employer, person, TODAY, NOW), markLeft(db, second, person, TODAY, NOW), markLeft(db, employer, person, TODAY, NOW)]);
		expect(await moves(person)).toHaveLength(1);
	});

	it('of two employers who close each other at once one stays, and so it is of three in a ring', async () => {
		const second = await aMember(db, organisation, 'employer');
		const done = await Promise.all([closeAccount(db, employer, second.id, NOW), closeAccount(db, second, employer.id, NOW)]);
		expect(done.filter(Boolean)).toHaveLength(1);
		const [left] = await openEmployers();
		expect(await openEmployers()).toHaveLength(1);
		const stays = left === employer.id ? employer : second;
		const [third, fourth] = [await aMember(db, organisation, 'employer'), await aMember(db, organisation, 'employer')];
		await Promise.all([markLeft(db, stays, third.id, TODAY, NOW), markLeft(db, third, fourth.id, TODAY, NOW), markLeft(db, fourth, stays.id, TODAY, NOW)]);
		expect((await openEmployers()).length).toBeGreaterThan(0);
		expect(await chainHolds(db, organisation)).toBe(true);
	});

	it('nobody marks themselves, a day to come, a day that is none, or people of another organisation', async () => {
		const person = await aLearner(db, organisation, 'C-4');
		const stranger = await aMember(db, await anOrganisation(db), 'employer');
		const trainer = await aMember(db, organisation, 'trainer');
		expect(await markLeft(db, employer, employer.id, TODAY, NOW)).toEqual({ kind: 'yourself' });
		for (const day of ['2026-11-26', '2026-02-30', '', 'yesterday']) expect(await markLeft(db, employer, person, day, NOW)).toEqual({ kind: 'no-day' });
		for (const who of [stranger, trainer]) {
			expect(await markLeft(db, who, person, TODAY, NOW)).toEqual({ kind: 'not-found' });
			expect(await markReturned(db, who, person, NOW)).toEqual({ kind: 'not-found' });
			expect(await renamePerson(db, who, person, { name: 'Rio Vance', number: 'C-4' }, NOW)).toEqual({ kind: 'not-found' });
		}
		expect(await moves(person)).toEqual([]);
	});

	it('the day counts where the site is, not where the server is', async () => {
		await db.updateTable('organisation').set({ zone: 'Pacific/Auckland' }).where('id', '=', organisation).execute();
		const person = await aLearner(db, organisation, 'C-5');
		// Auckland is 13 hours ahead in November: its next day has begun.
		expect(await markLeft(db, employer, person, '2026-11-26', new Date('2026-11-25T12:00:00.000Z'))).toEqual({ kind: 'done' });
	});

	it('an account that is closed has left today', async () => {
		const trainer = await aMember(db, organisation, 'trainer');
		expect(await closeAccount(db, employer, trainer.id, NOW)).toBe(true);
		expect(await moves(trainer.id)).toEqual([['left', TODAY]]);
	});

	it('another name and number come with a new commitment; the old name stays beside what was entered under it', async () => {
		const person = await aLearner(db, organisation, 'C-6', [], 'Nadia Rook');
		await aCompletion(db, organisation, person, '2026-10-01');
		expect(await renamePerson(db, employer, person, { name: 'Nadia Rook-Penn', number: 'C-60' }, later(1))).toEqual({ kind: 'done' });
		expect(await renamePerson(db, employer, person, { name: 'Nadia Rook-Penn', number: 'C-60' }, later(2))).toEqual({ kind: 'done' });
		const { names } = await recordOf(db, person);
		const held = await identitiesOf(db, organisation, names);
		expect(names.map((one) => [held.get(one)?.name, held.get(one)?.personal_number])).toEqual([['Nadia Rook', 'C-6'], ['Nadia Rook-Penn', 'C-60']]);
		expect(await findPersonById(db, person)).toMatchObject({ name: 'Nadia Rook-Penn', personal_number: 'C-60' });
		expect(await db.selectFrom('training_state').select(['sort_name', 'search']).where('person_id', '=', person).executeTakeFirst()).toEqual({ sort_name: 'nadia rook-penn', search: 'c-60 nadia rook-penn' });
	});

	it('a number that somebody else has is refused, and nothing of the new name is stored', async () => {
		const [one, other] = [await aLearner(db, organisation, 'C-7', [], 'Iris Dunn'), await aLearner(db, organisation, 'C-8')];
		expect(await renamePerson(db, employer, one, { name: 'Iris Dunne', number: 'C-8' }, NOW)).toEqual({ kind: 'number-taken' });
		expect(await findPersonById(db, one)).toMatchObject({ name: 'Iris Dunn', personal_number: 'C-7' });
		expect((await recordOf(db, one)).names).toHaveLength(1);
		expect(await findPersonById(db, other)).toMatchObject({ personal_number: 'C-8' });
	});

	it('what fails in the middle leaves nothing: neither account nor chain', async () => {
		const person = await aLearner(db, organisation, 'C-9', [], 'Iris Dunn');
		await signedIn(person);
		await breakChain(db, organisation);
		await expect(markLeft(db, employer, person, TODAY, NOW)).rejects.toThrow();
		await expect(renamePerson(db, employer, person, { name: 'Iris Dunne', number: 'C-9' }, NOW)).rejects.toThrow();
		expect(await moves(person)).toEqual([]);
		expect(await sessions(person)).toBe(1);
		expect(await findPersonById(db, person)).toMatchObject({ name: 'Iris Dunn', closed_at: null });
		expect((await db.selectFrom('audit').select('kind').where('subject_id', '=', person).execute()).length).toBe(0);
	});
});
