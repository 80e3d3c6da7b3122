import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { insertAudit, type LogPlace } from '#lib/server/db/audit.ts';
import { ALL_DAYS } from '#lib/server/exports/range.ts';
import { note, type AuditKind } from '#lib/server/people/audit.ts';
import { LOG_GROUPS, readLog, type LogFilter, type ToldDeed } from '#lib/server/people/log.ts';
import type { Person } from '#lib/server/people/who.ts';
import { employerMessages } from '#lib/text/index.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, later } from './organisation.ts';

const ANY: LogFilter = { who: '', range: ALL_DAYS };

describe.each(DATABASES)('the log on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	/** An organisation of its own, so that each test reads a log of its own. */
	async function site(): Promise<{ organisation: string; employer: Person; trainer: Person; crew: string; learner: string }> {
		const organisation = await anOrganisation(db);
		const employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		const trainer = await aMember(db, organisation, 'trainer', 'Tomás Herrero');
		const crew = await aCrew(db, organisation, [trainer]);
		return { organisation, employer, trainer, crew: crew.id, learner: await aLearner(db, organisation, 'S-1', [crew]) };
	}

	/** All pages, one after the other. */
	async function all(employer: Person, filter: LogFilter): Promise<readonly ToldDeed[]> {
		const found: ToldDeed[] = [];
		let place: LogPlace | undefined;
		for (;;) {
			const { deeds, next } = await readLog(db, employer, filter, place);
			found.push(...deeds);
			if (next === undefined) return found;
			place = next;
		}
	}

	it('tells who did what to whom, with names as they are now, the newest first', async () => {
		const { organisation, employer, trainer, crew, learner } = await site();
		await note(db, { kind: 'hands-on-signed', organisation, actor: trainer.id, subject: learner, detail: { capacity: 'competent-person', signOff: randomUUID() } }, later(1));
		await note(db, { kind: 'learner-moved', organisation, actor: trainer.id, subject: learner, detail: { from: crew } }, later(2));
		await note(db, { kind: 'signed-in', organisation, actor: employer.id, subject: employer.id }, later(3));
		await note(db, { kind: 'sign-in-refused', organisation, actor: null, subject: trainer.id }, later(4));
		await db.updateTable('person').set({ name: 'Tomás Vidal' }).where('id', '=', trainer.id).execute();
		const { deeds } = await readLog(db, employer, ANY);
		expect(deeds.map(({ kind, actor, subject, details }) => ({ kind, actor: actor?.name, subject, details }))).toEqual([
			{ kind: 'sign-in-refused', actor: undefined, subject: 'Tomás Vidal', details: [] },
			{ kind: 'signed-in', actor: 'Orla Finch', subject: null, details: [] },
			{ kind: 'learner-moved', actor: 'Tomás Vidal', subject: 'Dario Penn', details: [{ what: 'from', value: 'Bridges North' }] },
			{ kind: 'hands-on-signed', actor: 'Tomás Vidal', subject: 'Dario Penn', details: [{ what: 'capacity', value: 'competent-person' }] }
		]);
	});

	it('shows nothing of another organisation, and no names of it', async () => {
		const [own, other] = [await site(), await site()];
		await note(db, { kind: 'signed-in', organisation: other.organisation, actor: other.trainer.id, subject: other.trainer.id }, NOW);
		// An id of another organisation where one should not be: it has no name here.
		await note(db, { kind: 'person-closed', organisation: own.organisation, actor: other.employer.id, subject: other.learner, detail: { crew: other.crew } }, NOW);
		const { deeds } = await readLog(db, own.employer, ANY);
		expect(deeds).toMatchObject([{ kind: 'person-closed', actor: null, subject: null, details: [{ what: 'crew', value: other.crew }] }]);
	});

	it('goes through a long log page by page, each deed once, also where many happened in one moment', async () => {
		const { organisation, employer, trainer, learner } = await site();
		const ids: string[] = [];
		for (let i = 0; i < 230; i += 1) {
			const id = randomUUID();
			ids.push(id);
			await insertAudit(db, { id, organisation_id: organisation, actor_id: i % 2 === 0 ? trainer.id : employer.id, kind: i % 3 === 0 ? 'pin-reset' : 'learner-added', subject_id: learner, detail: '{}', at: later(Math.floor(i / 150)).toISOString() });
		}
		const found = await all(employer, ANY);
		expect(found.map(({ id }) => id).sort()).toEqual(ids.toSorted());
		const times = found.map(({ at }) => at);
		expect(times).toEqual(times.toSorted().reverse());
		// The same through questions that are put together from several.
		expect((await all(employer, { ...ANY, group: 'people' })).length).toBe(ids.filter((_id, i) => i % 3 !== 0).length);
		expect((await all(employer, { ...ANY, who: 'r' })).length).toBe(230);
		expect((await all(employer, { ...ANY, who: 'tomas', group: 'sign-ins' })).length).toBe(ids.filter((_id, i) => i % 2 === 0 && i % 3 === 0).length);
	});

	it('finds by part of a name of the staff, whatever the accents, and says when nobody has it', async () => {
		const { organisation, employer, trainer } = await site();
		await note(db, { kind: 'signed-in', organisation, actor: trainer.id, subject: trainer.id }, NOW);
		expect((await readLog(db, employer, { ...ANY, who: 'TOMAS' })).deeds).toHaveLength(1);
		expect(await readLog(db, employer, { ...ANY, who: 'finch' })).toMatchObject({ deeds: [], nobody: false });
		expect(await readLog(db, employer, { ...ANY, who: "'; drop table audit" })).toMatchObject({ deeds: [], nobody: true });
		// Dario Penn is a worker: not among those who are looked for.
		expect(await readLog(db, employer, { ...ANY, who: 'Dario' })).toMatchObject({ nobody: true });
	});

	it('takes days in the zone of the organisation', async () => {
		const { organisation, employer, trainer } = await site();
		await db.updateTable('organisation').set({ zone: 'America/Denver' }).where('id', '=', organisation).execute();
		await note(db, { kind: 'signed-in', organisation, actor: trainer.id, subject: trainer.id }, new Date('2026-03-09T05:59:59.999Z'));
		await note(db, { kind: 'signed-out', organisation, actor: trainer.id, subject: trainer.id }, new Date('2026-03-09T06:00:00.000Z'));
		const on = async (day: string) => (await readLog(db, employer, { ...ANY, range: { from: day, to: day } })).deeds.map(({ kind }) => kind);
		expect(await on('2026-03-08')).toEqual(['signed-in']);
		expect(await on('2026-03-09')).toEqual(['signed-out']);
	});

	it('every kind is found in just one group', async () => {
		const { organisation, employer } = await site();
		const kinds = Object.keys((await employerMessages('en')).deeds.events) as AuditKind[];
		for (const kind of kinds) await note(db, { kind, organisation, actor: null }, NOW);
		const found: string[] = [];
		for (const group of LOG_GROUPS) found.push(...(await all(employer, { ...ANY, group })).map(({ kind }) => kind));
		expect(found.sort()).toEqual(kinds.toSorted());
	});
});
