/**
 * A scenario as a document: an authored template from which site problems are drawn.
 * The one schema for shipped files, the store and imports. The browser gets the parsed scenario from
 * the server and never loads this file.
 */
import * as z from 'zod';
import { lanyardPlanSchema } from '#lib/arrest/schema.ts';
import { isUnitId, type UnitId } from '#lib/quantity/index.ts';
import { misfitsOf } from './misfits.ts';
import { slotsIn } from './story.ts';
import { isGivenId, type GivenId, type Topic } from '#lib/arrest/index.ts';

export const LANGUAGES = ['en', 'es'] as const;

/** Sites that the scene can draw behind a plan. */
export const BACKDROPS = [
	'bridge-bearing',
	'flat-roof-edge',
	'turbine-nacelle',
	'silo-top',
	'loading-dock',
	'stage-grid',
	'telecom-mast',
	'tank-roof',
	'lift-shaft',
	'formwork-deck'
] as const;

/** The cells that carry lessons, reports and the blueprint of the final check. */
export const CELLS = [
	'label-and-mass',
	'free-fall',
	'required-clearance',
	'available-and-verdict',
	'force-and-limits',
	'swing-and-path',
	'decisions'
] as const;

const slug = z
	.string()
	.regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, { error: 'is no short name; give small letters, digits and hyphens, such as "silo-top"' })
	.max(40);
/** Characters that steer a screen instead of standing on it: control characters, and those that turn the direction of what follows. */
const STEERING = /[\p{Cc}\p{Cs}\u202A-\u202E\u2066-\u2069]/u;
/** Something to be seen. */
const SEEN = /[\p{L}\p{N}\p{S}\p{P}]/u;

/** Words of an author: one paragraph, as it stands on the screen. */
function wording(of: z.ZodString, example: string): z.ZodString {
	return of
		.refine((words) => !STEERING.test(words), { error: 'has a line break, a control character or a mark that turns the direction of text; write plain words on one line' })
		.refine((words) => words === '' || SEEN.test(words), { error: `has nothing to read; write ${example}` });
}

const text = wording(z.string().min(1).max(600), 'a text');
const unit = z.custom<UnitId>((value) => typeof value === 'string' && isUnitId(value), {
	error: 'is no unit; give one such as "m", "ft", "in", "kg", "lb", "kN" or "lbf"'
});
/** @reason a tenth of a millimetre: finer than anything is measured on a site, coarser than the grid that values are rounded to. */
const FINEST_STEP = 1e-4;
/** @reason coarser than any answer is asked for, in any unit. */
const COARSEST_STEP = 1000;

const givenId = z.custom<GivenId>((value) => typeof value === 'string' && isGivenId(value), {
	error: 'is no id of a given; give one such as "lanyardLength", or "obstacleTop_" and the id of an obstacle'
});
const finite = z.number();
const amount = z.strictObject({ value: finite, unit });
const TOO_FINE = `is finer than anyone measures; give a coarser step, ${FINEST_STEP} or more`;
const gridStep = z.number().positive();
/** One step of an answer grid. */
const step = z.strictObject({ value: z.number().positive().min(FINEST_STEP, { error: TOO_FINE }).max(COARSEST_STEP), unit });

/** @reason as many obstacles as a plan can have. */
const MOST_OBSTACLES = 8;
/** @reason no fact has more states. */
const MOST_STATES = 4;
/** @reason each obstacle, and what else a story tells. */
const MOST_FACTS = 16;

/** A record of no more entries than this. */
function atMost(most: number): [(of: object) => boolean, { error: string }] {
	return [(of) => Object.keys(of).length <= most, { error: `has more than ${most} entries; leave out those that the plan does not have` }];
}

