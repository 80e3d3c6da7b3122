import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shippedScenario, shippedScenarios } from '#lib/course/shipped.ts';
import { draw, numberAsks, slipsWithEffect } from '#lib/scenario/index.ts';
import { weekOf } from '#lib/server/attempts/outcomes.ts';
import { answerersOf, findTaughtCrew } from '#lib/server/db/outcomes.ts';
import { takeOffList } from '#lib/server/db/crew-list.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { makeAimedSet } from '#lib/server/picture/aim.ts';
import { picturePage, type PicturePage } from '#lib/server/picture/page.ts';
import { findSet } from '#lib/server/sets/make.ts';
import type { Person } from '#lib/server/people/who.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aMember, anOrganisation, later, type TestCrew } from '../people/organisation.ts';
import { aTaught, answer, type TestLearner } from './people.ts';

const SCENARIOS = {
	toChoose: shippedScenarios(),
	versionOf: (id: string, version: number) => {
		const found = shippedScenario(id);
		return Promise.resolve(found?.version === version ? found : undefined);
	}
};
const ALL = { since: null, before: null, scenario: null, set: null };
const HOUR = 60 * 60;

/** Whether the answer to an ask was on the unsafe side, as the server graded it. */
function critical(grades: Awaited<ReturnType<typeof answer>>['grades'], ask: string): boolean {
	const grade = grades[ask];
	return grade?.kind === 'number' && grade.mark.kind === 'wrong' && grade.mark.critical;
}

