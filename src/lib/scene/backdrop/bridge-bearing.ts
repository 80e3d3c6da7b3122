/** A pier head: bearing on a plinth, deck soffit above, a bracketed inspection landing at the face. */
import { area, bar, concrete, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { anchorPost, cutLine, eyeBolt } from './parts.ts';

/** A grated landing seen from its end, on a raking bracket. */
function landing(left: number, right: number): Shape[] {
	const shapes: Shape[] = [rect(left, -0.07, right, 0, 'sheet', 'medium')];
	for (let x = left + 0.045; x < right - 0.02; x += 0.045) {
		shapes.push(
			line(
				[
					[x, -0.065],
					[x, -0.008]
				],
				'medium'
			)
		);
	}
	shapes.push(
		rect(left, -0.135, right, -0.07, 'sheet', 'medium'),
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

function profile(f: BackdropFrame): Backdrop {
	const face = f.edge - 0.68;
	const soffit = f.overhead ?? 2.4;
	const pierTop = Math.min(1.58, soffit - 0.72);
	const right = Math.min(f.right, 1.62);
	const shapes: Shape[] = [
		// Pier shaft, cut off at the left.
		...concrete(f.left, f.ground, face, pierTop, ['right', 'top'], ['left', 'bottom']),
		...cutLine(f.left, f.ground, pierTop),
		// Plinth and bearing.
		rect(face - 0.62, pierTop, face - 0.12, soffit - 0.26, 'sheet2', 'medium'),
		rect(face - 0.56, soffit - 0.26, face - 0.18, soffit, 'rubber', 'medium'),
		line(
			[
				[face - 0.6, soffit - 0.26],
				[face - 0.14, soffit - 0.26]
			],
			'heavy'
		),
		// The drain beside the bearing.
		rect(face - 0.12, soffit - 0.46, face + 0.03, soffit - 0.37, 'sheet', 'medium'),
		line(
			[
				[face + 0.03, soffit - 0.49],
				[face + 0.03, soffit - 0.34]
			],
			'heavy'
		),
		// Deck soffit.
		...concrete(f.left, soffit, right, f.top, ['bottom'], ['left', 'top', 'right', 'bottom']),
		line(
			[
				[right, soffit],
				[right, f.top]
			],
			'thin'
		),
		line(
			[
				[f.left, soffit],
				[right, soffit]
			],
			'heavy'
		),
		...eyeBolt(soffit, f.site.anchorage.height),
		// Bracket below the landing.
		bar([f.edge - 0.16, -0.135], [face + 0.02, -0.82], 0.055),
		rect(face - 0.01, -0.95, face + 0.025, -0.7, 'ink', 'none'),
		...landing(face, f.edge)
	];
	return {
		shapes,
		busy: [
			[face - 0.3, f.ground, face, pierTop],
			[f.left, soffit, right, f.top],
			[face - 0.62, pierTop, face + 0.05, soffit],
			[face, -0.95, f.edge, 0]
		],
		surfaceTo: f.edge
	};
}

function front(f: BackdropFrame): Backdrop {
	const { from, to } = f.front;
	const pierLeft = Math.max(f.left, from + 0.1);
	const shapes: Shape[] = [
		...concrete(pierLeft, f.ground, to - 0.1, -0.2, ['left', 'right'], ['top', 'bottom']),
		...concrete(pierLeft, 0, to - 0.1, f.overhead === null ? 1.1 : Math.min(1.5, f.overhead - 0.7), ['top'], ['bottom'])
	];
	if (f.overhead !== null) {
		const pierTop = Math.min(1.5, f.overhead - 0.7);
		for (const x of [pierLeft + 0.4, to - 0.7]) {
			shapes.push(
				rect(x - 0.25, pierTop, x + 0.25, f.overhead - 0.24, 'sheet2', 'medium'),
				rect(x - 0.19, f.overhead - 0.24, x + 0.19, f.overhead, 'rubber', 'medium')
			);
		}
		shapes.push(
			...concrete(f.left, f.overhead, Math.min(f.right, to + 0.5), f.top, ['bottom'], ['left', 'top', 'right', 'bottom']),
			line(
				[
					[f.left, f.overhead],
					[Math.min(f.right, to + 0.5), f.overhead]
				],
				'heavy'
			),
			...eyeBolt(f.overhead, f.site.anchorage.height)
		);
	} else {
		shapes.push(...anchorPost(f.site.anchorage.height));
	}
	for (const x of [from + 0.25, (from + to) / 2, to - 0.25]) {
		shapes.push(
			area(
				[
					[x - 0.03, -0.135],
					[x + 0.03, -0.135],
					[x + 0.02, -0.82],
					[x - 0.02, -0.82]
				],
				'sheet',
				'medium'
			)
		);
	}
	shapes.push(...landing(from, to));
	return { shapes, busy: [[from, -0.14, to, 0]], surfaceTo: to };
}

export function bridgeBearing(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
