/** A figure's outlines as path texts, through the one transform. */
import { type Point, polyline, toX, toY, type View } from '../drawing/view.ts';
import type { Spot } from './body.ts';
import type { FigureShape, Outline } from './outline.ts';

export interface FigurePaths {
	readonly groups: readonly { readonly id: string; readonly far: boolean; readonly d: string; readonly details: string }[];
	readonly helmet: string;
	readonly brim: string;
	readonly helmetDetails: string;
	readonly straps: string;
	readonly plate: Point;
	readonly ring: Point;
	readonly box: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
	/** Line weights, px. */
	readonly outline: number;
	readonly strap: number;
}

/** +1: faces right; −1: faces left (back and D-ring to the right). */
export type Face = 1 | -1;

/** All members of a group wind the same way, so that overlapping ones fill as one. */
function clockwise(points: Point[]): Point[] {
	let area = 0;
	let last = points[points.length - 1];
	for (const p of points) {
		if (last !== undefined) area += last.x * p.y - p.x * last.y;
		last = p;
	}
	return area < 0 ? points.reverse() : points;
}

export function figurePaths(
	shape: FigureShape,
	view: View,
	dRing: { readonly x: number; readonly z: number },
	face: Face
): FigurePaths {
	const point = (s: Spot): Point => ({ x: toX(view, dRing.x + face * s.u), y: toY(view, dRing.z + s.v) });
	const closed = (o: Outline): string => polyline(clockwise(o.map(point)), true);
	const open = (o: Outline): string => polyline(o.map(point));
	const points = shape.extent.map(point);
	return {
		groups: shape.groups.map((g) => ({
			id: g.id,
			far: g.far,
			d: g.outlines.map(closed).join(''),
			details: g.details.map(open).join('')
		})),
		helmet: closed(shape.helmet),
		brim: closed(shape.brim),
		helmetDetails: shape.helmetDetails.map(open).join(''),
		straps: shape.straps.map(open).join(''),
		plate: point(shape.plate),
		ring: point(shape.ring),
		box: {
			left: Math.min(...points.map((p) => p.x)),
			right: Math.max(...points.map((p) => p.x)),
			top: Math.min(...points.map((p) => p.y)),
			bottom: Math.max(...points.map((p) => p.y))
		},
		outline: Math.max(1.1, 0.0135 * view.scale),
		strap: Math.max(1.7, 0.034 * view.scale)
	};
}
