/** A hung line as path texts with their widths, through the one transform. Pixels. */
import { type Point, polyline, toPoint, type View } from '../drawing/view.ts';
import type { Place } from './chain.ts';
import type { HungLine } from './hang.ts';

/** Path text and width of its stroke. */
export interface Stroke {
	readonly d: string;
	readonly width: number;
}

/** A ring with a light face. */
export interface Ring {
	readonly at: Point;
	readonly r: number;
}

export interface LanyardPaths {
	/** The anchorage connector: its strap, the light weave on it, the ring at the structure. */
	readonly connector: { readonly strap: Stroke; readonly weave: Stroke; readonly ring: Ring } | null;
	readonly rope: Stroke;
	/** The lay of the rope: light dashes on it. */
	readonly lay: Stroke;
	/** Between pack and D-ring. */
	readonly link: Stroke;
	/** The pack in ink, then its light face, then its bars in ink. */
	readonly pack: Stroke;
	readonly face: Stroke;
	readonly bars: readonly Stroke[];
	readonly hook: Ring;
}

/** Dashes of the lay, px. */
export const LAY_DASH: readonly [number, number] = [2.6, 3.6];

export function lanyardPaths(line: HungLine, view: View): LanyardPaths {
	const path = (points: readonly Place[]): string => polyline(points.map((p) => toPoint(view, p.x, p.z)));
	const rope = Math.max(2, Math.min(3.6, view.scale * 0.03));
	const packWidth = Math.max(4.5, view.scale * 0.075);
	const strap = view.scale * 0.045;
	const [a, b] = line.pack;
	// The pack itself, short of the link to the D-ring.
	const at = (s: number): Place => ({ x: a.x + (b.x - a.x) * s, z: a.z + (b.z - a.z) * s });
	const body = path([at(0), at(0.8)]);
	const connector = path(line.connector);
	const ring = (place: Place, r: number): Ring => ({ at: toPoint(view, place.x, place.z), r });
	return {
		connector:
			line.connector.length === 0
				? null
				: {
						strap: { d: connector, width: Math.max(4, strap) },
						weave: { d: connector, width: Math.max(1.6, strap - 2.4) },
						ring: ring(line.structure, Math.max(3, view.scale * 0.035))
					},
		rope: { d: path(line.rope), width: rope },
		lay: { d: path(line.rope), width: rope * 0.42 },
		link: { d: path([at(0.8), b]), width: rope * 0.8 },
		pack: { d: body, width: packWidth + 2.6 },
		face: { d: body, width: packWidth },
		bars: [0.13, 0.3, 0.47, 0.64].map((s) => ({ d: path([at(s), at(s + 0.02)]), width: packWidth + 1 })),
		hook: ring(line.hook, Math.max(3.2, view.scale * 0.04))
	};
}
