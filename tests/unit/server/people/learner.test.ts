import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { joinCrew } from '#lib/server/people/join.ts';
import { signInLearner } from '#lib/server/people/learner.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, anOrganisation, later, type TestCrew } from './organisation.ts';

const PIN = '482917';
const ADDRESS = '203.0.113.7';
const WRONG = { kind: 'refused', why: 'wrong' };

describe.each(DATABASES)('a learner who signs in, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let crew: TestCrew;
	let learner: string;
	let number: string;
	let count = 0;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		crew = await aCrew(db, organisation);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function joined(inOrganisation: string, onCrew: TestCrew, withNumber: string, pin = PIN): Promise<string> {
		const person = await aLearner(db, inOrganisation, withNumber, [onCrew]);
		const claim = { code: onCrew.joinCode, name: 'Dario Penn', number: withNumber };
		expect((await joinCrew(db, { claim, pin, again: pin, guest: null }, ADDRESS, NOW)).kind).toBe('joined');
		return person;
	}

	beforeEach(async () => {
		count += 1;
		number = `W-${String(count)}`;
		learner = await joined(organisation, crew, number);
	});

	const signIn = (pin = PIN, at = NOW, change: { number?: string; crewCode?: string; address?: string } = {}) =>
		signInLearner(db, { number, pin, crewCode: '', ...change }, change.address ?? ADDRESS, at);

	it('needs number and PIN, however they are spaced and written', async () => {
		expect(await signIn()).toEqual({ kind: 'signed-in', person: learner });
		expect(await signIn('48 29 17', NOW, { number: ` w -${String(count)} ` })).toEqual({ kind: 'signed-in', person: learner });
		expect(await signIn(PIN, NOW, { crewCode: crew.joinCode.toLowerCase() })).toEqual({ kind: 'signed-in', person: learner });
	});

	it('is told the same for a wrong PIN, an unknown number, another crew’s code and a person without a PIN', async () => {
		await aLearner(db, organisation, `${number}-NEW`, [crew]);
		const other = await aCrew(db, await anOrganisation(db));
		expect(await signIn('482918')).toEqual(WRONG);
		expect(await signIn(PIN, NOW, { number: `${number}-NOBODY` })).toEqual(WRONG);
		expect(await signIn(PIN, NOW, { crewCode: other.joinCode })).toEqual(WRONG);
		expect(await signIn(PIN, NOW, { crewCode: 'NOSUCHCODE' })).toEqual(WRONG);
		expect(await signIn(PIN, NOW, { number: `${number}-NEW` })).toEqual(WRONG);
		expect(await signIn('', NOW, { number: '' })).toEqual(WRONG);
	});

	// A stated rule of this program: reference stack.md section 7, "5 failures, then growing delay, then lock".
	it('waits after five failures and is locked after ten, the right PIN notwithstanding', async () => {
		for (let i = 0; i < 5; i += 1) expect(await signIn('000001')).toEqual(WRONG);
		expect(await signIn()).toMatchObject({ kind: 'refused', why: 'wait', retryAfter: expect.any(Number) });
		let at = NOW;
		for (let i = 5; i < 10; i += 1) {
			at = new Date(at.getTime() + 3600_000);
			expect(await signIn('000001', at)).toEqual(WRONG);
		}
		expect(await signIn(PIN, new Date(at.getTime() + 86_400_000))).toEqual({ kind: 'refused', why: 'locked' });
	});

	it('begins anew after a right PIN', async () => {
		for (let i = 0; i < 4; i += 1) await signIn('000001');
		await signIn();
		for (let i = 0; i < 4; i += 1) expect(await signIn('000001')).toEqual(WRONG);
		expect((await signIn()).kind).toBe('signed-in');
	});

	it('an unknown number waits and locks like a known one', async () => {
		const unknown = { number: `${number}-NOBODY` };
		for (let i = 0; i < 5; i += 1) expect(await signIn(PIN, NOW, unknown)).toEqual(WRONG);
		expect(await signIn(PIN, NOW, unknown)).toMatchObject({ why: 'wait' });
	});

	it('of guesses that arrive together, no more than five are looked at', async () => {
		const outcomes = await Promise.all(Array.from({ length: 12 }, (_guess, i) => signIn(String(100_000 + i))));
		expect(outcomes.filter((one) => one.kind === 'refused' && one.why === 'wrong')).toHaveLength(5);
	});

	it('is asked for the crew where two organisations know the number, whatever the PIN', async () => {
		const second = await anOrganisation(db);
		const theirs = await aCrew(db, second);
		const namesake = await joined(second, theirs, number, '719284');
		expect(await signIn()).toEqual({ kind: 'refused', why: 'which-crew' });
		expect(await signIn('000001')).toEqual({ kind: 'refused', why: 'which-crew' });
		expect(await signIn(PIN, NOW, { crewCode: crew.joinCode })).toEqual({ kind: 'signed-in', person: learner });
		expect(await signIn('719284', NOW, { crewCode: theirs.joinCode })).toEqual({ kind: 'signed-in', person: namesake });
		expect(await signIn(PIN, NOW, { crewCode: theirs.joinCode })).toEqual(WRONG);
	});

	it('who has left is told what an unknown number is told', async () => {
		await db.updateTable('person').set({ closed_at: NOW.toISOString() }).where('id', '=', learner).execute();
		expect(await signIn()).toEqual(WRONG);
	});

	it('leaves a note of each, without the PIN', async () => {
		await signIn('000001', later(1));
		await signIn(PIN, later(2));
		const notes = await db.selectFrom('audit').selectAll().where('subject_id', '=', learner).orderBy('at').execute();
		expect(notes.map(({ kind, actor_id, organisation_id }) => ({ kind, actor_id, organisation_id }))).toEqual([
			{ kind: 'learner-joined', actor_id: learner, organisation_id: organisation },
			{ kind: 'sign-in-refused', actor_id: null, organisation_id: organisation },
			{ kind: 'signed-in', actor_id: learner, organisation_id: organisation }
		]);
		expect(JSON.stringify(notes)).not.toMatch(/482917|000001/);
	});
});
