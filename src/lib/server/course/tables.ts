/** Which tables a lesson's facts are looked up in. */
import { PRACTICE_TABLES, RULE_TABLES, practiceTable, ruleTable, type PracticeTable, type RuleTable } from '#lib/rules/index.ts';

/** The table for those whose employer has chosen none. */
const USUAL = 'us-construction';

/** The practice table that goes with a place, by the first part of its jurisdiction. */
const PRACTICE_OF: Readonly<Record<string, string>> = { us: 'us-two-foot', ca: 'canada', eu: 'europe', uk: 'europe', au: 'australia' };

export interface FactTables {
	readonly rules: RuleTable;
	readonly practice: PracticeTable;
}

/**
 * @param chosen id of a rule table; the usual one is taken where it is none.
 * @returns the rule table, and the practice table of its place.
 */
export function factTables(chosen: string | null): FactTables {
	const rules = ruleTable(chosen ?? USUAL) ?? ruleTable(USUAL);
	const practice = rules === undefined ? undefined : practiceTable(PRACTICE_OF[rules.jurisdiction.split('-')[0] ?? ''] ?? '');
	if (rules === undefined || practice === undefined) {
		throw new Error(`There is no rule table "${USUAL}", or no practice table beside it; there are ${[...RULE_TABLES, ...PRACTICE_TABLES].map(({ id }) => id).join(', ')}`);
	}
	return { rules, practice };
}
