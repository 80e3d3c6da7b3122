import { randomUUID } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { learnersOf } from '#lib/server/db/crew-list.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { findPersonById } from '#lib/server/db/people.ts';
import { identitiesOf, putRecordSettings } from '#lib/server/db/records.ts';
import { insertSession } from '#lib/server/db/sessions.ts';
import { forgetNames } from '#lib/server/jobs/forget-names.ts';
import { addToCrew, openCheck } from '#lib/server/people/crew-list.ts';
import { makeCode } from '#lib/server/people/code.ts';
import { accountKey, mayTry } from '#lib/server/people/throttle.ts';
import type { Person } from '#lib/server/people/who.ts';
import { forgetName, isMeant } from '#lib/server/records/forgetting.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { markLeft, markReturned } from '#lib/server/records/leaving.ts';
import { mayForget } from '#lib/server/records/may-forget.ts';
import { commitmentOf } from '#lib/server/records/names.ts';
import { renamePerson } from '#lib/server/records/renaming.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, later, type TestCrew } from '../people/organisation.ts';
import { aCompletion, aSignOff, breakChain, chainHolds, priorTraining, whereItStands, withPassword } from './trained.ts';

const at = (day: string) => new Date(`${day}T12:00:00.000Z`);

// The latest certification is kept while somebody works here: 29 CFR 1926.503(b)(2), from memory. The time after leaving is
// a setting, 36 months where nothing was said: common practice, no source.
describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let trainer: Person;
	let crew: TestCrew;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	beforeEach(async () => {
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		trainer = await aMember(db, organisation, 'trainer', 'Helle Brandt');
		crew = await aCrew(db, organisation, [trainer]);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function keep(months: number | null): Promise<void> {
		await putRecordSettings(db, { organisation_id: organisation, validity_months: null, soon_days: 30, keep_months: months, changed_at: NOW.toISOString() });
	}

	/** A learner who left. @param certified on which day, or never */
	async function aLeaver(number: string, left: string, certified?: string, name = 'Dario Penn'): Promise<string> {
		const person = await aLearner(db, organisation, number, [crew], name);
		if (certified !== undefined) await aCompletion(db, organisation, person, certified);
		expect(await markLeft(db, employer, person, left, NOW)).toEqual({ kind: 'done' });
		return person;
	}

	it('after forgetting no table holds name, number or former name any more, the chain holds, and the record still stands', async () => {
		await withPassword(db, trainer);
		const person = await aLearner(db, organisation, 'QZ-4711', [crew], 'Zephyrine Quill');
		await renamePerson(db, employer, person, { name: 'Zephyrine Oakhollow', number: 'QZ-4712' }, later(1));
		await renamePerson(db, employer, person, { name: 'Zephyrine Oakhollow-Quill', number: 'QZ-4713' }, later(2));
		await openCheck(db, trainer, crew.id, person, { place: 'Training yard', identified: 'Card of Zephyrine Oakhollow' }, NOW);
		const record = await aCompletion(db, organisation, person, '2026-11-24');
		await aSignOff(db, trainer, crew, person, '2026-11-24', NOW);
		await insertSession(db, { token_hash: randomUUID(), person_id: person, created_at: NOW.toISOString(), seen_at: NOW.toISOString(), expires_at: later(900).toISOString() });
		await mayTry(db, [accountKey(person)], NOW);
		expect(await whereItStands(db, 'Oakhollow')).not.toEqual([]);
		await markLeft(db, employer, person, '2026-11-25', NOW);
		expect(await forgetName(db, employer, person, 'asked-for', at('2029-11-26'))).toEqual({ kind: 'forgotten' });
		for (const text of ['Zephyrine', 'Oakhollow', 'Quill', 'QZ-47']) expect({ text, in: await whereItStands(db, text) }).toEqual({ text, in: [] });
		const held = await recordOf(db, person);
		expect(held).toMatchObject({ erased: '2029-11-26', left: '2026-11-25', trainings: [{ id: record, signOff: { entry: { person } } }] });
		expect(await identitiesOf(db, organisation, held.names)).toEqual(new Map());
		expect(await db.selectFrom('training_state').select(['sort_name', 'search', 'erased', 'gone']).where('person_id', '=', person).executeTakeFirst()).toEqual({ sort_name: '', search: '', erased: 1, gone: 1 });
		for (const table of ['session', 'crew_learner', 'enrolment'] as const) expect(await db.selectFrom(table).select('person_id').where('person_id', '=', person).execute()).toEqual([]);
		expect(await db.selectFrom('throttle').select('key').where('key', '=', accountKey(person)).execute()).toEqual([]);
		expect(await chainHolds(db, organisation)).toBe(true);
	});

	it('an e-mail and an open code of staff go too; whose signature stands nowhere is forgotten after leaving', async () => {
		const helper = await aMember(db, organisation, 'trainer', 'Quentin Marrow');
		const { email } = (await findPersonById(db, helper.id)) ?? {};
		await makeCode(db, 'staff', helper.id, NOW);
		await markLeft(db, employer, helper.id, '2026-11-25', NOW);
		expect(await forgetName(db, employer, helper.id, 'asked-for', NOW)).toEqual({ kind: 'forgotten' });
		for (const text of ['Quentin', 'Marrow', email ?? '']) expect(await whereItStands(db, text)).toEqual([]);
	});

	it('who is still there is refused, with how long the name is kept after leaving; the refusal is noted and nothing is gone', async () => {
		const untrained = await aLearner(db, organisation, 'F-1', [crew]);
		const trained = await aLearner(db, organisation, 'F-2', [crew]);
		await aCompletion(db, organisation, trained, '2026-11-01');
		expect(await mayForget(db, employer, untrained, NOW)).toEqual({ kind: 'refused', why: 'still-there', months: 0 });
		expect(await forgetName(db, employer, trained, 'asked-for', NOW)).toEqual({ kind: 'refused', why: 'still-there', months: 36 });
		expect(await findPersonById(db, trained)).toMatchObject({ name: 'Dario Penn', personal_number: 'F-2', closed_at: null });
		expect((await learnersOf(db, employer, crew.id)).map(({ number }) => number)).toContain('F-2');
		const noted = await db.selectFrom('audit').select(['kind', 'actor_id', 'detail']).where('subject_id', '=', trained).execute();
		expect(noted).toEqual([{ kind: 'forgetting-refused', actor_id: employer.id, detail: '{"why":"still-there"}' }]);
	});

	it('a certification of somebody who left is kept to the day; all but the name goes at once', async () => {
		const person = await aLearner(db, organisation, 'F-3', [crew], 'Agda Rusk');
		await renamePerson(db, employer, person, { name: 'Agda Pell', number: 'F-3' }, later(1));
		await aCompletion(db, organisation, person, '2026-11-24');
		await renamePerson(db, employer, person, { name: 'Agda Moor', number: 'F-3' }, later(2));
		await db.updateTable('person').set({ secret: 'hash', language: 'es' }).where('id', '=', person).execute();
		await markLeft(db, employer, person, '2026-11-25', NOW);
		const kept = { kind: 'reduced', why: 'latest-certification', from: '2029-11-26' };
		expect(await mayForget(db, employer, person, NOW)).toEqual(kept);
		for (const now of [NOW, later(60)]) expect(await forgetName(db, employer, person, 'asked-for', now)).toEqual(kept);
		expect(await findPersonById(db, person)).toMatchObject({ name: 'Agda Moor', personal_number: 'F-3', secret: null, language: null });
		// The certification shows the name as it was then, so that one is kept beside the newest.
		expect(await whereItStands(db, 'Agda Rusk')).toEqual([]);
		const { names, entries } = await recordOf(db, person);
		const held = await identitiesOf(db, organisation, names);
		expect(names.map((one) => held.get(one)?.name)).toEqual([undefined, 'Agda Pell', 'Agda Moor']);
		expect(entries.filter(({ entry }) => entry.kind === 'former-names-erased').map(({ entry }) => 'commitments' in entry && entry.commitments)).toEqual([names.slice(0, 1)]);
		expect(await db.selectFrom('crew_learner').select('crew_id').where('person_id', '=', person).execute()).toEqual([]);
		const [noted] = await db.selectFrom('audit').select(['kind', 'detail']).where('subject_id', '=', person).where('kind', '=', 'forgetting-refused').execute();
		expect(JSON.parse(noted?.detail ?? '')).toEqual({ why: 'latest-certification', from: '2029-11-26' });
		expect(await mayForget(db, employer, person, at('2029-11-25'))).toEqual(kept);
		expect(await mayForget(db, employer, person, at('2029-11-26'))).toEqual({ kind: 'allowed' });
		expect(await chainHolds(db, organisation)).toBe(true);
	});

	it.each([
		// Three years after a 29 February there is none: the last of that February still counts.
		['2024-02-29', 36, '2027-03-01'],
		['2024-02-29', 48, '2028-03-01'],
		['2025-02-28', 36, '2028-02-29'],
		['2026-08-31', 6, '2027-03-01'],
		['2026-11-25', 1, '2026-12-26']
	])('left on %s and kept for %i months, the name may go from %s', async (left, months, from) => {
		await keep(months);
		const person = await aLeaver('F-4', left, '2020-05-01');
		expect(await mayForget(db, employer, person, at('2026-11-25'))).toEqual(from > '2026-11-25' ? { kind: 'reduced', why: 'latest-certification', from } : { kind: 'allowed' });
		// The day before, it is kept yet.
		const before = new Date(at(from).getTime() - 24 * 60 * 60 * 1000);
		expect((await mayForget(db, employer, person, before))?.kind).toBe('reduced');
		expect(await mayForget(db, employer, person, at(from))).toEqual({ kind: 'allowed' });
	});

	it('a last day before the certification does not shorten the time it is kept', async () => {
		const person = await aLeaver('F-5', '2019-01-01', '2026-10-10');
		expect(await mayForget(db, employer, person, NOW)).toEqual({ kind: 'reduced', why: 'latest-certification', from: '2029-10-11' });
	});

	it('who has no certification is forgotten as soon as they have left; twice is told', async () => {
		const person = await aLeaver('F-6', '2026-11-25');
		expect(await forgetName(db, employer, person, 'asked-for', NOW)).toEqual({ kind: 'forgotten' });
		expect(await forgetName(db, employer, person, 'asked-for', NOW)).toEqual({ kind: 'before', day: '2026-11-25' });
		expect(await markReturned(db, employer, person, NOW)).toEqual({ kind: 'erased' });
		expect(await renamePerson(db, employer, person, { name: 'Dario Penn', number: 'F-6' }, NOW)).toEqual({ kind: 'erased' });
		// The number is free again, and whoever gets it is somebody else.
		const added = await addToCrew(db, employer, crew.id, { name: 'Dario Penn', number: 'F-6' }, NOW);
		expect(added.kind === 'added' && added.person !== person).toBe(true);
	});

	it('a signature on a kept record keeps the signer’s name as long as the record has one', async () => {
		await withPassword(db, trainer);
		const person = await aLearner(db, organisation, 'F-7', [crew]);
		await aSignOff(db, trainer, crew, person, '2026-11-24', NOW);
		await markLeft(db, employer, trainer.id, '2026-11-25', NOW);
		const kept = { kind: 'reduced', why: 'signed', from: null };
		expect(await forgetName(db, employer, trainer.id, 'asked-for', at('2036-01-01'))).toEqual(kept);
		expect(await findPersonById(db, trainer.id)).toMatchObject({ name: 'Helle Brandt', email: null, secret: null });
		expect((await identitiesOf(db, organisation, [await commitmentOf(db, trainer.id)])).size).toBe(1);
		await markLeft(db, employer, person, '2026-11-25', NOW);
		await forgetName(db, employer, person, 'kept-long-enough', at('2036-01-01'));
		expect(await forgetName(db, employer, trainer.id, 'asked-for', at('2036-01-01'))).toEqual({ kind: 'forgotten' });
	});

	it('so does judging training from before, and being present at a check', async () => {
		const [one, other] = [await aLearner(db, organisation, 'F-8', [crew]), await aLearner(db, organisation, 'F-9', [crew])];
		const judge = await aMember(db, organisation, 'employer', 'Ines Vargo');
		await priorTraining(db, judge, await commitmentOf(db, judge.id), one, '2026-11-01');
		await openCheck(db, trainer, crew.id, other, { place: 'Yard', identified: 'Badge' }, NOW);
		await db.insertInto('check_try').values({ id: 'try-1', person_id: other, lesson: 'final', nth: 1, rule: '{}', seed: '1', language: 'en', supervision: null, day: '2026-11-25', at: NOW.toISOString() }).onConflict((conflict) => conflict.doNothing()).execute();
		await db.updateTable('check_opening').set({ check_id: 'try-1' }).where('person_id', '=', other).execute();
		for (const signer of [judge, trainer]) {
			await markLeft(db, employer, signer.id, '2026-11-25', NOW);
			expect(await mayForget(db, employer, signer.id, NOW)).toEqual({ kind: 'reduced', why: 'signed', from: null });
		}
	});

	it('nobody else’s people are forgotten, and by nobody but an employer', async () => {
		const person = await aLeaver('F-10', '2026-11-25');
		const stranger = await aMember(db, await anOrganisation(db), 'employer');
		for (const who of [stranger, trainer]) {
			expect(await mayForget(db, who, person, NOW)).toBeNull();
			expect(await forgetName(db, who, person, 'asked-for', NOW)).toEqual({ kind: 'not-found' });
		}
		expect(await findPersonById(db, person)).toMatchObject({ name: 'Dario Penn' });
	});

	it('what fails in the middle forgets nothing', async () => {
		const person = await aLeaver('F-11', '2026-11-25', undefined, 'Nadia Rook');
		const before = await whereItStands(db, 'Nadia Rook');
		await breakChain(db, organisation);
		await expect(forgetName(db, employer, person, 'asked-for', NOW)).rejects.toThrow();
		expect(await whereItStands(db, 'Nadia Rook')).toEqual(before);
		expect(await whereItStands(db, 'F-11')).not.toEqual([]);
		expect((await db.selectFrom('crew_learner').select('crew_id').where('person_id', '=', person).execute()).length).toBe(1);
	});

	it('two who forget the same name in the same moment forget it once', async () => {
		const person = await aLeaver('F-12', '2026-11-25');
		const told = await Promise.all([1, 2, 3].map(() => forgetName(db, employer, person, 'asked-for', NOW)));
		expect(told.map(({ kind }) => kind).toSorted()).toEqual(['before', 'before', 'forgotten']);
		expect((await recordOf(db, person)).entries.filter(({ entry }) => entry.kind === 'identity-erased')).toHaveLength(1);
	});

	it('the daily job forgets who left long enough ago, and counts what it keeps and why', async () => {
		await withPassword(db, trainer);
		await keep(12);
		const gone = await aLeaver('J-1', '2025-11-24', '2025-01-01');
		const untrained = await aLeaver('J-2', '2025-11-24');
		const recent = await aLeaver('J-3', '2025-11-25', '2025-01-01');
		const early = await aLeaver('J-4', '2026-01-01');
		const there = await aLearner(db, organisation, 'J-5', [crew], 'Nadia Rook');
		await aSignOff(db, trainer, crew, there, '2025-10-01', NOW);
		await markLeft(db, employer, trainer.id, '2025-10-02', NOW);
		expect(await forgetNames(db, organisation, NOW)).toEqual({ lookedAt: 5, forgotten: 2, keptNotLongEnough: 2, keptSigned: 1 });
		for (const person of [gone, untrained]) expect(await findPersonById(db, person)).toMatchObject({ name: '', personal_number: null });
		for (const person of [recent, early, there]) expect((await findPersonById(db, person))?.name).not.toBe('');
		const [entry] = (await recordOf(db, gone)).entries.slice(-1);
		expect(entry?.entry).toMatchObject({ kind: 'identity-erased', by: null, why: 'kept-long-enough', day: '2026-11-25' });
		expect(await forgetNames(db, organisation, NOW)).toEqual({ lookedAt: 3, forgotten: 0, keptNotLongEnough: 2, keptSigned: 1 });
		// The next day the third has been kept long enough.
		expect(await forgetNames(db, organisation, at('2026-11-26'))).toEqual({ lookedAt: 3, forgotten: 1, keptNotLongEnough: 1, keptSigned: 1 });
		expect(await chainHolds(db, organisation)).toBe(true);
	});

	it('where names are never forgotten the job forgets nobody', async () => {
		await keep(null);
		await aLeaver('J-6', '2001-01-01', '2000-01-01');
		expect(await forgetNames(db, organisation, NOW)).toEqual({ kept: 'always' });
	});

	it('many leavers are gone through in slices, each once', async () => {
		const people = await Promise.all(Array.from({ length: 7 }, (unused, i) => aLearner(db, organisation, `K-${String(i)}`)));
		for (const person of people) await markLeft(db, employer, person, '2020-01-01', NOW);
		expect(await forgetNames(db, organisation, NOW, 3)).toEqual({ lookedAt: 7, forgotten: 7, keptNotLongEnough: 0, keptSigned: 0 });
	});

	it('a number in any writing, or the name, says who is meant; anything else does not', () => {
		const person = { name: 'Éva Nagy', personal_number: 'C-117' };
		for (const typed of ['C-117', ' c-117 ', 'eva nagy', 'Nagy, Éva']) expect(isMeant(person, typed)).toBe(true);
		for (const typed of ['', 'C-118', 'Eva', 'yes']) expect(isMeant(person, typed)).toBe(false);
		expect(isMeant({ name: 'Éva Nagy', personal_number: null }, 'Eva Nagy')).toBe(true);
	});
});

