/** What carries an anchorage over the head, and what stands in its place when the anchorage is low. */
import { bar, concrete, disc, line, rect, type Shape } from '../drawing/shapes.ts';
import type { BackdropFrame } from './backdrop.ts';
import { anchorPost, beamSide, eyeBolt, lattice } from './parts.ts';

/** A concrete soffit from `left` to `right`, its eye bolt at the plumb line. */
export function soffit(f: BackdropFrame, z: number, left: number, right: number): Shape[] {
	return [
		...concrete(left, z, right, f.top, ['bottom'], ['left', 'top', 'right', 'bottom']),
		line(
			[
				[right, z],
				[right, f.top]
			],
			'thin'
		),
		line(
			[
				[left, z],
				[right, z]
			],
			'heavy'
		),
		...eyeBolt(z, f.site.anchorage.height, 0.2)
	];
}

/** A hanger with an eye under a member whose underside is at z. */
function hanger(f: BackdropFrame, z: number): Shape[] {
	const hook = f.site.anchorage.height;
	return [rect(-0.09, z - 0.03, 0.09, z + 0.015, 'ink', 'none'), bar([0, z], [0, hook + 0.06], 0.026, 'ink', 'none'), disc(0, hook + 0.035, 0.055, 'sheet', 'heavy', 4)];
}

/** A steel beam along x. */
export function steelBeam(f: BackdropFrame, z: number, left: number, right: number, high = 0.26): Shape[] {
	return [
		...beamSide(left, right, z, z + high),
		line(
			[
				[left, z],
				[right, z]
			],
			'heavy'
		),
		...hanger(f, z)
	];
}

/** A lattice girder along x. */
export function truss(f: BackdropFrame, z: number, left: number, right: number): Shape[] {
	const high = Math.min(0.32, Math.max(0.2, f.top - z - 0.04));
	const bays = Math.max(2, Math.round((right - left) / 0.36));
	return [...lattice([left, z + 0.02], [right, z + 0.02], [left, z + high], [right, z + high], bays, 0.022), ...hanger(f, z)];
}

/** A jib: a mast on the surface at x = `mast`, an arm out to the plumb line, a brace between. */
export function jib(f: BackdropFrame, z: number, mast: number, foot = 0): Shape[] {
	const arm = z + 0.05;
	return [
		rect(mast - 0.13, foot, mast + 0.13, foot + 0.03, 'ink', 'none'),
		bar([mast, foot], [mast, arm + 0.12], 0.09, 'sheet', 'medium'),
		bar([mast + 0.03, arm - 0.5], [mast + 0.52, arm], 0.045, 'sheet', 'medium'),
		bar([mast - 0.1, arm], [0.14, arm], 0.09, 'sheet', 'medium'),
		disc(mast, arm, 0.03, 'sheet2', 'medium'),
		...hanger(f, z)
	];
}

/** Two posts and a beam across, seen square on. */
export function portal(f: BackdropFrame, z: number, left: number, right: number): Shape[] {
	const shapes: Shape[] = [];
	for (const x of [left, right]) {
		shapes.push(rect(x - 0.13, 0, x + 0.13, 0.03, 'ink', 'none'), bar([x, 0], [x, z], 0.09, 'sheet', 'medium'));
	}
	return [...shapes, ...beamSide(left - 0.1, right + 0.1, z, z + 0.16), ...hanger(f, z)];
}

/** Front sight: the overhead member of a backdrop, or a post when the anchorage is low. */
export function frontAnchor(f: BackdropFrame, member: (f: BackdropFrame, z: number, left: number, right: number) => Shape[]): Shape[] {
	if (f.overhead === null) return anchorPost(f.site.anchorage.height);
	return member(f, f.overhead, f.left, Math.min(f.right, f.front.to + 0.45));
}
