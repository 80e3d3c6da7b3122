/** The figure and its line, in px. */
import { LAY_DASH, lanyardPaths, type FigurePaths, type LanyardPaths, type Ring, type Stroke, type View } from '#lib/scene/print.ts';
import { INK, type Pen } from '../pen.ts';
import { strokePath, strokeStyle } from './lines.ts';
import { SHEET } from './shapes.ts';

const BODY = '#e2e2e2';
const BODY_FAR = '#c6c6c6';

function fillPath(pen: Pen, d: string, colour: string): void {
	if (d !== '') pen.doc.path(d).fill(colour);
}

export function drawFigure(pen: Pen, paths: FigurePaths): void {
	const edge = { width: paths.outline * 2, join: 'round', cap: 'round' } as const;
	const detail = { width: paths.outline * 0.7, join: 'round', cap: 'round' } as const;
	for (const group of paths.groups) {
		strokePath(pen, group.d, edge);
		fillPath(pen, group.d, group.far ? BODY_FAR : BODY);
		strokePath(pen, group.details, detail);
		if (group.id === 'head') drawHelmet(pen, paths);
		if (group.id === 'body') strokePath(pen, paths.straps, { width: paths.strap, join: 'round', cap: 'round' });
	}
	drawDRing(pen, paths);
}

function drawHelmet(pen: Pen, paths: FigurePaths): void {
	strokePath(pen, paths.helmet, { width: paths.outline * 2, join: 'round', cap: 'round' });
	fillPath(pen, paths.helmet, SHEET);
	strokePath(pen, paths.helmetDetails, { width: paths.outline * 0.7, join: 'round', cap: 'round' });
	fillPath(pen, paths.brim, INK);
	strokePath(pen, paths.brim, { width: paths.outline, join: 'round' });
}

function drawDRing(pen: Pen, { plate, ring, outline, strap }: FigurePaths): void {
	const ry = Math.max(2, Math.sqrt((plate.x - ring.x) ** 2 + (plate.y - ring.y) ** 2) / 2);
	strokeStyle(pen, { width: outline * 1.3 });
	pen.doc.ellipse((plate.x + ring.x) / 2, (plate.y + ring.y) / 2, ry * 0.62, ry).stroke();
	pen.doc.circle(plate.x, plate.y, strap * 0.62).fill(INK);
}

function stroked(pen: Pen, { d, width }: Stroke, how: { readonly colour?: string; readonly cap?: 'round'; readonly dash?: readonly number[] } = {}): void {
	strokePath(pen, d, { width, join: 'round', ...how });
}

function drawRing(pen: Pen, { at, r }: Ring): void {
	strokeStyle(pen, { width: 2 });
	pen.doc.circle(at.x, at.y, r).fillAndStroke(SHEET, INK);
}

export function drawLanyard(pen: Pen, line: Parameters<typeof lanyardPaths>[0], view: View): void {
	const paths: LanyardPaths = lanyardPaths(line, view);
	if (paths.connector !== null) {
		stroked(pen, paths.connector.strap);
		stroked(pen, paths.connector.weave, { colour: SHEET });
		drawRing(pen, paths.connector.ring);
	}
	stroked(pen, paths.rope, { cap: 'round' });
	stroked(pen, paths.lay, { colour: SHEET, dash: LAY_DASH });
	stroked(pen, paths.link, { cap: 'round' });
	stroked(pen, paths.pack);
	stroked(pen, paths.face, { colour: SHEET });
	for (const bar of paths.bars) stroked(pen, bar);
	drawRing(pen, paths.hook);
}
