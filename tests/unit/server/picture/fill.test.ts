import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shippedVersions } from '#lib/server/attempts/shipped.ts';
import { courseOf } from '#lib/server/course/state.ts';
import { receiveEvent } from '#lib/server/course/receive.ts';
import { receiveAnswers } from '#lib/server/attempts/receive.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import type { OutcomeTable } from '#lib/server/db/schema.ts';
import { fillOutcomes } from '#lib/server/picture/fill.ts';
import type { Person } from '#lib/server/people/who.ts';
import { answered, problemOf } from '../../../support/answered.ts';
import { CourseDriver } from '../../../support/course-driver.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, anOrganisation, later } from '../people/organisation.ts';
import { aTaught, answer } from './people.ts';

describe.each(DATABASES)('outcomes of answers from before, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let stored: readonly OutcomeTable[];

	const rows = async (): Promise<readonly OutcomeTable[]> => db.selectFrom('outcome').selectAll().orderBy('answer_id').orderBy('ask').execute();
	/** As a database from before: answers without outcomes. */
	const asBefore = async (): Promise<void> => {
		await db.deleteFrom('outcome').execute();
		await db.deleteFrom('done_once').execute();
	};

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		const organisation = await anOrganisation(db);
		const learner = await aTaught(db, organisation, 'F1', [await aCrew(db, organisation)]);
		const person: Person = { kind: 'person', id: learner.id, organisation, role: 'learner', name: 'Dario Penn', answerer: learner.answerer, language: null };
		await answer(db, learner, { seed: 1, ask: 'required', slip: 'elongation-left-out', at: later(1) });
		await answer(db, learner, { seed: 2, at: later(2) });
		const never = () => Promise.reject(new Error('no check is taken'));
		const driver = new CourseDriver({
			event: async (event) => {
				const receipt = await receiveEvent(db, person, event, shippedVersions, later(3));
				if (receipt.kind !== 'stored') throw new Error(JSON.stringify(receipt.problems));
				return receipt;
			},
			begin: never,
			answer: never,
			page: never,
			items: never
		}, (nth) => nth !== 1);
		await driver.practise('stages', (await courseOf(db, person.id, NOW)).state);
		// A guest, who is asked of nowhere.
		const guest = { cookies: { get: () => undefined, set: () => undefined }, secure: false, answerer: null };
		const token = Buffer.from(randomUUID().replaceAll('-', ''), 'hex').toString('base64url');
		await receiveAnswers(db, { ...guest, cookies: { get: () => `${token}${token}`.slice(0, 43), set: () => undefined } }, answered(problemOf('bridge-bearing', 9)), shippedVersions, later(4));
		stored = await rows();
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	it('are those that were stored with the answers', async () => {
		expect(stored.some(({ ask, wrong }) => ask === 'picture' && wrong === 1)).toBe(true);
		expect(stored.some(({ slip }) => slip === 'elongation-left-out')).toBe(true);
		expect(new Set(stored.map(({ way }) => way))).toEqual(new Set(['practice', 'course']));
		await asBefore();
		expect(await fillOutcomes(db, NOW)).toBeGreaterThan(0);
		expect(await rows()).toEqual(stored);
	});

	it('are filled in once', async () => {
		await db.deleteFrom('outcome').where('slip', '=', 'elongation-left-out').execute();
		expect(await fillOutcomes(db, NOW)).toBe(0);
		expect(await rows()).toHaveLength(stored.length - 1);
	});

	it('are filled in to the end at the next start, where it was cut short', async () => {
		await asBefore();
		const ending = new AbortController();
		ending.abort();
		expect(await fillOutcomes(db, NOW, ending.signal)).toBe(0);
		expect(await rows()).toEqual([]);
		const some = stored.filter((_row, i) => i % 2 === 0);
		await db.insertInto('outcome').values(some).execute();
		await fillOutcomes(db, NOW);
		// An answer of which some is there is taken to be whole: its rows are stored together.
		const whole = stored.filter(({ answer_id: id, ask }) => some.some((one) => one.answer_id === id && one.ask === ask) || !some.some((one) => one.answer_id === id));
		expect(await rows()).toEqual(whole);
	});
});
