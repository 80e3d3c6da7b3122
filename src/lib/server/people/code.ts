import { createHash, randomBytes } from 'node:crypto';
import { insertEnrolment, type EnrolmentKind } from '../db/enrolments.ts';
import type { Database } from '../db/open.ts';

/** Letters and digits that are not mistaken for one another. @source Crockford's Base32 (from memory) */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** Characters of a one-use code: 80 bits, in groups that can be read out. */
const LENGTH = 16;
const GROUP = 4;

/** How long a one-use code holds, s: seven days. */
const HOLDS = 7 * 24 * 60 * 60;

/** Longest entry that is read as a code. */
export const LONGEST_CODE = 40;

/** @param length how many characters, each of 5 bits of chance */
export function randomCode(length: number): string {
	// 256 is a multiple of 32: every character is as likely.
	return [...randomBytes(length)].map((byte) => ALPHABET[byte % ALPHABET.length]).join('');
}

/** A code in groups, as it is shown. */
export function grouped(code: string): string {
	return code.match(new RegExp(`.{1,${GROUP}}`, 'g'))?.join('-') ?? code;
}

/** A code as it was typed, read as it was meant: small letters, spaces and hyphens, O for 0, I and L for 1. */
export function readCode(typed: string): string {
	return typed
		.slice(0, LONGEST_CODE)
		.toUpperCase()
		.replace(/[^0-9A-Z]/g, '')
		.replace(/O/g, '0')
		.replace(/[IL]/g, '1');
}

/** Under this a one-use code is kept; it is long enough that it cannot be guessed from it. */
export function codeHash(typed: string): string {
	return createHash('sha256').update(readCode(typed)).digest('hex');
}

/** Makes a one-use code that holds for seven days. @returns the code as it is shown, once */
export async function makeCode(db: Database, kind: EnrolmentKind, person: string | null, now: Date): Promise<string> {
	const code = randomCode(LENGTH);
	await insertEnrolment(db, {
		codeHash: codeHash(code),
		kind,
		person,
		createdAt: now.toISOString(),
		expiresAt: new Date(now.getTime() + HOLDS * 1000).toISOString()
	});
	return grouped(code);
}
