/** Inside a turbine house: gearbox, curved shell, an open hatch in the floor over the tower. */
import { area, bar, disc, line, rect, type Pair, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { columns, frontView } from './front.ts';
import { frontAnchor, steelBeam } from './overhead.ts';
import { uprights } from './parts.ts';

/** The shell over the head, a flat arc in two lines. */
function shell(left: number, right: number, z: number, rise: number): Shape[] {
	const arc = (up: number): Pair[] => {
		const points: Pair[] = [];
		for (let i = 0; i <= 20; i++) {
			const s = i / 20;
			points.push([left + (right - left) * s, z + up + rise * 4 * s * (1 - s)]);
		}
		return points;
	};
	return [area([...arc(0.05), ...arc(0).reverse()], 'sheet2', 'medium')];
}

function gearbox(left: number, right: number): Shape[] {
	const w = right - left;
	return [
		rect(left, 0.02, right, 0.2, 'steel', 'medium'),
		area(
			[
				[left + w * 0.1, 0.2],
				[right - w * 0.06, 0.2],
				[right - w * 0.06, 0.95],
				[right - w * 0.2, 1.15],
				[left + w * 0.24, 1.15],
				[left + w * 0.1, 0.9]
			],
			'sheet2',
			'medium'
		),
		disc(left + w * 0.52, 0.66, 0.24, 'sheet', 'medium'),
		disc(left + w * 0.52, 0.66, 0.09, 'sheet2', 'medium'),
		// Oil line, with the fitting that is being worked on.
		bar([right - w * 0.14, 1.15], [right - w * 0.14, 1.72], 0.05, 'sheet', 'medium'),
		bar([right - w * 0.16, 1.72], [right + 0.06, 1.72], 0.05, 'sheet', 'medium'),
		rect(right + 0.04, 1.67, right + 0.1, 1.77, 'ink', 'none')
	];
}

function profile(f: BackdropFrame): Backdrop {
	const e = f.edge;
	const wall = e - 0.74;
	const shapes: Shape[] = [
		// Tower: plate with ring flanges, seen in section at the left.
		rect(wall - 0.05, f.ground, wall, -0.34, 'steel', 'medium'),
		...flanges(wall, f.ground)
	];
	shapes.push(
		rect(f.left, -0.34, wall + 0.1, -0.16, 'steel', 'medium'),
		rect(f.left, -0.16, e, -0.06, 'sheet', 'medium'),
		...uprights(f.left, e, -0.06, 0, 0.07),
		rect(f.left, -0.06, e, 0, 'none', 'medium'),
		line(
			[
				[f.left, 0],
				[e, 0]
			],
			'heavy'
		),
		...gearbox(e - 1.75, e - 0.72)
	);
	if (f.overhead !== null) {
		const right = Math.min(f.right, 1.5);
		shapes.push(...shell(f.left - 1, right + 0.3, f.overhead + 0.2, 0.06), ...steelBeam(f, f.overhead, f.left, right, 0.17));
	}
	return {
		shapes,
		busy: [
			[wall - 0.1, f.ground, wall + 0.12, -0.16],
			[f.left, -0.34, e, 0],
			[e - 1.75, 0, e - 0.6, 1.8]
		],
		surfaceTo: e
	};
}

function flanges(wall: number, ground: number): Shape[] {
	const shapes: Shape[] = [];
	for (let z = -1.6; z > ground + 0.6; z -= 2.4) {
		shapes.push(rect(wall, z - 0.06, wall + 0.1, z + 0.06, 'sheet', 'medium'), line([[wall, z], [wall + 0.1, z]], 'thin'));
	}
	return shapes;
}

function front(f: BackdropFrame): Backdrop {
	return frontView(f, {
		ends: true,
		fascia: 0.16,
		fill: 'sheet',
		detail: (from, to) => [...uprights(from, to, -0.06, 0, 0.07), line([[from, -0.06], [to, -0.06]], 'medium')],
		behind: (from, to) => gearbox(from + 0.12, Math.min(from + 1.0, to - 0.5)).slice(0, 4),
		below: (from, to, under, ground) => [
			...columns(0.12, [0.02, 0.98])(from, to, under, ground),
			...flanges(from + 0.05, ground).filter((s) => s.kind === 'area')
		],
		anchor: frontAnchor(f, (g, z, left, right) => [...shell(left - 1, right + 0.3, z + 0.2, 0.06), ...steelBeam(g, z, left, right, 0.17)])
	});
}

export function turbineNacelle(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
