import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { findOnList, joinCrew, pinProblem, type JoinClaim } from '#lib/server/people/join.ts';
import { signInLearner } from '#lib/server/people/learner.ts';
import { addressKey, crewKey } from '#lib/server/people/throttle.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, anOrganisation, later, type TestCrew } from './organisation.ts';

const PIN = '482917';

describe('a chosen PIN', () => {
	it.each([
		['48291', '48291', 'not-six-digits'],
		['4829171', '4829171', 'not-six-digits'],
		['48291a', '48291a', 'not-six-digits'],
		['123456', '123456', 'weak'],
		['777777', '777777', 'weak'],
		['482917', '482971', 'differs'],
		['482917', '', 'differs'],
		['482917', '482917', null]
	])('%s and again %s: %s', (pin, again, problem) => {
		expect(pinProblem(pin, again, 'W-1')).toBe(problem);
	});

	it('is not the personal number', () => {
		expect(pinProblem('480517', '480517', 'B-480517')).toBe('weak');
	});
});

describe.each(DATABASES)('joining a crew, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let crew: TestCrew;
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

	/** An address that has not tried yet. */
	const fresh = () => `10.0.0.${String((count += 1))}`;

	async function onList(name = 'Dario Penn', crews = [crew]): Promise<{ person: string; claim: JoinClaim }> {
		const number = `N${String((count += 1))}`;
		const person = await aLearner(db, organisation, number, crews, name);
		return { person, claim: { code: crews[0]?.joinCode ?? crew.joinCode, name, number } };
	}

	const join = (claim: JoinClaim, guest: string | null = null, pin = PIN) => joinCrew(db, { claim, pin, again: pin, guest }, fresh(), NOW);

	it.each(['dario penn', 'PENN, Dario', '  Dario   Penn ', 'Dário Penn'])('finds Dario Penn as “%s”', async (typed) => {
		const { claim } = await onList();
		expect((await findOnList(db, { ...claim, name: typed }, fresh(), NOW)).kind).toBe('on-list');
	});

	it('tells the same for a wrong code, name or number, another crew’s code and a crew put away', async () => {
		const { claim } = await onList();
		const other = await aCrew(db, organisation);
		const away = await aCrew(db, organisation);
		await db.updateTable('crew').set({ archived_at: NOW.toISOString() }).where('id', '=', away.id).execute();
		const { claim: put } = await onList('Nadia Rook', [away]);
		const claims = [
			{ ...claim, code: 'NOSUCH' },
			{ ...claim, name: 'Dario' },
			{ ...claim, name: 'Nadia Rook' },
			{ ...claim, number: 'N-NONE' },
			{ ...claim, code: other.joinCode },
			put
		];
		for (const one of claims) expect(await findOnList(db, one, fresh(), NOW)).toEqual({ kind: 'not-on-list' });
		for (const one of claims) expect(await join(one)).toEqual({ kind: 'not-on-list' });
	});

	it('names of no letters, right-to-left and very long ones are compared too', async () => {
		for (const name of ['نادية روك', 'ดาริโอ เพ็นน์', 'x'.repeat(200), '李小龍']) {
			const { claim, person } = await onList(name);
			expect(await join(claim), name).toEqual({ kind: 'joined', person });
		}
		const { claim } = await onList('…');
		expect(await join({ ...claim, name: '?' })).toEqual({ kind: 'not-on-list' });
	});

	it('two of one name are told apart by their numbers', async () => {
		const [one, two] = [await onList('Jo Marchetti'), await onList('Jo Marchetti')];
		expect(await join(one.claim)).toEqual({ kind: 'joined', person: one.person });
		expect(await join(two.claim)).toEqual({ kind: 'joined', person: two.person });
	});

	it('on two lists is one person: joined by one code, known by the other', async () => {
		const second = await aCrew(db, organisation);
		const { claim, person } = await onList('Sefa Lindt', [crew, second]);
		expect(await join(claim)).toEqual({ kind: 'joined', person });
		expect(await join({ ...claim, code: second.joinCode })).toEqual({ kind: 'has-pin' });
		expect(await signInLearner(db, { number: claim.number, pin: PIN, crewCode: second.joinCode }, fresh(), NOW)).toEqual({ kind: 'signed-in', person });
	});

	it('twice at once: one wins with its PIN, the other is sent to sign in', async () => {
		const { claim, person } = await onList();
		const pins = ['482917', '719284', '264815'];
		const outcomes = await Promise.all(pins.map((pin) => join(claim, null, pin)));
		expect(outcomes.filter((one) => one.kind === 'joined')).toEqual([{ kind: 'joined', person }]);
		expect(outcomes.filter((one) => one.kind === 'has-pin')).toHaveLength(2);
		const winner = pins[outcomes.findIndex((one) => one.kind === 'joined')] ?? '';
		expect((await signInLearner(db, { number: claim.number, pin: winner, crewCode: '' }, fresh(), NOW)).kind).toBe('signed-in');
	});

	it('a PIN that is refused leaves nothing behind', async () => {
		const { claim, person } = await onList();
		expect(await join(claim, null, '123456')).toEqual({ kind: 'pin', problem: 'weak' });
		const row = await db.selectFrom('person').select('secret').where('id', '=', person).executeTakeFirst();
		expect(row).toEqual({ secret: null });
	});

	it('keeps the PIN as a hash that says nothing of it', async () => {
		const { claim, person } = await onList();
		await join(claim);
		const row = await db.selectFrom('person').select('secret').where('id', '=', person).executeTakeFirst();
		expect(row?.secret).toMatch(/^\$argon2id\$/);
		expect(row?.secret).not.toContain(PIN);
	});

	it('takes the guest along, and leaves one alone that is somebody else', async () => {
		const guest = randomUUID();
		await db.insertInto('guest').values({ id: guest, token_hash: guest, created_at: NOW.toISOString() }).execute();
		const [first, second] = [await onList(), await onList('Nadia Rook')];
		expect((await join(first.claim, guest)).kind).toBe('joined');
		expect((await join(second.claim, guest)).kind).toBe('joined');
		const rows = await db.selectFrom('joined_guest').select(['guest_id', 'person_id']).where('guest_id', '=', guest).execute();
		expect(rows).toEqual([{ guest_id: guest, person_id: first.person }]);
	});

	it('wrong claims count for the code and the address, and wait after many; right ones do not count', async () => {
		const { claim } = await onList();
		const fished = await aCrew(db, organisation);
		const address = fresh();
		const counted = async () =>
			(await db.selectFrom('throttle').select('failures').where('key', 'in', [crewKey(fished.joinCode), addressKey(address)]).execute()).map((row) => row.failures);
		await findOnList(db, { ...claim, code: fished.joinCode }, address, NOW);
		await findOnList(db, { ...claim, code: fished.joinCode, name: 'Nobody' }, address, NOW);
		expect(await counted()).toEqual([2, 2]);
		await findOnList(db, claim, address, NOW);
		expect(await counted()).toEqual([2, 2]);
		await db.updateTable('throttle').set({ failures: 100 }).where('key', '=', crewKey(fished.joinCode)).execute();
		const other = fresh();
		expect(await findOnList(db, { ...claim, code: fished.joinCode }, other, NOW)).toMatchObject({ kind: 'wait', retryAfter: expect.any(Number) });
		expect((await findOnList(db, claim, other, NOW)).kind).toBe('on-list');
		expect((await findOnList(db, { ...claim, code: fished.joinCode }, other, later(3600))).kind).toBe('not-on-list');
	});
});
