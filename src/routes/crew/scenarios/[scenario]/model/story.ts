/** Texts of a story: slots that stand for numbers, and putting one where the cursor is. */
import { listAt, put, textAt, type Json, type Path } from './document.ts';

/** @returns a text with a slot in place of what is selected, and where the cursor is behind it. */
export function withSlot(text: string, slot: string, from: number, to: number): { readonly text: string; readonly cursor: number } {
	const [start, end] = [Math.min(from, to, text.length), Math.min(Math.max(from, to), text.length)];
	const put = `{${slot}}`;
	return { text: text.slice(0, start) + put + text.slice(end), cursor: start + put.length };
}

/** @returns what stands in braces in a text. */
export function slotsIn(text: string): readonly string[] {
	return [...text.matchAll(/\{([^{}]*)\}/g)].map((match) => match[1] ?? '');
}

/** @reason the schema's greatest number of paragraphs. */
export const MOST_PARAGRAPHS = 6;

/** @returns the paragraphs of a story in a language. */
export function paragraphsOf(document: Json, language: string): readonly { readonly path: Path; readonly text: string }[] {
	const path = ['words', language, 'body'];
	return listAt(document, path).map((_, i) => ({ path: [...path, i], text: textAt(document, [...path, i]) }));
}

/** @returns the names of people as one text, and the document with such a text taken apart again. */
export function namesText(document: Json): string {
	return listAt(document, ['people']).map(String).join(', ');
}

/** @returns the document with the people of a text that names them with commas between. */
export function withNames(document: Json, text: string): Json {
	return put(
		document,
		['people'],
		text
			.split(/[,;\n]/)
			.map((one) => one.trim())
			.filter((one) => one !== '')
	);
}
