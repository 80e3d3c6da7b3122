import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Entry } from '#lib/records/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import type { Person } from '#lib/server/people/who.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { certificateFacts } from '#lib/server/records/certificate-facts.ts';
import { handOutCertificate } from '#lib/server/records/certificate.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { commitNames } from '#lib/server/records/names.ts';
import { personPage } from '#lib/server/records/person-page.ts';
import { checkName, initialsOf, publicRecord, readCertificateCode } from '#lib/server/records/public-record.ts';
import { revokeRecord } from '#lib/server/records/revoking.ts';
import { roomFor } from '#lib/server/records/status-bits.ts';
import { withdrawnPlaces } from '#lib/server/records/status-list.ts';
import { completedEntry, handsOnEntry, orderEntry, priorTrainingEntry } from '../../../support/record-entries.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, aMember, anOrganisation, later } from '../people/organisation.ts';

/** The places of the shortest list. @source W3C Bitstring Status List, "BitstringStatusListCredential": 16 KB */
const LEAST = 131_072;

describe.each(DATABASES)('certificates on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;
	let count = 0;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer', 'Orla Finch');
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function append(entries: readonly Entry[]): Promise<void> {
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, entries));
	}

	/** A learner who passed on a day, valid for a year. @param signed whether the hands-on part is signed too */
	async function trained(name: string, signed = true, day = '2026-11-01'): Promise<{ readonly who: Person; readonly record: string }> {
		count += 1;
		const id = await aLearner(db, organisation, `C-${String(count)}`, [], name);
		const entry = completedEntry(id, day, { validity: { months: 12, by: 'employer', until: `2027${day.slice(4)}` } });
		await append(signed ? [entry, handsOnEntry(id, day, { signer: employer.id })] : [entry]);
		return { who: { kind: 'person', id, organisation, role: 'learner', name, answerer: '', language: null }, record: entry.id };
	}

	const madeOf = async (person: string) => (await recordOf(db, person)).entries.filter(({ entry }) => entry.kind === 'certificate-made');

	it('are made once for a record, with an unguessable code and a place by chance; the chain holds the hash of the code', async () => {
		const { who, record } = await trained('Dario Penn');
		const first = await handOutCertificate(db, employer, who.id, record, NOW);
		const again = await handOutCertificate(db, who, who.id, record, later(60));
		if (first.kind !== 'handed-out' || again.kind !== 'handed-out') throw new Error('not handed out');
		// 128 bits, base64url (RFC 4648, section 5): 22 characters.
		expect(first.code).toMatch(/^[\w-]{22}$/);
		expect(Buffer.from(first.code, 'base64url')).toHaveLength(16);
		expect(again.code).toBe(first.code);
		expect(first.statusIndex).toBeGreaterThanOrEqual(0);
		expect(first.statusIndex).toBeLessThan(LEAST);
		const made = await madeOf(who.id);
		expect(made.map(({ entry }) => entry)).toEqual([
			{ kind: 'certificate-made', at: NOW.toISOString(), by: employer.id, person: who.id, of: record, code: createHash('sha256').update(first.code).digest('hex'), statusIndex: first.statusIndex }
		]);
		// Each hand-out is noted, without the code.
		const noted = await db.selectFrom('audit').selectAll().where('kind', '=', 'certificate-handed-out').where('subject_id', '=', who.id).orderBy('at').execute();
		expect(noted.map((one) => [one.actor_id, JSON.parse(one.detail)])).toEqual([
			[employer.id, { record }],
			[who.id, { record }]
		]);
		// The employer sees on the person's page what was handed out, and who took it.
		const page = await personPage(db, employer, who.id, later(120));
		expect(page?.handedOut.map(({ kind, by }) => [kind, page.actors.get(by)])).toEqual([
			['certificate-handed-out', 'Dario Penn'],
			['certificate-handed-out', 'Orla Finch']
		]);
	});

	it('asked for at once by two are one', async () => {
		const { who, record } = await trained('Nadia Rook');
		const handed = await Promise.all([employer, who, employer].map((one) => handOutCertificate(db, one, who.id, record, NOW)));
		expect(new Set(handed.map((one) => (one.kind === 'handed-out' ? one.code : one.kind))).size).toBe(1);
		expect(await madeOf(who.id)).toHaveLength(1);
	});

	it('are for the employer of the organisation and for the learner, and for nobody else', async () => {
		const { who, record } = await trained('Wen Abara');
		const other = await trained('Priya Holm');
		const stranger = await aMember(db, await anOrganisation(db), 'employer');
		const trainer = await aMember(db, organisation, 'trainer');
		for (const one of [other.who, stranger, trainer]) expect(await handOutCertificate(db, one, who.id, record, NOW)).toEqual({ kind: 'not-found' });
		// A record of somebody else, and none at all.
		expect(await handOutCertificate(db, employer, who.id, other.record, NOW)).toEqual({ kind: 'not-found' });
		expect(await handOutCertificate(db, employer, who.id, '00000000-0000-4000-8000-000000000000', NOW)).toEqual({ kind: 'not-found' });
		expect(await madeOf(who.id)).toEqual([]);
	});

	it('of a record that was taken back are only those that were made before, and they say so', async () => {
		const [with_, without] = [await trained('Sefa Lindt'), await trained('Ilan Corvo')];
		const handed = await handOutCertificate(db, employer, with_.who.id, with_.record, NOW);
		for (const one of [with_, without]) await revokeRecord(db, employer, one.who.id, one.record, 'wrong-person', later(86_400));
		expect(await handOutCertificate(db, employer, without.who.id, without.record, later(90_000))).toEqual({ kind: 'not-found' });
		const again = await handOutCertificate(db, employer, with_.who.id, with_.record, later(90_000));
		if (handed.kind !== 'handed-out' || again.kind !== 'handed-out') throw new Error('not handed out');
		expect(await certificateFacts(db, organisation, again, later(90_000))).toMatchObject({ code: handed.code, standing: 'revoked', revokedOn: '2026-11-26' });
		expect(await withdrawnPlaces(db, organisation)).toContain(handed.statusIndex);
		expect(await publicRecord(db, handed.code, later(90_000))).toMatchObject({ standing: 'revoked', revokedOn: '2026-11-26' });
	});

	it('show a stranger how the record stands on the day, and the least of the person', async () => {
		const { who, record } = await trained('Amadou de Vale-Rook');
		const theory = await trained('Marit Oslo', false);
		const handed = await handOutCertificate(db, employer, who.id, record, NOW);
		const half = await handOutCertificate(db, employer, theory.who.id, theory.record, NOW);
		if (handed.kind !== 'handed-out' || half.kind !== 'handed-out') throw new Error('not handed out');
		// The whole of it: nothing else leaves the server.
		expect(await publicRecord(db, handed.code, NOW)).toEqual({
			standing: 'valid',
			course: 'lanyard-orientation',
			training: null,
			scope: 'lanyard-with-energy-absorber',
			day: '2026-11-01',
			until: '2027-11-01',
			revokedOn: null,
			employer: 'Harrow Bridges',
			initials: 'A. D. V. R.'
		});
		expect(await publicRecord(db, half.code, NOW)).toMatchObject({ standing: 'theory-only' });
		// Through the whole of the last day, and no longer.
		expect(await publicRecord(db, handed.code, new Date('2027-11-01T23:59:59Z'))).toMatchObject({ standing: 'valid' });
		expect(await publicRecord(db, handed.code, new Date('2027-11-02T00:00:00Z'))).toMatchObject({ standing: 'expired' });
		// An order of retraining for what somebody was seen doing ends it at once.
		await append([orderEntry(who.id, '2026-11-20', '2026-12-20', 'seen-inadequate')]);
		expect(await publicRecord(db, handed.code, NOW)).toMatchObject({ standing: 'expired', until: '2026-11-19' });
		expect(await publicRecord(db, 'A'.repeat(22), NOW)).toBeNull();
	});

	it('of prior training say what it was, and are whole without a hands-on part', async () => {
		const id = await aLearner(db, organisation, 'P-1', [], 'Jo Marchetti');
		const entry = priorTrainingEntry(id, '2026-11-10');
		await append([entry]);
		const handed = await handOutCertificate(db, employer, id, entry.record.id, NOW);
		if (handed.kind !== 'handed-out') throw new Error('not handed out');
		expect(await publicRecord(db, handed.code, NOW)).toMatchObject({ standing: 'valid', course: null, training: entry.record.training, day: '2026-11-10', until: null });
	});

	it('compare a name whatever its order and accents, also an earlier one, and only a few from one address', async () => {
		const { who, record } = await trained('Lucía Campos Rey');
		await append(await commitNames(db, organisation, [{ id: who.id, role: 'learner', name: 'Lucía Herrero', number: 'C-9' }], null, NOW));
		const handed = await handOutCertificate(db, employer, who.id, record, NOW);
		if (handed.kind !== 'handed-out') throw new Error('not handed out');
		const ask = async (name: string, address = '192.0.2.1') => (await checkName(db, handed.code, name, address, NOW)).kind;
		expect(await ask('herrero LUCIA')).toBe('fits');
		expect(await ask('Rey, Lucia Campos')).toBe('fits');
		expect(await ask('Lucía')).toBe('differs');
		for (let i = 0; i < 4; i += 1) expect(await ask(`Name ${String(i)}`, '192.0.2.2')).toBe('differs');
		expect(await ask('Name 5', '192.0.2.2')).toBe('differs');
		expect(await ask('Lucía Herrero', '192.0.2.2')).toBe('wait');
		// Others may go on, and so may the same one on another certificate.
		expect(await ask('Lucía Herrero', '192.0.2.3')).toBe('fits');
		expect((await checkName(db, 'B'.repeat(22), 'Lucía Herrero', '192.0.2.2', NOW)).kind).toBe('unknown');
	});

	it('say that a name is erased, and have nothing left to compare', async () => {
		const { who, record } = await trained('Tomas Eik');
		const handed = await handOutCertificate(db, employer, who.id, record, NOW);
		if (handed.kind !== 'handed-out') throw new Error('not handed out');
		await db.deleteFrom('identity').where('person_id', '=', who.id).execute();
		expect(await publicRecord(db, handed.code, NOW)).toMatchObject({ standing: 'valid', initials: null });
		expect(await checkName(db, handed.code, 'Tomas Eik', '192.0.2.4', NOW)).toMatchObject({ kind: 'differs' });
		expect(await certificateFacts(db, organisation, handed, NOW)).toMatchObject({ person: null, before: null });
	});
});

