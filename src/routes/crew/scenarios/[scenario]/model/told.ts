/** Findings as an author reads them: what is wrong, where, what to do, and which field to go to. */
import { QUANTITIES, givenDimension, isGivenId, isQuantityId } from '#lib/arrest/index.ts';
import type { Dimension } from '#lib/quantity/index.ts';
import type { InspectFinding, Severity } from '#lib/scenario/index.ts';
import { writerFor } from '../../../../learn/problem/model/writing.ts';
import { at, pathKey, textAt, type Path } from './document.ts';
import { askName, boundName, constraintText, givenName, outcomeName, placeName, slipName, slotName, stateName, type Naming } from './names.ts';
import type { SchemaProblem } from './schema-problems.ts';
import { slotsIn } from './story.ts';

export interface ToldFinding {
	readonly key: string;
	readonly severity: Severity;
	/** The field to change. */
	readonly path: Path;
	/** What that field is called. */
	readonly place: string;
	readonly what: string;
	readonly fix: string;
	/** Other fields that have a part in it. */
	readonly also: readonly { readonly path: Path; readonly place: string }[];
	/** An example that shows it. */
	readonly seed: number | undefined;
}

const ORDER: readonly Severity[] = ['fault', 'warning', 'note'];

/** @returns what does not fit and what inspecting found, the gravest first. */
export function toldFindings(naming: Naming, problems: readonly SchemaProblem[], findings: readonly InspectFinding[]): readonly ToldFinding[] {
	const told = [...problems.map((one) => toldProblem(naming, one)), ...findings.map((one) => toldFinding(naming, one))];
	const first = new Map(told.toReversed().map((one) => [one.key, one]));
	return ORDER.flatMap((severity) => told.filter((one) => one.severity === severity && first.get(one.key) === one));
}

function toldProblem(naming: Naming, problem: SchemaProblem): ToldFinding {
	const { problems } = naming.m.authoring;
	const words = problems[problem.kind] ?? problems['other'];
	const parts = {
		bound: problem.bound === undefined ? '' : String(problem.bound),
		which: slotsIn(textAt(naming.document, problem.path)).map((slot) => `{${slot}}`).join(', '),
		words: problem.message
	};
	return {
		key: `${problem.kind} ${pathKey(problem.path)}`,
		severity: 'fault',
		path: problem.path,
		place: placeName(naming, problem.path),
		what: words?.what(parts) ?? problem.message,
		fix: words?.fix(parts) ?? '',
		also: [],
		seed: undefined
	};
}

/** @returns one finding in words. */
export function toldFinding(naming: Naming, finding: InspectFinding): ToldFinding {
	const words = naming.m.authoring.findings[finding.code];
	const parts = partsOf(naming, finding);
	return {
		key: `${finding.code} ${pathKey(finding.path)} ${finding.detail['which'] ?? finding.detail['with'] ?? ''}`,
		severity: finding.severity,
		path: finding.path,
		place: placeName(naming, finding.path),
		what: words.what(parts),
		fix: words.fix(parts),
		also: (finding.also ?? []).map((path) => ({ path, place: placeName(naming, path) })),
		seed: finding.seed
	};
}

/** @returns a share as a page writes it: "3 %". What is more than none is never written as none. */
export function shareText(share: number): string {
	const percent = share * 100;
	return percent > 0 && percent < 1 ? '< 1\u00a0%' : `${String(Math.round(percent))}\u00a0%`;
}

function partsOf(naming: Naming, { code, path, detail }: InspectFinding) {
	const text = (key: string): string => {
		const value = detail[key];
		return value === undefined ? '' : String(value);
	};
	const number = (key: string): number | undefined => (typeof detail[key] === 'number' ? detail[key] : undefined);
	const plain = (key: string): string => {
		const value = number(key);
		return value === undefined ? text(key) : String(Math.round(value * 10) / 10).replace('.', naming.language === 'es' ? ',' : '.');
	};
	const share = number('share') ?? number('passing');
	const amount = (key: string): string => amountOf(naming, text('given') || text('of'), number(key));
	const [first = '', second = ''] = text('which').split(' ');
	const ofConstraint = path[0] === 'constraints' && typeof path[1] === 'number';
	return {
		share: share === undefined ? '' : shareText(share),
		which: whichOf(naming, code, text('which')),
		why: whyOf(naming, code, detail),
		given: text('given') === '' ? '' : givenName(naming, text('given')),
		of: ofConstraint ? constraintText(naming, Number(path[1])) : text('of') === '' ? '' : boundName(naming, text('of')),
		other: typeof detail['with'] === 'number' && code === 'constraints-clash' ? constraintText(naming, detail['with']) : '',
		first: slipName(naming, first),
		second: second === '' ? '' : slipName(naming, second),
		value: amount('value'),
		least: number('least') === undefined ? '–' : amount('least'),
		greatest: number('greatest') === undefined ? '–' : amount('greatest'),
		mean: plain('mean'),
		most: plain('most'),
		steps: plain('steps'),
		words: plain('words'),
		count: plain('count'),
		name: text('name')
	};
}

