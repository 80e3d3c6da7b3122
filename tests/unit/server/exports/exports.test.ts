import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LESSON_IDS } from '#lib/course/index.ts';
import { canonicalJson, type Entry } from '#lib/records/index.ts';
import type { CheckEvent, CheckTry } from '#lib/server/db/checks.ts';
import { putOnList } from '#lib/server/db/crew-list.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { clearName, deleteIdentities, keptCommitments } from '#lib/server/db/forgetting.ts';
import { EXPORT_FILES, exportRecords, type ExportFile, type ExportName } from '#lib/server/exports/files.ts';
import { ALL_DAYS } from '#lib/server/exports/range.ts';
import { exportPerson } from '#lib/server/exports/one-person.ts';
import { unguarded } from '#lib/server/exports/csv.ts';
import { goThroughCourse } from '#lib/server/people/demo-course.ts';
import { startSession } from '#lib/server/people/session.ts';
import type { Person } from '#lib/server/people/who.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { entryHash } from '#lib/server/records/chain.ts';
import { commitmentOf } from '#lib/server/records/names.ts';
import { evidenceDigest } from '#lib/server/records/evidence.ts';
import { completedEntry, handsOnEntry, orderEntry, priorTrainingEntry } from '../../../support/record-entries.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation } from '../people/organisation.ts';

/** What a spreadsheet would run. */
const FORMULA = "=cmd|' /C calc'!A0";
const FIRST = LESSON_IDS[0];

async function textOf(file: ExportFile | null): Promise<string> {
	if (file === null) throw new Error('There is no such file');
	let text = '';
	for await (const part of file.parts) text += part;
	return text;
}

type TextRow = Readonly<Record<string, string>>;

