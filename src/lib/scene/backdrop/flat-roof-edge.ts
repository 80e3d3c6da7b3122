/** A flat roof: membrane on insulation on a slab, a masonry wall below, plant near the edge. */
import { area, concrete, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { frontView } from './front.ts';
import { frontAnchor, jib, portal } from './overhead.ts';
import { cutLine, uprights } from './parts.ts';

/** A roof unit seen from its side. */
function unit(left: number, right: number, top: number): Shape[] {
	const shapes: Shape[] = [
		rect(left + 0.06, 0, left + 0.16, 0.12, 'sheet', 'medium'),
		rect(right - 0.16, 0, right - 0.06, 0.12, 'sheet', 'medium'),
		rect(left, 0.12, right, top, 'sheet2', 'medium'),
		line(
			[
				[left, top - 0.07],
				[right, top - 0.07]
			],
			'thin'
		)
	];
	for (let i = 0; i < 5; i++) {
		const z = 0.3 + (top - 0.5) * (i / 5);
		shapes.push(
			line(
				[
					[left + 0.08, z],
					[right - 0.08, z]
				],
				'material'
			)
		);
	}
	return shapes;
}

function profile(f: BackdropFrame): Backdrop {
	const e = f.edge;
	const wall = e - 0.32;
	const shapes: Shape[] = [
		// Wall in section, with the room behind it.
		rect(wall, f.ground, e - 0.02, -0.36, 'masonry', 'medium'),
		...concrete(f.left, -0.36, e - 0.02, -0.15, ['top'], ['left']),
		rect(f.left, -0.15, e - 0.02, -0.02, 'insulation', 'medium'),
		...cutLine(f.left, -0.6, 0.1),
		// Membrane and edge trim.
		area(
			[
				[e - 0.14, 0],
				[e, 0],
				[e, -0.2],
				[e - 0.02, -0.2],
				[e - 0.02, -0.02],
				[e - 0.14, -0.02]
			],
			'ink',
			'none'
		),
		line(
			[
				[f.left, 0],
				[e, 0]
			],
			'heavy'
		),
		...unit(e - 1.62, e - 0.66, 1.02)
	];
	for (let z = -3.1; z > f.ground + 1.2; z -= 2.9) shapes.push(...concrete(f.left, z - 0.22, wall, z, ['top'], ['left', 'right']));
	if (f.overhead !== null) shapes.push(...jib(f, f.overhead, e - 0.86));
	return {
		shapes,
		busy: [
			[wall, f.ground, e, -0.36],
			[f.left, -0.36, e, 0],
			[e - 1.62, 0, e - 0.6, 1.05]
		],
		surfaceTo: e
	};
}

function front(f: BackdropFrame): Backdrop {
	return frontView(f, {
		wall: true,
		fascia: 0.2,
		fill: 'sheet',
		detail: (from, to) => [
			line(
				[
					[from, -0.06],
					[to, -0.06]
				],
				'thin'
			)
		],
		behind: () => unit(f.front.from - 0.5, f.front.from + 0.18, 0.85),
		below: (from, to, under, ground) => {
			const shapes: Shape[] = [rect(from, ground, to, under, 'sheet2', 'none'), ...uprights(from, to - 0.02, under - 0.16, under, 0.3)];
			for (let z = under - 0.9; z - 1.3 > ground + 0.5; z -= 2.8) {
				shapes.push(rect(f.front.from - 0.02, z - 1.25, f.front.from + 0.58, z, 'sheet', 'thin'), line([[f.front.from + 0.28, z - 1.25], [f.front.from + 0.28, z]], 'thin'));
			}
			return shapes;
		},
		anchor: frontAnchor(f, (g, z, left, right) => portal(g, z, Math.max(left + 0.2, f.front.from + 0.1), Math.min(right, f.front.to - 0.12)))
	});
}

export function flatRoofEdge(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
