/** One tape as a band: segments, graduation, labels. Pixels; lengths of the model in metres. */
import { fromY, toY, type View } from '../drawing/view.ts';
import { type PlacedText, setBlock, block, type TextBlock } from '../layout/placer.ts';
import { textWidth, wrapText } from '../layout/text-width.ts';
import type { TapeSizes } from '../layout/tape-room.ts';
import type { SiteModel, TapeDatum, TapeTerm, TermId } from '../model.ts';

export interface Segment {
	readonly key: string;
	readonly term: TapeTerm;
	/** Upper and lower row. */
	readonly y1: number;
	readonly y2: number;
	/** A term taken off again: drawn narrow, upwards. */
	readonly back: boolean;
}

export interface Band {
	readonly segments: readonly Segment[];
	readonly top: number;
	readonly bottom: number;
	/** Cut off because it is longer than the sheet. */
	readonly cutOff: boolean;
}

/** Segments in the order of the fall, from the datum down. `limit` is the lowest row that may be drawn. */
export function bandOf(datum: TapeDatum, terms: readonly TapeTerm[], total: number, view: View, limit: number): Band {
	const segments: Segment[] = [];
	const counts = new Map<TermId, number>();
	let at = datum.z;
	for (const term of terms) {
		const n = counts.get(term.id) ?? 0;
		counts.set(term.id, n + 1);
		const next = at - term.sign * term.length;
		const y1 = Math.min(limit, toY(view, Math.max(at, next)));
		const y2 = Math.min(limit, toY(view, Math.min(at, next)));
		segments.push({ key: `${term.id}-${n}`, term, y1, y2, back: term.sign < 0 });
		at = next;
	}
	const end = toY(view, datum.z - total);
	return { segments, top: toY(view, datum.z), bottom: Math.min(limit, end), cutOff: end > limit + 0.5 };
}

export interface Tick {
	readonly y: number;
	readonly length: number;
	readonly weight: number;
	/** The figure beside it, at full units only. */
	readonly figure: string;
}

const FOOT = 0.3048;

/** Graduation every 0.05 m (longer at 0.1, 0.5, 1 m) or every 3 in (longer at 6 in, 1 ft, 5 ft). */
export function ticks(datum: TapeDatum, bottom: number, units: SiteModel['units'], view: View): Tick[] {
	const unit = units === 'metric' ? 1 : FOOT;
	const parts = units === 'metric' ? 20 : 4;
	const step = unit / parts;
	const out: Tick[] = [];
	const top = toY(view, datum.z);
	const length = datum.z - fromY(view, bottom);
	const tooFine = step * view.scale < 3.6;
	const figureEvery = [1, 2, 5, 10].find((n) => n * unit * view.scale >= 18) ?? 10;
	for (let i = 1; i * step < length - step * 0.2; i++) {
		const y = toY(view, datum.z - i * step);
		if (y <= top || y >= bottom - 1) continue;
		const whole = i % parts === 0;
		const half = i % (parts / 2) === 0;
		const tenth = i % 2 === 0;
		if (tooFine && !whole && !half) continue;
		out.push({
			y,
			length: whole ? 16 : half ? 11 : tenth ? 7 : 5,
			weight: whole ? 1.5 : 0.9,
			figure: whole && (i / parts) % figureEvery === 0 ? String(i / parts) : ''
		});
	}
	return out;
}

export interface Label {
	readonly key: string;
	readonly texts: readonly PlacedText[];
	/** Thin line from the band to the label when it stands aside of its term. */
	readonly leader: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number } | null;
}

export interface LabelRequest {
	readonly key: string;
	/** Row it belongs to. */
	readonly y: number;
	readonly block: TextBlock;
	/** Number and name side by side instead of over each other. */
	readonly inline: boolean;
}

const INLINE_GAP = 6;

/** Number and name of a term: over each other, or on one line where the term is short. */
export function termLabel(s: Segment, sizes: TapeSizes, width: number, tone: 'number' | 'own'): LabelRequest {
	const number = { text: s.term.sign < 0 ? `−${s.term.label}` : s.term.label, size: sizes.term, weight: 700 as const, tone };
	const name = (text: string): TextBlock['lines'][number] => ({ text, size: sizes.name, weight: 600, tone: 'number' });
	const both = textWidth(number.text, sizes.term) + INLINE_GAP + textWidth(s.term.name, sizes.name);
	const inline = s.y2 - s.y1 < 34 && both <= width;
	const b = inline
		? { lines: [number, name(s.term.name)], width: both, height: sizes.term * 0.93 }
		: block([number, ...wrapText(s.term.name, sizes.name, width).map(name)]);
	return { key: s.key, y: (s.y1 + s.y2) / 2, block: b, inline };
}

/**
 * Labels beside a band, in the order of their rows, none over another or over a fixed row; a label that has
 * to move gets a leader.
 */
export function placeLabels(
	requests: readonly LabelRequest[],
	x: number,
	side: 'left' | 'right',
	fixed: readonly { readonly top: number; readonly bottom: number }[]
): Label[] {
	const gap = 4;
	let last = -Infinity;
	const labels: Label[] = [];
	const anchor = side === 'left' ? 'end' : 'start';
	for (const r of [...requests].sort((a, b) => a.y - b.y)) {
		const want = r.y - r.block.height / 2;
		const free = (top: number): boolean =>
			top >= last + gap && !fixed.some((f) => f.top < top + r.block.height + 3 && top - 3 < f.bottom);
		let top = Math.max(want, last + gap);
		for (let d = 0; d < 400; d += 1) {
			if (free(want - d) && d < 40) {
				top = want - d;
				break;
			}
			if (free(want + d)) {
				top = want + d;
				break;
			}
		}
		last = top + r.block.height;
		const moved = Math.abs(top - want) > 7;
		const at = moved ? x + (side === 'left' ? -9 : 9) : x;
		labels.push({
			key: r.key,
			texts: r.inline ? setInline(r.block, at, top, anchor) : setBlock(r.block, at, top, anchor),
			leader: moved ? { x1: x + (side === 'left' ? 5 : -5), y1: r.y, x2: at + (side === 'left' ? 3 : -3), y2: top + r.block.height / 2 } : null
		});
	}
	return labels;
}

function setInline(b: TextBlock, x: number, top: number, anchor: 'start' | 'end'): PlacedText[] {
	const left = anchor === 'start' ? x : x - b.width;
	const size = b.lines[0]?.size ?? 0;
	const baseline = top + size * 0.72;
	let at = left;
	return b.lines.map((l) => {
		const w = textWidth(l.text, l.size);
		const placed: PlacedText = { ...l, anchor: 'start', x: at, baseline, box: { left: at, right: at + w, top: baseline - l.size * 0.72, bottom: baseline + l.size * 0.21 } };
		at += w + INLINE_GAP;
		return placed;
	});
}
