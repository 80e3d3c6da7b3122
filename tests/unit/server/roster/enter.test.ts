import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { learnersOf } from '#lib/server/db/crew-list.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { closePerson } from '#lib/server/db/people.ts';
import { setArchived } from '#lib/server/people/crews.ts';
import type { Person } from '#lib/server/people/who.ts';
import { enterRoster, lookAtRoster } from '#lib/server/roster/enter.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, type TestCrew } from '../people/organisation.ts';

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let trainer: Person;
	let colleague: Person;
	let crew: TestCrew;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer');
		colleague = await aMember(db, organisation, 'trainer', 'Tomas Eik');
		crew = await aCrew(db, organisation, [trainer]);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const names = async (of: TestCrew) => (await learnersOf(db, trainer, of.id)).map((one) => `${one.name} ${one.number}`);

	it('a list is looked at without changing anything, and says what each line would do', async () => {
		const other = await aCrew(db, organisation, [colleague]);
		await aLearner(db, organisation, 'L-1', [crew], 'Dario Penn');
		await aLearner(db, organisation, 'L-2', [other], 'Nadia Rook');
		const gone = await aLearner(db, organisation, 'L-3', [crew], 'Wen Abara');
		await closePerson(db, organisation, gone, NOW.toISOString());
		const before = await names(crew);
		const looking = await lookAtRoster(db, trainer, crew.id, 'Penn, Dario;L-1\nNadia Rook;L-2\nWen Abara;L-3\nJo Reed;L-2\nJo Reed;L-1\nPriya Holm;L-9');
		expect(looking.kind === 'looked' ? looking.lines.map(({ state, wrong }) => state ?? wrong?.kind) : looking).toEqual(['on-list', 'known', 'number-taken', 'twice', 'twice', 'new']);
		expect(await names(crew)).toEqual(before);
	});

	it('what can be taken is entered in one go, the same list twice adds nobody twice', async () => {
		const own = await aCrew(db, organisation, [trainer]);
		const list = Array.from({ length: 25 }, (__, i) => `Person ${String(i)};M-${String(i)}`).join('\n');
		expect(await enterRoster(db, trainer, own.id, `${list}\n;M-99`, NOW)).toEqual({ kind: 'entered', added: 25, before: 0, leftOut: 1 });
		expect(await enterRoster(db, trainer, own.id, list, NOW)).toEqual({ kind: 'entered', added: 0, before: 25, leftOut: 0 });
		expect(await names(own)).toHaveLength(25);
		const notes = await db.selectFrom('audit').select('subject_id').where('kind', '=', 'learner-added').where('detail', 'like', `%${own.id}%`).execute();
		expect(new Set(notes.map((one) => one.subject_id)).size).toBe(25);
	});

	it('two lists with the same people that arrive together enter each once', async () => {
		const own = await aCrew(db, organisation, [trainer]);
		const list = Array.from({ length: 10 }, (__, i) => `Person ${String(i)};T-${String(i)}`).join('\n');
		const both = await Promise.all([enterRoster(db, trainer, own.id, list, NOW), enterRoster(db, trainer, own.id, list, NOW)]);
		expect(both.map((one) => (one.kind === 'entered' ? one.added : one.kind)).toSorted()).toEqual([0, 10]);
		expect(await names(own)).toHaveLength(10);
	});

	it('for another’s crew is not found, for one put away refused', async () => {
		expect(await lookAtRoster(db, colleague, crew.id, 'Jo Reed;X-1')).toEqual({ kind: 'not-found' });
		expect(await enterRoster(db, colleague, crew.id, 'Jo Reed;X-1', NOW)).toEqual({ kind: 'not-found' });
		const away = await aCrew(db, organisation, [trainer]);
		await setArchived(db, trainer, away.id, true, NOW);
		expect(await enterRoster(db, trainer, away.id, 'Jo Reed;X-1', NOW)).toEqual({ kind: 'archived' });
	});
});
