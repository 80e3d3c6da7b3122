/**
 * What every limit and every value of practice leaves with: the clause, the text it was taken
 * from, and how that is known.
 */
import type { Bound, CitedValue, Confidence, Limit, Mark } from './schema.ts';

export interface Citation {
	/** Article or clause, as the text numbers it. */
	readonly clause: string;
	readonly source: {
		readonly title: string;
		readonly where: string;
		/** Month or day on which it was read; absent for what is from memory. */
		readonly lookedAt?: string | undefined;
	};
	readonly mark: Mark;
	/** Only with the mark `memory`. */
	readonly confidence?: Confidence | undefined;
	/** The numbers as published, in the order of the text; empty where there is none. */
	readonly printedAs: readonly string[];
}

type Sourced = Pick<Limit, 'clause' | 'source' | 'mark' | 'confidence'>;

/** The citation of one limit or value with the numbers that it prints. */
export function cite(of: Sourced, printedAs: readonly string[]): Citation {
	return Object.freeze({
		clause: of.clause,
		source: of.source,
		mark: of.mark,
		...(of.confidence === undefined ? {} : { confidence: of.confidence }),
		printedAs: Object.freeze([...printedAs])
	});
}

/** The citation of a value of practice or equipment. */
export function citeValue(of: CitedValue): Citation {
	return cite(of, [printedValue(of)]);
}

/** A value as its text prints it: "5,000 lbf (22.2 kN)". The number is the very one that decides. */
export function printedValue(of: Pick<CitedValue, 'value' | 'unit' | 'pair'>): string {
	const primary = `${grouped(of.value)} ${of.unit}`;
	return of.pair === undefined ? primary : `${primary} (${of.pair})`;
}

/**
 * The numbers of a bound as its law prints them. A bound at zero is a rule without a number ("no
 * contact") and prints none; a multiple prints as "2 × peakForce", which the screen puts into words.
 */
export function printedBound(bound: Bound): readonly string[] {
	const by = 'max' in bound ? bound.max : bound.min;
	if ('of' in by) return [`${String(by.times)} × ${by.of}`];
	return by.value === 0 ? [] : [printedValue({ ...by, pair: bound.pair })];
}

/** 5000 as "5,000", the way the texts in English print it. */
function grouped(value: number): string {
	return String(value).replace(/\B(?=(\d{3})+$)/g, ',');
}
