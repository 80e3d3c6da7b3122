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
	/** Row of the datum. */
	readonly top: number;
	/** Highest row of the band: above the datum when terms taken off come first. The ring hangs there. */
	readonly hang: number;
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
	const top = toY(view, datum.z);
	return { segments, top, hang: Math.min(top, ...segments.map((s) => s.y1)), bottom: Math.min(limit, end), cutOff: end > limit + 0.5 };
}

export interface Tick {
	readonly y: number;
	readonly length: number;
	readonly weight: number;
	/** The figure beside it, at full units only. */
	readonly figure: string;
}

const FOOT = 0.3048;

/**
 * Graduation every 0.05 m (longer at 0.1, 0.5, 1 m) or every 3 in (longer at 6 in and 1 ft); where that would
 * stand too dense, only the next longer ones.
 */
export function ticks(datum: TapeDatum, bottom: number, units: SiteModel['units'], view: View): Tick[] {
	const unit = units === 'metric' ? 1 : FOOT;
	const finest = units === 'metric' ? [20, 10, 2, 1] : [4, 2, 1];
	const parts = finest.find((n) => (unit / n) * view.scale >= 3.6) ?? 1;
	const step = unit / parts;
	const out: Tick[] = [];
	const top = toY(view, datum.z);
	const length = datum.z - fromY(view, bottom);
	const figureEvery = [1, 2, 5, 10].find((n) => n * unit * view.scale >= 24) ?? 10;
	for (let i = 1; i * step < length - step * 0.2; i++) {
		const y = toY(view, datum.z - i * step);
		if (y <= top || y >= bottom - 1) continue;
		const whole = i % parts === 0;
		const half = (2 * i) % parts === 0;
		const tenth = (10 * i) % parts === 0;
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
export function termLabel(s: Segment, sizes: TapeSizes, width: number, tone: 'number' | 'own', note = ''): LabelRequest {
	const number = { text: s.term.sign < 0 ? `−${s.term.label}` : s.term.label, size: sizes.term, weight: 700 as const, tone };
	const name = (text: string): TextBlock['lines'][number] => ({ text, size: sizes.name, weight: 600, tone: 'number' });
	const both = textWidth(number.text, sizes.term) + INLINE_GAP + textWidth(s.term.name, sizes.name);
	const inline = note === '' && s.y2 - s.y1 < 34 && both <= width;
	const notes = wrapText(note, sizes.name, width).map((text) => ({ text, size: sizes.name, weight: 700 as const, tone: 'own' as const }));
	const b = inline
		? { lines: [number, name(s.term.name)], width: both, height: sizes.term * 0.93 }
		: block([number, ...wrapText(s.term.name, sizes.name, width).map(name), ...notes]);
	return { key: s.key, y: (s.y1 + s.y2) / 2, block: b, inline };
}

const LABEL_GAP = 4;

/**
 * Tops for a run of labels within [lo, hi]: in order, none over another, together as near to their rows as
 * can be (isotonic regression of the free tops, pooled where they would meet).
 */
function settle(run: readonly LabelRequest[], lo: number, hi: number): number[] {
	const offsets: number[] = [];
	let sum = 0;
	for (const r of run) {
		offsets.push(sum);
		sum += r.block.height + LABEL_GAP;
	}
	const pools: { mean: number; count: number }[] = [];
	run.forEach((r, i) => {
		let pool = { mean: r.y - r.block.height / 2 - (offsets[i] ?? 0), count: 1 };
		for (let last = pools[pools.length - 1]; last !== undefined && last.mean > pool.mean; last = pools[pools.length - 1]) {
			pools.pop();
			const count = last.count + pool.count;
			pool = { mean: (last.mean * last.count + pool.mean * pool.count) / count, count };
		}
		pools.push(pool);
	});
	const highest = Math.min(hi - (sum - LABEL_GAP), Infinity);
	const starts = pools.flatMap((p) => Array.from({ length: p.count }, () => p.mean));
	// Too many for the room: they may pass the side that is open (the top one under a fixed row counts).
	return starts.map((s, i) => (lo > highest && Number.isFinite(lo) ? Math.max(s, lo) : Math.min(Math.max(s, lo), highest)) + (offsets[i] ?? 0));
}

/**
 * Labels beside a band, in the order of their rows, none over another or over a fixed row; a label that has
 * to move gets a leader. `ceiling` is the highest row they may reach.
 */
export function placeLabels(
	requests: readonly LabelRequest[],
	x: number,
	side: 'left' | 'right',
	fixed: readonly number[],
	ceiling: number
): Label[] {
	const anchor = side === 'left' ? 'end' : 'start';
	const sorted = [...requests].sort((a, b) => a.y - b.y);
	const rows = [...fixed].sort((a, b) => a - b);
	const bounds = [ceiling, ...rows, Infinity];
	const labels: Label[] = [];
	// Labels keep to the side of a fixed row on which their own row lies.
	let floor = ceiling;
	for (let i = 0; i + 1 < bounds.length; i++) {
		const from = i === 0 ? -Infinity : (bounds[i] ?? -Infinity);
		const to = bounds[i + 1] ?? Infinity;
		const run = sorted.filter((r) => r.y >= from && r.y < to);
		const tops = settle(run, Math.max(floor, i === 0 ? ceiling : from + 4), to === Infinity ? Infinity : to - 4);
		run.forEach((r, n) => {
			const top = tops[n] ?? r.y;
			const want = r.y - r.block.height / 2;
			const moved = Math.abs(top - want) > Math.max(7, r.block.height / 2 - 4);
			const at = moved ? x + (side === 'left' ? -9 : 9) : x;
			const middle = top + Math.min(r.block.height / 2, 11);
			labels.push({
				key: r.key,
				texts: r.inline ? setInline(r.block, at, top, anchor) : setBlock(r.block, at, top, anchor),
				leader: moved ? { x1: x + (side === 'left' ? 5 : -5), y1: r.y, x2: at + (side === 'left' ? 3 : -3), y2: middle } : null
			});
			floor = Math.max(floor, top + r.block.height + LABEL_GAP);
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
