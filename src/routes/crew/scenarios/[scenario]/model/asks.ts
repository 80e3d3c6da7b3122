/** What is asked: numbers, then a decision that rests on them. */
import { QUANTITIES, isQuantityId } from '#lib/arrest/index.ts';
import { dimensionOf, isUnitId, sameDimension, type Dimension, type UnitId } from '#lib/quantity/index.ts';
import type { Cell, NumberAsk } from '#lib/scenario/index.ts';
import { at, listAt, put, textAt, type Json, type JsonObject } from './document.ts';
import { unitOf } from './values.ts';

/** Every quantity that can be asked for, with the lesson that it counts for as a rule. */
export const ASKED: Readonly<Record<NumberAsk['quantity'], Cell>> = {
	freeFall: 'free-fall',
	requiredClearance: 'required-clearance',
	availableClearance: 'available-and-verdict',
	swingDrop: 'swing-and-path',
	massAttached: 'label-and-mass',
	lowestCapacity: 'label-and-mass',
	arrestForce: 'force-and-limits',
	expectedElongation: 'force-and-limits',
	bodyWeights: 'force-and-limits',
	reachDistance: 'swing-and-path'
};

/** @reason the schema's greatest number of questions. */
export const MOST_ASKS = 6;

const WITH_DATUM: readonly string[] = ['requiredClearance', 'availableClearance'];

/** @returns true where a quantity is measured from a level that the question names. */
export function hasDatum(quantity: string): boolean {
	return WITH_DATUM.includes(quantity);
}

/** The finest step that people can read off a drawing or a label, by unit. */
const STEPS: Readonly<Partial<Record<UnitId, number>>> = { m: 0.01, cm: 1, ft: 0.1, in: 1, kg: 1, lb: 1, kN: 0.1, N: 100, lbf: 10, '1': 0.1 };

function stepIn(unit: UnitId): JsonObject {
	return { value: STEPS[unit] ?? 1, unit };
}

/** @returns the dimension of what a question asks for; undefined for a decision, and for what is unknown. */
export function askDimension(document: Json, index: number): Dimension | undefined {
	const quantity = textAt(document, ['asks', index, 'quantity']);
	return isQuantityId(quantity) ? QUANTITIES[quantity].dimension : undefined;
}

/** @returns the document with another quantity asked for; datum and step follow where they must. */
export function askFor(document: Json, index: number, quantity: string): Json {
	const path = ['asks', index];
	const changed = put(document, [...path, 'quantity'], quantity);
	const datum = hasDatum(quantity) ? (at(changed, [...path, 'datum']) ?? 'surface') : undefined;
	const placed = put(changed, [...path, 'datum'], datum);
	const dimension = askDimension(placed, index);
	const unit = textAt(placed, [...path, 'precision', 'unit']);
	if (dimension === undefined || (isUnitId(unit) && sameDimension(dimensionOf(unit), dimension))) return placed;
	return put(placed, [...path, 'precision'], stepIn(unitOf(placed, dimension)));
}

function freeId(document: Json, wanted: string): string {
	const used = listAt(document, ['asks']).map((one) => textAt(one, ['id']));
	for (let n = 1; ; n += 1) {
		const id = n === 1 ? wanted : `${wanted}-${String(n)}`;
		if (!used.includes(id)) return id;
	}
}

/** @returns a quantity's name as a short name: `requiredClearance` is `required-clearance`. */
function shortName(quantity: string): string {
	return quantity.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

/**
 * @param what a quantity, or `decision`.
 * @returns the document with one more question: a number before the first decision, which rests on it from now on; a
 * decision at the end, resting on all numbers.
 */
export function addAsk(document: Json, what: string): Json {
	const asks = listAt(document, ['asks']);
	if (what === 'decision') {
		const numbers = asks.filter((one) => textAt(one, ['kind']) === 'number').map((one) => textAt(one, ['id']));
		return put(document, ['asks'], [...asks, { id: freeId(document, 'decision'), cell: 'decisions', kind: 'decision', with: numbers }]);
	}
	if (!Object.hasOwn(ASKED, what)) return document;
	const quantity = what as NumberAsk['quantity'];
	const id = freeId(document, shortName(quantity));
	const unit = unitOf(document, QUANTITIES[quantity].dimension);
	const ask: JsonObject = { id, cell: ASKED[quantity], kind: 'number', quantity, ...(hasDatum(quantity) ? { datum: 'surface' } : {}), precision: stepIn(unit) };
	const decision = asks.findIndex((one) => textAt(one, ['kind']) === 'decision');
	if (decision < 0) return put(document, ['asks'], [...asks, ask]);
	const rests = put(asks[decision] ?? null, ['with'], [...listAt(asks[decision] ?? null, ['with']), id]);
	return put(document, ['asks'], [...asks.slice(0, decision), ask, rests, ...asks.slice(decision + 1)]);
}

/** @returns the document without a question; decisions do not rest on it any more. */
export function withoutAsk(document: Json, index: number): Json {
	const gone = textAt(document, ['asks', index, 'id']);
	const asks = listAt(document, ['asks'])
		.filter((_, i) => i !== index)
		.map((one) => (listAt(one, ['with']).includes(gone) ? put(one, ['with'], listAt(one, ['with']).filter((id) => id !== gone)) : one));
	return put(document, ['asks'], asks);
}

/** @returns the document with a decision that rests on a number, or not. */
export function restOn(document: Json, index: number, id: string, rests: boolean): Json {
	const path = ['asks', index, 'with'];
	const now = listAt(document, path);
	if (now.includes(id) === rests) return document;
	return put(document, path, rests ? [...now, id] : now.filter((one) => one !== id));
}
