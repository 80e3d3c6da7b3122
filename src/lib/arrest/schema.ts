/**
 * The plan as a document: one zod schema for files, the command line and the server.
 * Outside, every quantity is text with its unit ("1.8 m", "5 ft 10 in"); inside it is an SI number.
 * The browser draws its plans itself and needs the types only; it loads this file where a plan is entered, nowhere else.
 */
import * as z from 'zod';
import plausible from '#shared/plausible.json' with { type: 'json' };
import {
	FORCE,
	LENGTH,
	MASS,
	dimensionOf,
	nameOfDimension,
	readQuantity,
	sameDimension,
	toSI,
	type Dimension,
	type UnitId
} from '#lib/quantity/index.ts';
import { practiceTable } from '#lib/rules/index.ts';
import { plausibleRange, type PlausibleId } from './plausible.ts';

export { plausibleRange } from './plausible.ts';

/** The unit in which a bare SI number is written into a document. */
function baseUnit(dimension: Dimension): UnitId {
	if (sameDimension(dimension, LENGTH)) return 'm';
	if (sameDimension(dimension, MASS)) return 'kg';
	if (sameDimension(dimension, FORCE)) return 'N';
	throw new TypeError(`no document unit for a ${nameOfDimension(dimension)}`);
}

const EXAMPLE: Readonly<Record<string, string>> = {
	length: '"1.8 m" or "5 ft 10 in"',
	mass: '"84 kg" or "185 lb"',
	force: '"6 kN" or "1350 lbf"'
};

/** @reason no quantity with its unit is longer, not even with words for units. */
const LONGEST_ENTRY = 64;

/**
 * A quantity as text with its unit outside, an SI number inside.
 * Refuses: no unit, a unit of another dimension, two readings, and values outside the plausible range.
 */
function quantity(dimension: Dimension, range: PlausibleId) {
	const { min, max } = plausible.ranges[range];
	const { atLeast: low, atMost: high } = plausibleRange(range);
	const unit = baseUnit(dimension);
	const kind = nameOfDimension(dimension);
	const example = EXAMPLE[kind] ?? '';
	const span = `from ${min.value} ${min.unit} to ${max.value} ${max.unit}`;
	return z
		.codec(
			z
				.string({ error: `is no text; write a ${kind} as text with its unit, such as ${example}` })
				.max(LONGEST_ENTRY, { error: `is too long for a ${kind}; write a ${kind} with its unit, such as ${example}` }),
			z.number(),
			{
				decode: (text, context) => {
					const fail = (message: string): never => {
						context.issues.push({ code: 'custom', message, input: text });
						return z.NEVER;
					};
					const reading = readQuantity(text, { expected: unit, language: 'en', compound: true });
					if (reading.kind === 'question') {
						return fail('can be read in two ways; write the number without a thousands separator');
					}
					if (reading.kind === 'unreadable') {
						return reading.reason === 'wrong-dimension'
							? fail(`has no unit of a ${kind}; write a ${kind} with its unit, such as ${example}`)
							: fail(`cannot be read as a ${kind}; write a ${kind} with its unit, such as ${example}`);
					}
					if (!reading.unitGiven) return fail(`has no unit; write a ${kind} with its unit, such as ${example}`);
					if (!sameDimension(dimensionOf(reading.unit), dimension)) {
						return fail(`has no unit of a ${kind}; write a ${kind} with its unit, such as ${example}`);
					}
					if (reading.si < low || reading.si > high) {
						return fail(`is not within what it can be; give a ${kind} ${span}, and check the unit`);
					}
					return reading.si;
				},
				encode: (si) => `${si} ${unit}`
			}
		)
		.meta({ description: `${kind} with unit, ${span}`, examples: kind === 'length' ? ['1.8 m', '5 ft 10 in'] : [] });
}

