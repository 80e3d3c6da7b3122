/** Handing out the open credential of a training that was passed here. */
import { createHash, randomBytes } from 'node:crypto';
import { SignJWT } from 'jose';
import { NO_END, claimsOf, credentialOf, lastDayOf, type CredentialContent, type EntryOf } from '#lib/records/index.ts';
import { claimsSchema } from '#lib/records/schema.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation } from '../db/people.ts';
import { identitiesOf } from '../db/records.ts';
import type { Person } from '../people/who.ts';
import { handOut, type HandedOut } from './certificate.ts';
import { sha256 } from './chain.ts';
import { keyAddress, listAddress, profileOf } from './issuer.ts';
import { signingKey } from './keys.ts';
import { lastSecondOf } from './last-second.ts';

/** @reason nobody tries names against salts of 128 bits but by the credential itself */
const SALT_BYTES = 16;

/** What a credential says in words: they come from outside. */
export type CredentialWords = Pick<CredentialContent, 'name' | 'language' | 'evidence'> & {
	readonly achievement: Omit<CredentialContent['achievement'], 'key' | 'version'>;
	readonly score: string;
};

/** What is told of a record, for its words to be chosen. */
export interface ToTell {
	readonly entry: EntryOf<'completed'>;
	readonly signOff: EntryOf<'hands-on'> | undefined;
	readonly seq: number;
	readonly hash: string;
}

/** @returns the hash of a name as others can compute it. @source Open Badges 3.0, IdentityHash: SHA-256 over the identity with the salt behind it */
export function identityHash(name: string, salt: string): string {
	return sha256(name + salt);
}

/** @returns a UUID that stands for the person in the credential of this record, and tells nothing of either. @source RFC 9562, section 5.8: version 8 */
export function subjectOf(record: string): string {
	const bytes = createHash('sha256').update(`underfoot credential subject\n${record}`).digest().subarray(0, 16);
	bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x80;
	bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
	return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

/**
 * Hands a credential out: of what was passed here alone, and as long as it counts.
 * @param origin of this server, as others reach it
 * @param words says it in words
 * @returns the token (JWT, compact); null for a record that is not there, or has no credential
 */
export async function handOutCredential(
	db: Database,
	who: Person,
	of: { readonly person: string; readonly record: string },
	origin: string,
	words: (told: ToTell) => CredentialWords,
	now: Date
): Promise<string | null> {
	const handed = await handOut(db, who, of.person, of.record, 'credential-handed-out', now);
	if (handed.kind === 'not-found') return null;
	return credentialToken(db, who.organisation, handed, origin, words, now);
}

async function credentialToken(db: Database, organisation: string, handed: HandedOut, origin: string, words: (told: ToTell) => CredentialWords, now: Date): Promise<string | null> {
	const { training, statusIndex, person } = handed;
	const { entry, signOff, seq, hash, revoked } = training;
	const issuer = await findOrganisation(db, organisation);
	if (entry.kind !== 'completed' || revoked !== undefined || issuer === null) return null;
	const { named } = person.record;
	const name = named === undefined ? undefined : (await identitiesOf(db, organisation, [named])).get(named)?.name;
	const salt = randomBytes(SALT_BYTES).toString('hex');
	const until = lastDayOf(person.record, training);
	const { score, achievement, ...said } = words({ entry, signOff: signOff?.entry, seq, hash });
	const content: CredentialContent = {
		...said,
		issuer: profileOf(origin, { id: issuer.id, name: entry.employer.name }),
		record: entry.id,
		subject: subjectOf(entry.id),
		identity: name === undefined ? null : { hash: identityHash(name, salt), salt },
		achievement: { ...achievement, key: `${entry.course.id}-${String(entry.course.version)}-${signOff === undefined ? 'theory' : 'whole'}`, version: entry.course.version },
		startedAt: entry.startedAt,
		endedAt: entry.endedAt,
		// A sign-off makes another credential of it, which begins with the signature.
		validFrom: signOff === undefined || signOff.entry.at < entry.endedAt ? entry.endedAt : signOff.entry.at,
		validUntil: until === NO_END ? null : lastSecondOf(entry.zone, until).toISOString(),
		result: { name: score, right: entry.right, asked: entry.asked },
		status: { list: listAddress(origin, organisation), index: statusIndex }
	};
	const claims = claimsSchema.parse(claimsOf(credentialOf(content)));
	const key = await signingKey(db, 'credential', now);
	// No other header may be there. @source Open Badges 3.0, section "Create the JOSE Header"
	return new SignJWT({ ...claims }).setProtectedHeader({ alg: key.alg, kid: keyAddress(origin, key.kid), typ: 'JWT' }).sign(key.key);
}
