import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addMonths, canonicalJson, stateOn, validityOf } from '#lib/records/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { setSecret } from '#lib/server/db/people.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import type { Person } from '#lib/server/people/who.ts';
import { acknowledgeForEmployer, acknowledgeTraining } from '#lib/server/records/acknowledging.ts';
import { changeRecordSettings } from '#lib/server/records/changed-settings.ts';
import { sha256 } from '#lib/server/records/chain.ts';
import { recordOf, recordSettings, type RecordSettings } from '#lib/server/records/found.ts';
import { markLeft } from '#lib/server/records/leaving.ts';
import { commitmentOf } from '#lib/server/records/names.ts';
import { ownRecordOf } from '#lib/server/records/own-record.ts';
import { priorMonths, priorToSign, signPrior, type PriorEntry } from '#lib/server/records/prior-training.ts';
import { orderRetraining } from '#lib/server/records/retraining.ts';
import { revokeRecord } from '#lib/server/records/revoking.ts';
import { validityFor } from '#lib/server/records/validity.ts';
import { employerMessages, recordMessages } from '#lib/text/index.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, aMember, anOrganisation } from '../people/organisation.ts';

const PASSWORD = 'nine gulls on the gantry';
/** Local day of NOW. */
const TODAY = '2026-11-25';
const USUAL: RecordSettings = { validityMonths: null, soonDays: 30, keepMonths: 36 };

const anEntry = (more: Partial<PriorEntry> = {}): PriorEntry => ({
	id: randomUUID(),
	training: 'Two-day course, training yard of the last employer',
	provider: null,
	programme: null,
	trainedDay: '2026-03-03',
	judgedDay: TODAY,
	validUntil: null,
	document: sha256('a paper'),
	...more
});

describe('how long a completion is valid', () => {
	it('is by law, or by the employer’s stricter period; through the whole of its last day', () => {
		// DESIGN section 8: valid until by the jurisdiction's rule or the employer's stricter one; the look prints 3 March 2027 for two years.
		expect(validityFor('us-construction', { validityMonths: 24 }, '2025-03-03')).toEqual({ months: 24, by: 'employer', until: '2027-03-03' });
		// 29 CFR 1926.503(c): no fixed period; read.
		expect(validityFor('us-construction', { validityMonths: null }, '2025-03-03')).toEqual({ months: null, by: 'nothing-fixed', until: null });
		// O. Reg. 297/13, ss. 6 to 10: three years; read.
		expect(validityFor('ca-ontario', { validityMonths: null }, '2025-03-03')).toEqual({ months: 36, by: 'law', until: '2028-03-03' });
		expect(validityFor('ca-ontario', { validityMonths: 36 }, '2025-03-03')).toMatchObject({ by: 'law' });
		expect(validityFor('ca-ontario', { validityMonths: 48 }, '2025-03-03')).toMatchObject({ months: 36, by: 'law' });
		expect(validityFor('ca-ontario', { validityMonths: 12 }, '2025-03-03')).toEqual({ months: 12, by: 'employer', until: '2026-03-03' });
	});

	it('ends on the last day of a month that has no such day, and is nothing fixed for a table that is not known any more', () => {
		// Calendar: 2027 has no 29 February; common practice, no source.
		expect(validityFor('uk', { validityMonths: 36 }, '2024-02-29').until).toBe('2027-02-28');
		expect(validityFor('us-construction-1989', { validityMonths: null }, TODAY).by).toBe('nothing-fixed');
	});
});

