import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { RULE_TABLES } from '#lib/rules/index.ts';
import { numberAsks } from '#lib/scenario/index.ts';
import { receiveAnswers } from '#lib/server/attempts/receive.ts';
import { dayIn } from '#lib/server/course/day.ts';
import { frequentSlips } from '#lib/server/course/slips.ts';
import { factTables } from '#lib/server/course/tables.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { shippedVersions } from '#lib/server/index.ts';
import { answered, problemOf } from '../../../support/answered.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aMember, anOrganisation } from '../people/organisation.ts';

describe.each(DATABASES)('what somebody keeps getting wrong, on %s', (_, start) => {
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

	it('is the slip that was found most often in own answers, and nobody else’s', async () => {
		const organisation = await anOrganisation(db);
		const [own, other] = [await aMember(db, organisation, 'learner'), await aMember(db, organisation, 'learner')];
		const cookies = { get: () => undefined, set: () => undefined };
		const slip = 'lanyard-for-free-fall';
		for (let seed = 1; seed <= 3; seed += 1) {
			const problem = problemOf('bridge-bearing', seed);
			const ask = numberAsks(problem.scenario).find((one) => one.quantity === 'freeFall');
			if (ask === undefined) throw new Error('no free fall is asked');
			const body = answered(problem);
			body.answers[ask.id] = { kind: 'number', text: `${problem.drawn.plan.lanyard.length.toFixed(2)} m` };
			const receipt = await receiveAnswers(db, { cookies, secure: false, answerer: own.answerer }, body, shippedVersions, NOW);
			expect(receipt.kind).toBe('stored');
		}
		expect(await frequentSlips(db, own.answerer)).toEqual([{ slip, count: 3 }]);
		expect(await frequentSlips(db, other.answerer)).toEqual([]);
	});
});

test('every rule table has a practice table of its place beside it, and an unknown one falls back on the usual', () => {
	for (const { id } of RULE_TABLES.values()) expect(factTables(id).rules.id).toBe(id);
	expect(factTables('ca-quebec').practice.id).toBe('canada');
	expect(factTables('no-such-table').rules.id).toBe('us-construction');
	expect(factTables(null).rules.id).toBe('us-construction');
});

// IANA time zone database, from memory: Denver is seven hours behind UTC in winter and six in summer, Auckland thirteen ahead in summer.
test.each([
	['2026-01-15T05:00:00Z', 'America/Denver', '2026-01-14'],
	['2026-07-15T05:59:00Z', 'America/Denver', '2026-07-14'],
	['2026-07-15T06:00:00Z', 'America/Denver', '2026-07-15'],
	['2026-12-31T11:00:00Z', 'Pacific/Auckland', '2027-01-01'],
	['2028-02-29T12:00:00Z', 'UTC', '2028-02-29']
])('%s is in %s the day %s', (instant, zone, day) => {
	expect(dayIn(zone, new Date(instant))).toBe(day);
});