describe.each(DATABASES)('what a crew gets wrong, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let trainer: Person;
	let crew: TestCrew;
	let dario: TestLearner;
	let nadia: TestLearner;
	let count = 0;

	const number = () => `P${String((count += 1))}`;
	const page = async (who: Person = trainer, of: TestCrew = crew, search = ''): Promise<PicturePage> => {
		const found = await picturePage(db, who, of.id, new URLSearchParams(search), SCENARIOS);
		if (found === null) throw new Error('no page');
		return found;
	};
	const tallyOf = (shown: PicturePage, person: TestLearner, cell: 'free-fall' | 'required-clearance' | 'decisions') =>
		shown.picture.rows.find((row) => row.person.id === person.id)?.cells[cell];

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer', 'Helle Brandt');
		crew = await aCrew(db, organisation, [trainer]);
		dario = await aTaught(db, organisation, number(), [crew], 'Dario Penn');
		nadia = await aTaught(db, organisation, number(), [crew], 'Nadia Rook');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	/** A crew of its own with one learner. */
	async function another(): Promise<{ readonly crew: TestCrew; readonly learner: TestLearner }> {
		const own = await aCrew(db, organisation, [trainer]);
		return { crew: own, learner: await aTaught(db, organisation, number(), [own], 'Wen Abara') };
	}

	it('names exactly the slips that were made, of how many people, and how many on the unsafe side', async () => {
		const elongation = [
			await answer(db, dario, { seed: 1, ask: 'required', slip: 'elongation-left-out', at: later(1) }),
			await answer(db, dario, { seed: 2, ask: 'required', slip: 'elongation-left-out', at: later(2) }),
			await answer(db, nadia, { seed: 3, ask: 'required', slip: 'elongation-left-out', at: later(3) })
		];
		const lanyard = [await answer(db, nadia, { seed: 4, ask: 'free-fall', slip: 'lanyard-for-free-fall', at: later(4) })];
		await answer(db, dario, { seed: 5, at: later(5) });
		const { picture } = await page();
		const unsafe = (of: typeof elongation, ask: string) => of.filter(({ grades }) => critical(grades, ask)).length;
		expect(unsafe(elongation, 'required')).toBe(3);
		expect(new Set(picture.slips)).toEqual(
			new Set([
				{ slip: 'elongation-left-out', answers: 3, critical: 3, people: 2 },
				{ slip: 'lanyard-for-free-fall', answers: 1, critical: unsafe(lanyard, 'free-fall'), people: 1 }
			])
		);
		expect(picture.slips[0]?.slip).toBe('elongation-left-out');
		expect({ wrong: picture.wrong, explained: picture.explained }).toEqual({ wrong: 4, explained: 4 });
		expect(picture.weeks).toEqual([{ week: '2026-11-23', answers: expect.any(Number), wrong: 4, critical: 3 + unsafe(lanyard, 'free-fall') }]);
	});

	it('tells of each person how many answers in each cell went wrong, whoever needs help most first', async () => {
		const shown = await page();
		expect(shown.picture.rows.map(({ person }) => person.name)).toEqual(['Dario Penn', 'Nadia Rook']);
		expect(tallyOf(shown, dario, 'required-clearance')).toEqual({ answers: 3, wrong: 2, critical: 2 });
		expect(tallyOf(shown, dario, 'free-fall')).toEqual({ answers: 3, wrong: 0, critical: 0 });
		expect(tallyOf(shown, nadia, 'free-fall')).toMatchObject({ answers: 2, wrong: 1 });
		expect(Object.keys(shown.picture.rows[0]?.cells ?? {})).not.toContain('label-and-mass');
	});

	it('looks back on the last ten answers only', async () => {
		const { crew: own, learner } = await another();
		for (let i = 0; i < 12; i += 1) {
			await answer(db, learner, { seed: 20 + i, at: later(i), ...(i < 2 || i === 11 ? { ask: 'required', slip: 'margin-left-out' as const } : {}) });
		}
		const shown = await page(trainer, own);
		expect(tallyOf(shown, learner, 'required-clearance')).toEqual({ answers: 10, wrong: 1, critical: 1 });
		// Slips are of all answers.
		expect(shown.picture.slips).toMatchObject([{ slip: 'margin-left-out', answers: 3 }]);
	});

	it('opens a cell into its finer skills, and a person in it with their slips', async () => {
		const { opened, one } = await page(trainer, crew, `cell=required-clearance&person=${dario.id}`);
		expect(opened).toMatchObject({ cell: 'required-clearance', skills: ['requiredClearance@surface'] });
		expect(opened?.rows.map(({ person, skills }) => [person.name, skills])).toEqual([
			['Dario Penn', { 'requiredClearance@surface': { answers: 3, wrong: 2, critical: 2 } }],
			['Nadia Rook', { 'requiredClearance@surface': { answers: 2, wrong: 1, critical: 1 } }]
		]);
		expect(one).toMatchObject({ person: { id: dario.id }, tally: { wrong: 2 }, slips: [{ slip: 'elongation-left-out', answers: 2, people: 1 }] });
		expect((await page(trainer, crew, 'cell=no-such-cell')).opened).toBeNull();
		expect((await page(trainer, crew, 'cell=stages')).opened?.rows).toEqual([]);
	});

	it('shows real answers with a slip, of different people first', async () => {
		const { slip } = await page(trainer, crew, 'slip=elongation-left-out');
		expect(slip?.examples.map(({ person, seed, ask }) => [person.name, seed, ask.id])).toEqual([
			['Nadia Rook', 3, 'required'],
			['Dario Penn', 2, 'required'],
			['Dario Penn', 1, 'required']
		]);
		const [first] = slip?.examples ?? [];
		expect(first).toMatchObject({ critical: true, scenario: { id: 'bridge-bearing' }, grade: { kind: 'number', mark: { kind: 'wrong', critical: true }, diagnosis: { certainty: 'asserted' } } });
		expect((await page(trainer, crew, `slip=elongation-left-out&person=${dario.id}`)).slip?.examples).toHaveLength(2);
		expect((await page(trainer, crew, 'slip=stretch-twice')).slip).toEqual({ id: 'stretch-twice', examples: [] });
		expect((await page(trainer, crew, 'slip=no-such-slip')).slip).toBeNull();
	});

	it('is for those who teach the crew, and not for an employer who does not', async () => {
		const employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		const colleague = await aMember(db, organisation, 'trainer', 'Tomas Eik');
		const learner = await aMember(db, organisation, 'learner', 'Jo Marchetti');
		const elsewhere = await anOrganisation(db);
		const strangers = [await aMember(db, elsewhere, 'employer', 'Ilan Corvo'), await aMember(db, elsewhere, 'trainer', 'Ana Mora')];
		await aCrew(db, elsewhere, strangers);
		for (const who of [employer, colleague, learner, ...strangers]) {
			expect(await picturePage(db, who, crew.id, new URLSearchParams(), SCENARIOS)).toBeNull();
			expect(await findTaughtCrew(db, who, crew.id)).toBeNull();
			expect(await answerersOf(db, who, crew.id)).toEqual([]);
			expect(await makeAimedSet(db, who, crew.id, ALL, { scenarios: SCENARIOS.toChoose, units: 'metric' }, () => 'Aimed', NOW)).toEqual({ kind: 'not-found' });
		}
		// Put in charge of it, an employer teaches it.
		await db.insertInto('crew_trainer').values({ crew_id: crew.id, person_id: employer.id, since: NOW.toISOString() }).execute();
		expect((await page(employer)).picture.rows).toHaveLength(2);
		await db.deleteFrom('crew_trainer').where('person_id', '=', employer.id).execute();
		expect(await picturePage(db, employer, randomUUID(), new URLSearchParams(), SCENARIOS)).toBeNull();
	});

	it('has nothing of people who left the crew or the organisation, nor of another crew', async () => {
		const { crew: own, learner } = await another();
		const [moved, closed] = [await aTaught(db, organisation, number(), [own]), await aTaught(db, organisation, number(), [own])];
		for (const [i, one] of [learner, moved, closed].entries()) await answer(db, one, { seed: 40 + i, ask: 'required', slip: 'elongation-left-out', at: later(i) });
		expect((await page(trainer, own)).picture.slips).toMatchObject([{ answers: 3, people: 3 }]);
		await takeOffList(db, own.id, moved.id);
		await db.updateTable('person').set({ closed_at: NOW.toISOString() }).where('id', '=', closed.id).execute();
		const shown = await page(trainer, own, `slip=elongation-left-out&person=${moved.id}`);
		expect(shown.picture.rows.map(({ person }) => person.id)).toEqual([learner.id]);
		expect(shown.picture.slips).toMatchObject([{ answers: 1, people: 1 }]);
		expect(shown.slip?.examples.map(({ person }) => person.id)).toEqual([learner.id]);
	});

	it('counts only answers of one scenario, where one is chosen', async () => {
		const { crew: own, learner } = await another();
		await answer(db, learner, { seed: 50, ask: 'required', slip: 'elongation-left-out', at: later(0) });
		await answer(db, learner, { scenario: 'stage-grid', seed: 51, ask: 'mass', slip: 'body-mass-alone', at: later(1) });
		const shown = await page(trainer, own, 'scenario=stage-grid');
		expect(shown.picture.slips.map(({ slip }) => slip)).toEqual(['body-mass-alone']);
		// The decision followed from a wrong number: it tells nothing by itself.
		expect(Object.keys(shown.picture.rows[0]?.cells ?? {})).toEqual(['label-and-mass']);
		expect(shown.picture.weeks).toMatchObject([{ wrong: 1 }]);
		expect((await page(trainer, own, 'scenario=stage-grid&cell=label-and-mass')).opened?.skills).toEqual(['massAttached', 'lowestCapacity']);
		const unknown = await page(trainer, own, 'scenario=no-such');
		expect(unknown.asked).toMatchObject({ problems: { scenario: 'unknown' }, typed: { scenario: 'no-such' }, filter: { scenario: null } });
		expect(unknown.picture.slips).toHaveLength(2);
	});

	it('counts by the days of the organisation’s zone', async () => {
		const south = await anOrganisation(db);
		await db.updateTable('organisation').set({ zone: 'Pacific/Auckland' }).where('id', '=', south).execute();
		const own = await aMember(db, south, 'trainer');
		const there = await aCrew(db, south, [own]);
		const learner = await aTaught(db, south, number(), [there]);
		// In Auckland it is 13 hours later: ten past midnight on the 25th, and ten to midnight on the 24th.
		const [late, early] = [new Date('2026-11-24T11:10:00.000Z'), new Date('2026-11-24T10:50:00.000Z')];
		await answer(db, learner, { seed: 60, ask: 'required', slip: 'elongation-left-out', at: late });
		await answer(db, learner, { seed: 61, ask: 'required', slip: 'margin-left-out', at: early });
		const slips = async (search: string) => (await page(own, there, search)).picture.slips.map(({ slip }) => slip).sort();
		expect(await slips('from=2026-11-25')).toEqual(['elongation-left-out']);
		expect(await slips('to=2026-11-24')).toEqual(['margin-left-out']);
		expect(await slips('from=2026-11-24&to=2026-11-25')).toEqual(['elongation-left-out', 'margin-left-out']);
		expect(await slips('from=2026-11-26')).toEqual([]);
		const shown = await page(own, there, 'from=2026-11-25');
		expect(tallyOf(shown, learner, 'required-clearance')).toEqual({ answers: 1, wrong: 1, critical: 1 });
		expect(shown.picture.weeks).toMatchObject([{ week: '2026-11-23', wrong: 1 }]);
	});

	it('counts only answers to one set, where one of the crew’s is chosen', async () => {
		const { crew: own, learner } = await another();
		const other = await another();
		const at = NOW.toISOString();
		const madeSet = async (name: string, crewId: string): Promise<{ set: string; assignment: string }> => {
			const [set, assignment] = [randomUUID(), randomUUID()];
			await db.insertInto('practice_set').values({ id: set, organisation_id: organisation, made_by: trainer.id, name, content: '{}', archived_at: null, created_at: at }).execute();
			await db.insertInto('set_assignment').values({ id: assignment, set_id: set, crew_id: crewId, person_id: null, seed: 's', due_day: null, assigned_by: trainer.id, at, recalled_at: null }).execute();
			return { set, assignment };
		};
		const [mine, theirs] = [await madeSet('Free fall again', own.id), await madeSet('Theirs', other.crew.id)];
		const row = { answerer_id: learner.answerer, ask: 'required', scenario_id: 'bridge-bearing', cell: 'required-clearance', skill: 'requiredClearance@surface', wrong: 1, critical: 0, week: weekOf(NOW), at };
		await db
			.insertInto('outcome')
			.values([
				{ ...row, answer_id: randomUUID(), way: 'set', assignment_id: mine.assignment, slip: 'stretch-twice' },
				{ ...row, answer_id: randomUUID(), way: 'practice', assignment_id: null, slip: 'margin-left-out' }
			])
			.execute();
		const shown = await page(trainer, own, `set=${mine.set}`);
		expect(shown.sets).toEqual([{ id: mine.set, name: 'Free fall again' }]);
		expect(shown.picture.slips.map(({ slip }) => slip)).toEqual(['stretch-twice']);
		expect(tallyOf(shown, learner, 'required-clearance')).toEqual({ answers: 1, wrong: 1, critical: 0 });
		// The set of another crew reads as one that is not there.
		expect((await page(trainer, own, `set=${theirs.set}`)).asked.problems).toEqual({ set: 'unknown' });
		expect((await page(trainer, own, `set=${randomUUID()}`)).asked.problems).toEqual({ set: 'unknown' });
	});

	it('makes a set whose problems bring the first slips out', async () => {
		const choose = ['bridge-bearing', 'stage-grid', 'flat-roof-edge', 'formwork-deck'].flatMap((id) => shippedScenario(id) ?? []);
		const done = await makeAimedSet(db, trainer, crew.id, ALL, { scenarios: choose, units: 'metric' }, (slips) => `Aimed at: ${slips.join(', ')}`, later(HOUR));
		if (done.kind !== 'made') throw new Error(done.kind);
		const set = await findSet(db, trainer, done.id);
		expect(set).toMatchObject({
			name: 'Aimed at: elongation-left-out, lanyard-for-free-fall',
			content: { count: 8, rule: { right: 6, critical: 0 }, aims: ['elongation-left-out', 'lanyard-for-free-fall'] }
		});
		const content = set?.content;
		expect(content?.scenarios.map(({ id }) => id)).not.toContain('stage-grid');
		expect(content?.scenarios[0]).toEqual({ id: expect.any(String), version: 1, asks: expect.arrayContaining([expect.any(String)]) });
		for (const { id, asks } of content?.scenarios ?? []) {
			const scenario = choose.find((one) => one.id === id);
			if (scenario === undefined) throw new Error(id);
			// Seeds that the choice was not made from.
			const drawn = Array.from({ length: 20 }, (_, i) => draw(scenario, 5000 + i)).flatMap((one) => (one.kind === 'drawn' ? [one.problem] : []));
			const shows = drawn.filter((problem) => numberAsks(scenario).some((ask) => asks.includes(ask.id) && slipsWithEffect(problem, ask).some((slip) => content?.aims.includes(slip))));
			expect(shows.length / drawn.length).toBeGreaterThan(1 / 3);
		}
	});

	it('makes none where no slip was found, or no scenario brings it out', async () => {
		const { crew: own, learner } = await another();
		const from = { scenarios: [shippedScenario('stage-grid')].filter((one) => one !== undefined), units: 'metric' };
		expect(await makeAimedSet(db, trainer, own.id, ALL, from, () => 'Aimed', NOW)).toEqual({ kind: 'no-slip' });
		await answer(db, learner, { seed: 70, ask: 'required', slip: 'elongation-left-out', at: NOW });
		expect(await makeAimedSet(db, trainer, own.id, ALL, from, () => 'Aimed', NOW)).toEqual({ kind: 'no-scenario' });
	});
});
