/**
 * The numbers of a plan as an author thinks of them: each is not stated, one amount, a range on a grid, or one of some
 * amounts. In the document the amount stands in the base plan, ranges and choices among the draws.
 */
import { GIVENS, type FixedGivenId, type GivenId } from '#lib/arrest/index.ts';
import { FORCE, LENGTH, MASS, fromSI, isUnitId, readQuantity, sameDimension, unitsOf, type Dimension, type UnitId } from '#lib/quantity/index.ts';
import { PLAN_PLACES } from '#lib/scenario/index.ts';
import { append, at, isObject, listAt, pathKey, put, textAt, type Json, type JsonObject, type Path } from './document.ts';

/** How a number is given. */
export type Giving = 'none' | 'fixed' | 'range' | 'among';

const OBSTACLE = 'obstacleTop_';

/** @returns the obstacles of the base plan, by their place in the list, with their ids. */
export function obstaclesOf(document: Json): readonly { readonly index: number; readonly id: string }[] {
	return listAt(document, ['base', 'below', 'obstacles']).map((one, index) => ({ index, id: isObject(one) ? textAt(one, ['id']) : '' }));
}

/** @returns where the base plan holds a given; undefined for one that it has no place for. */
export function placeOf(document: Json, given: GivenId): Path | undefined {
	if (given.startsWith(OBSTACLE)) {
		const found = obstaclesOf(document).find(({ id }) => given === `${OBSTACLE}${id}`);
		return found === undefined ? undefined : ['base', 'below', 'obstacles', found.index, 'top'];
	}
	const place = Object.hasOwn(PLAN_PLACES, given) ? PLAN_PLACES[given as FixedGivenId] : undefined;
	return place === undefined ? undefined : ['base', ...place];
}

/** @returns the dimension of what an author types for a given. */
export function dimensionFor(given: GivenId): Dimension {
	return Object.hasOwn(GIVENS, given) ? GIVENS[given as FixedGivenId].dimension : LENGTH;
}

/** @returns the units in which ranges and amounts of a dimension are given, the usual ones only. */
export function usualUnits(dimension: Dimension): readonly UnitId[] {
	const usual: readonly UnitId[] = ['m', 'cm', 'mm', 'ft', 'in', 'kg', 'lb', 'kN', 'N', 'lbf'];
	return unitsOf(dimension).filter((unit) => usual.includes(unit));
}

/** @returns the place in the list of the draw that sets a given; -1 where none does. */
export function drawOf(document: Json, given: GivenId): number {
	return listAt(document, ['draws']).findIndex((draw) => listAt(draw, ['sets']).includes(given));
}

/** @returns how a number is given in a document. */
export function givingOf(document: Json, given: GivenId): Giving {
	const draw = at(document, ['draws', drawOf(document, given)]);
	if (isObject(draw)) return 'among' in draw ? 'among' : 'range';
	const place = placeOf(document, given);
	return place === undefined || at(document, place) === undefined ? 'none' : 'fixed';
}

/** @returns the other givens that the draw of a given sets to the same value. */
export function togetherWith(document: Json, given: GivenId): readonly string[] {
	return listAt(document, ['draws', drawOf(document, given), 'sets']).filter((one): one is string => typeof one === 'string' && one !== given);
}

/** @returns the givens that an earlier draw than that of a given sets: a range can count from them. */
export function countsFrom(document: Json, given: GivenId): readonly GivenId[] {
	const own = drawOf(document, given);
	const dimension = dimensionFor(given);
	return listAt(document, ['draws'])
		.slice(0, Math.max(0, own))
		.flatMap((draw) => listAt(draw, ['sets']) as readonly GivenId[])
		.filter((id) => typeof id === 'string' && sameDimension(dimensionFor(id), dimension));
}

/** The unit that a scenario gives a dimension in. */
export function unitOf(document: Json, dimension: Dimension): UnitId {
	const metric = textAt(document, ['units']) === 'metric';
	if (sameDimension(dimension, LENGTH)) return metric ? 'm' : textAt(document, ['units']) === 'us-inch' ? 'in' : 'ft';
	if (sameDimension(dimension, MASS)) return metric ? 'kg' : 'lb';
	if (sameDimension(dimension, FORCE)) return metric ? 'kN' : 'lbf';
	return '1';
}

/** A step that a foreman would take, by unit. */
const STEPS: Readonly<Partial<Record<UnitId, number>>> = { m: 0.05, cm: 5, mm: 50, ft: 0.1, in: 1, kg: 1, lb: 1, kN: 0.5, N: 100, lbf: 50 };
/** How many steps a new range goes to each side. @reason wide enough that answers differ, near enough to stay plausible. */
const STEPS_ASIDE = 4;
/** @reason finer than any grid in use, coarser than float noise. */
const PLACES_KEPT = 1e6;

function rounded(value: number): number {
	return Math.round(value * PLACES_KEPT) / PLACES_KEPT;
}

interface Amount {
	readonly value: number;
	readonly unit: UnitId;
}

