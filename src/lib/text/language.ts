/** The languages of the catalogue, and what a page has to know of each. */
import type { Language } from '#lib/quantity/index.ts';

/** How far a language's texts have been looked at by somebody who may judge them. */
export type ReviewState =
	/** The language the texts are written in. */
	| 'original'
	/** Translated, and not yet reviewed by a bilingual competent person: the page and the record say so. */
	| 'draft'
	/** Reviewed by a bilingual competent person. */
	| 'reviewed';

export interface LanguageInfo {
	readonly id: Language;
	/** Its own name, as its speakers look for it. */
	readonly name: string;
	/** For the `lang` attribute of the page. */
	readonly lang: string;
	readonly review: ReviewState;
}

const INFO: Readonly<Record<Language, LanguageInfo>> = Object.freeze({
	en: Object.freeze({ id: 'en', name: 'English', lang: 'en', review: 'original' }),
	es: Object.freeze({ id: 'es', name: 'Español', lang: 'es', review: 'draft' })
});

/** All languages; the first is for whoever asks for none of them. */
export const LANGUAGES = ['en', 'es'] as const satisfies readonly [Language, ...Language[]];

/** @returns what a page has to know of a language. */
export function languageInfo(language: Language): LanguageInfo {
	return INFO[language];
}
