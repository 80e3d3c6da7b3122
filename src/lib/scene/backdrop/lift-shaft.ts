/** A lift shaft in building: landings in section, guide rail, lifting beam under the shaft head. */
import { bar, concrete, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { frontView } from './front.ts';
import { frontAnchor, soffit } from './overhead.ts';
import { cutLine } from './parts.ts';

/** Door frame of a landing, seen from its side, with the box one works at. */
function doorFrame(x: number, high: number): Shape[] {
	return [
		rect(x - 0.12, 0, x, high, 'sheet', 'medium'),
		line([[x - 0.06, 0], [x - 0.06, high]], 'thin'),
		rect(x, 1.5, x + 0.06, 1.84, 'sheet2', 'medium'),
		line([[x + 0.02, 1.56], [x + 0.04, 1.56]], 'medium')
	];
}

/** Landings below: where the plan names levels, there; else every 3 m. */
function floors(f: BackdropFrame): number[] {
	const named = f.site.levels.map((l) => l.z).filter((z) => z < -0.5 && z > f.ground + 0.3);
	if (named.length > 0) return named;
	const out: number[] = [];
	for (let z = -3; z - 0.24 > f.ground + 0.8; z -= 3) out.push(z);
	return out;
}

function profile(f: BackdropFrame): Backdrop {
	const e = f.edge;
	const z = f.overhead ?? 2.6;
	const frame = e - 0.78;
	const lintel = Math.min(2.12, z - 0.35);
	const shapes: Shape[] = [
		// Wall over the door, in section.
		...concrete(frame - 0.14, lintel, frame + 0.02, z, ['left', 'right'], ['top']),
		...doorFrame(frame, lintel)
	];
	for (const floor of [0, ...floors(f)]) {
		shapes.push(...concrete(f.left, floor - 0.24, e, floor, ['right', 'top'], ['left']));
		if (floor - 1.2 > f.ground) shapes.push(...concrete(e - 0.24, floor - 0.94, e, floor - 0.24, ['right'], ['top']));
	}
	shapes.push(
		...concrete(f.left, f.ground - 0.001, e, Math.min(f.ground + 1.1, -0.9), ['right'], ['left', 'bottom']),
		...cutLine(f.left, f.ground, -0.24),
		line([[f.left, 0], [e, 0]], 'heavy')
	);
	const right = Math.min(f.right, 1.55);
	if (f.overhead !== null) shapes.push(...soffit(f, z, f.left, right));
	// Guide rail on the far wall, cut off by the sheet at its right.
	return {
		shapes,
		busy: [
			[e - 0.3, f.ground, e, 0],
			[f.left, -0.3, e, 0],
			[frame - 0.16, 0, frame + 0.08, z]
		],
		surfaceTo: e
	};
}

function front(f: BackdropFrame): Backdrop {
	const z = f.overhead;
	return frontView(f, {
		wall: true,
		fascia: 0.24,
		fill: 'concrete',
		behind: () => {
			const high = z === null ? 2.0 : Math.min(2.1, z - 0.3);
			const left = f.front.from - 0.3;
			return [rect(left, 0, left + 1.1, high, 'sheet', 'thin'), line([[left + 0.55, 0], [left + 0.55, high]], 'thin')];
		},
		below: (from, to, under, ground) => {
			const shapes: Shape[] = [rect(from, ground, to, under, 'sheet2', 'none')];
			for (const floor of floors(f)) shapes.push(rect(from, floor - 0.24, to, floor, 'sheet', 'thin'));
			shapes.push(bar([f.front.from, ground], [f.front.from, under], 0.05, 'sheet', 'thin'));
			return shapes;
		},
		anchor: frontAnchor(f, soffit)
	});
}

export function liftShaft(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
