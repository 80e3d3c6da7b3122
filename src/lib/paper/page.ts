/** The pages that a sheet is printed on. Points: 72 to the inch. */

export type PageSize = 'a4' | 'letter';

export const PAGE_SIZES: readonly PageSize[] = ['a4', 'letter'];

/** Where things stand on a page, from its upper left corner. */
export interface Frame {
	readonly width: number;
	readonly height: number;
	/** The room between head and foot. */
	readonly left: number;
	readonly right: number;
	readonly top: number;
	readonly bottom: number;
	/** Base lines of the head and of the foot. */
	readonly head: number;
	readonly foot: number;
}

/** @source ISO 216 for A4, 210 mm x 297 mm; ANSI/ASME Y14.1 for Letter, 8.5 in x 11 in (both from memory) */
const SIZES: Readonly<Record<PageSize, readonly [width: number, height: number]>> = {
	a4: [595.28, 841.89],
	letter: [612, 792]
};

/** @reason printers leave about 5 mm blank, and a hole punch takes more on the left. */
const MARGIN = { left: 48, right: 36, top: 30, bottom: 28 };
/** Room for the line at the head and for that at the foot, with its caution over it. */
const HEAD = 26;
const FOOT = 34;

export function frameOf(size: PageSize): Frame {
	const [width, height] = SIZES[size];
	return {
		width,
		height,
		left: MARGIN.left,
		right: width - MARGIN.right,
		top: MARGIN.top + HEAD,
		bottom: height - MARGIN.bottom - FOOT,
		head: MARGIN.top + 9,
		foot: height - MARGIN.bottom
	};
}
