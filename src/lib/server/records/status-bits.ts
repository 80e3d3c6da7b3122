/** The bits of a list of withdrawn credentials. @source W3C Bitstring Status List, "Bitstring Generation Algorithm" and "Bitstring Encoding" */
import { constants, gunzipSync, gzip } from 'node:zlib';
import { promisify } from 'node:util';
import type { CertificateCount } from '../db/certificates.ts';

const compress = promisify(gzip);

/** Fewest places of a list, so that one credential hides among many. @source W3C Bitstring Status List, "BitstringStatusListCredential": 16 KB */
const LEAST = 131_072;

/** @returns how many places a list has: at least twice as many as are taken, so that a free one is soon found by chance. */
export function roomFor({ count, last }: CertificateCount): number {
	let places = LEAST;
	while (places < 2 * (count + 1) || places <= last) places *= 2;
	return places;
}

/** @returns a list with some bits set; place 0 is the left-most bit. */
export function bitsOf(places: number, set: Iterable<number>): Uint8Array {
	const bits = new Uint8Array(places / 8);
	for (const i of set) bits[i >> 3] = (bits[i >> 3] ?? 0) | (0x80 >> (i & 7));
	return bits;
}

/** @returns the list as it stands in a credential: gzip, base64url without padding, behind a `u` (multibase). */
export async function encodeBits(bits: Uint8Array): Promise<string> {
	return `u${(await compress(bits, { level: constants.Z_BEST_COMPRESSION })).toString('base64url')}`;
}

/** @returns the bits of an encoded list. @throws Error for what is none */
export function decodeBits(encoded: string): Uint8Array {
	if (!encoded.startsWith('u')) throw new Error('An encoded list begins with u');
	return gunzipSync(Buffer.from(encoded.slice(1), 'base64url'));
}
