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

/** A value as its text prints it, or its number and unit where the text prints no pair. */
export function printedValue(of: Pick<CitedValue, 'value' | 'unit' | 'printedAs'>): string {
	return of.printedAs ?? `${String(of.value)} ${of.unit}`;
}

/** A bound as its law prints it. */
export function printedBound(bound: Bound): string {
	const by = 'max' in bound ? bound.max : bound.min;
	return bound.printedAs ?? ('of' in by ? `${String(by.times)} × ${by.of}` : `${String(by.value)} ${by.unit}`);
}
