/**
 * Both tapes of an explained answer: same datum, same scale, equal terms joined by thin lines. A term left
 * out narrows to a point on the learner's side; one too many opens the other way; a wrong value has unequal
 * ends. Pixels.
 */
import { toY, type View } from '../drawing/view.ts';
import { block, type PlacedText, setBlock } from '../layout/placer.ts';
import type { TapeRoom } from '../layout/tape-room.ts';
import { wrapText } from '../layout/text-width.ts';
import type { SiteModel, TapePairModel, TermId } from '../model.ts';
import { type Band, bandOf, type Label, type LabelRequest, placeLabels, type Segment, termLabel, type Tick, ticks } from './band.ts';

export interface Wedge {
	readonly key: string;
	readonly term: TermId;
	readonly kind: 'missing' | 'extra' | 'unequal';
	/** Rows on the left band (needed) and on the right band (own). */
	readonly left: readonly [number, number];
	readonly right: readonly [number, number];
}

export interface PairLayout {
	readonly needed: { readonly x: number; readonly band: Band; readonly ticks: readonly Tick[]; readonly labels: readonly Label[]; readonly head: readonly PlacedText[] };
	readonly own: { readonly x: number; readonly band: Band; readonly ticks: readonly Tick[]; readonly labels: readonly Label[]; readonly head: readonly PlacedText[] } | null;
	readonly width: number;
	readonly top: number;
	readonly wedges: readonly Wedge[];
	/** Thin lines between equal terms: rows left and right. */
	readonly joins: readonly (readonly [number, number])[];
	readonly level: { readonly y: number; readonly to: number } | null;
	/** Rows of the arrows at notes. */
	readonly notes: readonly { readonly key: string; readonly y: number }[];
	readonly texts: readonly PlacedText[];
}

/** Pairs of equal ids, in order, as many as possible. */
function align(a: readonly Segment[], b: readonly Segment[]): [number, number][] {
	const n = a.length;
	const m = b.length;
	const table: number[][] = Array.from({ length: n + 1 }, () => Array.from({ length: m + 1 }, () => 0));
	const get = (i: number, j: number): number => table[i]?.[j] ?? 0;
	for (let i = n - 1; i >= 0; i--) {
		for (let j = m - 1; j >= 0; j--) {
			const row = table[i];
			if (row === undefined) continue;
			row[j] = a[i]?.term.id === b[j]?.term.id ? get(i + 1, j + 1) + 1 : Math.max(get(i + 1, j), get(i, j + 1));
		}
	}
	const pairs: [number, number][] = [];
	let i = 0;
	let j = 0;
	while (i < n && j < m) {
		if (a[i]?.term.id === b[j]?.term.id) pairs.push([i++, j++]);
		else if (get(i + 1, j) >= get(i, j + 1)) i++;
		else j++;
	}
	return pairs;
}

/** Where the two chains part, in the order of the fall. */
export function compareBands(needed: Band, own: Band): { wedges: Wedge[]; joins: [number, number][] } {
	const wedges: Wedge[] = [];
	const joins: [number, number][] = [];
	// A number that no chain explains is not told apart term by term.
	if (own.segments.every((s) => s.term.id === 'other')) return { wedges, joins };
	let i = 0;
	let j = 0;
	let leftAt = needed.top;
	let rightAt = own.top;
	const pairs = align(needed.segments, own.segments);
	for (const [p, q] of [...pairs, [needed.segments.length, own.segments.length] as [number, number]]) {
		for (; i < p; i++) {
			const s = needed.segments[i];
			if (s === undefined) continue;
			wedges.push({ key: `missing-${s.key}`, term: s.term.id, kind: 'missing', left: [s.y1, s.y2], right: [rightAt, rightAt] });
			leftAt = s.back ? s.y1 : s.y2;
		}
		for (; j < q; j++) {
			const s = own.segments[j];
			if (s === undefined) continue;
			wedges.push({ key: `extra-${s.key}`, term: s.term.id, kind: 'extra', left: [leftAt, leftAt], right: [s.y1, s.y2] });
			rightAt = s.back ? s.y1 : s.y2;
		}
		const a = needed.segments[p];
		const b = own.segments[q];
		if (a === undefined || b === undefined) continue;
		const equal = a.back === b.back && Math.abs(a.y2 - a.y1 - (b.y2 - b.y1)) < 0.6;
		if (!equal) wedges.push({ key: `unequal-${a.key}`, term: a.term.id, kind: 'unequal', left: [a.y1, a.y2], right: [b.y1, b.y2] });
		leftAt = a.back ? a.y1 : a.y2;
		rightAt = b.back ? b.y1 : b.y2;
		if (equal) joins.push([leftAt, rightAt]);
		i = p + 1;
		j = q + 1;
	}
	return { wedges, joins };
}

