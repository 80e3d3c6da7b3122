import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LESSON_IDS, type CoursePlace } from '#lib/course/index.ts';
import { lessonState, type CourseState } from '#lib/flow/index.ts';
import { writeCheck } from '#lib/server/db/checks.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { closePerson } from '#lib/server/db/people.ts';
import {
	answerItem,
	beginCheck,
	checkDesk,
	completionsOf,
	courseOf,
	handIn,
	receiveEvent,
	shippedVersions,
	toldCheck,
	type CheckItem,
	type CheckResult,
	type Person
} from '#lib/server/index.ts';
import { drawPicture } from '#lib/findings/index.ts';
import type { Evidence } from '#lib/server/course/origin.ts';
import { replayed } from '#lib/server/course/state.ts';
import { problemOf } from '../../../support/answered.ts';
import { CourseDriver, answerEvent, checkAnswer, type Plan, type Transport } from '../../../support/course-driver.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, aMember, anOrganisation } from '../people/organisation.ts';

describe.each(DATABASES)('the course on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let trainer: Person;
	let number = 0;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function learner(): Promise<Person> {
		const id = await aLearner(db, organisation, `C${String(++number)}`);
		const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', id).executeTakeFirstOrThrow();
		return { kind: 'person', id, organisation, role: 'learner', name: 'Ines Okoro', answerer, language: null };
	}

	const stateOf = async (who: Person): Promise<CourseState> => (await courseOf(db, who.id, NOW)).state;

	/** Straight to the functions of the server. */
	function transport(who: Person, at: () => Date = () => NOW): Transport {
		const checked = (result: CheckResult) => {
			if (result.kind !== 'done') throw new Error(JSON.stringify(result));
			return toldCheck(result.view);
		};
		return {
			event: async (event) => {
				const receipt = await receiveEvent(db, who, event, shippedVersions, at());
				if (receipt.kind !== 'stored') throw new Error(JSON.stringify(receipt.problems));
				return receipt;
			},
			begin: async (lesson) => checked(await beginCheck(db, who, lesson, 'en', at())),
			answer: async (check, body) => checked(await answerItem(db, who, check, body, at())),
			page: async (check, body) => checked(await handIn(db, who, check, body, at())),
			items: async (check) => itemsIn(check)
		};
	}

	/** The items of a check's newest page, as they are stored. */
	async function itemsIn(check: string): Promise<readonly CheckItem[]> {
		const rows = await db.selectFrom('check_event').select('payload').where('check_id', '=', check).where('kind', 'in', ['page', 'handed-in']).orderBy('seq').execute();
		const last = rows.at(-1);
		if (last === undefined) throw new Error('no page');
		return (JSON.parse(last.payload) as { items: readonly CheckItem[] }).items;
	}

	const drive = (who: Person, plan?: Plan, at?: () => Date) => new CourseDriver(transport(who, at), plan);

	/** A learner who has got as far as the final check. */
	async function beforeFinal(): Promise<Person> {
		const who = await learner();
		const driver = drive(who);
		for (const lesson of LESSON_IDS) {
			await driver.practise(lesson, await stateOf(who));
			expect(await driver.check(lesson)).toBe('passed');
		}
		return who;
	}

	it('lets a learner who answers rightly through, and enters the completion once', async () => {
		const who = await learner();
		const driver = drive(who);
		expect(await driver.course(await stateOf(who))).toBe('passed');
		const completions = await completionsOf(db, who.id);
		expect(completions).toHaveLength(1);
		expect(completions[0]).toMatchObject({ course: 'lanyard-orientation', version: 1, supervised: 0, organisation_id: organisation });
		const again = await beginCheck(db, who, 'final', 'en', NOW);
		expect(again).toEqual({ kind: 'shut', why: 'passed' });
		// Two minutes a problem: an orientation of three hours has ninety.
		expect(driver.answered).toBeLessThan(90);
	});

	it('stores what replays to the same state from nothing', async () => {
		const who = await learner();
		await drive(who, (nth) => nth % 5 !== 1).practise('stages', await stateOf(who));
		const rows = await db.selectFrom('course_event').select('payload').where('person_id', '=', who.id).orderBy('seq').execute();
		const { seed } = await stateOf(who);
		expect(replayed(seed, rows.map((row) => row.payload))).toEqual(await stateOf(who));
	});

	it('does not open a lesson before the one before it was ready', async () => {
		const who = await learner();
		const receipt = await receiveEvent(db, who, { id: randomUUID(), kind: 'shown', lesson: 'label', step: 0 }, shippedVersions, NOW);
		expect(receipt).toMatchObject({ kind: 'refused', status: 409 });
	});

	it('brings half-done examples after a first wrong answer, then practice', async () => {
		const who = await learner();
		const driver = drive(who, (nth) => nth > 0);
		await drive(who).practise('stages', await stateOf(who));
		await drive(who).check('stages');
		await driver.show('label');
		const { state } = await driver.answer('label', await stateOf(who));
		expect(lessonState(state, 'label')).toMatchObject({ place: 'fading', next: { halfDone: 0 } });
		const ready = await driver.practise('label', state);
		expect(lessonState(ready, 'label').place).toBe('ready');
	});

	it('counts an event that is sent twice once, and refuses its id for another', async () => {
		const who = await learner();
		const driver = drive(who);
		const state = await driver.show('stages');
		const event = answerEvent('stages', lessonState(state, 'stages').next ?? never(), true);
		const [one, two] = await Promise.all([transport(who).event(event), transport(who).event(event)]);
		expect(one.state).toEqual(two.state);
		expect(lessonState(one.state, 'stages').context.answered).toBe(1);
		const other = await receiveEvent(db, who, { ...event, lesson: 'stages', kind: 'went-on', task: undefined }, shippedVersions, NOW);
		expect(other).toMatchObject({ kind: 'refused' });
	});

	it('keeps with every answer what was drawn and from what, so that it can be drawn again', async () => {
		const who = await learner();
		const driver = drive(who);
		await driver.practise('stages', await stateOf(who));
		await driver.check('stages');
		await driver.practise('label', await stateOf(who));
		await driver.check('label');
		const details = await db.selectFrom('course_event').select('payload').where('person_id', '=', who.id).where('kind', '=', 'answered').execute();
		const kept = details.flatMap((row) => (JSON.parse(row.payload) as { detail?: { evidence: Evidence } }).detail?.evidence ?? []);
		const handed = await db.selectFrom('check_event').select('payload').where('kind', '=', 'handed-in').execute();
		const results = handed.flatMap((row) => (JSON.parse(row.payload) as { results: readonly { evidence: Evidence }[] }).results);
		const all = [...kept, ...results.map((one) => one.evidence)];
		expect(all.length).toBeGreaterThan(6);
		for (const { origin, drawn } of all) {
			const again = 'picture' in origin ? drawPicture(String(origin['picture']), Number(origin['seed'])).shown : problemOf(String(origin['scenario']), Number(origin['seed'])).drawn;
			expect(drawn).toEqual(JSON.parse(JSON.stringify(again)));
		}
	});

	it('lets one of two tabs answer the problem at hand; the other moves nothing', async () => {
		const who = await learner();
		const state = await drive(who).show('stages');
		const next = lessonState(state, 'stages').next ?? never();
		const told = await Promise.all([transport(who).event(answerEvent('stages', next, true)), transport(who).event(answerEvent('stages', next, false))]);
		expect(told.filter((one) => one.counts)).toHaveLength(1);
		expect(lessonState(await stateOf(who), 'stages').context.answered).toBe(1);
	});

	it('takes an answer to another seed than the one at hand for practice that moves nothing', async () => {
		const who = await learner();
		const state = await drive(who).show('stages');
		const next = lessonState(state, 'stages').next ?? never();
		const told = await transport(who).event(answerEvent('stages', { ...next, seed: next.seed + 1 }, true));
		expect(told.counts).toBe(false);
		expect(await stateOf(who)).toEqual(state);
	});

	it('never takes a score, a grade or a state from the client', async () => {
		const who = await learner();
		const state = await drive(who).show('stages');
		const event = answerEvent('stages', lessonState(state, 'stages').next ?? never(), false);
		for (const extra of [{ right: true }, { score: 1 }, { state: {} }, { outcome: { aided: false } }]) {
			const receipt = await receiveEvent(db, who, { ...event, ...extra }, shippedVersions, NOW);
			expect(receipt).toMatchObject({ kind: 'refused', status: 400 });
		}
	});

	it('never counts a helped problem toward ready', async () => {
		const who = await learner();
		const driver = drive(who);
		let state = await driver.show('stages');
		for (let i = 0; i < 12; i += 1) {
			if (lessonState(state, 'stages').place === 'showing') state = await driver.show('stages');
			const { next } = lessonState(state, 'stages');
			if (next === undefined) throw new Error('nothing asked');
			await transport(who).event({ id: randomUUID(), kind: 'helped', lesson: 'stages', task: next.task, seed: next.seed, level: 1 });
			({ state } = await driver.answer('stages', state));
		}
		expect(lessonState(state, 'stages').place).not.toBe('ready');
	});

	it('opens no check before the lesson is ready, and no final check before all lessons are passed', async () => {
		const who = await learner();
		expect(await beginCheck(db, who, 'stages', 'en', NOW)).toEqual({ kind: 'shut', why: 'not-ready' });
		expect(await beginCheck(db, who, 'final', 'en', NOW)).toEqual({ kind: 'shut', why: 'not-ready' });
	});

	it('sends a learner who fails a lesson check back to practice, and gives another form after it', async () => {
		const who = await learner();
		const state = await drive(who).practise('stages', await stateOf(who));
		expect(lessonState(state, 'stages').place).toBe('ready');
		expect(await drive(who, () => false).check('stages')).not.toBe('passed');
		const after = await stateOf(who);
		expect(lessonState(after, 'stages').place).toBe('practising');
		await drive(who).practise('stages', after);
		expect(await drive(who).check('stages')).toBe('passed');
		const tries = await db.selectFrom('check_try').select('id').where('person_id', '=', who.id).orderBy('nth').execute();
		const asked = await Promise.all(tries.map(async ({ id }) => (await itemsOf(id)).map((item) => `${item.task} ${item.seed}`)));
		expect(new Set(asked.flat()).size).toBe(asked.flat().length);
	});

	async function itemsOf(check: string): Promise<readonly CheckItem[]> {
		const rows = await db.selectFrom('check_event').select('payload').where('check_id', '=', check).where('kind', 'in', ['page', 'handed-in']).execute();
		return rows.flatMap((row) => (JSON.parse(row.payload) as { items: readonly CheckItem[] }).items);
	}

	it('begins one check however often it is asked for, and judges a page once', async () => {
		const who = await learner();
		await drive(who).practise('stages', await stateOf(who));
		const to = transport(who);
		const begun = await Promise.all([to.begin('stages'), to.begin('stages'), to.begin('stages')]);
		expect(new Set(begun.map((one) => one.id)).size).toBe(1);
		const [{ id, items }] = begun;
		for (const item of await to.items(id)) await to.answer(id, { id: randomUUID(), item: item.id, answer: checkAnswer(item, true) });
		const page = { id: randomUUID(), items: items.map((item) => item.id) };
		const ends = await Promise.all([to.page(id, page), to.page(id, page)]);
		expect(ends.map((one) => one.end)).toEqual(['passed', 'passed']);
		const handed = await db.selectFrom('check_event').select('id').where('check_id', '=', id).where('kind', '=', 'handed-in').execute();
		expect(handed).toHaveLength(1);
	});

	it('hands no page in with an empty item, and no page that is not at hand', async () => {
		const who = await learner();
		await drive(who).practise('stages', await stateOf(who));
		const check = await transport(who).begin('stages');
		const items = check.items.map((item) => item.id);
		expect(await handIn(db, who, check.id, { id: randomUUID(), items }, NOW)).toMatchObject({ kind: 'refused', status: 422 });
		expect(await handIn(db, who, check.id, { id: randomUUID(), items: ['i9'] }, NOW)).toMatchObject({ kind: 'refused', status: 409 });
	});

	it('tells a stranger’s check and none alike', async () => {
		const [who, other] = [await learner(), await learner()];
		await drive(who).practise('stages', await stateOf(who));
		const check = await transport(who).begin('stages');
		const [item] = await transport(who).items(check.id);
		if (item === undefined) throw new Error('no item');
		const body = { id: randomUUID(), item: item.id, answer: checkAnswer(item, true) };
		const foreign = await answerItem(db, other, check.id, body, NOW);
		expect(foreign).toEqual(await answerItem(db, other, randomUUID(), body, NOW));
		expect(foreign).toMatchObject({ kind: 'refused', status: 404 });
	});

	it('tells a browser nothing of seeds, plans or grades while a check runs', async () => {
		const who = await learner();
		await drive(who).practise('stages', await stateOf(who));
		const check = await transport(who).begin('stages');
		expect(Object.keys(check).sort()).toEqual(['end', 'id', 'items', 'lesson', 'nth', 'pages', 'place']);
		expect(check.items.map((item) => Object.keys(item).sort())).toEqual(check.items.map(() => ['filled', 'id']));
		const desk = await checkDesk(db, who, 'stages', NOW);
		expect(desk.view?.results).toEqual([]);
	});

	it('allows two final checks a day, then two in all until a trainer unlocks; every try has its own form', async () => {
		const who = await beforeFinal();
		const wrong = drive(who, () => false);
		expect(await wrong.check('final')).toBe('failed');
		const reopened = await stateOf(who);
		const again = LESSON_IDS.filter((id) => lessonState(reopened, id).place === 'practising');
		expect(again.length).toBeGreaterThan(0);
		expect(await beginCheck(db, who, 'final', 'en', NOW)).toEqual({ kind: 'shut', why: 'not-ready' });
		await redo(who, again);
		expect(await wrong.check('final')).toBe('failed');
		await redo(who, LESSON_IDS);
		const tomorrow = new Date(NOW.getTime() + 86_400_000);
		expect(await beginCheck(db, who, 'final', 'en', tomorrow)).toEqual({ kind: 'shut', why: 'locked' });
		await db.insertInto('check_unlock').values({ id: randomUUID(), person_id: who.id, trainer_id: trainer.id, after: 2, at: NOW.toISOString() }).execute();
		expect(await beginCheck(db, who, 'final', 'en', NOW)).toEqual({ kind: 'shut', why: 'tomorrow' });
		expect(await drive(who, undefined, () => tomorrow).check('final')).toBe('passed');
		const tries = await db.selectFrom('check_try').select('id').where('person_id', '=', who.id).where('lesson', '=', 'final').orderBy('nth').execute();
		const asked = await Promise.all(tries.map(async ({ id }) => (await itemsOf(id)).map((item) => `${item.task} ${item.seed}`)));
		expect(new Set(asked.flat()).size).toBe(asked.flat().length);
	});

	/** Practises opened lessons again and passes their checks. */
	async function redo(who: Person, lessons: readonly CoursePlace[]): Promise<void> {
		for (const lesson of LESSON_IDS) {
			if (!lessons.includes(lesson) || lessonState(await stateOf(who), lesson).context.passed) continue;
			await drive(who).practise(lesson, await stateOf(who));
			expect(await drive(who).check(lesson)).toBe('passed');
		}
	}

	it('marks a try supervised that a trainer has opened, once', async () => {
		const who = await beforeFinal();
		await db
			.insertInto('check_opening')
			.values({ id: randomUUID(), person_id: who.id, trainer_id: trainer.id, place: 'Training yard', identified: 'Site badge', at: NOW.toISOString(), expires_at: new Date(NOW.getTime() + 7_200_000).toISOString(), check_id: null })
			.execute();
		expect(await drive(who).check('final')).toBe('passed');
		expect(await completionsOf(db, who.id)).toMatchObject([{ supervised: 1 }]);
		expect((await checkDesk(db, who, 'final', NOW)).supervised).toBeNull();
	});

	it('calls a check unsupervised that was ended after the trainer’s time', async () => {
		const who = await beforeFinal();
		await db
			.insertInto('check_opening')
			.values({ id: randomUUID(), person_id: who.id, trainer_id: trainer.id, place: 'Training yard', identified: 'Site badge', at: NOW.toISOString(), expires_at: new Date(NOW.getTime() + 7_200_000).toISOString(), check_id: null })
			.execute();
		const begun = await transport(who).begin('final');
		const later = new Date(NOW.getTime() + 8_000_000);
		expect(await drive(who, undefined, () => later).check('final')).toBe('passed');
		expect((await checkDesk(db, who, 'final', later)).view).toMatchObject({ id: begun.id, supervision: null });
		expect(await completionsOf(db, who.id)).toMatchObject([{ supervised: 0 }]);
	});

	it('ends an opening with the account of the trainer who is present', async () => {
		const who = await beforeFinal();
		const present = await aMember(db, organisation, 'trainer', 'Marit Oslo');
		const opening = randomUUID();
		await db
			.insertInto('check_opening')
			.values({ id: opening, person_id: who.id, trainer_id: present.id, place: 'Training yard', identified: 'Site badge', at: NOW.toISOString(), expires_at: new Date(NOW.getTime() + 7_200_000).toISOString(), check_id: null })
			.execute();
		expect((await checkDesk(db, who, 'final', NOW)).supervised).toMatchObject({ trainer: present.id });
		await closePerson(db, organisation, present.id, NOW.toISOString());
		expect((await checkDesk(db, who, 'final', NOW)).supervised).toBeNull();
		// One who had read it just before cannot use it either.
		const start = { id: randomUUID(), person_id: who.id, lesson: 'final', nth: 1, rule: '{}', seed: '1', language: 'en', supervision: '{}', day: '2026-11-25', at: NOW.toISOString() };
		expect(await writeCheck(db, { start, events: [], course: [], opening })).toBe(false);
		expect(await drive(who).check('final')).toBe('passed');
		expect(await completionsOf(db, who.id)).toMatchObject([{ supervised: 0 }]);
	});

	it('refuses an id of a check that stands for another answer, and stores the same answer once', async () => {
		const who = await learner();
		await drive(who).practise('stages', await stateOf(who));
		const check = await transport(who).begin('stages');
		const [one, two] = await transport(who).items(check.id);
		if (one === undefined || two === undefined) throw new Error('no items');
		const sent = { id: randomUUID(), item: one.id, answer: checkAnswer(one, true) };
		await transport(who).answer(check.id, sent);
		await transport(who).answer(check.id, { ...sent, id: randomUUID() });
		expect(await answerItem(db, who, check.id, { ...sent, item: two.id, answer: checkAnswer(two, true) }, NOW)).toMatchObject({ kind: 'refused', status: 409 });
		const stored = await db.selectFrom('check_event').select('id').where('check_id', '=', check.id).where('kind', '=', 'answered').execute();
		expect(stored).toHaveLength(1);
	});
});

function never(): never {
	throw new Error('nothing is asked');
}
