/**
 * The open credential against the published formats, read by others' means: the library jsonwebtoken and Node's own
 * cryptography, neither of which signs it here.
 * Sources: Open Badges 3.0 (github 1EdTech/openbadges-specification: common_credentials.lines, integrity.md,
 * verification.md); W3C Verifiable Credentials Data Model 2.0; W3C Bitstring Status List; RFC 7515, 7517, 7519.
 */
import { createHash, createPublicKey, generateKeyPairSync, sign, verify, type KeyObject } from 'node:crypto';
import { gunzipSync } from 'node:zlib';
import jsonwebtoken from 'jsonwebtoken';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EntryOf } from '#lib/records/index.ts';
import type { Database } from '#lib/server/db/open.ts';
import type { Person } from '#lib/server/people/who.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { checkCredential } from '#lib/server/records/check-credential.ts';
import { handOutCredential } from '#lib/server/records/credential.ts';
import { renewSigningKey } from '#lib/server/records/keys.ts';
import { lastSecondOf } from '#lib/server/records/last-second.ts';
import { credentialKeySet } from '#lib/server/records/public-keys.ts';
import { reinstateRecord, revokeRecord } from '#lib/server/records/revoking.ts';
import { bitsOf, decodeBits, encodeBits } from '#lib/server/records/status-bits.ts';
import { statusListToken } from '#lib/server/records/status-list.ts';
import { messages, recordMessages } from '#lib/text/index.ts';
import { credentialWords } from '../../src/routes/handing-out/credential-words.ts';
import { completedEntry, handsOnEntry, priorTrainingEntry } from '../support/record-entries.ts';
import { sqliteDatabase } from '../support/sqlite-file.ts';
import { aLearner, aMember, anOrganisation } from '../unit/server/people/organisation.ts';

const ORIGIN = 'https://training.example.org';
const NOW = new Date('2026-11-25T09:00:00.000Z');
const VALIDITY = { months: 12, by: 'employer', until: '2027-11-01' } as const;

type Json = Readonly<Record<string, unknown>>;

let db: Database;
let end: () => Promise<void>;
let organisation: string;
let employer: Person;

beforeAll(async () => {
	({ db, end } = await sqliteDatabase());
	organisation = await anOrganisation(db);
	employer = await aMember(db, organisation, 'employer', 'Orla Finch');
});

afterAll(() => end());

async function trained(name: string, more: Partial<EntryOf<'completed'>> = {}, signed = true): Promise<{ readonly person: string; readonly record: string }> {
	const person = await aLearner(db, organisation, `N-${name}`, [], name);
	const entry = completedEntry(person, '2026-11-01', { validity: VALIDITY, ...more });
	await db.transaction().execute((transaction) => appendEntries(transaction, organisation, signed ? [entry, handsOnEntry(person, '2026-11-01', { signer: employer.id })] : [entry]));
	return { person, record: entry.id };
}

async function handOut(of: { readonly person: string; readonly record: string }): Promise<string | null> {
	const [m, record] = [await messages('en'), await recordMessages('en')];
	return handOutCredential(db, employer, of, ORIGIN, (told) => credentialWords(m, record, told), NOW);
}

async function tokenOf(of: { readonly person: string; readonly record: string }): Promise<string> {
	const token = await handOut(of);
	if (token === null) throw new Error('No credential');
	return token;
}

const part = (token: string, i: 0 | 1): Json => JSON.parse(Buffer.from(token.split('.')[i] ?? '', 'base64url').toString('utf8')) as Json;
const packed = (value: unknown): string => Buffer.from(JSON.stringify(value)).toString('base64url');

/** The key that the published set names for a token. */
async function publishedKey(token: string): Promise<KeyObject> {
	const { keys } = await credentialKeySet(db, ORIGIN);
	const jwk = keys.find(({ kid }) => kid === part(token, 0)['kid']);
	if (jwk === undefined) throw new Error('The set does not name the key');
	return createPublicKey({ key: { ...jwk }, format: 'jwk' });
}

/** Signs something else by hand. */
function signed(header: Json, payload: Json, key: KeyObject): string {
	const text = `${packed(header)}.${packed(payload)}`;
	return `${text}.${sign('RSA-SHA256', Buffer.from(text), key).toString('base64url')}`;
}

