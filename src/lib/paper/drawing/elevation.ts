/** The elevation of a site on paper: the very layout of the screen, drawn as vectors in black on white. */
import { breakLines, earthStrokes, px, type Elevation, type PlacedDimension, type PlacedText } from '#lib/scene/print.ts';
import { INK, type Pen } from '../pen.ts';
import { CHAIN, MATERIAL_INK, strokePath, strokeStyle } from './lines.ts';
import { drawFigure, drawLanyard } from './person.ts';
import { drawShapes, SHEET } from './shapes.ts';

/** White round the letters, px, so that no line touches a number. */
const HALO = 3;

function drawWords(pen: Pen, texts: readonly PlacedText[]): void {
	for (const { text, size, weight, x, baseline, anchor } of texts) pen.print(text, { size, weight }, { x, baseline, anchor, halo: HALO });
}

function drawDimension(pen: Pen, d: PlacedDimension): void {
	for (const one of [...d.extensions, ...d.lines]) strokePath(pen, `M${px(one.x1)} ${px(one.y1)}L${px(one.x2)} ${px(one.y2)}`, { width: 0.9 });
	for (const arrow of d.arrows) {
		pen.doc.save();
		pen.doc.translate(arrow.x, arrow.y).rotate(arrow.angle).path('M0 0L-10 -1.6L-10 1.6Z').fill(INK);
		pen.doc.restore();
	}
	if (d.origin !== undefined) {
		strokeStyle(pen, { width: 1.2 });
		pen.doc.circle(d.origin.x, d.origin.y, 3).fillAndStroke(SHEET, INK);
	}
	drawWords(pen, d.texts);
}

function drawObstacles(pen: Pen, e: Elevation): void {
	pen.doc.save();
	pen.doc.rect(0, 0, e.cutOff.pieces.length > 0 ? e.cutOff.x : e.width, e.height).clip();
	for (const one of e.obstacles) drawShapes(pen, one.shapes, e.view);
	pen.doc.restore();
	for (const { top, bottom } of e.cutOff.pieces) {
		strokePath(pen, `M${px(e.cutOff.x)} ${px(top)}V${px((top + bottom) / 2 - 9)}l6 5l-12 8l6 5V${px(bottom)}`, { width: 0.9 });
	}
}

function drawBreak(pen: Pen, band: NonNullable<Elevation['breakBand']>): void {
	pen.doc.rect(band.x1, band.top + 5, band.x2 - band.x1, band.bottom - band.top - 10).fill(SHEET);
	for (const d of breakLines(band.x1, band.x2, band.top, band.bottom)) strokePath(pen, d, { width: 0.9 });
}

function drawScaleBar(pen: Pen, { x, y, half, texts }: NonNullable<Elevation['scaleBar']>): void {
	strokePath(pen, `M${x} ${px(y)}h${px(half)}`, { width: 4 });
	strokePath(pen, `M${x} ${px(y)}h${px(2 * half)}m0 -4v8M${px(x + half)} ${px(y - 4)}v8M${x} ${px(y - 4)}v8`, { width: 1.2 });
	drawWords(pen, texts);
}

function drawPx(pen: Pen, e: Elevation): void {
	pen.doc.rect(0, 0, e.width, e.height).clip();
	drawShapes(pen, e.back, e.view);
	for (const c of e.chains) strokePath(pen, `M${px(c.x1)} ${px(c.y)}H${px(c.x2)}`, { width: 0.9, dash: CHAIN });
	if (e.plumb !== null) strokePath(pen, `M${px(e.plumb.x)} ${px(e.plumb.y1)}V${px(e.plumb.y2)}`, { width: 0.9, dash: CHAIN });
	strokePath(pen, earthStrokes(e.ground.x1, e.ground.x2, e.ground.y), { width: 0.9, colour: MATERIAL_INK });
	drawObstacles(pen, e);
	strokePath(pen, `M${px(e.ground.x1)} ${px(e.ground.y)}H${px(e.ground.x2)}`, { width: 2.4 });
	if (e.figure !== null) drawFigure(pen, e.figure);
	if (e.line !== null) drawLanyard(pen, e.line, e.view);
	for (const d of e.dimensions) drawDimension(pen, d);
	if (e.breakBand !== null) drawBreak(pen, e.breakBand);
	for (const level of e.levels) {
		if (level.tip !== null) {
			strokeStyle(pen, { width: 1.4 });
			pen.doc.path(`M${px(level.tip.x)} ${px(level.tip.y - 1)}l-6.5 -9h13z`).fillAndStroke(SHEET, INK);
		}
		drawWords(pen, level.texts);
	}
	drawWords(pen, e.names);
	if (e.scaleBar !== null) drawScaleBar(pen, e.scaleBar);
}

/**
 * Draws an elevation.
 * @param x left edge, points
 * @param y upper edge, points
 * @param scale points a px of the layout
 */
export function drawElevation(pen: Pen, e: Elevation, x: number, y: number, scale: number): void {
	pen.doc.save();
	pen.doc.translate(x, y).scale(scale);
	drawPx(pen, e);
	pen.doc.restore();
}