/** What a number is first where it was not stated, metric and US. @reason in the middle of what sites have; the author changes it. */
const FIRST: Readonly<Partial<Record<GivenId, readonly [metric: Amount, us: Amount]>>> = {
	stature: [{ value: 1.75, unit: 'm' }, { value: 5.75, unit: 'ft' }],
	dRingHeight: [{ value: 1.45, unit: 'm' }, { value: 4.7, unit: 'ft' }],
	dRingNow: [{ value: 0.9, unit: 'm' }, { value: 3, unit: 'ft' }],
	standingHeight: [{ value: 0.3, unit: 'm' }, { value: 1, unit: 'ft' }],
	bodyMass: [{ value: 80, unit: 'kg' }, { value: 180, unit: 'lb' }],
	clothingMass: [{ value: 3, unit: 'kg' }, { value: 6, unit: 'lb' }],
	equipmentMass: [{ value: 6, unit: 'kg' }, { value: 14, unit: 'lb' }],
	toolsMass: [{ value: 8, unit: 'kg' }, { value: 18, unit: 'lb' }],
	tetheredMass: [{ value: 12, unit: 'kg' }, { value: 26, unit: 'lb' }],
	lanyardLength: [{ value: 1.8, unit: 'm' }, { value: 6, unit: 'ft' }],
	lanyardCapacity: [{ value: 140, unit: 'kg' }, { value: 310, unit: 'lb' }],
	elongation: [{ value: 1.2, unit: 'm' }, { value: 3.5, unit: 'ft' }],
	peakForce: [{ value: 6, unit: 'kN' }, { value: 1350, unit: 'lbf' }],
	conditionedForce: [{ value: 8, unit: 'kN' }, { value: 1800, unit: 'lbf' }],
	averageForce: [{ value: 4, unit: 'kN' }, { value: 900, unit: 'lbf' }],
	labelMassMin: [{ value: 60, unit: 'kg' }, { value: 130, unit: 'lb' }],
	labelMassMax: [{ value: 140, unit: 'kg' }, { value: 310, unit: 'lb' }],
	labelFreeFall: [{ value: 1.8, unit: 'm' }, { value: 6, unit: 'ft' }],
	statedDeceleration: [{ value: 1, unit: 'm' }, { value: 3, unit: 'ft' }],
	dRingSlide: [{ value: 0.3, unit: 'm' }, { value: 1, unit: 'ft' }],
	harnessStretch: [{ value: 0.2, unit: 'm' }, { value: 0.5, unit: 'ft' }],
	harnessCapacity: [{ value: 140, unit: 'kg' }, { value: 310, unit: 'lb' }],
	connectorCapacity: [{ value: 140, unit: 'kg' }, { value: 310, unit: 'lb' }],
	anchorageHeight: [{ value: 2.1, unit: 'm' }, { value: 7, unit: 'ft' }],
	anchorageStrength: [{ value: 15, unit: 'kN' }, { value: 5000, unit: 'lbf' }],
	connectorLength: [{ value: 0.6, unit: 'm' }, { value: 2, unit: 'ft' }],
	offset: [{ value: 1, unit: 'm' }, { value: 3, unit: 'ft' }],
	margin: [{ value: 0.6, unit: 'm' }, { value: 2, unit: 'ft' }],
	lowerLevelDepth: [{ value: 8, unit: 'm' }, { value: 25, unit: 'ft' }]
};

/** @returns a first amount for a given that was not stated, in the units of the scenario. */
export function firstAmount(document: Json, given: GivenId): Amount {
	const first = FIRST[given];
	if (first === undefined) return { value: 1, unit: unitOf(document, dimensionFor(given)) };
	return textAt(document, ['units']) === 'metric' ? first[0] : first[1];
}

/** The amount of the base plan as number and unit; of feet and inches, in the scenario's unit. A first one where it cannot be read. */
function amountOf(document: Json, given: GivenId): Amount {
	const dimension = dimensionFor(given);
	const unit = unitOf(document, dimension);
	const place = placeOf(document, given);
	const text = place === undefined ? '' : textAt(document, place);
	const reading = readQuantity(text, { expected: unit, language: 'en', compound: true });
	if (reading.kind !== 'read') return firstAmount(document, given);
	if (reading.written.style === 'compound') return { value: rounded(fromSI(reading.si, unit)), unit };
	return { value: rounded(reading.value), unit: reading.unit };
}

function numberAt(document: Json, path: Path): number | undefined {
	const value = at(document, path);
	return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}

/** What a range or a choice holds, from least to greatest. */
function amountsOf(draw: JsonObject): readonly Amount[] {
	const unit = textAt(draw, ['unit']);
	if ('among' in draw) {
		return listAt(draw, ['among']).flatMap((one) => {
			const [value, own] = [numberAt(one, ['value']), textAt(one, ['unit'])];
			return value === undefined || !isUnitId(own) ? [] : [{ value, unit: own }];
		});
	}
	const [from, to, step] = [numberAt(draw, ['from']), numberAt(draw, ['to']), numberAt(draw, ['step'])];
	if (from === undefined || to === undefined || !isUnitId(unit)) return [];
	const middle = step === undefined || step <= 0 ? from : rounded(from + step * Math.round((to - from) / step / 2));
	return [from, middle, to].filter((value, i, all) => all.indexOf(value) === i).map((value) => ({ value, unit }));
}