/** An amount of a given or a quantity, in the units of the scenario. */
function amountOf(naming: Naming, of: string, si: number | undefined): string {
	const dimension = dimensionFor(of);
	if (si === undefined || dimension === undefined) return '';
	const units = textAt(naming.document, ['units']);
	const known = units === 'us-decimal' || units === 'us-inch' ? units : 'metric';
	return writerFor({ units: known }, naming.language).full(si, dimension);
}

function dimensionFor(of: string): Dimension | undefined {
	const [name = ''] = of.split('@');
	if (isGivenId(of)) return givenDimension(of);
	return isQuantityId(name) ? QUANTITIES[name].dimension : undefined;
}

/** What tells two findings of one kind apart, in words. */
function whichOf(naming: Naming, code: InspectFinding['code'], which: string): string {
	const { m, document } = naming;
	switch (code) {
		case 'seldom-drawn':
		case 'many-tries': {
			const reasons: Readonly<Record<string, string>> = m.turnedDown;
			return Object.hasOwn(reasons, which) ? (reasons[which] ?? which) : which;
		}
		case 'aim-not-met':
			return outcomeName(naming, which);
		case 'check-always-fails':
		case 'check-never-fails':
		case 'check-never-known': {
			const checks: Readonly<Record<string, { readonly name: string }>> = m.ruleChecks;
			return Object.hasOwn(checks, which) ? (checks[which]?.name ?? which) : which;
		}
		case 'fact-untold':
			return stateName(naming, which);
		case 'slot-without-value':
		case 'slot-in-one-language':
			return slotName(naming, which);
		case 'decoy-alike': {
			const asks = at(document, ['asks']);
			const index = Array.isArray(asks) ? asks.findIndex((one) => textAt(one, ['id']) === which) : -1;
			return index < 0 ? givenName(naming, which) : askName(naming, index);
		}
		default:
			return which;
	}
}

/** Why, as a sentence; empty where the code says it all. */
function whyOf(naming: Naming, code: InspectFinding['code'], detail: InspectFinding['detail']): string {
	const p = naming.m.authoring.page;
	const pick = (texts: Readonly<Record<string, string>>, key: string | number | undefined): string => {
		const id = String(key);
		return Object.hasOwn(texts, id) ? (texts[id] ?? '') : '';
	};
	switch (code) {
		case 'impossible-site':
			return pick(p.impossible, detail['which']);
		case 'ask-without-value':
			return withoutValue(naming, String(detail['which']), String(detail['given'] ?? ''));
		case 'aim-not-met':
			return pick(p.aimNotMet, detail['why']);
		default:
			return '';
	}
}

function withoutValue(naming: Naming, which: string, given: string): string {
	const { absences } = naming.m;
	if (!Object.hasOwn(absences, which)) return '';
	return absences[which as keyof typeof absences]({ what: given === '' ? naming.m.common.notKnown : givenName(naming, given) });
}

/** What the server says of a field when it refuses a document, in English. */
export interface Refusal {
	readonly field: string;
	readonly problem: string;
	readonly remedy: string;
}

/** @returns a refusal of the server as a finding at its field. */
export function toldRefusal(naming: Naming, { field, problem, remedy }: Refusal): ToldFinding {
	const path = field === 'document' ? [] : field.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
	const words = naming.m.authoring.problems['other'];
	const said = `${problem}; ${remedy}`;
	return {
		key: `refused ${field}`,
		severity: 'fault',
		path,
		place: placeName(naming, path),
		what: words?.what({ bound: '', which: '', words: said }) ?? said,
		fix: words?.fix({ bound: '', which: '', words: said }) ?? '',
		also: [],
		seed: undefined
	};
}
