/**
 * The one transform from metres to pixels. z points up in metres and y down in pixels; that is turned over
 * here and nowhere else. A deep shaft may be cut: the metres between `cut.upper` and `cut.lower` are left
 * out and a strip of `cut.gap` pixels stands for them.
 */
export interface Cut {
	/** z above which the drawing is whole, m. */
	readonly upper: number;
	/** z below which it goes on, m. */
	readonly lower: number;
	/** Height of the strip with the break lines, px. */
	readonly gap: number;
}

export interface View {
	/** Pixels a metre. */
	readonly scale: number;
	/** Pixel column of x = 0. */
	readonly x0: number;
	/** Pixel row of z = 0. */
	readonly y0: number;
	readonly cut: Cut | null;
}

export interface Point {
	readonly x: number;
	readonly y: number;
}

/** Pixel column of a place x metres right of the plumb line. */
export function toX(view: View, x: number): number {
	return view.x0 + x * view.scale;
}

/** Pixel row of a height z metres above the walking surface. */
export function toY(view: View, z: number): number {
	const { cut, scale, y0 } = view;
	if (cut === null || z >= cut.upper) return y0 - z * scale;
	const upperY = y0 - cut.upper * scale;
	if (z <= cut.lower) return upperY + cut.gap + (cut.lower - z) * scale;
	return upperY + (cut.gap * (cut.upper - z)) / (cut.upper - cut.lower);
}

/** A place in metres, as a pixel point. */
export function toPoint(view: View, x: number, z: number): Point {
	return { x: toX(view, x), y: toY(view, z) };
}

/** Height z in metres of a pixel row: the inverse of `toY`. */
export function fromY(view: View, y: number): number {
	const { cut, scale, y0 } = view;
	const plain = (y0 - y) / scale;
	if (cut === null || plain >= cut.upper) return plain;
	const upperY = y0 - cut.upper * scale;
	if (y >= upperY + cut.gap) return cut.lower - (y - upperY - cut.gap) / scale;
	return cut.upper - ((y - upperY) * (cut.upper - cut.lower)) / cut.gap;
}

/** A pixel number as it is written into a path: two decimals, no minus zero. */
export function px(value: number): string {
	const rounded = Math.round(value * 100) / 100;
	return rounded === 0 ? '0' : String(rounded);
}

/** Path text through pixel points. */
export function polyline(points: readonly Point[], closed = false): string {
	const parts = points.map((p, i) => `${i === 0 ? 'M' : 'L'}${px(p.x)} ${px(p.y)}`);
	return parts.join('') + (closed ? 'Z' : '');
}