const obstacle = z.strictObject({
	id: z.string().regex(/^[a-z][a-z0-9]{0,23}$/, {
		error: 'is no short name; use at most 24 small letters and digits, such as "stack"'
	}),
	/** Height of its top above the lower level, at its highest. */
	top: quantity(LENGTH, 'depth'),
	/** Horizontal place, from the plumb line of the anchorage; positive towards the worker's side. */
	from: quantity(LENGTH, 'place'),
	to: quantity(LENGTH, 'place'),
	present: z.enum(['always', 'sometimes']),
	/** Whether it stands there in the drawing. */
	there: z.boolean().default(true)
});

/** A lanyard with or without an energy absorber on a rigid anchorage. */
export const lanyardPlanSchema = z
	.strictObject({
		system: z.literal('lanyard'),
		rules: z.string().max(40),
		practice: z.string().max(40),
		worker: z.strictObject({
			stature: quantity(LENGTH, 'stature').optional(),
			/** D-ring above the soles, standing upright. */
			dRingHeight: quantity(LENGTH, 'dRingHeight'),
			posture: z.enum(['standing', 'kneeling']).default('standing'),
			/** D-ring above the standing place in this posture; needed unless standing. */
			dRingNow: quantity(LENGTH, 'dRingHeight').optional(),
			/** Standing place above the walking surface: a step, a ladder rung, a bucket floor. */
			standingHeight: quantity(LENGTH, 'height').default(0),
			mass: z
				.strictObject({
					body: quantity(MASS, 'bodyMass'),
					clothing: quantity(MASS, 'mass').default(0),
					/** Harness, lanyard and personal protective equipment worn. */
					equipment: quantity(MASS, 'mass').default(0),
					/** Tools that hang on the person. */
					tools: quantity(MASS, 'mass').default(0),
					/** Tools tethered to the structure: they do not fall with the person. */
					tethered: quantity(MASS, 'mass').default(0)
				})
				.optional()
		}),
		lanyard: z.strictObject({
			/** Hook to hook, absorber closed. */
			length: quantity(LENGTH, 'lanyardLength'),
			capacity: quantity(MASS, 'mass').optional()
		}),
		absorber: z
			.strictObject({
				class: z.string().max(40).optional(),
				elongation: quantity(LENGTH, 'elongation').optional(),
				peakForce: quantity(FORCE, 'force').optional(),
				/** Greatest arrest force when wet or frozen. */
				conditionedForce: quantity(FORCE, 'force').optional(),
				averageForce: quantity(FORCE, 'force').optional(),
				massMin: quantity(MASS, 'mass').optional(),
				massMax: quantity(MASS, 'mass').optional(),
				freeFallMax: quantity(LENGTH, 'freeFall').optional(),
				/** The maker's stated deceleration distance for this mass and free fall. */
				statedDeceleration: quantity(LENGTH, 'elongation').optional(),
				condition: z.enum(['dry', 'wet-or-frozen']).default('dry'),
				/** Whether the maker designed and tested it for more free fall than the rule's usual limit. */
				testedForLongerFall: z.enum(['yes', 'no', 'unknown']).default('unknown')
			}, { error: (issue) => (issue.code === 'invalid_type' ? 'is no object; give an object, or null for a lanyard without an absorber' : undefined) })
			.nullable(),
		harness: z.strictObject({
			/** D-ring slide on the harness. */
			slide: quantity(LENGTH, 'stretch').optional(),
			/** Stretch of the harness webbing. */
			stretch: quantity(LENGTH, 'stretch').optional(),
			capacity: quantity(MASS, 'mass').optional()
		}),
		connectors: z
			.strictObject({
				compatible: z.enum(['yes', 'no', 'unknown']),
				capacity: quantity(MASS, 'mass').optional()
			})
			.default({ compatible: 'unknown' }),
		anchorage: z.strictObject({
			/** Of the structure's point, above the walking surface; below it negative. */
			height: quantity(LENGTH, 'height'),
			strength: quantity(FORCE, 'strength').optional(),
			persons: z.int().min(1).max(20).default(1),
			/** Designed and supervised by a qualified person with the safety factor the rule asks for. */
			engineered: z.enum(['yes', 'no', 'unknown']).default('unknown'),
			/** A strap or sling between structure and lanyard: the length that ends up hanging. */
			connector: z
				.strictObject({ length: quantity(LENGTH, 'connectorLength'), lies: z.enum(['hanging', 'slack']) })
				.nullable()
				.default(null)
		}),
		offset: z
			.strictObject({
				distance: quantity(LENGTH, 'offset'),
				direction: z.enum(['along-edge', 'away-from-edge'])
			})
			.default({ distance: 0, direction: 'along-edge' }),
		lineMeetsEdge: z.boolean().default(false),
		margin: quantity(LENGTH, 'margin').optional(),
		bodyCustom: z.enum(['d-ring-and-stretch', 'full-height']).optional(),
		below: z.strictObject({
			/** Walking surface down to the lower level. */
			depth: quantity(LENGTH, 'depth'),
			obstacles: z.array(obstacle).max(8).default([])
		}),
		rescue: z.enum(['arranged', 'not-arranged', 'unknown']).default('unknown')
	})
	.check((context) => {
		const plan = context.value;
		const say = (path: (string | number)[], message: string): void => {
			context.issues.push({ code: 'custom', path, message, input: plan });
		};
		const { worker, absorber, below } = plan;
		if (worker.stature !== undefined && worker.dRingHeight > worker.stature) {
			say(['worker', 'dRingHeight'], 'lies above the head; measure from the soles to the dorsal D-ring, and check worker.stature');
		}
		const assumed = practiceTable(plan.practice)?.bodyHeight;
		if (worker.stature === undefined && assumed !== undefined && worker.dRingHeight > toSI(assumed.value, assumed.unit)) {
			say(
				['worker', 'dRingHeight'],
				'lies above the body height that the practice table takes where none is given; give worker.stature, or check the D-ring height'
			);
		}
		if (worker.posture !== 'standing' && worker.dRingNow === undefined) {
			say(['worker', 'dRingNow'], 'is needed when not standing; give the D-ring height above the standing place in that posture');
		}
		if (worker.dRingNow !== undefined && worker.dRingNow > worker.dRingHeight) {
			say(['worker', 'dRingNow'], 'is above worker.dRingHeight; a posture can only lower the D-ring');
		}
		if (
			absorber?.massMin !== undefined &&
			absorber.massMax !== undefined &&
			absorber.massMin > absorber.massMax
		) {
			say(['absorber', 'massMin'], 'is above absorber.massMax; give the label range from light to heavy');
		}
		const ids = new Set<string>();
		below.obstacles.forEach((one, i) => {
			if (one.from > one.to) say(['below', 'obstacles', i, 'from'], 'lies beyond "to"; give the smaller of the two places as "from"');
			if (ids.has(one.id)) say(['below', 'obstacles', i, 'id'], 'is used twice; give every obstacle its own id');
			ids.add(one.id);
			if (one.present === 'always' && !one.there) {
				say(['below', 'obstacles', i, 'there'], 'contradicts "present"; an obstacle that is always present is there: give true');
			}
		});
	});

/** Systems that the design has room for but that are not built yet. */
export const LATER_SYSTEMS = [
	'self-retracting-device',
	'horizontal-lifeline',
	'vertical-lifeline',
	'travel-restraint',
	'over-edge'
] as const;

/** Systems outside the scope of this program. */
export const OUTSIDE_SYSTEMS = [
	'powered-platform',
	'climbing-rail',
	'rope-access',
	'positioning',
	'yielding-anchorage'
] as const;

/** A plan for a system that is refused by name; its details are not read. */
export const refusedPlanSchema = z.looseObject({ system: z.enum([...LATER_SYSTEMS, ...OUTSIDE_SYSTEMS]) });

/** Any plan document. */
export const planSchema = z.discriminatedUnion('system', [lanyardPlanSchema, refusedPlanSchema]);

/** A lanyard plan with SI numbers. */
export type LanyardPlan = z.output<typeof lanyardPlanSchema>;
export type RefusedPlan = z.output<typeof refusedPlanSchema>;
export type Plan = z.output<typeof planSchema>;
/** A plan as written: quantities are text with units. */
export type PlanDocument = z.input<typeof planSchema>;
