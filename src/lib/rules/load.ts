/**
 * The files of shared/, looked up by id. They are parts of the program, checked against their
 * schema by tests/unit/rules/files.test.ts and not again at run time.
 */
import absorberClasses from '#shared/equipment/absorber-classes.json' with { type: 'json' };
import labelFields from '#shared/equipment/label-fields.json' with { type: 'json' };
import australia from '#shared/practice/australia.json' with { type: 'json' };
import canada from '#shared/practice/canada.json' with { type: 'json' };
import europe from '#shared/practice/europe.json' with { type: 'json' };
import japan from '#shared/practice/japan.json' with { type: 'json' };
import usThreeFoot from '#shared/practice/us-three-foot-full-height.json' with { type: 'json' };
import usTwoFoot from '#shared/practice/us-two-foot.json' with { type: 'json' };
import recordLaws from '#shared/records/law.json' with { type: 'json' };
import au from '#shared/rules/au.json' with { type: 'json' };
import caAlberta from '#shared/rules/ca-alberta.json' with { type: 'json' };
import caOntario from '#shared/rules/ca-ontario.json' with { type: 'json' };
import caQuebec from '#shared/rules/ca-quebec.json' with { type: 'json' };
import eu from '#shared/rules/eu.json' with { type: 'json' };
import uk from '#shared/rules/uk.json' with { type: 'json' };
import usConstruction from '#shared/rules/us-construction.json' with { type: 'json' };
import usGeneralIndustry from '#shared/rules/us-general-industry.json' with { type: 'json' };
import type { AbsorberClass, Check, CitedValue, LabelField, PracticeTable, RecordLaw, RuleTable } from './schema.ts';

/** Freezes all the way down: a table is shared by everyone who looks it up. */
function frozen<T>(value: T): T {
	if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
		Object.freeze(value);
		Object.values(value).forEach(frozen);
	}
	return value;
}

/** Takes a file for what its schema says it is; the test named above shows that it is. */
function trusted<T>(file: unknown): T {
	return frozen(file) as T;
}

/** All rule tables, in the order in which they are offered. */
export const RULE_TABLES = trusted<readonly RuleTable[]>([
	usConstruction,
	usGeneralIndustry,
	caOntario,
	caAlberta,
	caQuebec,
	eu,
	uk,
	au
]);

/** All practice tables, in the order in which they are offered; the last is a cross-check only. */
export const PRACTICE_TABLES = trusted<readonly PracticeTable[]>([
	usTwoFoot,
	usThreeFoot,
	canada,
	europe,
	australia,
	japan
]);

/** Classes of energy absorbers as their standards define them; a label's own numbers go before. */
export const ABSORBER_CLASSES = trusted<readonly AbsorberClass[]>(absorberClasses.classes);

/** What labels and instructions state, with the standard that asks for it. */
export const LABEL_FIELDS = trusted<readonly LabelField[]>(labelFields.fields);

/** What law asks of records of training, one for each rule table. Marked as pure, so that pages that show none do not load it. */
export const RECORD_LAWS = /* @__PURE__ */ trusted<readonly RecordLaw[]>(recordLaws.records);

/** What the law of a rule table asks of records of training; undefined for a table that there is none of. */
export function recordLaw(rules: string): RecordLaw | undefined {
	return RECORD_LAWS.find((one) => one.rules === rules);
}

/** The rule table of that id; undefined when there is none, as an old record may name one that was withdrawn. */
export function ruleTable(id: string): RuleTable | undefined {
	return RULE_TABLES.find((table) => table.id === id);
}

/** The practice table of that id, or undefined. */
export function practiceTable(id: string): PracticeTable | undefined {
	return PRACTICE_TABLES.find((table) => table.id === id);
}

/** The absorber class of that id, or undefined. */
export function absorberClass(id: string): AbsorberClass | undefined {
	return ABSORBER_CLASSES.find((one) => one.id === id);
}

/** The limits of a table that a plan can be judged against. */
export function checksOf(table: RuleTable): readonly Check[] {
	return table.limits.filter((limit) => limit.role === 'check');
}

/**
 * Every key of the message catalogue that the files of shared/ use: scopes of tables and remarks on
 * limits and values. The catalogue's test holds each language against this list.
 */
export function messageKeys(): readonly string[] {
	const remarks: readonly { readonly note?: string | undefined }[] = [
		...RULE_TABLES.flatMap((table) => table.limits),
		...[...PRACTICE_TABLES, ...ABSORBER_CLASSES].flatMap(citedValuesOf)
	];
	const keys = new Set([
		...RULE_TABLES.map((table) => table.scope),
		...remarks.flatMap(({ note }) => (note === undefined ? [] : [note]))
	]);
	return [...keys].sort();
}

/** The values of a practice table or absorber class that carry a citation, in the order of the file. */
export function citedValuesOf(of: PracticeTable | AbsorberClass): readonly CitedValue[] {
	return Object.values(of).filter((field): field is CitedValue => typeof field === 'object');
}