describe('a credential', () => {
	it('is verified by a general-purpose library and by hand, against the published keys', async () => {
		const token = await tokenOf(await trained('Dario Penn'));
		const key = await publishedKey(token);
		const claims = jsonwebtoken.verify(token, key, { algorithms: ['RS256'], issuer: `${ORIGIN}/issuers/${organisation}`, clockTimestamp: NOW.getTime() / 1000 });
		expect(claims).toEqual(part(token, 1));
		// RFC 7515, section 5.2; RFC 7518, section 3.3: RSASSA-PKCS1-v1_5 with SHA-256 over header and payload as they stand.
		const [header = '', payload = '', signature = ''] = token.split('.');
		expect(verify('RSA-SHA256', Buffer.from(`${header}.${payload}`), key, Buffer.from(signature, 'base64url'))).toBe(true);
		expect(verify('RSA-SHA256', Buffer.from(`${header}.${payload}x`), key, Buffer.from(signature, 'base64url'))).toBe(false);
	});

	it('has the headers that the format allows, and no other', async () => {
		// Open Badges 3.0, "Create the JOSE Header": alg, kid (a URI that leads to the key), typ JWT; further ones are not allowed.
		const header = part(await tokenOf(await trained('Nadia Rook')), 0);
		expect(Object.keys(header).toSorted()).toEqual(['alg', 'kid', 'typ']);
		expect(header).toMatchObject({ alg: 'RS256', typ: 'JWT' });
		expect(String(header['kid'])).toMatch(/^https:\/\/training\.example\.org\/\.well-known\/jwks\.json#[\w-]{43}$/);
	});

	it('repeats in its claims what stands in its members', async () => {
		const payload = part(await tokenOf(await trained('Wen Abara')), 1);
		// Open Badges 3.0, "JWT Payload Format": iss, jti, nbf, sub, exp; no vc claim.
		const { issuer, credentialSubject, id, validFrom, validUntil } = payload as { issuer: { id: string }; credentialSubject: { id: string }; id: string; validFrom: string; validUntil: string };
		expect([payload['iss'], payload['jti'], payload['sub'], payload['nbf'], payload['exp']]).toEqual([issuer.id, id, credentialSubject.id, Date.parse(validFrom) / 1000, Date.parse(validUntil) / 1000]);
		expect(payload).not.toHaveProperty('vc');
		expect(payload).not.toHaveProperty('proof');
	});

	it('has the members that the formats ask', async () => {
		const { person, record } = await trained('Jo Marchetti', { asked: 24, right: 23, unsafe: 0 });
		const payload = part(await tokenOf({ person, record }), 1);
		// Open Badges 3.0, classes AchievementCredential, Profile, AchievementSubject, Achievement, Criteria, Result, ResultDescription, Evidence; W3C Bitstring Status List, BitstringStatusListEntry.
		expect(payload).toMatchObject({
			'@context': ['https://www.w3.org/ns/credentials/v2', 'https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json'],
			id: `urn:uuid:${record}`,
			type: ['VerifiableCredential', 'OpenBadgeCredential'],
			issuer: { id: `${ORIGIN}/issuers/${organisation}`, type: ['Profile'], name: 'Harrow Bridges' },
			credentialSubject: {
				type: ['AchievementSubject'],
				achievement: { type: ['Achievement'], achievementType: 'CertificateOfCompletion', resultDescription: [{ type: ['ResultDescription'], resultType: 'RawScore', valueMax: '24' }] },
				result: [{ type: ['Result'], value: '23' }]
			},
			credentialStatus: { type: 'BitstringStatusListEntry', statusPurpose: 'revocation', statusListCredential: `${ORIGIN}/issuers/${organisation}/revoked` }
		});
		const { credentialSubject: subject, credentialStatus: status, evidence } = payload as {
			credentialSubject: { id: string; achievement: { id: string; name: string; description: string; criteria: { narrative: string }; resultDescription: { id: string }[] }; result: { resultDescription: string }[] };
			credentialStatus: { id: string; statusListIndex: string; statusListCredential: string };
			evidence: { type: string[]; name: string; narrative: string }[];
		};
		expect(subject.id).toMatch(/^urn:uuid:[0-9a-f-]{36}$/);
		expect(subject.id).not.toBe(`urn:uuid:${person}`);
		for (const text of [subject.achievement.name, subject.achievement.description, subject.achievement.criteria.narrative]) expect(text).not.toBe('');
		expect(URL.canParse(subject.achievement.id)).toBe(true);
		expect(subject.result[0]?.resultDescription).toBe(subject.achievement.resultDescription[0]?.id);
		expect(status.statusListIndex).toMatch(/^\d+$/);
		expect(status.id).not.toBe(status.statusListCredential);
		expect(evidence.map(({ type }) => type)).toEqual([['Evidence'], ['Evidence'], ['Evidence']]);
	});

	it('holds the name as a salted hash that others can compute, and neither name nor number in clear', async () => {
		const token = await tokenOf(await trained('Lucía Campos Rey'));
		const { credentialSubject } = part(token, 1) as { credentialSubject: { identifier: { type: string; hashed: boolean; identityHash: string; salt: string }[] } };
		const [one] = credentialSubject.identifier;
		// Open Badges 3.0, IdentityHash: "sha256$" and the hash over the identity with the salt behind it.
		expect(one).toMatchObject({ type: 'IdentityObject', hashed: true, identityHash: `sha256$${createHash('sha256').update(`Lucía Campos Rey${one?.salt ?? ''}`).digest('hex')}` });
		const text = Buffer.from(token.split('.')[1] ?? '', 'base64url').toString('utf8');
		for (const hidden of ['Lucía', 'Campos', 'N-Lucía', 'Orla', 'birth']) expect(text).not.toContain(hidden);
	});

	it('of theory only says so, and the whole one that comes later is another, from the signature on', async () => {
		const person = await aLearner(db, organisation, 'N-half', [], 'Priya Holm');
		const entry = completedEntry(person, '2026-11-01', { validity: VALIDITY });
		const append = (one: Parameters<typeof appendEntries>[2]) => db.transaction().execute((transaction) => appendEntries(transaction, organisation, one));
		await append([entry]);
		const half = part(await tokenOf({ person, record: entry.id }), 1) as { name: string; validFrom: string; id: string };
		await append([handsOnEntry(person, '2026-11-09', { signer: employer.id })]);
		const whole = part(await tokenOf({ person, record: entry.id }), 1) as { name: string; validFrom: string; id: string };
		expect(half.name).toContain('Record of theory training');
		expect(whole.name).toContain('Certificate of training');
		// Open Badges 3.0, AchievementCredential, awardedDate: of one id, the one with the latest validFrom is the newest.
		expect([half.id, half.validFrom, whole.validFrom]).toEqual([whole.id, '2026-11-01T10:00:00Z', '2026-11-09T11:00:00Z']);
	});

	it('is given for what was passed here alone, and as long as it counts', async () => {
		const person = await aLearner(db, organisation, 'N-prior', [], 'Marit Oslo');
		const prior = priorTrainingEntry(person, '2026-11-10');
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [prior]));
		expect(await handOut({ person, record: prior.record.id })).toBeNull();
		const gone = await trained('Sefa Lindt');
		await tokenOf(gone);
		await revokeRecord(db, employer, gone.person, gone.record, 'other', NOW);
		expect(await handOut(gone)).toBeNull();
	});
});

