/** What a client may send of a lesson. */
import * as z from 'zod';
import { pictureAnswerSchema } from '#lib/findings/schema.ts';
import { LESSON_IDS } from '#lib/course/index.ts';
import { LONGEST_ENTRY } from '#lib/quantity/index.ts';

/** @reason more steps than any walk has. */
const MOST_STEPS = 24;

const base = {
	/** Made by the client, so that an event that is sent twice is stored once. */
	id: z.uuid().lowercase({ error: 'is not in small letters; give a UUID in small letters' }),
	lesson: z.enum(LESSON_IDS)
};

/** Which problem was answered. */
const problem = { task: z.string().min(1).max(80), seed: z.int().min(0) };

export const sentEventSchema = z.discriminatedUnion('kind', [
	z.strictObject({ ...base, kind: z.literal('shown'), step: z.int().min(0).max(40) }),
	z.strictObject({ ...base, kind: z.literal('went-on') }),
	z.strictObject({ ...base, ...problem, kind: z.literal('helped'), level: z.union([z.literal(1), z.literal(2), z.literal(3)]) }),
	/** A whole site problem; `site` is what is sent to the attempts, read by their schema. */
	z.strictObject({ ...base, ...problem, kind: z.literal('answered-site'), site: z.record(z.string(), z.unknown()) }),
	/** The blank steps of a half-done example. */
	z.strictObject({
		...base,
		...problem,
		kind: z.literal('answered-steps'),
		texts: z.array(z.string().max(LONGEST_ENTRY)).min(1).max(MOST_STEPS),
		language: z.enum(['en', 'es'])
	}),
	z.strictObject({ ...base, ...problem, kind: z.literal('answered-picture'), answer: pictureAnswerSchema })
]);

export type SentEvent = z.output<typeof sentEventSchema>;
