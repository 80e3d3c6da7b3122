/** How hard a scenario's words are to read: sentence lengths and one published measure a language. */
import type { Language } from '#lib/quantity/index.ts';
import type { Scenario } from './schema.ts';

/** A text of a scenario and where it stands in the document. */
export interface PlacedText {
	readonly path: readonly (string | number)[];
	readonly text: string;
}

export interface Reading {
	readonly sentences: number;
	readonly words: number;
	readonly wordsPerSentence: number;
	readonly syllablesPerWord: number;
	readonly longest: { readonly path: readonly (string | number)[]; readonly sentence: string; readonly words: number };
	/** English: Flesch–Kincaid grade, lower is easier. Spanish: Fernández-Huerta index, higher is easier. */
	readonly measure: number;
}

/** @source Kincaid et al. 1975, Derivation of new readability formulas: 0.39 words/sentence + 11.8 syllables/word − 15.59; from memory. */
const FLESCH_KINCAID = { sentence: 0.39, word: 11.8, from: -15.59 };
/** @source Fernández Huerta 1959, Medidas sencillas de lecturabilidad: 206.84 − 60 syllables/word − 1.02 words/sentence; from memory. */
const FERNANDEZ_HUERTA = { sentence: -1.02, word: -60, from: 206.84 };

/** @returns every text of a scenario that makes up sentences, in a language. */
export function textsOf(scenario: Scenario, language: Language): readonly PlacedText[] {
	const { lead, body, facts } = scenario.words[language];
	const at = ['words', language];
	return [
		{ path: [...at, 'lead'], text: lead },
		...body.map((text, i) => ({ path: [...at, 'body', i], text })),
		...Object.entries(facts).flatMap(([fact, sentences]) =>
			Object.entries(sentences).map(([state, text]) => ({ path: [...at, 'facts', fact, state], text }))
		)
	].filter((one) => one.text !== '');
}

/** @returns the measures of some texts; undefined if they hold no sentence. */
export function readingOf(texts: readonly PlacedText[], language: Language): Reading | undefined {
	const sentences = texts.flatMap(({ path, text }) =>
		text
			.split(/(?<=[.!?])\s+/)
			.filter((one) => one !== '')
			.map((sentence) => ({ path, sentence, words: wordsOf(sentence).length }))
	);
	const first = sentences[0];
	if (first === undefined) return undefined;
	const words = sentences.flatMap(({ sentence }) => wordsOf(sentence));
	const wordsPerSentence = words.length / sentences.length;
	const syllablesPerWord = words.reduce((sum, word) => sum + syllables(word, language), 0) / words.length;
	const formula = language === 'en' ? FLESCH_KINCAID : FERNANDEZ_HUERTA;
	return {
		sentences: sentences.length,
		words: words.length,
		wordsPerSentence,
		syllablesPerWord,
		longest: sentences.reduce((longest, one) => (one.words > longest.words ? one : longest), first),
		measure: formula.sentence * wordsPerSentence + formula.word * syllablesPerWord + formula.from
	};
}

/** Words, a slot counted as one. */
function wordsOf(sentence: string): readonly string[] {
	return sentence.match(/\{[^{}]*\}|[\p{L}\p{N}]+(?:['’-][\p{L}\p{N}]+)*/gu) ?? [];
}

/** Syllables by groups of vowels: near enough for a measure over a whole text. A slot counts as a name of two. */
function syllables(word: string, language: Language): number {
	if (word.startsWith('{')) return 2;
	const small = word.toLowerCase();
	if (language === 'es') {
		// Two strong vowels, or a stressed weak one beside another, are two syllables.
		const parted = small.replace(/([aeoáéó])(?=[aeoáéóíú])/g, '$1-').replace(/([íú])(?=[aeoáéó])/g, '$1-').replace(/([qg])u(?=[eiéí])/g, '$1');
		return Math.max(1, parted.match(/[aeiouyáéíóúü]+/g)?.length ?? 0);
	}
	const spoken = small.replace(/(?:[^laeiouy]es|[^td]ed|[^l]e)$/, (end) => end.slice(0, 1));
	return Math.max(1, spoken.match(/[aeiouy]+/g)?.length ?? 0);
}