describe('a typed code', () => {
	const CODE = 'AnUmI3AKgO6VyGgTFxH-Jg';
	it('is read with the spaces of its groups, or out of the whole address', () => {
		expect(readCertificateCode(' AnUm I3AK gO6V yGgT FxH- Jg\n')).toBe(CODE);
		expect(readCertificateCode(`https://training.example.org/v/${CODE}`)).toBe(CODE);
		for (const none of ['', 'AnUm', `${CODE}x`, `${CODE}/..`, 'https://training.example.org/x/AnUmI3AKgO6VyGgTFxH-Jg']) expect(readCertificateCode(none)).toBeNull();
	});
});

describe('initials', () => {
	it.each([
		['Wen Abara', 'W. A.'],
		['Ana-Lucía de la Torre', 'A. L. D. L. T.'],
		['نادية روك', 'ن. ر.'],
		['E\u0301va 2', 'É. '.normalize('NFD').trim()],
		['李', '李.']
	])('of %s are %s', (name, initials) => {
		expect(initialsOf(name)).toBe(initials);
	});
});

describe('the list of withdrawn credentials', () => {
	it('has 16 KB at least, and grows so that half of it is free', () => {
		expect(roomFor({ count: 0, last: -1 })).toBe(LEAST);
		expect(roomFor({ count: LEAST / 2 - 1, last: LEAST - 1 })).toBe(LEAST);
		expect(roomFor({ count: LEAST / 2, last: 5 })).toBe(2 * LEAST);
		expect(roomFor({ count: 3, last: LEAST })).toBe(2 * LEAST);
	});
});
