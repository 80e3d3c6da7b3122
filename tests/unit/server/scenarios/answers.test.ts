/** Who can answer problems of an organisation's scenarios, and what is kept of them between two questions. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { draw, type Scenario } from '#lib/scenario/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { insertOwnScenario, insertVersion } from '#lib/server/db/own-scenarios.ts';
import {
	findAttempt,
	makeOwn,
	publish,
	receiveAnswers,
	retire,
	saveDraft,
	scenariosFor,
	scenariosToChoose,
	scenarioVersion,
	shippedVersions,
	type Person,
	type Receipt
} from '#lib/server/index.ts';
import { answered, type SentBody } from '../../../support/answered.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { aMember, anOrganisation, NOW } from '../people/organisation.ts';

const LIMITS = { draws: 40, most: 60_000 };
const cookies = { get: () => undefined, set: () => undefined, delete: () => undefined };

function answeredTo(scenario: Scenario | undefined): SentBody {
	if (scenario === undefined) throw new Error('There is no scenario');
	const drawn = draw(scenario, 7);
	if (drawn.kind === 'none') throw new Error('Seed 7 draws nothing');
	return answered(drawn.problem);
}

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let trainer: Person;
	let learner: Person;
	let stranger: Person;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		const organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer');
		learner = await aMember(db, organisation, 'learner');
		stranger = await aMember(db, await anOrganisation(db), 'learner');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const published = async (): Promise<string> => {
		const made = await makeOwn(db, trainer, NOW);
		if (made.kind !== 'made') throw new Error(JSON.stringify(made));
		expect((await publish(db, trainer, made.id, 1, NOW, LIMITS)).kind).toBe('published');
		return made.id;
	};
	/** As the endpoint does it. */
	const send = async (who: Person | null, body: SentBody): Promise<Receipt> => {
		const scenarios = await scenariosFor(db, who?.organisation ?? null, body.scenario);
		return receiveAnswers(db, { cookies, secure: false, answerer: who?.answerer ?? null }, body, scenarios, NOW);
	};
	const versionsOf = async (id: string) => (await scenariosFor(db, trainer.organisation)).versionsOf(id).map((one) => one.version);

	it('a learner and staff of the organisation answer it; a guest and another organisation’s learner read that it is unknown', async () => {
		const id = await published();
		const body = answeredTo(await scenarioVersion(db, trainer.organisation, id, 1));
		for (const who of [learner, trainer]) {
			const sent = { ...body, id: randomUUID() };
			const receipt = await send(who, sent);
			if (receipt.kind !== 'stored') throw new Error(JSON.stringify(receipt));
			expect(Object.values(JSON.parse(receipt.grades) as Record<string, { mark: { kind: string } }>).map(({ mark }) => mark.kind)).toEqual(['right', 'right', 'right']);
			expect(await findAttempt(db, who.answerer, sent.id)).toMatchObject({ scenario_id: id, scenario_version: 1 });
		}
		const unknown = await send(learner, { ...body, id: randomUUID(), scenario: 'own-0000000000' });
		expect(unknown).toMatchObject({ kind: 'refused', status: 404 });
		for (const who of [stranger, null]) expect(await send(who, { ...body, id: randomUUID() })).toEqual(unknown);
	});

	it('a new version is found as soon as it is published, beside the old ones, each read once', async () => {
		const id = await published();
		expect(await versionsOf(id)).toEqual([1]);
		const one = await scenarioVersion(db, trainer.organisation, id, 1);
		await saveDraft(db, trainer, id, 2, JSON.stringify({ ...(JSON.parse((await document(id)) ?? '') as object), people: ['Wren'] }), NOW);
		expect(await versionsOf(id)).toEqual([1]);
		expect(await publish(db, trainer, id, 3, NOW, LIMITS)).toEqual({ kind: 'published', version: 2 });
		expect(await versionsOf(id)).toEqual([1, 2]);
		expect(await scenarioVersion(db, trainer.organisation, id, 1)).toBe(one);
		expect((await scenarioVersion(db, trainer.organisation, id, 2))?.people).toEqual(['Wren']);
		expect(await scenarioVersion(db, trainer.organisation, id, 3)).toBeUndefined();
		await retire(db, trainer, id, NOW);
		expect(await versionsOf(id)).toEqual([1, 2]);
	});

	it('asked for one version, the others are not even read; asked for one that is not there, the newest is named', async () => {
		const warned = vi.spyOn(process, 'emitWarning').mockImplementation(() => undefined);
		const id = await published();
		const scenario = JSON.parse((await document(id)) ?? '') as object;
		const documents = ['no JSON at all', JSON.stringify({ ...scenario, version: 3 })];
		for (const [i, one] of documents.entries()) await insertVersion(db, { scenario: id, version: i + 2, document: one, by: trainer.id, now: NOW.toISOString() });
		const asked = async (version: number) => (await scenariosFor(db, trainer.organisation, id, version)).versionsOf(id).map((one) => one.version);
		expect([await asked(1), await asked(3)]).toEqual([[1], [3]]);
		expect((await scenarioVersion(db, trainer.organisation, id, 1))?.version).toBe(1);
		expect((await scenariosToChoose(db, trainer)).find((one) => one.id === id)?.version).toBe(3);
		expect(warned).not.toHaveBeenCalled();
		for (const none of [0, 4, 2.5, Number.NaN]) expect(await asked(none)).toEqual([3]);
		expect(await asked(2)).toEqual([3]);
		expect(warned).toHaveBeenCalledTimes(1);
		warned.mockRestore();
	});

	const document = async (id: string) =>
		(await db.selectFrom('own_scenario_version').select('document').where('scenario_id', '=', id).executeTakeFirst())?.document;

	it('another organisation and a guest find none of it, whether they name it or not', async () => {
		const id = await published();
		for (const organisation of [stranger.organisation, null]) {
			for (const named of [undefined, id]) expect((await scenariosFor(db, organisation, named)).versionsOf(id)).toEqual([]);
			expect(await scenarioVersion(db, organisation, id, 1)).toBeUndefined();
		}
	});

	it('a shipped scenario is found without a question to the database', async () => {
		const gone = await openDatabase('file::memory:');
		await gone.destroy();
		expect(await scenariosFor(gone, trainer.organisation, 'silo-top')).toBe(shippedVersions);
		expect((await scenarioVersion(gone, null, 'silo-top', 1))?.id).toBe('silo-top');
		await expect(scenariosFor(gone, trainer.organisation, 'own-0000000000')).rejects.toThrow();
	});

	it('a stored version that does not parse any more is left out, said once, and the others stay', async () => {
		const warned = vi.spyOn(process, 'emitWarning').mockImplementation(() => undefined);
		const good = await published();
		const id = 'own-broken0001';
		await insertOwnScenario(db, { id, organisation: trainer.organisation, madeBy: trainer.id, draft: '{}', now: NOW.toISOString() });
		const scenario = JSON.parse((await document(good)) ?? '') as object;
		const documents = [JSON.stringify({ ...scenario, id, version: 1 }), '{"id":"an older form"}', 'no JSON at all'];
		for (const [i, one] of documents.entries()) await insertVersion(db, { scenario: id, version: i + 1, document: one, by: trainer.id, now: NOW.toISOString() });
		expect([await versionsOf(id), await versionsOf(id), await versionsOf(good)]).toEqual([[1], [1], [1]]);
		expect(warned).toHaveBeenCalledTimes(2);
		expect((await scenariosToChoose(db, trainer)).find((one) => one.id === id)?.version).toBe(1);
		warned.mockRestore();
	});
});
