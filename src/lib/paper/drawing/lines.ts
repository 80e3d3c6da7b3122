/** Weights and dashes of lines, as on screen, px. */
import type { Line, Weight } from '#lib/scene/print.ts';
import { INK, type Pen } from '../pen.ts';

/** Lines of material stand back behind all others. */
export const MATERIAL_INK = '#7a7a7a';

const WIDTHS: Readonly<Record<Exclude<Weight, 'none'>, number>> = { heavy: 2.4, medium: 1.4, thin: 0.9, material: 0.8 };

export const CHAIN: readonly number[] = [12, 3, 2, 3];

const DASHES: Readonly<Record<Line, readonly number[]>> = { solid: [], chain: CHAIN, planned: [5, 5], dots: [2, 4] };

export interface StrokeStyle {
	readonly width: number;
	readonly colour?: string;
	readonly dash?: readonly number[];
	readonly join?: 'miter' | 'round';
	readonly cap?: 'butt' | 'round';
}

/** Sets how the next path is stroked. */
export function strokeStyle(pen: Pen, { width, colour = INK, dash = [], join = 'miter', cap = 'butt' }: StrokeStyle): void {
	const { doc } = pen;
	doc.lineWidth(width).lineJoin(join).lineCap(cap).strokeColor(colour);
	// The library's own types know dashes of one length only.
	if (dash.length > 0) doc.addContent(`[${dash.join(' ')}] 0 d`);
	else doc.undash();
}

/** Strokes a path text. */
export function strokePath(pen: Pen, d: string, style: StrokeStyle): void {
	if (d === '') return;
	strokeStyle(pen, style);
	pen.doc.path(d).stroke();
}

/** How a shape's outline is drawn; undefined for none. */
export function outlineOf(weight: Weight, line: Line = 'solid'): StrokeStyle | undefined {
	if (weight === 'none') return undefined;
	return { width: WIDTHS[weight], dash: DASHES[line], ...(weight === 'material' ? { colour: MATERIAL_INK } : {}) };
}
