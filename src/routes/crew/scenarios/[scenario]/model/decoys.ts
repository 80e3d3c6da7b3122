/** Numbers that lead astray: each is one amount, a range, or comes out of a table. */
import { GIVENS, type FixedGivenId } from '#lib/arrest/index.ts';
import { append, at, isObject, listAt, put, textAt, type Json, type JsonObject } from './document.ts';
import { dimensionFor, firstAmount, givingOf, placeOf, unitOf } from './values.ts';

export type DecoyKind = 'value' | 'range' | 'limit' | 'practice' | 'class';

/** @returns how a decoy gets its amount. */
export function decoyKind(document: Json, index: number): DecoyKind {
	const decoy = at(document, ['decoys', index]);
	if (!isObject(decoy)) return 'value';
	if ('limit' in decoy) return 'limit';
	if ('practice' in decoy) return 'practice';
	if ('class' in decoy) return 'class';
	return 'from' in decoy || 'step' in decoy ? 'range' : 'value';
}

/** @returns the ways in which a decoy can get its amount. */
export function decoyKinds(given: string): readonly DecoyKind[] {
	if (given === 'otherMargin') return ['practice', 'value', 'range'];
	if (given === 'otherElongation') return ['class', 'value', 'range'];
	return given === 'freeFallLimit' ? ['limit', 'value', 'range'] : ['value', 'range'];
}

/** What can be taken out of tables, for a new decoy. */
export interface DecoyTables {
	readonly limit: string;
	readonly practice: string;
	readonly class: string;
}

/** @returns the document with a decoy of another kind. */
export function decoyAs(document: Json, index: number, kind: DecoyKind, tables: DecoyTables): Json {
	if (decoyKind(document, index) === kind) return document;
	const given = textAt(document, ['decoys', index, 'given']);
	return put(document, ['decoys', index], newDecoy(document, given, kind, tables));
}

/** @returns the document with one more decoy, of the first kind that such a number can be. */
export function addDecoy(document: Json, given: string, tables: DecoyTables): Json {
	return append(document, ['decoys'], newDecoy(document, given, decoyKinds(given)[0] ?? 'value', tables));
}

function newDecoy(document: Json, given: string, kind: DecoyKind, tables: DecoyTables): JsonObject {
	const id = given as FixedGivenId;
	const { value, unit } = firstAmount(document, id);
	switch (kind) {
		case 'value':
			return { given, value: { value, unit } };
		case 'range':
			return { given, from: value, to: value * 2, step: unit === 'm' ? 0.05 : unit === 'ft' ? 0.1 : 1, unit: unit || unitOf(document, dimensionFor(id)) };
		case 'limit':
			return { given, limit: tables.limit };
		case 'practice':
			return { given, practice: tables.practice };
		case 'class':
			return { given, class: tables.class };
	}
}

/** @returns givens that can lead astray and do not yet: decoys by nature, and parts of a plan that is without them. */
export function decoyGivens(document: Json): readonly FixedGivenId[] {
	const used = listAt(document, ['decoys']).map((one) => textAt(one, ['given']));
	return (Object.keys(GIVENS) as FixedGivenId[]).filter((id) => !used.includes(id) && (placeOf(document, id) === undefined || givingOf(document, id) !== 'none'));
}