/** @param limit lowest row that may be drawn */
export function layoutPair(pair: TapePairModel, room: TapeRoom, view: View, units: SiteModel['units'], limit: number): PairLayout {
	const { sizes } = room;
	const top = toY(view, pair.needed.datum.z);
	const x1 = room.left + room.bandLeft;
	const x2 = room.left + room.secondLeft;
	const needed = bandOf(pair.needed.datum, pair.needed.terms, pair.needed.total, view, limit);
	const own = pair.own === null ? null : bandOf(pair.own.datum, pair.own.terms, pair.own.total, view, limit);
	const { wedges, joins } = own === null ? { wedges: [], joins: [] } : compareBands(needed, own);
	const levelY = pair.firstMet === null ? null : toY(view, pair.firstMet.z);
	const levelTo = (own === null ? x1 : x2) + room.band + 6;
	const fixed = levelY === null ? [] : [levelY];
	const leftWidth = room.bandLeft - 14;
	const rightWidth = room.labelRight - 6;

	const leftRequests = room.wordsUnder ? [] : needed.segments.map((s) => termLabel(s, sizes, leftWidth, 'number'));
	const rightRequests: LabelRequest[] = [];
	const notes: { key: string; y: number }[] = [];
	if (!room.wordsUnder) {
		// What is missing has a note of its own; what is wrong or too much has it under its number.
		const noted = new Map<string, string>();
		for (const note of pair.notes) {
			const wedge = wedges.find((w) => w.term === note.id && !noted.has(w.key) && !notes.some((n) => n.key === w.key));
			if (wedge === undefined) continue;
			if (wedge.kind !== 'missing') {
				noted.set(wedge.key, note.text);
				continue;
			}
			const y = wedge.right[0];
			const words = block(wrapText(note.text, sizes.name, rightWidth).map((text) => ({ text, size: sizes.name, weight: 700, tone: 'own' })));
			notes.push({ key: wedge.key, y });
			rightRequests.push({ key: `note-${wedge.key}`, y: y - words.height / 2 - 4, block: words, inline: false });
		}
		for (const s of own?.segments ?? []) {
			const note = [...noted].find(([key]) => key.endsWith(`-${s.key}`) && wedges.some((w) => w.key === key && Math.abs(w.right[0] - s.y1) < 0.5));
			rightRequests.push(termLabel(s, sizes, rightWidth, 'own', note?.[1] ?? ''));
		}
		if (pair.firstMet !== null && levelY !== null) {
			rightRequests.push({
				key: 'level',
				y: levelY + 12,
				block: block([
					{ text: pair.firstMet.label, size: sizes.term - 4, weight: 700, tone: 'number' },
					...wrapText(pair.firstMet.name, sizes.name, rightWidth).map((text) => ({ text, size: sizes.name, weight: 600 as const, tone: 'name' as const }))
				]),
				inline: false
			});
		}
	}
	const rightX = (own === null ? x1 : x2) + room.band + 9;
	// The level line of the datum may run up to the left band: words stay under it.
	const leftLabels = placeLabels(leftRequests, x1 - 9, 'left', fixed, needed.hang < top ? needed.hang - 18 : top + 3);
	// The arrows at what is missing are fixed rows for the words on the right.
	const rightLabels = placeLabels(rightRequests, rightX, 'right', notes.map((n) => n.y), (own ?? needed).hang - 20);
	const head = (title: string, total: string, x: number, hang: number, tone: 'number' | 'own'): PlacedText[] => {
		const b = block([
			{ text: title, size: sizes.title, weight: 700, tone },
			{ text: total, size: sizes.total, weight: 700, tone }
		]);
		return setBlock(b, x + room.band / 2, hang - 24 - b.height, 'middle');
	};
	const neededHead = head(pair.needed.title, pair.needed.totalLabel, x1, needed.hang, 'number');
	const ownHead = pair.own === null ? [] : head(pair.own.title, pair.own.totalLabel, x2, own === null ? top : own.hang, 'own');
	return {
		needed: { x: x1, band: needed, ticks: ticks(pair.needed.datum, needed.bottom, units, view), labels: leftLabels, head: neededHead },
		own: own === null || pair.own === null ? null : { x: x2, band: own, ticks: ticks(pair.own.datum, own.bottom, units, view), labels: rightLabels, head: ownHead },
		width: room.band,
		top,
		wedges,
		joins,
		level: levelY === null ? null : { y: levelY, to: levelTo },
		notes,
		texts: [...neededHead, ...ownHead, ...leftLabels.flatMap((l) => l.texts), ...rightLabels.flatMap((l) => l.texts)]
	};
}
