/** A standing figure in a situation: where its parts come to lie, px. */
import type { Point, View } from '../drawing/view.ts';
import { figureShape } from '../figure/outline.ts';
import { figurePaths, type Face, type FigurePaths } from '../figure/paths.ts';
import { solvePose, type Stance } from '../figure/pose.ts';

/** Proportions of the drawn figure: D-ring in parts of the stature. */
const D_RING_SHARE = 0.81;
const STATURE = 1.75;

export interface Person {
	readonly paths: FigurePaths;
	/** Where a lanyard bears on the back, and where a ring at the hip would be. */
	readonly back: Point;
	readonly hip: Point;
}

/**
 * @param x column of the D-ring, px.
 * @param y row of the soles, px.
 * @param scale px a metre.
 * @param face 1 looks right, −1 looks left.
 */
export function personAt(x: number, y: number, scale: number, face: Face, stance: Stance): Person {
	const dRingHeight = STATURE * D_RING_SHARE;
	const pose = solvePose({ stature: STATURE, dRingHeight, soleDrop: dRingHeight, slid: 0, stance, kneeling: false });
	const view: View = { scale, x0: 0, y0: y, cut: null };
	const paths = figurePaths(figureShape(pose), view, { x: x / scale, z: dRingHeight }, face);
	return {
		paths,
		back: { x, y: y - dRingHeight * scale },
		hip: { x: x + face * pose.hip.u * scale, y: y - (dRingHeight + pose.hip.v) * scale }
	};
}