// @source SQLite, PRAGMA secure_delete: what is deleted is overwritten with zeros; from memory
it('in the file of SQLite nothing of the name is left either', async () => {
	const folder = mkdtempSync(join(tmpdir(), 'underfoot-forgotten-'));
	const file = join(folder, 'x.sqlite');
	const db = await openDatabase(`file:${file}`);
	try {
		const organisation = await anOrganisation(db);
		const employer = await aMember(db, organisation, 'employer');
		const person = await aLearner(db, organisation, 'QZ-4711', [], 'Zephyrine Oakhollow');
		const holds = async (text: string): Promise<boolean> => {
			// The log of changes is written into the file, and emptied.
			await sql`pragma wal_checkpoint(truncate)`.execute(db);
			return [file, `${file}-wal`].some((path) => existsSync(path) && readFileSync(path).toString('latin1').toLowerCase().includes(text));
		};
		expect(await holds('oakhollow')).toBe(true);
		await markLeft(db, employer, person, '2026-11-25', NOW);
		await forgetName(db, employer, person, 'asked-for', NOW);
		for (const text of ['oakhollow', 'zephyrine', 'qz-4711']) expect(await holds(text)).toBe(false);
	} finally {
		await db.destroy();
		rmSync(folder, { recursive: true, force: true });
	}
});
