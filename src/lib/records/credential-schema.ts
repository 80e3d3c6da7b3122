/**
 * The open credential of a training: one zod schema, which gives its types and checks what comes in. It is narrower than
 * what the formats allow: what others issue is none of ours.
 * @source Open Badges 3.0, common_credentials.lines and section "JSON Web Token Proof Format"; W3C VC Data Model 2.0; W3C Bitstring Status List
 */
import * as z from 'zod';
import { CREDENTIAL_CONTEXTS, numericDate } from './credential.ts';

const urn = z.string().regex(/^urn:uuid:[0-9a-f-]{36}$/);
const address = z.url({ protocol: /^https?$/ });
/** Whole seconds: JWT counts in them. */
const instant = z.iso.datetime({ precision: 0 });
const text = z.string().min(1).max(2000);

/** The employer, as others may know it. @source Open Badges 3.0, Profile */
export const profileSchema = z.strictObject({ id: address, type: z.tuple([z.literal('Profile')]), name: text });

/** A name that can be compared, and not read. @source Open Badges 3.0, IdentityObject and IdentityHash */
const identitySchema = z.strictObject({
	type: z.literal('IdentityObject'),
	hashed: z.literal(true),
	/** SHA-256 over the name with the salt behind it, hexadecimal. */
	identityHash: z.string().regex(/^sha256\$[0-9a-f]{64}$/),
	identityType: z.literal('ext:name'),
	salt: z.string().regex(/^[0-9a-f]{32,}$/)
});

const resultSchema = z.strictObject({ type: z.tuple([z.literal('Result')]), resultDescription: address, value: text });

const achievementSchema = z.strictObject({
	id: address,
	type: z.tuple([z.literal('Achievement')]),
	achievementType: z.literal('CertificateOfCompletion'),
	name: text,
	description: text,
	criteria: z.strictObject({ narrative: text }),
	inLanguage: z.enum(['en', 'es']),
	version: text,
	resultDescription: z.array(
		z.strictObject({ id: address, type: z.tuple([z.literal('ResultDescription')]), name: text, resultType: z.literal('RawScore'), valueMin: text, valueMax: text })
	)
});

/** Where it is told whether it was taken back. @source W3C Bitstring Status List, section "BitstringStatusListEntry" */
const statusSchema = z.strictObject({
	id: address,
	type: z.literal('BitstringStatusListEntry'),
	statusPurpose: z.literal('revocation'),
	statusListIndex: z.string().regex(/^(0|[1-9][0-9]{0,8})$/),
	statusListCredential: address
});

/** The credential. */
export const credentialSchema = z.strictObject({
	'@context': z.tuple([z.literal(CREDENTIAL_CONTEXTS[0]), z.literal(CREDENTIAL_CONTEXTS[1])]),
	id: urn,
	type: z.tuple([z.literal('VerifiableCredential'), z.literal('OpenBadgeCredential')]),
	name: text,
	issuer: profileSchema,
	validFrom: instant,
	validUntil: instant.optional(),
	credentialSubject: z.strictObject({
		id: urn,
		type: z.tuple([z.literal('AchievementSubject')]),
		/** Left out where the name is forgotten. */
		identifier: z.array(identitySchema).optional(),
		activityStartDate: instant,
		activityEndDate: instant,
		achievement: achievementSchema,
		result: z.array(resultSchema)
	}),
	evidence: z.array(z.strictObject({ type: z.tuple([z.literal('Evidence')]), name: text, narrative: text })),
	credentialStatus: statusSchema
});

/** The payload of the token: the credential itself, with the claims that repeat some of its members. */
export const claimsSchema = z
	.strictObject({ ...credentialSchema.shape, iss: address, jti: urn, sub: urn, nbf: z.int(), exp: z.int().optional() })
	.check((context) => {
		const { value, issues } = context;
		const same =
			value.iss === value.issuer.id &&
			value.jti === value.id &&
			value.sub === value.credentialSubject.id &&
			value.nbf === numericDate(value.validFrom) &&
			value.exp === (value.validUntil === undefined ? undefined : numericDate(value.validUntil));
		if (!same) issues.push({ code: 'custom', input: value, path: [], message: 'the claims differ from the members that they repeat; they must be equal' });
	});

export type Credential = z.output<typeof credentialSchema>;
export type CredentialClaims = z.output<typeof claimsSchema>;
export type Profile = z.output<typeof profileSchema>;
