import { createHash, randomUUID } from 'node:crypto';
import canonicalize from 'canonicalize';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { COURSE, LESSON_IDS } from '#lib/course/index.ts';
import { PASS_RULES, toldRates } from '#lib/mastery/index.ts';
import { addMonths } from '#lib/records/index.ts';
import { completionsOf, eventsOf, findTry, type CheckEvent, type CheckTry } from '#lib/server/db/checks.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { addOpening } from '#lib/server/db/permits.ts';
import { putRecordSettings } from '#lib/server/db/records.ts';
import { courseOf, handIn, type Person } from '#lib/server/index.ts';
import { courseInProcess, goThroughCourse } from '#lib/server/people/demo-course.ts';
import { evidenceDigest } from '#lib/server/records/evidence.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { commitmentOf } from '#lib/server/records/names.ts';
import { orderRetraining } from '#lib/server/records/retraining.ts';
import { brokenIn } from '../../../support/chain-of.ts';
import { checkAnswer, CourseDriver } from '../../../support/course-driver.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, aMember, anOrganisation, later } from '../people/organisation.ts';

/** SHA-256 over RFC 8785 text of the columns that are named in `evidenceDigest`, by Node itself. */
function digestByHand(of: CheckTry, events: readonly CheckEvent[]): string {
	const tried = { id: of.id, person_id: of.person_id, lesson: of.lesson, nth: of.nth, rule: of.rule, seed: of.seed, language: of.language, supervision: of.supervision, day: of.day, at: of.at };
	const happened = events.map((one) => ({ id: one.id, check_id: one.check_id, seq: one.seq, kind: one.kind, sent: one.sent, payload: one.payload, at: one.at }));
	return createHash('sha256').update(canonicalize({ events: happened, try: tried }) ?? '').digest('hex');
}

