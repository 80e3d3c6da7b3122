/** Paragraphs and lines of words. */
import type { Pen, TextStyle } from '../pen.ts';
import type { TagKind } from '../tags.ts';
import type { Block } from './block.ts';

export interface WordsOptions {
	readonly kind?: TagKind;
	readonly gap?: number;
	readonly keeps?: boolean;
	/** Line height in parts of the size. */
	readonly leading?: number;
}

/** Where the base line stands in a line, in parts of the size from its upper edge: capitals of Overpass are 0.72 high. */
export const BASELINE = 0.9;

/** A text, broken into lines of a width. */
export function words(pen: Pen, text: string, style: TextStyle, width: number, { kind = 'P', gap = 0, keeps = false, leading = 1.32 }: WordsOptions = {}): Block {
	const lines = pen.wrap(text, style, width);
	const line = style.size * leading;
	return {
		height: lines.length * line,
		gap,
		keeps,
		draw(tag, x, y) {
			tag.content(kind, () => {
				for (const [i, one] of lines.entries()) pen.print(one, style, { x, baseline: y + i * line + style.size * BASELINE });
			});
		}
	};
}
