import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RuleTable } from '#lib/rules/schema.ts';

const shared = new URL('../../../shared/', import.meta.url);

function filesOf(folder: string): { name: string; json: unknown }[] {
	return readdirSync(new URL(`${folder}/`, shared)).map((name) => ({
		name,
		json: JSON.parse(readFileSync(new URL(`${folder}/${name}`, shared), 'utf8')) as unknown
	}));
}

describe('the files of shared/', () => {
	it.each(filesOf('rules'))('rules/$name is a rule table named as its file', ({ name, json }) => {
		const table = RuleTable.parse(json);
		expect(`${table.id}.json`).toBe(name);
	});
});
