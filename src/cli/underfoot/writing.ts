import { QUANTITIES, givenDimension, givenSymbol, isGivenId, isQuantityId, type GivenId, type QuantityId } from '#lib/arrest/index.ts';
import { evaluate, namedIn, printText, stepsOf, type Givens, type Named, type Node, type Writing } from '#lib/expression/index.ts';
import {
	ACCELERATION,
	FORCE,
	LENGTH,
	MASS,
	SPEED,
	TIME,
	sameDimension,
	unitSymbol,
	writeQuantity,
	type Dimension,
	type UnitId
} from '#lib/quantity/index.ts';

/** In which units values are written beside SI. */
export type UnitSystem = 'metric' | 'us';
export const UNIT_SYSTEMS: readonly UnitSystem[] = ['metric', 'us'];

/** A value in SI and as people write it. */
export interface WrittenValue {
	readonly si: number;
	readonly siUnit: string;
	/** In the units chosen, rounded for reading; `si` is the exact one. */
	readonly written: string;
}

interface Style {
	readonly dimension: Dimension;
	readonly si: UnitId;
	readonly metric: readonly [unit: UnitId, decimals: number];
	readonly us: readonly [unit: UnitId, decimals: number];
}

/** Decimals: one more place than the answers of site problems have, so that a sum can be followed. */
const STYLES: readonly Style[] = [
	{ dimension: LENGTH, si: 'm', metric: ['m', 3], us: ['ft', 2] },
	{ dimension: MASS, si: 'kg', metric: ['kg', 1], us: ['lb', 1] },
	{ dimension: FORCE, si: 'N', metric: ['kN', 2], us: ['lbf', 0] },
	{ dimension: SPEED, si: 'm/s', metric: ['m/s', 2], us: ['ft/s', 1] },
	{ dimension: ACCELERATION, si: 'm/s2', metric: ['m/s2', 5], us: ['ft/s2', 3] },
	{ dimension: TIME, si: 's', metric: ['s', 3], us: ['s', 3] }
];
const BARE: Omit<Style, 'dimension'> = { si: '1', metric: ['1', 3], us: ['1', 3] };

function styleOf(dimension: Dimension): Omit<Style, 'dimension'> {
	return STYLES.find((style) => sameDimension(style.dimension, dimension)) ?? BARE;
}

/** @returns an SI value as text in the chosen units. */
export function writeSI(si: number, dimension: Dimension, system: UnitSystem): string {
	const [unit, decimals] = styleOf(dimension)[system];
	return writeQuantity(si, { unit, decimals, language: 'en' });
}

/** @returns an SI value with its written form. */
export function written(si: number, dimension: Dimension, system: UnitSystem): WrittenValue {
	return { si, siUnit: unitSymbol(styleOf(dimension).si, 'en'), written: writeSI(si, dimension, system) };
}

/** @returns the symbol of a quantity or a given; the id itself for anything else. */
function symbolOf(id: string): string {
	if (isQuantityId(id)) return QUANTITIES[id].symbol;
	return isGivenId(id) ? givenSymbol(id) : id;
}

/** @returns a quantity's formula in symbols: `L − r`. */
export function formulaInSymbols(tree: Node): string {
	return printText(tree, { given: symbolOf, named: symbolOf, constant: (name) => name, signs: 'typeset' });
}

/** @returns a quantity's formula with the numbers of a plan: `1.900 m − 0.620 m`. */
export function formulaInNumbers(tree: Node, givens: Givens, system: UnitSystem): string {
	const parts = new Map(namedIn(tree).map((part) => [part.id, part]));
	const writing: Writing = {
		given: (id) => writeSI(givens(id), isGivenId(id) ? givenDimension(id) : LENGTH, system),
		named: (id) => {
			const part = parts.get(id);
			return part === undefined ? undefined : writeSI(evaluate(part, givens), part.dimension, system);
		},
		constant: (name, value) => (name === 'g' ? writeSI(value, ACCELERATION, system) : name),
		signs: 'typeset'
	};
	return printText(tree, writing);
}

/** One step of a working. */
export interface WrittenStep {
	readonly quantity: string;
	readonly symbol: string;
	readonly formula: string;
	readonly numbers: string;
	readonly value: WrittenValue;
}

function step(part: Named, value: number, givens: Givens, system: UnitSystem): WrittenStep {
	return {
		quantity: part.id,
		symbol: symbolOf(part.id),
		formula: formulaInSymbols(part),
		numbers: formulaInNumbers(part, givens, system),
		value: written(value, part.dimension, system)
	};
}

/** @returns every step of a quantity's working, in the order in which one would compute it; the last is itself. */
export function workingOf(tree: Node, givens: Givens, system: UnitSystem): readonly WrittenStep[] {
	return stepsOf(tree, givens).map(({ node, value }) => step(node, value, givens, system));
}

/** @returns the symbol of a given or a quantity. */
export function symbol(id: GivenId | QuantityId): string {
	return symbolOf(id);
}
