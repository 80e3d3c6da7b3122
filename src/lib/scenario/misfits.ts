/**
 * What in a scenario fits nothing: names of tables, limits, givens and slips that do not exist, draws that set
 * what the base plan has no place for, units that measure another kind of thing. Found when a scenario is
 * read, so that a draw never stumbles over it. Messages read `what is wrong; what would be right`.
 */
import {
	DATUMS,
	QUANTITIES,
	givenDimension,
	isAsideGiven,
	isGivenId,
	isObstacleGiven,
	isQuantityId,
	plausibleOf,
	resolve,
	type GivenId,
	type Range
} from '#lib/arrest/index.ts';
import { dimensionOf, fromSI, nameOfDimension, sameDimension, toSI, type Dimension, type UnitId } from '#lib/quantity/index.ts';
import { ABSORBER_CLASSES, PRACTICE_TABLES, RULE_TABLES, absorberClass, practiceTable, ruleTable } from '#lib/rules/index.ts';
import { SLIPS, slipOf } from '#lib/slips/index.ts';
import { canSet, greatestOf, isDecoy } from './sample.ts';
import type { Scenario } from './schema.ts';
import { spanOfDraw } from './spans.ts';

export interface Misfit {
	readonly path: readonly (string | number)[];
	readonly message: string;
}

type Path = readonly (string | number)[];

/** @reason float noise of a sum of steps, SI. */
const NOISE = 1e-9;
/** @reason to the millimetre or the gram: ends of ranges as a person would write them. */
const PLACES = 3;
/** @reason shipped scenarios have a dozen at most; the formulas and slips of so many are prepared in a second or two. */
const MOST_KINDS = 128;
/** Numbers whose term is in the formulas only if there is any of it. */
const TERMS_IF_ANY: ReadonlySet<GivenId> = new Set(['offset', 'standingHeight', 'clothingMass', 'equipmentMass', 'toolsMass', 'tetheredMass', 'dRingSlide', 'harnessStretch']);
const CAPACITIES: ReadonlySet<GivenId> = new Set(['labelMassMax', 'harnessCapacity', 'lanyardCapacity', 'connectorCapacity']);