describe.each(DATABASES)('exports on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let trainer: Person;
	let crew: string;
	/** Passed and signed for; went to the first lesson's check and passed that. */
	let dario: Person;
	/** Prior training; a name that is a formula; retraining ordered. */
	let formula: string;
	/** Passed, not signed, revoked; an order that was withdrawn. */
	let revoked: string;
	/** Passed; the name is forgotten. */
	let forgotten: string;
	let stranger: Person;

	const append = (of: string, entries: readonly Entry[]) => db.transaction().execute((transaction) => appendEntries(transaction, of, entries));

	async function learner(number: string, name: string): Promise<Person> {
		const id = await aLearner(db, organisation, number, [], name);
		const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', id).executeTakeFirstOrThrow();
		return { kind: 'person', id, organisation, role: 'learner', name, answerer, language: null };
	}

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
		trainer = await aMember(db, organisation, 'trainer', 'Helle Brandt');
		const made = await aCrew(db, organisation, [trainer]);
		crew = made.id;
		dario = await learner('D-1', 'Dario Penn');
		await putOnList(db, crew, dario.id, NOW.toISOString());
		formula = (await learner('-2', FORMULA)).id;
		revoked = (await learner('R-3', 'Noor "Vale", Jr\nII')).id;
		forgotten = (await learner('F-4', 'Gone Forever')).id;

		await goThroughCourse(db, dario, NOW, FIRST);
		await goThroughCourse(db, await learner('C-5', 'Ines Okoro'), NOW, FIRST);
		const signer = { signer: trainer.id, named: await commitmentOf(db, trainer.id) };
		const supervised = { trainer: trainer.id, named: signer.named, identified: 'Badge with photo', place: 'Hall 4' };
		const passed = completedEntry(dario.id, '2026-03-02', { supervised, validity: { months: 24, by: 'employer', until: '2028-03-02' } });
		const taken = completedEntry(revoked, '2026-04-01');
		const order = orderEntry(revoked, '2026-05-01', '2026-06-01', 'incident');
		const before = priorTrainingEntry(formula, '2026-02-10', '2026-12-01');
		await append(organisation, [
			passed,
			handsOnEntry(dario.id, '2026-03-03', signer),
			{ ...before, record: { ...before.record, approved: { provider: FORMULA, programme: null } } },
			{ kind: 'employer-acknowledged', at: '2026-02-11T08:00:00.000Z', by: employer.id, person: formula, of: before.record.id, meaning: 'So it was.', language: 'en' },
			{ ...orderEntry(formula, '2026-05-02', '2026-06-15'), by: employer.id },
			taken,
			{ kind: 'revoked', at: '2026-04-02T08:00:00.000Z', by: employer.id, person: revoked, of: taken.id, reason: 'wrong-person' },
			order,
			{ kind: 'retraining-withdrawn', at: '2026-05-03T08:00:00.000Z', by: employer.id, person: revoked, of: order.id },
			completedEntry(forgotten, '2026-01-05'),
			{ kind: 'identity-erased', at: '2026-07-01T08:00:00.000Z', by: employer.id, person: forgotten, day: '2026-07-01', why: 'asked-for' }
		]);
		await deleteIdentities(db, forgotten, await keptCommitments(db, forgotten));
		await clearName(db, organisation, forgotten);
		const cookies = { get: () => undefined, set: () => undefined, delete: () => undefined };
		await startSession(db, cookies, false, dario.id, NOW);

		const other = await anOrganisation(db);
		stranger = await aMember(db, other, 'employer', 'Stranger Danger');
		const theirs = await aLearner(db, other, 'X-1', [], 'Xaver Strange');
		await append(other, [completedEntry(theirs, '2026-03-02'), orderEntry(theirs, '2026-05-01', '2026-06-01')]);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	const given = { range: ALL_DAYS, mark: false };
	const exported = async (name: ExportName, more: Partial<typeof given> = {}, who = employer): Promise<string> => textOf(await exportRecords(db, who, name, { ...given, ...more }, NOW));
	const rowsOf = (text: string): readonly TextRow[] => parse(text, { columns: true, record_delimiter: '\r\n' });
	const rows = async (name: ExportName, more: Partial<typeof given> = {}): Promise<readonly TextRow[]> => rowsOf(await exported(name, more));

	it('people.csv tells how each stands today', async () => {
		const people = await rows('people.csv');
		const byId = new Map(people.map((row) => [row['person_id'], row]));
		expect(people).toHaveLength(7);
		expect(byId.get(dario.id)).toMatchObject({
			name: 'Dario Penn',
			personal_number: 'D-1',
			role: 'learner',
			account: 'invited',
			crews: 'Bridges North',
			zone: 'UTC',
			today: '2026-11-25',
			course_begun: 'true',
			state: 'current',
			valid_until: '2028-03-02',
			no_fixed_end: 'false',
			record_day: '2026-03-02'
		});
		// Ordered in May, due in June: what was valid until December ended then.
		expect(byId.get(formula)).toMatchObject({ name: `'${FORMULA}`, personal_number: "'-2", state: 'expired', valid_until: '2026-06-15', retraining_due: '2026-06-15', detail: 'retraining-ordered' });
		expect(byId.get(revoked)).toMatchObject({ name: 'Noor "Vale", Jr\nII', state: 'never', detail: 'revoked' });
		expect(byId.get(forgotten)).toMatchObject({ name: 'identity erased', personal_number: '', identity_erased_on: '2026-07-01' });
		expect(byId.get(trainer.id)).toMatchObject({ role: 'trainer', state: '', crews: 'Bridges North' });
	});

	it('completions.csv holds all that the records hold, who signed, and their places in the chain', async () => {
		const completions = await rows('completions.csv');
		const byPerson = new Map(completions.map((row) => [row['person_id'], row]));
		expect(completions).toHaveLength(4);
		const chained = await db.selectFrom('record_entry').selectAll().where('person_id', '=', dario.id).where('kind', '=', 'completed').executeTakeFirstOrThrow();
		// 29 CFR 1926.503(b)(1), from memory: who, when, and who signed.
		expect(byPerson.get(dario.id)).toMatchObject({
			basis: 'own-training',
			name: 'Dario Penn',
			personal_number: 'D-1',
			employer: 'Harrow Bridges',
			day: '2026-03-02',
			result: 'passed',
			asked: '16',
			right: '16',
			pass_rule: 'staged',
			supervised: 'true',
			trainer: 'Helle Brandt',
			identified_by: 'Badge with photo',
			signer: 'Helle Brandt',
			signer_capacity: 'competent-person',
			sign_off_day: '2026-03-03',
			sign_off_place: 'Training yard, bay 2',
			whole: 'true',
			validity_months: '24',
			valid_until: '2028-03-02',
			revoked: 'false',
			started_at: '2026-03-02T09:30:00.000Z',
			zone: 'UTC',
			chain_seq: String(chained.seq),
			chain_hash: chained.hash
		});
		expect(byPerson.get(formula)).toMatchObject({ basis: 'prior-training', result: 'judged-adequate', day: '2026-02-10', valid_until: '2026-12-01', signer: 'identity erased', signer_capacity: 'employer', whole: 'true', prior_approved_provider: `'${FORMULA}`, prior_approved_programme: '', employer_acknowledged_at: '2026-02-11T08:00:00.000Z', employer_acknowledged_by: 'Orla Finch' });
		expect(unguarded(byPerson.get(formula)?.['name'] ?? '')).toBe(FORMULA);
		expect(byPerson.get(revoked)).toMatchObject({ revoked: 'true', revoked_reason: 'wrong-person', revoked_by: 'Orla Finch', whole: 'false', sign_off_id: '' });
		expect(byPerson.get(forgotten)).toMatchObject({ name: 'identity erased', name_now: 'identity erased', personal_number: '', identity_erased_on: '2026-07-01', day: '2026-01-05' });
	});

	it('retraining.csv tells what became of each order', async () => {
		const orders = await rows('retraining.csv');
		expect(orders.map((row) => [row['person_id'], row['reason'], row['state'], row['due'], row['ordered_by']]).sort()).toEqual(
			[
				[formula, 'yearly-review', 'overdue', '2026-06-15', 'Orla Finch'],
				[revoked, 'incident', 'withdrawn', '2026-06-01', 'identity erased']
			].sort()
		);
	});

	it('answers.csv holds every answer of checks that ended, as it was typed, with the right value, without diagnoses', async () => {
		const answers = await rows('answers.csv');
		const own = answers.filter((row) => row['person_id'] === dario.id);
		const [page] = await db.selectFrom('check_event').innerJoin('check_try', 'check_try.id', 'check_event.check_id').select('check_event.payload').where('check_try.person_id', '=', dario.id).where('check_event.kind', '=', 'handed-in').execute();
		const { results } = JSON.parse(page?.payload ?? '') as { readonly results: readonly { readonly item: { readonly id: string; readonly seed: number }; readonly kind: string; readonly answer: { readonly answers?: Readonly<Record<string, { readonly text?: string }>> } }[] };
		expect(new Set(own.map((row) => row['item']))).toEqual(new Set(results.map(({ item }) => item.id)));
		for (const { item, kind, answer } of results) {
			const of = own.filter((row) => row['item'] === item.id);
			expect(of.every((row) => row['seed'] === String(item.seed) && row['passed'] === 'true' && row['grade'] !== 'missing' && row['lesson'] === FIRST)).toBe(true);
			for (const [ask, { text }] of Object.entries(answer.answers ?? {})) if (text !== undefined) expect(unguarded(of.find((row) => row['ask'] === ask)?.['answer'] ?? '')).toBe(text);
			if (kind === 'picture') expect(of).toHaveLength(1);
		}
		expect(JSON.stringify(own)).not.toMatch(/diagnosis|slip":/);
	});

	it('what runs is in no file: its problems are still to be answered', async () => {
		const ready = await learner('C-6', 'Marek Duval');
		await goThroughCourse(db, ready, NOW, FIRST);
		const begun = await db.selectFrom('check_try').selectAll().where('person_id', '=', ready.id).executeTakeFirstOrThrow();
		// The same try once more, as it was before anything was handed in.
		const other = await learner('C-7', 'Sana Ibe');
		const first = await db.selectFrom('check_event').selectAll().where('check_id', '=', begun.id).where('seq', '=', 1).executeTakeFirstOrThrow();
		const check = `${begun.id.slice(0, -4)}beef`;
		await db.insertInto('check_try').values({ ...begun, id: check, person_id: other.id, seed: 'still-secret' }).execute();
		await db.insertInto('check_event').values({ ...first, id: `${first.id.slice(0, -4)}beef`, check_id: check }).execute();
		expect(await exported('answers.csv')).not.toContain(check);
		const everything = await exported('everything.json');
		expect(everything).toContain(begun.id);
		expect(everything).not.toMatch(/still-secret/);
		expect(await textOf(await exportPerson(db, employer, other.id, 'json', NOW))).not.toContain('still-secret');
	});

	it('days bound what happened: both days within it', async () => {
		const days = async (name: ExportName, from: string, to: string, column: string): Promise<readonly (string | undefined)[]> => (await rows(name, { range: { from, to } })).map((row) => row[column]);
		expect(await days('completions.csv', '2026-02-10', '2026-03-02', 'day')).toHaveLength(2);
		expect(await days('completions.csv', '2026-03-03', '2026-03-31', 'day')).toEqual([]);
		expect(await days('retraining.csv', '2026-05-02', '2026-12-31', 'ordered_on')).toEqual(['2026-05-02']);
		expect((await days('answers.csv', '2026-11-25', '2026-11-25', 'day')).length).toBeGreaterThan(0);
		expect(await days('answers.csv', '2026-11-26', '2026-11-26', 'day')).toEqual([]);
		expect(await days('log.csv', '2026-11-24', '2026-11-24', 'kind')).toEqual([]);
	});

	it('each export is noted, with its file and its days, and stands in the next log', async () => {
		await exported('people.csv', { range: { from: '2026-05-02', to: '2026-05-03' } });
		await exported('completions.csv', { range: { from: '2026-05-02', to: ALL_DAYS.to }, mark: true });
		const noted = (await rows('log.csv')).filter((row) => row['kind'] === 'records-exported');
		const details = noted.map((row) => JSON.parse(row['detail'] ?? '') as unknown);
		expect(details).toContainEqual({ file: 'people.csv' });
		expect(details).toContainEqual({ file: 'completions.csv', from: '2026-05-02' });
		expect(noted.every((row) => row['actor'] === 'Orla Finch' && row['actor_role'] === 'employer' && row['at'] === NOW.toISOString() && row['zone'] === 'UTC')).toBe(true);
	});

	it('a name that no file has is none, and nothing is noted of it', async () => {
		const count = async () => (await db.selectFrom('audit').select('id').execute()).length;
		const before = await count();
		expect(await exportRecords(db, employer, 'secrets.csv', given, NOW)).toBeNull();
		expect(await exportRecords(db, employer, 'toString', given, NOW)).toBeNull();
		expect(await exportPerson(db, employer, dario.id, 'xml', NOW)).toBeNull();
		expect(await exportPerson(db, stranger, dario.id, 'json', NOW)).toBeNull();
		expect(await count()).toBe(before);
	});

	it('of another organisation nothing is in any file', async () => {
		for (const name of EXPORT_FILES) expect(await exported(name), name).not.toMatch(/Strange|X-1/);
		const theirs = await exported('everything.json', {}, stranger);
		expect(theirs).toContain('Xaver Strange');
		for (const ours of [dario.id, 'Dario', 'Orla', organisation, 'Bridges North']) expect(theirs).not.toContain(ours);
	});

	it('no file holds what signs in', async () => {
		await db.updateTable('person').set({ secret: 'hash-of-a-secret' }).where('id', '=', dario.id).execute();
		for (const name of EXPORT_FILES) expect(await exported(name), name).not.toMatch(/hash-of-a-secret|token_hash|join_code/);
		for (const form of ['json', 'completions', 'answers']) expect(await textOf(await exportPerson(db, employer, dario.id, form, NOW)), form).not.toMatch(/hash-of-a-secret|token_hash|answerer"/);
	});

	interface Everything {
		readonly entries: readonly { readonly seq: number; readonly prev: string; readonly hash: string; readonly payload: Entry }[];
		readonly checks: readonly (CheckTry & { readonly events: readonly CheckEvent[] })[];
		readonly people: readonly { readonly person_id: string; readonly crews: readonly { readonly id: string }[] }[];
		readonly identities: readonly { readonly commitment: string }[];
		readonly audit: readonly unknown[];
		readonly chain_head: { readonly seq: number; readonly hash: string };
	}

	it('everything.json can be checked by others: each hash and each digest of it', async () => {
		const all = JSON.parse(await exported('everything.json')) as Everything;
		// RFC 8785 text of the payload is what was hashed.
		let prev = '0'.repeat(64);
		for (const { seq, hash, payload, ...entry } of all.entries) {
			expect(entry.prev).toBe(prev);
			expect(hash).toBe(entryHash(seq, prev, canonicalJson(payload)));
			prev = hash;
		}
		expect(all.chain_head).toEqual({ seq: all.entries.length, hash: prev });
		const ends = all.entries.flatMap(({ payload }) => (payload.kind === 'check-ended' ? [payload] : []));
		expect(ends.length).toBeGreaterThan(0);
		for (const end of ends) {
			const check = all.checks.find(({ id }) => id === end.check);
			if (check === undefined) throw new Error('a check that ended is left out');
			expect(evidenceDigest(check, check.events)).toBe(end.digest);
		}
	});

	it('everything.json holds what is in the database', async () => {
		const all = JSON.parse(await exported('everything.json')) as Everything;
		const count = async (table: 'person' | 'identity' | 'record_entry' | 'audit') => (await db.selectFrom(table).select('organisation_id').where('organisation_id', '=', organisation).execute()).length;
		expect([all.people.length, all.identities.length, all.entries.length, all.audit.length]).toEqual([await count('person'), await count('identity'), await count('record_entry'), await count('audit')]);
		expect(all.people.find(({ person_id }) => person_id === dario.id)?.crews).toMatchObject([{ id: crew, as: 'learner' }]);
		expect(all).toMatchObject({ format: 'underfoot-records', version: 1, organisation: { id: organisation, name: 'Harrow Bridges' } });
	});

	it('all that is kept of one person, and nothing of others', async () => {
		const text = await textOf(await exportPerson(db, employer, dario.id, 'json', NOW));
		const all = JSON.parse(text) as Readonly<Record<string, readonly unknown[]>>;
		const events = await db.selectFrom('course_event').select('id').where('person_id', '=', dario.id).execute();
		const attempts = await db.selectFrom('attempt').select('id').where('guest_id', '=', dario.answerer).execute();
		expect(all['course_events']).toHaveLength(events.length);
		expect(events.length).toBeGreaterThan(0);
		expect(all['attempts']).toHaveLength(attempts.length);
		expect(all['sessions']).toEqual([{ created_at: NOW.toISOString(), seen_at: NOW.toISOString(), expires_at: expect.any(String) as string }]);
		expect(all['checks']).toHaveLength(1);
		expect(all).toMatchObject({ format: 'underfoot-person', account: { id: dario.id, name: 'Dario Penn', personal_number: 'D-1' }, identities: [{ name: 'Dario Penn' }], crews: [{ id: crew }] });
		for (const others of ['Noor', 'Ines', formula]) expect(text).not.toContain(others);
		const noted = (await rows('log.csv')).filter((row) => row['kind'] === 'person-data-exported' && row['subject_id'] === dario.id);
		expect(noted.map((row) => row['detail'])).toContain('{"form":"json"}');
	});

	it('one person’s completions and answers are tables too', async () => {
		const completions = rowsOf(await textOf(await exportPerson(db, employer, dario.id, 'completions', NOW)));
		expect(completions).toEqual((await rows('completions.csv')).filter((row) => row['person_id'] === dario.id));
		const answers = rowsOf(await textOf(await exportPerson(db, employer, dario.id, 'answers', NOW)));
		expect(answers).toEqual((await rows('answers.csv')).filter((row) => row['person_id'] === dario.id));
	});

	it('people who come and go meanwhile do not break a file that is on its way', async () => {
		const file = await exportRecords(db, employer, 'people.csv', given, NOW);
		const first = await file?.parts.next();
		expect(first?.done).toBe(false);
		await learner('C-8', 'Late Comer');
		await file?.parts.return();
		expect((await file?.parts.next())?.done).toBe(true);
		// The connection that it read from is free again.
		expect((await rows('people.csv')).some((row) => row['name'] === 'Late Comer')).toBe(true);
	});
});