/** Words of a scenario in one language. `{name}` and `{id of a given}` are slots. */
const words = z.strictObject({
	title: text,
	/** Two short lines for the first screen. */
	lead: text,
	/** The rest of the story, a paragraph each. */
	body: z.array(text).max(6),
	/** Names of places in the drawing. */
	places: z.strictObject({
		surface: text,
		lowerLevel: text,
		anchorage: text,
		standing: text.optional(),
		otherFloor: text.optional()
	}),
	/** Names of the obstacles by id. */
	obstacles: z.record(z.string().max(24), wording(z.string().min(1).max(80), 'a name')).refine(...atMost(MOST_OBSTACLES)),
	/**
	 * A sentence for each state of a fact that the plan may be in, told at the end of the story; an empty
	 * one where that state needs no word. Told in this order.
	 */
	facts: z
		.record(z.string().max(40), z.record(z.string().max(20), wording(z.string().max(300), 'a sentence, or leave it empty')).refine(...atMost(MOST_STATES)))
		.refine(...atMost(MOST_FACTS))
		.default({})
});

/** Facts of a plan that a story tells, with the states they can be in. An obstacle's fact is `obstacle:` and its id. */
export const FACT_STATES = Object.freeze({
	rescue: ['arranged', 'not-arranged', 'unknown'],
	connectors: ['yes', 'no', 'unknown'],
	condition: ['dry', 'wet-or-frozen'],
	posture: ['standing', 'kneeling'],
	persons: ['1', '2', '3', '4'],
	engineered: ['yes', 'no', 'unknown'],
	'longer-fall': ['yes', 'no', 'unknown'],
	obstacle: ['there', 'can-come', 'none']
} as const);

/** @returns the states of a fact, or undefined for one that no plan with these obstacles has. */
function statesOf(fact: string, obstacles: readonly string[]): readonly string[] | undefined {
	const [kind = '', id] = fact.split(':');
	if (!Object.hasOwn(FACT_STATES, kind) || (kind === 'obstacle') !== (id !== undefined)) return undefined;
	if (id !== undefined && !obstacles.includes(id)) return undefined;
	return FACT_STATES[kind as keyof typeof FACT_STATES];
}

/** @reason more values than anyone can tell apart; keeps a hostile file cheap. */
const MOST_VALUES = 10_000;

/** What is wrong with a range as a grid. */
function gridIssues({ from, to, step }: { readonly from: number; readonly to: number; readonly step: number }) {
	const issue = (at: string, message: string, input: number) => ({ code: 'custom' as const, path: [at], message, input });
	if (to < from) return [issue('to', 'is below "from"; give the greater end of the range', to)];
	if (step > 0 && step < FINEST_STEP) return [issue('step', TOO_FINE, step)];
	return (to - from) / step > MOST_VALUES ? [issue('step', `gives more than ${MOST_VALUES} values; give a coarser step`, step)] : [];
}

/**
 * A range on a grid, the value landing in a given (or several: they get the same value). With `above` the
 * range counts from another given that was drawn before: a head above its D-ring, an anchorage above a head.
 */
const gridDraw = z
	.strictObject({
		sets: z.array(givenId).min(1).max(3),
		above: givenId.optional(),
		from: finite,
		to: finite,
		step: gridStep,
		unit
	})
	.check((context) => {
		context.issues.push(...gridIssues(context.value));
	});

/** A choice among stated amounts. */
const choiceDraw = z.strictObject({ sets: z.array(givenId).min(1).max(3), among: z.array(amount).min(1).max(20) });

/** A choice among facts; a value listed twice is twice as likely. */
const factDraw = z.discriminatedUnion('fact', [
	z.strictObject({ fact: z.literal('rescue'), among: z.array(z.enum(['arranged', 'not-arranged', 'unknown'])).min(1).max(20) }),
	z.strictObject({ fact: z.literal('connectors'), among: z.array(z.enum(['yes', 'no', 'unknown'])).min(1).max(20) }),
	z.strictObject({ fact: z.literal('condition'), among: z.array(z.enum(['dry', 'wet-or-frozen'])).min(1).max(20) }),
	z.strictObject({ fact: z.literal('posture'), among: z.array(z.enum(['standing', 'kneeling'])).min(1).max(20) }),
	z.strictObject({ fact: z.literal('persons'), among: z.array(z.int().min(1).max(4)).min(1).max(20) }),
	z.strictObject({
		fact: z.literal('obstacle'),
		id: z.string().max(24),
		among: z.array(z.enum(['there', 'can-come', 'none'])).min(1).max(20)
	})
]);