describe.each(DATABASES)('training from before on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let count = 0;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer');
		await setSecret(db, employer.id, await hashSecret('password', PASSWORD));
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const learner = () => aLearner(db, organisation, `V-${String((count += 1))}`);

	async function asPerson(id: string): Promise<Person> {
		const { answerer_id: answerer, organisation_id } = await db.selectFrom('person').select(['answerer_id', 'organisation_id']).where('id', '=', id).executeTakeFirstOrThrow();
		return { kind: 'person', id, organisation: organisation_id, role: 'learner', name: 'Dario Penn', answerer, language: null };
	}

	async function sign(person: string, entry: PriorEntry, given: { readonly shown?: string; readonly password?: string; readonly who?: Person } = {}, now = NOW) {
		const built = await priorToSign(db, employer, person, entry, 'en', now);
		const shown = given.shown ?? (built.kind === 'to-sign' ? built.shown : '');
		return signPrior(db, given.who ?? employer, person, { entry, shown, password: given.password ?? PASSWORD, language: 'en' }, '192.0.2.8', now);
	}

	it('is entered as it was shown, signed for the employer, and makes current without a course here', async () => {
		const person = await learner();
		expect(await sign(person, anEntry())).toEqual({ kind: 'signed' });
		const record = await recordOf(db, person);
		const [training] = record.trainings;
		if (training?.entry.kind !== 'prior-training') throw new Error('not entered');
		const { priorTraining } = await employerMessages('en');
		expect(training.entry).toMatchObject({
			by: employer.id,
			// 29 CFR 1926.503(b)(1): the day on which the prior training was found adequate stands in place of the day of training; read.
			record: { person, organisation, scope: 'lanyard-with-energy-absorber', trainedDay: '2026-03-03', judgedDay: TODAY, document: sha256('a paper') },
			signature: { signer: employer.id, named: await commitmentOf(db, employer.id), capacity: 'employer', meaning: priorTraining.meaning({ what: 'Lanyard with energy absorber' }) }
		});
		// SHA-256 over RFC 8785 text.
		expect(training.entry.signature.record).toBe(sha256(canonicalJson(training.entry.record)));
		expect(stateOn({ until: validityOf(record).until, begun: false }, TODAY, 30)).toBe('current');
		expect(await db.selectFrom('audit').select('kind').where('subject_id', '=', person).where('kind', '=', 'prior-training-entered').execute()).toHaveLength(1);
	});

	it('names provider and programme as the proof names them, and says nothing of them where it does not', async () => {
		const [one, other] = [await learner(), await learner()];
		await sign(one, anEntry({ provider: 'Quay Street Training', programme: '14-337' }));
		await sign(other, anEntry());
		const recordIn = async (person: string) => (await recordOf(db, person)).trainings[0]?.entry;
		// O. Reg. 297/13, ss. 7, 8, 10: worker, approved provider, approved programme, day of completion; from memory.
		expect(await recordIn(one)).toMatchObject({ record: { approved: { provider: 'Quay Street Training', programme: '14-337' } } });
		expect(await recordIn(other)).not.toHaveProperty('record.approved');
	});

	it('signed twice is once, in the same moment too; the same form for another person is another record', async () => {
		const [person, other] = [await learner(), await learner()];
		const entry = anEntry();
		expect(await Promise.all([sign(person, entry), sign(person, entry)])).toEqual([{ kind: 'signed' }, { kind: 'signed' }]);
		expect(await sign(person, entry)).toEqual({ kind: 'signed' });
		expect((await recordOf(db, person)).trainings).toHaveLength(1);
		expect(await sign(person, { ...entry, training: 'Something else' })).toEqual({ kind: 'changed' });
		expect(await sign(other, entry)).toEqual({ kind: 'signed' });
		expect((await recordOf(db, other)).trainings[0]?.id).not.toBe((await recordOf(db, person)).trainings[0]?.id);
	});

	it('is not entered with a wrong password, which counts, nor where something else was read', async () => {
		const person = await learner();
		const boss = await aMember(db, organisation, 'employer');
		await setSecret(db, boss.id, await hashSecret('password', PASSWORD));
		const entry = anEntry();
		const built = await priorToSign(db, boss, person, entry, 'en', NOW);
		if (built.kind !== 'to-sign') throw new Error(built.kind);
		const attempt = (given: { readonly shown: string; readonly password: string; readonly language?: 'en' | 'es' }) => signPrior(db, boss, person, { entry, language: 'en', ...given }, '192.0.2.77', NOW);
		expect(await attempt({ shown: '0'.repeat(64), password: PASSWORD })).toEqual({ kind: 'changed' });
		// Read in English, signed under the Spanish words: another meaning.
		expect(await attempt({ shown: built.shown, password: PASSWORD, language: 'es' })).toEqual({ kind: 'changed' });
		const kinds: string[] = [];
		for (let i = 0; i < 12; i += 1) kinds.push((await attempt({ shown: built.shown, password: 'ten gulls on the gantry' })).kind);
		expect(kinds[0]).toBe('wrong-password');
		expect(new Set(kinds.slice(1))).not.toContain('signed');
		expect(['wait', 'locked']).toContain(kinds.at(-1));
		expect((await recordOf(db, person)).trainings).toEqual([]);
	});

	it('says of each day what is wrong with it', async () => {
		const person = await learner();
		const faults = async (more: Partial<PriorEntry>) => {
			const built = await priorToSign(db, employer, person, anEntry(more), 'en', NOW);
			return built.kind === 'fault' ? [built.field, built.fault] : built.kind;
		};
		expect(await faults({ judgedDay: '2026-11-26' })).toEqual(['judgedDay', 'day-to-come']);
		expect(await faults({ judgedDay: '2026-11-24', trainedDay: '2026-11-25' })).toEqual(['trainedDay', 'trained-after']);
		expect(await faults({ validUntil: '2026-11-24' })).toEqual(['validUntil', 'until-before']);
		expect(await faults({ trainedDay: null, document: null })).toBe('to-sign');
	});

	it('is valid no longer than law or the employer’s own period, counted from the training', async () => {
		const there = await anOrganisation(db);
		const boss = await aMember(db, there, 'employer');
		await db.updateTable('organisation').set({ rules: 'ca-ontario' }).where('id', '=', there).execute();
		const person = await aLearner(db, there, 'ON-1');
		const built = async (more: Partial<PriorEntry>) => {
			const told = await priorToSign(db, boss, person, anEntry(more), 'en', NOW);
			return told.kind === 'fault' ? told.fault : told.kind;
		};
		// O. Reg. 297/13, ss. 6 to 10: three years from completion; read.
		expect(await priorMonths(db, there)).toBe(36);
		expect(await built({})).toBe('until-needed');
		expect(await built({ validUntil: '2029-03-03' })).toBe('to-sign');
		expect(await built({ validUntil: '2029-03-04' })).toBe('until-late');
		expect(await built({ trainedDay: null, validUntil: addMonths(TODAY, 36) })).toBe('to-sign');
		await changeRecordSettings(db, boss, { ...USUAL, validityMonths: 12 }, NOW);
		expect(await built({ validUntil: '2027-03-04' })).toBe('until-late');
	});

	it('is not found for staff, nor by others, and not entered for somebody who left', async () => {
		const person = await learner();
		const stranger = await aMember(db, await anOrganisation(db), 'employer');
		const trainer = await aMember(db, organisation, 'trainer');
		for (const who of [stranger, trainer]) expect(await priorToSign(db, who, person, anEntry(), 'en', NOW)).toEqual({ kind: 'not-found' });
		expect(await priorToSign(db, employer, trainer.id, anEntry(), 'en', NOW)).toEqual({ kind: 'not-found' });
		await markLeft(db, employer, person, TODAY, NOW);
		expect(await sign(person, anEntry())).toEqual({ kind: 'gone' });
	});

	it('the learner’s own copy shows it with its place in the chain, and can confirm it once, word for word', async () => {
		const person = await learner();
		const who = await asPerson(person);
		expect(await ownRecordOf(db, who, false, NOW)).toMatchObject({ state: 'never', until: null, order: undefined, trainings: [] });
		await sign(person, anEntry({ validUntil: '2027-03-03' }));
		const own = await ownRecordOf(db, who, false, NOW);
		const head = await db.selectFrom('record_entry').select(['seq', 'hash']).where('organisation_id', '=', organisation).orderBy('seq', 'desc').limit(1).executeTakeFirstOrThrow();
		expect(own).toMatchObject({ state: 'current', until: '2027-03-03', head, employer: 'Harrow Bridges', today: TODAY, notProofOf: [] });
		const [training] = own.trainings;
		expect(training).toMatchObject({ seq: head.seq, hash: head.hash, whole: true, past: false, of: { kind: 'prior-training', signer: employer.name } });
		const id = training?.id ?? '';
		for (let i = 0; i < 2; i += 1) expect(await acknowledgeTraining(db, who, id, 'es', NOW)).toEqual({ kind: 'acknowledged' });
		const entries = (await recordOf(db, person)).entries.filter(({ entry }) => entry.kind === 'acknowledged');
		const { ownRecord } = await recordMessages('es');
		// COHSR s. 19.6(4): the worker acknowledges in writing; read.
		expect(entries.map(({ entry }) => entry)).toEqual([expect.objectContaining({ of: id, meaning: ownRecord.acknowledge, language: 'es', by: person })]);
		expect((await ownRecordOf(db, who, false, NOW)).trainings[0]?.acknowledgedOn).toBe(TODAY);

		await orderRetraining(db, employer, { people: [person] }, { reason: 'incident', due: '2026-12-03' }, NOW);
		expect(await ownRecordOf(db, who, false, NOW)).toMatchObject({ state: 'expired', order: { due: '2026-12-03', reason: 'incident', late: false }, trainings: [{ past: true }] });
	});

	it('nobody confirms what is another’s, or counts no more', async () => {
		const [person, other] = [await learner(), await learner()];
		await sign(person, anEntry());
		const [training] = (await recordOf(db, person)).trainings;
		const id = training?.id ?? '';
		expect(await acknowledgeTraining(db, await asPerson(other), id, 'en', NOW)).toEqual({ kind: 'not-found' });
		await revokeRecord(db, employer, person, id, 'entered-by-mistake', NOW);
		expect(await acknowledgeTraining(db, await asPerson(person), id, 'en', NOW)).toEqual({ kind: 'not-found' });
		expect((await ownRecordOf(db, await asPerson(person), false, NOW)).trainings[0]?.revokedOn).toBe(TODAY);
	});

	it('the employer confirms it as well, once, word for word; no trainer, no other employer, and not what counts no more', async () => {
		const person = await learner();
		await sign(person, anEntry());
		const id = (await recordOf(db, person)).trainings[0]?.id ?? '';
		const trainer = await aMember(db, organisation, 'trainer');
		const stranger = await aMember(db, await anOrganisation(db), 'employer');
		for (const who of [trainer, stranger]) expect(await acknowledgeForEmployer(db, who, person, id, 'en', NOW)).toEqual({ kind: 'not-found' });
		expect(await acknowledgeForEmployer(db, employer, person, randomUUID(), 'en', NOW)).toEqual({ kind: 'not-found' });
		const both = await Promise.all([1, 2].map(() => acknowledgeForEmployer(db, employer, person, id, 'es', NOW)));
		expect(both).toEqual([{ kind: 'acknowledged' }, { kind: 'acknowledged' }]);
		const { onePerson } = await employerMessages('es');
		const record = await recordOf(db, person);
		// COHSR s. 19.6(4): worker and employer each acknowledge in writing; read.
		expect(record.entries.filter(({ entry }) => entry.kind === 'employer-acknowledged').map(({ entry }) => entry)).toEqual([
			{ kind: 'employer-acknowledged', at: NOW.toISOString(), by: employer.id, person, of: id, meaning: onePerson.acknowledgeMeaning, language: 'es' }
		]);
		expect((await ownRecordOf(db, await asPerson(person), false, NOW)).trainings[0]).toMatchObject({ employerAcknowledgedOn: TODAY, acknowledgedOn: undefined });
		const noted = await db.selectFrom('audit').select('actor_id').where('subject_id', '=', person).where('kind', '=', 'training-acknowledged').execute();
		expect(noted).toEqual([{ actor_id: employer.id }]);
		await revokeRecord(db, employer, person, id, 'entered-by-mistake', NOW);
		expect(await acknowledgeForEmployer(db, employer, person, id, 'en', NOW)).toEqual({ kind: 'not-found' });
	});

	it('settings are kept and noted; an own period longer than law’s is refused, and nothing is changed', async () => {
		const there = await anOrganisation(db);
		const boss = await aMember(db, there, 'employer');
		expect(await recordSettings(db, there)).toEqual(USUAL);
		const settings: RecordSettings = { validityMonths: 48, soonDays: 14, keepMonths: null };
		expect(await changeRecordSettings(db, boss, settings, NOW)).toEqual({ kind: 'changed' });
		expect(await recordSettings(db, there)).toEqual(settings);
		await db.updateTable('organisation').set({ rules: 'ca-ontario' }).where('id', '=', there).execute();
		expect(await changeRecordSettings(db, boss, { ...settings, soonDays: 60 }, NOW)).toEqual({ kind: 'not-stricter', law: 36 });
		expect(await recordSettings(db, there)).toEqual(settings);
		const [noted] = await db.selectFrom('audit').select('detail').where('organisation_id', '=', there).where('kind', '=', 'record-settings-changed').execute();
		expect(JSON.parse(noted?.detail ?? '')).toEqual({ validityMonths: 48, soonDays: 14, keepMonths: 'never' });
	});
});
