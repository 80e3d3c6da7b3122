import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LESSON_IDS } from '#lib/course/index.ts';
import { lessonState } from '#lib/flow/index.ts';
import { HANDS_ON_CHECKS, NO_END, addDays, stateOn, validityOf, type PersonRecord } from '#lib/records/index.ts';
import { beginCheck, checkDesk } from '#lib/server/course/checks.ts';
import { courseOf } from '#lib/server/course/state.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { setSecret } from '#lib/server/db/people.ts';
import { countOpen, listOrdered } from '#lib/server/db/retraining.ts';
import { crewPeople } from '#lib/server/people/crew-list.ts';
import { courseInProcess, goThroughCourse } from '#lib/server/people/demo-course.ts';
import { progressOf } from '#lib/server/people/progress.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import { signHandsOn, toSign, type HandsOnEntry } from '#lib/server/people/sign-off.ts';
import type { Person } from '#lib/server/people/who.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { markLeft } from '#lib/server/records/leaving.ts';
import { orderRetraining, peopleToOrder, withdrawRetraining } from '#lib/server/records/retraining.ts';
import { reinstateRecord, revokeRecord } from '#lib/server/records/revoking.ts';
import { CourseDriver } from '../../../support/course-driver.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, type TestCrew } from '../people/organisation.ts';

const PASSWORD = 'seven ropes over the dock';
/** Local day of NOW. */
const TODAY = '2026-11-25';
const SOON = 30;

/** @returns the time so many days after NOW. */
const days = (count: number): Date => new Date(NOW.getTime() + count * 86_400_000);

