/** Clocks that jump, days in their zones, and what hangs on both. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addMonths, stateOn } from '#lib/records/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { accountKey, dayIn, mayTry, receiveAnswers, runJob, shippedVersions, startSession, whoIs, type Person, type Visitor } from '#lib/server/index.ts';
import { MOST_ANSWERS } from '#lib/server/attempts/receive.ts';
import { storeAttempt } from '#lib/server/db/attempts.ts';
import { runDueJobs, type Job } from '#lib/server/jobs/job.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { readAskedList, trainingList } from '#lib/server/records/list.ts';
import { validityFor } from '#lib/server/records/validity.ts';
import { verifyRecords } from '#lib/server/records/verify/verify.ts';
import { answered, problemOf } from '../../../support/answered.ts';
import { brokenIn, entriesOf } from '../../../support/chain-of.ts';
import { orderEntry } from '../../../support/record-entries.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, aMember, anOrganisation, later } from '../people/organisation.ts';
import { priorTraining } from '../records/trained.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;

describe('the day of training is the day at the site', () => {
	/** Offsets and changes of clocks: IANA time zone database; from memory. */
	it.each([
		// Fourteen hours ahead of UTC, eleven behind, and three quarters of an hour off.
		['Pacific/Kiritimati', '2026-11-30T09:59:59.999Z', '2026-11-30', '2026-12-01'],
		['Pacific/Pago_Pago', '2026-11-30T10:59:59.999Z', '2026-11-29', '2026-11-30'],
		['Asia/Kathmandu', '2026-11-30T18:14:59.999Z', '2026-11-30', '2026-12-01'],
		['UTC', '2026-12-31T23:59:59.999Z', '2026-12-31', '2027-01-01'],
		// Clocks go forward on 8 March and back on 1 November: the nights before and after lie an hour apart.
		['America/New_York', '2026-03-08T04:59:59.999Z', '2026-03-07', '2026-03-08'],
		['America/New_York', '2026-03-09T03:59:59.999Z', '2026-03-08', '2026-03-09'],
		['America/New_York', '2026-11-01T03:59:59.999Z', '2026-10-31', '2026-11-01'],
		['America/New_York', '2026-11-02T04:59:59.999Z', '2026-11-01', '2026-11-02'],
		['Europe/Berlin', '2026-03-29T21:59:59.999Z', '2026-03-29', '2026-03-30'],
		['Europe/Berlin', '2026-10-25T22:59:59.999Z', '2026-10-25', '2026-10-26'],
		// Clocks go forward at midnight itself: the day begins at one.
		['Africa/Cairo', '2026-04-23T21:59:59.999Z', '2026-04-23', '2026-04-24'],
		// A whole day was left out: 30 December 2011 is missing.
		['Pacific/Apia', '2011-12-30T09:59:59.999Z', '2011-12-29', '2011-12-31'],
		['UTC', '2028-02-28T23:59:59.999Z', '2028-02-28', '2028-02-29'],
		['UTC', '0999-12-31T23:59:59.999Z', '0999-12-31', '1000-01-01']
	])('in %s the millisecond after %s brings %s to %s', (zone, last, before, after) => {
		const end = new Date(last);
		expect(dayIn(zone, end)).toBe(before);
		expect(dayIn(zone, new Date(end.getTime() + 1))).toBe(after);
	});

	/** 24 months: shared/records/law.json has no such period for these tables, so the employer's own decides. Days: java.time.LocalDate.plusMonths; from memory. */
	it.each([
		['2028-02-29', 12, '2029-02-28'],
		['2028-02-29', 24, '2030-02-28'],
		['2028-02-29', 36, '2031-02-28'],
		['2028-02-29', 48, '2032-02-29'],
		['2026-01-31', 1, '2026-02-28'],
		['2028-01-31', 1, '2028-02-29'],
		['2026-12-31', 2, '2027-02-28'],
		['1999-12-31', 12, '2000-12-31'],
		['2099-12-31', 2, '2100-02-28']
	])('trained on %s and valid for %i months, it is valid through the whole of %s', (day, months, until) => {
		expect(validityFor('us-construction', { validityMonths: months }, day)).toEqual({ months, by: 'employer', until });
		expect(addMonths(day, months)).toBe(until);
		const next = new Date(`${until}T00:00:00Z`);
		next.setUTCDate(next.getUTCDate() + 1);
		expect(stateOn({ until, begun: true }, until, 30)).toBe('expires-soon');
		expect(stateOn({ until, begun: true }, next.toISOString().slice(0, 10), 30)).toBe('expired');
	});
});

