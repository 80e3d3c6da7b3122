import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { receiveAnswers } from '#lib/server/attempts/receive.ts';
import { shippedVersions } from '#lib/server/attempts/shipped.ts';
import { findAttempt } from '#lib/server/db/attempts.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { currentGuest } from '#lib/server/guest.ts';
import { joinGuest, practisedBefore } from '#lib/server/people/practised.ts';
import { answered, problemOf, type SentBody } from '../../../support/answered.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, anOrganisation, later } from './organisation.ts';

/** A problem answered wrongly. */
function wronged(body: SentBody): SentBody {
	const answers = Object.fromEntries(
		Object.entries(body.answers).map(([ask, answer]) => [ask, answer.kind === 'number' ? { kind: 'number', text: '987' } : answer])
	);
	return { ...body, answers };
}

describe.each(DATABASES)('a guest who joins, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let number = 0;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const person = () => aLearner(db, organisation, `A${String(++number)}`);

	/** A browser that has answered some problems. @returns the guest's id */
	async function guestWith(bodies: readonly SentBody[], at = NOW): Promise<string> {
		const jar = new Map<string, string>();
		const cookies = { get: (name: string) => jar.get(name), set: (name: string, value: string) => void jar.set(name, value) };
		for (const body of bodies) {
			const receipt = await receiveAnswers(db, { cookies, secure: false, answerer: null }, body, shippedVersions, at);
			expect(receipt.kind).toBe('stored');
		}
		const guest = await currentGuest(db, cookies, false);
		if (guest === null) throw new Error('the guest is not known');
		return guest;
	}

	it('keeps what was practised: every answer graded again, as it was graded first', async () => {
		const ids = shippedScenarios().map((one) => one.id);
		const bodies = ids.map((id) => answered(problemOf(id, 1)));
		const wrong = wronged(answered(problemOf('bridge-bearing', 1)));
		const guest = await guestWith([...bodies, wrong]);
		const learner = await person();
		expect(await joinGuest(db, guest, learner, later(60))).toEqual({ kind: 'joined' });
		const practised = await practisedBefore(db, learner);
		expect(practised).toHaveLength(ids.length + 1);
		expect(practised.map((one) => one.regraded)).toEqual(practised.map(() => 'alike'));
		expect(practised.filter((one) => one.right)).toHaveLength(ids.length);
		expect(practised.filter((one) => !one.right).map((one) => one.scenario)).toEqual(['bridge-bearing']);
	});

	it('grades again what was asked without the rest of its scenario', async () => {
		const problem = problemOf('bridge-bearing', 3);
		const whole = answered(problem);
		const ask = problem.scenario.asks.find((one) => one.kind === 'number')?.id ?? '';
		const answers = Object.fromEntries(Object.entries(whole.answers).filter(([id]) => id === ask));
		const part = { ...whole, asks: [ask], answers };
		const learner = await person();
		await joinGuest(db, await guestWith([part]), learner, later(60));
		expect(await practisedBefore(db, learner)).toMatchObject([{ regraded: 'alike', right: true }]);
	});

	it('leaves the stored answers as they are, and counts nothing as ready', async () => {
		const body = answered(problemOf('bridge-bearing', 2));
		const guest = await guestWith([body]);
		const before = await findAttempt(db, guest, body.id);
		const learner = await person();
		await joinGuest(db, guest, learner, later(60));
		expect(await findAttempt(db, guest, body.id)).toEqual(before);
		expect(await db.selectFrom('course_event').selectAll().where('person_id', '=', learner).execute()).toEqual([]);
	});

	it('says so where grading again gives another grade, or cannot be done', async () => {
		const [alike, other, old] = [1, 2, 3].map((seed) => answered(problemOf('bridge-bearing', seed)));
		if (alike === undefined || other === undefined || old === undefined) throw new Error('There are none');
		const guest = await guestWith([alike]);
		const stored = await findAttempt(db, guest, alike.id);
		if (stored === null) throw new Error('The answer was not stored');
		const result = stored.result.replace('"kind":"right"', '"kind":"wrong","critical":true');
		await db.insertInto('attempt').values({ ...stored, id: randomUUID(), result, created_at: later(1).toISOString() }).execute();
		await db.insertInto('attempt').values({ ...stored, id: randomUUID(), scenario_version: 999, created_at: later(2).toISOString() }).execute();
		const learner = await person();
		await joinGuest(db, guest, learner, later(60));
		expect((await practisedBefore(db, learner)).map(({ regraded, right }) => ({ regraded, right }))).toEqual([
			{ regraded: 'alike', right: true },
			{ regraded: 'differs', right: true },
			{ regraded: 'not-drawn', right: true }
		]);
	});

	it('is entered once, however often and however much at once', async () => {
		const guest = await guestWith([answered(problemOf('bridge-bearing', 4)), answered(problemOf('bridge-bearing', 5))]);
		const learner = await person();
		const outcomes = await Promise.all([1, 2, 3].map(() => joinGuest(db, guest, learner, later(60))));
		expect(outcomes).toEqual([{ kind: 'joined' }, { kind: 'joined' }, { kind: 'joined' }]);
		expect(await practisedBefore(db, learner)).toHaveLength(2);
	});

	it('is left alone when it belongs to somebody else: no answer is taken', async () => {
		const guest = await guestWith([answered(problemOf('bridge-bearing', 6))]);
		const [first, second] = [await person(), await person()];
		await joinGuest(db, guest, first, later(60));
		expect(await joinGuest(db, guest, second, later(120))).toEqual({ kind: 'not-theirs' });
		expect(await practisedBefore(db, second)).toEqual([]);
		expect(await practisedBefore(db, first)).toHaveLength(1);
	});

	it('is one of two who join with it at once', async () => {
		const guest = await guestWith([answered(problemOf('bridge-bearing', 7))]);
		const people = [await person(), await person()];
		const outcomes = await Promise.all(people.map((one) => joinGuest(db, guest, one, later(60))));
		expect(outcomes.map((one) => one.kind).sort()).toEqual(['joined', 'not-theirs']);
		const practised = await Promise.all(people.map((one) => practisedBefore(db, one)));
		expect(practised.map((one) => one.length).sort()).toEqual([0, 1]);
	});

	it('takes no answers of another guest, and none from after the joining', async () => {
		const guest = await guestWith([answered(problemOf('bridge-bearing', 8))]);
		await guestWith([answered(problemOf('bridge-bearing', 9))]);
		const learner = await person();
		await joinGuest(db, guest, learner, later(60));
		const stored = await db.selectFrom('attempt').selectAll().where('guest_id', '=', guest).executeTakeFirstOrThrow();
		await db.insertInto('attempt').values({ ...stored, id: randomUUID(), created_at: later(120).toISOString() }).execute();
		await joinGuest(db, guest, learner, later(180));
		expect(await practisedBefore(db, learner)).toHaveLength(1);
	});

	it('is not the guest row that another person’s answers are kept under', async () => {
		const other = await person();
		const row = await db.selectFrom('person').select('answerer_id').where('id', '=', other).executeTakeFirstOrThrow();
		expect(await joinGuest(db, row.answerer_id, await person(), later(60))).toEqual({ kind: 'not-theirs' });
	});

	it('goes on where grading again was stopped half way', async () => {
		const guest = await guestWith([answered(problemOf('bridge-bearing', 10)), answered(problemOf('bridge-bearing', 11))]);
		const learner = await person();
		await db.insertInto('joined_guest').values({ guest_id: guest, person_id: learner, at: later(60).toISOString() }).execute();
		await joinGuest(db, guest, learner, later(90));
		expect(await practisedBefore(db, learner)).toHaveLength(2);
	});

	it.each([
		['changing', sql`update practised set all_right = 1`],
		['deleting', sql`delete from practised`]
	])('forbids %s what was kept', async (_name, statement) => {
		const guest = await guestWith([answered(problemOf('bridge-bearing', 12))]);
		await joinGuest(db, guest, await person(), later(60));
		await expect(statement.execute(db)).rejects.toThrow('practised is insert-only');
	});
});
