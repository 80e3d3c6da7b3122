/** A goods platform: concrete with bumpers at its edge, cartons on a pallet, a canopy on a steel beam. */
import { concrete, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { frontView } from './front.ts';
import { frontAnchor, steelBeam } from './overhead.ts';
import { cutLine } from './parts.ts';

/** Cartons on a pallet, seen from their side. */
function pallet(left: number, right: number, high: number): Shape[] {
	const w = right - left;
	const shapes: Shape[] = [
		rect(left, 0.1, right, 0.14, 'timber', 'medium'),
		rect(left, 0, right, 0.03, 'sheet', 'medium'),
		rect(left + 0.02, 0.03, left + 0.12, 0.1, 'sheet', 'medium'),
		rect((left + right) / 2 - 0.05, 0.03, (left + right) / 2 + 0.05, 0.1, 'sheet', 'medium'),
		rect(right - 0.12, 0.03, right - 0.02, 0.1, 'sheet', 'medium')
	];
	const rows = 3;
	const each = (high - 0.14) / rows;
	for (let r = 0; r < rows; r++) {
		const z = 0.14 + r * each;
		const n = r % 2 === 0 ? 2 : 3;
		for (let i = 0; i < n; i++) {
			const a = left + 0.02 + ((w - 0.04) * i) / n;
			const b = left + 0.02 + ((w - 0.04) * (i + 1)) / n;
			shapes.push(rect(a, z, b, z + each, 'sheet2', 'medium'), line([[(a + b) / 2, z + each], [(a + b) / 2, z + each * 0.62]], 'material'));
		}
	}
	return shapes;
}

/** Canopy sheeting over the beam. */
function canopy(left: number, right: number, z: number): Shape[] {
	return [
		rect(left, z, right, z + 0.05, 'sheet', 'medium'),
		line(
			[
				[right, z + 0.05],
				[right, z - 0.1]
			],
			'medium'
		)
	];
}

function profile(f: BackdropFrame): Backdrop {
	const e = f.edge;
	const shapes: Shape[] = [
		...concrete(f.left, f.ground, e - 0.1, -0.02, ['right', 'top'], ['left', 'bottom']),
		...cutLine(f.left, f.ground, 0),
		// Edge angle and bumpers.
		rect(e - 0.2, -0.12, e - 0.1, -0.02, 'steel', 'medium'),
		rect(e - 0.1, -0.42, e, -0.1, 'rubber', 'medium'),
		rect(e - 0.1, -0.98, e, -0.66, 'rubber', 'medium'),
		rect(e - 0.42, -0.02, e, 0, 'sheet', 'medium'),
		line(
			[
				[f.left, 0],
				[e, 0]
			],
			'heavy'
		),
		...pallet(e - 1.5, e - 0.52, 1.0)
	];
	if (f.overhead !== null) {
		const right = Math.min(f.right, 1.6);
		shapes.push(...canopy(f.left, right, f.overhead + 0.26), ...steelBeam(f, f.overhead, f.left, right - 0.12));
	}
	return {
		shapes,
		busy: [
			[e - 0.4, f.ground, e, 0],
			[f.left, -0.3, e, 0],
			[e - 1.5, 0, e - 0.5, 1.02]
		],
		surfaceTo: e
	};
}

function front(f: BackdropFrame): Backdrop {
	return frontView(f, {
		wall: true,
		fascia: 0.12,
		fill: 'sheet',
		behind: () => pallet(f.front.from - 0.5, f.front.from + 0.24, 0.9),
		below: (from, to, under, ground) => [
			...concrete(from, ground, to, under, [], ['left', 'right', 'top', 'bottom']),
			...[f.front.from + 0.1, to - 0.3].map((x) => rect(x - 0.16, under - 0.5, x + 0.16, under - 0.08, 'rubber', 'medium'))
		],
		anchor: frontAnchor(f, (g, z, left, right) => [...canopy(left, right, z + 0.26), ...steelBeam(g, z, left, right)])
	});
}

export function loadingDock(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
