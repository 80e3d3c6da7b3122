/**
 * Finds room. Solid things, lines and words each keep clear of one another: words touch nothing; lines may
 * cross lines, but no words and no solid thing.
 */
import { ASCENT, DESCENT, textWidth, wrapText } from './text-width.ts';
import { type Box, overlaps, within } from './box.ts';

/** One line of text, as it is set. `baseline` and the box are in px. */
export interface PlacedText {
	readonly text: string;
	readonly size: number;
	readonly weight: 600 | 700;
	readonly anchor: 'start' | 'middle' | 'end';
	readonly x: number;
	readonly baseline: number;
	readonly box: Box;
	/** 'name' is set in the second ink, 'number' in full ink, 'own' in the learner's colour. */
	readonly tone: 'number' | 'name' | 'own';
	/** Of several dimensions on one line, the one that it belongs to, by its id. */
	readonly of?: string;
}

/** A block of lines set over each other. */
export interface TextBlock {
	readonly lines: readonly { readonly text: string; readonly size: number; readonly weight: 600 | 700; readonly tone: PlacedText['tone'] }[];
	readonly width: number;
	readonly height: number;
}

const LEADING = 3;

export function block(lines: TextBlock['lines']): TextBlock {
	const shown = lines.filter((l) => l.text !== '');
	return {
		lines: shown,
		width: Math.max(0, ...shown.map((l) => textWidth(l.text, l.size))),
		height:
			shown.reduce((sum, l) => sum + l.size * (ASCENT + DESCENT), 0) + LEADING * Math.max(0, shown.length - 1)
	};
}

/** Number over name, the name broken at `width` px. */
export function numberOverName(label: string, name: string, size: number, nameSize: number, width = Infinity): TextBlock {
	return block([
		{ text: label, size, weight: 700, tone: 'number' },
		...wrapText(name, nameSize, width).map((text) => ({ text, size: nameSize, weight: 600 as const, tone: 'name' as const }))
	]);
}

/** Sets a block with its top at `top`, aligned at x. */
export function setBlock(b: TextBlock, x: number, top: number, anchor: PlacedText['anchor']): PlacedText[] {
	let y = top;
	return b.lines.map((l) => {
		const w = textWidth(l.text, l.size);
		const left = anchor === 'start' ? x : anchor === 'end' ? x - w : x - w / 2;
		const baseline = y + l.size * ASCENT;
		const bottom = baseline + l.size * DESCENT;
		const placed: PlacedText = { ...l, anchor, x, baseline, box: { left, right: left + w, top: y, bottom } };
		y = bottom + LEADING;
		return placed;
	});
}

export function blockBox(b: TextBlock, x: number, top: number, anchor: PlacedText['anchor']): Box {
	const left = anchor === 'start' ? x : anchor === 'end' ? x - b.width : x - b.width / 2;
	return { left, right: left + b.width, top, bottom: top + b.height };
}

/** Height of the rows in which outlines are kept, px. */
const ROW = 24;

export class Placer {
	readonly solids: Box[] = [];
	readonly lines: Box[] = [];
	readonly texts: PlacedText[] = [];
	/** Outlines of the backdrop: words keep off them, but rather cross one (with a halo) than be left out. */
	private readonly outlines = new Map<number, Box[]>();
	/** Set while a word that found no room may cross an outline. */
	relaxed = false;
	/** Upright dimension lines, with the room they keep from each other. */
	readonly columns: Box[] = [];
	readonly sheet: Box;

	constructor(sheet: Box) {
		this.sheet = sheet;
	}

	/** Whether words may stand here. */
	textFree(box: Box, gap = 4): boolean {
		return (
			within(box, this.sheet) &&
			!this.solids.some((s) => overlaps(box, s, gap - 1)) &&
			!this.lines.some((s) => overlaps(box, s, gap - 1)) &&
			(this.relaxed || !this.crossesOutline(box, gap - 1)) &&
			!this.texts.some((t) => overlaps(box, t.box, gap))
		);
	}

	/** Takes up outlines, sorted into rows so that few need to be looked at. */
	addOutlines(boxes: readonly Box[]): void {
		for (const box of boxes) {
			for (let row = Math.floor(box.top / ROW); row <= Math.floor(box.bottom / ROW); row++) {
				const there = this.outlines.get(row);
				if (there === undefined) this.outlines.set(row, [box]);
				else there.push(box);
			}
		}
	}

	private crossesOutline(box: Box, gap: number): boolean {
		for (let row = Math.floor((box.top - gap) / ROW); row <= Math.floor((box.bottom + gap) / ROW); row++) {
			if (this.outlines.get(row)?.some((s) => overlaps(box, s, gap)) === true) return true;
		}
		return false;
	}

	/** Whether a line may run here: it may cross other lines. */
	lineFree(box: Box, gap = 4): boolean {
		return !this.solids.some((s) => overlaps(box, s, gap)) && !this.texts.some((t) => overlaps(box, t.box, gap));
	}

	/** Only words are in the way (an extension line may pass behind a thing). */
	clearOfText(box: Box, gap = 3): boolean {
		return !this.texts.some((t) => overlaps(box, t.box, gap));
	}

	/** Marks what is placed so far; the returned function takes away what came after. */
	mark(): () => void {
		const [texts, lines, columns, solids] = [this.texts.length, this.lines.length, this.columns.length, this.solids.length];
		return () => {
			this.texts.length = texts;
			this.lines.length = lines;
			this.columns.length = columns;
			this.solids.length = solids;
		};
	}

	/** Runs a search again in which words may cross outlines, when the first one found nothing. */
	secondTry<T>(search: () => T | null): T | null {
		const first = search();
		if (first !== null) return first;
		this.relaxed = true;
		const second = search();
		this.relaxed = false;
		return second;
	}

	add(texts: readonly PlacedText[]): void {
		this.texts.push(...texts);
	}
}
