import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { findLearners, listStaff } from '#lib/server/people/overview.ts';
import { accountKey, mayTry } from '#lib/server/people/throttle.ts';
import type { Person } from '#lib/server/people/who.ts';
import { forgetName } from '#lib/server/records/forgetting.ts';
import { markLeft } from '#lib/server/records/leaving.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, aMember, anOrganisation, later } from './organisation.ts';

// Accounts are looked up, not listed whole: our own rule, common practice, no source.
describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		for (let i = 0; i < 27; i += 1) await aLearner(db, organisation, `A-${String(i)}`, [], `Lucía Corvo ${String(i).padStart(2, '0')}`);
		await aLearner(db, await anOrganisation(db), 'A-99', [], 'Lucía Corvo 99');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const found = async (typed: string, page = 1): Promise<readonly string[]> => (await findLearners(db, employer, typed, page)).people.map(({ name, state }) => `${name} ${state}`);

	it('nothing typed finds nobody; words in any order, accents or not, find people page by page, of this organisation alone', async () => {
		expect(await findLearners(db, employer, '  ', 1)).toEqual({ people: [], count: 0, page: 1, pages: 1 });
		expect(await findLearners(db, employer, 'CORVO, lucia', 1)).toMatchObject({ count: 27, page: 1, pages: 2 });
		expect(await found('corvo', 2)).toEqual(['Lucía Corvo 25 invited', 'Lucía Corvo 26 invited']);
		expect(await findLearners(db, employer, 'corvo', 9)).toMatchObject({ page: 2 });
		expect(await found('a-26')).toEqual(['Lucía Corvo 26 invited']);
		for (const typed of ['%', '_', '!', 'nobody', '99']) expect(await found(typed)).toEqual([]);
	});

	it('who is locked and who has left is told; those who left come last, and a forgotten name is not found', async () => {
		const [locked, left, forgotten] = [await aLearner(db, organisation, 'B-1', [], 'Wen Abara'), await aLearner(db, organisation, 'B-2', [], 'Aba Wen'), await aLearner(db, organisation, 'B-3', [], 'Wen Zander')];
		for (let i = 0; i < 10; i += 1) await mayTry(db, [accountKey(locked)], later(i * 100_000));
		for (const person of [left, forgotten]) await markLeft(db, employer, person, '2026-11-25', NOW);
		await forgetName(db, employer, forgotten, 'asked-for', NOW);
		expect(await found('wen')).toEqual(['Wen Abara locked', 'Aba Wen closed']);
	});

	it('staff are listed whole, employers first and those who left last; forgotten ones are not', async () => {
		const [trainer, gone, forgotten] = [await aMember(db, organisation, 'trainer', 'Ana Brook'), await aMember(db, organisation, 'employer', 'Abel Dorn'), await aMember(db, organisation, 'trainer', 'Ida Storm')];
		for (const { id } of [gone, forgotten]) await markLeft(db, employer, id, '2026-11-25', NOW);
		await forgetName(db, employer, forgotten.id, 'asked-for', NOW);
		expect((await listStaff(db, employer)).map(({ id, state, self }) => [id, state, self])).toEqual([[employer.id, 'invited', true], [trainer.id, 'invited', false], [gone.id, 'closed', false]]);
	});
});
