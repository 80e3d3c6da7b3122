/** The server's own signing keys: one that signs checkpoints, one that signs credentials. */
import { calculateJwkThumbprint, exportJWK, generateKeyPair, importJWK, type CryptoKey, type JWK } from 'jose';
import type { Database } from '../db/open.ts';
import { enterSigningKey, signingKeyRows } from '../db/signing-keys.ts';
import { KEY_USES, privateKeysOf, type KeyUse, type PrivateKey, type PrivateKeys } from './key-file.ts';

/** By use. Checkpoints are small and many; credentials are checked by software of others, which knows RS256 best. @source Open Badges 3.0, section 8.2.3: RS256, keys of 2048 bits or more; from memory */
export const KEY_ALGORITHMS = { checkpoint: 'EdDSA', credential: 'RS256' } as const;

/** @source Open Badges 3.0, section 8.2.3: 2048 bits or more; from memory */
const RSA_BITS = 2048;

/** The members that make a public key, in the order in which they are stored. @source RFC 7638, section 3.2; RFC 8037, section 2 */
const PUBLIC_MEMBERS = { checkpoint: ['crv', 'kty', 'x'], credential: ['e', 'kty', 'n'] } as const;

/** A key that signs. */
export interface SigningKey {
	/** RFC 7638 thumbprint. */
	readonly kid: string;
	readonly alg: 'EdDSA' | 'RS256';
	readonly key: CryptoKey;
}

/** The public half of a key. */
export interface PublicKey {
	/** RFC 7638 thumbprint. */
	readonly kid: string;
	readonly alg: 'EdDSA' | 'RS256';
	/** Public JWK with `kid`, `alg` and `use`. */
	readonly jwk: JWK;
	/** ISO 8601, UTC. */
	readonly since: string;
	/** From then on it signs nothing more; null for the one in use. */
	readonly retiredAt: string | null;
}

/** @returns the public members of a key, and nothing else. */
export function publicHalf(use: KeyUse, jwk: Readonly<Record<string, unknown>>): JWK {
	return Object.fromEntries(PUBLIC_MEMBERS[use].map((name) => [name, jwk[name]]));
}

async function makeKey(use: KeyUse): Promise<PrivateKey> {
	const { privateKey } = await (use === 'checkpoint'
		? generateKeyPair('EdDSA', { crv: 'Ed25519', extractable: true })
		: generateKeyPair('RS256', { modulusLength: RSA_BITS, extractable: true }));
	const jwk = Object.entries(await exportJWK(privateKey)).filter((member): member is [string, string] => typeof member[1] === 'string');
	return { use, jwk: Object.fromEntries(jwk) };
}

/** Imported keys by kid: reading an RSA key takes as long as signing with it. */
const imported = new Map<string, CryptoKey>();

async function usable({ use, jwk }: PrivateKey): Promise<SigningKey> {
	const alg = KEY_ALGORITHMS[use];
	const kid = await calculateJwkThumbprint(publicHalf(use, jwk));
	const known = imported.get(kid);
	if (known !== undefined) return { kid, alg, key: known };
	const key = await importJWK(jwk, alg);
	if (key instanceof Uint8Array) throw new Error('The file of signing keys holds a key that is shared, not a pair');
	imported.set(kid, key);
	return { kid, alg, key };
}

/** @returns the key of a use that is kept; where none is, both are made, or the one that was lost. */
async function keptKey(kept: PrivateKeys, use: KeyUse): Promise<PrivateKey> {
	const before = kept.read();
	// All at once: two processes that start together end up with one file, and nobody has to add to it.
	if (before === null) kept.start(await Promise.all(KEY_USES.map(makeKey)));
	return (kept.read() ?? []).find((one) => one.use === use) ?? replaced(kept, use);
}

async function replaced(kept: PrivateKeys, use: KeyUse): Promise<PrivateKey> {
	const made = await makeKey(use);
	kept.replace([...(kept.read() ?? []).filter((one) => one.use !== use), made]);
	return made;
}

async function entered(db: Database, held: PrivateKey, now: Date): Promise<SigningKey> {
	const key = await usable(held);
	const jwk = JSON.stringify(publicHalf(held.use, held.jwk));
	await enterSigningKey(db, { kid: key.kid, use: held.use, alg: key.alg, jwk, since: now.toISOString(), retired_at: null });
	return key;
}

/**
 * The key that signs now; made at first need. A key whose private half was lost is retired, and a new one made: what it
 * signed stays good.
 * @throws Error when PostgreSQL is used and UNDERFOOT_SIGNING_KEYS is not set
 */
export async function signingKey(db: Database, use: KeyUse, now: Date): Promise<SigningKey> {
	const held = await keptKey(await privateKeysOf(db), use);
	const key = await usable(held);
	const rows = await signingKeyRows(db, use);
	const own = rows.find((row) => row.kid === key.kid);
	// A file from an old backup: what is retired signs nothing more.
	if (own !== undefined && own.retired_at !== null) return renewSigningKey(db, use, now);
	const others = rows.some((row) => row.kid !== key.kid && row.retired_at === null);
	return own === undefined || others ? entered(db, held, now) : key;
}

/** Makes a new key and retires the one before: its private half is kept nowhere from now on. */
export async function renewSigningKey(db: Database, use: KeyUse, now: Date): Promise<SigningKey> {
	// Without a file, the other key is made along.
	const kept = await privateKeysOf(db);
	await keptKey(kept, use);
	return entered(db, await replaced(kept, use), now);
}

/** @returns the public halves of all keys of a use, retired ones too, the oldest first. */
export async function publicKeys(db: Database, use: KeyUse): Promise<readonly PublicKey[]> {
	const alg = KEY_ALGORITHMS[use];
	return (await signingKeyRows(db, use)).map(({ kid, jwk, since, retired_at }) => ({
		kid,
		alg,
		// Our own, written by `entered` alone.
		jwk: { ...(JSON.parse(jwk) as JWK), kid, alg, use: 'sig' },
		since,
		retiredAt: retired_at
	}));
}
