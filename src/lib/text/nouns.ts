/**
 * Names of places and things that a scenario writes, put into sentences.
 *
 * A scenario writes them with their article and a small letter ("the shelf", "la repisa", "los paneles
 * apilados"), because no program knows the gender of a Spanish noun. The drawing shows them without.
 */
import type { Language } from '#lib/quantity/index.ts';

const ARTICLES: Readonly<Record<Language, RegExp>> = Object.freeze({
	en: /^(?:the|an?) /i,
	es: /^(?:el|la|los|las|una?|unos|unas) /i
});

/** @returns a name as the drawing shows it: no article, a capital. */
export function labelOf(noun: string, language: Language): string {
	const bare = noun.replace(ARTICLES[language], '');
	return bare.charAt(0).toLocaleUpperCase(language) + bare.slice(1);
}

/**
 * @returns a name inside a sentence. English gets "the" where none is written, but for a numbered place
 * ("level 3"); a Spanish name without an article stays without.
 */
export function theOf(noun: string, language: Language): string {
	const small = noun.charAt(0).toLocaleLowerCase(language) + noun.slice(1);
	const bare = language === 'en' && !ARTICLES.en.test(noun) && !/\d$/.test(noun);
	return bare ? `the ${small}` : small;
}

/** @returns "de" before a Spanish name: de + el is "del". */
export function de(noun: string): string {
	return noun.startsWith('el ') ? `del ${noun.slice(3)}` : `de ${noun}`;
}

/** @returns "a" before a Spanish name: a + el is "al". */
export function a(noun: string): string {
	return noun.startsWith('el ') ? `al ${noun.slice(3)}` : `a ${noun}`;
}
