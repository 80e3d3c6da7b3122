import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { findPersonById } from '#lib/server/db/people.ts';
import { changeSettings, firstSetUpCode, furtherSetUpCode, settingsOf, setUpOrganisation, type SetUp } from '#lib/server/people/organisation.ts';
import { ALL_DAYS } from '#lib/server/exports/range.ts';
import { readLog } from '#lib/server/people/log.ts';
import { listStaff } from '#lib/server/people/overview.ts';
import { startSession, whoIs, type SessionCookies } from '#lib/server/people/session.ts';
import { closeAccount, enrolStaff, inviteStaff, passwordCode, resetPerson, signInStaff, unlockPerson } from '#lib/server/people/staff.ts';
import type { Person } from '#lib/server/people/who.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, later } from './organisation.ts';

const PASSWORD = 'three cranes by the river';
const OTHER = 'four barges under the bridge';
const WEEK = 7 * 24 * 60 * 60;
const WRONG = { kind: 'refused', why: 'wrong' };
const NO_CODE = { kind: 'refused', why: 'code' };

function setUp(code: string, email: string, name = 'Harrow Bridges'): SetUp {
	return {
		code,
		settings: { name, rules: 'us-construction', units: 'us', language: 'es', zone: 'America/Denver', passRule: 'staged' },
		person: { name: 'Orla Finch', email, password: PASSWORD }
	};
}

