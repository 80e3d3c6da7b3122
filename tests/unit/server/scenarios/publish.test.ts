/** Publishing keeps nobody else waiting, whatever is published. */
import { setImmediate } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { findOwn, importScenario, makeOwn, publish, retire, saveDraft, type Person } from '#lib/server/index.ts';
import { shippedDocument } from '#lib/course/shipped.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { aMember, anOrganisation, NOW } from '../people/organisation.ts';

/** Parses, and no plan of it is ever drawn: each seed is tried twelve hundred times. */
const HOSTILE = JSON.stringify({
	...shippedDocument('bridge-bearing'),
	constraints: [{ of: 'freeFall', atLeast: { value: 50, unit: 'm' } }],
	aims: ['nothing', 'unknown', 'reach'].map((fails) => ({ fails, weight: 1 }))
});
/** Time enough for anything that ends. */
const LIMITS = { draws: 40, most: 60_000 };

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let trainer: Person;
	let colleague: Person;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		const organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer');
		colleague = await aMember(db, organisation, 'trainer');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const hostile = async (who: Person) => {
		const made = await importScenario(db, who, HOSTILE, NOW);
		if (made.kind !== 'made') throw new Error(JSON.stringify(made));
		return made.id;
	};
	const good = async (who: Person) => {
		const made = await makeOwn(db, who, NOW);
		if (made.kind !== 'made') throw new Error(JSON.stringify(made));
		return made.id;
	};

	it('lets others have their turn again and again, and refuses in the end what is never drawn', async () => {
		const id = await hostile(trainer);
		let over = false;
		let turns = 0;
		const others = (async () => {
			for (; !over; turns += 1) await setImmediate();
		})();
		const publishing = await publish(db, trainer, id, 1, NOW, { ...LIMITS, draws: 1 });
		over = true;
		await others;
		expect(publishing).toMatchObject({ kind: 'refused', problems: [] });
		expect(turns).toBeGreaterThan(5);
		expect(await findOwn(db, trainer, id)).toMatchObject({ published: null, revision: 1 });
	});

	it('gives up when the time is used up, and publishes nothing', async () => {
		const id = await hostile(trainer);
		expect(await publish(db, trainer, id, 1, NOW, { ...LIMITS, most: 0 })).toEqual({ kind: 'too-slow' });
		expect(await findOwn(db, trainer, id)).toMatchObject({ published: null, revision: 1 });
		// Nothing of it is left behind.
		expect(await publish(db, trainer, await good(trainer), 1, NOW, LIMITS)).toEqual({ kind: 'published', version: 1 });
	});

	it('publishes one at a time in an organisation; other organisations do not wait for it', async () => {
		const stranger = await aMember(db, await anOrganisation(db), 'employer');
		const [mine, theirs, strange] = [await hostile(trainer), await good(colleague), await good(stranger)];
		let begins = (): void => undefined;
		const begun = new Promise<void>((done) => (begins = done));
		let over = false;
		// How often to draw is asked when the turn of the organisation is taken; from then on two seconds are computed, with pauses.
		const long = {
			most: 2000,
			get draws() {
				begins();
				return 100 * LIMITS.draws;
			}
		};
		const first = publish(db, trainer, mine, 1, NOW, long).finally(() => (over = true));
		await begun;
		expect(await publish(db, colleague, theirs, 1, NOW, LIMITS)).toEqual({ kind: 'busy' });
		expect(await publish(db, stranger, strange, 1, NOW, LIMITS)).toEqual({ kind: 'published', version: 1 });
		expect(over).toBe(false);
		expect(await first).toEqual({ kind: 'too-slow' });
		expect(await publish(db, colleague, theirs, 1, NOW, LIMITS)).toEqual({ kind: 'published', version: 1 });
	});

	it('publishes what was inspected: a draft that is saved meanwhile stays a draft', async () => {
		const id = await good(trainer);
		const publishing = publish(db, trainer, id, 1, NOW, LIMITS);
		const saved = await saveDraft(db, trainer, id, 1, '{"later":1}', NOW);
		// Whoever comes first, the other is told: by chance and by the database either of the two.
		const kinds = [(await publishing).kind, saved.kind];
		expect([
			['changed-meanwhile', 'saved'],
			['published', 'changed-meanwhile']
		]).toContainEqual(kinds);
		// What is in the draft now is the later text, or what was published; nothing of both.
		const after = await findOwn(db, trainer, id);
		expect([after?.draft ?? null, after?.published ?? null]).toEqual(saved.kind === 'saved' ? ['{"later":1}', null] : [null, 1]);
		expect(await saveDraft(db, trainer, id, after?.revision ?? 0, '{"later":2}', NOW)).toMatchObject({ kind: 'saved' });
	});

	it('publishes one that is retired, which stays so', async () => {
		const id = await good(trainer);
		await retire(db, trainer, id, NOW);
		expect(await publish(db, trainer, id, 1, NOW, LIMITS)).toEqual({ kind: 'published', version: 1 });
		expect((await findOwn(db, trainer, id))?.retiredAt).toBe(NOW.toISOString());
	});
});
