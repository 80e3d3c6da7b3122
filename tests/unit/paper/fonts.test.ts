import { describe, expect, it } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { openPaper } from '#lib/paper/paper-document.ts';
import { runsOf, settable } from '#lib/paper/fonts.ts';
import { messages, staffMessages } from '#lib/text/index.ts';

const { pen } = openPaper({ size: 'a4', language: 'en', title: 'Letters', at: new Date('2026-11-25T09:00:00.000Z') });
const STYLE = { size: 10, weight: 400 } as const;

/** Every text that stands somewhere in a value; those that take parts are not called. */
function* textsIn(value: unknown): Generator<string> {
	if (typeof value === 'string') yield value;
	else if (typeof value === 'object' && value !== null) for (const one of Object.values(value)) yield* textsIn(one);
}

/** Letters that every font of a pretended face has, but these. */
function without(...missing: readonly string[]) {
	return (name: string) => ({ hasGlyphForCodePoint: (point: number) => name.includes('-latin-400') && !missing.includes(String.fromCodePoint(point)) });
}

describe('the face on paper', () => {
	it('splits a text where a letter comes from another file, and draws what no file has', () => {
		expect(runsOf('a√b', 400, without('√'))).toMatchObject([
			{ kind: 'text', text: 'a' },
			{ kind: 'drawn', letter: '√', glyph: { pen: 62 } },
			{ kind: 'text', text: 'b' }
		]);
		expect(runsOf('خ', 400, without('خ'))).toMatchObject([{ kind: 'drawn', letter: 'خ', glyph: { closed: true } }]);
	});

	it('writes out fractions that the face lacks, and leaves out unseen marks', () => {
		expect(settable('14′ 4⅜″')).toBe('14′ 4 3/8″');
		expect(settable('⅝″')).toBe('5/8″');
		expect(settable('4½″')).toBe('4½″');
		expect(settable('\u2067Ada\u2069')).toBe('Ada');
	});

	it('has every letter of the sites and of all words, in both languages', async () => {
		const words = [...(await Promise.all((['en', 'es'] as const).flatMap((language) => [messages(language), staffMessages(language)]))), shippedScenarios().map((one) => one.words)];
		const letters = new Set([...textsIn(words)].flatMap((text) => [...settable(text)]));
		// A letter that no file has is drawn, and as wide as the box that stands for it.
		const boxes = [...letters].filter((letter) => letter.trim() !== '' && Math.abs(pen.width(letter, STYLE) - 6.2) < 1e-9);
		// Signs of screens that no sheet has: keys, and bounds of rule tables.
		expect(boxes.filter((letter) => !'←→∞≈'.includes(letter))).toEqual([]);
		expect(letters.size).toBeGreaterThan(80);
	});

	it('breaks lines at spaces, and a word that is wider than the line where it must', () => {
		const lines = pen.wrap(`Tie off here ${'x'.repeat(80)} now`, STYLE, 100);
		expect(lines.every((line) => pen.width(line, STYLE) <= 100)).toBe(true);
		expect(lines.join('').replaceAll(' ', '')).toBe(`Tieoffhere${'x'.repeat(80)}now`);
		expect(pen.wrap('  ', STYLE, 100)).toEqual([]);
	});
});
