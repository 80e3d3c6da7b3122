import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { closePerson, setLanguage } from '#lib/server/db/people.ts';
import { endAllSessions, endSession, startSession, whoIs, type SessionCookies } from '#lib/server/people/session.ts';
import { forgetOld } from '#lib/server/people/tidy.ts';
import type { Person } from '#lib/server/people/who.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, aMember, anOrganisation, later } from './organisation.ts';

const HOUR = 60 * 60;
const DAY = 24 * HOUR;
const GUEST = { kind: 'guest' };

/** A browser's cookies, with how the last one was set. */
class Browser implements SessionCookies {
	readonly jar = new Map<string, string>();
	options: object = {};
	get(name: string): string | undefined {
		return this.jar.get(name);
	}
	set(name: string, value: string, options: object): void {
		this.jar.set(name, value);
		this.options = options;
	}
	delete(name: string): void {
		this.jar.delete(name);
	}
}

describe.each(DATABASES)('a session, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let learner: string;
	let browser: Browser;
	let count = 0;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	beforeEach(async () => {
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		count += 1;
		learner = await aLearner(db, organisation, `L-${count}`);
		browser = new Browser();
	});

	it('says who asks, with the organisation’s language where the person has none', async () => {
		await startSession(db, browser, true, employer.id, NOW);
		expect(await whoIs(db, browser, true, NOW)).toEqual({ ...employer, language: 'en' });
		await setLanguage(db, employer.id, 'es');
		expect(await whoIs(db, browser, true, NOW)).toEqual({ ...employer, language: 'es' });
	});

	it('has a cookie that scripts cannot read and other hosts do not get', async () => {
		await startSession(db, browser, true, learner, NOW);
		expect([...browser.jar.keys()]).toEqual(['__Host-session']);
		expect(browser.options).toEqual({ path: '/', httpOnly: true, sameSite: 'lax', secure: true, maxAge: 90 * DAY });
		const plain = new Browser();
		await startSession(db, plain, false, learner, NOW);
		expect([...plain.jar.keys()]).toEqual(['session']);
	});

	it('is kept by the hash of its token alone', async () => {
		await startSession(db, browser, true, learner, NOW);
		const [token = ''] = browser.jar.values();
		expect(Buffer.from(token, 'base64url')).toHaveLength(32);
		expect(JSON.stringify(await db.selectFrom('session').selectAll().execute())).not.toContain(token);
	});

	it('ends when it is not used: staff after twelve hours, learners after fourteen days', async () => {
		for (const [person, idle] of [
			[employer.id, 12 * HOUR],
			[learner, 14 * DAY]
		] as const) {
			await startSession(db, browser, true, person, NOW);
			expect(await whoIs(db, browser, true, later(idle - 1))).toMatchObject({ id: person });
			const other = new Browser();
			await startSession(db, other, true, person, NOW);
			expect(await whoIs(db, other, true, later(idle))).toEqual(GUEST);
		}
	});

	it('goes on while it is used, but not for ever', async () => {
		await startSession(db, browser, true, employer.id, NOW);
		for (let hours = 6; hours < 7 * 24; hours += 6) expect(await whoIs(db, browser, true, later(hours * HOUR))).toMatchObject({ kind: 'person' });
		expect(await whoIs(db, browser, true, later(7 * DAY))).toEqual(GUEST);
	});

	it('notes that it is used every few minutes, not at every page', async () => {
		await startSession(db, browser, true, learner, NOW);
		const seen = async () => (await db.selectFrom('session').select('seen_at').where('person_id', '=', learner).executeTakeFirstOrThrow()).seen_at;
		await whoIs(db, browser, true, later(299));
		expect(await seen()).toBe(NOW.toISOString());
		await whoIs(db, browser, true, later(300));
		expect(await seen()).toBe(later(300).toISOString());
	});

	it('is a new one at every sign-in, and the one before is worthless', async () => {
		await startSession(db, browser, true, learner, NOW);
		const before = new Browser();
		for (const [name, token] of browser.jar) before.jar.set(name, token);
		await startSession(db, browser, true, employer.id, NOW);
		expect(await whoIs(db, browser, true, NOW)).toMatchObject({ id: employer.id });
		expect(await whoIs(db, before, true, NOW)).toEqual(GUEST);
	});

	it('is not one that the browser brought along', async () => {
		const fixed = 'A'.repeat(43);
		browser.jar.set('__Host-session', fixed);
		expect(await whoIs(db, browser, true, NOW)).toEqual(GUEST);
		await startSession(db, browser, true, learner, NOW);
		expect(browser.jar.get('__Host-session')).not.toBe(fixed);
	});

	it('ends on this browser at signing out, and on all together', async () => {
		const [one, other, third] = [new Browser(), new Browser(), new Browser()];
		for (const each of [one, other, third]) await startSession(db, each, true, learner, NOW);
		const copy = new Browser();
		for (const [name, token] of one.jar) copy.jar.set(name, token);
		await endSession(db, one, true);
		expect(one.jar.size).toBe(0);
		expect(await whoIs(db, copy, true, NOW)).toEqual(GUEST);
		expect(await whoIs(db, other, true, NOW)).toMatchObject({ id: learner });
		await endAllSessions(db, learner);
		expect(await whoIs(db, other, true, NOW)).toEqual(GUEST);
		expect(await whoIs(db, third, true, NOW)).toEqual(GUEST);
	});

	it('is of nobody whose account is closed', async () => {
		await startSession(db, browser, true, learner, NOW);
		expect(await closePerson(db, organisation, learner, NOW.toISOString())).toBe(true);
		expect(await whoIs(db, browser, true, NOW)).toEqual(GUEST);
	});

	it('that has ended by itself is forgotten, one that lasts is not', async () => {
		await startSession(db, browser, true, employer.id, NOW);
		const other = new Browser();
		await startSession(db, other, true, learner, NOW);
		await forgetOld(db, later(7 * DAY));
		const left = await db.selectFrom('session').select('person_id').where('person_id', 'in', [employer.id, learner]).execute();
		expect(left.map((one) => one.person_id)).toEqual([learner]);
	});

	it('is not made for nobody', async () => {
		await expect(startSession(db, browser, true, 'no-such-person', NOW)).rejects.toThrow('for nobody');
		expect(browser.jar.size).toBe(0);
	});
});
