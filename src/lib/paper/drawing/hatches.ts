/** Hatches of materials, as tiles that the PDF lays itself: the same tiles as on screen. */
import { MATERIAL_DOT, MATERIAL_LINE, MATERIALS, type Material } from '#lib/scene/print.ts';
import type { Pen } from '../pen.ts';
import { pathOperators } from './operators.ts';

/** Grey of a hatch: it must stand back behind lines and numbers. */
const HATCH = '#7a7a7a';

const streams = new Map<Material, string>();

function streamOf(material: Material): string {
	let stream = streams.get(material);
	if (stream === undefined) {
		const { lines, dots } = MATERIALS[material];
		// A dot is a line of no length with round ends.
		const round = dots.map(([x, y]) => `${x} ${y} m\n${x} ${y} l`);
		stream = [`${MATERIAL_LINE} w`, ...lines.map(pathOperators), 'S', ...(round.length === 0 ? [] : ['1 J', `${2 * MATERIAL_DOT} w`, ...round, 'S'])].join('\n');
		streams.set(material, stream);
	}
	return stream;
}

/** Fills the path at hand with a hatch. Call it within the scale that the path was drawn in. */
export function fillHatched(pen: Pen, material: Material): void {
	const { width, height } = MATERIALS[material];
	pen.doc.fill([pen.doc.pattern([0, 0, width, height], width, height, streamOf(material)), HATCH]);
}