describe.each(DATABASES)('clocks, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	it('a clock that is put back a day between two entries changes nothing of their order, and is remarked on when the chain is verified', async () => {
		const organisation = await anOrganisation(db);
		const person = await aLearner(db, organisation, 'T-1');
		const order = (day: string) => db.transaction().execute((transaction) => appendEntries(transaction, organisation, [orderEntry(person, day, addMonths(day, 1))]));
		await order('2026-11-26');
		await order('2026-11-25');
		await order('2026-11-25');
		const entries = await entriesOf(db, organisation);
		expect(entries.map(({ kind }) => kind)).toEqual(['opened', 'named', 'retraining-ordered', 'retraining-ordered', 'retraining-ordered']);
		expect(entries.at(-1)?.at.slice(0, 10)).toBe('2026-11-25');
		expect((await recordOf(db, person)).orders.map(({ seq }) => seq)).toEqual([3, 4, 5]);
		expect(await brokenIn(db, organisation)).toEqual([]);
		expect(await verifyRecords(db, { organisation, depth: 'records' })).toMatchObject({ kind: 'holds', counts: { entries: 5, clockBack: 1 } });
	});

	it('a job runs once a day, also when the clock was put back or was far ahead, and never stays away', async () => {
		const ran: string[] = [];
		let clock = NOW;
		const job: Job = {
			name: 'backup',
			scope: 'server',
			run: (_db, _organisation, now) => {
				ran.push(now.toISOString().slice(0, 13));
				return Promise.resolve({});
			}
		};
		/** Looks every hour, as the server does. */
		const hours = async (count: number): Promise<void> => {
			for (let i = 0; i < count; i += 1) {
				await runDueJobs(db, [job], () => clock);
				clock = new Date(clock.getTime() + HOUR * 1000);
			}
		};
		await hours(24);
		expect(ran).toEqual(['2026-11-25T09', '2026-11-26T08']);
		// Put back by a day: what was done on this day is done.
		clock = new Date(clock.getTime() - DAY * 1000);
		await hours(24);
		expect(ran).toHaveLength(2);
		// Ten years ahead for an hour, and put right.
		const right = clock;
		clock = new Date('2036-11-27T09:00:00.000Z');
		await hours(1);
		clock = right;
		ran.length = 0;
		await hours(48);
		expect(ran).toEqual(['2026-11-27T07', '2026-11-28T06']);
		// Before anything was ever done: it is done once, and a day later again.
		clock = new Date('2020-01-01T00:00:00.000Z');
		ran.length = 0;
		await hours(24);
		expect(ran).toEqual(['2020-01-01T00', '2020-01-01T23']);
	});

	it('a job that fails is tried again within the hour', async () => {
		let clock = new Date('2030-01-01T00:00:00.000Z');
		let ran = 0;
		const job: Job = { name: 'checkpoint', scope: 'server', run: () => ((ran += 1) === 1 ? Promise.reject(new Error('no room')) : Promise.resolve({})) };
		expect(await runJob(db, job, '', () => clock)).toBeNull();
		clock = new Date(clock.getTime() + HOUR * 1000);
		await runDueJobs(db, [job], () => clock);
		expect(ran).toBe(2);
	});

	it('sessions hold when the clock is put back, and end no later than the day that it was put back by', async () => {
		const organisation = await anOrganisation(db);
		const employer = await aMember(db, organisation, 'employer');
		let token = '';
		const cookies = { get: () => token, set: (_name: string, value: string) => void (token = value), delete: () => undefined };
		await startSession(db, cookies, false, employer.id, NOW);
		const at = async (seconds: number): Promise<string> => (await whoIs(db, cookies, false, later(seconds))).kind;
		expect(await at(60)).toBe('person');
		expect(await at(-DAY)).toBe('person');
		expect(await at(-DAY + 11 * HOUR)).toBe('person');
		expect(await at(12 * HOUR + 1)).toBe('guest');
	});

	it('nobody waits a day for a try or an answer because the clock was put back', async () => {
		const organisation = await anOrganisation(db);
		const learner = await aLearner(db, organisation, 'T-9');
		const key = [accountKey(learner)];
		for (let i = 0; i < 5; i += 1) expect((await mayTry(db, key, later(i))).kind).toBe('may');
		expect(await mayTry(db, key, later(6))).toMatchObject({ kind: 'wait' });
		expect((await mayTry(db, key, later(-DAY))).kind).toBe('may');
		// Failures go on being counted: from then on it is as before.
		expect(await mayTry(db, key, later(-DAY + 1))).toMatchObject({ kind: 'wait' });

		const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', learner).executeTakeFirstOrThrow();
		const visitor: Visitor = { cookies: { get: () => undefined, set: () => undefined }, secure: false, answerer };
		const body = answered(problemOf('bridge-bearing', 3));
		expect((await receiveAnswers(db, visitor, body, shippedVersions, NOW)).kind).toBe('stored');
		const row = await db.selectFrom('attempt').selectAll().where('id', '=', body.id).executeTakeFirstOrThrow();
		await Promise.all(Array.from({ length: MOST_ANSWERS }, () => storeAttempt(db, { ...row, id: randomUUID() })));
		const again = () => answered(problemOf('bridge-bearing', 4));
		expect(await receiveAnswers(db, visitor, again(), shippedVersions, later(5))).toMatchObject({ kind: 'refused', status: 429 });
		expect((await receiveAnswers(db, visitor, again(), shippedVersions, later(-DAY))).kind).toBe('stored');
	});

	/** Offsets: IANA time zone database; from memory. */
	it.each([
		['Pacific/Kiritimati', '2027-02-28T09:59:59.999Z'],
		['Pacific/Pago_Pago', '2027-03-01T10:59:59.999Z'],
		// The clocks went forward on this day.
		['Europe/Berlin', '2027-02-28T22:59:59.999Z']
	])('who is valid until 28 February is so in %s until midnight there, and not a millisecond longer', async (zone, last) => {
		const organisation = await anOrganisation(db);
		await db.updateTable('organisation').set({ zone }).where('id', '=', organisation).execute();
		const employer: Person = await aMember(db, organisation, 'employer');
		const person = await aLearner(db, organisation, 'T-2');
		await priorTraining(db, employer, await namedOf(employer), person, '2026-02-28');
		await db.updateTable('training_state').set({ until: '2027-02-28' }).where('person_id', '=', person).execute();
		const states = async (at: Date): Promise<Readonly<Record<string, number>>> => (await trainingList(db, employer, readAskedList(new URLSearchParams()), at)).counts;
		const end = new Date(last);
		expect(await states(end)).toMatchObject({ 'expires-soon': 1, expired: 0 });
		expect(await states(new Date(end.getTime() + 1))).toMatchObject({ 'expires-soon': 0, expired: 1 });
		expect(await states(new Date(end.getTime() - 31 * DAY * 1000))).toMatchObject({ current: 1 });
	});

	async function namedOf({ id }: Person): Promise<string> {
		const { commitment } = await db.selectFrom('identity').select('commitment').where('person_id', '=', id).executeTakeFirstOrThrow();
		return commitment;
	}
});
