/** Nothing that is wrong with a plan is passed over, and each fault is told by field, fault and remedy. */
import { describe, expect, it } from 'vitest';
import { analyse } from '#lib/arrest/index.ts';
import type { InputProblem } from '#lib/server/index.ts';
import { readPlan } from '../../src/cli/underfoot/files.ts';
import { jsonSchemaOf } from '../../src/cli/underfoot/schema.ts';
import { FULL_PLAN } from '../support/documents.ts';
import { fieldOf, mutationsOf, pathsOf, withValue, type Mutation, type Path } from '../support/mutations.ts';

/** Fields that a plan may leave out; everything else is asked for. */
const OPTIONAL = new Set([
	'worker.stature', 'worker.posture', 'worker.standingHeight', 'worker.mass', 'worker.mass.clothing', 'worker.mass.equipment',
	'worker.mass.tools', 'worker.mass.tethered', 'lanyard.capacity', 'absorber.class', 'absorber.elongation', 'absorber.peakForce',
	'absorber.conditionedForce', 'absorber.averageForce', 'absorber.massMin', 'absorber.massMax', 'absorber.freeFallMax',
	'absorber.statedDeceleration', 'absorber.condition', 'absorber.testedForLongerFall', 'harness.slide', 'harness.stretch',
	'harness.capacity', 'connectors', 'connectors.capacity', 'anchorage.strength', 'anchorage.persons', 'anchorage.engineered',
	'anchorage.connector', 'offset', 'lineMeetsEdge', 'margin', 'bodyCustom', 'below.obstacles', 'below.obstacles.0',
	'below.obstacles.0.there', 'rescue'
]);

/** Every mutation of the full plan that a reader must not take. */
function* wrongPlans(): Generator<Mutation> {
	for (const mutation of mutationsOf(FULL_PLAN)) {
		if (mutation.how === 'left out' && OPTIONAL.has(fieldOf(mutation.path))) continue;
		yield mutation;
	}
}

function problemsWith(document: unknown): readonly InputProblem[] {
	const read = readPlan(document);
	return read.kind === 'refused' ? read.problems : [];
}

/** The field that a mutation must be named by. */
function expectedField({ path }: Mutation): string {
	return path.length === 0 ? 'plan' : fieldOf(path);
}

/** All properties that the JSON Schema of a lanyard plan has, lists by their first place. */
function propertiesOf(schema: unknown, at: Path = []): Path[] {
	if (typeof schema !== 'object' || schema === null) return [];
	const found: Path[] = [];
	const { properties, items, anyOf, oneOf } = schema as Record<string, unknown>;
	for (const [key, one] of Object.entries(properties ?? {})) found.push([...at, key], ...propertiesOf(one, [...at, key]));
	if (items !== undefined) found.push([...at, 0], ...propertiesOf(items, [...at, 0]));
	for (const one of [anyOf, oneOf].flat()) found.push(...propertiesOf(one, at));
	return found;
}

describe('a plan', () => {
	it('is read when nothing is wrong with it, and so is each that only leaves out what may be left out', () => {
		expect(problemsWith(FULL_PLAN)).toEqual([]);
		for (const mutation of mutationsOf(FULL_PLAN)) {
			if (mutation.how !== 'left out' || !OPTIONAL.has(fieldOf(mutation.path))) continue;
			// Without a stature the practice table must give one that the D-ring stays under; Europe gives none.
			expect(problemsWith(mutation.document), fieldOf(mutation.path)).toEqual([]);
		}
	});

	it('of the test uses every field that the schema has', () => {
		const used = new Set(pathsOf(FULL_PLAN).map(fieldOf));
		const unused = propertiesOf(jsonSchemaOf('plan')).map(fieldOf).filter((field) => !used.has(field));
		expect(unused).toEqual([]);
	});

	it('is refused for every wrong field, by its name, with what is wrong and what would be right', () => {
		let seen = 0;
		for (const mutation of wrongPlans()) {
			const told = problemsWith(mutation.document);
			const what = `${expectedField(mutation)}: ${mutation.how}`;
			expect(told.map((problem) => problem.field), what).toContain(expectedField(mutation));
			for (const problem of told) {
				expect(problem.problem, what).toMatch(/^is ./);
				expect(problem.remedy, what).toMatch(/^(give|write|leave|use|check|measure|a posture|an obstacle) /);
				expect(JSON.stringify(problem).length, what).toBeLessThan(600);
				expect(JSON.stringify(problem), what).not.toMatch(/Invalid|undefined|\[object|Error|\.ts:/);
			}
			seen += 1;
		}
		expect(seen).toBeGreaterThan(700);
	});

	it.each([
		['a D-ring above the head', ['worker', 'dRingHeight'], '1.9 m', 'lies above the head'],
		['a lanyard of 3 km', ['lanyard', 'length'], '3 km', 'is not within what it can be'],
		['a kneeling D-ring above the standing one', ['worker', 'dRingNow'], '1.6 m', 'is above worker.dRingHeight'],
		['a label from heavy to light', ['absorber', 'massMin'], '150 kg', 'is above absorber.massMax'],
		['an obstacle that ends before it begins', ['below', 'obstacles', 0, 'from'], '0.9 m', 'lies beyond "to"'],
		['an obstacle always there that is not there', ['below', 'obstacles', 0, 'there'], false, 'contradicts "present"', ['below', 'obstacles', 0, 'present'], 'always']
	] as const)('that is absurd is refused: %s', (_, path, value, fault, alsoAt?: Path, also?: string) => {
		const document = alsoAt === undefined ? FULL_PLAN : withValue(FULL_PLAN, alsoAt, also);
		const told = problemsWith(withValue(document, path, value));
		expect(told).toHaveLength(1);
		expect(told[0]).toMatchObject({ field: fieldOf(path), problem: expect.stringContaining(fault) });
	});

	it('asks for the kneeling D-ring by name', () => {
		expect(problemsWith(withValue(FULL_PLAN, ['worker', 'dRingNow'], undefined))).toEqual([
			{ field: 'worker.dRingNow', problem: 'is missing', remedy: 'give the D-ring height above the standing place in that posture' }
		]);
	});

	it('with a D-ring above the body height that its practice table assumes is refused: the stature must be given', () => {
		const tall = withValue(withValue(FULL_PLAN, ['practice'], 'us-three-foot-full-height'), ['worker', 'stature'], undefined);
		const told = problemsWith(withValue(tall, ['worker', 'dRingHeight'], '1.9 m'));
		expect(told).toEqual([
			{
				field: 'worker.dRingHeight',
				problem: 'is "1.9 m" and lies above the body height that the practice table takes where none is given',
				remedy: 'give worker.stature, or check the D-ring height'
			}
		]);
	});

	it.each([
		['rules', 'moon'],
		['practice', 'moon'],
		['absorber.class', 'moon']
	])('that names a table which does not exist is refused by the engine: %s', (field, id) => {
		const read = readPlan(withValue(FULL_PLAN, field.split('.'), id));
		if (read.kind === 'refused') throw new Error('The plan was not read');
		expect(analyse(read.value)).toEqual({ kind: 'refused', refusal: { why: 'no-such-table', field, id } });
	});

	it('of a system that is not judged is read whatever else it holds, so that it is refused by its name', () => {
		expect(problemsWith({ system: 'rope-access', anything: MEGABYTE_OF_KEYS })).toEqual([]);
	});
});

const MEGABYTE_OF_KEYS = Object.fromEntries(Array.from({ length: 1000 }, (_, i) => [`key-${i}`, i]));