describe.each(DATABASES)('the end of a check on %s', (_, start) => {
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

	async function learner(of = organisation): Promise<Person> {
		const id = await aLearner(db, of, `E-${String((number += 1))}`);
		const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', id).executeTakeFirstOrThrow();
		return { kind: 'person', id, organisation: of, role: 'learner', name: 'Ines Okoro', answerer, language: null };
	}

	const begun = async (who: Person) => (await db.selectFrom('training_state').select('begun').where('person_id', '=', who.id).executeTakeFirstOrThrow()).begun;

	it('enters every check that ended, and the whole record of the theory when the final one is passed', async () => {
		const who = await learner();
		expect(await begun(who)).toBe(0);
		await putRecordSettings(db, { organisation_id: organisation, validity_months: 18, soon_days: 30, keep_months: 36, changed_at: NOW.toISOString() });
		await goThroughCourse(db, who, NOW);
		expect(await begun(who)).toBe(1);
		const { checks, trainings } = await recordOf(db, who.id);
		expect(checks.map(({ entry }) => [entry.lesson, entry.nth, entry.passed, entry.by])).toEqual([...LESSON_IDS, 'final'].map((lesson) => [lesson, 1, true, who.id]));
		for (const { entry } of checks) {
			const of = await findTry(db, who.id, entry.check);
			const events = await eventsOf(db, entry.check);
			expect(of === null ? '' : digestByHand(of, events)).toBe(entry.digest);
			expect(of?.person_id).toBe(who.id);
		}
		const [row] = await completionsOf(db, who.id);
		const [completed] = trainings;
		const final = checks.at(-1)?.entry;
		const events = await eventsOf(db, final?.check ?? '');
		const results = events.flatMap(({ payload }) => (JSON.parse(payload) as { results?: { outcome: { right: boolean; unsafe: boolean } }[] }).results ?? []);
		const [rule] = PASS_RULES;
		expect(completed?.entry).toMatchObject({
			kind: 'completed',
			id: row?.id,
			employer: { id: organisation, name: 'Harrow Bridges' },
			course: { id: COURSE.id, version: COURSE.version, scope: COURSE.scope, notCovered: COURSE.notCovered, lessons: LESSON_IDS },
			rules: 'us-construction',
			practice: 'us-two-foot',
			language: 'en',
			languageState: 'original',
			endedAt: row?.at,
			zone: 'UTC',
			day: row?.day,
			check: final?.check,
			digest: final?.digest,
			tries: 1,
			asked: results.length,
			right: results.length,
			unsafe: 0,
			passRule: { id: rule?.id, version: rule?.version, provisional: true },
			supervised: null,
			basis: 'own-training',
			// The organisation's own period: no law of this table sets one. 18 months.
			validity: { months: 18, by: 'employer', until: addMonths(row?.day ?? '', 18) }
		});
		// The rates that the page of pass rules tells, half of the errors on the unsafe side.
		const told = rule === undefined ? [] : toldRates(rule);
		const rates = completed?.entry.kind === 'completed' ? completed.entry.passRule.rates : [];
		expect(rates.map(({ right }) => right)).toEqual(told.map(({ right }) => right));
		rates.forEach(({ firstTry, allowedTries }, i) => {
			const half = told[i]?.byShare.find(({ unsafeShare }) => unsafeShare === 0.5);
			expect(firstTry).toBeCloseTo(half?.first ?? NaN, 6);
			expect(allowedTries).toBeCloseTo(half?.allowed ?? NaN, 6);
		});
		expect(await brokenIn(db, organisation)).toEqual([]);
	});

	it('enters a check that was not passed as such, and no completion', async () => {
		const who = await learner();
		const driver = new CourseDriver(courseInProcess(db, who, () => NOW));
		await driver.practise('stages', (await courseOf(db, who.id, NOW)).state);
		await new CourseDriver(courseInProcess(db, who, () => NOW), () => false).check('stages');
		const { checks, trainings } = await recordOf(db, who.id);
		expect(checks.map(({ entry }) => [entry.lesson, entry.passed])).toEqual([['stages', false]]);
		expect(trainings).toEqual([]);
	});

	it('names who was present by the commitment to the name', async () => {
		const who = await learner();
		await goThroughCourse(db, who, NOW, LESSON_IDS.at(-1));
		const at = later(40_000);
		await addOpening(db, { id: randomUUID(), person: who.id, trainer: trainer.id, place: 'Training yard', identified: 'Site badge', now: NOW.toISOString(), expiresAt: later(80_000).toISOString() });
		await new CourseDriver(courseInProcess(db, who, () => at)).check('final');
		const entry = (await recordOf(db, who.id)).trainings[0]?.entry;
		expect(entry?.kind === 'completed' ? entry.supervised : undefined).toEqual({ trainer: trainer.id, named: await commitmentOf(db, trainer.id), identified: 'Site badge', place: 'Training yard' });
	});

	it('counts its tries since retraining was ordered last', async () => {
		const who = await learner();
		const employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		await goThroughCourse(db, who, NOW);
		const day = 24 * 60 * 60;
		expect(await orderRetraining(db, employer, { people: [who.id] }, { reason: 'yearly-review', due: '2026-12-31' }, later(day))).toMatchObject({ kind: 'ordered', people: 1 });
		await goThroughCourse(db, who, later(2 * day));
		const { trainings, checks } = await recordOf(db, who.id);
		expect(trainings.map(({ run, entry }) => [run, entry.kind === 'completed' ? entry.tries : 0])).toEqual([[0, 1], [1, 1]]);
		expect(checks.filter(({ entry }) => entry.lesson === 'final').map(({ entry }) => entry.nth)).toEqual([1, 2]);
	});

	it('is entered once when it is handed in twice in the same moment', async () => {
		const who = await learner();
		const transport = courseInProcess(db, who, () => NOW);
		await new CourseDriver(transport).practise('stages', (await courseOf(db, who.id, NOW)).state);
		const { id } = await transport.begin('stages');
		const items = await transport.items(id);
		for (const item of items) await transport.answer(id, { id: randomUUID(), item: item.id, answer: checkAnswer(item, true) });
		const pages = [randomUUID(), randomUUID()].map((page) => handIn(db, who, id, { id: page, items: items.map((item) => item.id) }, NOW));
		const told = await Promise.all(pages);
		expect(told.filter(({ kind }) => kind === 'done')).toHaveLength(1);
		expect((await recordOf(db, who.id)).checks).toHaveLength(1);
		expect(await brokenIn(db, organisation)).toEqual([]);
	});

	it('that cannot be entered is not handed in either: events, course and completion stay as they were', async () => {
		const other = await anOrganisation(db);
		const who = await learner(other);
		await goThroughCourse(db, who, NOW, LESSON_IDS.at(-1));
		const transport = courseInProcess(db, who, () => later(40_000));
		const { id } = await transport.begin('final');
		const items = await transport.items(id);
		for (const item of items) await transport.answer(id, { id: randomUUID(), item: item.id, answer: checkAnswer(item, true) });
		const before = { events: await eventsOf(db, id), course: await courseOf(db, who.id, NOW), record: await recordOf(db, who.id) };
		// An employer without a name: no record can be made of it.
		await db.updateTable('organisation').set({ name: '' }).where('id', '=', other).execute();
		const page = { id: randomUUID(), items: items.map((item) => item.id) };
		await expect(handIn(db, who, id, page, later(40_000))).rejects.toThrow();
		expect({ events: await eventsOf(db, id), course: await courseOf(db, who.id, NOW), record: await recordOf(db, who.id) }).toEqual(before);
		expect(await completionsOf(db, who.id)).toEqual([]);
		await db.updateTable('organisation').set({ name: 'Harrow Bridges' }).where('id', '=', other).execute();
		expect(await handIn(db, who, id, page, later(40_000))).toMatchObject({ kind: 'done' });
		expect((await recordOf(db, who.id)).trainings).toHaveLength(1);
	});
});

describe('the digest of a check', () => {
	const of: CheckTry = { id: 'a', person_id: 'b', lesson: 'final', nth: 1, rule: '{}', seed: '5', language: 'en', supervision: null, day: '2026-11-25', at: '2026-11-25T09:00:00.000Z' };
	const event: CheckEvent = { id: 'c', check_id: 'a', seq: 1, kind: 'page', sent: 'null', payload: '{}', at: '2026-11-25T09:00:00.000Z' };

	it('is another for every column that is another, and for events left out or put in another order', () => {
		const other = { ...event, id: 'd', seq: 2 };
		const tries = Object.keys(of).map((column) => ({ ...of, [column]: column === 'nth' ? 2 : 'x' }));
		const events = Object.keys(event).map((column) => [{ ...event, [column]: column === 'seq' ? 3 : 'x' }, other]);
		const digests = [
			evidenceDigest(of, [event, other]),
			evidenceDigest(of, [other, event]),
			evidenceDigest(of, [event]),
			...tries.map((one) => evidenceDigest(one, [event, other])),
			...events.map((some) => evidenceDigest(of, some))
		];
		expect(new Set(digests).size).toBe(digests.length);
	});

	it('does not hang on columns that are added later', () => {
		expect(evidenceDigest({ ...of, ...{ added: 1 } }, [{ ...event, ...{ added: 1 } }])).toBe(evidenceDigest(of, [event]));
	});
});
