/** The grid over a stage: open channels hung from the roof steel, pulleys and ropes, boards far below. */
import { bar, disc, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { frontView } from './front.ts';
import { frontAnchor, truss } from './overhead.ts';
import { beamEnd } from './parts.ts';

/** Channels seen from their ends, side by side: one walks on them. */
function channels(left: number, right: number): Shape[] {
	const shapes: Shape[] = [];
	for (let x = right - 0.11; x > left; x -= 0.17) {
		shapes.push(rect(x, -0.11, x + 0.11, 0, 'sheet', 'medium'), rect(x + 0.022, -0.11, x + 0.088, -0.022, 'sheet2', 'thin'));
	}
	shapes.push(
		line(
			[
				[left, 0],
				[right, 0]
			],
			'heavy'
		)
	);
	return shapes;
}

/** A pulley on a block, its ropes running down. */
function pulley(x: number, z: number, ground: number): Shape[] {
	const r = 0.13;
	const foot = Math.max(ground + 0.6, -3.2);
	return [
		line(
			[
				[x - r, z],
				[x - r, foot]
			],
			'thin'
		),
		line(
			[
				[x + r, z],
				[x + r, foot]
			],
			'thin'
		),
		// Lower block with its hook.
		rect(x - 0.17, foot - 0.16, x + 0.17, foot, 'sheet2', 'medium'),
		bar([x, foot - 0.16], [x, foot - 0.26], 0.03, 'ink', 'none'),
		disc(x, foot - 0.31, 0.05, 'none', 'medium'),
		rect(x - 0.17, z - 0.05, x + 0.17, z + 0.2, 'sheet2', 'medium'),
		disc(x, z, r, 'sheet', 'medium'),
		disc(x, z, 0.03, 'ink', 'none')
	];
}

function boards(left: number, right: number, ground: number): Shape[] {
	return [rect(left, ground - 0.05, right, ground, 'timber', 'none')];
}

function profile(f: BackdropFrame): Backdrop {
	const e = f.edge;
	const shapes: Shape[] = [
		...pulley(e - 0.84, 1.62, f.ground),
		// Hangers up to the roof steel.
		bar([e - 0.84, 1.8], [e - 0.84, f.top], 0.035, 'sheet', 'medium'),
		bar([e - 0.5, -0.3], [e - 0.5, f.top], 0.025, 'sheet', 'thin'),
		...beamEnd(e - 0.5, -0.36, 0.14, 0.25),
		...channels(f.left, e),
		...boards(f.left, Math.min(f.right, 1.6), f.ground)
	];
	if (f.overhead !== null) shapes.push(...truss(f, f.overhead, f.left, Math.min(f.right, 1.55)));
	return {
		shapes,
		busy: [
			[f.left, -0.36, e, 0],
			[e - 1.02, Math.max(f.ground, -3.6), e - 0.66, f.top]
		],
		surfaceTo: e
	};
}

function front(f: BackdropFrame): Backdrop {
	return frontView(f, {
		fascia: 0.14,
		fill: 'sheet',
		detail: (from, to) => [
			line(
				[
					[from, -0.025],
					[to, -0.025]
				],
				'thin'
			),
			line(
				[
					[from, -0.115],
					[to, -0.115]
				],
				'thin'
			)
		],
		behind: () => [f.front.from - 0.1, f.front.to - 0.12].map((x) => bar([x, -0.1], [x, f.top], 0.03, 'sheet', 'thin')),
		below: (from, to, _under, ground) => [...pulley(f.front.from, -0.32, ground), ...boards(from, to, ground)],
		anchor: frontAnchor(f, truss)
	});
}

export function stageGrid(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
