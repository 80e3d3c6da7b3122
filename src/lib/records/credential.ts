/** Building an open credential from what the chain says. Pure: hashes, times and chance come in from outside. */
import type { Credential, CredentialClaims, Profile } from './credential-schema.ts';
import { daysBetween } from './days.ts';

/** In this order. @source Open Badges 3.0, AchievementCredential, `@context` */
export const CREDENTIAL_CONTEXTS = ['https://www.w3.org/ns/credentials/v2', 'https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json'] as const;

/** Where NumericDate counts from. @source RFC 7519, section 2: 1970-01-01T00:00:00Z, leap seconds left out */
const COUNTED_FROM = '1970-01-01';
/** @source RFC 7519, section 2: each day has 86,400 seconds */
const SECONDS = { day: 86_400, hour: 3600, minute: 60 } as const;

/** @param instant ISO 8601, UTC, in whole seconds. @returns it as JWT counts it. @source RFC 7519, section 2, NumericDate */
export function numericDate(instant: string): number {
	const [day = '', time = ''] = instant.split('T');
	const [hours = NaN, minutes = NaN, seconds = NaN] = time.replace('Z', '').split(':').map(Number);
	return daysBetween(COUNTED_FROM, day) * SECONDS.day + hours * SECONDS.hour + minutes * SECONDS.minute + seconds;
}

/** What a credential says. */
export interface CredentialContent {
	/** The employer. */
	readonly issuer: Profile;
	/** UUID of the record. */
	readonly record: string;
	/** UUID that stands for the person in this credential alone. */
	readonly subject: string;
	/** Hash of the name, hexadecimal, and its salt; null where the name is forgotten. */
	readonly identity: { readonly hash: string; readonly salt: string } | null;
	/** What it is called, and in what words it is told. */
	readonly name: string;
	readonly achievement: { readonly key: string; readonly name: string; readonly description: string; readonly criteria: string; readonly version: number };
	readonly language: 'en' | 'es';
	readonly startedAt: string;
	readonly endedAt: string;
	readonly validFrom: string;
	/** Null for no fixed end. */
	readonly validUntil: string | null;
	readonly result: { readonly name: string; readonly right: number; readonly asked: number };
	readonly evidence: readonly { readonly name: string; readonly narrative: string }[];
	readonly status: { readonly list: string; readonly index: number };
}

/** @param instant ISO 8601, UTC. @returns it in whole seconds, as JWT counts. */
function seconds(instant: string): string {
	return `${instant.slice(0, '2026-11-30T14:00:00'.length)}Z`;
}

/** @returns the credential, without its signature. */
export function credentialOf(content: CredentialContent): Credential {
	const { issuer, achievement, identity, result, status, validUntil } = content;
	const score = `${issuer.id}#${achievement.key}-score`;
	return {
		'@context': [...CREDENTIAL_CONTEXTS],
		id: `urn:uuid:${content.record}`,
		type: ['VerifiableCredential', 'OpenBadgeCredential'],
		name: content.name,
		issuer,
		validFrom: seconds(content.validFrom),
		...(validUntil === null ? {} : { validUntil: seconds(validUntil) }),
		credentialSubject: {
			id: `urn:uuid:${content.subject}`,
			type: ['AchievementSubject'],
			...(identity === null
				? {}
				: { identifier: [{ type: 'IdentityObject' as const, hashed: true as const, identityHash: `sha256$${identity.hash}`, identityType: 'ext:name' as const, salt: identity.salt }] }),
			activityStartDate: seconds(content.startedAt),
			activityEndDate: seconds(content.endedAt),
			achievement: {
				id: `${issuer.id}#${achievement.key}`,
				type: ['Achievement'],
				achievementType: 'CertificateOfCompletion',
				name: achievement.name,
				description: achievement.description,
				criteria: { narrative: achievement.criteria },
				inLanguage: content.language,
				version: String(achievement.version),
				resultDescription: [{ id: score, type: ['ResultDescription'], name: result.name, resultType: 'RawScore', valueMin: '0', valueMax: String(result.asked) }]
			},
			result: [{ type: ['Result'], resultDescription: score, value: String(result.right) }]
		},
		evidence: content.evidence.map(({ name, narrative }) => ({ type: ['Evidence'], name, narrative })),
		credentialStatus: {
			id: `${status.list}#${String(status.index)}`,
			type: 'BitstringStatusListEntry',
			statusPurpose: 'revocation',
			statusListIndex: String(status.index),
			statusListCredential: status.list
		}
	};
}

/** @returns the payload of the token: no `vc` claim, but the credential itself. @source Open Badges 3.0, section "JWT Payload Format" */
export function claimsOf(credential: Credential): CredentialClaims {
	return {
		...credential,
		iss: credential.issuer.id,
		jti: credential.id,
		sub: credential.credentialSubject.id,
		nbf: numericDate(credential.validFrom),
		...(credential.validUntil === undefined ? {} : { exp: numericDate(credential.validUntil) })
	};
}
