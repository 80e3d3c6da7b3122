/** The top of a steel silo: ringed wall, eaves, a filling hatch, a conveyor gallery over it. */
import { area, bar, disc, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { frontView } from './front.ts';
import { frontAnchor, truss } from './overhead.ts';
import { cutLine } from './parts.ts';

function rings(left: number, right: number, top: number, ground: number): Shape[] {
	const shapes: Shape[] = [];
	for (let z = top - 0.42; z > ground + 0.1; z -= 0.42) {
		shapes.push(
			line(
				[
					[left, z],
					[right, z]
				],
				'material'
			)
		);
	}
	return shapes;
}

/** Filling hatch on a neck, with its lid and hand wheel. */
function hatch(left: number, right: number): Shape[] {
	const mid = (left + right) / 2;
	return [
		area(
			[
				[left + 0.08, 0],
				[right - 0.08, 0],
				[right - 0.14, 0.62],
				[left + 0.14, 0.62]
			],
			'sheet2',
			'medium'
		),
		rect(left + 0.04, 0.62, right - 0.04, 0.7, 'sheet', 'medium'),
		rect(left + 0.08, 0.7, right - 0.08, 0.8, 'sheet2', 'medium'),
		bar([mid, 0.8], [mid, 0.94], 0.03, 'ink', 'none'),
		disc(mid, 0.96, 0.035, 'ink', 'none'),
		bar([mid - 0.17, 0.95], [mid + 0.17, 0.95], 0.03, 'sheet', 'medium')
	];
}

function profile(f: BackdropFrame): Backdrop {
	const e = f.edge;
	const wall = e - 0.1;
	const shapes: Shape[] = [
		rect(f.left, f.ground, wall, -0.16, 'sheet2', 'none'),
		...rings(f.left, wall, -0.16, f.ground),
		line(
			[
				[wall, f.ground],
				[wall, -0.16]
			],
			'medium'
		),
		...cutLine(f.left, f.ground, -0.16),
		// Stiffener up the wall.
		rect(wall - 0.42, f.ground, wall - 0.34, -0.16, 'sheet', 'medium'),
		// Eaves ring and roof plate.
		rect(e - 0.18, -0.2, e - 0.04, -0.06, 'steel', 'medium'),
		rect(f.left, -0.06, e, 0, 'sheet', 'medium'),
		line(
			[
				[f.left, 0],
				[e, 0]
			],
			'heavy'
		),
		...hatch(e - 1.2, e - 0.5)
	];
	if (f.overhead !== null) shapes.push(...truss(f, f.overhead, f.left, Math.min(f.right, 1.55)));
	return {
		shapes,
		busy: [
			[wall - 0.46, f.ground, wall, 0],
			[f.left, -0.2, e, 0],
			[e - 1.2, 0, e - 0.45, 1.02]
		],
		surfaceTo: e
	};
}

function front(f: BackdropFrame): Backdrop {
	return frontView(f, {
		wall: true,
		fascia: 0.14,
		fill: 'sheet',
		detail: (from, to) => [
			line(
				[
					[from, -0.05],
					[to, -0.05]
				],
				'thin'
			)
		],
		behind: () => hatch(f.front.from - 0.45, f.front.from + 0.25),
		below: (from, to, under, ground) => [rect(from, ground, to, under, 'sheet2', 'none'), ...rings(from, to - 0.04, under, ground)],
		anchor: frontAnchor(f, truss)
	});
}

export function siloTop(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
