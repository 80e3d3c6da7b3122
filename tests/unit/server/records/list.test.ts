import { randomUUID } from 'node:crypto';
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NO_END, TRAINING_STATES, addDays, stateOn, type Entry, type TrainingState } from '#lib/records/index.ts';
import { putOnList } from '#lib/server/db/crew-list.ts';
import { archiveCrew } from '#lib/server/db/crews.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { countStates, idsOfStretch } from '#lib/server/db/training.ts';
import type { Person } from '#lib/server/people/who.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { ON_PAGE, readAskedList, trainingList } from '#lib/server/records/list.ts';
import { enterPeople } from '#lib/server/records/names.ts';
import { completedEntry, handsOnEntry, orderEntry, priorTrainingEntry } from '../../../support/record-entries.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, type TestCrew } from '../people/organisation.ts';

/** Of NOW, in UTC, the zone of the organisation. */
const TODAY = '2026-11-25';

describe.each(DATABASES)('who is trained, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let north: TestCrew;
	let south: TestCrew;
	const ids: Record<string, string> = {};

	async function append(entries: readonly Entry[]): Promise<void> {
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, entries));
	}

	/** A learner with a record that is valid until a day. */
	async function trained(name: string, number: string, until: string | null, crews: readonly TestCrew[]): Promise<string> {
		const id = await aLearner(db, organisation, number, crews, name);
		ids[name] = id;
		await append([priorTrainingEntry(id, '2026-01-10', until)]);
		return id;
	}

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer');
		north = await aCrew(db, organisation);
		south = await aCrew(db, organisation);
		await db.updateTable('crew').set({ name: 'Silos al Sur' }).where('id', '=', south.id).execute();
		await trained('Wen Abara', 'C-203', addDays(TODAY, 200), [north]);
		await trained('José Álvarez Nuñez', 'C-117', addDays(TODAY, 30), [south]);
		await trained('Tomas Eik', 'C-201', addDays(TODAY, -1), [north, south]);
		await trained('Ida Storm', 'C-300', null, [south]);
		await trained('Ola Quay', 'C-400', TODAY, []);
		const dario = await aLearner(db, organisation, 'C-500', [north], 'Dario Penn');
		ids['Dario Penn'] = dario;
		await db.insertInto('course_start').values({ person_id: dario, course: 'lanyard-orientation', version: 1, seed: '1', at: NOW.toISOString() }).execute();
		await append([completedEntry(dario, '2026-11-20')]);
		ids['100%_Bo'] = await aLearner(db, organisation, 'C-600', [], '100%_Bo');
		const gone = await trained('Nadia Rook', 'C-700', addDays(TODAY, 90), [north]);
		await append([{ kind: 'left', at: NOW.toISOString(), by: employer.id, person: gone, day: TODAY }]);
		// Another organisation, with people who would fit everything that is asked below.
		const other = await anOrganisation(db);
		const theirs = await aCrew(db, other);
		const stranger = await aLearner(db, other, 'C-203', [theirs], 'Wen Abara');
		ids['stranger'] = stranger;
		await db.transaction().execute((transaction) => appendEntries(transaction, other, [priorTrainingEntry(stranger, '2026-01-10')]));
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function ask(search: Readonly<Record<string, string>>, who = employer) {
		const list = await trainingList(db, who, readAskedList(new URLSearchParams(search)), NOW);
		return { ...list, names: list.rows.map(({ name }) => name) };
	}

	// What follows is reckoned by hand from the people above: common practice, no source.
	it('counts who is in which state today, those who left apart', async () => {
		const { counts, today } = await ask({});
		expect(today).toBe(TODAY);
		// Valid through the whole of its last day; common practice, no source.
		expect(counts).toEqual({ all: 7, current: 2, 'expires-soon': 2, expired: 1, 'in-training': 1, never: 1, left: 1 });
	});

	it('tells of everybody state, last day, crews and what there is to know', async () => {
		const { rows } = await ask({});
		const told = Object.fromEntries(rows.map(({ name, number, state, until, remark, crews }) => [name, { number, state, until, remark, crews }]));
		expect(told['Wen Abara']).toEqual({ number: 'C-203', state: 'current', until: '2027-06-13', remark: { kind: 'months-left', n: 6 }, crews: ['Bridges North'] });
		expect(told['José Álvarez Nuñez']).toMatchObject({ state: 'expires-soon', remark: { kind: 'days-left', n: 30 } });
		expect(told['Tomas Eik']).toMatchObject({ state: 'expired', remark: { kind: 'days-ago', n: 1 }, crews: ['Bridges North', 'Silos al Sur'] });
		expect(told['Ida Storm']).toMatchObject({ state: 'current', until: NO_END, remark: { kind: 'no-end' } });
		expect(told['Ola Quay']).toMatchObject({ state: 'expires-soon', remark: { kind: 'last-day' }, crews: [] });
		expect(told['Dario Penn']).toMatchObject({ state: 'in-training', until: null, remark: { kind: 'sign-off-missing' } });
		expect(told['100%_Bo']).toMatchObject({ state: 'never', remark: { kind: 'not-begun' } });
	});

	it.each([
		['the name, without its accents', { q: 'jose ALVAREZ' }, ['José Álvarez Nuñez']],
		['words in any order, with a comma', { q: 'Nuñez, José' }, ['José Álvarez Nuñez']],
		['a part of the number', { q: 'c-20' }, ['Tomas Eik', 'Wen Abara']],
		['the name of a crew', { q: 'silos' }, ['Tomas Eik', 'José Álvarez Nuñez', 'Ida Storm']],
		['a crew and a name', { q: 'silos eik' }, ['Tomas Eik']],
		['a short word of a crew’s name, but no part of one', { q: 'al' }, ['Tomas Eik', 'José Álvarez Nuñez', 'Ida Storm']],
		['signs that mean something to a database', { q: '100%_' }, ['100%_Bo']],
		['a sign that would fit anything', { q: '_____' }, []],
		['nobody of another organisation', { q: 'Wen Abara' }, ['Wen Abara']],
		['those of a crew', { crew: 'north' }, ['Tomas Eik', 'Wen Abara', 'Dario Penn']],
		['a crew that is not theirs: as if none were named', { crew: 'theirs', q: 'quay' }, ['Ola Quay']],
		['a state', { state: 'expired' }, ['Tomas Eik']],
		['those who left', { state: 'left' }, ['Nadia Rook']],
		['a state within a crew', { crew: 'north', state: 'current' }, ['Wen Abara']],
		['by name', { sort: 'name' }, ['100%_Bo', 'Dario Penn', 'Ida Storm', 'José Álvarez Nuñez', 'Ola Quay', 'Tomas Eik', 'Wen Abara']],
		['by what ends first, those without an end last', {}, ['Tomas Eik', 'Ola Quay', 'José Álvarez Nuñez', 'Wen Abara', 'Ida Storm', 'Dario Penn', '100%_Bo']],
		['by state, what needs something first', { sort: 'state' }, ['Tomas Eik', 'Ola Quay', 'José Álvarez Nuñez', 'Dario Penn', '100%_Bo', 'Wen Abara', 'Ida Storm']],
		['what it does not know as if it were not there', { sort: 'shoe-size', state: 'tired', page: '-3' }, ['Tomas Eik', 'Ola Quay', 'José Álvarez Nuñez', 'Wen Abara', 'Ida Storm', 'Dario Penn', '100%_Bo']]
	])('finds %s', async (_what, search: Readonly<Record<string, string>>, names) => {
		const crew = search['crew'] === 'north' ? north.id : search['crew'] === 'theirs' ? randomUUID() : undefined;
		const found = await ask({ ...search, ...(crew === undefined ? {} : { crew }) });
		expect(found.names).toEqual(names);
		expect(found.rows.map(({ id }) => id)).not.toContain(ids['stranger']);
	});

	it('says that retraining is due, and that a crew put away is none any more', async () => {
		const id = await trained('Leo Strand', 'C-800', null, [south]);
		await append([orderEntry(id, TODAY, '2027-03-03')]);
		await archiveCrew(db, employer, south.id, NOW.toISOString());
		const { rows } = await ask({ q: 'strand' });
		expect(rows).toMatchObject([{ state: 'current', until: '2027-03-03', remark: { kind: 'retraining-due', day: '2027-03-03' }, crews: [] }]);
		await archiveCrew(db, employer, south.id, null);
	});

	it('counts the whole training only once the hands-on part is signed', async () => {
		const id = ids['Dario Penn'] ?? '';
		await append([handsOnEntry(id, '2026-11-24')]);
		expect((await ask({ q: 'penn' })).rows).toMatchObject([{ state: 'current', remark: { kind: 'no-end' } }]);
	});

	it('goes through all people page by page, in each order, each once', async () => {
		const many = await anOrganisation(db);
		const boss = await aMember(db, many, 'employer');
		const count = 2 * ON_PAGE + 7;
		const people = Array.from({ length: count }, (_one, i) => ({ role: 'learner' as const, name: `Worker ${String(i % 9)}`, personalNumber: `N${String(i)}` }));
		const made = await db.transaction().execute((transaction) => enterPeople(transaction, many, people, null, NOW));
		await db.transaction().execute((transaction) =>
			appendEntries(transaction, many, made.filter((_id, i) => i % 3 === 0).map((person, i) => priorTrainingEntry(person, '2026-01-10', i % 4 === 0 ? null : addDays(TODAY, i * 11 - 100))))
		);
		for (const sort of ['until', 'name', 'state']) {
			const seen: string[] = [];
			for (let page = 1; page <= 3; page += 1) seen.push(...(await ask({ sort, page: String(page) }, boss)).rows.map(({ id }) => id));
			expect(new Set(seen).size, sort).toBe(count);
			expect(seen.toSorted()).toEqual(made.toSorted());
			// A page behind the last is the last.
			const last = await ask({ sort, page: '99' }, boss);
			expect(last.asked.page).toBe(3);
			expect(last.rows.map(({ id }) => id)).toEqual(seen.slice(2 * ON_PAGE));
		}
	});

	it('has each person in the state that stateOn has, whatever the day', async () => {
		const many = await anOrganisation(db);
		const made = await db.transaction().execute((transaction) =>
			enterPeople(transaction, many, Array.from({ length: 24 }, (_one, i) => ({ role: 'learner' as const, name: `Worker ${String(i)}`, personalNumber: `N${String(i)}` })), null, NOW)
		);
		const until = fc.oneof(fc.constant(null), fc.constant(NO_END), fc.integer({ min: -40, max: 400 }).map((days) => addDays('2028-02-01', days)));
		await fc.assert(
			fc.asyncProperty(
				fc.array(fc.record({ until, begun: fc.boolean() }), { minLength: made.length, maxLength: made.length }),
				fc.integer({ min: -60, max: 60 }).map((days) => addDays('2028-02-29', days)),
				fc.integer({ min: 0, max: 365 }),
				async (standings, today, soonDays) => {
					await db.transaction().execute(async (transaction) => {
						for (const [i, standing] of standings.entries()) {
							await transaction.updateTable('training_state').set({ until: standing.until, begun: standing.begun ? 1 : 0 }).where('person_id', '=', made[i] ?? '').execute();
						}
					});
					const scope = { organisation: many, gone: false, words: [], crew: null };
					const days = { today, soonUntil: addDays(today, soonDays) };
					const wanted = Object.fromEntries(TRAINING_STATES.map((state): [TrainingState, string[]] => [state, made.filter((_id, i) => stateOn(standings[i] ?? { until: null, begun: false }, today, soonDays) === state)]));
					const counts = await countStates(db, scope, days);
					for (const state of TRAINING_STATES) {
						const found = await idsOfStretch(db, scope, days, { states: [state], by: 'name' }, { from: 0, most: made.length });
						expect(found.toSorted(), state).toEqual(wanted[state]?.toSorted());
						expect(counts[state], state).toBe(wanted[state]?.length);
					}
				}
			),
			{ numRuns: 12 }
		);
	});

	it('takes a name that unfolds into very many letters', async () => {
		// U+FDFA is eighteen letters in NFKD: Unicode Character Database, UnicodeData.txt; from memory.
		const id = await aLearner(db, organisation, 'C-900', [], 'ﷺ'.repeat(200));
		await putOnList(db, north.id, id, NOW.toISOString());
		expect((await ask({ q: 'c-900', crew: north.id, state: 'never' })).rows.map((one) => one.id)).toEqual([id]);
	});
});
