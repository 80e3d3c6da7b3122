/**
 * How easily a text reads.
 *
 * English: Flesch–Kincaid grade, 0.39 words/sentence + 11.8 syllables/word − 15.59 (Kincaid et al. 1975; from memory).
 * Spanish: Fernández Huerta 1959 as corrected, 206.84 − 60 syllables/word − 1.02 words/sentence (from memory).
 */

/** Words with letters; numbers stand for themselves and count for neither. */
export function wordsOf(sentence: string): readonly string[] {
	return (sentence.match(/[\p{L}’'-]+/gu) ?? []).filter((word) => /\p{L}/u.test(word));
}

/** @returns how many syllables an English word has, by its groups of vowels. */
export function englishSyllables(word: string): number {
	return word
		.toLowerCase()
		.split('-')
		.map((part) => part.replace(/[’'](?:s|t|re|ll|ve)?$/, ''))
		.reduce((sum, part) => sum + englishPart(part), 0);
}

function englishPart(part: string): number {
	if (part === '') return 0;
	if (part.length <= 3) return 1;
	const stem = part.replace(/(?:[^laeiouy]es|[^tdaeiouy]ed|[^laeiouy]e)$/, '').replace(/^y/, '');
	return Math.max(1, (stem.match(/[aeiouy]{1,2}/g) ?? []).length);
}

/** @returns how many syllables a Spanish word has: strong vowels and stressed weak ones part, the rest join. */
export function spanishSyllables(word: string): number {
	const sounded = word
		.toLowerCase()
		.replace(/qu(?=[eéií])/g, 'k')
		.replace(/gu(?=[eéií])/g, 'g')
		.replace(/y$/, 'i')
		.replace(/y(?![aeiouáéíóú])/g, 'i');
	const groups = sounded.match(/[aeiouáéíóúü]+/g) ?? [];
	return Math.max(
		1,
		groups.reduce((sum, group) => sum + Math.max(1, (group.match(/[aeoáéóíú]/g) ?? []).length), 0)
	);
}

export interface Counts {
	readonly sentences: number;
	readonly words: number;
	readonly syllables: number;
}

export function countsOf(sentences: readonly string[], syllables: (word: string) => number): Counts {
	const words = sentences.flatMap(wordsOf);
	return {
		sentences: sentences.length,
		words: words.length,
		syllables: words.reduce((sum, word) => sum + syllables(word), 0)
	};
}

/** Flesch–Kincaid grade: school years. */
export function grade({ sentences, words, syllables }: Counts): number {
	return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

/** Fernández Huerta: 100 is very easy, 70 and more fairly easy. */
export function ease({ sentences, words, syllables }: Counts): number {
	return 206.84 - 60 * (syllables / words) - 1.02 * (words / sentences);
}