describe.each(DATABASES)('retraining on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let trainer: Person;
	let crew: TestCrew;
	let count = 0;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer');
		trainer = await aMember(db, organisation, 'trainer');
		await setSecret(db, trainer.id, await hashSecret('password', PASSWORD));
		crew = await aCrew(db, organisation, [trainer]);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function learner(crews: readonly TestCrew[] = [crew]): Promise<Person> {
		const id = await aLearner(db, organisation, `R-${String((count += 1))}`, crews);
		const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', id).executeTakeFirstOrThrow();
		return { kind: 'person', id, organisation, role: 'learner', name: 'Dario Penn', answerer, language: null };
	}

	async function sign(person: string, day: string, now: Date): Promise<void> {
		const entry: HandsOnEntry = { id: randomUUID(), checks: HANDS_ON_CHECKS, place: 'Training yard', day, capacity: 'competent-person' };
		const built = await toSign(db, trainer, crew.id, person, entry, 'en', now);
		if (built.kind !== 'to-sign') throw new Error(built.kind);
		expect(await signHandsOn(db, trainer, crew.id, person, { entry, shown: built.shown, password: PASSWORD, language: 'en' }, '192.0.2.9', now)).toEqual({ kind: 'signed' });
	}

	const stateAt = (of: PersonRecord, day: string) => stateOn({ until: validityOf(of).until, begun: true }, day, SOON);
	const openOrder = async (person: string): Promise<string> => (await recordOf(db, person)).orders.at(-1)?.entry.id ?? '';

	it('the same order for one person twice on a day is one, in the same moment too; another one stands by itself', async () => {
		const who = await learner();
		const due = addDays(TODAY, 8);
		const given = () => orderRetraining(db, employer, { people: [who.id] }, { reason: 'incident', due }, NOW);
		for (const told of await Promise.all([given(), given(), given()])) expect(told).toEqual({ kind: 'ordered', people: 1 });
		expect(await given()).toEqual({ kind: 'ordered', people: 1 });
		expect((await recordOf(db, who.id)).orders).toHaveLength(1);
		await withdrawRetraining(db, employer, who.id, await openOrder(who.id), NOW);
		for (const more of [{}, { reason: 'expiry' }, { due: addDays(TODAY, 9) }] as const) await orderRetraining(db, employer, { people: [who.id] }, { reason: 'incident', due, ...more }, NOW);
		expect((await recordOf(db, who.id)).orders.map((one) => one.withdrawn)).toEqual([true, false, false, false]);
	});

	it('for a list is given once, in the same moment too: with others that have an open order than was shown, nothing is ordered', async () => {
		const people = [(await learner()).id, (await learner()).id, (await learner()).id];
		await orderRetraining(db, employer, { people: people.slice(0, 1) }, { reason: 'expiry', due: addDays(TODAY, 4) }, NOW);
		const given = () => orderRetraining(db, employer, { people }, { reason: 'incident', due: addDays(TODAY, 8), withOpen: 1 }, NOW);
		const told = await Promise.all([given(), given()]);
		expect(told.map(({ kind }) => kind).toSorted()).toEqual(['changed', 'ordered']);
		for (const [i, id] of people.entries()) expect((await recordOf(db, id)).orders).toHaveLength(i === 0 ? 2 : 1);
	});

	it('whoever was trained and is ordered again does the lessons, the final check and the hands-on part once more, and is current again', async () => {
		const who = await learner();
		await goThroughCourse(db, who, NOW);
		await sign(who.id, TODAY, days(1));
		expect(stateAt(await recordOf(db, who.id), TODAY)).toBe('current');
		expect(await beginCheck(db, who, 'final', 'en', days(1))).toEqual({ kind: 'shut', why: 'passed' });
		const known = (await courseOf(db, who.id, days(1))).state.mastery;

		expect(await orderRetraining(db, employer, { people: [who.id] }, { reason: 'expiry', due: addDays(TODAY, 20) }, days(2))).toEqual({ kind: 'ordered', people: 1 });
		// It holds until the due day, and through the whole of it: 29 CFR 1926.503(c) fixes no period; the employer's order does; own reading.
		const ordered = await recordOf(db, who.id);
		expect([addDays(TODAY, 2), addDays(TODAY, 20), addDays(TODAY, 21)].map((day) => stateAt(ordered, day))).toEqual(['expires-soon', 'expires-soon', 'expired']);
		expect(validityOf(ordered)).toMatchObject({ due: addDays(TODAY, 20), detail: 'retraining-ordered' });

		// The lessons are open again, what is known of the skill stays, and the trainer sees nobody finished.
		const { state } = await courseOf(db, who.id, days(2));
		expect(LESSON_IDS.map((id) => [lessonState(state, id).place, lessonState(state, id).context.passed])).toEqual(LESSON_IDS.map(() => ['practising', false]));
		expect(state.mastery).toEqual(known);
		expect((await progressOf(db, [who.id], days(2))).get(who.id)).toMatchObject({ passed: 0, finished: false, lastDay: TODAY });
		expect(await beginCheck(db, who, 'final', 'en', days(2))).toEqual({ kind: 'shut', why: 'not-ready' });
		expect(await checkDesk(db, who, 'final', days(2))).toMatchObject({ view: undefined, tries: 0 });

		await goThroughCourse(db, who, days(3));
		const passed = await recordOf(db, who.id);
		expect(passed.trainings.map((one) => [one.run, one.signOff?.run])).toEqual([[0, 0], [1, undefined]]);
		expect(validityOf(passed)).toMatchObject({ due: addDays(TODAY, 20), detail: 'sign-off-missing' });
		expect(await beginCheck(db, who, 'final', 'en', days(4))).toEqual({ kind: 'shut', why: 'passed' });
		// The second try at the check, drawn anew: nothing of the first is asked again where the stock allows it.
		expect(await db.selectFrom('check_try').select('nth').where('person_id', '=', who.id).where('lesson', '=', 'final').orderBy('nth').execute()).toEqual([{ nth: 1 }, { nth: 2 }]);

		await sign(who.id, addDays(TODAY, 4), days(4));
		const whole = await recordOf(db, who.id);
		expect(whole.orders.map((one) => one.done)).toEqual([true]);
		expect(validityOf(whole)).toMatchObject({ due: undefined, detail: undefined });
		expect(stateAt(whole, addDays(TODAY, 21))).toBe('current');
	}, 30_000);

	it('an order because of what was seen or happened ends at once what was valid, and withdrawing it brings it back', async () => {
		const who = await learner();
		await goThroughCourse(db, who, NOW);
		await sign(who.id, TODAY, days(1));
		await orderRetraining(db, employer, { people: [who.id] }, { reason: 'incident', due: addDays(TODAY, 30) }, days(2));
		// 29 CFR 1926.503(c)(3): inadequacies in knowledge or use show that understanding is not retained; from memory.
		expect(stateAt(await recordOf(db, who.id), addDays(TODAY, 2))).toBe('expired');
		const order = await openOrder(who.id);
		expect(await withdrawRetraining(db, employer, who.id, order, days(3))).toEqual({ kind: 'withdrawn' });
		expect(await withdrawRetraining(db, employer, who.id, order, days(3))).toEqual({ kind: 'withdrawn' });
		const back = await recordOf(db, who.id);
		expect(stateAt(back, addDays(TODAY, 3))).toBe('current');
		expect(back.entries.filter(({ entry }) => entry.kind === 'retraining-withdrawn')).toHaveLength(1);
		expect(await beginCheck(db, who, 'final', 'en', days(3))).toEqual({ kind: 'shut', why: 'passed' });
		// What the order opened stays open.
		expect(lessonState((await courseOf(db, who.id, days(3))).state, 'stages').place).toBe('practising');
	}, 20_000);

	it('a check that runs goes on over an order, and counts for the new run as it ends in it', async () => {
		const who = await learner();
		const driver = new CourseDriver(courseInProcess(db, who, () => NOW));
		await driver.practise('stages', (await courseOf(db, who.id, NOW)).state);
		const begun = await beginCheck(db, who, 'stages', 'en', NOW);
		if (begun.kind !== 'done') throw new Error(begun.kind);
		await orderRetraining(db, employer, { people: [who.id] }, { reason: 'yearly-review', due: addDays(TODAY, 9) }, NOW);
		expect(lessonState((await courseOf(db, who.id, NOW)).state, 'stages').place).toBe('checking');
		expect((await checkDesk(db, who, 'stages', NOW)).view?.id).toBe(begun.view.id);
		expect(await driver.check('stages')).toBe('passed');
		expect(lessonState((await courseOf(db, who.id, NOW)).state, 'stages').place).toBe('passed');
		// A further order after its end takes it back.
		await orderRetraining(db, employer, { people: [who.id] }, { reason: 'change-of-work', due: addDays(TODAY, 9) }, NOW);
		expect(lessonState((await courseOf(db, who.id, NOW)).state, 'stages').place).toBe('practising');
		expect((await checkDesk(db, who, 'stages', NOW)).view).toBeUndefined();
	});

	it('tries that were used up before an order lock nobody out after it', async () => {
		const who = await learner();
		const usedUp = async () => (await crewPeople(db, trainer, crew.id, days(9))).find((one) => one.id === who.id)?.usedUp;
		for (let day = 1; (await usedUp()) !== true && day < 5; day += 1) await goThroughCourse(db, who, days(day), 'final', (_nth, { lesson }) => lesson !== 'final');
		expect(await usedUp()).toBe(true);
		await orderRetraining(db, employer, { people: [who.id] }, { reason: 'seen-inadequate', due: addDays(TODAY, 30) }, days(9));
		expect(await usedUp()).toBe(false);
		expect(await checkDesk(db, who, 'final', days(9))).toMatchObject({ tries: 0, shut: 'not-ready' });
		await goThroughCourse(db, who, days(10));
		expect((await recordOf(db, who.id)).trainings).toHaveLength(1);
	}, 30_000);

	it('a crew is ordered at once; who left and who is no learner is left out, and lessons never begun stay as they were', async () => {
		const own = await aCrew(db, organisation, [trainer]);
		const people: Person[] = [];
		for (let i = 0; i < 5; i += 1) people.push(await learner([own]));
		const [begun, gone, ...others] = people;
		if (begun === undefined || gone === undefined) throw new Error('nobody');
		await new CourseDriver(courseInProcess(db, begun, () => NOW)).practise('stages', (await courseOf(db, begun.id, NOW)).state);
		await markLeft(db, employer, gone.id, TODAY, NOW);
		const order = { reason: 'change-of-work', due: TODAY } as const;
		expect(await orderRetraining(db, employer, { crew: own.id }, order, NOW)).toEqual({ kind: 'ordered', people: 4 });
		expect((await recordOf(db, gone.id)).orders).toEqual([]);
		for (const one of [begun, ...others]) expect((await recordOf(db, one.id)).orders.map(({ entry }) => entry.reason)).toEqual(['change-of-work']);
		const events = await db.selectFrom('course_event').select(['person_id', 'lesson']).where('kind', '=', 'reopened').where('person_id', 'in', people.map(({ id }) => id)).execute();
		expect(events).toEqual([{ person_id: begun.id, lesson: 'stages' }]);
		expect(await orderRetraining(db, employer, { people: [gone.id, trainer.id, begun.id] }, order, NOW)).toEqual({ kind: 'ordered', people: 1 });
	});

	it('refuses a due day that is over or more than five years away, and finds nobody of another organisation', async () => {
		const who = await learner();
		const yesterday = addDays(TODAY, -1);
		expect(await orderRetraining(db, employer, { people: [who.id] }, { reason: 'expiry', due: yesterday }, NOW)).toEqual({ kind: 'due-past' });
		for (const due of ['2031-11-26', NO_END]) expect(await orderRetraining(db, employer, { people: [who.id] }, { reason: 'expiry', due }, NOW)).toEqual({ kind: 'due-far' });
		expect((await recordOf(db, who.id)).orders).toEqual([]);
		const stranger = await aMember(db, await anOrganisation(db), 'employer');
		const order = { reason: 'expiry', due: TODAY } as const;
		expect(await orderRetraining(db, stranger, { people: [who.id] }, order, NOW)).toEqual({ kind: 'not-found' });
		expect(await orderRetraining(db, stranger, { crew: crew.id }, order, NOW)).toEqual({ kind: 'not-found' });
		expect(await orderRetraining(db, trainer, { people: [who.id] }, order, NOW)).toEqual({ kind: 'not-found' });
		expect(await orderRetraining(db, employer, { people: [trainer.id] }, order, NOW)).toEqual({ kind: 'not-found' });
		expect((await recordOf(db, who.id)).orders).toEqual([]);
		await orderRetraining(db, employer, { people: [who.id] }, order, NOW);
		expect(await withdrawRetraining(db, stranger, who.id, await openOrder(who.id), NOW)).toEqual({ kind: 'not-found' });
		expect(await withdrawRetraining(db, employer, who.id, randomUUID(), NOW)).toEqual({ kind: 'not-found' });
	});

	it('two orders at once both stand, beside somebody who answers in the same moment', async () => {
		const who = await learner();
		const driver = new CourseDriver(courseInProcess(db, who, () => NOW));
		const state = await driver.practise('stages', (await courseOf(db, who.id, NOW)).state);
		const orders = (['incident', 'expiry'] as const).map((reason) => orderRetraining(db, employer, { people: [who.id] }, { reason, due: addDays(TODAY, 3) }, NOW));
		const [told] = await Promise.all([driver.answer('stages', state), ...orders]);
		expect(told).toBeDefined();
		expect((await recordOf(db, who.id)).orders.map((one) => [one.withdrawn, one.done])).toEqual([[false, false], [false, false]]);
		const seqs = await db.selectFrom('course_event').select('seq').where('person_id', '=', who.id).orderBy('seq').execute();
		expect(seqs.map(({ seq }) => seq)).toEqual(seqs.map((_, i) => i + 1));
		expect(await db.selectFrom('course_event').select('lesson').where('person_id', '=', who.id).where('kind', '=', 'reopened').execute()).toHaveLength(2);
	});

	it('lists what is open, the longest overdue first, and finds those whose training ends, without an order of theirs', async () => {
		const there = await anOrganisation(db);
		const boss = await aMember(db, there, 'employer');
		const people = await Promise.all(['A', 'B', 'C'].map((number) => aLearner(db, there, number)));
		const [first, second, third] = people;
		if (first === undefined || second === undefined || third === undefined) throw new Error('nobody');
		await orderRetraining(db, boss, { people: [first] }, { reason: 'expiry', due: addDays(TODAY, 8) }, NOW);
		await orderRetraining(db, boss, { people: [second] }, { reason: 'expiry', due: addDays(TODAY, 2) }, NOW);
		expect((await listOrdered(db, there, { from: 0, count: 5 })).map(({ id, due }) => [id, due])).toEqual([[second, addDays(TODAY, 2)], [first, addDays(TODAY, 8)]]);
		expect(await countOpen(db, there, addDays(TODAY, 3))).toEqual({ open: 2, overdue: 1 });
		expect(await peopleToOrder(db, boss, { kind: 'ends', from: '0001-01-01', to: addDays(TODAY, 400) })).toEqual([]);
		await db.updateTable('training_state').set({ until: addDays(TODAY, 5) }).where('person_id', 'in', people).execute();
		expect(await peopleToOrder(db, boss, { kind: 'ends', from: TODAY, to: addDays(TODAY, 5) })).toEqual([third]);
		expect(await peopleToOrder(db, boss, { kind: 'ends', from: TODAY, to: addDays(TODAY, 4) })).toEqual([]);
		expect(await peopleToOrder(db, boss, { kind: 'crew', crew: crew.id })).toBeNull();
	});

	it('a record that is taken back counts no more, and counts again when that was a mistake; each is one entry', async () => {
		const who = await learner();
		await goThroughCourse(db, who, NOW);
		await sign(who.id, TODAY, days(1));
		const [training] = (await recordOf(db, who.id)).trainings;
		if (training?.signOff === undefined) throw new Error('no record');
		for (const id of [training.id, training.signOff.id]) {
			for (let i = 0; i < 2; i += 1) expect(await revokeRecord(db, employer, who.id, id, 'wrong-person', days(2))).toEqual({ kind: 'revoked' });
			expect(validityOf(await recordOf(db, who.id)).until).toBeNull();
			for (let i = 0; i < 2; i += 1) expect(await reinstateRecord(db, employer, who.id, id, days(3))).toEqual({ kind: 'reinstated' });
			expect(stateAt(await recordOf(db, who.id), addDays(TODAY, 3))).toBe('current');
		}
		const kinds = (await recordOf(db, who.id)).entries.map(({ entry }) => entry.kind).filter((kind) => kind === 'revoked' || kind === 'reinstated');
		expect(kinds).toEqual(['revoked', 'reinstated', 'revoked', 'reinstated']);
		const stranger = await aMember(db, await anOrganisation(db), 'employer');
		expect(await revokeRecord(db, stranger, who.id, training.id, 'other', days(4))).toEqual({ kind: 'not-found' });
		expect(await revokeRecord(db, trainer, who.id, training.id, 'other', days(4))).toEqual({ kind: 'not-found' });
		expect(await revokeRecord(db, employer, (await learner()).id, training.id, 'other', days(4))).toEqual({ kind: 'not-found' });
		expect(await reinstateRecord(db, employer, who.id, randomUUID(), days(4))).toEqual({ kind: 'not-found' });
		const notes = await db.selectFrom('audit').select('kind').where('subject_id', '=', who.id).where('kind', 'in', ['record-revoked', 'record-reinstated']).execute();
		expect(notes).toHaveLength(4);
	}, 20_000);
});
