import { argon2 } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { readServerKeys } from '#lib/server/people/key.ts';
import { hashSecret, isPin, passwordFault, verifySecret, weakPin } from '#lib/server/people/secret.ts';

// The real one, whose calls can be counted.
vi.mock(import('node:crypto'), async (original) => {
	const real = await original();
	return { ...real, argon2: vi.fn(real.argon2) };
});

describe('a secret', () => {
	it('is known again, and no other is', async () => {
		for (const [kind, text, other] of [
			['pin', '482917', '482918'],
			['password', 'three cranes by the river', 'three cranes by the rivers']
		] as const) {
			const stored = await hashSecret(kind, text);
			expect(await verifySecret(stored, text)).toEqual({ ok: true, rehash: false });
			expect(await verifySecret(stored, other)).toEqual({ ok: false, rehash: false });
		}
	});

	it('is stored with its cost, a PIN with the id of the key, and never twice alike', async () => {
		expect(await hashSecret('password', 'three cranes by the river')).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[^$]{22}\$[^$]{43}$/);
		const [one, other] = [await hashSecret('pin', '482917'), await hashSecret('pin', '482917')];
		expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1,keyid=[0-9a-f]{8}\$/);
		expect(one).not.toBe(other);
	});

	it('is the same however a keyboard writes its letters', async () => {
		const stored = await hashSecret('password', 'caf\u00e9 con leche y pan');
		expect((await verifySecret(stored, 'cafe\u0301 con leche y pan')).ok).toBe(true);
	});

	it('is to be hashed anew when it was hashed at another cost', async () => {
		// PHC string of argon2id, made by the same algorithm at m=8192,t=1.
		const { argon2Sync } = await import('node:crypto');
		const salt = Buffer.alloc(16, 7);
		const tag = argon2Sync('argon2id', { message: 'three cranes by the river', nonce: salt, memory: 8192, passes: 1, parallelism: 1, tagLength: 32 });
		const plain = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64').replace(/=+$/, '');
		expect(await verifySecret(`$argon2id$v=19$m=8192,t=1,p=1$${plain(salt)}$${plain(tag)}`, 'three cranes by the river')).toEqual({ ok: true, rehash: true });
	});

	it('of nobody, or under a key that is gone, is refused and takes the same hash as any other', async () => {
		const stored = await hashSecret('pin', '482917');
		const hashed = vi.mocked(argon2);
		const costOf = async (text: string | null, pin: string) => {
			hashed.mockClear();
			expect((await verifySecret(text, pin)).ok).toBe(false);
			return hashed.mock.calls.map(([kind, { memory, passes, parallelism, tagLength }]) => ({ kind, memory, passes, parallelism, tagLength }));
		};
		const known = await costOf(stored, '111111');
		expect(known).toHaveLength(1);
		expect(await costOf(null, '482917')).toEqual(known);
		expect(await costOf(stored.replace(/keyid=\w+/, 'keyid=00000000'), '482917')).toEqual(known);
	});

	it('is hashed rightly when many come at once', async () => {
		const all = await Promise.all(Array.from({ length: 12 }, (_, i) => hashSecret('pin', String(300_000 + i * 7919))));
		const checked = await Promise.all(all.map((stored, i) => verifySecret(stored, String(300_000 + i * 7919))));
		expect(checked.every(({ ok }) => ok)).toBe(true);
	});
});

describe('a PIN', () => {
	it.each(['000000', '777777', '123456', '654321', '890123', '024680', '121212', '123123', '112233', '123321', '100001', '110110'])('%s is one that is tried first', (pin) => {
		expect(weakPin(pin)).toBe(true);
	});

	it.each(['482917', '905361', '271946'])('%s may be taken', (pin) => {
		expect(weakPin(pin)).toBe(false);
		expect(isPin(pin)).toBe(true);
	});

	it('may not be the personal number, nor hold it', () => {
		expect(weakPin('482917', 'B-482917')).toBe(true);
		expect(weakPin('482917', '2917')).toBe(true);
		expect(weakPin('482917', '55')).toBe(false);
	});

	it.each(['12345', '1234567', '48 917', '４８２９１７', ''])('is not “%s”', (text) => {
		expect(isPin(text)).toBe(false);
	});

	it('can be chosen from nearly all there are', () => {
		const all = Array.from({ length: 1_000_000 }, (_, i) => String(i).padStart(6, '0'));
		const left = all.filter((pin) => !weakPin(pin)).length;
		expect(left).toBeGreaterThan(980_000);
	});
});

describe('a password', () => {
	it.each([
		['fourteen chars', 'short'],
		['aaaaaaaaaaaaaaaaaaaa', 'weak'],
		['abababababababababab', 'weak'],
		['x'.repeat(201), 'long'],
		['three cranes by the river', null]
	] as const)('%s: %s', (text, fault) => {
		expect(passwordFault(text)).toBe(fault);
	});

	it('is not the own address', () => {
		expect(passwordFault('Helle.Brandt@example.org', ['helle.brandt@example.org'])).toBe('weak');
	});

	it('of fifteen different characters or more is taken, whatever the script', () => {
		fc.assert(
			fc.property(fc.uniqueArray(fc.constantFrom(...'abcdefghijklmnopqrstuvwxyzñáéíóúüабвгдеж'), { minLength: 15, maxLength: 36 }), (letters) => {
				expect(passwordFault(letters.join(''))).toBeNull();
			}),
			{ numRuns: 50 }
		);
	});
});

describe('the server’s key', () => {
	const folder = mkdtempSync(join(tmpdir(), 'underfoot-key-'));
	afterAll(() => rmSync(folder, { recursive: true, force: true }));

	it('is made once beside the database, for its owner alone', () => {
		const database = join(folder, 'deeper/underfoot.sqlite');
		const [first] = readServerKeys({ DATABASE_URL: `file:${database}` });
		const [again] = readServerKeys({ DATABASE_URL: `file:${database}` });
		expect(again).toEqual(first);
		expect(first.bytes).toHaveLength(32);
		expect(statSync(`${database}.key`).mode & 0o777).toBe(0o600);
		expect(readFileSync(`${database}.key`, 'utf8')).not.toContain(first.id);
	});

	it('is read from the environment, in hex and in base64; the first is used, the others are known', () => {
		const [hex, base64] = ['ab'.repeat(32), Buffer.alloc(32, 9).toString('base64')];
		expect(readServerKeys({ UNDERFOOT_KEY: hex })[0].bytes).toEqual(Buffer.alloc(32, 0xab));
		expect(readServerKeys({ UNDERFOOT_KEY: `${base64},${hex}` }).map(({ bytes }) => bytes[0])).toEqual([9, 0xab]);
	});

	it('is refused when it is short, and demanded where several servers share one database', () => {
		expect(() => readServerKeys({ UNDERFOOT_KEY: 'abcd' })).toThrow('at least 32 random bytes');
		expect(() => readServerKeys({ DATABASE_URL: 'postgres://somewhere/db' })).toThrow('UNDERFOOT_KEY must be set');
	});
});