/** A browser that keeps one session. */
function browser(): SessionCookies {
	const jar = new Map<string, string>();
	return { get: (name) => jar.get(name), set: (name, value) => void jar.set(name, value), delete: (name) => void jar.delete(name) };
}

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let count = 0;
	/** Every test comes from another place: failures of one do not slow the next. */
	let address: string;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	beforeEach(() => {
		count += 1;
		address = `203.0.113.${count}`;
	});

	function mail(name: string): string {
		return `${name}-${count}@example.org`;
	}

	async function anEmployer(name = 'orla'): Promise<Person> {
		const done = await setUpOrganisation(db, setUp(await furtherSetUpCode(db, NOW), mail(name)), address, NOW);
		if (done.kind !== 'enrolled') throw new Error('not set up');
		const cookies = browser();
		await startSession(db, cookies, true, done.person, NOW);
		const who = await whoIs(db, cookies, true, NOW);
		if (who.kind !== 'person') throw new Error('not signed in');
		return who;
	}

	async function aTrainer(employer: Person, name = 'helle'): Promise<{ id: string; code: string }> {
		const code = await inviteStaff(db, employer, { role: 'trainer', name: 'Helle Brandt', email: mail(name) }, NOW);
		const { id } = await db.selectFrom('person').select('id').where('email', '=', mail(name)).executeTakeFirstOrThrow();
		return { id, code: code ?? '' };
	}

	function signIn(email: string, password: string, at = NOW, from = address) {
		return signInStaff(db, { email, password }, from, at);
	}

	// First: only then there is no organisation.
	it('the first start makes a code, the first organisation ends all of them', async () => {
		const [one, two] = [await firstSetUpCode(db, NOW), await firstSetUpCode(db, NOW)];
		expect(one).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}(-[0-9A-HJKMNP-TV-Z]{4}){3}$/);
		const done = await setUpOrganisation(db, setUp(one ?? '', mail('first')), address, NOW);
		expect(done.kind).toBe('enrolled');
		expect(await firstSetUpCode(db, NOW)).toBeNull();
		expect(await setUpOrganisation(db, setUp(two ?? '', mail('second')), address, NOW)).toEqual(NO_CODE);
	});

	describe('a set-up code', () => {
		it('makes an organisation with its employer and what was chosen', async () => {
			const employer = await anEmployer();
			expect(employer).toMatchObject({ role: 'employer', name: 'Orla Finch', language: 'es' });
			expect(await settingsOf(db, employer.organisation)).toEqual({
				name: 'Harrow Bridges',
				rules: 'us-construction',
				units: 'us',
				language: 'es',
				zone: 'America/Denver',
				passRule: 'staged'
			});
		});

		it('is read as people type it, works once, and not after a week', async () => {
			const [code, late] = [await furtherSetUpCode(db, NOW), await furtherSetUpCode(db, NOW)];
			const typed = ` ${code.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l')} `;
			expect((await setUpOrganisation(db, setUp(typed, mail('one')), address, later(WEEK - 1))).kind).toBe('enrolled');
			expect(await setUpOrganisation(db, setUp(code, mail('two')), address, NOW)).toEqual(NO_CODE);
			expect(await setUpOrganisation(db, setUp(late, mail('three')), address, later(WEEK))).toEqual(NO_CODE);
			expect(await setUpOrganisation(db, setUp('', mail('four')), address, NOW)).toEqual(NO_CODE);
		});

		it('used twice at once makes one organisation', async () => {
			const code = await furtherSetUpCode(db, NOW);
			const before = await db.selectFrom('organisation').select('id').execute();
			const outcomes = await Promise.all(['a', 'b', 'c'].map((name) => setUpOrganisation(db, setUp(code, mail(name)), address, NOW)));
			expect(outcomes.filter(({ kind }) => kind === 'enrolled')).toHaveLength(1);
			expect(outcomes.filter((one) => one.kind === 'refused' && one.why === 'code')).toHaveLength(2);
			expect(await db.selectFrom('organisation').select('id').execute()).toHaveLength(before.length + 1);
		});

		it('holds on when the e-mail is taken, and nothing is made', async () => {
			await anEmployer('same');
			const code = await furtherSetUpCode(db, NOW);
			const before = await db.selectFrom('organisation').select('id').execute();
			expect(await setUpOrganisation(db, setUp(code, mail('same')), address, NOW)).toEqual({ kind: 'refused', why: 'email' });
			expect(await db.selectFrom('organisation').select('id').execute()).toHaveLength(before.length);
			expect((await setUpOrganisation(db, setUp(code, mail('fresh')), address, NOW)).kind).toBe('enrolled');
		});
	});

	describe('a member of staff', () => {
		it('is invited, chooses a password by the code, and signs in', async () => {
			const employer = await anEmployer();
			const trainer = await aTrainer(employer);
			expect(await signIn(mail('helle'), PASSWORD)).toEqual(WRONG);
			expect(await enrolStaff(db, { code: trainer.code, password: OTHER }, address, NOW)).toEqual({ kind: 'enrolled', person: trainer.id });
			expect(await signIn(` ${mail('helle').toUpperCase()} `, OTHER)).toEqual({ kind: 'signed-in', person: trainer.id });
			expect(await signIn(mail('helle'), PASSWORD)).toEqual(WRONG);
			expect(await signIn(mail('nobody'), OTHER)).toEqual(WRONG);
		});

		it('cannot be invited under an e-mail that is taken, in whatever organisation', async () => {
			const employer = await anEmployer();
			const stranger = await anEmployer('stranger');
			await aTrainer(employer);
			expect(await inviteStaff(db, stranger, { role: 'trainer', name: 'Tomas Eik', email: mail('helle') }, NOW)).toBeNull();
			const both = await Promise.all([1, 2].map(() => inviteStaff(db, stranger, { role: 'trainer', name: 'Tomas Eik', email: mail('tomas') }, NOW)));
			expect(both.filter((code) => code !== null)).toHaveLength(1);
		});

		it('whose code is used twice at once has one password', async () => {
			const trainer = await aTrainer(await anEmployer());
			const both = await Promise.all([PASSWORD, OTHER].map((password) => enrolStaff(db, { code: trainer.code, password }, address, NOW)));
			expect(both.filter(({ kind }) => kind === 'enrolled')).toHaveLength(1);
			const right = both[0]?.kind === 'enrolled' ? PASSWORD : OTHER;
			expect((await signIn(mail('helle'), right)).kind).toBe('signed-in');
			expect(await enrolStaff(db, { code: trainer.code, password: OTHER }, address, NOW)).toEqual(NO_CODE);
		});

		it('is locked out after ten guesses, right password or not, until the employer unlocks', async () => {
			const employer = await anEmployer();
			const trainer = await aTrainer(employer);
			await enrolStaff(db, { code: trainer.code, password: PASSWORD }, address, NOW);
			for (let i = 0; i < 5; i += 1) expect(await signIn(mail('helle'), OTHER)).toEqual(WRONG);
			expect(await signIn(mail('helle'), PASSWORD)).toEqual({ kind: 'refused', why: 'wait', retryAfter: 30 });
			for (let i = 1; i <= 5; i += 1) await signIn(mail('helle'), OTHER, later(i * 3600));
			expect(await signIn(mail('helle'), PASSWORD, later(9 * 3600), '198.51.100.9')).toEqual({ kind: 'refused', why: 'locked' });
			expect((await listStaff(db, employer)).find(({ id }) => id === trainer.id)?.state).toBe('locked');
			const stranger = await anEmployer('stranger');
			expect(await unlockPerson(db, stranger, trainer.id, NOW)).toBe(false);
			expect((await signIn(mail('helle'), PASSWORD, later(9 * 3600))).kind).toBe('refused');
			expect(await unlockPerson(db, employer, trainer.id, NOW)).toBe(true);
			expect((await signIn(mail('helle'), PASSWORD, later(9 * 3600))).kind).toBe('signed-in');
		});

		it('guessed at many times at once is guessed at five times', async () => {
			const trainer = await aTrainer(await anEmployer());
			await enrolStaff(db, { code: trainer.code, password: PASSWORD }, address, NOW);
			const guesses = await Promise.all(Array.from({ length: 12 }, (_, i) => signIn(mail('helle'), `guess number ${i} of many`)));
			expect(guesses.filter((one) => one.kind === 'refused' && one.why === 'wrong')).toHaveLength(5);
			expect(guesses.filter((one) => one.kind === 'refused' && one.why === 'wait')).toHaveLength(7);
		});

		it('who is reset is signed out, keeps no password, and chooses a new one', async () => {
			const employer = await anEmployer();
			const trainer = await aTrainer(employer);
			await enrolStaff(db, { code: trainer.code, password: PASSWORD }, address, NOW);
			const cookies = browser();
			await startSession(db, cookies, true, trainer.id, NOW);
			const first = await resetPerson(db, employer, trainer.id, NOW);
			const second = await resetPerson(db, employer, trainer.id, NOW);
			if (first.kind !== 'code' || second.kind !== 'code') throw new Error('no code');
			expect(await whoIs(db, cookies, true, NOW)).toEqual({ kind: 'guest' });
			expect(await signIn(mail('helle'), PASSWORD)).toEqual(WRONG);
			expect(await enrolStaff(db, { code: first.code, password: OTHER }, address, NOW)).toEqual(NO_CODE);
			expect((await enrolStaff(db, { code: second.code, password: OTHER }, address, NOW)).kind).toBe('enrolled');
			expect((await signIn(mail('helle'), OTHER)).kind).toBe('signed-in');
		});

		it('who is closed is signed out, cannot sign in, and cannot use a code', async () => {
			const employer = await anEmployer();
			const trainer = await aTrainer(employer);
			await enrolStaff(db, { code: trainer.code, password: PASSWORD }, address, NOW);
			const reset = await resetPerson(db, employer, trainer.id, NOW);
			expect(await closeAccount(db, employer, trainer.id, NOW)).toBe(true);
			expect(await closeAccount(db, employer, trainer.id, NOW)).toBe(false);
			expect(await enrolStaff(db, { code: reset.kind === 'code' ? reset.code : '', password: OTHER }, address, NOW)).toEqual(NO_CODE);
			expect(await signIn(mail('helle'), PASSWORD)).toEqual(WRONG);
			expect(await resetPerson(db, employer, trainer.id, NOW)).toEqual({ kind: 'not-found' });
			expect(await passwordCode(db, mail('helle'), NOW)).toBeNull();
		});

		it('gets a code from the command line when nobody else can help; the old password holds until it is used', async () => {
			await anEmployer();
			const code = await passwordCode(db, mail('orla').toUpperCase(), NOW);
			expect((await signIn(mail('orla'), PASSWORD)).kind).toBe('signed-in');
			expect((await enrolStaff(db, { code: code ?? '', password: OTHER }, address, NOW)).kind).toBe('enrolled');
			expect(await signIn(mail('orla'), PASSWORD)).toEqual(WRONG);
			expect(await passwordCode(db, mail('nobody'), NOW)).toBeNull();
		});
	});

	describe('an employer', () => {
		it('does nothing to people of another organisation', async () => {
			const [employer, stranger] = [await anEmployer(), await anEmployer('stranger')];
			const trainer = await aTrainer(employer);
			await enrolStaff(db, { code: trainer.code, password: PASSWORD }, address, NOW);
			const before = await findPersonById(db, trainer.id);
			expect(await closeAccount(db, stranger, trainer.id, NOW)).toBe(false);
			expect(await resetPerson(db, stranger, trainer.id, NOW)).toEqual({ kind: 'not-found' });
			expect(await unlockPerson(db, stranger, trainer.id, NOW)).toBe(false);
			expect(await findPersonById(db, trainer.id)).toEqual(before);
			expect((await listStaff(db, stranger)).map(({ id }) => id)).toEqual([stranger.id]);
			expect((await readLog(db, stranger, { who: '', range: ALL_DAYS })).deeds.map(({ kind }) => kind)).toEqual(['organisation-set-up']);
		});

		it('cannot close the own account, so that one is always left', async () => {
			const employer = await anEmployer();
			expect(await closeAccount(db, employer, employer.id, NOW)).toBe(false);
		});

		it('takes a learner’s PIN back', async () => {
			const employer = await anEmployer();
			const learner = await aLearner(db, employer.organisation, `L-${count}`);
			await db.updateTable('person').set({ secret: 'some hash' }).where('id', '=', learner).execute();
			expect(await resetPerson(db, employer, learner, NOW)).toEqual({ kind: 'pin' });
			expect((await findPersonById(db, learner))?.secret).toBeNull();
		});

		it('changes what the organisation has chosen, and sees who did it', async () => {
			const employer = await anEmployer();
			const settings = { name: 'Harrow', rules: 'ca-ontario', units: 'metric', language: 'en', zone: 'UTC' } as const;
			await changeSettings(db, employer, settings, later(60));
			// The pass rule is chosen on a page of its own.
			expect(await settingsOf(db, employer.organisation)).toEqual({ ...settings, passRule: 'staged' });
			const [newest] = (await readLog(db, employer, { who: '', range: ALL_DAYS })).deeds;
			expect(newest).toMatchObject({ kind: 'settings-changed', actor: { name: 'Orla Finch' } });
		});
	});

	it('no secret stands in any table, neither as text nor in another writing', async () => {
		const trainer = await aTrainer(await anEmployer());
		await enrolStaff(db, { code: trainer.code, password: OTHER }, address, NOW);
		await signIn(mail('helle'), 'a wrong password that was typed');
		await signIn('typed into the wrong field 482917', PASSWORD);
		const cookies = new Map<string, string>();
		await startSession(db, { get: () => undefined, set: (name, value) => void cookies.set(name, value), delete: () => undefined }, true, trainer.id, NOW);
		const secrets = [PASSWORD, OTHER, 'a wrong password that was typed', 'typed into the wrong field 482917', trainer.code, trainer.code.replaceAll('-', ''), ...cookies.values()];
		const tables = ['organisation', 'person', 'session', 'enrolment', 'throttle', 'audit', 'guest', 'joined_guest', 'crew'] as const;
		const all = (await Promise.all(tables.map((table) => db.selectFrom(table).selectAll().execute()))).map((rows) => JSON.stringify(rows).toLowerCase()).join('\n');
		expect(all).toContain(trainer.id);
		for (const secret of secrets) {
			for (const written of [secret, Buffer.from(secret).toString('hex'), Buffer.from(secret).toString('base64')]) expect(all).not.toContain(written.toLowerCase());
		}
	});
});
