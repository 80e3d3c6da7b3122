import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { shippedScenario } from '#lib/course/shipped.ts';
import { asksOfPlace, replaySet, type SetContent, type SetPlace } from '#lib/flow/index.ts';
import { draw, slipsWithEffect } from '#lib/scenario/index.ts';
import { putOnList, takeOffList } from '#lib/server/db/crew-list.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { insertOwnScenario, insertVersion } from '#lib/server/db/own-scenarios.ts';
import { insertSet } from '#lib/server/db/sets.ts';
import { setArchived } from '#lib/server/people/crews.ts';
import type { Person } from '#lib/server/people/who.ts';
import { assignSet, recallAssignment } from '#lib/server/sets/assign.ts';
import { setDesk, setsOf } from '#lib/server/sets/learner.ts';
import { makeSet } from '#lib/server/sets/make.ts';
import { setStates } from '#lib/server/sets/states.ts';
import { shippedDocument } from '../../../support/shipped-documents.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aMember, anOrganisation, later, type TestCrew } from '../people/organisation.ts';
import { aContent, aSet, aSignedIn, bodyFor, placesAt, send, workRound } from './given.ts';

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let trainer: Person;
	let crew: TestCrew;
	let ada: Person;
	let bo: Person;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer', 'Helle Brandt');
		crew = await aCrew(db, organisation, [trainer]);
		ada = await aSignedIn(db, organisation, [crew], 'Ada Moor');
		bo = await aSignedIn(db, organisation, [crew], 'Bo Lund');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	/** A new set, assigned to the crew. @returns its assignment, its id, and the places of somebody's first round */
	async function handedOut(change: Partial<SetContent> = {}, dueDay: string | null = null, whose = ada): Promise<{ id: string; set: string; places: readonly SetPlace[] }> {
		const set = await aSet(db, trainer, change);
		const done = await assignSet(db, trainer, set, { crews: [crew.id], people: [], dueDay }, NOW);
		const id = done.kind === 'assigned' ? done.assignments[0] : undefined;
		if (id === undefined) throw new Error(JSON.stringify(done));
		return { id, set, places: await placesAt(db, whose, id) };
	}

	function at(places: readonly SetPlace[], nth: number): SetPlace {
		const place = places[nth];
		if (place === undefined) throw new Error(`no place ${nth}`);
		return place;
	}

	async function counted(assignment: string, person = ada): Promise<{ place: number; all_right: number; critical: number; attempt_id: string }[]> {
		return db
			.selectFrom('set_answer')
			.select(['place', 'all_right', 'critical', 'attempt_id'])
			.where('assignment_id', '=', assignment)
			.where('person_id', '=', person.id)
			.orderBy('place')
			.execute();
	}

	async function waysOf(attempt: string): Promise<readonly (readonly [string, string | null])[]> {
		const rows = await db.selectFrom('outcome').select(['way', 'assignment_id']).where('answer_id', '=', attempt).distinct().execute();
		return rows.map((row) => [row.way, row.assignment_id] as const);
	}

	describe('the start page', () => {
		it('has open sets by their due days, those without one last, and then the done ones', async () => {
			const reader = await aSignedIn(db, organisation, [], 'Cy Reader');
			const names: Record<string, string> = {};
			for (const [name, dueDay] of [['none', null], ['late', '2026-12-20'], ['soon', '2026-11-26'], ['done', '2026-11-25']] as const) {
				await putOnList(db, crew.id, reader.id, NOW.toISOString());
				const set = await aSet(db, trainer, {}, name);
				const done = await assignSet(db, trainer, set, { crews: [], people: [reader.id], dueDay }, NOW);
				names[name] = done.kind === 'assigned' ? (done.assignments[0] ?? '') : '';
			}
			await takeOffList(db, crew.id, reader.id);
			await workRound(db, reader, names['done'] ?? '', [true, true, false]);
			expect((await setsOf(db, reader, NOW)).map(({ name, state }) => [name, state])).toEqual([
				['soon', 'not-started'],
				['late', 'not-started'],
				['none', 'not-started'],
				['done', 'done']
			]);
		});

		it('shows sets to learners alone', async () => {
			const { id } = await handedOut();
			expect(await setsOf(db, trainer, NOW)).toEqual([]);
			expect(await setDesk(db, trainer, id, NOW)).toBeNull();
			const stranger = await aSignedIn(db, await anOrganisation(db), []);
			expect(await setDesk(db, stranger, id, NOW)).toBeNull();
			expect(await setDesk(db, ada, randomUUID(), NOW)).toBeNull();
			expect(await setDesk(db, ada, 'no id at all', NOW)).toBeNull();
		});
	});

	describe('the desk', () => {
		it('has all that a device needs for the round, and stands where the answers left it', async () => {
			const { id, places } = await handedOut({ language: 'es' }, '2026-11-30');
			expect(await setDesk(db, ada, id, NOW)).toMatchObject({ name: 'Monday problems', dueDay: '2026-11-30', language: 'es', state: 'notStarted', round: 0, answers: [], count: 3, rule: { right: 2, critical: 3 } });
			await send(db, ada, bodyFor(id, at(places, 0), 0));
			await send(db, ada, bodyFor(id, at(places, 1), 1, false));
			const desk = await setDesk(db, ada, id, NOW);
			expect(desk).toMatchObject({ state: 'working', answers: [{ place: 0, right: true, critical: 0 }, { place: 1, right: false }], places });
			expect(new Set(desk?.scenarios.map((one) => one.id))).toEqual(new Set(places.map((one) => one.scenario)));
			expect(desk?.scenarios.every((one) => one.words.es.title.length > 0)).toBe(true);
		});

		it('gives a fresh round after one that was not passed, and none after one that was', async () => {
			const { id, places } = await handedOut();
			await workRound(db, ada, id, [false, false, true]);
			const again = await setDesk(db, ada, id, NOW);
			expect(again).toMatchObject({ state: 'again', round: 1, over: [{ round: 0, right: 1 }] });
			const seeds = (of: readonly SetPlace[]) => of.map((one) => `${one.scenario} ${one.seed}`);
			for (const seed of seeds(again?.places ?? [])) expect(seeds(places)).not.toContain(seed);
			await workRound(db, ada, id, [true, true, false]);
			expect(await setDesk(db, ada, id, NOW)).toMatchObject({ state: 'passed', round: 1, places: [], scenarios: [] });
			expect((await counted(id)).map((one) => one.place)).toEqual([0, 1, 2, 3, 4, 5]);
		});

		it('has other problems for each learner, or the same ones where the set says so', async () => {
			const own = await handedOut();
			expect(await placesAt(db, bo, own.id)).not.toEqual(own.places);
			const common = await handedOut({ sameForAll: true });
			expect(await placesAt(db, bo, common.id)).toEqual(common.places);
		});

		it('keeps the version of an own scenario that the set was made with, and no new set takes a retired one', async () => {
			const [own] = aContent().scenarios;
			const document = shippedDocument(own?.id ?? '');
			const id = `own-${randomUUID().slice(0, 8)}`;
			const now = NOW.toISOString();
			await insertOwnScenario(db, { id, organisation, madeBy: trainer.id, draft: JSON.stringify({ ...document, id, version: 1 }), now });
			await insertVersion(db, { scenario: id, version: 1, document: JSON.stringify({ ...document, id, version: 1 }), by: trainer.id, now });
			const scenarios = [{ id, version: 1, asks: own?.asks ?? [] }];
			const { id: assignment, places } = await handedOut({ scenarios });
			await insertVersion(db, { scenario: id, version: 2, document: JSON.stringify({ ...document, id, version: 2 }), by: trainer.id, now });
			await db.updateTable('own_scenario').set({ retired_at: now }).where('id', '=', id).execute();
			const desk = await setDesk(db, ada, assignment, NOW);
			expect(desk?.places).toEqual(places);
			expect(desk?.scenarios.map((one) => [one.id, one.version])).toEqual([[id, 1]]);
			expect(await send(db, ada, bodyFor(assignment, at(places, 0), 0, true, desk?.scenarios[0]))).toMatchObject({ kind: 'stored', counts: true });
			expect(await makeSet(db, trainer, { name: 'Too late', content: aContent({ scenarios }) }, NOW)).toMatchObject({ kind: 'refused', problems: [{ code: 'unknown-scenario' }] });
			// Another organisation's scenario is no scenario.
			const stranger = await aMember(db, await anOrganisation(db), 'trainer');
			expect(await makeSet(db, stranger, { name: 'Not ours', content: aContent({ scenarios }) }, NOW)).toMatchObject({ kind: 'refused', problems: [{ code: 'unknown-scenario' }] });
		});

		it('is not there while a scenario of the set cannot be read any more', async () => {
			const warned = vi.spyOn(process, 'emitWarning').mockImplementation(() => undefined);
			const id = `own-${randomUUID().slice(0, 8)}`;
			const now = NOW.toISOString();
			await insertOwnScenario(db, { id, organisation, madeBy: trainer.id, draft: '{}', now });
			await insertVersion(db, { scenario: id, version: 1, document: '{"id":"an older form"}', by: trainer.id, now });
			const content = aContent({ scenarios: [{ id, version: 1, asks: ['free-fall'] }] });
			const set = randomUUID();
			await insertSet(db, { id: set, organisation_id: organisation, made_by: trainer.id, name: 'Old', content: JSON.stringify(content), archived_at: null, created_at: now });
			const done = await assignSet(db, trainer, set, { crews: [], people: [ada.id], dueDay: null }, NOW);
			expect(await setDesk(db, ada, done.kind === 'assigned' ? (done.assignments[0] ?? '') : '', NOW)).toBeNull();
			warned.mockRestore();
		});

		it('has only problems that show an aimed slip, where there are such', async () => {
			const scenario = shippedScenario('shaft-landing');
			if (scenario === undefined) throw new Error('not shipped');
			const scenarios = [{ id: scenario.id, version: scenario.version, asks: scenario.asks.map((ask) => ask.id) }];
			const { places } = await handedOut({ scenarios, count: 5, aims: ['obstacle-overlooked'] });
			for (const place of places) {
				const result = draw(scenario, place.seed);
				const problem = result.kind === 'drawn' ? result.problem : undefined;
				const slips = asksOfPlace(scenario, place).flatMap((ask) => (ask.kind === 'number' && problem !== undefined ? slipsWithEffect(problem, ask) : []));
				expect(slips).toContain('obstacle-overlooked');
			}
		});
	});

	describe('an answer', () => {
		it('is stored with its place and what it came to, once, however often it is sent', async () => {
			const { id, places } = await handedOut();
			const body = bodyFor(id, at(places, 0), 0, false);
			expect(await send(db, ada, body)).toMatchObject({ kind: 'stored', status: 201, counts: true });
			expect(await send(db, ada, body, later(60))).toMatchObject({ kind: 'stored', status: 200, counts: true });
			expect(await counted(id)).toEqual([{ place: 0, all_right: 0, critical: expect.any(Number), attempt_id: body.id }]);
			expect(await waysOf(body.id)).toEqual([['set', id]]);
		});

		it('counts alone that comes first; another to the same place is practice', async () => {
			const { id, places } = await handedOut();
			const [first, second] = [bodyFor(id, at(places, 0), 0, false), bodyFor(id, at(places, 0), 0)];
			await send(db, ada, first);
			expect(await send(db, ada, second)).toMatchObject({ kind: 'stored', status: 201, counts: false });
			expect(await counted(id)).toMatchObject([{ place: 0, all_right: 0, attempt_id: first.id }]);
			expect(await waysOf(second.id)).toEqual([['practice', null]]);
		});

		it('on the unsafe side keeps a round from being passed, where the rule says so', async () => {
			const scenarios = aContent().scenarios.filter((one) => one.id === 'stage-grid');
			const { id, places } = await handedOut({ scenarios, rule: { right: 1, critical: 0 } });
			const unsafe = bodyFor(id, at(places, 0), 0);
			unsafe.answers['capacity'] = { kind: 'number', text: '999' };
			await send(db, ada, unsafe);
			expect(await counted(id)).toMatchObject([{ all_right: 0, critical: 1 }]);
			for (const nth of [1, 2]) await send(db, ada, bodyFor(id, at(places, nth), nth));
			expect(await setDesk(db, ada, id, NOW)).toMatchObject({ state: 'again', over: [{ right: 2, critical: 1 }] });
		});

		it('of two tabs at once counts once', async () => {
			const { id, places } = await handedOut();
			const bodies = Array.from({ length: 6 }, (_unused, i) => bodyFor(id, at(places, 1), 1, i % 2 === 0));
			const receipts = await Promise.all(bodies.map((body) => send(db, ada, body)));
			expect(receipts.map((one) => one.kind)).toEqual(bodies.map(() => 'stored'));
			const rows = await counted(id);
			expect(rows).toHaveLength(1);
			const ways = await Promise.all(bodies.map(async (body) => (await waysOf(body.id))[0]?.[0]));
			expect(ways.filter((way) => way === 'set')).toHaveLength(1);
			expect(ways[bodies.findIndex((body) => body.id === rows[0]?.attempt_id)]).toBe('set');
			// Each is told what is so: that it counts, to the one that does.
			expect(receipts.map((one) => one.kind === 'stored' && one.counts)).toEqual(bodies.map((body) => body.id === rows[0]?.attempt_id));
		});

		it('that was kept as practice stays practice, also if it is sent again when the set is open again', async () => {
			const { id, places } = await handedOut();
			const body = bodyFor(id, at(places, 0), 0);
			await setArchived(db, trainer, crew.id, true, NOW);
			expect(await send(db, ada, body)).toMatchObject({ kind: 'stored', status: 201, counts: false });
			await setArchived(db, trainer, crew.id, false, NOW);
			expect(await send(db, ada, body)).toMatchObject({ kind: 'stored', status: 200, counts: false });
			expect(await counted(id)).toEqual([]);
			expect(await send(db, ada, bodyFor(id, at(places, 0), 0))).toMatchObject({ kind: 'stored', status: 201, counts: true });
		});

		it('may come late and in any order within the round', async () => {
			const { id, places } = await handedOut({}, '2026-11-26');
			const weeksLater = later(14 * 24 * 60 * 60);
			for (const nth of [2, 0, 1]) expect(await send(db, ada, bodyFor(id, at(places, nth), nth), weeksLater)).toMatchObject({ kind: 'stored' });
			expect((await counted(id)).map((one) => one.place)).toEqual([0, 1, 2]);
			expect((await setsOf(db, ada, weeksLater)).find((one) => one.assignment === id)).toMatchObject({ state: 'done', late: true });
		});

		it('to another problem than the set has at that place is refused, and leaves nothing', async () => {
			const { id, places } = await handedOut();
			const whole = at(places, 0);
			const next = places.find((one) => one.scenario === whole.scenario && one.seed !== whole.seed) ?? at(places, 1);
			const tampered = [
				bodyFor(id, { ...whole, seed: whole.seed + 1 }, 0),
				bodyFor(id, next, 0),
				{ ...bodyFor(id, whole, 0), set: { assignment: id, place: 3 } },
				{ ...bodyFor(id, whole, 0), set: { assignment: id, place: 1 } }
			];
			for (const body of tampered) {
				expect(await send(db, ada, body)).toMatchObject({ kind: 'refused', status: 409, problems: [{ field: 'set.place', remedy: expect.stringContaining('load the set again') }] });
				expect(await db.selectFrom('attempt').select('id').where('id', '=', body.id).execute()).toEqual([]);
			}
			const part = aContent({ scenarios: aContent().scenarios.map((one) => ({ ...one, asks: one.asks.slice(0, 1) })) });
			const asked = await handedOut(part);
			expect(await send(db, ada, bodyFor(asked.id, at(asked.places, 0), 0))).toMatchObject({ kind: 'refused', status: 409, problems: [{ field: 'set.place' }] });
			expect(await counted(id)).toEqual([]);
		});

		it('to a part of a scenario counts as what the set asks', async () => {
			const part = aContent({ scenarios: aContent().scenarios.map((one) => ({ ...one, asks: one.asks.slice(0, 1) })) });
			const { id, places } = await handedOut(part);
			const body = bodyFor(id, at(places, 0), 0);
			const [ask = ''] = at(places, 0).asks;
			expect(await send(db, ada, { ...body, asks: [ask], answers: { [ask]: body.answers[ask] } })).toMatchObject({ kind: 'stored' });
			expect(await counted(id)).toMatchObject([{ place: 0, all_right: 1 }]);
		});

		it('of somebody who has not the set is refused, of nobody signed in kept for later', async () => {
			const { id, places } = await handedOut({ sameForAll: true });
			const outsider = await aSignedIn(db, organisation, []);
			const stranger = await aSignedIn(db, await anOrganisation(db), []);
			for (const who of [outsider, stranger, trainer]) {
				expect(await send(db, who, bodyFor(id, at(places, 0), 0))).toMatchObject({ kind: 'refused', status: 409, problems: [{ field: 'set.assignment' }] });
			}
			const guests = bodyFor(id, at(places, 0), 0);
			expect(await send(db, null, guests)).toMatchObject({ kind: 'refused', status: 401 });
			expect(await db.selectFrom('attempt').select('id').where('id', '=', guests.id).execute()).toEqual([]);
			expect(await send(db, ada, bodyFor(randomUUID(), at(places, 0), 0))).toMatchObject({ kind: 'refused', status: 409 });
			expect(await db.selectFrom('set_answer').select('place').where('assignment_id', '=', id).execute()).toEqual([]);
		});

		it('that comes after the set was recalled, or its crew put away, is kept as practice', async () => {
			const { id, places } = await handedOut();
			await send(db, ada, bodyFor(id, at(places, 0), 0));
			await setArchived(db, trainer, crew.id, true, NOW);
			const away = bodyFor(id, at(places, 1), 1);
			expect(await send(db, ada, away)).toMatchObject({ kind: 'stored', status: 201 });
			await setArchived(db, trainer, crew.id, false, NOW);
			await recallAssignment(db, trainer, id, NOW);
			const recalled = bodyFor(id, at(places, 2), 2);
			expect(await send(db, ada, recalled)).toMatchObject({ kind: 'stored', status: 201 });
			expect((await counted(id)).map((one) => one.place)).toEqual([0]);
			for (const body of [away, recalled]) expect(await waysOf(body.id)).toEqual([['practice', null]]);
			expect(await setDesk(db, ada, id, NOW)).toBeNull();
		});

		it.each([
			['no UUID', { assignment: 'monday', place: 0 }],
			['half a place', { assignment: randomUUID(), place: 0.5 }],
			['a place before the first', { assignment: randomUUID(), place: -1 }],
			['a place beyond all', { assignment: randomUUID(), place: 1e12 }],
			['no place', { assignment: randomUUID() }],
			['a word', 'monday'],
			['more than it takes', { assignment: randomUUID(), place: 0, right: true }]
		])('with %s for its place is not read', async (_what, set) => {
			const { id, places } = await handedOut();
			const receipt = await send(db, ada, { ...bodyFor(id, at(places, 0), 0), set });
			expect(receipt).toMatchObject({ kind: 'refused', status: 400, problems: [{ field: expect.stringMatching(/^set/) }] });
		});

		it('that cannot be read is asked for again, and takes no place', async () => {
			const { id, places } = await handedOut();
			const body = bodyFor(id, at(places, 0), 0);
			const numbered = Object.keys(body.answers).find((ask) => body.answers[ask]?.['kind'] === 'number') ?? '';
			expect(await send(db, ada, { ...body, answers: { ...body.answers, [numbered]: { kind: 'number', text: 'plenty' } } })).toMatchObject({ kind: 'refused', status: 422 });
			expect(await counted(id)).toEqual([]);
		});
	});

	it('learner, trainer and flow agree on where somebody stands', async () => {
		const { id, set } = await handedOut();
		for (const rights of [[false, true, false], [false, false, false], [true, true, true]]) {
			await workRound(db, bo, id, rights);
			const rows = await counted(id, bo);
			const { state, context } = replaySet(aContent(), rows.map((row) => ({ place: row.place, right: row.all_right === 1, critical: row.critical })));
			const seen = (await setStates(db, trainer, set, NOW))?.assignments[0]?.people.find((one) => one.person === bo.id);
			const own = (await setsOf(db, bo, NOW)).find((one) => one.assignment === id);
			expect(seen).toMatchObject({ state: state === 'passed' ? 'done' : 'under-way', round: context.round, right: context.right, critical: context.critical, answered: context.answered.length });
			expect(own).toMatchObject({ state: seen?.state, round: seen?.round, right: seen?.right, answered: seen?.answered });
		}
	});
});