const draws = z.union([gridDraw, choiceDraw, factDraw]);

/** A number that stands in the problem and belongs in none of its formulas. */
const decoy = z.union([
	z.strictObject({ given: givenId, value: amount }),
	z
		.strictObject({ given: givenId, from: finite, to: finite, step: gridStep, unit })
		.check((context) => {
			context.issues.push(...gridIssues(context.value));
		}),
	/** The value of a bound of the scenario's rule table, by the limit's id. */
	z.strictObject({ given: givenId, limit: z.string().max(80) }),
	/** The margin of another practice table. */
	z.strictObject({ given: z.literal('otherMargin'), practice: z.string().max(40) }),
	/** The elongation of another absorber class. */
	z.strictObject({ given: z.literal('otherElongation'), class: z.string().max(40) })
]);

/** A bound that a drawn plan must keep, on a given or on a quantity. */
const constraint = z
	.strictObject({
		of: z.string().max(40),
		atLeast: amount.optional(),
		atMost: amount.optional()
	})
	.refine((c) => c.atLeast !== undefined || c.atMost !== undefined, { error: 'bounds nothing; give "atLeast" or "atMost"' });

/** Outcomes that a draw can aim for: a plan that passes, one that cannot be shown adequate, or one that fails by one topic. */
const AIMS = [
	'nothing',
	'unknown',
	'reach',
	'capacity',
	'free-fall',
	'clearance',
	'force',
	'deceleration',
	'anchorage-strength',
	'anchorage-height',
	'lanyard-length',
	'swing',
	'connectors',
	'edge',
	'rescue'
] as const satisfies readonly (Topic | 'nothing' | 'unknown')[];

/** What a share of the draws shall be: a plan that passes, or one that fails by just this check. */
const aim = z.strictObject({ fails: z.enum(AIMS), weight: z.int().min(1).max(100) });

const datum = z.enum(['anchorage', 'connector', 'surface', 'd-ring']);
const askBase = { id: slug, cell: z.enum(CELLS) };
const numberAsk = z.discriminatedUnion('quantity', [
	z.strictObject({
		...askBase,
		kind: z.literal('number'),
		quantity: z.enum(['requiredClearance', 'availableClearance']),
		datum,
		precision: step
	}),
	z.strictObject({
		...askBase,
		kind: z.literal('number'),
		quantity: z.enum(['freeFall', 'swingDrop', 'massAttached', 'lowestCapacity', 'arrestForce', 'expectedElongation', 'bodyWeights', 'reachDistance']),
		precision: step
	})
]);
const decisionAsk = z.strictObject({ ...askBase, kind: z.literal('decision'), with: z.array(slug).min(1).max(6) });
export const askSchema = z.discriminatedUnion('kind', [numberAsk, decisionAsk]);

/** What makes a scenario easy or hard, fixed by its author. */
const drivers = z.strictObject({
	steps: z.int().min(1).max(12),
	decoys: z.int().min(0).max(12),
	unitChange: z.boolean(),
	signChange: z.boolean()
});

