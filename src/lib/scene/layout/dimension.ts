/** Dimension lines: upright numbers in a gap of the line; no number touches anything. Pixels. */
import { type Box, overlaps } from './box.ts';
import { block, blockBox, numberOverName, type PlacedText, type Placer, setBlock, type TextBlock } from './placer.ts';
import { ASCENT, DESCENT, textWidth } from './text-width.ts';

export interface Segment {
	readonly x1: number;
	readonly y1: number;
	readonly x2: number;
	readonly y2: number;
}

export interface PlacedDimension {
	readonly id: string;
	readonly axis: 'vertical' | 'horizontal';
	/** The dimension line, in one or two pieces. */
	readonly lines: readonly Segment[];
	/** Tips of the arrows with the way they point: 0 right, 90 down, 180 left, 270 up. */
	readonly arrows: readonly { readonly x: number; readonly y: number; readonly angle: number }[];
	/** Extension lines. */
	readonly extensions: readonly Segment[];
	readonly texts: readonly PlacedText[];
	/** The common level of a running dimension. */
	readonly origin?: { readonly x: number; readonly y: number };
}

export interface DimensionSizes {
	readonly number: number;
	readonly name: number;
	/** Widest name, px; longer ones are broken. */
	readonly nameWidth: number;
}

export interface VerticalRequest {
	readonly id: string;
	readonly label: string;
	readonly name: string;
	/** Rows of the two ends, upper first. */
	readonly top: number;
	readonly bottom: number;
	/** Where the measured things end: extension lines start there; null where a level line is already there. */
	readonly topFrom: number | null;
	readonly bottomFrom: number | null;
	/** First and last column to try. */
	readonly from: number;
	readonly until: number;
	/** Rows that the number must not stand on (a break band). */
	readonly avoid: readonly Box[];
	/** Rows where extension lines of others will pass. */
	readonly keepOff: readonly number[];
}

const ARROW = 10;

export function thinBox(a: Segment): Box {
	return {
		left: Math.min(a.x1, a.x2) - 1,
		right: Math.max(a.x1, a.x2) + 1,
		top: Math.min(a.y1, a.y2) - 1,
		bottom: Math.max(a.y1, a.y2) + 1
	};
}

function rowsToTry(lo: number, hi: number): number[] {
	const rows: number[] = [];
	const mid = (lo + hi) / 2;
	const reach = (hi - lo) / 2;
	for (let d = 0; d <= reach; d += 5) {
		rows.push(mid + d);
		if (d > 0) rows.push(mid - d);
	}
	return rows;
}

/**
 * A vertical dimension in the nearest column that has room for line and number; null when none has. First
 * with the number clear of the rows where other extension lines will pass, then anywhere.
 */
export function placeVertical(r: VerticalRequest, sizes: DimensionSizes, placer: Placer): PlacedDimension | null {
	const text = numberOverName(r.label, r.name, sizes.number, sizes.name, sizes.nameWidth);
	const direction = r.until >= r.from ? 1 : -1;
	const steps = Math.floor(Math.abs(r.until - r.from) / 3);
	const room = r.bottom - r.top - 2 * (ARROW + 5);
	const put = (placed: PlacedDimension | null): PlacedDimension | null => {
		if (placed !== null) commit(placed, placer);
		return placed;
	};
	for (const rows of [r.keepOff, []]) {
		for (let i = 0; i <= (rows.length > 0 ? Math.min(steps, NEAR) : steps); i++) {
			const x = r.from + direction * i * 3;
			const placed =
				(room >= text.height ? inGap(r, x, text, rows, placer) : null) ??
				(rows.length > 0 || room < text.height ? beside(r, x, text, rows, direction, placer) : null);
			if (placed !== null) return put(placed);
		}
	}
	for (let i = -2; i <= steps; i++) {
		const placed = beyond(r, r.from + direction * i * 3, text, placer);
		if (placed !== null) return put(placed);
	}
	return null;
}

