/** What many draws show, as numbers ready to be written. */
import { toSI, writeQuantity, type Language, type UnitId } from '#lib/quantity/index.ts';
import type { AlikePair, AnswerSpread, Inspection } from '#lib/scenario/index.ts';

/** @reason more pairs than anybody looks at. */
const MOST_PAIRS = 6;
/** @reason rarer than this, such tries are turned down and nobody notices. */
const LEAST_SHARE = 0.02;

/** @returns the slips that fall together most often. */
export function notableAlike({ alike }: Inspection): readonly AlikePair[] {
	return alike.filter((one) => one.share >= LEAST_SHARE).toSorted((a, b) => b.share - a.share).slice(0, MOST_PAIRS);
}

/** @returns a number of an answer's unit, written with it. */
export function spreadValue(value: number, unit: UnitId, language: Language): string {
	return writeQuantity(toSI(value, unit), { unit, language });
}

/** Where the five numbers of a spread lie on a line from nought to one. */
export interface SpreadPlaces {
	readonly from: number;
	readonly first: number;
	readonly middle: number;
	readonly third: number;
	readonly to: number;
}

/** @returns the places of a spread on its own line, with a little room at the ends; undefined where no draw gives a value. */
export function spreadPlaces({ values }: AnswerSpread): SpreadPlaces | undefined {
	if (values === undefined) return undefined;
	const [from, first, middle, third, to] = values;
	const span = to - from;
	const place = (value: number): number => (span === 0 ? 1 / 2 : (value - from) / span);
	return { from: place(from), first: place(first), middle: place(middle), third: place(third), to: place(to) };
}
