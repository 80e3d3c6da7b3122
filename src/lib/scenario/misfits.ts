/**
 * What in a scenario fits nothing: names of tables, limits, givens and slips that do not exist, draws that set
 * what the base plan has no place for, units that measure another kind of thing. Found when a scenario is
 * read, so that a draw never stumbles over it. Messages read `what is wrong; what would be right`.
 */
import { QUANTITIES, isAsideGiven, isGivenId, isObstacleGiven, isQuantityId, givenDimension, type GivenId } from '#lib/arrest/index.ts';
import { dimensionOf, nameOfDimension, sameDimension, type Dimension, type UnitId } from '#lib/quantity/index.ts';
import { ABSORBER_CLASSES, PRACTICE_TABLES, RULE_TABLES, absorberClass, practiceTable, ruleTable } from '#lib/rules/index.ts';
import { SLIPS, slipOf } from '#lib/slips/index.ts';
import { canSet, isDecoy } from './sample.ts';
import type { Scenario } from './schema.ts';

export interface Misfit {
	readonly path: readonly (string | number)[];
	readonly message: string;
}

type Path = readonly (string | number)[];

/** @returns everything in a scenario that fits nothing, in the order of the document. */
export function misfitsOf(scenario: Scenario): readonly Misfit[] {
	return [
		...tableMisfits(scenario),
		...scenario.draws.flatMap((draw, i) => ('fact' in draw ? factMisfits(scenario, draw, ['draws', i]) : drawMisfits(scenario, draw, ['draws', i]))),
		...scenario.decoys.flatMap((decoy, i) => decoyMisfits(scenario, decoy, ['decoys', i])),
		...scenario.constraints.flatMap((constraint, i) => constraintMisfits(constraint, ['constraints', i])),
		...scenario.equalSlips.flatMap((pair, i) => pair.flatMap((id, k) => (slipOf(id) === undefined ? [noSuch(['equalSlips', i, k], 'slip', SLIPS)] : []))),
		...scenario.asks.flatMap((ask, i) =>
			ask.kind === 'number' ? unitMisfits(QUANTITIES[ask.quantity].dimension, ask.precision.unit, ['asks', i, 'precision', 'unit']) : []
		)
	];
}

function noSuch(path: Path, kind: string, known: readonly { readonly id: string }[]): Misfit {
	return { path, message: `is no ${kind} that there is; give one of ${known.map((one) => one.id).join(', ')}` };
}

function tableMisfits({ base }: Scenario): Misfit[] {
	const found: Misfit[] = [];
	if (ruleTable(base.rules) === undefined) found.push(noSuch(['base', 'rules'], 'rule table', RULE_TABLES));
	if (practiceTable(base.practice) === undefined) found.push(noSuch(['base', 'practice'], 'practice table', PRACTICE_TABLES));
	const type = base.absorber?.class;
	if (type !== undefined && absorberClass(type) === undefined) found.push(noSuch(['base', 'absorber', 'class'], 'absorber class', ABSORBER_CLASSES));
	return found;
}

function unitMisfits(dimension: Dimension, unit: UnitId, path: Path): Misfit[] {
	if (sameDimension(dimensionOf(unit), dimension)) return [];
	const kind = nameOfDimension(dimension);
	return [{ path, message: `measures no ${kind}; give a unit of a ${kind}` }];
}

/** Whether a given has a place in the base plan, or is a decoy. */
function placeMisfits(scenario: Scenario, id: GivenId, path: Path): Misfit[] {
	if (isObstacleGiven(id) || isAsideGiven(id)) {
		const { obstacles } = scenario.base.below;
		const known = obstacles.some((one) => id === `obstacleTop_${one.id}`);
		const names = obstacles.map((one) => `obstacleTop_${one.id}`).join(', ');
		return known ? [] : [{ path, message: `is no obstacle of the base plan; ${names === '' ? 'put it into base.below.obstacles' : `give one of ${names}`}` }];
	}
	if (isDecoy(id) || canSet(scenario.base, id)) return [];
	return [{ path, message: 'has no place in the base plan; give the base plan such a part, or draw something else' }];
}

type FactDraw = Extract<Scenario['draws'][number], { fact: string }>;

function factMisfits(scenario: Scenario, draw: FactDraw, path: Path): Misfit[] {
	const { base } = scenario;
	if (draw.fact === 'condition' && base.absorber === null) {
		return [{ path: [...path, 'fact'], message: 'needs an absorber; give the base plan one, or draw something else' }];
	}
	if (draw.fact !== 'obstacle' || base.below.obstacles.some((one) => one.id === draw.id)) return [];
	return [noSuch([...path, 'id'], 'obstacle of the base plan', base.below.obstacles)];
}

function drawMisfits(scenario: Scenario, draw: Exclude<Scenario['draws'][number], FactDraw>, path: Path): Misfit[] {
	return draw.sets.flatMap((id, k) => {
		const units = 'among' in draw ? draw.among.map((one, i) => [one.unit, ['among', i, 'unit']] as const) : [[draw.unit, ['unit']] as const];
		return [
			...placeMisfits(scenario, id, [...path, 'sets', k]),
			...units.flatMap(([unit, at]) => unitMisfits(givenDimension(id), unit, [...path, ...at]))
		];
	});
}

function decoyMisfits(scenario: Scenario, decoy: Scenario['decoys'][number], path: Path): Misfit[] {
	const dimension = givenDimension(decoy.given);
	const place = placeMisfits(scenario, decoy.given, [...path, 'given']);
	if ('value' in decoy) return [...place, ...unitMisfits(dimension, decoy.value.unit, [...path, 'value', 'unit'])];
	if ('from' in decoy) return [...place, ...unitMisfits(dimension, decoy.unit, [...path, 'unit'])];
	if ('practice' in decoy) return practiceTable(decoy.practice) === undefined ? [noSuch([...path, 'practice'], 'practice table', PRACTICE_TABLES)] : [];
	if ('class' in decoy) return absorberClass(decoy.class) === undefined ? [noSuch([...path, 'class'], 'absorber class', ABSORBER_CLASSES)] : [];
	const limits = (ruleTable(scenario.base.rules)?.limits ?? []).filter((one) => one.role === 'check');
	return limits.some((one) => one.id === decoy.limit) ? place : [noSuch([...path, 'limit'], 'limit of the rule table', limits)];
}

/** What a bound may be put on: a given, or a quantity, with its datum behind an @ where it has one. */
function constraintMisfits(constraint: Scenario['constraints'][number], path: Path): Misfit[] {
	const [name = ''] = constraint.of.split('@');
	const dimension = isGivenId(constraint.of) ? givenDimension(constraint.of) : isQuantityId(name) ? QUANTITIES[name].dimension : undefined;
	if (dimension === undefined) return [{ path: [...path, 'of'], message: 'is neither a given nor a quantity; give an id such as "rise" or "freeFall"' }];
	return (['atLeast', 'atMost'] as const).flatMap((side) => {
		const bound = constraint[side];
		return bound === undefined ? [] : unitMisfits(dimension, bound.unit, [...path, side, 'unit']);
	});
}
