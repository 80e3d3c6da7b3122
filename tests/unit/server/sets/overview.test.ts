import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SetContent } from '#lib/flow/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { archiveSet, makeSet } from '#lib/server/sets/make.ts';
import { assignSet, recallAssignment } from '#lib/server/sets/assign.ts';
import { overviewOf } from '#lib/server/sets/overview.ts';
import { setStates } from '#lib/server/sets/states.ts';
import { setArchived } from '#lib/server/people/crews.ts';
import type { Person } from '#lib/server/people/who.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, later, type TestCrew } from '../people/organisation.ts';

const CONTENT: SetContent = {
	scenarios: [{ id: 'bridge-bearing', version: 1, asks: ['free-fall'] }],
	count: 2,
	rule: { right: 2, critical: 0 },
	sameForAll: false,
	language: null,
	aims: []
};
const DAY = 24 * 60 * 60;

describe.each(DATABASES)('the list of sets on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let trainer: Person;
	let colleague: Person;
	let stranger: Person;
	let crew: TestCrew;
	let learners: readonly string[];

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		trainer = await aMember(db, organisation, 'trainer', 'Helle Brandt');
		colleague = await aMember(db, organisation, 'trainer', 'Tomas Eik');
		stranger = await aMember(db, await anOrganisation(db), 'employer', 'Ilan Corvo');
		crew = await aCrew(db, organisation, [trainer]);
		learners = [await aLearner(db, organisation, 'O-1', [crew]), await aLearner(db, organisation, 'O-2', [crew]), await aLearner(db, organisation, 'O-3', [crew], 'Sefa Lindt')];
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function aSet(who: Person, count = CONTENT.count): Promise<string> {
		const made = await makeSet(db, who, { name: 'Before the mast job', content: { ...CONTENT, count } }, NOW);
		if (made.kind !== 'made') throw new Error(JSON.stringify(made.problems));
		return made.id;
	}

	async function assigned(set: string, to: { readonly crews?: readonly string[]; readonly people?: readonly string[] }, dueDay: string | null = null): Promise<readonly string[]> {
		const done = await assignSet(db, trainer, set, { crews: [], people: [], ...to, dueDay }, NOW);
		if (done.kind !== 'assigned') throw new Error(JSON.stringify(done));
		return done.assignments;
	}

	/** An answer as it stands in the database when a learner's is taken in. */
	async function answers(assignment: string, person: string, place: number, right: boolean): Promise<void> {
		const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', person).executeTakeFirstOrThrow();
		const id = randomUUID();
		const at = later(60 + place).toISOString();
		await db
			.insertInto('attempt')
			.values({ id, guest_id: answerer, scenario_id: 'bridge-bearing', scenario_version: 1, draw_version: 1, slip_set_version: 1, engine_version: '1', seed: '1', accepted_try: 0, plan: '{}', answers: '{}', result: '{}', language: 'en', units: 'metric', created_at: at })
			.execute();
		await db.insertInto('set_answer').values({ attempt_id: id, assignment_id: assignment, person_id: person, place, all_right: Number(right), critical: Number(!right), at }).execute();
	}

	const briefOf = async (who: Person, set: string, now = NOW) => (await overviewOf(db, who, now)).find((one) => one.id === set);

	it('tells to whom a set is assigned, the first due first, and how many are how far, as the page of the set does', async () => {
		const set = await aSet(trainer);
		const [single] = await assigned(set, { people: [learners[2] ?? ''] });
		const [ofCrew] = await assigned(set, { crews: [crew.id] }, '2026-11-26');
		for (const [person, place, right] of [[0, 0, true], [0, 1, true], [1, 0, false]] as const) await answers(ofCrew ?? '', learners[person] ?? '', place, right);
		await answers(single ?? '', learners[2] ?? '', 0, true);
		expect(await briefOf(trainer, set)).toMatchObject({
			assigned: [
				{ target: 'Bridges North', dueDay: '2026-11-26', over: false },
				{ target: 'Sefa Lindt', dueDay: null, over: false }
			],
			counts: { done: 1, 'under-way': 2, 'not-started': 1, late: 0 }
		});
		const [tomorrow, states] = [await briefOf(trainer, set, later(2 * DAY)), await setStates(db, trainer, set, later(2 * DAY))];
		expect(tomorrow).toMatchObject({ assigned: [{ over: true }, { over: false }], counts: { done: 1, late: 2 } });
		const people = states?.assignments.flatMap((one) => one.people) ?? [];
		for (const state of ['done', 'under-way', 'not-started'] as const) expect(tomorrow?.counts[state]).toBe(people.filter((one) => one.state === state).length);
	});

	it('counts each set by its own number of problems', async () => {
		const [short, long] = [await aSet(trainer, 2), await aSet(trainer, 3)];
		for (const set of [short, long]) {
			const [assignment] = await assigned(set, { people: [learners[0] ?? ''] });
			for (const place of [0, 1]) await answers(assignment ?? '', learners[0] ?? '', place, true);
		}
		expect((await briefOf(trainer, short))?.counts).toMatchObject({ done: 1, 'under-way': 0 });
		expect((await briefOf(trainer, long))?.counts).toMatchObject({ done: 0, 'under-way': 1 });
	});

	it('leaves out what was recalled, what is put away, and crews that are', async () => {
		const set = await aSet(trainer);
		const [assignment] = await assigned(set, { crews: [crew.id] });
		await setArchived(db, trainer, crew.id, true, NOW);
		expect((await briefOf(trainer, set))?.assigned).toEqual([]);
		await setArchived(db, trainer, crew.id, false, NOW);
		await archiveSet(db, trainer, set, true, NOW);
		const away = await briefOf(trainer, set);
		expect(away).toMatchObject({ archivedAt: NOW.toISOString(), assigned: [] });
		expect((await overviewOf(db, trainer, NOW)).at(-1)?.id).toBe(set);
		await archiveSet(db, trainer, set, false, NOW);
		expect((await briefOf(trainer, set))?.assigned).toHaveLength(1);
		await recallAssignment(db, trainer, assignment ?? '', NOW);
		expect(await briefOf(trainer, set)).toMatchObject({ assigned: [], counts: { done: 0, 'under-way': 0, 'not-started': 0, late: 0 } });
	});

	it('shows an employer all, a colleague and a stranger nothing', async () => {
		const set = await aSet(trainer);
		await assigned(set, { crews: [crew.id] });
		expect((await briefOf(employer, set))?.assigned).toHaveLength(1);
		expect(await briefOf(colleague, set)).toBeUndefined();
		expect(await overviewOf(db, stranger, NOW)).toEqual([]);
	});
});
