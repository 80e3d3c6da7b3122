import {
	QUANTITIES,
	analyse,
	givenDimension,
	givensOf,
	type Analysis,
	type Check,
	type Finding,
	type Plan,
	type Resolved,
	type ResolvedGiven
} from '#lib/arrest/index.ts';
import type { Dimension } from '#lib/quantity/index.ts';
import {
	ABSORBER_CLASSES,
	PRACTICE_TABLES,
	QUANTITIES as JUDGED_QUANTITIES,
	RULE_TABLES,
	citeValue,
	type JudgedBound
} from '#lib/rules/index.ts';
import { checkText, givenNames, type Messages } from '#lib/text/index.ts';
import { refuse, type Outcome } from './outcome.ts';
import { absenceWords, checkWords, refusalWords, verdictWords } from './words.ts';
import { formulaInNumbers, formulaInSymbols, symbol, workingOf, writeSI, written, type UnitSystem, type WrittenValue } from './writing.ts';

/** The tables and classes that a plan may name, by the field that names them. */
const NAMES: Readonly<Record<'rules' | 'practice' | 'absorber.class', readonly { readonly id: string }[]>> = {
	rules: RULE_TABLES,
	practice: PRACTICE_TABLES,
	'absorber.class': ABSORBER_CLASSES
};

/**
 * Every quantity of a plan with its working, every check and the verdict; or why the plan is not analysed.
 * A plan that this program does not judge is a result, not a fault of the input.
 */
export function analysePlan(plan: Plan, system: UnitSystem, words: Messages): Outcome {
	const outcome = analyse(plan);
	if (outcome.kind === 'analysed') return { kind: 'done', output: toldAnalysis(outcome.analysis, system, words) };
	const { refusal } = outcome;
	if (refusal.why === 'no-such-table') {
		const known = NAMES[refusal.field].map((one) => one.id);
		return refuse(refusal.field, `is ${JSON.stringify(refusal.id)}`, `give one of ${known.join(', ')}`);
	}
	return { kind: 'done', output: { kind: 'refused', ...refusal, words: refusalWords(refusal, words), caution: words.verdict.caution } };
}

function toldAnalysis(analysis: Analysis, system: UnitSystem, words: Messages): object {
	const { plan, resolved, quantities, checks, verdict } = analysis;
	return {
		kind: 'analysed',
		rules: plan.rules,
		practice: plan.practice,
		verdict: { ...verdict, words: verdictWords(analysis, words) },
		caution: words.verdict.caution,
		givens: toldGivens(resolved, system, words),
		quantities: [...quantities.values()].map((finding) => toldFinding(finding, resolved, system, words)),
		checks: checks.map((check) => toldCheck(check, system, words))
	};
}

function toldGivens(resolved: Resolved, system: UnitSystem, words: Messages): readonly object[] {
	return [...resolved.givens].map(([id, given]) => ({
		given: id,
		symbol: symbol(id),
		name: givenNames(words, id, id).name,
		value: written(given.value, givenDimension(id), system),
		...toldOrigin(given)
	}));
}

/** Where a value came from: the plan itself, or a table with its citation. */
function toldOrigin({ origin }: ResolvedGiven): object {
	switch (origin.from) {
		case 'plan':
			return { from: 'plan' };
		case 'practice':
			return { from: 'practice', table: origin.table, citation: citeValue(origin.cited) };
		case 'class':
			return { from: 'class', class: origin.class, citation: citeValue(origin.cited) };
	}
}

function toldFinding(finding: Finding, resolved: Resolved, system: UnitSystem, words: Messages): object {
	const { target, tree } = finding;
	const head = {
		quantity: target.quantity,
		...('datum' in target ? { datum: target.datum } : {}),
		symbol: symbol(target.quantity),
		name: words.quantities[target.quantity].name,
		formula: formulaInSymbols(tree)
	};
	if (!finding.known) {
		const { absence } = finding;
		return { ...head, known: false, ...absence, words: absenceWords(absence, words) };
	}
	const givens = givensOf(resolved);
	return {
		...head,
		known: true,
		numbers: formulaInNumbers(tree, givens, system),
		value: written(finding.value, tree.dimension, system),
		steps: workingOf(tree, givens, system).slice(0, -1)
	};
}

function toldCheck(check: Check, system: UnitSystem, words: Messages): object {
	const { judgement, citation } = check;
	return {
		check: check.id,
		topic: check.topic,
		name: checkText(words, check).name,
		status: check.status,
		decides: check.decides,
		words: checkWords(check, amountOf(check, system), words),
		...(judgement === undefined ? toldComparison(check, system) : { bounds: judgement.bounds.map((bound) => toldBound(bound, system)), facts: judgement.facts }),
		...(citation === undefined ? {} : { citation })
	};
}

/** How much a check has to spare or is short of, as written; undefined where it compares no amounts or is exactly held. */
function amountOf(check: Check, system: UnitSystem): string | undefined {
	if (check.slack === undefined || check.slack === 0) return undefined;
	const bound = check.judgement?.bounds.find((one) => one.slack === check.slack);
	const dimension = bound === undefined ? check.target && QUANTITIES[check.target.quantity].dimension : JUDGED_QUANTITIES[bound.quantity];
	return dimension === undefined ? undefined : writeSI(Math.abs(check.slack), dimension, system);
}

/** What a check of the plan itself holds against what, and by how much. */
function toldComparison(check: Check, system: UnitSystem): object {
	const { target } = check;
	if (target === undefined) return {};
	return {
		...target,
		...amounts(QUANTITIES[target.quantity].dimension, { value: check.value, limit: check.limit, slack: check.slack }, system)
	};
}

function toldBound(bound: JudgedBound, system: UnitSystem): object {
	const { quantity, side, exclusive, multiple, status } = bound;
	return {
		quantity,
		side,
		exclusive,
		status,
		...(multiple === undefined ? {} : { multiple }),
		...amounts(JUDGED_QUANTITIES[quantity], { value: bound.valueSI, limit: bound.limitSI, slack: bound.slack }, system)
	};
}

/** Amounts that are known, each in SI and as written. */
function amounts(
	dimension: Dimension,
	values: Readonly<Record<string, number | undefined>>,
	system: UnitSystem
): Readonly<Record<string, WrittenValue>> {
	return Object.fromEntries(
		Object.entries(values).flatMap(([name, si]) => (si === undefined ? [] : [[name, written(si, dimension, system)]]))
	);
}
