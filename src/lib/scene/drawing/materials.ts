/** Materials in section, as tiles in px, so that a hatch looks the same at every scale. Screen and paper draw these. */
import type { Fill } from './shapes.ts';

/** A fill that is a hatch. */
export type Material = Exclude<Fill, 'none' | 'sheet' | 'sheet2' | 'ink'>;

export interface MaterialTile {
	readonly width: number;
	readonly height: number;
	/** Path texts of its thin lines. */
	readonly lines: readonly string[];
	/** Middles of its dots. */
	readonly dots: readonly (readonly [x: number, y: number])[];
}

/** Line width and radius of the dots in all tiles, px. */
export const MATERIAL_LINE = 0.8;
export const MATERIAL_DOT = 0.9;

export const MATERIALS: Readonly<Record<Material, MaterialTile>> = {
	concrete: {
		width: 52,
		height: 44,
		lines: ['M-6 28 L22 0 M-6 50 L44 0 M8 50 L58 0 M34 46 L58 22', 'M8 12 l5 0 l-2.5 4.4 z M34 31 l5 0 l-2.5 -4.4 z M41 6 l3.6 0 l-1.8 3.2 z'],
		dots: [
			[24, 14],
			[46, 22],
			[14, 34],
			[27, 40]
		]
	},
	steel: { width: 4, height: 4, lines: ['M-1 1 L1 -1 M0 4 L4 0 M3 5 L5 3'], dots: [] },
	rubber: { width: 9, height: 7, lines: ['M0 6 L4 2 M5 6 L9 2'], dots: [] },
	timber: { width: 26, height: 8, lines: ['M0 2 q6.5 1.6 13 0 t13 0 M0 6 q6.5 -1.4 13 0 t13 0'], dots: [] },
	insulation: { width: 14, height: 14, lines: ['M0 14 c0 -9 7 -5 7 -14 M7 14 c0 -9 7 -5 7 -14'], dots: [] },
	masonry: { width: 20, height: 14, lines: ['M0 0 H20 M0 7 H20 M5 0 V7 M15 7 V14'], dots: [] },
	mesh: { width: 7, height: 7, lines: ['M0 0 L7 7 M7 0 L0 7'], dots: [] }
};

/** @returns whether a fill is a hatch. */
export function isMaterial(fill: Fill): fill is Material {
	return Object.hasOwn(MATERIALS, fill);
}
