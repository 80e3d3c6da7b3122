/**
 * What a backdrop or an obstacle is made of, in metres. Data only: one component draws them, and a test can
 * read them. Weights and hatches are names; their pixels are in the component.
 */
export type Weight = 'heavy' | 'medium' | 'thin' | 'material' | 'none';

/** `concrete` and the like are material hatches over a light ground; `ink` is solid. */
export type Fill =
	| 'none'
	| 'sheet'
	| 'sheet2'
	| 'ink'
	| 'concrete'
	| 'steel'
	| 'rubber'
	| 'timber'
	| 'insulation'
	| 'masonry'
	| 'mesh';

export type Line = 'solid' | 'chain' | 'planned' | 'dots';

/** x, z in metres. */
export type Pair = readonly [x: number, z: number];

export interface AreaShape {
	readonly kind: 'area';
	readonly points: readonly Pair[];
	readonly fill: Fill;
	readonly weight: Weight;
	readonly line?: Line;
}

export interface LineShape {
	readonly kind: 'line';
	readonly points: readonly Pair[];
	readonly weight: Weight;
	readonly line?: Line;
}

export interface DiscShape {
	readonly kind: 'disc';
	readonly at: Pair;
	/** Radius in m, never drawn under `least` px. */
	readonly r: number;
	readonly least?: number;
	readonly fill: Fill;
	readonly weight: Weight;
	readonly line?: Line;
}

export type Shape = AreaShape | LineShape | DiscShape;

export function area(points: readonly Pair[], fill: Fill = 'sheet', weight: Weight = 'medium', line?: Line): AreaShape {
	return line === undefined ? { kind: 'area', points, fill, weight } : { kind: 'area', points, fill, weight, line };
}

/** A rectangle between two corners. */
export function rect(
	left: number,
	bottom: number,
	right: number,
	top: number,
	fill: Fill = 'sheet',
	weight: Weight = 'medium',
	line?: Line
): AreaShape {
	return area(
		[
			[left, top],
			[right, top],
			[right, bottom],
			[left, bottom]
		],
		fill,
		weight,
		line
	);
}

export function line(points: readonly Pair[], weight: Weight = 'medium', style?: Line): LineShape {
	return style === undefined ? { kind: 'line', points, weight } : { kind: 'line', points, weight, line: style };
}

export function disc(x: number, z: number, r: number, fill: Fill = 'sheet', weight: Weight = 'medium', least?: number): DiscShape {
	return least === undefined
		? { kind: 'disc', at: [x, z], r, fill, weight }
		: { kind: 'disc', at: [x, z], r, fill, weight, least };
}

/** A bar of given thickness between two places: a strut, a pipe, a rail post. */
export function bar(a: Pair, b: Pair, thick: number, fill: Fill = 'sheet', weight: Weight = 'medium'): AreaShape {
	const dx = b[0] - a[0];
	const dz = b[1] - a[1];
	const d = Math.max(1e-9, Math.sqrt(dx * dx + dz * dz));
	const ox = (-dz * thick) / 2 / d;
	const oz = (dx * thick) / 2 / d;
	return area(
		[
			[a[0] + ox, a[1] + oz],
			[b[0] + ox, b[1] + oz],
			[b[0] - ox, b[1] - oz],
			[a[0] - ox, a[1] - oz]
		],
		fill,
		weight
	);
}

export type EdgeSide = 'left' | 'right' | 'top' | 'bottom';

/**
 * Large concrete: light ground and outline, hatched only in a band along the named edges, so that the sheet
 * stays light. `open` edges are cut off by the sheet and carry no outline.
 */
export function concrete(
	left: number,
	bottom: number,
	right: number,
	top: number,
	hatched: readonly EdgeSide[],
	open: readonly EdgeSide[] = []
): Shape[] {
	const band = 0.28;
	const shapes: Shape[] = [rect(left, bottom, right, top, 'sheet2', 'none')];
	const w = Math.min(band, right - left);
	const h = Math.min(band, top - bottom);
	for (const side of hatched) {
		if (side === 'left') shapes.push(rect(left, bottom, left + w, top, 'concrete', 'none'));
		if (side === 'right') shapes.push(rect(right - w, bottom, right, top, 'concrete', 'none'));
		if (side === 'top') shapes.push(rect(left, top - h, hatched.includes('right') ? right - w : right, top, 'concrete', 'none'));
		if (side === 'bottom') shapes.push(rect(left, bottom, hatched.includes('right') ? right - w : right, bottom + h, 'concrete', 'none'));
	}
	const corner: Record<EdgeSide, readonly [Pair, Pair]> = {
		left: [
			[left, bottom],
			[left, top]
		],
		right: [
			[right, top],
			[right, bottom]
		],
		top: [
			[left, top],
			[right, top]
		],
		bottom: [
			[right, bottom],
			[left, bottom]
		]
	};
	for (const side of ['left', 'top', 'right', 'bottom'] as const) {
		if (!open.includes(side)) shapes.push(line(corner[side], 'medium'));
	}
	return shapes;
}
