/** Axis-parallel boxes in px, for a layout in which nothing touches anything. */
export interface Box {
	readonly left: number;
	readonly top: number;
	readonly right: number;
	readonly bottom: number;
}

/** Whether two boxes share area when each keeps `gap` px free around it. */
export function overlaps(a: Box, b: Box, gap = 0): boolean {
	return (
		a.left < b.right + gap && b.left < a.right + gap && a.top < b.bottom + gap && b.top < a.bottom + gap
	);
}

/** Shared area of two boxes, px²; 0 when apart. */
export function sharedArea(a: Box, b: Box): number {
	const w = Math.min(a.right, b.right) - Math.max(a.left, b.left);
	const h = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
	return w > 0 && h > 0 ? w * h : 0;
}

/** The smallest box around points. */
export function around(points: readonly { readonly x: number; readonly y: number }[], pad = 0): Box {
	let left = Infinity;
	let top = Infinity;
	let right = -Infinity;
	let bottom = -Infinity;
	for (const p of points) {
		left = Math.min(left, p.x);
		right = Math.max(right, p.x);
		top = Math.min(top, p.y);
		bottom = Math.max(bottom, p.y);
	}
	return { left: left - pad, top: top - pad, right: right + pad, bottom: bottom + pad };
}

/** Whether `inner` lies within `outer`. */
export function within(inner: Box, outer: Box): boolean {
	return (
		inner.left >= outer.left &&
		inner.right <= outer.right &&
		inner.top >= outer.top &&
		inner.bottom <= outer.bottom
	);
}