/** No room beside the line: the number stands over its upper end. */
function beyond(r: VerticalRequest, x: number, text: TextBlock, placer: Placer): PlacedDimension | null {
	if (!clear(r, x, placer)) return null;
	const shape = text.lines.length > 1 ? onOneLine(text) : text;
	for (const up of [6, 12, 20]) {
		for (const dx of [0, -8, 8, -18, 18, -30, 30, -44, 44]) {
			const top = r.top - up - shape.height;
			const box = blockBox(shape, x + dx, top, 'middle');
			if (!placer.textFree(box, 4)) continue;
			return {
				id: r.id,
				axis: 'vertical',
				lines: [{ x1: x, y1: r.top, x2: x, y2: r.bottom }],
				arrows: [
					{ x, y: r.top, angle: 270 },
					{ x, y: r.bottom, angle: 90 }
				],
				extensions: extensions(r, x),
				texts: setLine(shape, box.left, top)
			};
		}
	}
	return null;
}

/** Columns tried while the number also keeps off the rows of others: 120 px. */
const NEAR = 40;

function straddles(box: Box, rows: readonly number[]): boolean {
	return rows.some((y) => y > box.top - 3 && y < box.bottom + 3);
}

/** Extension lines from the thing to the column, 5 px over it; none where the column stands at the thing. */
function extensions(r: VerticalRequest, x: number): Segment[] {
	const out: Segment[] = [];
	for (const [y, from] of [
		[r.top, r.topFrom],
		[r.bottom, r.bottomFrom]
	] as const) {
		if (from === null) continue;
		const sign = x >= from ? 1 : -1;
		const start = from + sign * 5;
		if (Math.abs(x - from) > 6) out.push({ x1: start, y1: y, x2: x + sign * 5, y2: y });
	}
	return out;
}

function clear(r: VerticalRequest, x: number, placer: Placer): boolean {
	const line = { left: x - 3, right: x + 3, top: r.top + 3, bottom: r.bottom - 3 };
	if (line.right > placer.sheet.right || line.left < placer.sheet.left) return false;
	if (placer.columns.some((c) => overlaps(c, line, 8))) return false;
	return placer.lineFree(line, 4) && extensions(r, x).every((e) => placer.clearOfText(thinBox(e)));
}

function inGap(r: VerticalRequest, x: number, text: TextBlock, rows: readonly number[], placer: Placer): PlacedDimension | null {
	if (!clear(r, x, placer)) return null;
	const half = text.height / 2;
	for (const y of rowsToTry(r.top + ARROW + 5 + half, r.bottom - ARROW - 5 - half)) {
		const box = blockBox(text, x, y - half, 'middle');
		if (r.avoid.some((a) => a.top < box.bottom + 4 && box.top - 4 < a.bottom)) continue;
		if (straddles(box, rows) || !placer.textFree(box, 5)) continue;
		return {
			id: r.id,
			axis: 'vertical',
			lines: [
				{ x1: x, y1: r.top, x2: x, y2: box.top - 4 },
				{ x1: x, y1: box.bottom + 4, x2: x, y2: r.bottom }
			],
			arrows: [
				{ x, y: r.top, angle: 270 },
				{ x, y: r.bottom, angle: 90 }
			],
			extensions: extensions(r, x),
			texts: setBlock(text, x, y - half, 'middle')
		};
	}
	return null;
}

/** Too short for a gap: the number stands beside the line; very short ones have their arrows outside. */
function beside(r: VerticalRequest, x: number, text: TextBlock, rows: readonly number[], direction: number, placer: Placer): PlacedDimension | null {
	if (!clear(r, x, placer)) return null;
	const side = direction > 0 ? 'start' : 'end';
	const outside = r.bottom - r.top < 2 * ARROW + 6;
	const tail = outside ? 16 : 0;
	const line = { x1: x, y1: r.top - tail, x2: x, y2: r.bottom + tail };
	if (outside && !placer.lineFree(thinBox(line), 3)) return null;
	const at = x + direction * 9;
	// Narrow where it keeps between the two levels, else on one line.
	const folded = numberOverName(r.label, r.name, text.lines[0]?.size ?? 0, text.lines[1]?.size ?? 0, FOLD);
	const tall = folded.height <= r.bottom - r.top + 4;
	const shapes = text.lines.length > 1 ? (tall ? [folded, onOneLine(text), text] : [onOneLine(text), text]) : [text];
	for (const { shape, dy } of shapes.flatMap((shape) => [0, 6, -6, 12, -12, 18, -18, 26, -26].map((dy) => ({ shape, dy })))) {
		const top = (r.top + r.bottom) / 2 - shape.height / 2 + dy;
		const box = blockBox(shape, at, top, side);
		if (straddles(box, rows) || !placer.textFree(box, 5)) continue;
		return {
			id: r.id,
			axis: 'vertical',
			lines: [line],
			arrows: outside
				? [
						{ x, y: r.top, angle: 90 },
						{ x, y: r.bottom, angle: 270 }
					]
				: [
						{ x, y: r.top, angle: 270 },
						{ x, y: r.bottom, angle: 90 }
					],
			extensions: extensions(r, x),
			texts: shape === text || shape === folded ? setBlock(shape, at, top, side) : setLine(text, box.left, top)
		};
	}
	return null;
}

