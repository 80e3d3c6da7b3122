import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
	ABSORBER_CLASSES,
	LABEL_FIELDS,
	PRACTICE_TABLES,
	RECORD_LAWS,
	RULE_TABLES,
	absorberClass,
	practiceTable,
	recordLaw,
	ruleTable
} from '#lib/rules/index.ts';
import { AbsorberClasses, LabelFields, PracticeTable, RecordLaws, RuleTable } from '#lib/rules/schema.ts';

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

	it('records holds what law asks of records, once for each rule table', () => {
		const files = new Map(filesOf('records').map(({ name, json }) => [name, json]));
		expect([...files.keys()]).toEqual(['law.json']);
		const { records } = RecordLaws.parse(files.get('law.json'));
		expect(records).toEqual(RECORD_LAWS);
		// Every organisation chooses one of the tables, and its completions need a validity; own reasoning.
		expect(records.map((one) => one.rules)).toEqual(RULE_TABLES.map((table) => table.id));
		for (const one of records) expect(recordLaw(one.rules)).toEqual(one);
		expect(recordLaw('us-construction-1989')).toBeUndefined();
	});

	it('takes no period of law from memory', () => {
		// shared/README.md: what is from memory decides nothing.
		const [ontario] = RECORD_LAWS.filter((one) => one.rules === 'ca-ontario');
		const source = { title: 'Law as somebody remembers it', where: 'the law itself' };
		const remembered = { ...ontario, validity: { ...ontario?.validity, source, mark: 'memory', confidence: 'high' } };
		expect(RecordLaws.safeParse({ records: [ontario] }).success).toBe(true);
		expect(RecordLaws.safeParse({ records: [remembered] }).error?.issues.map((one) => one.path.join('.'))).toEqual(['records.0.validity.months']);
	});

	it('says of law what was read of it: three years in Ontario, none fixed by OSHA, and what its record must hold', () => {
		// O. Reg. 297/13, ss. 6 to 10: three years from completion of an approved programme; read.
		expect(recordLaw('ca-ontario')?.validity.months).toBe(36);
		expect(recordLaw('ca-ontario')?.notProofOf.map((one) => one.what)).toEqual(['approved-programme']);
		// Alberta OHS Code 2009, s. 141: practice is among the topics; read.
		expect(recordLaw('ca-alberta')?.notProofOf.map((one) => one.what)).toEqual(['practice']);
		// 29 CFR 1926.503(b)(1), (c): identity, days, signature; the day of judging for prior training; no period; read.
		expect(recordLaw('us-construction')?.validity.months).toBeNull();
		expect(recordLaw('us-construction')?.contents.asked).toEqual(['worker', 'training-days', 'signature-of-trainer-or-employer', 'judged-day']);
		// 29 CFR 1910.30: no written certification is asked; read.
		expect(recordLaw('us-general-industry')?.contents.asked).toEqual([]);
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
