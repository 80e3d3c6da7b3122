/** A plan → its quantities with workings, its checks, its verdict. Pure; SI. */
import { compile, givensIn, valuesOf, type Givens, type Node, type Program } from '#lib/expression/index.ts';
import { absorberClass, practiceTable, ruleTable } from '#lib/rules/index.ts';
import { examine, type Check, type CheckStatus } from './checks.ts';
import { formula } from './formula.ts';
import { isGivenId, type GivenId } from './given.ts';
import { targetKey, type PlainQuantityId, type QuantityId, type Target } from './quantities.ts';
import { resolve, type Resolved } from './resolve.ts';
import type { LanyardPlan, Plan } from './schema.ts';
import { DATUMS, onceAShape, type Shape } from './shape.ts';

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
export function targetsOf({ shape }: Pick<Resolved, 'shape'>): readonly Target[] {
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

/** All quantities of plans of one shape, ready to be valued together. */
interface Prepared {
	/** The three that decide about others come first: reach, free fall, mass. */
	readonly quantities: readonly {
		readonly target: Target;
		readonly key: string;
		readonly tree: Node;
		readonly givens: readonly string[];
	}[];
	readonly program: Program;
	/** For each input of the program, which of the quantities read it. */
	readonly readers: readonly (readonly number[])[];
}

function prepare(shape: Shape): Prepared {
	const first: readonly Target[] = [{ quantity: 'reachSpare' }, { quantity: 'freeFall' }, { quantity: 'massAttached' }];
	const byKey = new Map([...first, ...targetsOf({ shape })].map((target) => [targetKey(target), target]));
	const quantities = [...byKey].map(([key, target]) => {
		const tree = formula(target, shape);
		return Object.freeze({ target, key, tree, givens: givensIn(tree) });
	});
	const inputs = [...new Set(quantities.flatMap((one) => one.givens))];
	const program = compile(
		quantities.map((one) => one.tree),
		inputs
	);
	const readers = inputs.map((id) => quantities.flatMap((one, i) => (one.givens.includes(id) ? [i] : [])));
	return Object.freeze({ quantities: Object.freeze(quantities), program, readers: Object.freeze(readers) });
}

const preparedFor = onceAShape(prepare);

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
	const quantities = findings(resolved);
	const checks = examine(lanyard, resolved, quantities, options);
	return { kind: 'analysed', analysis: { plan: lanyard, resolved, quantities, checks, verdict: verdictOf(checks) } };
}

function findings(resolved: Resolved): ReadonlyMap<string, Finding> {
	const { quantities, program, readers } = preparedFor(resolved.shape);
	const known: ReadonlyMap<string, { readonly value: number }> = resolved.givens;
	const values = valuesOf(
		program,
		program.inputs.map((id) => known.get(id)?.value ?? NaN)
	);
	const lacking = new Set(program.inputs.flatMap((id, j) => (known.has(id) ? [] : (readers[j] ?? []))));
	const found = new Map<string, Finding>();
	let unrigged: Absence | undefined;
	let outside = false;
	quantities.forEach(({ target, key, tree, givens }, i) => {
		const { quantity } = target;
		const value = values[i] ?? NaN;
		let absence: Absence | undefined;
		if (lacking.has(i)) {
			absence = { why: 'missing', givens: givens.filter((id): id is GivenId => !known.has(id) && isGivenId(id)) };
		} else if (NEEDS_RIGGING.has(quantity) && unrigged !== undefined) absence = unrigged;
		else if (NEEDS_LABEL.has(quantity) && outside) absence = { why: 'outside-label' };
		else if (STOPS.has(quantity) && !(value >= 0)) absence = { why: 'does-not-stop' };
		const finding: Finding =
			absence === undefined ? { known: true, target, tree, value } : { known: false, target, tree, absence };
		found.set(key, finding);
		if (quantity === 'reachSpare' && !(finding.known && finding.value >= -NOISE)) unrigged = { why: 'not-rigged' };
		else if (quantity === 'massAttached') {
			outside = outsideLabel(resolved, valueOf(finding), valueOf(found.get('freeFall')));
		}
	});
	return found;
}

function valueOf(finding: Finding | undefined): number | undefined {
	return finding?.known === true ? finding.value : undefined;
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
