/**
 * What stands in the chain of an organisation: one zod schema for each kind of entry. No names stand in it: a name is
 * held by a commitment, whose salt is kept outside, so that it can be forgotten without a change here.
 */
import * as z from 'zod';
import { CAPACITIES, HANDS_ON_CHECKS } from './hands-on.ts';
import { RETRAINING_REASONS, REVOCATION_REASONS } from './reasons.ts';

export { claimsSchema, credentialSchema, profileSchema } from './credential-schema.ts';

const id = z.uuid();
/** Local day at the site. */
const day = z.iso.date();
/** @source ECMA-262, Date.prototype.toISOString: three digits of a second */
const PRECISION = 3;
const instant = z.iso.datetime({ precision: PRECISION });
const hash = z.string().regex(/^[0-9a-f]{64}$/);
const text = z.string().min(1).max(2000);
const language = z.enum(['en', 'es']);

/** When it was entered, and by whom; null for the program itself. */
const common = { at: instant, by: id.nullable() };
/** Of entries about one person. */
const about = { ...common, person: id };

/** A signature over a record, bound to it by its hash. The signer's name is held by a commitment. */
export const signatureSchema = z.strictObject({
	/** SHA-256 of the record's canonical JSON, hexadecimal. */
	record: hash,
	signer: id,
	/** The commitment to the signer's name, as it was when signing. */
	named: hash,
	capacity: z.enum([...CAPACITIES, 'employer']),
	/** Word for word as it was shown before signing. */
	meaning: text,
	language,
	at: instant
});

const theorySchema = z.strictObject({ completion: id, course: text, version: z.int().min(1), day, supervised: z.boolean() });

/** The hands-on part of a person's training, as it is signed for. */
export const handsOnSchema = z.strictObject({
	kind: z.literal('hands-on'),
	version: z.literal(1),
	id,
	organisation: id,
	person: id,
	/** The system that it is about; other systems are not covered. */
	scope: text,
	checks: z.array(z.enum(HANDS_ON_CHECKS)).min(1),
	place: text,
	day,
	/** Null where the final check of the theory was not passed yet. */
	theory: theorySchema.nullable()
});

/** Training from before, or from elsewhere, that the employer has judged adequate. @source 29 CFR 1926.503(b)(1); from memory */
export const priorTrainingSchema = z.strictObject({
	kind: z.literal('prior-training'),
	version: z.literal(1),
	id,
	organisation: id,
	person: id,
	scope: text,
	/** Who gave the training, and what it was. */
	training: text,
	/** Provider and programme as an authority has approved them, where the proof names them. @source O. Reg. 297/13 s. 7, 8, 10; contents from memory */
	approved: z.strictObject({ provider: text.nullable(), programme: text.nullable() }).optional(),
	/** On which day it was given; null where that is not known. */
	trainedDay: day.nullable(),
	/** On which day the employer judged it adequate. */
	judgedDay: day,
	/** SHA-256 of the document that it was judged by; null where none was handed in. */
	document: hash.nullable(),
	validUntil: day.nullable()
});

/** How long a completion is valid, and by what. */
const validitySchema = z.strictObject({
	/** Months from the day of completion; null for no fixed end. */
	months: z.int().min(1).max(120).nullable(),
	by: z.enum(['law', 'employer', 'nothing-fixed']),
	/** Last local day on which it is valid; null for no fixed end. */
	until: day.nullable()
});

