/** Parts that several backdrops share. */
import { area, bar, disc, line, rect, type Pair, type Shape } from '../drawing/shapes.ts';

/** An eye that hangs from a soffit at `top`; the hook bears at z (x = 0). */
export function eyeBolt(top: number, z: number, deep = 0.22): Shape[] {
	return [
		bar([0, top + deep], [0, z + 0.07], 0.03, 'ink', 'none'),
		rect(-0.075, top - 0.022, 0.075, top, 'ink', 'none'),
		disc(0, z + 0.035, 0.055, 'sheet', 'heavy', 4)
	];
}

/** A shackle on a clamp round a flange or a rail: the hook bears at z. */
export function beamClamp(bottom: number, z: number, width: number): Shape[] {
	return [
		area(
			[
				[-width / 2 - 0.03, bottom + 0.05],
				[-width / 2 - 0.03, bottom - 0.03],
				[-0.04, bottom - 0.09],
				[0.04, bottom - 0.09],
				[width / 2 + 0.03, bottom - 0.03],
				[width / 2 + 0.03, bottom + 0.05]
			],
			'none',
			'heavy'
		),
		disc(0, z + 0.035, 0.055, 'sheet', 'heavy', 4)
	];
}

/** A post on the surface with an eye at z, seen from the front; also for an eye below the surface. */
export function anchorPost(z: number): Shape[] {
	if (z < 0.12) {
		return [rect(-0.09, z - 0.05, 0.09, z + 0.12, 'sheet', 'medium'), disc(0, z, 0.055, 'sheet', 'heavy', 4)];
	}
	return [
		rect(-0.16, 0, 0.16, 0.022, 'ink', 'none'),
		bar([0, 0], [0, z - 0.05], 0.07, 'sheet', 'medium'),
		bar([-0.13, 0.022], [-0.035, 0.16], 0.02, 'ink', 'none'),
		bar([0.13, 0.022], [0.035, 0.16], 0.02, 'ink', 'none'),
		disc(0, z, 0.055, 'sheet', 'heavy', 4)
	];
}

/** An I-section seen from its end, centred on x. */
export function beamEnd(x: number, bottom: number, width: number, height: number): Shape[] {
	const t = Math.max(0.025, height * 0.09);
	const w = width / 2;
	const s = t * 0.35;
	return [
		area(
			[
				[x - w, bottom],
				[x + w, bottom],
				[x + w, bottom + t],
				[x + s, bottom + t],
				[x + s, bottom + height - t],
				[x + w, bottom + height - t],
				[x + w, bottom + height],
				[x - w, bottom + height],
				[x - w, bottom + height - t],
				[x - s, bottom + height - t],
				[x - s, bottom + t],
				[x - w, bottom + t]
			],
			'steel',
			'medium'
		)
	];
}

/** An I-section seen from its side: two flange lines and an outline. */
export function beamSide(left: number, right: number, bottom: number, top: number): Shape[] {
	const t = Math.max(0.025, (top - bottom) * 0.09);
	return [
		rect(left, bottom, right, top, 'sheet', 'medium'),
		line(
			[
				[left, bottom + t],
				[right, bottom + t]
			],
			'thin'
		),
		line(
			[
				[left, top - t],
				[right, top - t]
			],
			'thin'
		)
	];
}

/** Upright lines every `every` metres from left to right. */
export function uprights(left: number, right: number, bottom: number, top: number, every: number): Shape[] {
	const shapes: Shape[] = [];
	const n = Math.max(1, Math.round((right - left) / every));
	for (let i = 0; i <= n; i++) {
		const x = left + ((right - left) * i) / n;
		shapes.push(
			line(
				[
					[x, bottom],
					[x, top]
				],
				'material'
			)
		);
	}
	return shapes;
}

/** A guard rail of two tubes on posts, along x, standing on z. */
export function guardRail(left: number, right: number, z: number, height: number, every: number, weight: 'thin' | 'medium' = 'thin'): Shape[] {
	const shapes: Shape[] = [];
	const n = Math.max(1, Math.round((right - left) / every));
	for (let i = 0; i <= n; i++) {
		const x = left + ((right - left) * i) / n;
		shapes.push(bar([x, z], [x, z + height], 0.04, 'sheet', weight));
	}
	shapes.push(bar([left, z + height], [right, z + height], 0.042, 'sheet', weight));
	shapes.push(bar([left, z + height * 0.52], [right, z + height * 0.52], 0.036, 'sheet', weight));
	return shapes;
}

/** Lattice between two chords: a truss or a mast face. */
export function lattice(a0: Pair, a1: Pair, b0: Pair, b1: Pair, bays: number, thick: number): Shape[] {
	const shapes: Shape[] = [];
	const at = (p: Pair, q: Pair, s: number): Pair => [p[0] + (q[0] - p[0]) * s, p[1] + (q[1] - p[1]) * s];
	for (let i = 0; i < bays; i++) {
		const [s, e] = [i / bays, (i + 1) / bays];
		shapes.push(i % 2 === 0 ? bar(at(a0, a1, s), at(b0, b1, e), thick) : bar(at(b0, b1, s), at(a0, a1, e), thick));
	}
	shapes.push(bar(a0, a1, thick * 1.7), bar(b0, b1, thick * 1.7));
	return shapes;
}

/** One zigzag where a thing is cut off by the edge of the sheet: upright line at x from bottom to top. */
export function cutLine(x: number, bottom: number, top: number): Shape[] {
	const mid = (bottom + top) / 2;
	return [
		line(
			[
				[x, bottom],
				[x, mid - 0.12],
				[x + 0.07, mid - 0.045],
				[x - 0.07, mid + 0.045],
				[x, mid + 0.12],
				[x, top]
			],
			'thin'
		)
	];
}

/** A working step under the feet: top plate, splayed legs, treads. From x = left to right, h metres high. */
export function step(left: number, right: number, h: number): Shape[] {
	if (h < 0.05) return [];
	const shapes: Shape[] = [];
	const splay = Math.min(0.08, h * 0.16);
	const plate = Math.min(0.045, h * 0.4);
	if (h > plate + 0.06) {
		shapes.push(bar([left + 0.04, h - plate], [left + 0.02 - splay, 0], 0.035), bar([right - 0.04, h - plate], [right - 0.04, 0], 0.035));
		const treads = Math.floor((h - 0.12) / 0.25);
		for (let i = 1; i <= treads; i++) {
			const z = (h * i) / (treads + 1);
			const shift = splay * (1 - z / h);
			shapes.push(bar([left + 0.02 - shift, z], [right - 0.04, z], 0.025));
		}
	}
	shapes.push(
		rect(left, h - plate, right, h, 'sheet', 'medium'),
		line(
			[
				[left, h],
				[right, h]
			],
			'heavy'
		)
	);
	return shapes;
}
