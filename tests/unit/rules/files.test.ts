import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
	ABSORBER_CLASSES,
	LABEL_FIELDS,
	PRACTICE_TABLES,
	RULE_TABLES,
	absorberClass,
	practiceTable,
	ruleTable
} from '#lib/rules/index.ts';
import { AbsorberClasses, LabelFields, PracticeTable, RuleTable } from '#lib/rules/schema.ts';

const shared = new URL('../../../shared/', import.meta.url);

interface SharedFile {
	readonly name: string;
	readonly json: unknown;
}

function filesOf(folder: string): SharedFile[] {
	return readdirSync(new URL(`${folder}/`, shared)).map((name) => ({
		name,
		json: JSON.parse(readFileSync(new URL(`${folder}/${name}`, shared), 'utf8')) as unknown
	}));
}

describe('the files of shared/', () => {
	it.each(filesOf('rules'))('rules/$name is a rule table named as its file, and is offered', ({ name, json }) => {
		const table = RuleTable.parse(json);
		expect(`${table.id}.json`).toBe(name);
		expect(ruleTable(table.id)).toEqual(table);
	});

	it.each(filesOf('practice'))('practice/$name is a practice table named as its file, and is offered', ({ name, json }) => {
		const table = PracticeTable.parse(json);
		expect(`${table.id}.json`).toBe(name);
		expect(practiceTable(table.id)).toEqual(table);
	});

	it('equipment holds absorber classes and label fields, each under an id of its own', () => {
		const files = new Map(filesOf('equipment').map(({ name, json }) => [name, json]));
		expect([...files.keys()].sort()).toEqual(['absorber-classes.json', 'label-fields.json']);
		const { classes } = AbsorberClasses.parse(files.get('absorber-classes.json'));
		const { fields } = LabelFields.parse(files.get('label-fields.json'));
		expect(classes).toEqual(ABSORBER_CLASSES);
		expect(fields).toEqual(LABEL_FIELDS);
		expect(new Set(classes.map((one) => one.id)).size).toBe(classes.length);
		expect(new Set(fields.map((one) => one.id)).size).toBe(fields.length);
		for (const one of classes) expect(absorberClass(one.id)).toEqual(one);
	});

	it('offers nothing that has no file', () => {
		expect(RULE_TABLES.map((table) => `${table.id}.json`).sort()).toEqual(filesOf('rules').map((file) => file.name).sort());
		expect(PRACTICE_TABLES.map((table) => `${table.id}.json`).sort()).toEqual(
			filesOf('practice')
				.map((file) => file.name)
				.sort()
		);
	});

	it('answers undefined, not an exception, for an id that an old record may still name', () => {
		expect(ruleTable('us-construction-1989')).toBeUndefined();
		expect(practiceTable('')).toBeUndefined();
		expect(absorberClass('csa-e5')).toBeUndefined();
	});
});
