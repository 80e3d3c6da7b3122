import { describe, expect, test } from 'vitest';
import { LANGUAGES } from '#lib/text/index.ts';
import { countsOf, ease, englishSyllables, grade, spanishSyllables, wordsOf } from './readability.ts';
import { allMessages, everything, sentencesOf } from './walk.ts';

/** Longest sentence, and longest mean, in words (plain-language practice; reference: learning-and-records 9.3). */
const LONGEST = 20;
const MEAN = 15;
const HARDEST_GRADE = 8;
const LEAST_EASE = 70;
/** A section with fewer sentences says nothing by its mean. */
const ENOUGH = 4;

const MEASURES = {
	en: { syllables: englishSyllables, holds: (counts: Parameters<typeof grade>[0]) => grade(counts) <= HARDEST_GRADE },
	es: { syllables: spanishSyllables, holds: (counts: Parameters<typeof ease>[0]) => ease(counts) >= LEAST_EASE }
} as const;

describe('the measures themselves', () => {
	// Syllables as dictionaries part the words.
	test.each([
		['anchorage', 3],
		['clearance', 2],
		['elongation', 4],
		['measure', 2],
		['needed', 2],
		['pulled', 1],
		['label’s', 2],
		['D-ring', 2],
		['table', 2]
	])('%s has %i syllables', (word, count) => {
		expect(englishSyllables(word)).toBe(count);
	});

	test.each([
		['caída', 3],
		['espacio', 3],
		['alargamiento', 5],
		['cuerda', 2],
		['aérea', 4],
		['guía', 2],
		['que', 1],
		['muy', 1],
		['averigüe', 4]
	])('%s tiene %i sílabas', (word, count) => {
		expect(spanishSyllables(word)).toBe(count);
	});

	test('numbers are no words, and the formulas are those printed', () => {
		expect(wordsOf('It takes 1.20 m, or 3.9 ft.')).toEqual(['It', 'takes', 'm', 'or', 'ft']);
		// By hand: two sentences, ten words, fifteen syllables.
		const counts = { sentences: 2, words: 10, syllables: 15 };
		expect(grade(counts)).toBeCloseTo(0.39 * 5 + 11.8 * 1.5 - 15.59, 12);
		expect(ease(counts)).toBeCloseTo(206.84 - 90 - 5.1, 12);
	});

	test('a text that is hard to read is found', () => {
		const hard = ['Notwithstanding manufacturers’ documentation, personnel necessitating fall protection determine deceleration requirements.'];
		expect(grade(countsOf(hard, englishSyllables))).toBeGreaterThan(HARDEST_GRADE);
	});

	test('a decimal point ends no sentence, a label is none', () => {
		expect(sentencesOf('The margin of 1.00 m is missing. Look below.')).toHaveLength(2);
		expect(sentencesOf('Elongation, at most')).toHaveLength(0);
	});
});

describe.each(LANGUAGES)('plain words in %s', (language) => {
	const { syllables, holds } = MEASURES[language];

	test('no sentence is long', async () => {
		const long = everything(await allMessages(language), language).flatMap(({ path, text }) =>
			sentencesOf(text)
				.filter((sentence) => wordsOf(sentence).length > LONGEST)
				.map((sentence) => `${path}: ${sentence}`)
		);
		expect(long).toEqual([]);
	});

	test('the whole reads easily', async () => {
		const sentences = everything(await allMessages(language), language).flatMap(({ text }) => sentencesOf(text));
		const counts = countsOf(sentences, syllables);
		expect(counts.sentences).toBeGreaterThan(500);
		expect(counts.words / counts.sentences).toBeLessThanOrEqual(MEAN);
		expect(holds(counts)).toBe(true);
	});

	test('every part reads easily', async () => {
		const parts = new Map<string, string[]>();
		for (const { path, text } of everything(await allMessages(language), language)) {
			const part = path.split('.')[0] ?? '';
			parts.set(part, [...(parts.get(part) ?? []), ...sentencesOf(text)]);
		}
		const hard = [...parts].filter(([, sentences]) => sentences.length >= ENOUGH && !holds(countsOf(sentences, syllables)));
		expect(hard.map(([part]) => part)).toEqual([]);
	});
});
