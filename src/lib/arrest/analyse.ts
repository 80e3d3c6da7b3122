/** A plan → its quantities with workings, its checks, its verdict. Pure; SI. */
import { evaluate, givensIn, type Givens, type Node } from '#lib/expression/index.ts';
import { absorberClass, practiceTable, ruleTable } from '#lib/rules/index.ts';
import { examine, type Check, type CheckStatus } from './checks.ts';
import { formula, targetKey, type PlainQuantityId, type QuantityId, type Target } from './formula.ts';
import { isGivenId, type GivenId } from './given.ts';
import { resolve, type Resolved } from './resolve.ts';
import type { LanyardPlan, Plan } from './schema.ts';
import { DATUMS } from './shape.ts';

/** Why a quantity has no value. */
export type Absence =
	| { readonly why: 'missing'; readonly givens: readonly GivenId[] }
	| { readonly why: 'not-rigged' }
	| { readonly why: 'outside-label' }
	| { readonly why: 'does-not-stop' };

/** A quantity with its tree and its value, SI, or the reason why it has none. */
export type Finding =
	| { readonly known: true; readonly target: Target; readonly tree: Node; readonly value: number }
	| { readonly known: false; readonly target: Target; readonly tree: Node; readonly absence: Absence };

/** Why a plan is not analysed at all. */
export type Refusal =
	| { readonly why: 'line-over-edge' }
	| { readonly why: 'away-from-edge' }
	| { readonly why: 'system-not-built'; readonly system: string }
	| { readonly why: 'system-outside-scope'; readonly system: string }
	| { readonly why: 'no-such-table'; readonly field: 'rules' | 'practice' | 'absorber.class'; readonly id: string };

export interface Verdict {
	readonly result: 'passes' | 'fails' | 'cannot-be-shown';
	/** The right decision that follows: only a plan that passes all listed checks may be tied off to. */
	readonly decision: 'tie-off' | 'do-not-tie-off';
	/** Ids of the checks that decide against it. */
	readonly against: readonly string[];
	/** The held check with the least to spare, relative to its limit. */
	readonly nearest: string | undefined;
}

export interface Analysis {
	readonly plan: LanyardPlan;
	readonly resolved: Resolved;
	readonly quantities: ReadonlyMap<string, Finding>;
	readonly checks: readonly Check[];
	readonly verdict: Verdict;
}

export type Outcome =
	| { readonly kind: 'refused'; readonly refusal: Refusal }
	| { readonly kind: 'analysed'; readonly analysis: Analysis };

export interface AnalyseOptions {
	/** Ids of limits from memory that a named competent person has confirmed. */
	readonly confirmed?: ReadonlySet<string> | undefined;
}

/** Float noise allowed when a length is held against nought, m. */
const NOISE = 1e-9;

/** @returns why a plan cannot be analysed, or undefined. Reads no formula. */
export function refusalOf(plan: Plan): Refusal | undefined {
	if (plan.system !== 'lanyard') {
		const outside = ['powered-platform', 'climbing-rail', 'rope-access', 'positioning', 'yielding-anchorage'];
		if (plan.system === 'over-edge') return { why: 'line-over-edge' };
		return { why: outside.includes(plan.system) ? 'system-outside-scope' : 'system-not-built', system: plan.system };
	}
	const lanyard = plan;
	if (lanyard.lineMeetsEdge) return { why: 'line-over-edge' };
	if (lanyard.offset.distance > 0 && lanyard.offset.direction === 'away-from-edge') return { why: 'away-from-edge' };
	if (ruleTable(lanyard.rules) === undefined) return { why: 'no-such-table', field: 'rules', id: lanyard.rules };
	if (practiceTable(lanyard.practice) === undefined) return { why: 'no-such-table', field: 'practice', id: lanyard.practice };
	const type = lanyard.absorber?.class;
	if (type !== undefined && absorberClass(type) === undefined) return { why: 'no-such-table', field: 'absorber.class', id: type };
	return undefined;
}

/** @returns a look-up of resolved givens. @throws ReferenceError on one that is not known. */
export function givensOf(resolved: Pick<Resolved, 'givens'>): Givens {
	return (id) => {
		const found = isGivenId(id) ? resolved.givens.get(id) : undefined;
		if (found === undefined) throw new ReferenceError(`the plan has no ${id}`);
		return found.value;
	};
}

/** @returns the quantities that a plan of this shape has, each once for every datum. */
export function targetsOf(resolved: Resolved): readonly Target[] {
	const { shape } = resolved;
	const plain: PlainQuantityId[] = [
		'rise',
		...(shape.connector ? (['lineLength'] as const) : []),
		'reachDistance',
		'reachSpare',
		...(shape.offset ? (['tautDepth'] as const) : []),
		'freeFall',
		'fallSpeed',
		'fallTime',
		'fallFactor',
		...(shape.offset ? (['swingDrop', 'swingSpeed', 'tightSpeed', 'sidewaysSpeed'] as const) : []),
		...(shape.lowered ? (['straightening'] as const) : []),
		...(shape.slide || shape.stretch ? (['stretchOut'] as const) : []),
		'totalFall',
		'hangingDepth',
		...(shape.obstacles.length > 0 ? (['highestBelow'] as const) : []),
		'spare',
		'massAttached',
		...(shape.capacities.length > 0 ? (['lowestCapacity', 'capacitySpare'] as const) : []),
		...(shape.absorber ? (['arrestForce', 'expectedElongation', 'stopTime', 'bodyWeights', 'largestMass', 'largestFreeFall'] as const) : [])
	];
	const byDatum = (['requiredClearance', 'availableClearance'] as const).flatMap((quantity) =>
		DATUMS.map((datum) => ({ quantity, datum }))
	);
	const atObstacles = shape.offset ? shape.obstacles.map((obstacle) => ({ quantity: 'speedAtObstacle' as const, obstacle })) : [];
	return [...plain.map((quantity) => ({ quantity })), ...byDatum, ...atObstacles];
}

