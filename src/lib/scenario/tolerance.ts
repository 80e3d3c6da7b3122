/** How close is close enough: from shared/marking.json. */
import marking from '#shared/marking.json' with { type: 'json' };
import { QUANTITIES, type QuantityId } from '#lib/arrest/index.ts';
import { FORCE, LENGTH, MASS, isUnitId, sameDimension, toSI } from '#lib/quantity/index.ts';
import { precisionOf, targetOf } from './problem.ts';
import type { NumberAsk, Scenario } from './schema.ts';

/** Bands around a right answer, SI. */
export interface Tolerance {
	/** Half of the last place asked for: how far an answer may lie on the unsafe side. */
	readonly unsafe: number;
	/** How far it may lie on the cautious side. */
	readonly cautious: number;
	/** Two answers of different slips must be more than twice this apart. */
	readonly apart: number;
	/** +1 where more is more cautious, −1 where less is. */
	readonly cautiousSign: 1 | -1;
}

/** The entry of shared/marking.json for a quantity, or undefined for speeds, times and ratios. */
function kindOf(quantity: QuantityId) {
	const { dimension } = QUANTITIES[quantity];
	if (sameDimension(dimension, LENGTH)) return marking.length;
	if (sameDimension(dimension, MASS)) return marking.mass;
	return sameDimension(dimension, FORCE) ? marking.force : undefined;
}

function absoluteBand(scenario: Scenario, kind: typeof marking.length): number {
	const { band } = scenario.units === 'metric' ? kind.metric : kind.us;
	if (!isUnitId(band.unit)) throw new TypeError(`shared/marking.json: unknown unit ${band.unit}`);
	return toSI(band.value, band.unit);
}

/** @returns how far an answer of this size may lie on the cautious side, SI. */
export function bandOf(scenario: Scenario, quantity: QuantityId, value: number): number {
	const kind = kindOf(quantity);
	if (kind === undefined) return marking.other.relative * Math.abs(value);
	return Math.max(absoluteBand(scenario, kind), kind.relativeCautious * Math.abs(value));
}

/** @param right the right answer, SI. @returns the bands for an ask of a scenario. */
export function toleranceOf(scenario: Scenario, ask: NumberAsk, right: number): Tolerance {
	const { quantity } = targetOf(ask);
	const half = precisionOf(ask) / 2;
	const kind = kindOf(quantity);
	return {
		unsafe: half,
		cautious: Math.max(half, bandOf(scenario, quantity, right)),
		apart: kind === undefined ? half : Math.max(half, absoluteBand(scenario, kind)),
		cautiousSign: QUANTITIES[quantity].cautious
	};
}
