/** How a problem's numbers are written: in the units of its scenario, in the language of the page. */
import { QUANTITIES, givenDimension, type GivenId, type QuantityId } from '#lib/arrest/index.ts';
import {
	FORCE,
	LENGTH,
	MASS,
	RATIO,
	SPEED,
	TIME,
	fromSI,
	sameDimension,
	unitSymbol,
	writeQuantity,
	type Dimension,
	type InchDenominator,
	type Language,
	type Rounding,
	type UnitId,
	type WrittenUnit
} from '#lib/quantity/index.ts';
import type { NumberAsk, Scenario } from '#lib/scenario/index.ts';

export interface Writer {
	readonly language: Language;
	/** With its unit. */
	readonly full: (si: number, dimension: Dimension, round?: Rounding) => string;
	/** The number alone, as on the drawing and on the tape. Feet and inches keep their marks. */
	readonly bare: (si: number, dimension: Dimension, round?: Rounding) => string;
	readonly length: (si: number, round?: Rounding) => string;
	readonly bareLength: (si: number, round?: Rounding) => string;
	/** A given, with its unit: never rounded away from what was drawn. */
	readonly given: (id: GivenId, si: number) => string;
	/** A computed quantity, with its unit, rounded away from danger (physics.md 11). */
	readonly quantity: (id: QuantityId, si: number) => string;
	readonly bareQuantity: (id: QuantityId, si: number) => string;
}

/** How fine a difference still counts against the last place written. @reason float noise of a few sums. */
const NOISE = 1e-6;
/** @reason the shipped grids are no finer. */
const INCH_PARTS: readonly InchDenominator[] = [1, 2, 4, 8];

export function unitFor(units: Scenario['units'], dimension: Dimension): WrittenUnit {
	const metric = units === 'metric';
	if (sameDimension(dimension, LENGTH)) return metric ? 'm' : units === 'us-inch' ? 'ft-in' : 'ft';
	if (sameDimension(dimension, MASS)) return metric ? 'kg' : 'lb';
	if (sameDimension(dimension, FORCE)) return metric ? 'kN' : 'lbf';
	if (sameDimension(dimension, SPEED)) return metric ? 'm/s' : 'ft/s';
	if (sameDimension(dimension, TIME)) return 's';
	if (sameDimension(dimension, RATIO)) return '1';
	throw new RangeError('a problem shows no quantity of this dimension');
}

function isWhole(value: number): boolean {
	return Math.abs(value - Math.round(value)) < NOISE * Math.max(1, Math.abs(value));
}

/** The fewest decimals from `least` on that show the value as it is, at most `most`. */
function decimalsFor(si: number, unit: UnitId, least: number, most: number): number {
	for (let decimals = least; decimals < most; decimals += 1) {
		if (isWhole(fromSI(si, unit) * 10 ** decimals)) return decimals;
	}
	return most;
}

function inchPartsFor(si: number): InchDenominator {
	return INCH_PARTS.find((parts) => isWhole(fromSI(si, 'in') * parts)) ?? 2;
}

/** Decimals written at least and at most, by unit: m to 0.01, ft and kN to 0.1 unless the number has more (physics.md 11). */
const DECIMALS: Readonly<Partial<Record<UnitId, readonly [least: number, most: number]>>> = {
	m: [2, 2],
	ft: [1, 2],
	kg: [0, 1],
	lb: [0, 1],
	kN: [0, 2],
	lbf: [0, 0],
	'm/s': [1, 1],
	'ft/s': [1, 1],
	s: [1, 2],
	'1': [2, 2]
};

export function writerFor(scenario: Pick<Scenario, 'units'>, language: Language): Writer {
	const write = (si: number, dimension: Dimension, withUnit: boolean, round: Rounding): string => {
		const unit = unitFor(scenario.units, dimension);
		if (unit === 'ft-in') return writeQuantity(si, { unit, language, inchDenominator: inchPartsFor(si), round });
		const [least, most] = DECIMALS[unit] ?? [0, 2];
		return writeQuantity(si, { unit, language, withUnit, round, decimals: decimalsFor(si, unit, least, most) });
	};
	const cautious = (id: QuantityId): Rounding => (QUANTITIES[id].cautious === 1 ? 'up' : 'down');
	return {
		language,
		full: (si, dimension, round = 'nearest') => write(si, dimension, true, round),
		bare: (si, dimension, round = 'nearest') => write(si, dimension, false, round),
		length: (si, round = 'nearest') => write(si, LENGTH, true, round),
		bareLength: (si, round = 'nearest') => write(si, LENGTH, false, round),
		given: (id, si) => write(si, givenDimension(id), true, 'nearest'),
		quantity: (id, si) => write(si, QUANTITIES[id].dimension, true, cautious(id)),
		bareQuantity: (id, si) => write(si, QUANTITIES[id].dimension, false, cautious(id))
	};
}

/** @returns what stands in the unit box of an answer field. */
export function answerUnit(scenario: Scenario, ask: NumberAsk, language: Language): string {
	if (scenario.units === 'us-inch' && sameDimension(QUANTITIES[ask.quantity].dimension, LENGTH)) {
		return `${unitSymbol('ft', language)} ${unitSymbol('in', language)}`;
	}
	return unitSymbol(ask.precision.unit, language);
}
