/** Records of training for tests, as they stand in the chain. */
import { randomUUID } from 'node:crypto';
import { canonicalJson, HANDS_ON_CHECKS, type EntryOf } from '#lib/records/index.ts';
import type { Database } from '#lib/server/db/open.ts';
import { setSecret } from '#lib/server/db/people.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import { signHandsOn, toSign, type HandsOnEntry } from '#lib/server/people/sign-off.ts';
import type { Person } from '#lib/server/people/who.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { sha256 } from '#lib/server/records/chain.ts';
import type { TestCrew } from '../people/organisation.ts';

/** What this signer types to sign. */
export const PASSWORD = 'three cranes by the river';

/** Lets a trainer sign. */
export async function withPassword(db: Database, trainer: Person): Promise<void> {
	await setSecret(db, trainer.id, await hashSecret('password', PASSWORD));
}

/** A passed course. @returns the id of the record */
export async function aCompletion(db: Database, organisation: string, person: string, day: string, supervised: EntryOf<'completed'>['supervised'] = null): Promise<string> {
	const id = randomUUID();
	const at = `${day}T09:00:00.000Z`;
	const entry: EntryOf<'completed'> = {
		kind: 'completed',
		at,
		by: null,
		person,
		id,
		employer: { id: organisation, name: 'Harrow Bridges' },
		course: { id: 'lanyard-orientation', version: 1, scope: 'lanyard-with-energy-absorber', notCovered: [], lessons: [] },
		rules: 'us-construction',
		practice: 'usual',
		language: 'en',
		languageState: 'draft',
		startedAt: at,
		endedAt: at,
		zone: 'UTC',
		day,
		check: randomUUID(),
		digest: sha256(id),
		tries: 1,
		asked: 24,
		right: 22,
		unsafe: 0,
		passRule: { id: 'staged', version: 1, provisional: true, rates: [] },
		supervised,
		basis: 'own-training',
		validity: { months: null, by: 'nothing-fixed', until: null }
	};
	await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [entry]));
	return id;
}

/** A hands-on part, signed as the program signs. */
export async function aSignOff(db: Database, trainer: Person, crew: TestCrew, person: string, day: string, now: Date): Promise<void> {
	const entry: HandsOnEntry = { id: randomUUID(), checks: HANDS_ON_CHECKS, place: 'Training yard, bay 2', day, capacity: 'competent-person' };
	const built = await toSign(db, trainer, crew.id, person, entry, 'en', now);
	if (built.kind !== 'to-sign') throw new Error(`Nothing to sign: ${built.kind}`);
	const signed = await signHandsOn(db, trainer, crew.id, person, { entry, shown: built.shown, password: PASSWORD, language: 'en' }, '192.0.2.7', now);
	if (signed.kind !== 'signed') throw new Error(`Not signed: ${signed.kind}`);
}

/** Training from elsewhere that somebody of the staff judged adequate. @returns the id of the record */
export async function priorTraining(db: Database, signer: Person, named: string, person: string, judgedDay: string): Promise<string> {
	const { organisation } = signer;
	const id = randomUUID();
	const at = `${judgedDay}T09:00:00.000Z`;
	const record = { kind: 'prior-training', version: 1, id, organisation, person, scope: 'lanyard-with-energy-absorber', training: 'Two days at a training yard', trainedDay: null, judgedDay, document: null, validUntil: null } as const;
	const signature = { record: sha256(canonicalJson(record)), signer: signer.id, named, capacity: 'employer', meaning: 'I judge this training adequate.', language: 'en', at } as const;
	await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [{ kind: 'prior-training', at, by: signer.id, person, record, signature }]));
	return id;
}

/** @returns every table and column in which a text stands, as `table.column`, capitals or not. */
export async function whereItStands(db: Database, text: string): Promise<readonly string[]> {
	const found: string[] = [];
	for (const table of await db.introspection.getTables()) {
		if (table.isView) continue;
		const rows: readonly Readonly<Record<string, unknown>>[] = await db.selectFrom(table.name as 'person').selectAll().execute();
		for (const { name } of table.columns) {
			const wanted = text.toLowerCase();
			if (rows.some((row) => String(row[name]).toLowerCase().includes(wanted))) found.push(`${table.name}.${name}`);
		}
	}
	return found.toSorted();
}

/** @returns whether the entries of a chain hang on each other from the first to the head. */
export async function chainHolds(db: Database, organisation: string): Promise<boolean> {
	const rows = await db.selectFrom('record_entry').selectAll().where('organisation_id', '=', organisation).orderBy('seq').execute();
	const head = await db.selectFrom('record_head').selectAll().where('organisation_id', '=', organisation).executeTakeFirst();
	let prev = '0'.repeat(64);
	for (const [i, row] of rows.entries()) {
		// Written out here, so that the program does not check itself.
		if (row.seq !== i + 1 || row.prev !== prev || row.hash !== sha256(`{"payload":${row.payload},"prev":"${prev}","seq":${String(row.seq)}}`)) return false;
		prev = row.hash;
	}
	return head === undefined ? rows.length === 0 : head.seq === rows.length && head.hash === prev;
}

/** Makes the next entry of an organisation fail, as a fault of the database would: its place is taken. */
export async function breakChain(db: Database, organisation: string): Promise<void> {
	await db.updateTable('record_head').set((eb) => ({ seq: eb('seq', '-', 1) })).where('organisation_id', '=', organisation).execute();
}