const WORD_GAP = 5;
/** A name beside a line is folded at this width, px. */
const FOLD = 72;

/** The room that the lines of a block take side by side. */
export function onOneLine(b: TextBlock): TextBlock {
	const width = b.lines.reduce((sum, l) => sum + textWidth(l.text, l.size), 0) + WORD_GAP * (b.lines.length - 1);
	return { lines: b.lines, width, height: Math.max(...b.lines.map((l) => l.size)) * (ASCENT + DESCENT) };
}

export function setLine(b: TextBlock, left: number, top: number): PlacedText[] {
	const baseline = top + Math.max(...b.lines.map((l) => l.size)) * ASCENT;
	let x = left;
	return b.lines.map((l) => {
		const w = textWidth(l.text, l.size);
		const placed: PlacedText = { ...l, anchor: 'start', x, baseline, box: { left: x, right: x + w, top: baseline - l.size * ASCENT, bottom: baseline + l.size * DESCENT } };
		x += w + WORD_GAP;
		return placed;
	});
}

function commit(d: PlacedDimension, placer: Placer): void {
	placer.add(d.texts);
	for (const l of [...d.lines, ...d.extensions]) placer.lines.push(thinBox(l));
	if (d.axis === 'vertical') placer.columns.push(...d.lines.map(thinBox));
}

export interface HorizontalRequest {
	readonly id: string;
	readonly label: string;
	readonly name: string;
	readonly left: number;
	readonly right: number;
	/** Rows to try, in this order, each with the rows where its extension lines start. */
	readonly rows: readonly { readonly y: number; readonly leftFrom: number; readonly rightFrom: number }[];
}

/** A horizontal dimension in the first row that has room; the number in a gap, or over a short line. */
export function placeHorizontal(r: HorizontalRequest, sizes: DimensionSizes, placer: Placer): PlacedDimension | null {
	const text = block([
		{ text: r.label, size: sizes.number, weight: 700, tone: 'number' },
		{ text: r.name, size: sizes.name, weight: 600, tone: 'name' }
	]);
	const single = text.lines.length === 1;
	const mid = (r.left + r.right) / 2;
	const gap = single && r.right - r.left > text.width + 2 * (ARROW + 8);
	const outside = r.right - r.left < 2 * ARROW + 4;
	for (const { y, leftFrom, rightFrom } of r.rows) {
		const tail = outside ? 16 : 0;
		const whole: Segment = { x1: r.left - tail, y1: y, x2: r.right + tail, y2: y };
		if (!placer.lineFree(thinBox(whole), 3)) continue;
		const ext: Segment[] = [
			{ x1: r.left, y1: leftFrom + Math.sign(y - leftFrom) * 5, x2: r.left, y2: y + Math.sign(y - leftFrom) * 5 },
			{ x1: r.right, y1: rightFrom + Math.sign(y - rightFrom) * 5, x2: r.right, y2: y + Math.sign(y - rightFrom) * 5 }
		];
		if (!ext.every((e) => placer.clearOfText(thinBox(e)))) continue;
		const tops = gap ? [y - text.height / 2] : [y - text.height - 5, y + 6];
		for (const top of tops) {
			for (const dx of gap ? [0] : [0, 12, -12, 28, -28, 48, -48, 70, -70]) {
				const box = blockBox(text, mid + dx, top, 'middle');
				if (!placer.textFree(box, 4)) continue;
				const placed: PlacedDimension = {
					id: r.id,
					axis: 'horizontal',
					lines: gap
						? [
								{ x1: r.left, y1: y, x2: box.left - 4, y2: y },
								{ x1: box.right + 4, y1: y, x2: r.right, y2: y }
							]
						: [whole],
					arrows: [
						{ x: r.left, y, angle: outside ? 0 : 180 },
						{ x: r.right, y, angle: outside ? 180 : 0 }
					],
					extensions: ext,
					texts: setBlock(text, mid + dx, top, 'middle')
				};
				commit(placed, placer);
				return placed;
			}
		}
	}
	return null;
}
