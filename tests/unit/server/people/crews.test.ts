import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STUCK_AFTER } from '#lib/mastery/index.ts';
import { payloadText } from '#lib/server/course/state.ts';
import { learnersOf } from '#lib/server/db/crew-list.ts';
import { findCrew, listCrews, trainersOf } from '#lib/server/db/crews.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { openingsOf, triesOf } from '#lib/server/db/permits.ts';
import { addToCrew, crewPeople, moveToCrew, openCheck, resetPin, takeOffCrew, unlockCheck } from '#lib/server/people/crew-list.ts';
import { assignTrainer, makeCrew, nameCrew, releaseTrainer, setArchived } from '#lib/server/people/crews.ts';
import { joinCrew } from '#lib/server/people/join.ts';
import { signInLearner } from '#lib/server/people/learner.ts';
import { progressOf } from '#lib/server/people/progress.ts';
import { startSession, whoIs } from '#lib/server/people/session.ts';
import type { Person } from '#lib/server/people/who.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, later, type TestCrew } from './organisation.ts';

const NOT_FOUND = { kind: 'not-found' };
const DONE = { kind: 'done' };

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let trainer: Person;
	let colleague: Person;
	let stranger: Person;
	let crew: TestCrew;
	let count = 0;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		trainer = await aMember(db, organisation, 'trainer', 'Helle Brandt');
		colleague = await aMember(db, organisation, 'trainer', 'Tomas Eik');
		stranger = await aMember(db, await anOrganisation(db), 'employer', 'Ilan Corvo');
		crew = await aCrew(db, organisation, [trainer]);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const number = () => `C${String((count += 1))}`;

	async function notesOf(subject: string): Promise<{ kind: string; actor: string | null }[]> {
		const rows = await db.selectFrom('audit').select(['kind', 'actor_id']).where('subject_id', '=', subject).orderBy('at').execute();
		return rows.map((row) => ({ kind: row.kind, actor: row.actor_id }));
	}

	describe('a crew', () => {
		it('made by a trainer is the trainer’s, with a join code of its own', async () => {
			const id = await makeCrew(db, trainer, 'Night shift', NOW);
			expect(await findCrew(db, trainer, id ?? '')).toMatchObject({ name: 'Night shift', archivedAt: null, joinCode: expect.stringMatching(/^[0-9A-HJKMNP-TV-Z]{8}$/) });
			expect((await trainersOf(db, trainer, id ?? '')).map((one) => one.id)).toEqual([trainer.id]);
			expect(await notesOf(id ?? '')).toEqual([{ kind: 'crew-made', actor: trainer.id }]);
		});

		it('is seen by its trainers and the employer, by nobody else', async () => {
			expect((await findCrew(db, trainer, crew.id))?.id).toBe(crew.id);
			expect((await findCrew(db, employer, crew.id))?.id).toBe(crew.id);
			const learner = await aMember(db, organisation, 'learner', 'Wen Abara');
			for (const other of [colleague, stranger, learner]) {
				expect(await findCrew(db, other, crew.id)).toBeNull();
				expect((await listCrews(db, other)).map((one) => one.id)).not.toContain(crew.id);
				expect(await learnersOf(db, other, crew.id)).toEqual([]);
				expect(await trainersOf(db, other, crew.id)).toEqual([]);
			}
		});

		it('is listed with its people and trainers, those put away last', async () => {
			const own = await aMember(db, organisation, 'trainer', 'Priya Holm');
			const [first, second] = [await aCrew(db, organisation, [own]), await aCrew(db, organisation, [own])];
			await aLearner(db, organisation, number(), [second]);
			await setArchived(db, own, first.id, true, NOW);
			expect((await listCrews(db, own)).map(({ id, learners, trainers, archivedAt }) => ({ id, learners, trainers, archivedAt }))).toEqual([
				{ id: second.id, learners: 1, trainers: ['Priya Holm'], archivedAt: null },
				{ id: first.id, learners: 0, trainers: ['Priya Holm'], archivedAt: NOW.toISOString() }
			]);
		});

		it('cannot be made by a learner', async () => {
			expect(await makeCrew(db, await aMember(db, organisation, 'learner'), 'Mine', NOW)).toBeNull();
		});

		it('is renamed, put away and taken up again; twice is noted once', async () => {
			const id = (await makeCrew(db, trainer, 'Old', NOW)) ?? '';
			expect(await nameCrew(db, trainer, id, 'New', later(1))).toEqual(DONE);
			expect(await setArchived(db, trainer, id, true, later(2))).toEqual(DONE);
			expect(await setArchived(db, trainer, id, true, later(3))).toEqual(DONE);
			expect((await findCrew(db, trainer, id))?.archivedAt).toBe(later(2).toISOString());
			expect(await setArchived(db, trainer, id, false, later(4))).toEqual(DONE);
			expect(await findCrew(db, trainer, id)).toMatchObject({ name: 'New', archivedAt: null });
			expect((await notesOf(id)).map((one) => one.kind)).toEqual(['crew-made', 'crew-changed', 'crew-archived', 'crew-changed']);
		});

		it('gets trainers from the employer alone, and only the organisation’s staff', async () => {
			const id = (await makeCrew(db, employer, 'Towers', NOW)) ?? '';
			expect(await findCrew(db, colleague, id)).toBeNull();
			expect(await assignTrainer(db, trainer, id, colleague.id, NOW)).toEqual(NOT_FOUND);
			expect(await assignTrainer(db, employer, id, stranger.id, NOW)).toEqual(NOT_FOUND);
			expect(await assignTrainer(db, employer, id, await aLearner(db, organisation, number()), NOW)).toEqual(NOT_FOUND);
			expect(await assignTrainer(db, stranger, id, stranger.id, NOW)).toEqual(NOT_FOUND);
			expect(await assignTrainer(db, employer, id, colleague.id, NOW)).toEqual(DONE);
			expect((await findCrew(db, colleague, id))?.id).toBe(id);
			expect(await releaseTrainer(db, colleague, id, colleague.id, NOW)).toEqual(NOT_FOUND);
			expect(await releaseTrainer(db, employer, id, colleague.id, NOW)).toEqual(DONE);
			expect(await findCrew(db, colleague, id)).toBeNull();
		});
	});

	describe('a person on the list', () => {
		it('is added without a PIN, and noted', async () => {
			const entry = { name: 'Marit Oslo', number: number() };
			const added = await addToCrew(db, trainer, crew.id, entry, NOW);
			if (added.kind !== 'added') throw new Error(added.kind);
			expect(await learnersOf(db, trainer, crew.id)).toContainEqual({ id: added.person, ...entry, joined: false, since: NOW.toISOString() });
			expect(await notesOf(added.person)).toEqual([{ kind: 'learner-added', actor: trainer.id }]);
		});

		it('twice on one list is once; on a second list it is the same person', async () => {
			const entry = { name: 'Amadou Vale', number: number() };
			const second = await aCrew(db, organisation, [trainer]);
			const added = await addToCrew(db, trainer, crew.id, entry, NOW);
			expect(await addToCrew(db, trainer, crew.id, entry, NOW)).toEqual({ kind: 'on-list' });
			expect(await addToCrew(db, trainer, second.id, { ...entry, name: 'VALE Amadou' }, NOW)).toEqual(added);
		});

		it('added twice at once is one person', async () => {
			const entry = { name: 'Jo Marchetti', number: number() };
			const outcomes = await Promise.all([1, 2, 3].map(() => addToCrew(db, trainer, crew.id, entry, NOW)));
			expect(outcomes.map((one) => one.kind).sort()).toEqual(['added', 'on-list', 'on-list']);
			const people = await db.selectFrom('person').select('id').where('personal_number', '=', entry.number).execute();
			expect(people).toHaveLength(1);
		});

		it('may have the number of somebody in another organisation, not of somebody here', async () => {
			const taken = number();
			await aLearner(db, stranger.organisation, taken, [], 'Sefa Lindt');
			expect((await addToCrew(db, trainer, crew.id, { name: 'Nadia Rook', number: taken }, NOW)).kind).toBe('added');
			expect(await addToCrew(db, trainer, crew.id, { name: 'Sefa Lindt', number: taken }, NOW)).toEqual({ kind: 'number-taken' });
		});

		it('is not added to a crew that was put away, or is another’s', async () => {
			const away = await aCrew(db, organisation, [trainer]);
			await setArchived(db, trainer, away.id, true, NOW);
			const entry = { name: 'Dario Penn', number: number() };
			expect(await addToCrew(db, trainer, away.id, entry, NOW)).toEqual({ kind: 'archived' });
			for (const other of [colleague, stranger]) expect(await addToCrew(db, other, crew.id, entry, NOW)).toEqual(NOT_FOUND);
			expect(await db.selectFrom('person').select('id').where('personal_number', '=', entry.number).execute()).toEqual([]);
		});

		it('is moved between own crews, never into or out of another’s', async () => {
			const person = await aLearner(db, organisation, number(), [crew]);
			const [own, foreign] = [await aCrew(db, organisation, [trainer]), await aCrew(db, organisation, [colleague])];
			expect(await moveToCrew(db, trainer, crew.id, person, foreign.id, NOW)).toEqual(NOT_FOUND);
			expect(await moveToCrew(db, colleague, crew.id, person, foreign.id, NOW)).toEqual(NOT_FOUND);
			expect(await moveToCrew(db, trainer, own.id, person, crew.id, NOW)).toEqual(NOT_FOUND);
			expect(await moveToCrew(db, trainer, crew.id, person, own.id, NOW)).toEqual(DONE);
			expect((await learnersOf(db, trainer, own.id)).map((one) => one.id)).toEqual([person]);
			expect((await learnersOf(db, trainer, crew.id)).map((one) => one.id)).not.toContain(person);
			expect(await notesOf(person)).toEqual([{ kind: 'learner-moved', actor: trainer.id }]);
		});

		it('is taken off, and is still the organisation’s', async () => {
			const entry = { name: 'Wen Abara', number: number() };
			const person = await aLearner(db, organisation, entry.number, [crew], entry.name);
			for (const other of [colleague, stranger]) expect(await takeOffCrew(db, other, crew.id, person, NOW)).toEqual(NOT_FOUND);
			expect(await takeOffCrew(db, trainer, crew.id, person, NOW)).toEqual(DONE);
			expect(await takeOffCrew(db, trainer, crew.id, person, NOW)).toEqual(NOT_FOUND);
			expect(await addToCrew(db, trainer, crew.id, entry, NOW)).toEqual({ kind: 'added', person });
		});

		it('whose PIN is reset is signed out everywhere, may try again, and joins with a new one', async () => {
			const entry = { name: 'Priya Holm', number: number() };
			const person = await aLearner(db, organisation, entry.number, [crew], entry.name);
			const claim = { code: crew.joinCode, ...entry };
			await joinCrew(db, { claim, pin: '482917', again: '482917', guest: null }, 'here', NOW);
			const jar = new Map<string, string>();
			const cookies = { get: (name: string) => jar.get(name), set: (name: string, value: string) => void jar.set(name, value), delete: (name: string) => void jar.delete(name) };
			await startSession(db, cookies, false, person, NOW);
			await db.insertInto('throttle').values({ key: `account:${person}`, failures: 10, last_at: NOW.toISOString(), wait_until: null }).execute();
			const listed = async () => (await crewPeople(db, trainer, crew.id, NOW)).find((one) => one.id === person);
			expect(await listed()).toMatchObject({ joined: true, locked: true });
			const signIn = (pin: string) => signInLearner(db, { number: entry.number, pin, crewCode: '' }, 'here', later(5));
			expect(await signIn('482917')).toEqual({ kind: 'refused', why: 'locked' });
			for (const other of [colleague, stranger]) expect(await resetPin(db, other, crew.id, person, NOW)).toEqual(NOT_FOUND);
			expect(await resetPin(db, trainer, crew.id, person, later(6))).toEqual(DONE);
			expect(await listed()).toMatchObject({ joined: false, locked: false });
			expect((await whoIs(db, cookies, false, later(7))).kind).toBe('guest');
			expect(await signIn('482917')).toEqual({ kind: 'refused', why: 'wrong' });
			expect((await joinCrew(db, { claim, pin: '719284', again: '719284', guest: null }, 'here', later(8))).kind).toBe('joined');
			expect((await signIn('719284')).kind).toBe('signed-in');
			expect((await notesOf(person)).map((one) => one.kind)).toContain('pin-reset');
		});
	});

	describe('the line of how far somebody is', () => {
		it('tells lessons, the last day and the passed final check; nothing of who has not begun', async () => {
			const [idle, busy, done] = [await aLearner(db, organisation, number()), await aLearner(db, organisation, number()), await aLearner(db, organisation, number())];
			const step = (person: string, seq: number, day: string) =>
				db
					.insertInto('course_event')
					.values({
						id: randomUUID(),
						person_id: person,
						seq,
						lesson: 'stages',
						kind: 'shown',
						sent: 'null',
						payload: payloadText({ record: { kind: 'shown', lesson: 'stages', step: seq } }),
						day,
						at: NOW.toISOString()
					})
					.execute();
			await step(busy, 1, '2026-11-23');
			await step(busy, 2, '2026-11-24');
			await step(done, 1, '2026-11-20');
			const check = randomUUID();
			await db
				.insertInto('check_try')
				.values({ id: check, person_id: done, lesson: 'final', nth: 1, rule: '{}', seed: '1', language: 'en', supervision: null, day: '2026-11-20', at: NOW.toISOString() })
				.execute();
			await db
				.insertInto('completion')
				.values({ id: randomUUID(), organisation_id: organisation, person_id: done, course: 'lanyard', version: 1, check_id: check, supervised: 0, language: 'en', day: '2026-11-20', at: NOW.toISOString() })
				.execute();
			expect(await progressOf(db, [idle, busy, done], NOW)).toEqual(
				new Map([
					[busy, { passed: 0, of: 8, finished: false, stuck: [], lastDay: '2026-11-24' }],
					[done, { passed: 0, of: 8, finished: true, stuck: [], lastDay: '2026-11-20' }]
				])
			);
			expect(await db.selectFrom('course_start').select('person_id').where('person_id', '=', idle).execute()).toEqual([]);
		});

		it('names the lesson in which a person practised much and was never ready', async () => {
			const person = await aLearner(db, organisation, number(), [crew]);
			const outcome = { task: 'label-roof', kind: 'roof', difficulty: 'easy', day: '2026-11-24', aided: false, credits: [{ cell: 'label-and-mass', skills: [], right: false }] } as const;
			const record = { kind: 'answered', lesson: 'label', right: false, outcome } as const;
			for (let seq = 1; seq <= STUCK_AFTER + 1; seq += 1) {
				const stuck = (await progressOf(db, [person], NOW)).get(person)?.stuck ?? [];
				expect(stuck, `after ${String(seq - 1)} problems`).toEqual([]);
				await db
					.insertInto('course_event')
					.values({ id: randomUUID(), person_id: person, seq, lesson: 'label', kind: 'answered', sent: 'null', payload: payloadText({ record }), day: '2026-11-24', at: NOW.toISOString() })
					.execute();
			}
			expect((await progressOf(db, [person], NOW)).get(person)?.stuck).toEqual(['label']);
		});
	});

	describe('the final check', () => {
		async function tried(person: string, nth: number): Promise<void> {
			const row = { id: randomUUID(), person_id: person, lesson: 'final', nth, rule: '{}', seed: '1', language: 'en', supervision: null, day: '2026-11-25', at: NOW.toISOString() };
			await db.insertInto('check_try').values(row).execute();
		}

		it('is unlocked once the tries are used up, each time anew', async () => {
			const person = await aLearner(db, organisation, number(), [crew]);
			const unlock = (who = trainer) => unlockCheck(db, who, crew.id, person, NOW);
			expect(await unlock()).toEqual({ kind: 'not-used-up' });
			await tried(person, 1);
			expect(await unlock()).toEqual({ kind: 'not-used-up' });
			await tried(person, 2);
			for (const other of [colleague, stranger]) expect(await unlock(other)).toEqual(NOT_FOUND);
			const usedUp = async () => (await crewPeople(db, trainer, crew.id, NOW)).find((one) => one.id === person)?.usedUp;
			expect(await usedUp()).toBe(true);
			expect(await unlock()).toEqual(DONE);
			expect(await usedUp()).toBe(false);
			expect(await unlock()).toEqual({ kind: 'not-used-up' });
			expect(await triesOf(db, [person], 'final')).toEqual(new Map([[person, { made: 2, unlockedAfter: 2 }]]));
			await tried(person, 3);
			await tried(person, 4);
			expect(await unlock(employer)).toEqual(DONE);
			expect((await notesOf(person)).map((one) => one.kind)).toEqual(['check-unlocked', 'check-unlocked']);
		});

		it('is opened for two hours by who is present; the same opening twice is one', async () => {
			const person = await aLearner(db, organisation, number(), [crew]);
			const opening = { place: 'Site hut, Pier 4', identified: 'Site badge with photo' };
			for (const other of [colleague, stranger]) expect(await openCheck(db, other, crew.id, person, opening, NOW)).toEqual(NOT_FOUND);
			expect(await openCheck(db, trainer, crew.id, person, opening, NOW)).toEqual(DONE);
			expect(await openCheck(db, trainer, crew.id, person, opening, later(5))).toEqual(DONE);
			const open = await openingsOf(db, [person], later(7199).toISOString());
			expect(open).toEqual([{ id: expect.any(String), person, trainer: trainer.id, ...opening, expiresAt: '2026-11-25T11:00:00.000Z' }]);
			expect(await openingsOf(db, [person], later(7200).toISOString())).toEqual([]);
			expect(await notesOf(person)).toEqual([{ kind: 'check-opened', actor: trainer.id }]);
		});
	});
});
