/** The files of shared/examples, read once through a schema. */
import * as z from 'zod';
import { isUnitId } from '#lib/quantity/index.ts';
import ownNumerics from '#shared/examples/own-numerics.json' with { type: 'json' };
import published from '#shared/examples/published.json' with { type: 'json' };

const text = z.string().min(1);
const measured = z.strictObject({ value: z.number(), unit: z.string().refine((unit) => unit === 'deg' || isUnitId(unit)) });

/** Systems that later issues build, and one that stands outside the program's scope. */
const later = z.enum(['horizontal-lifeline', 'vertical-lifeline']);
const custom = z.enum(['d-ring-and-stretch', 'full-height']);
const datum = z.enum(['anchorage', 'connector', 'surface', 'd-ring']);

const entry = z.strictObject({
	id: z.string().regex(/^[A-Z0-9][A-Z0-9.-]*$/),
	kind: z.enum(['total', 'kinematics', 'energy', 'swing', 'force', 'strength', 'conversion']),
	resultOrigin: z.enum(['printed', 'derived', 'memory']),
	source: z.strictObject({
		title: text,
		where: text,
		read: z.enum(['read', 'secondary', 'memory']),
		url: z.url().nullable()
	}),
	convention: text,
	inputs: z.record(z.string(), measured),
	result: z.strictObject({ ...measured.shape, step: z.number().positive(), printed: text.optional() }),
	evaluate: z.discriminatedUnion('by', [
		z.strictObject({
			by: z.literal('engine'),
			system: z.literal('lanyard'),
			target: z.enum([
				'freeFall',
				'totalFall',
				'requiredClearance',
				'fallFactor',
				'fallSpeed',
				'fallTime',
				'swingSpeed',
				'expectedElongation'
			]),
			datum: datum.optional(),
			custom: custom.optional()
		}),
		z.strictObject({
			by: z.literal('engine-bracket'),
			system: z.literal('lanyard'),
			target: z.literal('expectedElongation'),
			given: z.literal('averageForce')
		}),
		z.strictObject({ by: z.literal('integrator'), model: z.enum(['elastic-line-stretch', 'planning-force-ratio']) }),
		z.strictObject({ by: z.literal('unit') }),
		z.strictObject({ by: z.literal('later'), system: later }),
		z.strictObject({ by: z.literal('outside'), system: z.literal('positioning') })
	]),
	agreement: z.enum(['agrees', 'differs']),
	note: z.string(),
	sourceGravity: measured.optional()
});

const ownEntry = z.strictObject({
	id: text,
	quantity: text,
	inputs: z.record(z.string(), z.unknown()),
	expected: z.number(),
	unit: text,
	tolerance: z.number().positive(),
	obtained: text
});

const about = z.record(z.string(), z.union([text, z.record(z.string(), text)]));

export type PublishedExample = z.output<typeof entry>;
export type OwnNumber = z.output<typeof ownEntry>;

/** What law, guidance and textbooks print, and sums on their inputs. */
export const PUBLISHED: readonly PublishedExample[] = z.strictObject({ about, entries: z.array(entry) }).parse(published).entries;

/** The project's own numerics: no outside evidence. */
export const OWN_NUMERICS: readonly OwnNumber[] = z.strictObject({ about, entries: z.array(ownEntry) }).parse(ownNumerics).entries;

/** @returns a numeric input of an own number. @throws if it has none of that name. */
export function input(of: OwnNumber, name: string): number {
	const value = of.inputs[name];
	if (typeof value !== 'number') throw new ReferenceError(`${of.id} has no number ${name}`);
	return value;
}
