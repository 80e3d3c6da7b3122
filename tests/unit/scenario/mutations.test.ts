/** Broken scenarios made from good ones: an inspection finds each, and names the very field that was broken. */
import { describe, expect, it } from 'vitest';
import { inspect, type Inspection } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import { shippedDocument } from '../../support/shipped-documents.ts';
import { MUTATIONS, mutated, names } from './mutations.ts';

/** @reason shares of faults and warnings are far from their limits: a few dozen draws tell. */
const DRAWS = 40;

function inspected(document: unknown): Inspection {
	return inspect(scenarioSchema.parse(document), { draws: DRAWS });
}

const inspectedBefore = new Map<string, Inspection>();

function soundOne(id: string): Inspection {
	const before = inspectedBefore.get(id) ?? inspected(shippedDocument(id));
	inspectedBefore.set(id, before);
	return before;
}

describe('unbroken', () => {
	it.each([...new Set(MUTATIONS.map((one) => one.of))])('%s has no fault', (id) => {
		expect(soundOne(id).findings.filter((one) => one.severity === 'fault')).toEqual([]);
	});
});

describe('a scenario in which', () => {
	it.each(MUTATIONS.map((one) => [one.name, one] as const))('%s is found at the field', (_, mutation) => {
		const sound = shippedDocument(mutation.of);
		const before = soundOne(mutation.of).findings.filter((one) => one.code === mutation.code && names(one.path, mutation.path));
		expect(before.filter((one) => one.severity !== 'note')).toEqual([]);
		const { findings } = inspected(mutated(sound, mutation));
		const told = findings.map((one) => `${one.severity} ${one.code} ${one.path.join('.')}`);
		const found = findings.filter((one) => one.severity !== 'note' && one.code === mutation.code && names(one.path, mutation.path));
		expect(found, told.join('\n')).not.toEqual([]);
	});
});
