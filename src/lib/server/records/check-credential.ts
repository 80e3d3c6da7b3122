/** Checking a credential that somebody holds: with our own keys and our own chain, without asking anybody. */
import { compactVerify, importJWK, decodeProtectedHeader, errors } from 'jose';
import * as z from 'zod';
import { claimsSchema } from '#lib/records/schema.ts';
import { lastDayOf, type CredentialClaims } from '#lib/records/index.ts';
import { dayIn } from '../course/day.ts';
import { certificateAt } from '../db/certificates.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation } from '../db/people.ts';
import { recordOf } from './found.ts';
import { organisationIn } from './issuer.ts';
import { publicKeys, type PublicKey } from './keys.ts';
import { withdrawnPlaces } from './status-list.ts';

/** Longest token that is looked at, characters. @reason ours have about 3,000 */
export const LONGEST_TOKEN = 20_000;

/** What is wrong with a credential. */
export type CredentialFault =
	/** No token, or none of a credential. */
	| 'not-readable'
	/** Issued by somebody who is not here. */
	| 'not-ours'
	/** It says that it is ours, and names a key that is none of ours. */
	| 'wrong-key'
	/** Its text is not what was signed. */
	| 'changed'
	| 'not-yet-valid'
	| 'expired'
	| 'revoked';

export type CheckedCredential =
	| { readonly kind: 'holds'; readonly claims: CredentialClaims }
	/** @property claims where the signature holds */
	| { readonly kind: CredentialFault; readonly claims: CredentialClaims | null };

const JWS = /^[\w-]+\.[\w-]+\.[\w-]+$/;

/** The part of a payload that says who issued it. */
const issuedBy = z.looseObject({ iss: z.string().max(500) });

function partOf(token: string, part: 0 | 1): unknown {
	try {
		return JSON.parse(Buffer.from(token.split('.')[part] ?? '', 'base64url').toString('utf8'));
	} catch {
		return undefined;
	}
}

function keyNamed(token: string): string | null {
	try {
		// What others send may have anything there.
		const kid: unknown = decodeProtectedHeader(token).kid;
		return typeof kid === 'string' ? kid : null;
	} catch {
		return null;
	}
}

async function isSignedWith(token: string, { jwk, alg }: PublicKey): Promise<'signed' | 'changed' | 'wrong-key'> {
	try {
		await compactVerify(token, await importJWK(jwk, alg), { algorithms: [alg] });
		return 'signed';
	} catch (error) {
		// An algorithm that the token names for itself is not taken.
		if (error instanceof errors.JOSEAlgNotAllowed) return 'wrong-key';
		if (error instanceof errors.JOSEError) return 'changed';
		throw error;
	}
}

/** What a token is that names no key of ours. */
async function foreign(db: Database, token: string): Promise<CredentialFault> {
	const issuer = issuedBy.safeParse(partOf(token, 1));
	if (!issuer.success) return 'not-readable';
	const organisation = organisationIn(issuer.data.iss);
	return organisation !== null && (await findOrganisation(db, organisation)) !== null ? 'wrong-key' : 'not-ours';
}

/** @returns a credential's verdict. @param token as it was pasted */
export async function checkCredential(db: Database, token: string, now: Date): Promise<CheckedCredential> {
	const refused = (kind: CredentialFault): CheckedCredential => ({ kind, claims: null });
	const compact = token.trim();
	if (compact.length > LONGEST_TOKEN || !JWS.test(compact)) return refused('not-readable');
	const named = keyNamed(compact);
	if (named === null) return refused('not-readable');
	const key = (await publicKeys(db, 'credential')).find(({ kid }) => kid === named.slice(named.lastIndexOf('#') + 1));
	if (key === undefined) return refused(await foreign(db, compact));
	const signed = await isSignedWith(compact, key);
	if (signed !== 'signed') return refused(signed);
	// Signed by us, and yet no credential: a list of withdrawn ones.
	const claims = claimsSchema.safeParse(partOf(compact, 1));
	const organisation = claims.success ? organisationIn(claims.data.iss) : null;
	const found = organisation === null ? null : await findOrganisation(db, organisation);
	if (!claims.success || found === null) return refused('not-readable');
	return { kind: (await outcome(db, found, claims.data, now)) ?? 'holds', claims: claims.data };
}

async function outcome(db: Database, { id, zone }: { readonly id: string; readonly zone: string }, claims: CredentialClaims, now: Date): Promise<CredentialFault | null> {
	const place = Number(claims.credentialStatus.statusListIndex);
	if ((await withdrawnPlaces(db, id)).includes(place)) return 'revoked';
	const seconds = Math.floor(now.getTime() / 1000);
	if (seconds < claims.nbf) return 'not-yet-valid';
	if (claims.exp !== undefined && seconds > claims.exp) return 'expired';
	// Retraining may have been ordered since: it ends what the token still says.
	const certificate = await certificateAt(db, id, place);
	const person = certificate === null ? null : await recordOf(db, certificate.person_id);
	const training = person?.trainings.find((one) => one.id === certificate?.record_id);
	return person !== null && training !== undefined && lastDayOf(person, training) < dayIn(zone, now) ? 'expired' : null;
}
