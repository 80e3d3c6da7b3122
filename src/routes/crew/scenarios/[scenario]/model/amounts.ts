/** What an author types for numbers: read in the language of the page, written back into the document. */
import { isUnitId, readQuantity, type Language, type UnitId } from '#lib/quantity/index.ts';
import { at, isObject, textAt, type Json } from './document.ts';
import { amountText } from './values.ts';

/**
 * @returns the number of a text, as a document holds it; the text itself where it is none, so that nothing typed is
 * lost and the inspection names it; undefined where nothing was typed.
 */
export function numberFrom(text: string, language: Language): Json | undefined {
	const typed = text.trim();
	if (typed === '') return undefined;
	const reading = readQuantity(typed, { expected: '1', language });
	return reading.kind === 'read' && !reading.unitGiven ? reading.value : typed;
}

/** @returns a number of the document as the language of the page writes it; a text as it is. */
export function numberText(value: Json | undefined, language: Language): string {
	if (typeof value === 'number') return language === 'es' ? String(value).replace('.', ',') : String(value);
	return typeof value === 'string' ? value : '';
}

/** @returns an amount with its unit as the document writes it: with a point, whatever the language of the page. */
export function quantityFrom(text: string, language: Language): string | undefined {
	const typed = text.trim();
	if (typed === '') return undefined;
	return language === 'es' ? typed.replace(/(\d),(\d)/g, '$1.$2') : typed;
}

/** @returns an amount of the document as the language of the page writes it. */
export function quantityText(value: Json | undefined, language: Language): string {
	const text = typeof value === 'string' ? value : typeof value === 'number' ? String(value) : '';
	return language === 'es' ? text.replace(/(\d)\.(\d)/g, '$1,$2') : text;
}

/** @returns amounts of a choice as one text: "254 lb; 276 lb". What is no amount stands as it was typed. */
export function amountsText(among: readonly Json[], language: Language): string {
	return among
		.map((one) => {
			const value = at(one, ['value']);
			if (isObject(one) && typeof value === 'number') return quantityText(amountText({ value, unit: textAt(one, ['unit']) }), language);
			return typeof one === 'string' || typeof one === 'number' ? String(one) : '';
		})
		.join('; ');
}

/**
 * @param unit what a number without a unit is in.
 * @returns the amounts of such a text; a piece that cannot be read stays as it was typed.
 */
export function amountsFrom(text: string, unit: UnitId, language: Language): readonly Json[] {
	return text
		.split(';')
		.map((one) => one.trim())
		.filter((one) => one !== '')
		.map((piece): Json => {
			const reading = readQuantity(piece, { expected: unit, language });
			return reading.kind === 'read' && reading.written.style !== 'compound' ? { value: reading.value, unit: reading.unit } : piece;
		});
}

/** @returns the unit of a text; the other one where it names none. */
export function unitOr(text: string, other: UnitId): UnitId {
	return isUnitId(text) ? text : other;
}
