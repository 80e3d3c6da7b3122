/** What draws must keep, as an author picks it: a sentence, or a bound on any number. */
import { QUANTITIES, isGivenId, isQuantityId } from '#lib/arrest/index.ts';
import { isUnitId, readQuantity, type Dimension, type Language } from '#lib/quantity/index.ts';
import { SENTENCES, sentenceNamed, sentenceOf, type ToldBound } from '#lib/scenario/index.ts';
import { quantityFrom, quantityText } from './amounts.ts';
import { append, at, isObject, listAt, put, textAt, type Json } from './document.ts';
import { amountText, dimensionFor, unitOf } from './values.ts';

export type Side = 'atLeast' | 'atMost';

/** One bound of one constraint, as it is shown. */
export interface BoundRow {
	readonly index: number;
	readonly side: Side;
	readonly told: ToldBound;
	/** Whether an amount belongs to the sentence. */
	readonly takesAmount: boolean;
}

const SIDES = ['atLeast', 'atMost'] as const;

/** @returns the bounds of all constraints; of one that bounds nothing yet, none. */
export function boundRows(document: Json): readonly BoundRow[] {
	return listAt(document, ['constraints']).flatMap((entry, index) => {
		if (!isObject(entry)) return [];
		return SIDES.flatMap((side): BoundRow[] => {
			const bound = at(entry, [side]);
			if (bound === undefined) return [];
			const unfinished = { of: textAt(entry, ['of']), [side]: isObject(bound) ? bound : { value: NaN, unit: '' } };
			const [told] = sentenceOf(unfinished);
			return told === undefined ? [] : [{ index, side, told, takesAmount: 'of' in told || sentenceNamed(told.id)?.amount !== undefined }];
		});
	});
}

/** A first amount for a sentence that takes one, by unit. @reason in the middle of what sites have. */
const FIRST: Readonly<Record<string, number>> = { m: 1, ft: 3, in: 36, kg: 80, lb: 180, kN: 5, lbf: 1000, '1': 1 };

/** @returns the document with a sentence added; one that takes an amount begins with one of the scenario's unit. */
export function addSentence(document: Json, id: string): Json {
	const sentence = SENTENCES.find((one) => one.id === id);
	if (sentence === undefined) return document;
	const unit = sentence.amount === undefined ? undefined : unitOf(document, sentence.amount);
	const built = sentence.build(unit === undefined ? undefined : { value: FIRST[unit] ?? 1, unit });
	return append(document, ['constraints'], built);
}

/** The dimension of what a constraint binds; undefined for what is neither a given nor a quantity. */
function boundDimension(of: string): Dimension | undefined {
	const [name = ''] = of.split('@');
	return isGivenId(of) ? dimensionFor(of) : isQuantityId(name) ? QUANTITIES[name].dimension : undefined;
}

/** @returns the document with a bound on any given or quantity added. */
export function addBound(document: Json, of: string, side: Side): Json {
	const dimension = boundDimension(of);
	if (dimension === undefined) return document;
	const unit = unitOf(document, dimension);
	return append(document, ['constraints'], { of, [side]: { value: FIRST[unit] ?? 1, unit } });
}

/** @returns the document without one bound; the constraint goes with its last. */
export function withoutBound(document: Json, index: number, side: Side): Json {
	const other = side === 'atLeast' ? 'atMost' : 'atLeast';
	return at(document, ['constraints', index, other]) === undefined
		? put(document, ['constraints', index], undefined)
		: put(document, ['constraints', index, side], undefined);
}

/** @returns the amount of a bound as the language of the page writes it; what was typed where it is none. */
export function boundText(document: Json, { index, side }: Pick<BoundRow, 'index' | 'side'>, language: Language): string {
	const bound = at(document, ['constraints', index, side]);
	const value = at(bound ?? null, ['value']);
	if (typeof value === 'number') return quantityText(amountText({ value, unit: textAt(bound ?? null, ['unit']) }), language);
	return typeof bound === 'string' ? bound : textAt(bound ?? null, ['value']);
}

/** @returns the document with an amount as it was typed; what cannot be read stays as it is, to be found. */
export function withBound(document: Json, { index, side }: Pick<BoundRow, 'index' | 'side'>, typed: string, language: Language): Json {
	const path = ['constraints', index, side];
	const unit = textAt(document, [...path, 'unit']);
	const dimension = boundDimension(textAt(document, ['constraints', index, 'of']));
	const expected = isUnitId(unit) ? unit : dimension === undefined ? 'm' : unitOf(document, dimension);
	const reading = readQuantity(quantityFrom(typed, language) ?? '', { expected, language: 'en' });
	const read = reading.kind === 'read' && reading.written.style !== 'compound';
	return put(document, path, read ? { value: reading.value, unit: reading.unit } : typed);
}
