/** Scenarios of an organisation: who sees, makes, changes and publishes them, on both databases. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shippedDocument } from '#lib/course/shipped.ts';
import type { InspectFinding } from '#lib/scenario/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import {
	copyScenario,
	discardDraft,
	exportScenario,
	findOwn,
	importScenario,
	listedOwn,
	listedShipped,
	listOwn,
	makeOwn,
	publish,
	restore,
	retire,
	saveDraft,
	scenariosFor,
	scenariosToChoose,
	scenarioVersion,
	type Made,
	type OwnScenario,
	type Person
} from '#lib/server/index.ts';
import { MOST_OWN } from '#lib/server/scenarios/make.ts';
import { withValue, type Path } from '../../../support/mutations.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { aMember, anOrganisation, later, NOW } from '../people/organisation.ts';

/** Enough to know a good scenario from a bad one. */
const LIMITS = { draws: 40, most: 30_000 };

function idOf(made: Made): string {
	if (made.kind !== 'made') throw new Error(JSON.stringify(made));
	return made.id;
}

/** A document with one part replaced, as a draft. */
function changed(document: string, path: Path, value: unknown): string {
	return JSON.stringify(withValue(JSON.parse(document), path, value));
}

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let trainer: Person;
	let otherTrainer: Person;
	let employer: Person;
	let learner: Person;
	let stranger: Person;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer', 'Helle Brandt');
		otherTrainer = await aMember(db, organisation, 'trainer', 'Iker Salas');
		employer = await aMember(db, organisation, 'employer', 'Ruth Ofori');
		learner = await aMember(db, organisation, 'learner', 'Dario Penn');
		stranger = await aMember(db, await anOrganisation(db), 'employer', 'Vera Lund');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const make = async (who: Person = trainer) => idOf(await makeOwn(db, who, NOW));
	const found = async (id: string, who: Person = trainer): Promise<OwnScenario> => {
		const own = await findOwn(db, who, id);
		if (own === null) throw new Error(`${id} is not found`);
		return own;
	};
	const published = async (who: Person = trainer) => {
		const id = await make(who);
		expect(await publish(db, who, id, 1, NOW, LIMITS)).toEqual({ kind: 'published', version: 1 });
		return id;
	};
	const notes = async (subject: string) =>
		(await db.selectFrom('audit').select(['kind', 'actor_id', 'detail']).where('subject_id', '=', subject).orderBy('at').orderBy('kind').execute()).map(({ kind, actor_id, detail }) => [kind, actor_id, JSON.parse(detail)]);

	it('makes one that is known by an id that nobody guesses, and notes who made it', async () => {
		const id = await make();
		expect(id).toMatch(/^own-[a-z0-9]{10}$/);
		const { document, ...own } = await found(id);
		expect(own).toMatchObject({ id, madeBy: trainer.id, maker: 'Helle Brandt', revision: 1, published: null, retiredAt: null, changedAt: NOW.toISOString(), mayChange: true, draft: document });
		expect(JSON.parse(document)).toMatchObject({ id, version: 1, units: 'metric', base: { rules: 'us-construction', practice: 'us-two-foot' } });
		expect(await notes(id)).toEqual([['scenario-made', trainer.id, { from: 'start' }]]);
	});

	it('keeps a draft without the mark that some editors put before a text: the list and the file can still be read', async () => {
		const id = await make();
		const { document } = await found(id);
		expect(await saveDraft(db, trainer, id, 1, `\ufeff${document} `, NOW)).toEqual({ kind: 'saved', revision: 2 });
		expect(await saveDraft(db, trainer, id, 1, `\ufeff${document} `, NOW)).toEqual({ kind: 'saved', revision: 2 });
		expect((await listedOwn(db, trainer, 'en')).find((one) => one.id === id)).toMatchObject({ hasDraft: true, units: 'metric' });
		expect(JSON.parse((await exportScenario(db, trainer, id))?.text ?? '')).toMatchObject({ id });
		expect((await found(id)).document).toBe(`${document} `);
	});

	it('makes no copy that is longer than a document may be, and exports whatever was kept', async () => {
		const id = await make();
		// Written short, and long when it is written again: 1e20 has 21 digits.
		const draft = `{"people":[${Array.from({ length: 12_000 }, () => '1e20').join(',')}]}`;
		expect(await saveDraft(db, trainer, id, 1, draft, NOW)).toEqual({ kind: 'saved', revision: 2 });
		expect(await copyScenario(db, trainer, id, NOW)).toMatchObject({ kind: 'refused', why: 'too-long' });
		expect((await exportScenario(db, trainer, id))?.text).toContain('100000000000000000000');
	});

	it('shows every one to trainers and employers of the organisation, and lets who made it and employers change it', async () => {
		const id = await make();
		const seen = async (who: Person) => {
			const listed = (await listOwn(db, who)).find((one) => one.id === id);
			const own = await findOwn(db, who, id);
			expect(own).toEqual(listed ?? null);
			return own === null ? 'unseen' : own.mayChange;
		};
		expect([await seen(trainer), await seen(otherTrainer), await seen(employer), await seen(learner), await seen(stranger)]).toEqual([true, false, true, 'unseen', 'unseen']);
	});

	it('answers whoever may not change one as if it were not there, and changes nothing', async () => {
		const id = await published();
		const before = await found(id);
		const not = { kind: 'not-found' };
		for (const who of [otherTrainer, learner, stranger]) {
			for (const one of [id, 'own-0000000000']) {
				expect(await saveDraft(db, who, one, before.revision, '{}', later(1))).toEqual(not);
				expect(await publish(db, who, one, before.revision, later(1), LIMITS)).toEqual(not);
				expect(await discardDraft(db, who, one, before.revision, later(1))).toEqual(not);
				expect(await retire(db, who, one, later(1))).toEqual(not);
				expect(await restore(db, who, one, later(1))).toEqual(not);
			}
		}
		for (const who of [learner, stranger]) {
			expect(await copyScenario(db, who, id, NOW)).toEqual(not);
			expect(await exportScenario(db, who, id)).toBeNull();
		}
		expect(await makeOwn(db, learner, NOW)).toEqual(not);
		expect(await copyScenario(db, learner, 'silo-top', NOW)).toEqual(not);
		expect(await importScenario(db, learner, JSON.stringify(shippedDocument('silo-top')), NOW)).toEqual(not);
		expect(await found(id)).toEqual(before);
	});

	it('copies a shipped one, a draft, and a colleague’s version, each into a draft of one’s own', async () => {
		const shipped = idOf(await copyScenario(db, otherTrainer, 'silo-top', NOW));
		expect({ ...(JSON.parse((await found(shipped)).document) as object), id: 'silo-top' }).toEqual(shippedDocument('silo-top'));
		expect(await found(shipped, otherTrainer)).toMatchObject({ madeBy: otherTrainer.id, mayChange: true, published: null });
		const copy = await copyScenario(db, otherTrainer, await published(), NOW);
		expect((await found(idOf(copy), otherTrainer)).draft).not.toBeNull();
		expect(await copyScenario(db, trainer, 'no-such-scenario', NOW)).toEqual({ kind: 'not-found' });
		expect(await copyScenario(db, trainer, '__proto__', NOW)).toEqual({ kind: 'not-found' });
	});

	it('saves a draft that is not finished, and refuses what is no JSON object, saying why and storing nothing', async () => {
		const id = await make();
		expect(await saveDraft(db, trainer, id, 1, '{"title": "not yet"}', later(1))).toEqual({ kind: 'saved', revision: 2 });
		expect(await saveDraft(db, employer, id, 2, '{"title": "nor yet"}', later(2))).toEqual({ kind: 'saved', revision: 3 });
		for (const text of ['', '[]', '{"a":', '{"a":1,"a":2}', JSON.stringify({ a: 'x'.repeat(70_000) })]) {
			expect(await saveDraft(db, trainer, id, 3, text, later(3)), text.slice(0, 20)).toMatchObject({ kind: 'refused', problems: [{ problem: expect.stringMatching(/^is ./) as string }] });
		}
		expect(await found(id)).toMatchObject({ draft: '{"title": "nor yet"}', revision: 3, changedAt: later(2).toISOString() });
	});

	it('saves onto what was seen: two at once are not mixed, and the same sent twice is saved once', async () => {
		const id = await make();
		const both = await Promise.all([saveDraft(db, trainer, id, 1, '{"by":"one"}', later(1)), saveDraft(db, employer, id, 1, '{"by":"two"}', later(1))]);
		expect(both.map(({ kind }) => kind).sort()).toEqual(['changed-meanwhile', 'saved']);
		expect(both).toContainEqual({ kind: 'changed-meanwhile', revision: 2 });
		const { draft } = await found(id);
		expect(await saveDraft(db, trainer, id, 1, draft ?? '', later(2))).toEqual({ kind: 'saved', revision: 2 });
		expect(await saveDraft(db, trainer, id, 1, '{"by":"late"}', later(2))).toEqual({ kind: 'changed-meanwhile', revision: 2 });
		expect(await discardDraft(db, trainer, id, 1, later(2))).toEqual({ kind: 'changed-meanwhile', revision: 2 });
		expect(await publish(db, trainer, id, 1, later(2), LIMITS)).toEqual({ kind: 'changed-meanwhile', revision: 2 });
		expect((await found(id)).draft).toBe(draft);
	});

	it('publishes version after version; what was published never changes', async () => {
		const id = await published();
		const first = (await found(id)).document;
		expect(await found(id)).toMatchObject({ draft: null, published: 1, revision: 2 });
		// Twice is as once.
		expect(await publish(db, trainer, id, 1, later(1), LIMITS)).toEqual({ kind: 'published', version: 1 });
		const next = changed(first, ['words', 'en', 'title'], 'Dock of the river store');
		expect(await saveDraft(db, trainer, id, 2, next, later(2))).toEqual({ kind: 'saved', revision: 3 });
		expect(await found(id)).toMatchObject({ published: 1, document: next });
		expect(await publish(db, employer, id, 3, later(3), LIMITS)).toEqual({ kind: 'published', version: 2 });
		const [one, two] = (await scenariosFor(db, organisation)).versionsOf(id);
		expect([one?.version, two?.version, two?.words.en.title]).toEqual([1, 2, 'Dock of the river store']);
		expect(JSON.parse((await found(id)).document)).toMatchObject({ id, version: 2 });
		await expect(db.updateTable('own_scenario_version').set({ document: '{}' }).where('scenario_id', '=', id).execute()).rejects.toThrow(/insert-only/);
		await expect(db.deleteFrom('own_scenario_version').where('scenario_id', '=', id).execute()).rejects.toThrow(/insert-only/);
		expect((await notes(id)).slice(1)).toEqual([
			['scenario-published', trainer.id, { version: 1 }],
			['scenario-published', employer.id, { version: 2 }]
		]);
	});

	it('publishes nothing that does not fit, or that nobody could be asked, and says every fault', async () => {
		const id = await make();
		const { document } = await found(id);
		await saveDraft(db, trainer, id, 1, changed(document, ['words', 'en', 'title'], 7), later(1));
		expect(await publish(db, trainer, id, 2, later(2), LIMITS)).toMatchObject({ kind: 'refused', problems: [{ field: 'words.en.title' }], findings: [] });
		// No plan of its ranges has such a free fall.
		await saveDraft(db, trainer, id, 2, changed(document, ['constraints', 0], { of: 'freeFall', atLeast: { value: 2.5, unit: 'm' } }), later(3));
		const refused = await publish(db, trainer, id, 3, later(4), { ...LIMITS, draws: 5 });
		expect(refused).toMatchObject({ kind: 'refused', problems: [] });
		const faults = 'findings' in refused ? refused.findings.filter((one: InspectFinding) => one.severity === 'fault') : [];
		expect(faults.map((one) => one.path.join('.'))).toContain('constraints.0');
		expect(await found(id)).toMatchObject({ published: null, revision: 3 });
		expect(await scenarioVersion(db, organisation, id, 1)).toBeUndefined();
	});

	it('throws a draft away, back to the newest version; one that was never published goes as a whole', async () => {
		const never = await make();
		expect(await discardDraft(db, trainer, never, 1, later(1))).toEqual({ kind: 'gone' });
		expect(await findOwn(db, trainer, never)).toBeNull();
		expect((await notes(never)).map(([kind]) => kind)).toEqual(['scenario-made', 'scenario-discarded']);
		const id = await published();
		const { document } = await found(id);
		await saveDraft(db, trainer, id, 2, '{}', later(1));
		expect(await discardDraft(db, trainer, id, 3, later(2))).toEqual({ kind: 'discarded', revision: 4 });
		expect(await discardDraft(db, trainer, id, 3, later(2))).toEqual({ kind: 'discarded', revision: 4 });
		expect(await found(id)).toMatchObject({ draft: null, document, published: 1 });
	});

	it('offers what is published and not retired; what is retired keeps its versions and the draft that somebody works on', async () => {
		const id = await published();
		const chosen = async (who: Person) => (await scenariosToChoose(db, who)).filter((one) => one.id === id).map((one) => one.version);
		expect([await chosen(otherTrainer), await chosen(employer), await chosen(stranger), await chosen(learner)]).toEqual([[1], [1], [], []]);
		await saveDraft(db, trainer, id, 2, '{}', later(1));
		expect(await retire(db, employer, id, later(2))).toEqual({ kind: 'done' });
		expect(await retire(db, employer, id, later(3))).toEqual({ kind: 'done' });
		expect(await found(id)).toMatchObject({ retiredAt: later(2).toISOString(), revision: 3, draft: '{}' });
		expect(await chosen(trainer)).toEqual([]);
		expect((await scenarioVersion(db, organisation, id, 1))?.id).toBe(id);
		expect(await restore(db, trainer, id, later(4))).toEqual({ kind: 'done' });
		expect(await chosen(trainer)).toEqual([1]);
		expect((await notes(id)).map(([kind]) => kind)).toEqual(['scenario-made', 'scenario-published', 'scenario-retired', 'scenario-restored']);
		const every = await scenariosToChoose(db, trainer);
		expect(new Set(every.map((one) => one.id)).size).toBe(every.length);
	});

	it('exports a draft or version that importing takes as it is', async () => {
		const id = await published();
		const one = await exportScenario(db, otherTrainer, id);
		expect(one?.name).toBe(`${id}-v1.json`);
		const copy = idOf(await importScenario(db, otherTrainer, one?.text ?? '', NOW));
		const again = await exportScenario(db, employer, copy);
		expect(again?.name).toBe(`${copy}-draft.json`);
		expect(JSON.parse(again?.text ?? '')).toEqual({ ...(JSON.parse(one?.text ?? '') as object), id: copy, version: 1 });
		expect(again?.text.split('\n')[1]).toBe(`\t"id": "${copy}",`);
		expect(await publish(db, otherTrainer, copy, 1, NOW, LIMITS)).toEqual({ kind: 'published', version: 1 });
		expect((await notes(copy))[0]).toEqual(['scenario-made', otherTrainer.id, { from: 'import' }]);
		const bytes = new Uint8Array(Buffer.from(`\uFEFF${one?.text ?? ''}`));
		expect(idOf(await importScenario(db, trainer, bytes, NOW))).not.toBe(copy);
	});

	it('imports nothing of what is refused', async () => {
		const before = (await listOwn(db, trainer)).length;
		const good = shippedDocument('bridge-bearing') ?? {};
		const hostile = ['', '{', '[]', '{"__proto__":{}}', JSON.stringify(good).slice(1), JSON.stringify({ ...good, colour: 1 }), JSON.stringify(withValue(good, ['words', 'en', 'lead'], '<script>1</script>'))];
		for (const text of hostile) expect((await importScenario(db, trainer, text, NOW)).kind, text.slice(0, 30)).toBe('refused');
		expect(await listOwn(db, trainer)).toHaveLength(before);
	});

	it('lists each by its title in the language of the page, whatever a draft holds', async () => {
		const author = await aMember(db, await anOrganisation(db), 'trainer', 'Iker Salas');
		const listed = async (draft: unknown, language: 'en' | 'es' = 'es') => {
			const id = await make(author);
			await saveDraft(db, author, id, 1, JSON.stringify(draft), later(1));
			return (await listedOwn(db, author, language)).find((one) => one.id === id);
		};
		const words = { en: { title: 'Pump house' }, es: { title: 'Casa de bombas' } };
		expect(await listed({ words, backdrop: 'silo-top', units: 'metric' })).toEqual({
			id: expect.stringMatching(/^own-/) as string,
			title: 'Casa de bombas',
			backdrop: 'silo-top',
			units: 'metric',
			maker: 'Iker Salas',
			changedAt: later(1).toISOString(),
			published: null,
			retiredAt: null,
			mayChange: true,
			hasDraft: true
		});
		expect((await listed({ words }, 'en'))?.title).toBe('Pump house');
		expect(await listed({ words: { en: words.en, es: { title: ' ' } }, backdrop: 'moon', units: 3 })).toMatchObject({ title: 'Pump house', backdrop: null, units: null });
		for (const odd of [{}, { words: 7 }, { words: null }, { words: [] }, { words: { es: null, en: 'x' } }, { words: { es: { title: {} } } }]) expect(await listed(odd), JSON.stringify(odd)).toMatchObject({ title: null });
		expect((await listed({ words: { es: { title: 'x'.repeat(20_000) } } }))?.title?.length).toBe(200);
		expect(await listedOwn(db, learner, 'en')).toEqual([]);
		expect(listedShipped('es')[0]).toEqual({ id: 'bridge-bearing', title: 'Viaducto del río, estribo este', backdrop: 'bridge-bearing', units: 'metric' });
	});

	it('makes no more than an organisation may have', async () => {
		const full = await aMember(db, await anOrganisation(db), 'trainer');
		await db
			.insertInto('own_scenario')
			.values(
				Array.from({ length: MOST_OWN }, (_, i) => ({
					id: `own-${full.id.slice(0, 6)}-${String(i)}`,
					organisation_id: full.organisation,
					made_by: full.id,
					draft: '{}',
					revision: 1,
					changed_at: NOW.toISOString(),
					retired_at: null,
					created_at: NOW.toISOString()
				}))
			)
			.execute();
		expect(await makeOwn(db, full, NOW)).toEqual({ kind: 'full', most: MOST_OWN });
		expect(await listOwn(db, full)).toHaveLength(MOST_OWN);
	});
});