/** @returns everything in a scenario that fits nothing, in the order of the document. */
export function misfitsOf(scenario: Scenario): readonly Misfit[] {
	const tables = tableMisfits(scenario);
	const obstacles = scenario.base.below.obstacles.map((one) => one.id);
	return [
		...tables,
		...(tables.length > 0 ? [] : [...spanMisfits(scenario), ...askMisfits(scenario), ...kindMisfits(scenario)]),
		...scenario.draws.flatMap((draw, i) => ('fact' in draw ? factMisfits(scenario, draw, ['draws', i]) : drawMisfits(scenario, draw, ['draws', i]))),
		...scenario.decoys.flatMap((decoy, i) => decoyMisfits(scenario, decoy, ['decoys', i])),
		...scenario.constraints.flatMap((constraint, i) => constraintMisfits(constraint, obstacles, ['constraints', i])),
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

/** Numbers that a draw or a decoy can take and that no such thing has: what a plan that is typed in is refused for. */
function spanMisfits(scenario: Scenario): Misfit[] {
	const spans = new Map<GivenId, Range>();
	const found: Misfit[] = [];
	const hold = (id: GivenId, value: number, unit: UnitId, path: Path): void => {
		const { least, greatest } = plausibleOf(id);
		if (value >= least - NOISE && value <= greatest + NOISE) return;
		const ends = [least, greatest].map((si) => `${Number(fromSI(si, unit).toFixed(PLACES))} ${unit}`);
		found.push({ path, message: `makes ${id} more or less than it can be; give values that keep it from ${ends.join(' to ')}` });
	};
	const measures = (id: GivenId, unit: UnitId): boolean => sameDimension(givenDimension(id), dimensionOf(unit));
	scenario.draws.forEach((draw, i) => {
		if ('fact' in draw || ('above' in draw && draw.above !== undefined && !spans.has(draw.above))) return;
		const span = spanOfDraw(draw, ['draws', i], spans);
		for (const id of draw.sets) {
			spans.set(id, span);
			if ('among' in draw) {
				draw.among.forEach(({ value, unit }, k) => {
					if (measures(id, unit)) hold(id, toSI(value, unit), unit, ['draws', i, 'among', k, 'value']);
				});
			} else if (measures(id, draw.unit)) {
				hold(id, span.least, draw.unit, span.leastAt);
				hold(id, span.greatest, draw.unit, span.greatestAt);
			}
		}
	});
	scenario.decoys.forEach((decoy, i) => {
		if ('value' in decoy && measures(decoy.given, decoy.value.unit)) hold(decoy.given, toSI(decoy.value.value, decoy.value.unit), decoy.value.unit, ['decoys', i, 'value', 'value']);
		if ('from' in decoy && measures(decoy.given, decoy.unit)) {
			hold(decoy.given, toSI(decoy.from, decoy.unit), decoy.unit, ['decoys', i, 'from']);
			hold(decoy.given, toSI(decoy.to, decoy.unit), decoy.unit, ['decoys', i, 'to']);
		}
	});
	return found;
}

/**
 * Draws after which a scenario has more kinds of plans than can be prepared in bounded time. Plans are of one kind
 * if their formulas have the same terms: each state of an obstacle, each posture and condition makes kinds of its
 * own, and so does each number that is nought in some draws and not in others.
 */
function kindMisfits(scenario: Scenario): Misfit[] {
	const spans = new Map<GivenId, Range>();
	let kinds = 1;
	const found: Misfit[] = [];
	scenario.draws.forEach((draw, i) => {
		const before = kinds;
		if ('fact' in draw) {
			if (draw.fact === 'obstacle' || draw.fact === 'posture' || draw.fact === 'condition') kinds *= new Set<unknown>(draw.among).size;
		} else if (!('above' in draw) || draw.above === undefined || spans.has(draw.above)) {
			const span = spanOfDraw(draw, ['draws', i], spans);
			for (const id of draw.sets) {
				spans.set(id, span);
				if (TERMS_IF_ANY.has(id) && span.least <= 0 && span.greatest > 0) kinds *= 2;
				// How far the swing goes decides which obstacles the path meets.
				if (id === 'offset' && span.greatest > span.least) kinds *= 1 + scenario.base.below.obstacles.length;
			}
		}
		if (kinds > MOST_KINDS && before <= MOST_KINDS) {
			found.push({ path: ['draws', i], message: `makes more than ${MOST_KINDS} kinds of plans together with the draws before it; give some of them one state, or ranges without nought` });
		}
	});
	return found;
}

/** Asks for what plans of this base cannot have. */
function askMisfits(scenario: Scenario): Misfit[] {
	const stated = resolve(scenario.base).shape.capacities.length > 0;
	const drawn = scenario.draws.some((draw) => !('fact' in draw) && draw.sets.some((id) => CAPACITIES.has(id)));
	if (stated || drawn) return [];
	return scenario.asks.flatMap((ask, i): Misfit[] =>
		ask.kind === 'number' && ask.quantity === 'lowestCapacity'
			? [{ path: ['asks', i, 'quantity'], message: 'asks for a capacity, and the base plan states none; give the harness, the lanyard, the connectors or the label one' }]
			: []
	);
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
	const lowered = base.worker.dRingNow !== undefined || scenario.draws.some((one) => !('fact' in one) && one.sets.includes('dRingNow'));
	if (draw.fact === 'posture' && !lowered) {
		const at = draw.among.indexOf('kneeling');
		return at < 0 ? [] : [{ path: [...path, 'among', at], message: 'needs the D-ring height in that posture; give base.worker.dRingNow, or draw it' }];
	}
	if (draw.fact !== 'obstacle' || base.below.obstacles.some((one) => one.id === draw.id)) return [];
	return [noSuch([...path, 'id'], 'obstacle of the base plan', base.below.obstacles)];
}

function drawMisfits(scenario: Scenario, draw: Exclude<Scenario['draws'][number], FactDraw>, path: Path): Misfit[] {
	const { above } = 'above' in draw ? draw : {};
	return draw.sets.flatMap((id, k) => {
		const units = 'among' in draw ? draw.among.map((one, i) => [one.unit, ['among', i, 'unit']] as const) : [[draw.unit, ['unit']] as const];
		return [
			...placeMisfits(scenario, id, [...path, 'sets', k]),
			...(above !== undefined && !sameDimension(givenDimension(above), givenDimension(id))
				? [{ path: [...path, 'above'], message: 'measures another kind of thing; give a given of the same kind, or leave it out' }]
				: []),
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
	const limit = limits.find((one) => one.id === decoy.limit);
	const bound = limit === undefined ? undefined : greatestOf(limit.require);
	if (bound !== undefined && sameDimension(dimensionOf(bound.unit), dimension)) return place;
	const fitting = limits.filter((one) => {
		const unit = greatestOf(one.require)?.unit;
		return unit !== undefined && sameDimension(dimensionOf(unit), dimension);
	});
	return [noSuch([...path, 'limit'], `limit of the rule table that bounds a ${nameOfDimension(dimension)}`, fitting)];
}

/** What a bound may be put on: a given, or a quantity, with its datum or its obstacle behind an @ where it has one. */
function constraintMisfits(constraint: Scenario['constraints'][number], obstacles: readonly string[], path: Path): Misfit[] {
	const { of } = constraint;
	const dimension = isGivenId(of) ? givenDimension(of) : quantityDimension(of, obstacles);
	if (dimension === undefined) return [{ path: [...path, 'of'], message: 'is neither a given nor a quantity; give an id such as "rise" or "freeFall"' }];
	if ((isObstacleGiven(of) || isAsideGiven(of)) && !obstacles.includes(of.slice(of.indexOf('_') + 1))) {
		return [{ path: [...path, 'of'], message: 'is no obstacle of the base plan; put it into base.below.obstacles' }];
	}
	return (['atLeast', 'atMost'] as const).flatMap((side) => {
		const bound = constraint[side];
		return bound === undefined ? [] : unitMisfits(dimension, bound.unit, [...path, side, 'unit']);
	});
}

function quantityDimension(of: string, obstacles: readonly string[]): Dimension | undefined {
	const [name = '', from, ...more] = of.split('@');
	if (!isQuantityId(name) || more.length > 0) return undefined;
	const byDatum = name === 'requiredClearance' || name === 'availableClearance';
	const known = name === 'speedAtObstacle' ? from !== undefined && obstacles.includes(from) : from === undefined || (byDatum && (DATUMS as readonly string[]).includes(from));
	return known ? QUANTITIES[name].dimension : undefined;
}
