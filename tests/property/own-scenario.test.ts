/** Scenarios put together from parts of others, as authors and hostile files do: what is read can be drawn, told and inspected, and never throws. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SHIPPED_IDS } from '#lib/course/index.ts';
import { chanceOf, draw, drawTry, inspect, problemOf, sample, storyOf, type Scenario } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import { FULL_SCENARIO } from '../support/documents.ts';

type Document = Record<string, unknown> & { readonly base: Record<string, unknown>; readonly words: Record<'en' | 'es', Record<string, unknown>> };

function shipped(id: string): Document {
	return JSON.parse(readFileSync(new URL(`../../src/lib/course/scenarios/${id}.json`, import.meta.url), 'utf8')) as Document;
}

const documents: readonly Document[] = [structuredClone(FULL_SCENARIO), ...SHIPPED_IDS.map(shipped)];
const one = fc.constantFrom(...documents);

function listOf(key: string): readonly unknown[] {
	return documents.flatMap((document) => (Array.isArray(document[key]) ? (document[key] as unknown[]) : []));
}

/** Some of the entries that any document has in a list. */
function some(key: string, minLength: number, maxLength: number) {
	return fc.array(fc.constantFrom(...listOf(key)), { minLength, maxLength });
}

const hostileText = fc.constantFrom('{name} <script>alert(1)</script>', '{name} {bodyMass} {obstacleTop_beam} {connectorLength} {otherMargin}', '{name}', '${x} {name} {{', '{name} … ﷽ 👷');
const bound = fc.record({ value: fc.oneof(fc.constantFrom(0, -1e308, 1e308, 5e-324), fc.double({ noNaN: true, noDefaultInfinity: true })), unit: fc.constantFrom('m', 'ft', 'kg', 'kN', '1') });
const constraint = fc.record(
	{ of: fc.constantFrom('rise', 'freeFall', 'requiredClearance', 'requiredClearance@anchorage', 'speedAtObstacle@beam', 'extraStretch', 'highestBelow', 'fallSpeed', 'bodyMass', 'obstacleTop_beam'), atLeast: bound, atMost: bound },
	{ requiredKeys: ['of'] }
);
const numberAsk = fc.record({
	id: fc.constantFrom('a', 'b'),
	cell: fc.constant('free-fall'),
	kind: fc.constant('number'),
	quantity: fc.constantFrom('freeFall', 'swingDrop', 'massAttached', 'lowestCapacity', 'arrestForce', 'expectedElongation', 'bodyWeights', 'reachDistance'),
	precision: fc.record({ value: fc.constantFrom(0.0001, 0.01, 1, 1000), unit: fc.constantFrom('m', 'ft', 'kg', 'kN', '1') })
});

/** A document whose parts come from many. */
const patched = fc
	.record({
		of: one,
		base: fc.oneof({ weight: 2, arbitrary: fc.constant(undefined) }, { weight: 1, arbitrary: one.map((other) => other.base) }),
		without: fc.array(fc.constantFrom('absorber', 'connectors', 'offset', 'margin', 'rescue'), { maxLength: 2 }),
		draws: fc.oneof(fc.constant(undefined), some('draws', 1, 6), some('draws', 1, 14)),
		decoys: fc.oneof(fc.constant(undefined), some('decoys', 0, 3)),
		constraints: fc.oneof(fc.constant(undefined), fc.array(constraint, { maxLength: 3 })),
		asks: fc.oneof(fc.constant(undefined), fc.array(numberAsk, { minLength: 1, maxLength: 2 })),
		aims: fc.oneof(fc.constant(undefined), some('aims', 1, 3)),
		lead: fc.oneof(fc.constant(undefined), hostileText)
	})
	.map(({ of, base, without, lead, ...lists }) => {
		const plan: Record<string, unknown> = { ...(base ?? of.base) };
		for (const part of without) {
			if (part === 'absorber') plan['absorber'] = null;
			else Reflect.deleteProperty(plan, part);
		}
		const words = lead === undefined ? of.words : { ...of.words, en: { ...of.words.en, lead } };
		const given = Object.entries(lists).filter(([, value]) => value !== undefined);
		return { ...of, ...Object.fromEntries(given), base: plan, words };
	});

/** Draws a few tries and tells them; then looks at all of it. */
function use(scenario: Scenario): number {
	for (let t = 0; t < 4; t += 1) {
		const problem = problemOf(scenario, sample(scenario, chanceOf(['own', t])), t, 0);
		expect(storyOf(problem, 'en').paragraphs.length).toBeGreaterThanOrEqual(0);
		drawTry(scenario, t, 0);
	}
	const { findings, drawn } = inspect(scenario, { draws: 2 });
	for (const { path } of findings) expect(path.length).toBeGreaterThan(0);
	return drawn;
}

describe('a scenario put together from parts', () => {
	it('that is read never makes a draw, a story or an inspection fail', () => {
		let read = 0;
		fc.assert(
			fc.property(patched, (document) => {
				const parsed = scenarioSchema.safeParse(document);
				if (!parsed.success) return;
				read += 1;
				use(parsed.data);
			}),
			{ numRuns: 400 }
		);
		expect(read).toBeGreaterThan(15);
	});

	it('with a bad number anywhere is refused, or works', () => {
		const numbers = [NaN, Infinity, -Infinity, 1e308, -1e308, 5e-324, 1e-9, 1e9];
		let refused = 0;
		for (const [i, value] of (FULL_SCENARIO.draws as readonly object[]).flatMap((_, at) => numbers.map((number) => [at, number] as const))) {
			for (const key of ['from', 'to', 'step']) {
				const entry = FULL_SCENARIO.draws[i];
				if (entry === undefined || !(key in entry)) continue;
				const draws = FULL_SCENARIO.draws.map((old, at) => (at === i ? { ...old, [key]: value } : old));
				const parsed = scenarioSchema.safeParse({ ...FULL_SCENARIO, draws });
				if (parsed.success) expect(draw({ ...parsed.data, aims: parsed.data.aims.slice(0, 1) }, 1).tries).toBeGreaterThan(0);
				else refused += 1;
			}
		}
		expect(refused).toBeGreaterThan(30);
	});
});
