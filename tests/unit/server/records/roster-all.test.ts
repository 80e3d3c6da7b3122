import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { learnersOf } from '#lib/server/db/crew-list.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { addToCrew, takeOffCrew } from '#lib/server/people/crew-list.ts';
import { setArchived } from '#lib/server/people/crews.ts';
import type { Person } from '#lib/server/people/who.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { markLeft } from '#lib/server/records/leaving.ts';
import { enterEveryone, type EnteringAll } from '#lib/server/roster/enter-everyone.ts';
import { isUnchanged, lookAtEveryone, type LookingAtAll } from '#lib/server/roster/everyone.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, later } from '../people/organisation.ts';
import { aCompletion, breakChain, chainHolds } from './trained.ts';

/** Three hundred people of six crews, as a spreadsheet saves them. */
const THREE_HUNDRED = ['Name;Number;Crew', ...Array.from({ length: 300 }, (unused, i) => `Worker ${'ABCDEF'[i % 6] ?? ''} No${String(i)};N-${String(i)};Gang ${String(i % 6)}`)].join('\r\n');

// What is tested is our own rule of one list for everyone: common practice, no source.
describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	beforeEach(async () => {
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function look(text: string): Promise<Extract<LookingAtAll, { kind: 'looked' }>> {
		const looked = await lookAtEveryone(db, employer, text);
		if (looked.kind !== 'looked') throw new Error(looked.why);
		return looked;
	}

	async function enter(text: string, othersLeft = false, now = NOW): Promise<EnteringAll> {
		return enterEveryone(db, employer, { text, shown: (await look(text)).shown, othersLeft }, now);
	}

	async function people(): Promise<readonly string[]> {
		const rows = await db.selectFrom('person').selectAll().where('organisation_id', '=', organisation).where('role', '=', 'learner').orderBy('personal_number').execute();
		return rows.map(({ name, personal_number, closed_at }) => `${personal_number ?? ''} ${name}${closed_at === null ? '' : ' (left)'}`);
	}

	async function crewsOf(number: string): Promise<readonly string[]> {
		const rows = await db
			.selectFrom('crew_learner')
			.innerJoin('person', 'person.id', 'crew_learner.person_id')
			.innerJoin('crew', 'crew.id', 'crew_learner.crew_id')
			.select('crew.name')
			.where('person.organisation_id', '=', organisation)
			.where('person.personal_number', '=', number)
			.orderBy('crew.name')
			.execute();
		return rows.map(({ name }) => name);
	}

	async function entries(): Promise<number> {
		return (await db.selectFrom('record_head').select('seq').where('organisation_id', '=', organisation).executeTakeFirst())?.seq ?? 0;
	}

	async function audits(): Promise<number> {
		return (await db.selectFrom('audit').select('id').where('organisation_id', '=', organisation).execute()).length;
	}

	it('three hundred people are entered with their crews; the same list once more changes nothing at all', async () => {
		expect(await enter(THREE_HUNDRED)).toEqual({ kind: 'entered', added: 300, changed: 0, left: 0 });
		expect(await people()).toHaveLength(300);
		expect(await crewsOf('N-7')).toEqual(['Gang 1']);
		const [crews, before, noted] = [await db.selectFrom('crew').select('name').where('organisation_id', '=', organisation).orderBy('name').execute(), await entries(), await audits()];
		expect(crews.map(({ name }) => name)).toEqual(['Gang 0', 'Gang 1', 'Gang 2', 'Gang 3', 'Gang 4', 'Gang 5']);
		const again = await look(THREE_HUNDRED);
		expect(again.lines.every((line) => line.wrong === undefined && isUnchanged(line.change))).toBe(true);
		expect(await enter(THREE_HUNDRED, true)).toEqual({ kind: 'entered', added: 0, changed: 0, left: 0 });
		expect([await entries(), await audits(), (await people()).length]).toEqual([before, noted, 300]);
		expect(await chainHolds(db, organisation)).toBe(true);
	});

	it('names that are swapped between two numbers are two changes of name, and the preview says that no word is alike', async () => {
		await enter('Name,Number\nNadia Rook,C-1\nDario Penn,C-2');
		const text = 'Name,Number\nDario Penn,C-1\nNadia Rook,C-2';
		expect((await look(text)).lines.map((line) => line.wrong === undefined && line.change.renamed)).toEqual([
			{ from: 'Nadia Rook', alike: false },
			{ from: 'Dario Penn', alike: false }
		]);
		expect(await enter(text)).toEqual({ kind: 'entered', added: 0, changed: 2, left: 0 });
		expect(await people()).toEqual(['C-1 Dario Penn', 'C-2 Nadia Rook']);
		for (const row of await db.selectFrom('person').select('id').where('organisation_id', '=', organisation).where('role', '=', 'learner').execute()) expect((await recordOf(db, row.id)).names).toHaveLength(2);
	});

	it.each([
		['Nadia Rook', 'ROOK, NADIA', false],
		['Nadia Rook', 'nadia rook', false],
		['nadia rook', 'Nadia Rook', true],
		['Nadia Mcrook', 'Nadia McRook', true],
		['Nadia Nunez', 'Nadia Núñez', true],
		['Nadia Rook', 'Nadia Rook Penn', true]
	])('%s listed as %s: another name is %s', async (kept, listed, other) => {
		await enter(`Name\tNumber\n${kept}\tC-1`);
		const [line] = (await look(`Name\tNumber\n${listed}\tC-1`)).lines;
		expect(line?.wrong === undefined && line?.change.renamed !== undefined).toBe(other);
	});

	it('who is not on the list has left, where that was ticked; the record stays, and a later list brings them back', async () => {
		await enter('Name;Number;Crew\nNadia Rook;C-1;North\nDario Penn;C-2;North\nIris Dunn;C-3;North');
		const { id } = await db.selectFrom('person').select('id').where('organisation_id', '=', organisation).where('personal_number', '=', 'C-2').executeTakeFirstOrThrow();
		const record = await aCompletion(db, organisation, id, '2026-10-01');
		const shorter = 'Name;Number;Crew\nNadia Rook;C-1;North\nIris Dunn;C-3;North';
		expect((await look(shorter)).missing).toEqual({ kind: 'people', people: [{ id, name: 'Dario Penn', number: 'C-2' }] });
		expect(await enter(shorter)).toEqual({ kind: 'entered', added: 0, changed: 0, left: 0 });
		expect(await people()).toEqual(['C-1 Nadia Rook', 'C-2 Dario Penn', 'C-3 Iris Dunn']);
		expect(await enter(shorter, true)).toEqual({ kind: 'entered', added: 0, changed: 0, left: 1 });
		expect(await people()).toEqual(['C-1 Nadia Rook', 'C-2 Dario Penn (left)', 'C-3 Iris Dunn']);
		expect(await recordOf(db, id)).toMatchObject({ left: '2026-11-25', trainings: [{ id: record }] });
		expect((await look(shorter)).missing).toEqual({ kind: 'people', people: [] });
		expect(await enter('Name;Number;Crew\nDario Penn-Rook;C-2;South')).toEqual({ kind: 'entered', added: 0, changed: 1, left: 0 });
		expect(await people()).toEqual(['C-1 Nadia Rook', 'C-2 Dario Penn-Rook', 'C-3 Iris Dunn']);
		expect(await recordOf(db, id)).toMatchObject({ left: undefined, trainings: [{ id: record }] });
		expect(await crewsOf('C-2')).toEqual(['South']);
	});

	it('with a wrong line nobody leaves; without the tick the good lines are entered and the wrong ones left out', async () => {
		await enter('Name;Number\nNadia Rook;C-1\nDario Penn;C-2');
		const text = 'Name;Number\n;C-2\nIris Dunn;C-3';
		const looked = await look(text);
		expect(looked.lines[0]?.wrong).toEqual({ kind: 'field', field: 'name', problem: 'missing' });
		// The number of the wrong line is listed all the same.
		expect(looked.missing).toMatchObject({ people: [{ number: 'C-1' }] });
		expect((await enter(text, true)).kind).toBe('cannot-leave');
		expect(await people()).toEqual(['C-1 Nadia Rook', 'C-2 Dario Penn']);
		expect(await enter(text)).toEqual({ kind: 'entered', added: 1, changed: 0, left: 0 });
		expect(await people()).toEqual(['C-1 Nadia Rook', 'C-2 Dario Penn', 'C-3 Iris Dunn']);
	});

	it('each line that cannot be taken says why', async () => {
		const away = await aCrew(db, organisation);
		await setArchived(db, employer, away.id, true, NOW);
		await db.updateTable('crew').set({ name: 'Put Away' }).where('id', '=', away.id).execute();
		for (const crew of [await aCrew(db, organisation), await aCrew(db, organisation)]) await db.updateTable('crew').set({ name: 'Twice' }).where('id', '=', crew.id).execute();
		const staff = await aMember(db, organisation, 'trainer');
		await db.updateTable('person').set({ personal_number: 'S-1' }).where('id', '=', staff.id).execute();
		const { lines } = await look(['Name,Number,Crew', 'Nadia Rook,C-1,put away', 'Dario Penn,C-2,twice', 'Iris Dunn,S-1,', 'Rio Vance,C-1,', 'Ana Sol,,', 'Ana Sol,C-9,...', `Ana Sol,C-10,${'x'.repeat(201)}`].join('\n'));
		expect(lines.map(({ line, wrong }) => [line, wrong])).toEqual([
			[2, { kind: 'crew-put-away' }],
			[3, { kind: 'crew-unclear' }],
			[4, { kind: 'number-of-staff' }],
			[5, { kind: 'twice', before: 2 }],
			[6, { kind: 'field', field: 'number', problem: 'missing' }],
			[7, { kind: 'crew', problem: 'not-a-name' }],
			[8, { kind: 'crew', problem: 'too-long' }]
		]);
	});

	it('a crew is found in any writing and made once; who is on one list moves, who is on several joins one more', async () => {
		await enter('Name;Number;Crew\nNadia Rook;C-1;North\nDario Penn;C-2;North\nIris Dunn;C-3;North');
		await enter('Name;Number;Crew\nNadia Rook;C-1; SOUTH\nDario Penn;C-2;south');
		expect([await crewsOf('C-1'), await crewsOf('C-2'), await crewsOf('C-3')]).toEqual([['SOUTH'], ['SOUTH'], ['North']]);
		const extra = await aCrew(db, organisation);
		await addToCrew(db, employer, extra.id, { name: 'Nadia Rook', number: 'C-1' }, NOW);
		await enter('Name;Number;Crew\nNadia Rook;C-1;North');
		expect(await crewsOf('C-1')).toEqual(['Bridges North', 'North', 'SOUTH']);
	});

	it('a line without a crew leaves crews as they are, and a third column is the crew where there are no headings', async () => {
		await enter('Nadia Rook;C-1;North\nDario Penn;C-2;North');
		expect(await crewsOf('C-1')).toEqual(['North']);
		await enter('Name;Number;Crew\nNadia Rook-Penn;C-1;');
		expect(await crewsOf('C-1')).toEqual(['North']);
	});

	it('what would do something else than was shown is not done, and is shown anew', async () => {
		const text = 'Name;Number\nNadia Rook;C-1';
		const { shown } = await look(text);
		const late = await aLearner(db, organisation, 'C-2');
		const entering = await enterEveryone(db, employer, { text, shown, othersLeft: true }, NOW);
		expect(entering).toMatchObject({ kind: 'changed', looked: { missing: { people: [{ id: late }] } } });
		expect(await people()).toEqual(['C-2 Dario Penn']);
	});

	it('sent twice in the same moment it is entered once, and both are told so', async () => {
		const text = 'Name;Number;Crew\nNadia Rook;C-1;North\nDario Penn;C-2;North';
		const { shown } = await look(text);
		const told = await Promise.all([1, 2, 3].map(() => enterEveryone(db, employer, { text, shown, othersLeft: false }, NOW)));
		expect(told.map((one) => (one.kind === 'entered' ? one.added : one.kind)).toSorted()).toEqual([0, 0, 2]);
		expect(await people()).toHaveLength(2);
		expect(await chainHolds(db, organisation)).toBe(true);
	});

	it('what fails in the middle enters nothing: no person, no crew, nobody left', async () => {
		await enter('Name;Number\nNadia Rook;C-1\nDario Penn;C-2');
		const before = [await people(), await audits()];
		await breakChain(db, organisation);
		await expect(enter('Name;Number;Crew\nNadia Penn;C-1;North\nIris Dunn;C-3;North', true)).rejects.toThrow();
		expect([await people(), await audits()]).toEqual(before);
		expect(await db.selectFrom('crew').select('id').where('organisation_id', '=', organisation).execute()).toEqual([]);
	});

	it('another organisation’s people with the same numbers are not looked at, and no trainer enters such a list', async () => {
		const other = await anOrganisation(db);
		await aLearner(db, other, 'C-1', [], 'Nadia Rook');
		expect(await enter('Name;Number\nDario Penn;C-1')).toEqual({ kind: 'entered', added: 1, changed: 0, left: 0 });
		const trainer = await aMember(db, organisation, 'trainer');
		const text = 'Name;Number\nIris Dunn;C-2';
		expect(await enterEveryone(db, trainer, { text, shown: (await look(text)).shown, othersLeft: false }, NOW)).toEqual({ kind: 'not-found' });
	});

	it('an employer whose account was closed meanwhile enters nothing', async () => {
		const second = await aMember(db, organisation, 'employer');
		await markLeft(db, employer, second.id, '2026-11-25', NOW);
		const text = 'Name;Number\nIris Dunn;C-2';
		expect(await enterEveryone(db, second, { text, shown: (await look(text)).shown, othersLeft: false }, later(1))).toEqual({ kind: 'not-found' });
	});

	it('more than a thousand who are not on the list are counted, and not marked as left', async () => {
		const now = NOW.toISOString();
		const rows = Array.from({ length: 1002 }, (unused, i) => ({ guest: `g-${organisation}-${String(i)}`, person: `p-${organisation}-${String(i)}`, number: `M-${String(i)}` }));
		for (const part of [rows.slice(0, 501), rows.slice(501)]) {
			await db.insertInto('guest').values(part.map(({ guest }) => ({ id: guest, token_hash: guest, created_at: now }))).execute();
			await db
				.insertInto('person')
				.values(part.map(({ guest, person, number }) => ({ id: person, organisation_id: organisation, answerer_id: guest, role: 'learner' as const, name: 'Rio Vance', personal_number: number, email: null, secret: null, language: null, closed_at: null, created_at: now })))
				.execute();
		}
		const text = 'Name;Number\nRio Vance;M-0';
		expect((await look(text)).missing).toEqual({ kind: 'too-many', count: 1001 });
		expect((await enter(text, true)).kind).toBe('cannot-leave');
	});

	it('a learner who was taken off every crew stays on the list of everyone', async () => {
		const crew = await aCrew(db, organisation);
		const person = await aLearner(db, organisation, 'C-1', [crew]);
		await takeOffCrew(db, employer, crew.id, person, NOW);
		expect(await learnersOf(db, employer, crew.id)).toEqual([]);
		expect((await look('Name;Number\nIris Dunn;C-2')).missing).toMatchObject({ people: [{ id: person }] });
	});
});
