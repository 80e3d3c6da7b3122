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

export class Placer {
	readonly solids: Box[] = [];
	readonly lines: Box[] = [];
	readonly texts: PlacedText[] = [];
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
			!this.texts.some((t) => overlaps(box, t.box, gap))
		);
	}

	/** Whether a line may run here: it may cross other lines. */
	lineFree(box: Box, gap = 4): boolean {
		return !this.solids.some((s) => overlaps(box, s, gap)) && !this.texts.some((t) => overlaps(box, t.box, gap));
	}

	/** Only words are in the way (an extension line may pass behind a thing). */
	clearOfText(box: Box, gap = 3): boolean {
		return !this.texts.some((t) => overlaps(box, t.box, gap));
	}

	add(texts: readonly PlacedText[]): void {
		this.texts.push(...texts);
	}
}
