/** The rim of a storage tank: shell plates, wind girder, the stored liquid behind, a valve, a jib. */
import { bar, disc, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { frontView } from './front.ts';
import { frontAnchor, jib, portal } from './overhead.ts';
import { cutLine, uprights } from './parts.ts';

function valve(x: number): Shape[] {
	return [
		rect(x - 0.16, 0, x + 0.16, 0.04, 'sheet', 'medium'),
		bar([x, 0.04], [x, 0.5], 0.13, 'sheet2', 'medium'),
		rect(x - 0.15, 0.5, x + 0.15, 0.56, 'sheet', 'medium'),
		bar([x, 0.56], [x, 0.8], 0.18, 'sheet2', 'medium'),
		rect(x - 0.13, 0.8, x + 0.13, 0.85, 'sheet', 'medium'),
		bar([x, 0.85], [x, 1.0], 0.028, 'ink', 'none'),
		bar([x - 0.18, 1.0], [x + 0.18, 1.0], 0.035, 'sheet', 'medium'),
		disc(x, 1.0, 0.03, 'ink', 'none')
	];
}

function plates(left: number, right: number, top: number, ground: number): Shape[] {
	const shapes: Shape[] = [];
	let row = 0;
	for (let z = top - 1.5; z > ground + 0.2; z -= 1.5) {
		shapes.push(line([[left, z], [right, z]], 'material'));
		const x = left + ((row % 2) * 0.9 + 0.6);
		if (x < right) shapes.push(line([[x, z], [x, Math.min(top, z + 1.5)]], 'material'));
		row += 1;
	}
	return shapes;
}

function profile(f: BackdropFrame): Backdrop {
	const e = f.edge;
	const shellX = e - 0.5;
	const shapes: Shape[] = [
		// Liquid behind the shell, the shell in section.
		rect(f.left, f.ground, shellX - 0.04, -1.1, 'sheet2', 'none'),
		line([[f.left, -1.1], [shellX - 0.04, -1.1]], 'thin', 'chain'),
		...cutLine(f.left, f.ground, -0.3),
		rect(shellX - 0.04, f.ground, shellX, -0.12, 'ink', 'none'),
		// Roof plate inside, walkway outside on brackets.
		rect(f.left, -0.12, shellX, -0.06, 'steel', 'medium'),
		bar([e - 0.06, -0.1], [shellX, -0.52], 0.04),
		rect(shellX - 0.02, -0.1, e, -0.05, 'sheet', 'medium'),
		...uprights(shellX, e, -0.05, 0, 0.06),
		rect(f.left, -0.05, e, 0, 'none', 'medium'),
		line([[f.left, 0], [e, 0]], 'heavy'),
		rect(shellX, -1.74, shellX + 0.2, -1.68, 'steel', 'medium'),
		...valve(e - 0.68)
	];
	if (f.overhead !== null) shapes.push(...jib(f, f.overhead, e - 0.98));
	return {
		shapes,
		busy: [
			[shellX - 0.06, f.ground, shellX + 0.02, 0],
			[f.left, -0.12, e, 0],
			[shellX, -0.6, e, 0],
			[e - 1.1, 0, e - 0.5, 1.05]
		],
		surfaceTo: e
	};
}

function front(f: BackdropFrame): Backdrop {
	return frontView(f, {
		wall: true,
		fascia: 0.1,
		fill: 'sheet',
		detail: (from, to) => uprights(from, to, -0.1, -0.05, 0.06),
		behind: () => valve(f.front.from + 0.06),
		below: (from, to, under, ground) => [rect(from, ground, to, under, 'sheet2', 'none'), ...plates(from, to - 0.04, under, ground)],
		anchor: frontAnchor(f, (g, z, left, right) => portal(g, z, Math.max(left + 0.15, f.front.from + 0.12), Math.min(right, f.front.to - 0.12)))
	});
}

export function tankRoof(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