export const scenarioSchema = z
	.strictObject({
		id: slug,
		version: z.int().min(1).max(10_000),
		backdrop: z.enum(BACKDROPS),
		/** How lengths are written and answered. */
		units: z.enum(['metric', 'us-decimal', 'us-inch']),
		/** Names of invented people, one of which is drawn. */
		people: z.array(wording(z.string().min(1).max(40), 'a name')).min(1).max(20),
		words: z.strictObject({ en: words, es: words }),
		/** A whole plan of this scenario; the draws change parts of it. */
		base: lanyardPlanSchema,
		draws: z.array(draws).min(1).max(40),
		decoys: z.array(decoy).max(12).default([]),
		constraints: z.array(constraint).max(20).default([]),
		aims: z.array(aim).min(1).max(10),
		/** Pairs of slips that give equal numbers because their expressions are the same; at most three. */
		equalSlips: z.array(z.tuple([z.string().max(60), z.string().max(60)])).max(3).default([]),
		asks: z.array(askSchema).min(1).max(6),
		difficulty: z.enum(['easy', 'middle', 'hard']),
		drivers
	})
	.check((context) => {
		const scenario = context.value;
		const say = (path: (string | number)[], message: string): void => {
			context.issues.push({ code: 'custom', path, message, input: scenario });
		};
		const asks = new Set<string>();
		scenario.asks.forEach((ask, i) => {
			if (asks.has(ask.id)) say(['asks', i, 'id'], 'is used twice; give every ask its own id');
			if (ask.kind === 'decision') {
				for (const id of ask.with) if (!asks.has(id)) say(['asks', i, 'with'], `names "${id}", which is no ask before it; give ids of asks that stand before it`);
			}
			asks.add(ask.id);
		});
		const drawn = new Set<string>();
		scenario.draws.forEach((draw, i) => {
			if ('fact' in draw) return;
			if ('above' in draw && draw.above !== undefined && !drawn.has(draw.above)) {
				say(['draws', i, 'above'], 'is set by no draw before this one; give a given that an earlier draw sets');
			}
			for (const id of draw.sets) drawn.add(id);
		});
		for (const { path, message } of misfitsOf(scenario)) say([...path], message);
		const obstacles = scenario.base.below.obstacles.map((one) => one.id);
		for (const language of LANGUAGES) {
			for (const id of obstacles) {
				if (scenario.words[language].obstacles[id] === undefined) {
					say(['words', language, 'obstacles', id], 'is missing; give the obstacle a name in this language');
				}
			}
			for (const id of Object.keys(scenario.words[language].obstacles)) {
				if (!obstacles.includes(id)) say(['words', language, 'obstacles', id], 'names an obstacle that the base plan does not have; leave it out');
			}
			const { title, lead, body, facts } = scenario.words[language];
			const texts: [(string | number)[], string][] = [
				[['title'], title],
				[['lead'], lead],
				...body.map((one, i): [(string | number)[], string] => [['body', i], one])
			];
			for (const [fact, sentences] of Object.entries(facts)) {
				const states = statesOf(fact, obstacles);
				if (states === undefined) say(['words', language, 'facts', fact], `is no fact of the plan; give one of ${[...Object.keys(FACT_STATES).filter((one) => one !== 'obstacle'), ...obstacles.map((one) => `obstacle:${one}`)].join(', ')}`);
				for (const [state, sentence] of Object.entries(sentences)) {
					const path = ['facts', fact, state];
					texts.push([path, sentence]);
					if (states !== undefined && !states.includes(state)) {
						say(['words', language, ...path], `is no state of this fact; give one of ${states.join(', ')}`);
					}
				}
			}
			for (const [path, of] of texts) {
				for (const slot of slotsIn(of)) {
					if (slot !== 'name' && !isGivenId(slot)) {
						say(['words', language, ...path], `has the slot "{${slot}}"; use {name} or the id of a given in braces`);
					}
				}
			}
		}
	});

export type ScenarioDocument = z.input<typeof scenarioSchema>;
/** A parsed scenario: the base plan in SI. */
export type Scenario = z.output<typeof scenarioSchema>;
export type Ask = z.output<typeof askSchema>;
export type NumberAsk = Extract<Ask, { kind: 'number' }>;
export type DecisionAsk = Extract<Ask, { kind: 'decision' }>;
export type Cell = (typeof CELLS)[number];
export type BackdropId = (typeof BACKDROPS)[number];
