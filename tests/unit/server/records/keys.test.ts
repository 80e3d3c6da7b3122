import { mkdtempSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CompactSign, calculateJwkThumbprint, compactVerify, exportJWK, importJWK } from 'jose';
import { sql } from 'kysely';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openDatabase, publicKeys, renewSigningKey, signingKey, type Database } from '#lib/server/index.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';

const NOW = new Date('2026-11-30T12:00:00.000Z');
const LATER = new Date('2026-12-01T12:00:00.000Z');

describe.each(DATABASES)('Signing keys on %s', (_, start) => {
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

	it('makes a key at first need, called by its thumbprint, and keeps it', async () => {
		const key = await signingKey(db, 'checkpoint', NOW);
		const again = await signingKey(db, 'checkpoint', LATER);
		const [published, ...others] = await publicKeys(db, 'checkpoint');
		expect(others).toEqual([]);
		expect(again.kid).toBe(key.kid);
		// RFC 7638: the thumbprint is that of the required members alone.
		const { kty, crv, x } = published?.jwk ?? {};
		expect(await calculateJwkThumbprint({ kty: kty ?? '', crv: crv ?? '', x: x ?? '' })).toBe(key.kid);
		expect(published).toMatchObject({ kid: key.kid, alg: 'EdDSA', since: NOW.toISOString(), retiredAt: null, jwk: { kty: 'OKP', crv: 'Ed25519' } });
	});

	it('signs what its public half verifies, with both algorithms', async () => {
		for (const use of ['checkpoint', 'credential'] as const) {
			const { kid, alg, key } = await signingKey(db, use, NOW);
			const token = await new CompactSign(new TextEncoder().encode('a record')).setProtectedHeader({ alg, kid }).sign(key);
			const published = (await publicKeys(db, use)).find((one) => one.kid === kid);
			const { payload } = await compactVerify(token, await importJWK(published?.jwk ?? {}, alg));
			expect(new TextDecoder().decode(payload)).toBe('a record');
		}
	});

	it('makes a credential key of at least 2048 bits', async () => {
		await signingKey(db, 'credential', NOW);
		const [published] = await publicKeys(db, 'credential');
		// Open Badges 3.0, section 8.2.3; from memory.
		expect(Buffer.from(published?.jwk.n ?? '', 'base64url').length * 8).toBeGreaterThanOrEqual(2048);
	});

	it('publishes no private member', async () => {
		await signingKey(db, 'credential', NOW);
		const rows = await db.selectFrom('signing_key').selectAll().execute();
		// RFC 7518, section 6.3.2, and RFC 8037, section 2: what is private.
		for (const member of ['d', 'p', 'q', 'dp', 'dq', 'qi']) for (const { jwk } of rows) expect(JSON.parse(jwk)).not.toHaveProperty(member);
	});

	it('retires the old key when a new one is made, and keeps its public half', async () => {
		const old = await signingKey(db, 'checkpoint', NOW);
		const made = await renewSigningKey(db, 'checkpoint', LATER);
		expect(made.kid).not.toBe(old.kid);
		expect((await signingKey(db, 'checkpoint', LATER)).kid).toBe(made.kid);
		const kept = await publicKeys(db, 'checkpoint');
		expect(kept.map(({ kid, retiredAt }) => [kid, retiredAt])).toEqual([
			[old.kid, LATER.toISOString()],
			[made.kid, null]
		]);
	});
});

describe('The file of signing keys', () => {
	let folder: string;
	let file: string;
	let db: Database;
	beforeEach(async () => {
		folder = mkdtempSync(join(tmpdir(), 'underfoot-keys-'));
		file = join(folder, 'underfoot.sqlite.signing.json');
		db = await openDatabase(`file:${join(folder, 'underfoot.sqlite')}`);
	});
	afterEach(async () => {
		await db.destroy();
		rmSync(folder, { recursive: true });
	});

	it('lies beside the database, for its owner alone, and leaves no draft behind', async () => {
		await signingKey(db, 'checkpoint', NOW);
		await renewSigningKey(db, 'checkpoint', LATER);
		expect(statSync(file).mode & 0o777).toBe(0o600);
		expect(readdirSync(folder).filter((name) => name.includes('.signing.json'))).toEqual(['underfoot.sqlite.signing.json']);
	});

	it('keeps the private half of keys in use alone', async () => {
		const old = await signingKey(db, 'checkpoint', NOW);
		const { d } = await exportJWK(old.key).catch(() => ({ d: undefined }));
		expect(d).toBeUndefined();
		const before = JSON.parse(readFileSync(file, 'utf8')) as { keys: { use: string; jwk: { d: string } }[] };
		await renewSigningKey(db, 'checkpoint', LATER);
		const after = readFileSync(file, 'utf8');
		const [lost, ...others] = before.keys.filter((one) => one.use === 'checkpoint');
		expect(others).toEqual([]);
		expect(after).not.toContain(lost?.jwk.d ?? 'a key');
		// The other key stays.
		expect(after).toContain(before.keys.find((one) => one.use === 'credential')?.jwk.d ?? 'no key');
	});

	it('is one file when two processes start together', async () => {
		const other = await openDatabase(`file:${join(folder, 'underfoot.sqlite')}`);
		const keys = await Promise.all([signingKey(db, 'checkpoint', NOW), signingKey(other, 'checkpoint', NOW), signingKey(other, 'credential', NOW)]);
		await other.destroy();
		expect(keys[0].kid).toBe(keys[1].kid);
		expect((await publicKeys(db, 'checkpoint')).length).toBe(1);
	});

	it('that is lost is made anew, and the key before is noted as retired', async () => {
		const lost = await signingKey(db, 'credential', NOW);
		rmSync(file);
		const made = await signingKey(db, 'credential', LATER);
		expect((await publicKeys(db, 'credential')).map(({ kid, retiredAt }) => [kid, retiredAt])).toEqual([
			[lost.kid, LATER.toISOString()],
			[made.kid, null]
		]);
	});

	it('never leaves two keys of one use as in use, be it for a moment: one that cannot be retired is not replaced', async () => {
		const old = await signingKey(db, 'checkpoint', NOW);
		await sql`create trigger stuck before update on signing_key begin select raise(abort, 'stuck'); end`.execute(db);
		await expect(renewSigningKey(db, 'checkpoint', LATER)).rejects.toThrow('stuck');
		expect((await publicKeys(db, 'checkpoint')).map(({ kid, retiredAt }) => [kid, retiredAt])).toEqual([[old.kid, null]]);
		await sql`drop trigger stuck`.execute(db);
		const made = await signingKey(db, 'checkpoint', LATER);
		expect((await publicKeys(db, 'checkpoint')).map(({ kid, retiredAt }) => [kid, retiredAt])).toEqual([[old.kid, LATER.toISOString()], [made.kid, null]]);
	});

	it('from an old backup signs with no key that was retired', async () => {
		const old = await signingKey(db, 'checkpoint', NOW);
		const backup = readFileSync(file);
		await renewSigningKey(db, 'checkpoint', NOW);
		writeFileSync(file, backup);
		const made = await signingKey(db, 'checkpoint', LATER);
		expect(made.kid).not.toBe(old.kid);
		expect((await publicKeys(db, 'checkpoint')).filter((one) => one.retiredAt === null).map((one) => one.kid)).toEqual([made.kid]);
	});

	it('that holds something else is refused, and left as it is', async () => {
		writeFileSync(file, '{"version":1}');
		await expect(signingKey(db, 'checkpoint', NOW)).rejects.toThrow(/put it back from a backup/);
		expect(readFileSync(file, 'utf8')).toBe('{"version":1}');
	});
});
