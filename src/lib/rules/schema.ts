/**
 * The one schema of shared/rules, shared/practice and shared/equipment; types are inferred from it.
 *
 * This is the second public face of the folder, for the server, the command line and tests. The
 * first, `index.ts`, takes types from here and nothing that runs: the files under shared/ are
 * checked once, by a test, and the browser carries no schema library.
 */
import { z } from 'zod';
import { FORCE, LENGTH, MASS, dimensionOf, nameOfDimension, sameDimension } from '#lib/quantity/index.ts';
import type { Dimension } from '#lib/quantity/index.ts';
import { CHOICE_FACTS, COUNT_FACTS, ID_FACTS, QUANTITIES, YES_NO_FACTS } from './quantity-names.ts';
import type { QuantityName } from './quantity-names.ts';

const line = z.string().trim().min(1).max(500);
const slug = z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'small letters, digits and single hyphens');
const dottedId = z.string().regex(/^[a-z0-9-]+\.[a-z0-9-]+$/, 'table id, a dot, own name');
const messageKey = z.string().regex(/^[a-z][a-zA-Z0-9]*(\.[a-z][a-zA-Z0-9-]*)+$/, 'a key such as rules.note.either');

/** Units in which laws, standards and practice print their numbers. */
export const RULE_UNITS = ['m', 'ft', 'in', 'kg', 'lb', 'kN', 'N', 'lbf'] as const;
const ruleUnit = z.enum(RULE_UNITS);

const dayOrMonth = z.string().regex(/^\d{4}-\d{2}(-\d{2})?$/, 'YYYY-MM or YYYY-MM-DD');

/**
 * How a value is known. `read`: in a stored copy of the text itself. `read-secondary`: in a
 * reproduction or digest. `memory`: not read; shown as such, and decides nothing until a named
 * competent person of the organisation has confirmed it.
 */
export const MARKS = ['read', 'read-secondary', 'memory'] as const;

const provenance = {
	clause: line,
	source: z.strictObject({
		/** Proper name of the text that was read, or that is remembered. */
		title: line,
		/** Where it was read: copy, edition, address. For memory: where it would have to be read. */
		where: line,
		lookedAt: dayOrMonth.optional()
	}),
	mark: z.enum(MARKS),
	confidence: z.enum(['high', 'medium', 'low']).optional()
};

interface Provenance {
	readonly mark: (typeof MARKS)[number];
	readonly confidence?: 'high' | 'medium' | 'low' | undefined;
	readonly source: { readonly lookedAt?: string | undefined };
}

type Issues = z.RefinementCtx;

function complain(issues: Issues, path: readonly string[], message: string): void {
	issues.addIssue({ code: 'custom', path: [...path], message });
}

function provenanceAgrees(of: Provenance, issues: Issues): void {
	const remembered = of.mark === 'memory';
	if (remembered && of.confidence === undefined) complain(issues, ['confidence'], 'needed with the mark memory');
	if (!remembered && of.confidence !== undefined) complain(issues, ['confidence'], 'only with the mark memory');
	if (remembered && of.source.lookedAt !== undefined)
		complain(issues, ['source', 'lookedAt'], 'what was looked at is not from memory');
	if (!remembered && of.source.lookedAt === undefined)
		complain(issues, ['source', 'lookedAt'], 'needed: the month or day on which it was read');
}

const amount = z.strictObject({ value: z.number(), unit: ruleUnit });
/** A multiple of another quantity of the same plan: twice the arrest force. */
const multiple = z.strictObject({ times: z.number().positive(), of: z.enum(quantityNames()) });
const limitAmount = z.union([amount, multiple]);

/**
 * The other half of a pair as published: "1.8 m" of "6 ft (1.8 m)". Printed, never used to decide:
 * 6 ft is not 1.8 m.
 */
const pair = line.optional();

const boundRest = {
	quantity: z.enum(quantityNames()),
	/** The limit itself is already too much (or too little): "below 310 lb". */
	exclusive: z.literal(true).optional(),
	pair
};

function quantityNames(): [QuantityName, ...QuantityName[]] {
	return Object.keys(QUANTITIES) as [QuantityName, ...QuantityName[]];
}

function boundAgrees(
	bound: {
		quantity: QuantityName;
		pair?: string | undefined;
		max?: z.infer<typeof limitAmount>;
		min?: z.infer<typeof limitAmount>;
	},
	issues: Issues
): void {
	const side = bound.max === undefined ? 'min' : 'max';
	const by = bound.max ?? bound.min;
	if (by === undefined) return;
	const measured = QUANTITIES[bound.quantity];
	if ('of' in by) {
		if (!sameDimension(QUANTITIES[by.of], measured))
			complain(issues, [side, 'of'], `must be a ${nameOfDimension(measured)}`);
		if (bound.pair !== undefined) complain(issues, ['pair'], 'a multiple has no number of its own');
		return;
	}
	if (!sameDimension(dimensionOf(by.unit), measured))
		complain(issues, [side, 'unit'], `must be a unit of ${nameOfDimension(measured)}`);
}