const kinds = {
	/** The first entry of every chain. */
	opened: z.strictObject({ kind: z.literal('opened'), ...common, organisation: id, version: z.literal(1) }),
	/** Who somebody is: a commitment to name and number. A later one takes the place of an earlier one. */
	named: z.strictObject({ kind: z.literal('named'), ...about, role: z.enum(['learner', 'trainer', 'employer']), commitment: hash }),
	left: z.strictObject({ kind: z.literal('left'), ...about, day }),
	returned: z.strictObject({ kind: z.literal('returned'), ...about, day }),
	'identity-erased': z.strictObject({ kind: z.literal('identity-erased'), ...about, day, why: z.enum(['asked-for', 'kept-long-enough']) }),
	/** Names from before, which no record that is kept shows, are forgotten; the name itself is kept as long as law asks. */
	'former-names-erased': z.strictObject({ kind: z.literal('former-names-erased'), ...about, day, commitments: z.array(hash).min(1) }),
	/** A check that ended: what was asked and answered stands in its rows, which the digest holds. */
	'check-ended': z.strictObject({
		kind: z.literal('check-ended'),
		...about,
		check: id,
		lesson: text,
		nth: z.int().min(1),
		passed: z.boolean(),
		day,
		/** `evidenceDigest` of the try and its events. */
		digest: hash
	}),
	/** The theory is passed: the record of it. */
	completed: z.strictObject({
		kind: z.literal('completed'),
		...about,
		id,
		employer: z.strictObject({ id, name: text }),
		course: z.strictObject({ id: text, version: z.int().min(1), scope: text, notCovered: z.array(text), lessons: z.array(text) }),
		/** Ids of the rule table and the practice table that the course spoke of. */
		rules: text,
		practice: text,
		language,
		/** How far the texts in this language were looked at: `original` is the one they are written in, `draft` a translation that nobody who knows the trade has reviewed. */
		languageState: z.enum(['original', 'reviewed', 'draft']),
		startedAt: instant,
		endedAt: instant,
		zone: text,
		day,
		check: id,
		/** Of that check. */
		digest: hash,
		/** Tries at the final check up to this one, since retraining was ordered last. */
		tries: z.int().min(1),
		asked: z.int().min(1),
		right: z.int().min(0),
		unsafe: z.int().min(0),
		passRule: z.strictObject({
			id: text,
			version: z.int().min(1),
			/** Nobody has set its pass mark yet. */
			provisional: z.boolean(),
			/** Shares of workers who pass it, by how often they are right; half of the errors on the unsafe side. */
			rates: z.array(z.strictObject({ right: z.number(), firstTry: z.number(), allowedTries: z.number() }))
		}),
		/** Who was present, how the learner was identified, and where; null where nobody was. */
		supervised: z.strictObject({ trainer: id, named: hash, identified: text, place: text }).nullable(),
		basis: z.literal('own-training'),
		validity: validitySchema
	}),
	'hands-on': z.strictObject({ kind: z.literal('hands-on'), ...about, record: handsOnSchema, signature: signatureSchema.extend({ capacity: z.enum(CAPACITIES) }) }),
	'prior-training': z.strictObject({ kind: z.literal('prior-training'), ...about, record: priorTrainingSchema, signature: signatureSchema }),
	/** The worker confirms to have had the training. @source COHSR (SOR/86-304) s. 19.6(4); read */
	acknowledged: z.strictObject({ kind: z.literal('acknowledged'), ...about, of: id, meaning: text, language }),
	/** The employer confirms that the worker had the training. @source COHSR (SOR/86-304) s. 19.6(4); read */
	'employer-acknowledged': z.strictObject({ kind: z.literal('employer-acknowledged'), ...about, of: id, meaning: text, language }),
	'retraining-ordered': z.strictObject({ kind: z.literal('retraining-ordered'), ...about, id, reason: z.enum(RETRAINING_REASONS), day, due: day }),
	'retraining-withdrawn': z.strictObject({ kind: z.literal('retraining-withdrawn'), ...about, of: id }),
	/** A completion, sign-off or prior training counts no more. */
	revoked: z.strictObject({ kind: z.literal('revoked'), ...about, of: id, reason: z.enum(REVOCATION_REASONS) }),
	/** It counts again. */
	reinstated: z.strictObject({ kind: z.literal('reinstated'), ...about, of: id }),
	/** A certificate of a completion or of prior training was made; its code is kept outside. */
	'certificate-made': z.strictObject({
		kind: z.literal('certificate-made'),
		...about,
		of: id,
		/** SHA-256 of its code, hexadecimal. */
		code: hash,
		/** Its place in the list of revoked credentials. */
		statusIndex: z.int().min(0)
	}),
	/** A signed root over all entries before this one. */
	checkpointed: z.strictObject({ kind: z.literal('checkpointed'), ...common, size: z.int().min(1), root: hash, key: text })
} as const;

/** An entry of the chain. */
export const entrySchema = z.discriminatedUnion('kind', [
	kinds.opened,
	kinds.named,
	kinds.left,
	kinds.returned,
	kinds['identity-erased'],
	kinds['former-names-erased'],
	kinds['check-ended'],
	kinds.completed,
	kinds['hands-on'],
	kinds['prior-training'],
	kinds.acknowledged,
	kinds['employer-acknowledged'],
	kinds['retraining-ordered'],
	kinds['retraining-withdrawn'],
	kinds.revoked,
	kinds.reinstated,
	kinds['certificate-made'],
	kinds.checkpointed
]);

export type Entry = z.output<typeof entrySchema>;
export type EntryKind = Entry['kind'];
export type EntryOf<Kind extends EntryKind> = Extract<Entry, { kind: Kind }>;
export type Signature = z.output<typeof signatureSchema>;
export type HandsOnRecord = z.output<typeof handsOnSchema>;
export type PriorTraining = z.output<typeof priorTrainingSchema>;
export type TheoryPassed = z.output<typeof theorySchema>;
