/** The edge seen square on: the walking surface runs across the sheet, the fall is in front of it. */
import { line, rect, type Fill, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { cutLine } from './parts.ts';

export interface FrontStyle {
	/** Thickness of the fascia, and how it is filled. */
	readonly fascia: number;
	readonly fill: Fill;
	/** Detail on the fascia, between from and to. */
	readonly detail?: (from: number, to: number) => Shape[];
	/** Behind worker and anchorage, above the surface. */
	readonly behind?: (from: number, to: number) => Shape[];
	/** Under the fascia, down to the ground. */
	readonly below: (from: number, to: number, under: number, ground: number) => Shape[];
	/** It ends within the sheet: a stage, a hatch. Else it runs on. */
	readonly ends?: boolean;
	/** Under it is a wall down to the ground, cut off with it. */
	readonly wall?: boolean;
	/** The anchorage and what carries it. */
	readonly anchor: Shape[];
}

export function frontView(f: BackdropFrame, style: FrontStyle): Backdrop {
	// What runs on is cut off by the sheet at its left and by a zigzag at its right.
	const from = style.ends === true ? Math.max(f.front.from, f.left - 0.2) : f.left - 0.3;
	const { to } = f.front;
	const under = -style.fascia;
	const shapes: Shape[] = [
		...(style.behind?.(from, to) ?? []),
		...style.below(from, to, under, f.ground),
		...style.anchor,
		rect(from, under, to, 0, style.fill, 'medium'),
		...(style.detail?.(from, to) ?? []),
		line(
			[
				[from, 0],
				[to, 0]
			],
			'heavy'
		)
	];
	if (style.ends !== true) shapes.push(...cutLine(to, style.wall === true ? f.ground : under - 0.12, 0.12));
	return { shapes, busy: [[from, under, to, 0]], surfaceTo: to, under };
}

/** A plain wall under the fascia, outlined only. */
export function plainWall(inset: number): FrontStyle['below'] {
	return (from, to, under, ground) => [rect(from + inset, ground, to - inset, under, 'sheet2', 'thin')];
}

/** Columns under the fascia at the given shares of its length. */
export function columns(width: number, shares: readonly number[]): FrontStyle['below'] {
	return (from, to, under, ground) =>
		shares.map((s) => {
			const x = from + (to - from) * s;
			return rect(x - width / 2, ground, x + width / 2, under, 'sheet', 'thin');
		});
}
