/**
 * The files of shared/, looked up by id. They are parts of the program, checked against their
 * schema by tests/unit/rules/files.test.ts and not again at run time.
 */
import usConstruction from '#shared/rules/us-construction.json' with { type: 'json' };
import usGeneralIndustry from '#shared/rules/us-general-industry.json' with { type: 'json' };
import type { Check, RuleTable } from './schema.ts';

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
export const RULE_TABLES: readonly RuleTable[] = Object.freeze(
	[usConstruction, usGeneralIndustry].map((file) => trusted<RuleTable>(file))
);

/** The rule table of that id; undefined when there is none, as an old record may name one that was withdrawn. */
export function ruleTable(id: string): RuleTable | undefined {
	return RULE_TABLES.find((table) => table.id === id);
}

/** The limits of a table that a plan can be judged against. */
export function checksOf(table: RuleTable): readonly Check[] {
	return table.limits.filter((limit) => limit.role === 'check');
}
