/** A lattice mast with panel aerials and a small bracketed stage; a beam clamped to it overhead. */
import { bar, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { frontView } from './front.ts';
import { frontAnchor, portal } from './overhead.ts';
import { disc } from '../drawing/shapes.ts';
import { lattice, uprights } from './parts.ts';

function mast(left: number, right: number, ground: number, top: number): Shape[] {
	const bays = Math.max(3, Math.round((top - ground) / (right - left) / 1.15));
	return [
		rect(left - 0.14, ground, right + 0.14, ground + 0.14, 'concrete', 'medium'),
		...lattice([left, ground + 0.14], [left, top], [right, ground + 0.14], [right, top], bays, 0.03)
	];
}

/** A panel aerial on its pole, with the cable one works at. */
function aerial(x: number, bottom: number, top: number): Shape[] {
	return [
		bar([x - 0.15, bottom - 0.1], [x - 0.15, top + 0.06], 0.045, 'sheet', 'medium'),
		rect(x - 0.1, bottom, x + 0.04, top, 'sheet2', 'medium'),
		line(
			[
				[x - 0.06, bottom + 0.05],
				[x - 0.06, top - 0.05]
			],
			'material'
		),
		rect(x - 0.06, bottom - 0.07, x - 0.02, bottom, 'ink', 'none'),
		line(
			[
				[x - 0.04, bottom - 0.07],
				[x - 0.05, bottom - 0.3],
				[x - 0.16, bottom - 0.44]
			],
			'medium'
		)
	];
}

function profile(f: BackdropFrame): Backdrop {
	const e = f.edge;
	const right = e - 0.72;
	const left = right - 0.62;
	const arm = (f.overhead ?? 2.2) + 0.05;
	const shapes: Shape[] = [
		...mast(left, right, f.ground, f.top),
		...aerial(e - 0.72, 1.62, Math.min(2.5, f.top - 0.08)),
		// Stage on its bracket.
		bar([e - 0.1, -0.1], [right, -0.62], 0.045),
		rect(right - 0.06, -0.12, e, -0.05, 'sheet', 'medium'),
		...uprights(right, e, -0.05, 0, 0.06),
		rect(right, -0.05, e, 0, 'none', 'medium'),
		line(
			[
				[right, 0],
				[e, 0]
			],
			'heavy'
		)
	];
	if (f.overhead !== null) {
		const hook = f.site.anchorage.height;
		shapes.push(
			bar([right - 0.08, arm], [0.16, arm], 0.09, 'sheet', 'medium'),
			bar([right, arm + 0.36], [-0.2, arm + 0.03], 0.035, 'sheet', 'medium'),
			rect(right - 0.05, arm - 0.08, right + 0.05, arm + 0.08, 'ink', 'none'),
			bar([0, arm - 0.04], [0, hook + 0.06], 0.026, 'ink', 'none'),
			disc(0, hook + 0.035, 0.055, 'sheet', 'heavy', 4)
		);
	}
	return {
		shapes,
		busy: [
			[left - 0.05, f.ground, right + 0.05, f.top],
			[right, -0.62, e, 0],
			[e - 0.9, 1.1, e - 0.66, f.top]
		],
		surfaceTo: e
	};
}

function front(f: BackdropFrame): Backdrop {
	const { from } = f.front;
	return frontView(f, {
		ends: true,
		fascia: 0.12,
		fill: 'sheet',
		detail: (a, to) => [
			line(
				[
					[a, -0.05],
					[to, -0.05]
				],
				'thin'
			)
		],
		behind: () => [...mast(from + 0.08, from + 0.62, f.ground, f.top)],
		below: (a, to, under) => [bar([to - 0.1, under], [a + 0.62, under - 0.5], 0.045)],
		anchor: frontAnchor(f, (g, z, left, right) => portal(g, z, Math.max(left, from + 0.35), right - 0.5).filter((s) => s.kind !== 'area' || s.fill !== 'ink' || s.points.some((p) => p[1] > 0.5)))
	});
}

export function telecomMast(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
