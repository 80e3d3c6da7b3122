import * as z from 'zod';
import { planSchema } from '#lib/arrest/schema.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';

/** The documents that have a schema. */
export const DOCUMENTS = ['plan', 'scenario'] as const;
export type DocumentName = (typeof DOCUMENTS)[number];

/**
 * @returns the JSON Schema of a document as one writes it. What no JSON Schema can say (a D-ring below the
 * head, asks that name each other) is checked when a document is read.
 */
export function jsonSchemaOf(name: DocumentName): object {
	const schema = name === 'plan' ? planSchema : scenarioSchema;
	// `any` for units and ids of givens: their lists are checked by functions, and stand in the description.
	return z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' });
}
