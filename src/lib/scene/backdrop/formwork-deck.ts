/** A formwork deck: boards on timber girders on props, starter bars, the slab above already cast. */
import { area, bar, disc, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { frontView } from './front.ts';
import { frontAnchor, soffit, steelBeam } from './overhead.ts';

/** A prop: base plate, two tubes, a collar between, a head plate. */
function prop(x: number, bottom: number, top: number): Shape[] {
	const collar = bottom + (top - bottom) * 0.55;
	return [
		bar([x, bottom], [x, collar], 0.075, 'sheet', 'medium'),
		bar([x, collar], [x, top], 0.05, 'sheet', 'medium'),
		rect(x - 0.07, collar - 0.05, x + 0.07, collar + 0.03, 'sheet2', 'medium'),
		rect(x - 0.09, bottom, x + 0.09, bottom + 0.025, 'ink', 'none'),
		rect(x - 0.09, top - 0.025, x + 0.09, top, 'ink', 'none')
	];
}

/** A timber girder seen from its end. */
function girderEnd(x: number): Shape[] {
	return [
		area(
			[
				[x - 0.05, -0.06],
				[x + 0.05, -0.06],
				[x + 0.05, -0.1],
				[x + 0.02, -0.12],
				[x + 0.02, -0.2],
				[x + 0.05, -0.22],
				[x + 0.05, -0.26],
				[x - 0.05, -0.26],
				[x - 0.05, -0.22],
				[x - 0.02, -0.2],
				[x - 0.02, -0.12],
				[x - 0.05, -0.1]
			],
			'timber',
			'medium'
		)
	];
}

function starters(left: number, right: number, high: number): Shape[] {
	const shapes: Shape[] = [];
	for (let i = 0; i < 4; i++) {
		const x = left + ((right - left) * i) / 3;
		shapes.push(bar([x, 0], [x, high], 0.02, 'ink', 'none'), disc(x, high, 0.026, 'sheet', 'medium'));
	}
	for (const z of [0.28, 0.62]) if (z < high - 0.1) shapes.push(line([[left - 0.03, z], [right + 0.03, z]], 'medium'));
	return shapes;
}

function profile(f: BackdropFrame): Backdrop {
	const e = f.edge;
	const shapes: Shape[] = [];
	for (const x of [e - 0.28, e - 1.28, e - 2.28]) {
		if (x > f.left + 0.1) shapes.push(...prop(x, f.ground, -0.44));
	}
	shapes.push(rect(f.left, -0.44, e - 0.06, -0.26, 'timber', 'medium'));
	for (let x = e - 0.12; x > f.left; x -= 0.4) shapes.push(...girderEnd(x));
	shapes.push(rect(f.left, -0.06, e, 0, 'timber', 'medium'), line([[f.left, 0], [e, 0]], 'heavy'), ...starters(e - 1.12, e - 0.6, 0.98));
	if (f.overhead !== null) shapes.push(...soffit(f, f.overhead, f.left, Math.min(f.right, 1.55)));
	return {
		shapes,
		busy: [
			[f.left, -0.46, e, 0],
			[e - 0.4, f.ground, e - 0.16, -0.44],
			[e - 1.4, f.ground, e - 1.16, -0.44],
			[e - 1.16, 0, e - 0.56, 1.02]
		],
		surfaceTo: e
	};
}

function front(f: BackdropFrame): Backdrop {
	return frontView(f, {
		fascia: 0.06,
		fill: 'timber',
		behind: () => starters(f.front.from - 0.3, f.front.from + 0.2, 0.9),
		below: (from, to, under, ground) => {
			const shapes: Shape[] = [];
			const props = [f.front.from, (f.front.from + to) / 2 + 0.1, to - 0.12];
			for (const x of props) shapes.push(...prop(x, ground, under - 0.38).map(light));
			shapes.push(rect(from, under - 0.2, to, under, 'sheet', 'medium'), line([[from, under - 0.05], [to, under - 0.05]], 'thin'), line([[from, under - 0.15], [to, under - 0.15]], 'thin'));
			for (const x of props) shapes.push(rect(x - 0.06, under - 0.38, x + 0.06, under - 0.2, 'timber', 'medium'));
			return shapes;
		},
		anchor: frontAnchor(f, f.overhead !== null && f.top - f.overhead < 0.3 ? steelBeam : soffit)
	});
}

/** What stands in the path of the fall, but behind it, is drawn thin. */
function light(s: Shape): Shape {
	return s.weight === 'medium' ? { ...s, weight: 'thin' } : s;
}

export function formworkDeck(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