export const Bound = z
	.union([
		z.strictObject({ ...boundRest, max: limitAmount }),
		z.strictObject({ ...boundRest, min: limitAmount })
	])
	.superRefine(boundAgrees);

export const FactIs = z.union([
	z.strictObject({ fact: z.enum(YES_NO_FACTS), is: z.boolean() }),
	z.strictObject({ fact: z.literal('harness'), is: z.enum(CHOICE_FACTS.harness) }),
	z.strictObject({ fact: z.literal('attachment'), is: z.enum(CHOICE_FACTS.attachment) }),
	z.strictObject({ fact: z.literal('workplace'), is: z.enum(CHOICE_FACTS.workplace) }),
	z.strictObject({ fact: z.enum(COUNT_FACTS), is: z.int().positive() }),
	z.strictObject({ fact: z.enum(ID_FACTS), is: slug })
]);

const ConditionAll = z.strictObject({
	get all(): z.ZodArray<typeof Condition> {
		return z.array(Condition).min(1);
	}
});
const ConditionAny = z.strictObject({
	get any(): z.ZodArray<typeof Condition> {
		return z.array(Condition).min(1);
	}
});
const ConditionNot = z.strictObject({
	get not(): typeof Condition {
		return Condition;
	}
});
/** When a limit applies: a tree over the plan's facts. */
export const Condition = z.union([FactIs, ConditionAll, ConditionAny, ConditionNot]);

const RequirementAll = z.strictObject({
	get all(): z.ZodArray<typeof Requirement> {
		return z.array(Requirement).min(1);
	}
});
const RequirementAny = z.strictObject({
	get any(): z.ZodArray<typeof Requirement> {
		return z.array(Requirement).min(1);
	}
});
/** What a limit asks: a tree of bounds and facts. */
export const Requirement = z.union([Bound, FactIs, RequirementAll, RequirementAny]);

/** What a limit is about. */
export const SUBJECTS = [
	'harness',
	'connectors',
	'component-strength',
	'lanyard-length',
	'free-fall',
	'arrest-force',
	'deceleration',
	'capacity',
	'anchorage-strength',
	'anchorage-independence',
	'anchorage-height',
	'contact',
	'swing',
	'edge',
	'attachment',
	'rescue',
	'training',
	'order-of-measures',
	'numbers',
	'trigger-height'
] as const;

const limitRest = {
	id: dottedId,
	subject: z.enum(SUBJECTS),
	/** Left out: it always applies. */
	when: Condition.optional(),
	/** A remark for the reader, as a key of the message catalogue. */
	note: messageKey.optional(),
	...provenance
};

/** A limit that a plan holds, fails, or cannot be shown to hold. */
export const Check = z
	.strictObject({ role: z.literal('check'), ...limitRest, require: Requirement })
	.superRefine(provenanceAgrees);

/** From what height the duty to protect arises; no plan fails by it. */
export const Trigger = z
	.strictObject({ role: z.literal('trigger'), ...limitRest, from: Bound })
	.superRefine(provenanceAgrees);

/** What the law says without a number or a fact that a plan could be held against. */
export const Statement = z
	.strictObject({ role: z.literal('statement'), ...limitRest, note: messageKey })
	.superRefine(provenanceAgrees);

export const Limit = z.discriminatedUnion('role', [Check, Trigger, Statement]);

export const RuleTable = z
	.strictObject({
		id: slug,
		/** A key for the jurisdiction's name in the message catalogue. */
		jurisdiction: slug,
		/** Official title of the law or of the laws' leading text: a proper name, not translated. */
		title: line,
		/** Which work the table is for, as a key of the message catalogue. */
		scope: messageKey,
		limits: z.array(Limit).min(1)
	})
	.superRefine((table, issues) => {
		const seen = new Set<string>();
		table.limits.forEach((limit, at) => {
			if (!limit.id.startsWith(`${table.id}.`))
				complain(issues, ['limits', String(at), 'id'], `must begin with ${table.id}.`);
			if (seen.has(limit.id)) complain(issues, ['limits', String(at), 'id'], 'stands twice');
			seen.add(limit.id);
		});
	});

function citedValue(dimension: Dimension) {
	return z
		.strictObject({ ...amount.shape, pair, note: messageKey.optional(), ...provenance })
		.superRefine((item, issues) => {
			provenanceAgrees(item, issues);
			if (!sameDimension(dimensionOf(item.unit), dimension))
				complain(issues, ['unit'], `must be a unit of ${nameOfDimension(dimension)}`);
		});
}
const citedLength = citedValue(LENGTH);
const citedMass = citedValue(MASS);
const citedForce = citedValue(FORCE);

