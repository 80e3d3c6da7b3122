import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { SHIPPED_IDS } from '#lib/course/index.ts';
import { LONGER, labelOf, lengthened, messages, pseudo, theOf } from '#lib/text/index.ts';
import { a, de } from '../../../src/lib/text/nouns.ts';
import { pluralOf } from '../../../src/lib/text/plural.ts';
import { everything } from './walk.ts';

describe('names from scenarios', () => {
	test.each([
		['the shelf', 'en', 'Shelf', 'the shelf'],
		['Shelf', 'en', 'Shelf', 'the shelf'],
		['an eye bolt', 'en', 'Eye bolt', 'an eye bolt'],
		['Level 3', 'en', 'Level 3', 'level 3'],
		['el nivel 3', 'es', 'Nivel 3', 'el nivel 3'],
		['theatre grid', 'en', 'Theatre grid', 'the theatre grid'],
		['la repisa', 'es', 'Repisa', 'la repisa'],
		['los paneles apilados', 'es', 'Paneles apilados', 'los paneles apilados'],
		['Repisa', 'es', 'Repisa', 'repisa'],
		['el último piso', 'es', 'Último piso', 'el último piso'],
		['Elevador', 'es', 'Elevador', 'elevador']
	] as const)('%s (%s) is %s in the drawing and %s in a sentence', (noun, language, label, the) => {
		expect(labelOf(noun, language)).toBe(label);
		expect(theOf(noun, language)).toBe(the);
	});

	test.each(SHIPPED_IDS)('%s writes its Spanish names with their article, which no program can know', (id) => {
		const file = new URL(`../../../src/lib/course/scenarios/${id}.json`, import.meta.url);
		const { words } = JSON.parse(readFileSync(file, 'utf8')) as {
			words: { es: { places: Record<string, string>; obstacles: Record<string, string> } };
		};
		const names = [...Object.values(words.es.places), ...Object.values(words.es.obstacles)];
		expect(names.length).toBeGreaterThan(2);
		expect(names.filter((name) => !/^(?:el|la|los|las) /.test(name))).toEqual([]);
	});

	test('Spanish joins de and a with el', () => {
		expect([de('el camión'), de('la repisa'), a('el camión'), a('los paneles')]).toEqual([
			'del camión',
			'de la repisa',
			'al camión',
			'a los paneles'
		]);
	});
});

describe('counted words', () => {
	test('take the form of the count', () => {
		const en = pluralOf('en');
		const forms = { one: 'one answer', other: 'answers' };
		expect([0, 1, 2].map((count) => en(count, forms))).toEqual(['answers', 'one answer', 'answers']);
		// Spanish has a form of its own for millions; without one given, "other" stands for it.
		expect(pluralOf('es')(1_000_000, { one: 'una', other: 'muchas' })).toBe('muchas');
		expect(pluralOf('es')(1_000_000, { one: 'una', many: 'un millón', other: 'muchas' })).toBe('un millón');
	});

	test('are used where answers wait', async () => {
		const { screen } = await messages('en');
		expect(screen.waiting({ count: 1 })).toContain('1 answer waits');
		expect(screen.waiting({ count: 3 })).toContain('3 answers wait');
		expect((await messages('es')).plan.persons({ count: 2 })).toBe('2 personas en este anclaje.');
	});
});

describe('the made-up long language', () => {
	test('makes each text a good third longer, keeps numbers, marks the ends', () => {
		const text = 'The margin of 1.00 m is not on your tape.';
		const long = lengthened(text);
		expect(long.length / text.length).toBeGreaterThanOrEqual(1 + LONGER - 0.02);
		expect(long).toMatch(/^\[.*\]$/);
		expect(long).toContain('1.00');
		expect(lengthened('')).toBe('');
	});

	test('covers every message, those with parts too', async () => {
		const en = await messages('en');
		const long = new Map(everything(pseudo(en), 'en').map(({ path, text }) => [path, text]));
		const short = everything(en, 'en').filter(({ path, text }) => text !== '' && !(long.get(path) ?? '').startsWith('['));
		expect(short.map(({ path }) => path)).toEqual([]);
		expect(long.size).toBe(everything(en, 'en').length);
	});
});
