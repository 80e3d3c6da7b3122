export { cite, citeValue, printedBound, printedValue } from './citation.ts';
export type { Citation } from './citation.ts';
export { citationOf, decides, dutyArises, judge, judgeCondition } from './judge.ts';
export type { JudgeOptions, JudgedBound, JudgedFact, Judgement } from './judge.ts';
export { allOf, anyOf, not } from './kleene.ts';
export type { Status } from './kleene.ts';
export {
	ABSORBER_CLASSES,
	LABEL_FIELDS,
	PRACTICE_TABLES,
	RECORD_LAWS,
	RULE_TABLES,
	absorberClass,
	checksOf,
	citedValuesOf,
	messageKeys,
	practiceTable,
	recordLaw,
	ruleTable
} from './load.ts';
export { CHOICE_FACTS, COUNT_FACTS, ID_FACTS, QUANTITIES, YES_NO_FACTS } from './quantity-names.ts';
export type { FactName, Facts, Quantities, QuantityName } from './quantity-names.ts';
export type {
	AbsorberClass,
	BodyCustom,
	Bound,
	Check,
	CitedValue,
	Condition,
	Confidence,
	LabelField,
	Limit,
	Mark,
	NotProofOf,
	PracticeTable,
	RecordContent,
	RecordLaw,
	Requirement,
	RuleTable,
	RuleUnit,
	Statement,
	Subject,
	Trigger
} from './schema.ts';
