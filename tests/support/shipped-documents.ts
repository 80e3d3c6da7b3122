/** The shipped scenarios as their files hold them: documents, not parsed. */
import { readFileSync, readdirSync } from 'node:fs';
import type { JsonObject } from '../../src/routes/crew/scenarios/[scenario]/model/document.ts';

const FOLDER = new URL('../../src/lib/course/scenarios/', import.meta.url);

export const SHIPPED_IDS: readonly string[] = readdirSync(FOLDER)
	.filter((file) => file.endsWith('.json'))
	.map((file) => file.slice(0, -'.json'.length));

/** @returns the document of a shipped scenario, a new one each time. */
export function shippedDocument(id: string): JsonObject {
	return JSON.parse(readFileSync(new URL(`${id}.json`, FOLDER), 'utf8')) as JsonObject;
}
