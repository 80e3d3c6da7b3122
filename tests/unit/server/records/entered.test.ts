import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '#lib/records/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { identitiesOf } from '#lib/server/db/records.ts';
import { addToCrew } from '#lib/server/people/crew-list.ts';
import { furtherSetUpCode, setUpOrganisation } from '#lib/server/people/organisation.ts';
import { inviteStaff } from '#lib/server/people/staff.ts';
import type { Person } from '#lib/server/people/who.ts';
import { enterRoster } from '#lib/server/roster/enter.ts';
import { brokenIn, entriesOf } from '../../../support/chain-of.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aMember, anOrganisation, type TestCrew } from '../people/organisation.ts';

/** @source issue "The employer", append-only and chained: salted commitments to name and personal number inside the chain */
describe.each(DATABASES)('whoever is entered on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let crew: TestCrew;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		crew = await aCrew(db, organisation);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	/** What a deed added to the chain of an organisation, with the names that its commitments hold. */
	async function added(deed: () => Promise<unknown>): Promise<readonly (Pick<Entry, 'kind' | 'by'> & { readonly name: string | undefined })[]> {
		const before = (await entriesOf(db, organisation)).length;
		await deed();
		return named(organisation, (await entriesOf(db, organisation)).slice(before));
	}

	async function named(of: string, entries: readonly Entry[]) {
		const held = await identitiesOf(db, of, entries.flatMap((one) => (one.kind === 'named' ? [one.commitment] : [])));
		return entries.map((one) => ({ kind: one.kind, by: one.by, name: one.kind === 'named' ? held.get(one.commitment)?.name : undefined }));
	}

	it('as the first employer stands in the new chain', async () => {
		const settings = { name: 'Marsh Towers', rules: 'us-construction', units: 'us', language: 'es', zone: 'America/Denver', passRule: 'staged' } as const;
		const person = { name: 'Helle Brandt', email: 'first@example.org', password: 'three cranes by the river' };
		const done = await setUpOrganisation(db, { code: await furtherSetUpCode(db, NOW), settings, person }, '192.0.2.1', NOW);
		const { organisation_id: own } = await db.selectFrom('person').select('organisation_id').where('id', '=', done.kind === 'enrolled' ? done.person : '').executeTakeFirstOrThrow();
		expect(await named(own, await entriesOf(db, own))).toEqual([
			{ kind: 'opened', by: null, name: undefined },
			{ kind: 'named', by: null, name: 'Helle Brandt' }
		]);
		expect(await brokenIn(db, own)).toEqual([]);
	});

	it('as staff, by invitation, stands in the chain', async () => {
		const invite = () => inviteStaff(db, employer, { role: 'trainer', name: 'Tomas Eik', email: 'tomas@example.org' }, NOW);
		expect(await added(invite)).toEqual([{ kind: 'named', by: employer.id, name: 'Tomas Eik' }]);
		// The e-mail is taken now: nobody is entered.
		expect(await added(invite)).toEqual([]);
	});

	it('on a crew’s list stands in the chain once, on however many lists', async () => {
		const other = await aCrew(db, organisation);
		const person = { name: 'Dario Penn', number: 'N-1' };
		expect(await added(() => addToCrew(db, employer, crew.id, person, NOW))).toEqual([{ kind: 'named', by: employer.id, name: 'Dario Penn' }]);
		expect(await added(() => addToCrew(db, employer, other.id, person, NOW))).toEqual([]);
		expect(await added(() => Promise.all([1, 2, 3].map(() => addToCrew(db, employer, crew.id, { name: 'Nadia Rook', number: 'N-2' }, NOW))))).toHaveLength(1);
	});

	it('by a list stands in the chain, each new one once', async () => {
		const list = ['Dario Penn;N-1', ...Array.from({ length: 30 }, (__, i) => `Worker ${String(i)};L-${String(i)}`)].join('\n');
		const entries = await added(() => Promise.all([enterRoster(db, employer, crew.id, list, NOW), enterRoster(db, employer, crew.id, list, NOW)]));
		expect(entries.map(({ name }) => name).toSorted()).toEqual(Array.from({ length: 30 }, (__, i) => `Worker ${String(i)}`).toSorted());
		expect(await brokenIn(db, organisation)).toEqual([]);
	});
});
