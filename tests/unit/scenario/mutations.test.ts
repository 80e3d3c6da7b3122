/** Broken scenarios made from good ones: an inspection finds each, and names the very field that was broken. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { inspect, type Inspection } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import { MUTATIONS, mutated, names } from './mutations.ts';

/** @reason shares of faults and warnings are far from their limits: a few dozen draws tell. */
const DRAWS = 40;

function documentOf(id: string): unknown {
	return JSON.parse(readFileSync(new URL(`../../../src/lib/course/scenarios/${id}.json`, import.meta.url), 'utf8'));
}

function inspected(document: unknown): Inspection {
	return inspect(scenarioSchema.parse(document), { draws: DRAWS });
}

const inspectedBefore = new Map<string, Inspection>();

function soundOne(id: string): Inspection {
	const before = inspectedBefore.get(id) ?? inspected(documentOf(id));
	inspectedBefore.set(id, before);
	return before;
}

describe('a shipped scenario', () => {
	it.each(shippedScenarios().map((scenario) => scenario.id))('%s has no fault', (id) => {
		expect(soundOne(id).findings.filter((one) => one.severity === 'fault')).toEqual([]);
	});
});

describe('a scenario in which', () => {
	it.each(MUTATIONS.map((one) => [one.name, one] as const))('%s is found at the field', (_, mutation) => {
		const sound = documentOf(mutation.of);
		const before = soundOne(mutation.of).findings.filter((one) => one.code === mutation.code && names(one.path, mutation.path));
		expect(before.filter((one) => one.severity !== 'note')).toEqual([]);
		const { findings } = inspected(mutated(sound, mutation));
		const told = findings.map((one) => `${one.severity} ${one.code} ${one.path.join('.')}`);
		const found = findings.filter((one) => one.severity !== 'note' && one.code === mutation.code && names(one.path, mutation.path));
		expect(found, told.join('\n')).not.toEqual([]);
	});
});
