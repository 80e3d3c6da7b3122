/** Things one could meet on the way down, between x = from and x = to, standing on the lower level. */
import { area, bar, disc, line, rect, type Line, type Pair, type Shape } from '../drawing/shapes.ts';
import type { SiteObstacle } from '../model.ts';

function stack(o: SiteObstacle, g: number): Shape[] {
	const { from, to } = o;
	const shapes: Shape[] = [];
	const dunnage = Math.min(0.1, o.top * 0.14);
	const n = Math.max(2, Math.round((o.top - dunnage) / 0.135));
	const each = (o.top - dunnage) / n;
	for (const s of [0.12, 0.5, 0.88]) {
		const x = from + (to - from) * s;
		const half = dunnage * 0.5;
		shapes.push(
			rect(x - half, g, x + half, g + dunnage, 'sheet', 'medium'),
			line(
				[
					[x - half, g],
					[x + half, g + dunnage]
				],
				'thin'
			),
			line(
				[
					[x - half, g + dunnage],
					[x + half, g]
				],
				'thin'
			)
		);
	}
	const shifts = [0, 0.012, -0.014, 0.004, 0.016, -0.01, 0.008, -0.004];
	for (let i = 0; i < n; i++) {
		const s = i === n - 1 ? 0 : (shifts[i % shifts.length] ?? 0);
		const z = g + dunnage + i * each;
		shapes.push(rect(from + s, z, to + s, z + each, 'sheet2', 'medium'));
		shapes.push(
			line(
				[
					[from + s + 0.05, z + each * 0.5],
					[to + s - 0.05, z + each * 0.5]
				],
				'material'
			)
		);
	}
	return shapes;
}

/** A van or lorry seen from its side, roof or load at `top`; short ones are trolleys with a flat load. */
function vehicle(o: SiteObstacle, g: number): Shape[] {
	const { from, to, top } = o;
	const w = to - from;
	const wheel = Math.min(0.4, top * 0.2, w * 0.12);
	const sill = g + wheel * 1.1;
	const shapes: Shape[] = [];
	if (w > 1.7 && top > 1.3) {
		const nose = Math.min(0.75, w * 0.28);
		const bonnet = g + top * 0.5;
		shapes.push(
			area(
				[
					[from, sill],
					[from, bonnet],
					[from + nose * 0.55, bonnet + top * 0.06],
					[from + nose, g + top],
					[to, g + top],
					[to, sill]
				],
				'sheet2',
				'medium'
			),
			area(
				[
					[from + nose * 0.72, bonnet + top * 0.07],
					[from + nose * 1.06, g + top * 0.9],
					[from + nose * 1.5, g + top * 0.9],
					[from + nose * 1.5, bonnet + top * 0.07]
				],
				'sheet',
				'medium'
			),
			line(
				[
					[from + nose * 1.62, sill + 0.06],
					[from + nose * 1.62, g + top - 0.08]
				],
				'material'
			)
		);
	} else {
		shapes.push(rect(from, sill + 0.12, to, g + top, 'sheet2', 'medium'), rect(from, sill, to, sill + 0.12, 'sheet', 'medium'));
		for (let i = 1; i < 4; i++) {
			const x = from + (w * i) / 4;
			shapes.push(
				line(
					[
						[x, sill + 0.2],
						[x, g + top - 0.08]
					],
					'material'
				)
			);
		}
	}
	for (const s of [0.2, 0.8]) {
		const x = from + w * s;
		shapes.push(disc(x, g + wheel, wheel, 'sheet', 'medium'), disc(x, g + wheel, wheel * 0.42, 'sheet2', 'medium'));
	}
	return shapes;
}

function beam(o: SiteObstacle, g: number): Shape[] {
	const { from, to, top } = o;
	const z = g + top;
	const h = Math.min(0.34, top * 0.5);
	const post = Math.min(0.16, (to - from) * 0.2);
	return [
		rect(from + 0.12, g, from + 0.12 + post, z - h, 'sheet', 'medium'),
		rect(to - 0.12 - post, g, to - 0.12, z - h, 'sheet', 'medium'),
		rect(from, z - h, to, z, 'sheet2', 'medium'),
		line(
			[
				[from, z - h + 0.04],
				[to, z - h + 0.04]
			],
			'thin'
		),
		line(
			[
				[from, z - 0.04],
				[to, z - 0.04]
			],
			'thin'
		)
	];
}

