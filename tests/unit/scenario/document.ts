/** A small whole scenario as a document, for tests that change one thing of it. */
import shelf from './shelf.json' with { type: 'json' };
import { scenarioSchema, type Scenario, type ScenarioDocument } from '#lib/scenario/schema.ts';

export type Document = typeof shelf;

/** @returns a copy of the document, changed. */
export function documentWith(change: (document: Document) => object | undefined = () => undefined): ScenarioDocument {
	const copy = structuredClone(shelf);
	return (change(copy) ?? copy) as ScenarioDocument;
}

/** @returns the parsed scenario of the changed document. @throws ZodError if it breaks the schema. */
export function scenarioWith(change?: (document: Document) => object | undefined): Scenario {
	return scenarioSchema.parse(documentWith(change));
}

/** @returns what the schema says against the changed document, by path. */
export function refusals(change: (document: Document) => object | undefined): Record<string, string> {
	const result = scenarioSchema.safeParse(documentWith(change));
	return Object.fromEntries((result.error?.issues ?? []).map((issue) => [issue.path.join('.'), issue.message]));
}