const NEEDS_RIGGING: ReadonlySet<QuantityId> = new Set([
	'tautDepth',
	'freeFall',
	'fallSpeed',
	'fallTime',
	'fallFactor',
	'swingDrop',
	'swingSpeed',
	'tightSpeed',
	'sidewaysSpeed',
	'speedAtObstacle',
	'stopTime',
	'hangingDepth',
	'totalFall',
	'requiredClearance',
	'spare',
	'expectedElongation',
	'largestMass'
]);
/** Quantities that a force below the weight leaves without a value. */
const STOPS: ReadonlySet<QuantityId> = new Set(['expectedElongation', 'stopTime']);
const NEEDS_LABEL: ReadonlySet<QuantityId> = new Set(['requiredClearance', 'spare', 'totalFall', 'hangingDepth']);

/**
 * @returns the plan's quantities, checks and verdict, or why it is refused.
 * A quantity whose givens are not all known, or that the label does not cover, has no value and says why.
 */
export function analyse(plan: Plan, options: AnalyseOptions = {}): Outcome {
	const refusal = refusalOf(plan);
	if (refusal !== undefined || plan.system !== 'lanyard') {
		return { kind: 'refused', refusal: refusal ?? { why: 'system-not-built', system: plan.system } };
	}
	const lanyard = plan;
	const resolved = resolve(lanyard);
	const givens = givensOf(resolved);
	const quantities = new Map<string, Finding>();
	const known: ReadonlyMap<string, unknown> = resolved.givens;

	const find = (target: Target, absent: Absence | undefined): Finding => {
		const tree = formula(target, resolved.shape);
		const missing = givensIn(tree).filter((id): id is GivenId => !known.has(id) && isGivenId(id));
		const absence: Absence | undefined = missing.length > 0 ? { why: 'missing', givens: missing } : absent;
		const finding: Finding =
			absence === undefined
				? { known: true, target, tree, value: evaluate(tree, givens) }
				: { known: false, target, tree, absence };
		quantities.set(targetKey(target), finding);
		return finding;
	};

	const reach = find({ quantity: 'reachSpare' }, undefined);
	const rigged = reach.known && reach.value >= -NOISE;
	const unrigged: Absence | undefined = rigged ? undefined : { why: 'not-rigged' };
	const fall = find({ quantity: 'freeFall' }, unrigged);
	const mass = find({ quantity: 'massAttached' }, undefined);
	const outside = outsideLabel(resolved, valueOf(mass), valueOf(fall));
	for (const target of targetsOf(resolved)) {
		if (quantities.has(targetKey(target))) continue;
		const { quantity } = target;
		const absent =
			NEEDS_RIGGING.has(quantity) && !rigged
				? unrigged
				: NEEDS_LABEL.has(quantity) && outside
					? ({ why: 'outside-label' } as const)
					: undefined;
		const finding = find(target, absent);
		if (STOPS.has(quantity) && finding.known && !(finding.value >= 0)) {
			quantities.set(targetKey(target), { ...finding, known: false, absence: { why: 'does-not-stop' } });
		}
	}
	const checks = examine(lanyard, resolved, quantities, options);
	return { kind: 'analysed', analysis: { plan: lanyard, resolved, quantities, checks, verdict: verdictOf(checks) } };
}

function valueOf(finding: Finding): number | undefined {
	return finding.known ? finding.value : undefined;
}

/** @returns true if the label's figures are known not to hold for this mass or this free fall. */
export function outsideLabel(resolved: Resolved, mass: number | undefined, freeFall: number | undefined): boolean {
	const value = (id: GivenId): number | undefined => resolved.givens.get(id)?.value;
	const min = value('labelMassMin');
	const max = value('labelMassMax');
	const longest = value('labelFreeFall');
	return (
		(mass !== undefined && min !== undefined && mass < min - NOISE) ||
		(mass !== undefined && max !== undefined && mass > max + NOISE) ||
		(freeFall !== undefined && longest !== undefined && freeFall > longest + NOISE)
	);
}

/** What a check counts for: a limit from memory proves nothing, but its failure cannot be passed over. */
function weight(check: Check): CheckStatus | 'not-counted' {
	if (check.decides) return check.status;
	return check.status === 'failed' ? 'unknown' : 'not-counted';
}

/** @returns the verdict over all checks: any failed fails; else any unknown cannot be shown; else passes. */
export function verdictOf(checks: readonly Check[]): Verdict {
	const failed = checks.filter((check) => weight(check) === 'failed');
	const unknown = checks.filter((check) => weight(check) === 'unknown');
	const result = failed.length > 0 ? 'fails' : unknown.length > 0 ? 'cannot-be-shown' : 'passes';
	const nearest = checks
		.filter((check) => weight(check) === 'held' && check.relative !== undefined)
		.reduce<Check | undefined>((best, check) => ((check.relative ?? 0) < (best?.relative ?? Infinity) ? check : best), undefined);
	return {
		result,
		decision: result === 'passes' ? 'tie-off' : 'do-not-tie-off',
		against: [...failed, ...unknown].map((check) => check.id),
		nearest: nearest?.id
	};
}