function railing(o: SiteObstacle, g: number): Shape[] {
	const { from, to, top } = o;
	const shapes: Shape[] = [];
	const n = Math.max(1, Math.round((to - from) / 0.9));
	for (let i = 0; i <= n; i++) {
		const x = from + 0.02 + ((to - from - 0.04) * i) / n;
		shapes.push(bar([x, g], [x, g + top], 0.045));
	}
	for (const s of [0.5, 1]) {
		const z = g + top * s - 0.022;
		shapes.push(bar([from, z], [to, z], 0.045));
	}
	shapes.push(rect(from, g, to, g + Math.min(0.12, top * 0.12), 'sheet', 'medium'));
	return shapes;
}

function machine(o: SiteObstacle, g: number): Shape[] {
	const { from, to, top } = o;
	const w = to - from;
	const base = Math.min(0.12, top * 0.12);
	const louvre: Shape[] = [];
	for (let i = 0; i < 5; i++) {
		const z = g + base + (top - base) * (0.3 + i * 0.09);
		louvre.push(
			line(
				[
					[from + w * 0.1, z],
					[from + w * 0.44, z]
				],
				'material'
			)
		);
	}
	const r = Math.min(w * 0.17, top * 0.2);
	const cx = to - w * 0.27;
	const cz = g + base + (top - base) * 0.55;
	return [
		rect(from + w * 0.06, g, to - w * 0.06, g + base, 'sheet', 'medium'),
		rect(from, g + base, to, g + top, 'sheet2', 'medium'),
		line(
			[
				[from, g + top - Math.min(0.1, top * 0.1)],
				[to, g + top - Math.min(0.1, top * 0.1)]
			],
			'thin'
		),
		...louvre,
		disc(cx, cz, r, 'sheet', 'medium'),
		disc(cx, cz, r * 0.3, 'sheet2', 'medium'),
		line(
			[
				[cx - r, cz],
				[cx + r, cz]
			],
			'material'
		),
		line(
			[
				[cx, cz - r],
				[cx, cz + r]
			],
			'material'
		)
	];
}

function tank(o: SiteObstacle, g: number): Shape[] {
	const { from, to, top } = o;
	const rim = Math.min(0.06, top * 0.08);
	const rings: Shape[] = [];
	for (const s of [0.25, 0.5, 0.75]) {
		const z = g + (top - rim) * s;
		rings.push(
			line(
				[
					[from, z],
					[to, z]
				],
				'material'
			)
		);
	}
	return [rect(from + 0.03, g, to - 0.03, g + top - rim, 'sheet2', 'medium'), ...rings, rect(from, g + top - rim, to, g + top, 'sheet', 'medium')];
}

function water(o: SiteObstacle, g: number): Shape[] {
	const { from, to, top } = o;
	const shapes: Shape[] = [rect(from, g, to, g + top, 'sheet2', 'none')];
	for (let row = 0; row < 4; row++) {
		const z = g + top - 0.12 - row * 0.16;
		if (z < g + 0.04) break;
		for (let x = from + 0.1 + row * 0.22; x < to - 0.3; x += 0.7) {
			shapes.push(
				line(
					[
						[x, z],
						[x + 0.12, z + 0.03],
						[x + 0.24, z]
					],
					'material'
				)
			);
		}
	}
	return shapes;
}

function canopy(o: SiteObstacle, g: number): Shape[] {
	const { from, to, top } = o;
	const z = g + top;
	const t = Math.min(0.14, top * 0.2);
	return [
		bar([from + 0.1, g], [from + 0.1, z - t], 0.08),
		bar([to - 0.1, g], [to - 0.1, z - t], 0.08),
		bar([from + 0.1, z - t - 0.5], [from + 0.55, z - t], 0.05),
		bar([to - 0.1, z - t - 0.5], [to - 0.55, z - t], 0.05),
		rect(from, z - t, to, z, 'sheet2', 'medium')
	];
}

const KINDS = { stack, vehicle, beam, railing, machine, tank, water, canopy };

/**
 * An obstacle, its top drawn heavy: one meets it. What is planned but not there at this moment is an empty
 * dashed outline.
 */
export function obstacleShapes(o: SiteObstacle, ground: number): Shape[] {
	const top: readonly Pair[] = [
		[o.from, ground + o.top],
		[o.to, ground + o.top]
	];
	if (o.there) return [...KINDS[o.kind](o, ground), line(top, 'heavy')];
	const dashed: Line = 'planned';
	const outline: Shape[] = KINDS[o.kind](o, ground)
		.filter((s) => s.weight === 'medium')
		.map((s): Shape => (s.kind === 'area' ? area(s.points, 'none', 'thin', dashed) : s.kind === 'line' ? line(s.points, 'thin', dashed) : { ...s, fill: 'none', weight: 'thin', line: dashed }));
	return [...outline, line(top, 'medium', dashed)];
}
