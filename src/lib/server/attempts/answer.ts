import * as z from 'zod';
import type { Answer } from '#lib/grading/index.ts';
import { LONGEST_ENTRY } from '#lib/quantity/index.ts';
import type { Ask, Scenario } from '#lib/scenario/index.ts';

/** The most tries of a seed that any draw makes. @reason bounds the number, draws decide whether it is right. */
const MOST_TRIES = 10_000;

const version = z.int().min(1).max(1_000_000);

/** What every answered problem says beside its answers: where the problem came from, and in which language it was read. */
const origin = {
	/** Made by the client, so that an answer that is sent twice is stored once. */
	id: z.uuid().lowercase({ error: 'is not in small letters; give a UUID in small letters' }),
	scenario: z.string().min(1).max(40),
	version,
	drawVersion: version,
	slipSetVersion: version,
	seed: z.int().min(0),
	acceptedTry: z.int().min(0).max(MOST_TRIES),
	/** Ids of the asks that were asked, in the scenario's order, where not all were. */
	asks: z.array(z.string().min(1).max(40)).min(1).max(6).optional(),
	language: z.enum(['en', 'es'])
};

const numberAnswer = z.discriminatedUnion('kind', [
	z.strictObject({ kind: z.literal('number'), text: z.string().max(LONGEST_ENTRY) }),
	z.strictObject({ kind: z.literal('not-stated') })
]);

const decisionAnswer = z.strictObject({
	kind: z.literal('decision'),
	decision: z.enum(['tie-off', 'do-not-tie-off'])
});

/** An answered problem as it is sent, before it is known which scenario it is of. */
export const sentSchema = z.strictObject({ ...origin, answers: z.record(z.string(), z.unknown()) });

/** An answered problem as it is sent. */
export interface SentAnswers {
	readonly id: string;
	readonly scenario: string;
	readonly version: number;
	readonly drawVersion: number;
	readonly slipSetVersion: number;
	readonly seed: number;
	readonly acceptedTry: number;
	readonly asks?: readonly string[] | undefined;
	readonly language: 'en' | 'es';
	/** By the id of the ask; everything that was asked is answered. */
	readonly answers: Readonly<Record<string, Answer>>;
}

const made = new WeakMap<Scenario, Map<string, z.ZodType<SentAnswers>>>();

/**
 * Which asks of a scenario may be asked without the others: any, but a decision only with its numbers.
 * @returns the asks in the scenario's order, or undefined if the ids are no such part
 */
export function partOf(scenario: Scenario, ids: readonly string[]): readonly Ask[] | undefined {
	const asks = scenario.asks.filter((ask) => ids.includes(ask.id));
	const whole = asks.length === ids.length && asks.every((ask, i) => ask.id === ids[i]);
	const decided = asks.every((ask) => ask.kind !== 'decision' || ask.with.every((id) => ids.includes(id)));
	return whole && decided && asks.length > 0 ? asks : undefined;
}

/** The schema of what is sent for asks of a scenario: an answer of the right kind for each of them, and nothing else. */
export function sentSchemaOf(scenario: Scenario, asks: readonly Ask[] = scenario.asks): z.ZodType<SentAnswers> {
	const key = asks.map((ask) => ask.id).join(' ');
	const schemas = made.get(scenario) ?? new Map<string, z.ZodType<SentAnswers>>();
	made.set(scenario, schemas);
	const before = schemas.get(key);
	if (before !== undefined) return before;
	const schema = z.strictObject({ ...origin, answers: sentSchemaPart(asks) });
	schemas.set(key, schema);
	return schema;
}

/** The schema of the answers alone: one of the right kind for each ask, and nothing else. */
export function sentSchemaPart(asks: readonly Ask[]): z.ZodType<Readonly<Record<string, Answer>>> {
	return z.strictObject(
		Object.fromEntries(asks.map((ask): [string, z.ZodType<Answer>] => [ask.id, ask.kind === 'decision' ? decisionAnswer : numberAnswer]))
	);
}