describe('each failure has a verdict of its own', () => {
	const verdict = async (token: string, at = NOW) => (await checkCredential(db, token, at)).kind;

	it('holds, not yet, expired: by its first and last second', async () => {
		const token = await tokenOf(await trained('Ilan Corvo'));
		expect(await verdict(token)).toBe('holds');
		expect(await verdict(`  ${token}\n`)).toBe('holds');
		expect(await verdict(token, new Date('2026-11-01T10:59:59Z'))).toBe('not-yet-valid');
		expect(await verdict(token, new Date('2026-11-01T11:00:00Z'))).toBe('holds');
		expect(await verdict(token, new Date('2027-11-01T23:59:59Z'))).toBe('holds');
		expect(await verdict(token, new Date('2027-11-02T00:00:00Z'))).toBe('expired');
	});

	it('changed: any byte of payload or signature, whatever it says now', async () => {
		const token = await tokenOf(await trained('Sefa Vale'));
		const [header = '', payload = '', signature = ''] = token.split('.');
		const flipped = (text: string, at: number): string => text.slice(0, at) + (text[at] === 'A' ? 'B' : 'A') + text.slice(at + 1);
		const longer = packed({ ...part(token, 1), validUntil: '2037-11-01T23:59:59Z', exp: Date.parse('2037-11-01T23:59:59Z') / 1000 });
		const changed = [...[4, 90, 700, payload.length - 2].map((at) => `${header}.${flipped(payload, at)}.${signature}`), `${header}.${longer}.${signature}`, ...[3, 100, 250].map((at) => `${header}.${payload}.${flipped(signature, at)}`)];
		for (const one of changed) expect(await verdict(one)).toBe('changed');
		// Deep in the payload, so that it is still read as JSON: one letter of the employer's name.
		const renamed = packed({ ...part(token, 1), name: 'Certificate of everything' });
		expect(await verdict(`${header}.${renamed}.${signature}`)).toBe('changed');
	});

	it('wrong key: it says that it is ours, and is signed by another, or by none', async () => {
		const token = await tokenOf(await trained('Amadou Vale'));
		const { privateKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
		const [header, payload] = [part(token, 0), part(token, 1)];
		expect(await verdict(signed({ ...header, kid: `${ORIGIN}/.well-known/jwks.json#${'A'.repeat(43)}` }, payload, privateKey))).toBe('wrong-key');
		// Another key under the name of ours.
		expect(await verdict(signed(header, payload, privateKey))).toBe('changed');
		// RFC 8725, sections 2.1 and 3.1: an algorithm that the token names for itself is not taken.
		expect(await verdict(`${packed({ ...header, alg: 'none' })}.${packed(payload)}.AAAA`)).not.toBe('holds');
		expect(await verdict(`${packed({ ...header, alg: 'HS256' })}.${packed(payload)}.AAAA`)).toBe('wrong-key');
	});

	it('not one of ours, and not readable', async () => {
		const token = await tokenOf(await trained('Tomas Eik'));
		const { privateKey } = generateKeyPairSync('rsa', { modulusLength: 2048 });
		const elsewhere = 'https://elsewhere.example.org/issuers/00000000-0000-4000-8000-000000000000';
		const header = { ...part(token, 0), kid: 'https://elsewhere.example.org/keys#1' };
		for (const iss of [elsewhere, 'https://elsewhere.example.org/7']) expect(await verdict(signed(header, { ...part(token, 1), iss }, privateKey))).toBe('not-ours');
		for (const none of ['', 'a.b.c', 'a.b', token.slice(0, 40), `${token}.${token}`, 'x'.repeat(30_000)]) expect(await verdict(none)).toBe('not-readable');
		// RFC 7515, section 4.1.4: a key's name is a text.
		for (const kid of [7, null, ['#'], { '#': 1 }, true]) expect(await verdict(signed({ ...part(token, 0), kid }, part(token, 1), privateKey))).toBe('not-readable');
		// Signed by us, and no credential of a training.
		expect(await verdict((await statusListToken(db, organisation, ORIGIN, NOW)) ?? '')).toBe('not-readable');
	});

	it('revoked, and good again when it is reinstated', async () => {
		const of = await trained('Helga Storm');
		const token = await tokenOf(of);
		await revokeRecord(db, employer, of.person, of.record, 'not-done-as-recorded', NOW);
		expect(await verdict(token)).toBe('revoked');
		await reinstateRecord(db, employer, of.person, of.record, NOW);
		expect(await verdict(token)).toBe('holds');
	});

	it('revoked too, where the sign-off that it was handed out with is taken back', async () => {
		const person = await aLearner(db, organisation, 'N-signed', [], 'Rosa Lindt');
		const [entry, signOff] = [completedEntry(person, '2026-11-01', { validity: VALIDITY }), handsOnEntry(person, '2026-11-01', { signer: employer.id })];
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [entry, signOff]));
		const token = await tokenOf({ person, record: entry.id });
		await revokeRecord(db, employer, person, signOff.record.id, 'wrong-person', NOW);
		expect(await verdict(token)).toBe('revoked');
	});

	it('an old one still holds after the key was renewed, and new ones are signed by the new key', async () => {
		const of = await trained('Bo Eklund');
		const old = await tokenOf(of);
		await renewSigningKey(db, 'credential', NOW);
		const young = await tokenOf(of);
		expect(part(young, 0)['kid']).not.toBe(part(old, 0)['kid']);
		for (const token of [old, young]) {
			expect(await verdict(token)).toBe('holds');
			expect(jsonwebtoken.verify(token, await publishedKey(token), { algorithms: ['RS256'], clockTimestamp: NOW.getTime() / 1000 })).toEqual(part(token, 1));
		}
	});
});

