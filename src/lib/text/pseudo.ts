/**
 * A made-up language for tests of the layout: the same messages, each about a third longer, with accents,
 * in brackets, so that a text that is cut or not taken from the catalogue is seen.
 */
import type { Messages } from './en/index.ts';

const ACCENTED: Readonly<Record<string, string>> = Object.freeze({
	a: 'á', e: 'é', i: 'í', o: 'ó', u: 'ú', A: 'Á', E: 'É', I: 'Í', O: 'Ó', U: 'Ú', n: 'ñ', N: 'Ñ', c: 'ç', C: 'Ç'
});

/** By how much a translation may be longer than the English text. */
export const LONGER = 0.35;

/** @returns a text about a third longer and accented; an empty one stays empty. */
export function lengthened(text: string): string {
	if (text === '') return text;
	const padding = Math.max(0, Math.ceil(text.length * LONGER) - 2);
	const words = ' õñ'.repeat(Math.ceil(padding / 3)).slice(0, padding).trimEnd();
	const accented = [...text].map((letter) => ACCENTED[letter] ?? letter).join('');
	return `[${accented}${words}]`;
}

function stretched(value: unknown): unknown {
	if (typeof value === 'string') return lengthened(value);
	if (typeof value === 'function') return (...parts: unknown[]) => stretched(Reflect.apply(value, undefined, parts));
	if (Array.isArray(value)) return value.map(stretched);
	if (typeof value === 'object' && value !== null) {
		return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, stretched(inner)]));
	}
	return value;
}

/** @returns the messages of a language, stretched. */
export function pseudo(messages: Messages): Messages {
	return stretched(messages) as Messages;
}
