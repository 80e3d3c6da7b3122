/** How much of the sheet the tapes take at its right end, in px from where the site ends. */
import type { TapeModel, TapeTerm } from '../model.ts';
import type { ElevationOptions } from './elevation.ts';
import { textWidth, wrapText } from './text-width.ts';

export interface TapeSizes {
	readonly term: number;
	readonly total: number;
	readonly name: number;
	readonly title: number;
	/** Widest name beside a band. */
	readonly nameWidth: number;
}

export interface TapeRoom {
	readonly kind: 'draft' | 'pair';
	/** Whole width. */
	readonly width: number;
	/** Column where the site ends and this room begins; set by the drawing. */
	readonly left: number;
	/** First band, from `left`. */
	readonly bandLeft: number;
	readonly band: number;
	/** Second band, from `left`; the pair only. */
	readonly secondLeft: number;
	/** Words stand under the tapes instead of beside them. */
	readonly wordsUnder: boolean;
	/** Side of the words beside a single band. */
	readonly labelSide: 'left' | 'right';
	readonly sizes: TapeSizes;
	readonly labelRight: number;
}

function widest(terms: readonly TapeTerm[], s: TapeSizes, scale: number): number {
	let w = 0;
	for (const t of terms) {
		w = Math.max(w, textWidth(t.sign < 0 ? `−${t.label}` : t.label, s.term));
		const inline = textWidth(t.label, s.term) + 6 + textWidth(t.name, s.name);
		if (t.length * scale < 34 && inline <= s.nameWidth) w = Math.max(w, inline);
		for (const l of wrapText(t.name, s.name, s.nameWidth)) w = Math.max(w, textWidth(l, s.name));
	}
	return w;
}

/** Whether words go under the tapes: very narrow sheets and much larger text. */
export function wordsUnder(options: Pick<ElevationOptions, 'width' | 'textScale'>): boolean {
	return options.width < 344 || (options.textScale > 1.3 && options.width < 700);
}

export function tapeRoom(options: ElevationOptions, tight: boolean, scale: number): TapeRoom | null {
	const { tape } = options;
	if (tape.kind === 'none') return null;
	// Words beside the bands grow with the reader's text; on a phone only so far as the sheet has room.
	const t = tight ? Math.min(1.35, options.textScale) : options.textScale;
	const under = wordsUnder(options) || (tight && tape.kind === 'draft');
	const sizes: TapeSizes = {
		term: (tight ? 20 : 22) * t,
		total: (tight ? 25 : 27) * t,
		name: (tight ? 13 : 14) * t,
		title: (tight ? 14 : 15) * t,
		nameWidth: (tight ? 76 : 100) * t
	};
	if (tape.kind === 'draft') {
		const { draft } = tape;
		// Reserved, not measured: the drawing must not move while a number is being typed.
		const label = under ? 24 : Math.max((tight ? 56 : 88) * t, textWidth(draft.zeroLabel, sizes.name) * (tight ? 0 : 1) + 8);
		const bandLeft = tight ? 28 : 50;
		const band = tight ? 40 : 46;
		return { kind: 'draft', width: bandLeft + band + 8 + label, left: 0, bandLeft, band, secondLeft: 0, wordsUnder: under, labelSide: 'right', sizes, labelRight: label };
	}
	const { needed, own, firstMet, notes } = tape.pair;
	const band = tight ? 40 : 46;
	const heads = Math.max(textWidth(needed.totalLabel, sizes.total), textWidth(needed.title, sizes.title), own === null ? 0 : textWidth(own.totalLabel, sizes.total), own === null ? 0 : textWidth(own.title, sizes.title));
	const leftLabels = under ? Math.max(16, (heads - band) / 2 - 4) : widest(needed.terms, sizes, scale) + 10;
	const right = (own: TapeModel | null): number => {
		if (under) return Math.max(12, (heads - band) / 2 + 6);
		let w = own === null ? 0 : widest(own.terms, sizes, scale);
		for (const n of notes) w = Math.max(w, textWidth(n.text, sizes.name) + 14);
		if (firstMet !== null) {
			w = Math.max(w, textWidth(firstMet.label, sizes.term - 4), ...wrapText(firstMet.name, sizes.name, sizes.nameWidth).map((l) => textWidth(l, sizes.name)));
		}
		return w + 12;
	};
	const gap = Math.max(tight ? 42 : 64, heads - band + 12);
	const bandLeft = leftLabels + (tight ? 10 : 16);
	const secondLeft = bandLeft + band + gap;
	return {
		kind: 'pair',
		width: secondLeft + (own === null ? 0 : band) + right(own),
		left: 0,
		bandLeft,
		band,
		secondLeft,
		wordsUnder: under,
		labelSide: 'right',
		sizes,
		labelRight: right(own)
	};
}
