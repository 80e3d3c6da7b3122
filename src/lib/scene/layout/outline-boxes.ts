/** Every drawn line as a row of small boxes, so that words keep off it. Pixels. */
import type { Fill, Shape } from '../drawing/shapes.ts';
import { toX, toY, type View } from '../drawing/view.ts';
import { around, type Box } from './box.ts';

const PIECE = 16;

const HATCHED: readonly Fill[] = ['concrete', 'steel', 'rubber', 'timber', 'insulation', 'masonry', 'mesh'];

function pieces(x1: number, y1: number, x2: number, y2: number, out: Box[]): void {
	const dx = x2 - x1;
	const dy = y2 - y1;
	const straight = Math.abs(dx) < 0.5 || Math.abs(dy) < 0.5;
	const n = straight ? 1 : Math.max(1, Math.ceil(Math.max(Math.abs(dx), Math.abs(dy)) / PIECE));
	for (let i = 0; i < n; i++) {
		const a = { x: x1 + (dx * i) / n, y: y1 + (dy * i) / n };
		const b = { x: x1 + (dx * (i + 1)) / n, y: y1 + (dy * (i + 1)) / n };
		out.push({
			left: Math.min(a.x, b.x) - 0.7,
			right: Math.max(a.x, b.x) + 0.7,
			top: Math.min(a.y, b.y) - 0.7,
			bottom: Math.max(a.y, b.y) + 0.7
		});
	}
}

/** Boxes of all outlines and lines; plain fills without an outline have none. */
export function outlineBoxes(shapes: readonly Shape[], view: View): Box[] {
	const out: Box[] = [];
	for (const s of shapes) {
		if (s.kind === 'disc') {
			const r = Math.max(s.least ?? 0, s.r * view.scale) + 1;
			const x = toX(view, s.at[0]);
			const y = toY(view, s.at[1]);
			out.push({ left: x - r, right: x + r, top: y - r, bottom: y + r });
			continue;
		}
		if (s.weight === 'none' && s.kind === 'area' && s.fill !== 'ink') continue;
		let last = s.kind === 'area' ? s.points[s.points.length - 1] : undefined;
		for (const p of s.points) {
			if (last !== undefined) pieces(toX(view, last[0]), toY(view, last[1]), toX(view, p[0]), toY(view, p[1]), out);
			last = p;
		}
	}
	return out;
}

/** Boxes of hatched areas: no word ever stands on a hatch. */
export function hatchBoxes(shapes: readonly Shape[], view: View): Box[] {
	return shapes.flatMap((s) =>
		s.kind === 'area' && HATCHED.includes(s.fill) ? [around(s.points.map(([x, z]) => ({ x: toX(view, x), y: toY(view, z) })))] : []
	);
}
