/** Backdrops and obstacles: areas, lines and discs, in px through the drawing's own transform. */
import { isMaterial, polyline, toPoint, toX, toY, type Fill, type Shape, type View } from '#lib/scene/print.ts';
import type { Pen } from '../pen.ts';
import { INK } from '../pen.ts';
import { fillHatched } from './hatches.ts';
import { outlineOf, strokeStyle } from './lines.ts';

/** Plain fills on white paper. */
export const SHEET = '#ffffff';
const GROUNDS: Readonly<Record<'sheet' | 'sheet2' | 'ink', string>> = { sheet: SHEET, sheet2: '#f3f3f3', ink: INK };

/** Draws the shape's path, again for each time it is painted. */
function outline(pen: Pen, shape: Shape, view: View): void {
	if (shape.kind === 'disc') {
		pen.doc.circle(toX(view, shape.at[0]), toY(view, shape.at[1]), Math.max(shape.least ?? 0, shape.r * view.scale));
		return;
	}
	pen.doc.path(polyline(shape.points.map(([x, z]) => toPoint(view, x, z)), shape.kind === 'area'));
}

function paint(pen: Pen, shape: Shape, view: View, fill: Fill): void {
	if (fill === 'none') return;
	outline(pen, shape, view);
	if (!isMaterial(fill)) {
		pen.doc.fill(GROUNDS[fill]);
		return;
	}
	pen.doc.fill(GROUNDS.sheet2);
	outline(pen, shape, view);
	fillHatched(pen, fill);
}

export function drawShapes(pen: Pen, shapes: readonly Shape[], view: View): void {
	for (const shape of shapes) {
		paint(pen, shape, view, shape.kind === 'line' ? 'none' : shape.fill);
		const style = outlineOf(shape.weight, shape.line);
		if (style === undefined) continue;
		strokeStyle(pen, style);
		outline(pen, shape, view);
		pen.doc.stroke();
	}
}
