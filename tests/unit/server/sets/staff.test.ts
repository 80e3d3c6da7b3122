import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { putOnList, takeOffList } from '#lib/server/db/crew-list.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { setArchived } from '#lib/server/people/crews.ts';
import type { Person } from '#lib/server/people/who.ts';
import { assignSet, recallAssignment, whomToAssign, type Assigning } from '#lib/server/sets/assign.ts';
import { setsOf } from '#lib/server/sets/learner.ts';
import { archiveSet, findSet, listSets, makeSet } from '#lib/server/sets/make.ts';
import { setStates } from '#lib/server/sets/states.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aMember, anOrganisation, later, type TestCrew } from '../people/organisation.ts';
import { aContent, aSet, aSignedIn, bodyFor, placesAt, send, workRound } from './given.ts';

const DONE = { kind: 'done' };
const NOT_FOUND = { kind: 'not-found' };

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let trainer: Person;
	let colleague: Person;
	let stranger: Person;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		trainer = await aMember(db, organisation, 'trainer', 'Helle Brandt');
		colleague = await aMember(db, organisation, 'trainer', 'Tomas Eik');
		stranger = await aMember(db, await anOrganisation(db), 'employer', 'Ilan Corvo');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function assigned(who: Person, set: string, to: Partial<Assigning>): Promise<readonly string[]> {
		const done = await assignSet(db, who, set, { crews: [], people: [], dueDay: null, ...to }, NOW);
		if (done.kind !== 'assigned') throw new Error(JSON.stringify(done));
		return done.assignments;
	}

	async function refusedAs(who: Person, set: string, to: Partial<Assigning>): Promise<readonly string[]> {
		const done = await assignSet(db, who, set, { crews: [], people: [], dueDay: null, ...to }, NOW);
		return done.kind === 'refused' ? done.problems.map((one) => one.code) : [done.kind];
	}

	describe('a set', () => {
		it('is its maker’s and the employer’s to see, and nobody else’s', async () => {
			const set = await aSet(db, trainer);
			expect(await findSet(db, trainer, set)).toMatchObject({ id: set, name: 'Monday problems', content: aContent(), madeBy: { name: 'Helle Brandt' }, mayArchive: true, archivedAt: null });
			expect(await findSet(db, employer, set)).toMatchObject({ mayArchive: true });
			const learner = await aSignedIn(db, organisation, []);
			for (const who of [colleague, stranger, learner]) {
				expect(await findSet(db, who, set)).toBeNull();
				expect((await listSets(db, who)).map((one) => one.id)).not.toContain(set);
				expect(await archiveSet(db, who, set, true, NOW)).toEqual(NOT_FOUND);
				expect(await setStates(db, who, set, NOW)).toBeNull();
				expect(await assignSet(db, who, set, { crews: [], people: [], dueDay: null }, NOW)).toEqual(NOT_FOUND);
			}
		});

		it('is seen by the trainers of a crew that has it, who cannot put it away', async () => {
			const set = await aSet(db, employer);
			const crew = await aCrew(db, organisation, [colleague]);
			expect(await findSet(db, colleague, set)).toBeNull();
			await assigned(employer, set, { crews: [crew.id] });
			expect(await findSet(db, colleague, set)).toMatchObject({ id: set, mayArchive: false });
			expect(await archiveSet(db, colleague, set, true, NOW)).toEqual(NOT_FOUND);
			expect(await findSet(db, trainer, set)).toBeNull();
		});

		it('that was put away stands last, and is assigned no more until it is taken up again', async () => {
			const crew = await aCrew(db, organisation, [trainer]);
			const [old, kept] = [await aSet(db, trainer, {}, 'Old'), await aSet(db, trainer, {}, 'Kept')];
			expect(await archiveSet(db, trainer, old, true, NOW)).toEqual(DONE);
			expect(await archiveSet(db, trainer, old, true, later(5))).toEqual(DONE);
			expect(await refusedAs(trainer, old, { crews: [crew.id] })).toEqual(['archived']);
			const order = (await listSets(db, trainer)).map((one) => one.id);
			expect(order.indexOf(kept)).toBeLessThan(order.indexOf(old));
			expect(await archiveSet(db, trainer, old, false, NOW)).toEqual(DONE);
			await assigned(trainer, old, { crews: [crew.id] });
			const notes = await db.selectFrom('audit').select(['kind', 'detail']).where('subject_id', '=', old).orderBy('at').execute();
			expect(notes.map((one) => one.kind).sort()).toEqual(['set-archived', 'set-archived', 'set-assigned', 'set-made']);
		});

		it.each([
			['no name', { name: ' \t ' }, ['name']],
			['no scenarios', { content: aContent({ scenarios: [] }) }, ['scenarios']],
			['an unknown scenario', { content: aContent({ scenarios: [{ id: 'no-such-site', version: 1, asks: ['free-fall'] }] }) }, ['unknown-scenario']],
			['a version that is not there', { content: aContent({ scenarios: [{ id: 'bridge-bearing', version: 999, asks: ['free-fall'] }] }) }, ['unknown-scenario']],
			['an ask that is not there', { content: aContent({ scenarios: [{ id: 'bridge-bearing', version: 1, asks: ['no-such-ask'] }] }) }, ['asks']],
			['a decision without its numbers', { content: aContent({ scenarios: [{ id: 'bridge-bearing', version: 1, asks: ['decision'] }] }) }, ['asks']],
			['a scenario twice', { content: aContent({ scenarios: [...aContent().scenarios, ...aContent().scenarios] }) }, ['content', 'content']],
			['no problems', { content: aContent({ count: 0 }) }, ['count']],
			['a thousand problems', { content: aContent({ count: 1000 }) }, ['count']],
			['more right than there are', { content: aContent({ rule: { right: 4, critical: 0 } }) }, ['rule']],
			['more unsafe than there are', { content: aContent({ rule: { right: 1, critical: 4 } }) }, ['rule']],
			['a slip that is none', { content: aContent({ aims: ['no-such-slip'] }) }, ['content']],
			['a field that nobody knows', { content: { ...aContent(), colour: 'red' } }, ['content']],
			['nothing at all', { content: null }, ['content']]
		])('is not made of %s', async (_what, change, codes) => {
			const before = await listSets(db, trainer);
			const made = await makeSet(db, trainer, { name: 'Monday problems', content: aContent(), ...change }, NOW);
			expect(made.kind === 'refused' ? made.problems.map((one) => one.code) : made).toEqual(codes);
			for (const problem of made.kind === 'refused' ? made.problems : []) expect(problem).toMatchObject({ field: expect.stringMatching(/./), problem: expect.stringMatching(/./), remedy: expect.stringMatching(/./) });
			expect(await listSets(db, trainer)).toEqual(before);
		});
	});

	describe('an assignment', () => {
		let crew: TestCrew;
		let other: TestCrew;
		beforeAll(async () => {
			crew = await aCrew(db, organisation, [trainer]);
			other = await aCrew(db, organisation, [colleague]);
		});

		it('goes only to crews of one’s own that work, and to people on their lists', async () => {
			const set = await aSet(db, trainer);
			const own = await aSignedIn(db, organisation, [crew]);
			const foreign = await aSignedIn(db, organisation, [other]);
			const away = await aCrew(db, organisation, [trainer]);
			await setArchived(db, trainer, away.id, true, NOW);
			expect(await refusedAs(trainer, set, { crews: [crew.id, other.id] })).toEqual(['crew']);
			expect(await refusedAs(trainer, set, { crews: [away.id] })).toEqual(['crew']);
			expect(await refusedAs(trainer, set, { people: [own.id, foreign.id, randomUUID()] })).toEqual(['person', 'person']);
			expect(await refusedAs(trainer, set, {})).toEqual(['nobody']);
			expect(await refusedAs(trainer, set, { people: Array.from({ length: 300 }, () => randomUUID()) })).toEqual(['too-many']);
			expect(await setStates(db, trainer, set, NOW)).toMatchObject({ assignments: [] });
			const whom = await whomToAssign(db, trainer);
			expect(whom.crews.map((one) => one.id)).toContain(crew.id);
			expect(whom.crews.map((one) => one.id)).not.toContain(away.id);
			expect(whom.people.map((one) => one.id)).toContain(own.id);
			expect(whom.people.map((one) => one.id)).not.toContain(foreign.id);
			expect(await assigned(trainer, set, { crews: [crew.id], people: [own.id] })).toHaveLength(2);
			expect(await assigned(employer, set, { crews: [other.id], people: [foreign.id] })).toHaveLength(2);
			// Those of others are answered like those that nobody knows, also once they have the set.
			const dueDay = '2026-12-01';
			expect(await refusedAs(trainer, set, { crews: [other.id], people: [foreign.id], dueDay })).toEqual(await refusedAs(trainer, set, { crews: [randomUUID()], people: [randomUUID()], dueDay }));
		});

		it.each([
			['yesterday', '2026-11-24', ['day-past']],
			['a day that is none', '2026-02-30', ['day']],
			['words', 'tomorrow', ['day']],
			['a time', '2026-12-01T10:00', ['day']]
		])('is not due on %s', async (_what, dueDay, codes) => {
			expect(await refusedAs(trainer, await aSet(db, trainer), { crews: [crew.id], dueDay })).toEqual(codes);
		});

		it('may be due today, as it is where the organisation works', async () => {
			const zoned = await anOrganisation(db);
			await db.updateTable('organisation').set({ zone: 'Pacific/Auckland' }).where('id', '=', zoned).execute();
			const there = await aMember(db, zoned, 'trainer');
			const far = await aCrew(db, zoned, [there]);
			const set = await aSet(db, there);
			// 09:00 UTC is 22:00 of the same day in Auckland; at 12:00 UTC the next day has begun there.
			const noon = later(3 * 60 * 60);
			expect(await assignSet(db, there, set, { crews: [far.id], people: [], dueDay: '2026-11-25' }, noon)).toMatchObject({ kind: 'refused', problems: [{ code: 'day-past' }] });
			expect(await assignSet(db, there, set, { crews: [far.id], people: [], dueDay: '2026-11-25' }, NOW)).toMatchObject({ kind: 'assigned' });
		});

		it('is made once, however often it is asked for, and not beside another due day', async () => {
			const set = await aSet(db, trainer);
			const to = { crews: [crew.id], people: [], dueDay: '2026-12-01' };
			const together = await Promise.all([assignSet(db, trainer, set, to, NOW), assignSet(db, trainer, set, to, NOW)]);
			const [first, second] = together;
			expect(first).toMatchObject({ kind: 'assigned' });
			expect(second).toEqual(first);
			expect(await refusedAs(trainer, set, { ...to, dueDay: '2026-12-02' })).toEqual(['has-it']);
			expect((await setStates(db, trainer, set, NOW))?.assignments).toHaveLength(1);
		});

		it('is recalled by whoever has the crew, once, and can be made anew', async () => {
			const set = await aSet(db, trainer);
			const learner = await aSignedIn(db, organisation, [crew]);
			const [id = ''] = await assigned(trainer, set, { crews: [crew.id] });
			for (const who of [colleague, stranger, learner]) expect(await recallAssignment(db, who, id, NOW)).toEqual(NOT_FOUND);
			expect((await setsOf(db, learner, NOW)).map((one) => one.assignment)).toContain(id);
			expect(await recallAssignment(db, trainer, id, NOW)).toEqual(DONE);
			expect(await recallAssignment(db, trainer, id, later(9))).toEqual(DONE);
			expect((await setsOf(db, learner, NOW)).map((one) => one.assignment)).not.toContain(id);
			expect((await setStates(db, trainer, set, NOW))?.assignments).toMatchObject([{ id, recalled: true }]);
			const notes = await db.selectFrom('audit').select('kind').where('subject_id', '=', set).where('kind', '=', 'set-recalled').execute();
			expect(notes).toHaveLength(1);
			const [again] = await assigned(trainer, set, { crews: [crew.id], dueDay: '2026-12-09' });
			expect(again).not.toBe(id);
			expect((await setsOf(db, learner, NOW)).map((one) => one.assignment)).toContain(again);
		});
	});

	describe('the states of a set', () => {
		let crew: TestCrew;
		let set: string;
		let id: string;
		let ada: Person;
		let bo: Person;
		beforeAll(async () => {
			crew = await aCrew(db, organisation, [trainer]);
			ada = await aSignedIn(db, organisation, [crew], 'Ada Moor');
			bo = await aSignedIn(db, organisation, [crew], 'Bo Lund');
			set = await aSet(db, trainer);
			[id = ''] = await assigned(trainer, set, { crews: [crew.id], dueDay: '2026-11-26' });
		});

		const people = async (now = NOW) => (await setStates(db, trainer, set, now))?.assignments[0]?.people ?? [];
		const stamp = async (now = NOW) => (await setStates(db, trainer, set, now))?.stamp;

		it('tell of everyone how far they are, from the first answer to the passed round', async () => {
			const untouched = { state: 'not-started', late: false, passed: null, answered: 0, of: 3, right: 0, critical: 0, round: 0, lastAt: null };
			expect(await people()).toEqual([{ person: ada.id, name: 'Ada Moor', number: expect.stringMatching(/^S/), ...untouched }, { person: bo.id, name: 'Bo Lund', number: expect.stringMatching(/^S/), ...untouched }]);
			const first = await stamp();
			expect(await stamp()).toBe(first);

			const [place] = await placesAt(db, ada, id);
			if (place === undefined) throw new Error('no place');
			await send(db, ada, bodyFor(id, place, 0), later(1));
			expect((await people())[0]).toMatchObject({ state: 'under-way', passed: null, answered: 1, right: 1, lastAt: later(1).toISOString() });
			expect(await stamp()).not.toBe(first);

			await workRound(db, bo, id, [false, false, true]);
			expect((await people())[1]).toMatchObject({ state: 'under-way', passed: false, answered: 0, right: 0, round: 1 });
			await workRound(db, bo, id, [true, true, true]);
			expect((await people())[1]).toMatchObject({ state: 'done', passed: true, answered: 3, right: 3, round: 1, late: false });
			expect(await setsOf(db, bo, NOW)).toMatchObject([{ assignment: id, state: 'done', right: 3, of: 3 }]);
		});

		it('call who has not passed by the end of the due day late, and who passed in time never', async () => {
			const lastMinute = new Date('2026-11-26T23:59:00.000Z');
			const midnight = new Date('2026-11-27T00:00:00.000Z');
			const lates = async (now: Date) => (await people(now)).map((one) => one.late);
			expect(await lates(lastMinute)).toEqual([false, false]);
			expect(await lates(midnight)).toEqual([true, false]);
			expect(await stamp(midnight)).not.toBe(await stamp(lastMinute));
			expect(await setsOf(db, ada, midnight)).toMatchObject([{ late: true }]);
			await db.updateTable('organisation').set({ zone: 'America/Denver' }).where('id', '=', organisation).execute();
			// Seven hours to go there.
			expect(await lates(midnight)).toEqual([false, false]);
			await db.updateTable('organisation').set({ zone: 'UTC' }).where('id', '=', organisation).execute();
			await workRound(db, ada, id, [true, true, true], midnight);
			expect((await people(midnight))[0]).toMatchObject({ state: 'done', late: true });
		});

		it('take in who joins the crew later, and tell no more of who left it', async () => {
			const newcomer = await aSignedIn(db, organisation, [], 'Cy Newly');
			expect(await setsOf(db, newcomer, NOW)).toEqual([]);
			await putOnList(db, crew.id, newcomer.id, NOW.toISOString());
			expect(await setsOf(db, newcomer, NOW)).toMatchObject([{ assignment: id, state: 'not-started' }]);
			expect((await people()).map((one) => one.name)).toEqual(['Ada Moor', 'Bo Lund', 'Cy Newly']);
			await takeOffList(db, crew.id, bo.id);
			expect((await people()).map((one) => one.name)).toEqual(['Ada Moor', 'Cy Newly']);
			expect(await setsOf(db, bo, NOW)).toEqual([]);
		});

		it('show a trainer only what own crews have', async () => {
			const theirs = await aCrew(db, organisation, [colleague]);
			await assigned(employer, set, { crews: [theirs.id] });
			expect((await setStates(db, colleague, set, NOW))?.assignments.map((one) => one.crew)).toEqual([theirs.id]);
			expect((await setStates(db, trainer, set, NOW))?.assignments.map((one) => one.crew)).toEqual([crew.id]);
			expect((await setStates(db, employer, set, NOW))?.assignments.map((one) => one.crew).sort()).toEqual([crew.id, theirs.id].sort());
		});

		it('stop showing with their crew, when it is put away', async () => {
			await setArchived(db, trainer, crew.id, true, NOW);
			expect(await setStates(db, trainer, set, NOW)).toMatchObject({ assignments: [] });
			expect(await setsOf(db, ada, NOW)).toEqual([]);
			await setArchived(db, trainer, crew.id, false, NOW);
			expect(await people()).toHaveLength(2);
		});
	});
});
