/** The learner's tape while numbers are typed. Pixels. */
import { fromY, toY, type View } from '../drawing/view.ts';
import { block, type PlacedText, setBlock } from '../layout/placer.ts';
import type { TapeRoom } from '../layout/tape-room.ts';
import { longestWord, wrapText } from '../layout/text-width.ts';
import type { DraftTape, SiteModel } from '../model.ts';
import { type Band, bandOf, type Label, type LabelRequest, placeLabels, termLabel, type Tick, ticks } from './band.ts';

export interface DraftLayout {
	readonly x: number;
	readonly width: number;
	readonly top: number;
	/** Foot of the dashed outline. */
	readonly bottom: number;
	readonly open: boolean;
	readonly band: Band;
	readonly ticks: readonly Tick[];
	readonly end: { readonly y: number; readonly beyond: boolean } | null;
	readonly labels: readonly Label[];
	readonly title: readonly PlacedText[];
}

/** @param limit lowest row that may be drawn */
export function layoutDraft(draft: DraftTape, room: TapeRoom, view: View, units: SiteModel['units'], limit: number): DraftLayout {
	const x = room.left + room.bandLeft;
	const top = toY(view, draft.datum.z);
	const whole = toY(view, draft.datum.z - draft.reach);
	const last = view.cut === null ? limit : Math.min(limit, toY(view, view.cut.upper));
	const sum = draft.terms.reduce((s, t) => s + t.sign * t.length, 0);
	const band = bandOf(draft.datum, draft.terms, sum, view, last);
	const endY = draft.end === null ? null : toY(view, draft.datum.z - draft.end.length);
	const reachable = Math.max(Math.min(whole, last), band.bottom, endY === null ? 0 : Math.min(endY, last));
	const { sizes } = room;
	const requests: LabelRequest[] = [];
	const width = room.labelRight - 4;
	if (!room.wordsUnder) {
		for (const s of band.segments) requests.push(termLabel(s, sizes, width, 'own'));
		if (draft.end !== null && endY !== null) {
			requests.push({
				key: 'end',
				y: Math.min(endY, last) + 6,
				block: block([
					{ text: draft.end.label, size: sizes.term, weight: 700, tone: 'own' },
					...wrapText(draft.end.name, sizes.name, width).map((text) => ({ text, size: sizes.name, weight: 600 as const, tone: 'number' as const }))
				]),
				inline: false
			});
		}
		// Where the words of the datum are too wide, the figure alone: its name stands at its level line.
		const zero = longestWord(draft.zeroLabel, sizes.name) <= width ? draft.zeroLabel : '0';
		requests.push({
			key: 'zero',
			y: top + 1,
			block: block(wrapText(zero, sizes.name, width).map((text) => ({ text, size: sizes.name, weight: 600, tone: 'name' }))),
			inline: false
		});
	}
	const left = room.labelSide === 'left';
	const title = block(wrapText(draft.title, sizes.title, left ? room.width : titleWidth(room)).map((text) => ({ text, size: sizes.title, weight: 700, tone: 'own' })));
	return {
		x,
		width: room.band,
		top,
		bottom: reachable,
		open: whole > reachable + 1,
		band,
		ticks: ticks(draft.datum, reachable, units, view)
			.filter((t) => fromY(view, t.y) < draft.datum.z)
			.map((t) => (left ? { ...t, figure: '' } : t)),
		end: endY === null ? null : { y: Math.min(endY, last), beyond: endY > last + 0.5 },
		labels: placeLabels(requests, room.labelSide === 'right' ? x + room.band + 9 : x - 9, room.labelSide, [], top - 20),
		title: setBlock(title, left ? x + room.band : x + room.band / 2, top - 22 - title.height, left ? 'end' : 'middle')
	};
}

/** Room for the title over a single band, which stands in its middle. */
export function titleWidth(room: Pick<TapeRoom, 'width' | 'bandLeft' | 'band'>): number {
	const middle = room.bandLeft + room.band / 2;
	return 2 * Math.min(middle, room.width - middle) + 8;
}
