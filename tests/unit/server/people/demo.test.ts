import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { fillDemo, type Demo } from '#lib/server/people/demo.ts';
import { joinCrew } from '#lib/server/people/join.ts';
import { signInLearner } from '#lib/server/people/learner.ts';
import { passwordFault, weakPin } from '#lib/server/people/secret.ts';
import { readCode } from '#lib/server/people/code.ts';
import { signInStaff } from '#lib/server/people/staff.ts';
import type { Person } from '#lib/server/people/who.ts';
import { listSets } from '#lib/server/sets/make.ts';
import { setStates } from '#lib/server/sets/states.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, anOrganisation } from './organisation.ts';

describe.each(DATABASES)('the invented organisation, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let demo: Demo;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		const filled = await fillDemo(db, NOW);
		if (filled === null) throw new Error('An empty database was not filled');
		demo = filled;
		// Fifteen secrets are hashed, which is meant to take its time.
	}, 60_000);

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	it('has an employer, two trainers, two crews and twelve workers', () => {
		expect(demo.staff.map((one) => one.role)).toEqual(['employer', 'trainer', 'trainer']);
		expect(demo.crews.map((one) => one.learners.length)).toEqual([6, 6]);
	});

	it('all of them sign in with what was told', async () => {
		for (const { email, password } of demo.staff) {
			expect((await signInStaff(db, { email, password }, 'here', NOW)).kind, email).toBe('signed-in');
			expect(passwordFault(password)).toBeNull();
		}
		for (const { number, pin } of demo.crews.flatMap((crew) => crew.learners)) {
			expect((await signInLearner(db, { number, pin }, 'here', NOW)).kind, number).toBe('signed-in');
			expect(weakPin(pin, number)).toBe(false);
		}
	});

	it('its codes are the crews’, and its people are on their lists', async () => {
		for (const { code, learners } of demo.crews) {
			for (const { name, number } of learners) {
				const claim = { code: readCode(code), name, number };
				expect(await joinCrew(db, { claim, pin: '482917', again: '482917', guest: null }, 'here', NOW)).toEqual({ kind: 'has-pin' });
			}
		}
	});

	it('its first crew has a set, answered in part, and its trainer sees what went wrong', async () => {
		const row = await db.selectFrom('person').selectAll().where('email', '=', demo.staff[1]?.email ?? '').executeTakeFirstOrThrow();
		const trainer: Person = { kind: 'person', id: row.id, organisation: row.organisation_id, role: 'trainer', name: row.name, answerer: row.answerer_id, language: null };
		const [set] = await listSets(db, trainer);
		const states = await setStates(db, trainer, set?.id ?? '', NOW);
		expect(states?.assignments[0]?.people.map((one) => one.answered).toSorted()).toEqual([0, 2, 3, 4, 5, 5]);
		const slips = await db.selectFrom('outcome').select('slip').where('way', '=', 'set').where('slip', '<>', '').execute();
		expect(new Set(slips.map((one) => one.slip))).toContain('elongation-left-out');
	});

	it('keeps no secret in the database', async () => {
		const rows = JSON.stringify([await db.selectFrom('person').selectAll().execute(), await db.selectFrom('audit').selectAll().execute()]);
		for (const { password } of demo.staff) expect(rows).not.toContain(password);
		for (const { pin } of demo.crews.flatMap((crew) => crew.learners)) expect(rows).not.toContain(`"${pin}"`);
	});

	it('is refused where there is an organisation', async () => {
		const before = await db.selectFrom('person').select('id').execute();
		expect(await fillDemo(db, NOW)).toBeNull();
		await anOrganisation(db);
		expect(await fillDemo(db, NOW)).toBeNull();
		expect(await db.selectFrom('person').select('id').execute()).toHaveLength(before.length);
	});
});
