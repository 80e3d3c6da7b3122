/** Where in a drawing the numbers stand that can be entered. Pixels of the drawing. */
import type { Elevation } from '#lib/scene/index.ts';

export interface EntryPlace {
	/** The given's id. */
	readonly id: string;
	readonly x: number;
	readonly y: number;
	/** Room for the number. */
	readonly width: number;
}

/** @reason the frame round the number. */
const MORE = 10;
/** @reason the narrowest place that a finger or a pointer finds on a large screen. */
const LEAST = 44;

/** @returns the middle of each dimension's number, in the order of the drawing from top to bottom. */
export function entryPlaces(drawing: Elevation): readonly EntryPlace[] {
	const places = drawing.dimensions.flatMap((dimension) =>
		dimension.texts.flatMap(({ tone, of, box }): EntryPlace[] =>
			tone === 'number'
				? [{ id: of ?? dimension.id, x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2, width: Math.max(LEAST, box.right - box.left + MORE) }]
				: []
		)
	);
	return places.sort((a, b) => a.y - b.y);
}