/** The document with a given taken out of its draw; the draw goes with the last given that it sets. */
function withoutDraw(document: Json, given: GivenId): Json {
	const index = drawOf(document, given);
	if (index < 0) return document;
	const others = togetherWith(document, given);
	return others.length === 0 ? put(document, ['draws', index], undefined) : put(document, ['draws', index, 'sets'], [...others]);
}

/**
 * @returns the document with a number given in another way, as near to what it was as that way allows: a fixed amount
 * becomes the middle of a range, a range its ends and middle, a choice its span. What varied and is fixed takes a value
 * out of the middle; ranges that count from another number keep the amount of the base plan.
 */
export function giveAs(document: Json, given: GivenId, giving: Giving): Json {
	const place = placeOf(document, given);
	if (place === undefined || givingOf(document, given) === giving) return document;
	const draw = at(document, ['draws', drawOf(document, given)]);
	const drawn = isObject(draw) ? amountsOf(draw) : [];
	// A plan has no offset, or one with a direction.
	if (given === 'offset') return giving === 'none' ? put(withoutDraw(document, given), ['base', 'offset'], undefined) : giveOffset(document, giving, place, drawn);
	if (giving === 'none') return put(withoutDraw(document, given), place, undefined);
	return giveAmount(document, given, giving, place, drawn);
}

function giveOffset(document: Json, giving: Giving, place: Path, drawn: readonly Amount[]): Json {
	const direction = ['base', 'offset', 'direction'];
	const given = giveAmount(document, 'offset', giving, place, drawn);
	return at(given, direction) === undefined ? put(given, direction, 'along-edge') : given;
}

function giveAmount(document: Json, given: GivenId, giving: Giving, place: Path, drawn: readonly Amount[]): Json {
	const draw = at(document, ['draws', drawOf(document, given)]);
	if (giving === 'fixed') {
		const middle = drawn[Math.floor(drawn.length / 2)];
		const keeps = at(document, place) !== undefined && (middle === undefined || (isObject(draw) && 'above' in draw));
		const text = keeps ? textAt(document, place) : amountText(middle ?? amountOf(document, given));
		return put(withoutDraw(document, given), place, text);
	}
	const stated = at(document, place) === undefined ? put(document, place, amountText(amountOf(document, given))) : document;
	const next = giving === 'range' ? rangeFrom(stated, given, drawn) : choiceFrom(stated, given, drawn);
	const index = drawOf(stated, given);
	return index < 0 ? append(stated, ['draws'], next) : put(stated, ['draws', index], { ...next, sets: at(stated, ['draws', index, 'sets']) ?? [given] });
}

function rangeFrom(document: Json, given: GivenId, drawn: readonly Amount[]): JsonObject {
	const { value, unit } = drawn[0] ?? amountOf(document, given);
	const step = STEPS[unit] ?? 1;
	const values = drawn.filter((one) => one.unit === unit).map((one) => one.value);
	const [from, to] = values.length > 0 ? [Math.min(...values), Math.max(...values)] : [value - STEPS_ASIDE * step, value + STEPS_ASIDE * step];
	return { sets: [given], from: rounded(from), to: rounded(to), step, unit };
}

function choiceFrom(document: Json, given: GivenId, drawn: readonly Amount[]): JsonObject {
	const among = drawn.length > 0 ? drawn : [amountOf(document, given)];
	return { sets: [given], among: among.map(({ value, unit }) => ({ value, unit })) };
}

/** @returns an amount as the document writes it: "1.8 m". */
export function amountText({ value, unit }: { readonly value: number; readonly unit: string }): string {
	return `${String(value)} ${unit}`;
}

/** @returns the path of the draw of a given. */
export function drawPath(document: Json, given: GivenId): Path {
	return ['draws', drawOf(document, given)];
}

/** @returns all givens that have a number in a document: of the plan, of its obstacles, and the decoys. */
export function statedGivens(document: Json): readonly GivenId[] {
	const placed = (Object.keys(PLAN_PLACES) as FixedGivenId[]).filter((id) => givingOf(document, id) !== 'none');
	const tops = obstaclesOf(document).map(({ id }) => `${OBSTACLE}${id}` as GivenId);
	const decoys = listAt(document, ['decoys']).map((one) => textAt(one, ['given']) as GivenId);
	const drawn = listAt(document, ['draws']).flatMap((draw) => listAt(draw, ['sets']) as readonly GivenId[]);
	return [...new Set([...placed, ...tops, ...decoys, ...drawn])].filter((id) => typeof id === 'string' && pathKey([id]) !== '');
}