describe('the list of withdrawn credentials', () => {
	/** Published with W3C Bitstring Status List, "BitstringStatusListCredential", example: no bit is set. */
	const ALL_ZERO = 'uH4sIAAAAAAAAA-3BMQEAAADCoPVPbQwfoAAAAAAAAAAAAAAAAAAAAIC3AYbSVKsAQAAA';

	async function served(): Promise<Uint8Array> {
		const token = (await statusListToken(db, organisation, ORIGIN, NOW)) ?? '';
		const claims = jsonwebtoken.verify(token, await publishedKey(token), { algorithms: ['RS256'], clockTimestamp: NOW.getTime() / 1000 }) as Json;
		expect(part(token, 0)['typ']).toBe('vc+jwt');
		expect(claims).toMatchObject({
			'@context': ['https://www.w3.org/ns/credentials/v2'],
			id: `${ORIGIN}/issuers/${organisation}/revoked`,
			type: ['VerifiableCredential', 'BitstringStatusListCredential'],
			issuer: `${ORIGIN}/issuers/${organisation}`,
			credentialSubject: { type: 'BitstringStatusList', statusPurpose: 'revocation' }
		});
		const { encodedList } = claims['credentialSubject'] as { encodedList: string };
		// By hand: multibase u is base64url without padding, then gzip (RFC 1952).
		expect(encodedList).toMatch(/^u[\w-]+$/);
		return gunzipSync(Buffer.from(encodedList.slice(1), 'base64url'));
	}

	it('without any is the published one, once both are unpacked', async () => {
		const published = gunzipSync(Buffer.from(ALL_ZERO.slice(1), 'base64url'));
		expect(Buffer.from(decodeBits(await encodeBits(bitsOf(131_072, [])))).equals(published)).toBe(true);
		expect(published).toHaveLength(16_384);
	});

	it('has place 0 as its left-most bit', () => {
		// W3C Bitstring Status List: "the first index, with a value of zero, is located at the left-most bit".
		expect([...bitsOf(131_072, [0]).subarray(0, 2)]).toEqual([0b1000_0000, 0]);
		expect([...bitsOf(131_072, [7, 8, 17]).subarray(0, 3)]).toEqual([0b0000_0001, 0b1000_0000, 0b0100_0000]);
	});

	it('changes in exactly one bit when one record is taken back, at the place that its credential names', async () => {
		const of = await trained('Kari Dahl');
		const { credentialStatus } = part(await tokenOf(of), 1) as { credentialStatus: { statusListIndex: string } };
		const before = await served();
		await revokeRecord(db, employer, of.person, of.record, 'entered-by-mistake', NOW);
		const after = await served();
		expect(after.length * 8).toBeGreaterThanOrEqual(131_072);
		expect(after).toHaveLength(before.length);
		const flipped = [...after].flatMap((byte, i) => Array.from({ length: 8 }, (_, bit) => ({ at: 8 * i + bit, is: ((byte ^ (before[i] ?? 0)) & (0x80 >> bit)) !== 0 }))).filter(({ is }) => is);
		expect(flipped.map(({ at }) => at)).toEqual([Number(credentialStatus.statusListIndex)]);
		await reinstateRecord(db, employer, of.person, of.record, NOW);
		expect(Buffer.from(await served()).equals(Buffer.from(before))).toBe(true);
	});

	it('of nobody is none', async () => {
		expect(await statusListToken(db, '00000000-0000-4000-8000-000000000000', ORIGIN, NOW)).toBeNull();
	});
});

describe('the last second of a local day', () => {
	// IANA time zone database, from memory: offsets and changes of clocks.
	it.each([
		['UTC', '2027-11-01', '2027-11-01T23:59:59.000Z'],
		['America/New_York', '2026-11-01', '2026-11-02T04:59:59.000Z'],
		['America/New_York', '2026-03-08', '2026-03-09T03:59:59.000Z'],
		['Pacific/Kiritimati', '2026-12-31', '2026-12-31T09:59:59.000Z'],
		['Pacific/Pago_Pago', '2026-02-28', '2026-03-01T10:59:59.000Z'],
		['Asia/Kathmandu', '2028-02-29', '2028-02-29T18:14:59.000Z'],
		// Clocks were put forward at midnight, so that the next day began at one.
		['America/Santiago', '2026-09-05', '2026-09-06T03:59:59.000Z']
	])('in %s on %s is %s', (zone, day, instant) => {
		expect(lastSecondOf(zone, day).toISOString()).toBe(instant);
	});
});
