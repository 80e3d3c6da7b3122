/** Overpass for paper: which file has which letter, and what stands for letters that no file has. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

export type FontWeight = 400 | 600 | 700 | 800;

/** Parts of the face, in the order in which they are asked for a letter. */
const SUBSETS = ['latin', 'latin-ext', 'vietnamese', 'cyrillic', 'cyrillic-ext'] as const;

type Subset = (typeof SUBSETS)[number];

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

/** @returns the file of a font, read once. @throws if the face is not installed */
export function fontFile(name: string): Buffer {
	let file = files.get(name);
	if (file === undefined) {
		file = readFileSync(require.resolve(`@fontsource/overpass/files/${name}.woff`));
		files.set(name, file);
	}
	return file;
}

function fontName(subset: Subset, weight: FontWeight): string {
	return `overpass-${subset}-${weight}-normal`;
}

/** @returns the names of all font files of the face that sheets are set in. */
export function fontNames(): readonly string[] {
	return ([400, 600, 700, 800] as const).flatMap((weight) => SUBSETS.map((subset) => fontName(subset, weight)));
}

/** Unseen marks that carry no ink. */
const UNSEEN = /[\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/gu;

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
		const subset = SUBSETS.find((one) => file(fontName(one, weight)).hasGlyphForCodePoint(point));
		if (subset === undefined) {
			close();
			runs.push({ kind: 'drawn', letter, glyph: DRAWN[letter] ?? MISSING });
			continue;
		}
		const name = fontName(subset, weight);
		if (name !== font) close();
		font = name;
		open += letter;
	}
	close();
	return runs;
}
