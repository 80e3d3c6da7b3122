/** Sets words on a page and measures them: the one place that knows how the PDF library takes fonts. */
import type PDFDocument from 'pdfkit';
import { hasLeftward, inSightOrder } from './direction.ts';
import { fontFile, runsOf, type FontFile, type FontWeight, type Run } from './fonts.ts';

type Document = InstanceType<typeof PDFDocument>;

/** The inks of a sheet: black on white, greys for what carries no meaning by itself. */
export const INK = '#000000';
export const FAINT = '#b0b0b0';

export interface TextStyle {
	readonly size: number;
	readonly weight: FontWeight;
}

export interface TextPlace {
	readonly x: number;
	readonly baseline: number;
	readonly anchor?: 'start' | 'middle' | 'end';
	/** A white edge round the letters, so wide, that keeps lines off them. */
	readonly halo?: number;
}

/** A run with its width. */
interface Measured {
	readonly runs: readonly (Run & { readonly width: number })[];
	readonly width: number;
}

/** Texts are measured again and again while room is sought. @reason a copy has a few hundred different words. */
const MOST_KEPT = 4000;

/** The library's own font object, which its types do not tell. */
interface OpenedFont {
	readonly _font: { readonly font: FontFile };
}

export class Pen {
	readonly doc: Document;
	readonly #opened = new Map<string, FontFile>();
	readonly #measured = new Map<string, Measured>();

	constructor(doc: Document) {
		this.doc = doc;
	}

	/** Width of a text on one line. */
	width(text: string, style: TextStyle): number {
		return this.#measure(text, style).width;
	}

	/** Sets one line of text. */
	print(text: string, { size, weight }: TextStyle, { x, baseline, anchor = 'start', halo }: TextPlace): void {
		const { runs, width } = this.#measure(text, { size, weight });
		const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
		if (halo !== undefined) this.#runs(runs, size, left, baseline, halo);
		this.#runs(runs, size, left, baseline, undefined);
	}

	/** A text broken into lines at spaces; a word wider than the line is broken where it must be. */
	wrap(text: string, style: TextStyle, width: number): readonly string[] {
		const lines: string[] = [];
		let line = '';
		for (const word of text.split(/\s+/).filter((one) => one !== '')) {
			const longer = line === '' ? word : `${line} ${word}`;
			if (this.width(longer, style) <= width) {
				line = longer;
				continue;
			}
			if (line !== '') lines.push(line);
			const pieces = this.#broken(word, style, width);
			lines.push(...pieces.slice(0, -1));
			line = pieces.at(-1) ?? '';
		}
		if (line !== '') lines.push(line);
		return lines;
	}

	#broken(word: string, style: TextStyle, width: number): readonly string[] {
		if (this.width(word, style) <= width) return [word];
		const pieces: string[] = [];
		let piece = '';
		for (const letter of word) {
			if (piece !== '' && this.width(piece + letter, style) > width) {
				pieces.push(piece);
				piece = '';
			}
			piece += letter;
		}
		return [...pieces, piece];
	}

	#file(name: string): FontFile {
		let file = this.#opened.get(name);
		if (file === undefined) {
			this.doc.registerFont(name, fontFile(name)).font(name);
			file = (this.doc as unknown as OpenedFont)._font.font;
			this.#opened.set(name, file);
		}
		return file;
	}

	/** The runs of a line from left to right. */
	#inOrder(text: string, weight: FontWeight): readonly Run[] {
		const runs = (part: string): readonly Run[] => runsOf(part, weight, (name) => this.#file(name));
		if (!hasLeftward(text)) return runs(text);
		// Letters of a run are set the right way round by the font library; runs of several fonts are not.
		return inSightOrder(text).flatMap((one) => (one.leftward ? runs(one.text).toReversed() : runs(one.text)));
	}

	#measure(text: string, { size, weight }: TextStyle): Measured {
		const key = `${weight} ${text}`;
		let measured = this.#measured.get(key);
		if (measured === undefined) {
			const runs = this.#inOrder(text, weight).map((run) => ({
				...run,
				width: run.kind === 'drawn' ? run.glyph.advance / 1000 : this.doc.font(run.font).fontSize(1).widthOfString(run.text)
			}));
			measured = { runs, width: runs.reduce((sum, run) => sum + run.width, 0) };
			if (this.#measured.size >= MOST_KEPT) this.#measured.clear();
			this.#measured.set(key, measured);
		}
		return { runs: measured.runs.map((run) => ({ ...run, width: run.width * size })), width: measured.width * size };
	}

	#runs(runs: Measured['runs'], size: number, left: number, baseline: number, halo: number | undefined): void {
		let x = left;
		for (const run of runs) {
			if (run.kind === 'drawn') {
				if (halo === undefined) this.#glyph(run, size, x, baseline);
			} else {
				const doc = this.doc.font(run.font).fontSize(size);
				const options = { lineBreak: false, baseline: 'alphabetic' } as const;
				if (halo === undefined) doc.fillColor(INK).text(run.text, x, baseline, options);
				else doc.lineWidth(halo).lineJoin('round').undash().strokeColor('#ffffff').fillColor('#ffffff').text(run.text, x, baseline, { ...options, stroke: true, fill: true });
			}
			x += run.width;
		}
	}

	#glyph(run: Extract<Run, { kind: 'drawn' }>, size: number, x: number, baseline: number): void {
		const { points, closed, pen } = run.glyph;
		const at = (value: number): number => (value * size) / 1000;
		this.doc.save();
		for (const [i, [u, v]] of points.entries()) {
			if (i === 0) this.doc.moveTo(x + at(u), baseline - at(v));
			else this.doc.lineTo(x + at(u), baseline - at(v));
		}
		if (closed) this.doc.closePath();
		if (pen === 'filled') this.doc.fill(INK);
		else this.doc.lineWidth(at(pen)).lineJoin('miter').undash().stroke(INK);
		this.doc.restore();
	}
}