/** How the body is counted into a clearance; see DESIGN section 3. */
export const BODY_CUSTOMS = ['d-ring-and-stretch', 'full-height'] as const;

export const PracticeTable = z.strictObject({
	id: slug,
	/** Says on every screen what these numbers are not. */
	standing: z.literal('practice-not-law'),
	/** Practice that is shown beside others but that no problem is set by. */
	crossCheckOnly: z.boolean(),
	title: line,
	bodyCustom: z.enum(BODY_CUSTOMS),
	/** Free space that must be left over below the feet. */
	margin: citedLength,
	/** D-ring slide and harness stretch together, where the custom counts them apart. */
	stretch: citedLength.optional(),
	/** Height of the dorsal D-ring above the soles, standing, where nobody has measured it. */
	dRingHeight: citedLength.optional(),
	/** Height of the whole body, where the custom counts it. */
	bodyHeight: citedLength.optional(),
	/** Half the width of a body, by which an obstacle is widened. */
	halfBodyWidth: citedLength
});

export const AbsorberClass = z.strictObject({
	id: slug,
	/** Designation of the standard: a proper name. */
	title: line,
	/** The standard no longer issues it, though devices of it are in use. */
	superseded: z.boolean(),
	averageForce: citedForce.optional(),
	averageForceConditioned: citedForce.optional(),
	peakForce: citedForce,
	peakForceConditioned: citedForce.optional(),
	deploymentMax: citedLength,
	massMin: citedMass.optional(),
	massMax: citedMass.optional(),
	freeFallMax: citedLength.optional()
});
export const AbsorberClasses = z.strictObject({ classes: z.array(AbsorberClass).min(1) });

/** A field that equipment labels carry, in our own words, with who asks for it. */
export const LabelField = z
	.strictObject({
		id: slug,
		/** Absorber, lanyard, harness or anchorage connector. */
		on: z.array(z.enum(['absorber', 'lanyard', 'harness', 'connector'])).min(1),
		...provenance
	})
	.superRefine(provenanceAgrees);
export const LabelFields = z.strictObject({ fields: z.array(LabelField).min(1) });

/** What a law asks of a record of training, as codes: words are in the catalogue. */
export const RECORD_CONTENTS = ['worker', 'training-days', 'signature-of-trainer-or-employer', 'signature-of-competent-person', 'judged-day'] as const;

/** What a law asks beside, of which a record of this program is no proof: a programme and a provider that an authority approved; practice. */
export const NOT_PROOF_OF = ['approved-programme', 'practice'] as const;

const lawSays = <Shape extends z.core.$ZodLooseShape>(shape: Shape) => z.strictObject({ ...shape, ...provenance });

/** What the law of a rule table asks of records of training. */
export const RecordLaw = z.strictObject({
	/** Id of the rule table. */
	rules: slug,
	/** Months that training is valid from the day of completion; null where law sets no period. */
	validity: lawSays({ months: z.int().min(1).max(120).nullable() }).superRefine((of, issues) => {
		provenanceAgrees(of, issues);
		if (of.months !== null && of.mark === 'memory') complain(issues, ['months'], 'from memory decides nothing: read the law first');
	}),
	/** What the record must hold; empty where law asks for none, or its form is not set. */
	contents: lawSays({ asked: z.array(z.enum(RECORD_CONTENTS)) }).superRefine(provenanceAgrees),
	notProofOf: z.array(lawSays({ what: z.enum(NOT_PROOF_OF) }).superRefine(provenanceAgrees))
});
export const RecordLaws = z.strictObject({ records: z.array(RecordLaw).min(1) });

export type Mark = (typeof MARKS)[number];
export type Confidence = 'high' | 'medium' | 'low';
export type RuleUnit = (typeof RULE_UNITS)[number];
export type Subject = (typeof SUBJECTS)[number];
export type BodyCustom = (typeof BODY_CUSTOMS)[number];
export type FactIs = z.infer<typeof FactIs>;
export type Bound = z.infer<typeof Bound>;
export type Condition = z.infer<typeof Condition>;
export type Requirement = z.infer<typeof Requirement>;
export type Check = z.infer<typeof Check>;
export type Trigger = z.infer<typeof Trigger>;
export type Statement = z.infer<typeof Statement>;
export type Limit = z.infer<typeof Limit>;
export type RuleTable = z.infer<typeof RuleTable>;
export type CitedValue = z.infer<typeof citedLength>;
export type PracticeTable = z.infer<typeof PracticeTable>;
export type AbsorberClass = z.infer<typeof AbsorberClass>;
export type LabelField = z.infer<typeof LabelField>;
export type RecordContent = (typeof RECORD_CONTENTS)[number];
export type NotProofOf = (typeof NOT_PROOF_OF)[number];
export type RecordLaw = z.infer<typeof RecordLaw>;
