/** Overpass for paper, and Noto Sans for letters that it lacks: which file has which letter, and what stands for letters that no file has. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { unpackFont } from './woff.ts';

export type FontWeight = 400 | 600 | 700 | 800;

/** Parts of the face, in the order in which they are asked for a letter. */
const SUBSETS = ['latin', 'latin-ext', 'vietnamese', 'cyrillic', 'cyrillic-ext'] as const;

/** Files of other faces, asked for letters that Overpass lacks: names of people are written in many scripts. */
const OTHERS = [
	'noto-sans/noto-sans-greek',
	'noto-sans/noto-sans-cyrillic',
	'noto-sans/noto-sans-cyrillic-ext',
	'noto-sans/noto-sans-latin-ext',
	'noto-sans/noto-sans-vietnamese',
	'noto-sans/noto-sans-greek-ext',
	'noto-sans-arabic/noto-sans-arabic-arabic',
	'noto-sans-hebrew/noto-sans-hebrew-hebrew',
	'noto-sans/noto-sans-devanagari'
] as const;

const FACE = SUBSETS.map((subset) => `overpass/overpass-${subset}`);

/** Letters of one font file, one after the other; or one letter that is drawn. */
export type Run =
	| { readonly kind: 'text'; readonly text: string; readonly font: string }
	| { readonly kind: 'drawn'; readonly letter: string; readonly glyph: DrawnGlyph };

/** A letter that the face does not have, in thousandths of the size: y upwards from the base line. */
export interface DrawnGlyph {
	readonly advance: number;
	readonly points: readonly (readonly [x: number, y: number])[];
	readonly closed: boolean;
	/** Filled, or stroked by a pen of so many thousandths. */
	readonly pen: number | 'filled';
}

const DRAWN: Readonly<Record<string, DrawnGlyph>> = {
	'√': { advance: 560, points: [[40, 330], [150, 390], [290, 10], [450, 790], [560, 790]], closed: false, pen: 62 },
	'▼': { advance: 700, points: [[50, 600], [650, 600], [350, 40]], closed: true, pen: 'filled' }
};

/** What stands for a letter that no file has: an empty box, so that one sees that something is missing. */
const MISSING: DrawnGlyph = { advance: 620, points: [[80, 0], [540, 0], [540, 700], [80, 700]], closed: true, pen: 50 };

/** Fractions that the face lacks, written out. */
const WRITTEN_OUT: Readonly<Record<string, string>> = { '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };

/** What is asked of a font file once it is read. */
export interface FontFile {
	readonly hasGlyphForCodePoint: (point: number) => boolean;
}

const require = createRequire(import.meta.url);
const files = new Map<string, Buffer>();

/** @param name as runs name it: package and file. @returns a font, read and unpacked once. @throws if the face is not installed */
export function fontFile(name: string): Buffer {
	let file = files.get(name);
	if (file === undefined) {
		const [face = '', part = ''] = name.split('/');
		file = unpackFont(readFileSync(require.resolve(`@fontsource/${face}/files/${part}.woff`)));
		files.set(name, file);
	}
	return file;
}

/** Unseen marks that carry no ink; joiners stay between letters whose form hangs on them. */
const UNSEEN = /[\u200b\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff]|(?<![\p{Script=Arabic}\p{Script=Devanagari}])[\u200c\u200d]|[\u200c\u200d](?![\p{Script=Arabic}\p{Script=Devanagari}])/gu;

/** @returns a text as it is set: fractions that the face lacks written out, no unseen marks. */
export function settable(text: string): string {
	return text
		.replace(UNSEEN, '')
		.replace(/(\d)?([⅛⅜⅝⅞])/gu, (_, before: string | undefined, part: string) => `${before === undefined ? '' : `${before} `}${WRITTEN_OUT[part] ?? part}`);
}

/**
 * Splits a text into runs of one font each.
 * @param file gives the opened font of a name
 */
export function runsOf(text: string, weight: FontWeight, file: (name: string) => FontFile): readonly Run[] {
	const runs: Run[] = [];
	let open = '';
	let font = '';
	const close = (): void => {
		if (open !== '') runs.push({ kind: 'text', text: open, font });
		open = '';
	};
	for (const letter of settable(text)) {
		const point = letter.codePointAt(0) ?? 0;
		const has = (name: string): boolean => file(name).hasGlyphForCodePoint(point);
		const named = (part: string): string => `${part}-${weight}-normal`;
		// A mark stays in the font of its letter where that has it.
		const at = font !== '' && open !== '' && /\p{M}/u.test(letter) && has(font) ? font : undefined;
		const name = at ?? FACE.map(named).find(has) ?? (Object.hasOwn(DRAWN, letter) ? undefined : OTHERS.map(named).find(has));
		if (name === undefined) {
			close();
			runs.push({ kind: 'drawn', letter, glyph: DRAWN[letter] ?? MISSING });
			continue;
		}
		if (name !== font) close();
		font = name;
		open += letter;
	}
	close();
	return runs;
}
