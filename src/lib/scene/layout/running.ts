/**
 * Running dimensions: several heights from one level on a single line, each with its arrow and its number
 * beside it. Takes the room of one column where separate lines would not fit. Pixels.
 */
import { type Box, overlaps } from './box.ts';
import { onOneLine, type PlacedDimension, type DimensionSizes, setLine, thinBox } from './dimension.ts';
import { numberOverName, type Placer, type TextBlock } from './placer.ts';

export interface RunningEnd {
	readonly id: string;
	readonly label: string;
	readonly name: string;
	readonly y: number;
	/** Where its extension line starts; null where a level line is there already. */
	readonly from: number | null;
}

export interface RunningRequest {
	/** Row of the common level. */
	readonly base: number;
	readonly ends: readonly RunningEnd[];
	/** First and last column to try. */
	readonly from: number;
	readonly until: number;
	readonly avoid: readonly Box[];
}

interface Label {
	readonly end: RunningEnd;
	readonly shape: TextBlock;
	readonly top: number;
}

/** Labels beside their arrows, spread just enough; null when they do not all fit between the rows allowed. */
function spread(ends: readonly RunningEnd[], sizes: DimensionSizes, base: number): Label[] | null {
	const gap = 3;
	const up = ends.every((e) => e.y <= base);
	const sorted = [...ends].sort((a, b) => a.y - b.y);
	const labels: { end: RunningEnd; shape: TextBlock; top: number }[] = sorted.map((end) => {
		const shape = onOneLine(numberOverName(end.label, end.name, sizes.number, sizes.name));
		return { end, shape, top: end.y - shape.height / 2 };
	});
	// Away from the common level first, then apart from each other.
	for (let pass = 0; pass < 8; pass++) {
		labels.forEach((l, i) => {
			const next = labels[i + 1];
			if (next !== undefined) {
				const over = l.top + l.shape.height + gap - next.top;
				if (over > 0) {
					l.top -= over / 2;
					next.top += over / 2;
				}
			}
			if (up) l.top = Math.min(l.top, base - l.shape.height - 4);
			else l.top = Math.max(l.top, base + 4);
		});
	}
	for (const [i, l] of labels.entries()) {
		const next = labels[i + 1];
		if (next !== undefined && l.top + l.shape.height + 1 > next.top) return null;
	}
	return labels;
}

/** One line with all its ends in the nearest column that has room; null when none has. */
export function placeRunning(r: RunningRequest, sizes: DimensionSizes, placer: Placer): PlacedDimension | null {
	const labels = spread(r.ends, sizes, r.base);
	if (labels === null) return null;
	const rows = [r.base, ...r.ends.map((e) => e.y)];
	const top = Math.min(...rows);
	const bottom = Math.max(...rows);
	for (let x = r.from; x <= r.until; x += 3) {
		const line = { left: x - 3, right: x + 3, top: top + 3, bottom: bottom - 3 };
		if (placer.columns.some((c) => overlaps(c, line, 8)) || !placer.lineFree(line, 4)) continue;
		const extensions = r.ends.flatMap((e) => (e.from === null || x - e.from < 6 ? [] : [{ x1: e.from + 5, y1: e.y, x2: x + 5, y2: e.y }]));
		if (!extensions.every((e) => placer.clearOfText(thinBox(e)))) continue;
		const left = x + 10;
		const free = labels.every((l) => {
			const box = { left, right: left + l.shape.width, top: l.top, bottom: l.top + l.shape.height };
			return placer.textFree(box, 3) && !r.avoid.some((a) => overlaps(a, box, 3));
		});
		if (!free) continue;
		const placed: PlacedDimension = {
			id: `running-${r.ends.map((e) => e.id).join('-')}`,
			axis: 'vertical',
			lines: [{ x1: x, y1: top, x2: x, y2: bottom }],
			arrows: r.ends.map((e) => ({ x, y: e.y, angle: e.y < r.base ? 270 : 90 })),
			extensions: [
				...extensions,
				...labels.flatMap((l) => {
					const middle = l.top + l.shape.height / 2;
					return Math.abs(middle - l.end.y) < 3 ? [] : [{ x1: x + 2, y1: l.end.y, x2: left - 2, y2: middle }];
				})
			],
			texts: labels.flatMap((l) => setLine(l.shape, left, l.top).map((text) => ({ ...text, of: l.end.id }))),
			origin: { x, y: r.base }
		};
		placer.add(placed.texts);
		for (const l of [...placed.lines, ...placed.extensions]) placer.lines.push(thinBox(l));
		placer.columns.push(...placed.lines.map(thinBox));
		return placed;
	}
	return null;
}
