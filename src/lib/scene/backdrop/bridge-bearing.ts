/** A pier head: bearing on a plinth, deck soffit above, a bracketed inspection landing at the face. */
import { area, bar, concrete, line, rect, type Shape } from '../drawing/shapes.ts';
import type { Backdrop, BackdropFrame } from './backdrop.ts';
import { frontView } from './front.ts';
import { frontAnchor, soffit } from './overhead.ts';
import { cutLine, eyeBolt, uprights } from './parts.ts';

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
	const under = f.overhead ?? 2.4;
	const pierTop = Math.min(1.58, under - 0.72);
	const right = Math.min(f.right, 1.62);
	const shapes: Shape[] = [
		// Pier shaft, cut off at the left.
		...concrete(f.left, f.ground, face, pierTop, ['right', 'top'], ['left', 'bottom']),
		...cutLine(f.left, f.ground, pierTop),
		// Plinth and bearing.
		rect(face - 0.62, pierTop, face - 0.12, under - 0.26, 'sheet2', 'medium'),
		rect(face - 0.56, under - 0.26, face - 0.18, under, 'rubber', 'medium'),
		line(
			[
				[face - 0.6, under - 0.26],
				[face - 0.14, under - 0.26]
			],
			'heavy'
		),
		// The drain beside the bearing.
		rect(face - 0.12, under - 0.46, face + 0.03, under - 0.37, 'sheet', 'medium'),
		line(
			[
				[face + 0.03, under - 0.49],
				[face + 0.03, under - 0.34]
			],
			'heavy'
		),
		// Deck soffit.
		...concrete(f.left, under, right, f.top, ['bottom'], ['left', 'top', 'right', 'bottom']),
		line(
			[
				[right, under],
				[right, f.top]
			],
			'thin'
		),
		line(
			[
				[f.left, under],
				[right, under]
			],
			'heavy'
		),
		...eyeBolt(under, f.site.anchorage.height),
		// Bracket below the landing.
		bar([f.edge - 0.16, -0.135], [face + 0.02, -0.82], 0.055),
		rect(face - 0.01, -0.95, face + 0.025, -0.7, 'ink', 'none'),
		...landing(face, f.edge)
	];
	return {
		shapes,
		busy: [
			[face - 0.3, f.ground, face, pierTop],
			[f.left, under, right, f.top],
			[face - 0.62, pierTop, face + 0.05, under],
			[face, -0.95, f.edge, 0]
		],
		surfaceTo: f.edge
	};
}

function front(f: BackdropFrame): Backdrop {
	const pierTop = f.overhead === null ? 1.1 : Math.min(1.5, f.overhead - 0.7);
	const grating = (from: number, to: number): Shape[] => [
		...uprights(from, to, -0.065, -0.008, 0.045),
		line(
			[
				[from, -0.07],
				[to, -0.07]
			],
			'medium'
		)
	];
	return frontView(f, {
		wall: true,
		fascia: 0.135,
		fill: 'sheet',
		detail: grating,
		behind: (from, to) => {
			const shapes: Shape[] = concrete(from, 0, to, pierTop, ['top'], ['left', 'right', 'bottom']);
			if (f.overhead === null) return shapes;
			for (const x of [f.front.from + 0.3, to - 0.62]) {
				shapes.push(
					rect(x - 0.25, pierTop, x + 0.25, f.overhead - 0.24, 'sheet2', 'medium'),
					rect(x - 0.19, f.overhead - 0.24, x + 0.19, f.overhead, 'rubber', 'medium')
				);
			}
			return shapes;
		},
		below: (from, to, under, ground) => [
			...concrete(from, ground, to, under, [], ['left', 'right', 'top', 'bottom']),
			...[f.front.from + 0.2, to - 0.25].map((x) =>
				area(
					[
						[x - 0.03, under],
						[x + 0.03, under],
						[x + 0.02, under - 0.68],
						[x - 0.02, under - 0.68]
					],
					'sheet',
					'medium'
				)
			)
		],
		anchor: frontAnchor(f, soffit)
	});
}

export function bridgeBearing(f: BackdropFrame): Backdrop {
	return f.sight === 'profile' ? profile(f) : front(f);
}
