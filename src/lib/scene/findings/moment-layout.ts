/** Moments of a fall in px: one scale for the whole picture, figures solved as the playback solves them. */
import type { Shown, ShownPart } from '#lib/findings/index.ts';
import type { View } from '../drawing/view.ts';
import type { PlaybackCase, PlaybackFrame, PlaybackModel } from '../model.ts';
import { instantAt, type Instant } from '../playback/instant.ts';

export const MOMENT_WIDTH = 358;
export const MOMENT_HEIGHT = 480;
const TOP = 34;
const BOTTOM = 22;
/** Room over the head or the anchorage, m. */
const OVER = 0.12;
/** Widest scale at which six figures stand side by side, px a metre. */
const MOST = 74;

/** How many columns wide one metre is: a figure with its arms stretched out stays in its own. */
const IN_COLUMN = 0.84;

type Numbers = Readonly<Record<string, number>>;

const number = (numbers: Numbers, id: string): number => numbers[id] ?? 0;

/** @returns the one transform of the picture; column 0 is that of the D-ring. */
export function momentView(shown: Shown): View {
	const { numbers } = shown;
	const up = Math.max(number(numbers, 'anchorage'), number(numbers, 'stature') + OVER);
	const most = shown.drawing === 'moments' ? columnsOf(shown).width * IN_COLUMN : MOST;
	const scale = Math.min(most, (MOMENT_HEIGHT - TOP - BOTTOM) / (up + number(numbers, 'depth')));
	return { scale, x0: 0, y0: TOP + up * scale, cut: null };
}

/** @returns the figure and its line at one moment. */
export function momentInstant(shown: Shown, moment: Numbers): Instant {
	const all = shown.numbers;
	const freeFall = number(all, 'freeFall');
	const dRingHeight = number(all, 'dRingHeight');
	const deployed = number(moment, 'deployed');
	const gone = dRingHeight - number(moment, 'dRing');
	const share = deployed / number(all, 'elongation');
	/** @reason only the pose hangs on it: how far the body has turned from standing to falling to hanging */
	const tight = Math.sqrt((2 * freeFall) / 9.80665);
	const t = deployed > 0 ? tight + 0.3 * share : tight * Math.sqrt(Math.max(0, Math.min(1, gone / freeFall)));
	const frame: PlaybackFrame = {
		dRing: { x: 0, z: number(moment, 'dRing') },
		soles: { x: 0, z: number(moment, 'soles') },
		speed: 0,
		deployed,
		slid: number(moment, 'slid'),
		phase: deployed > 0 ? 'stopping' : 'free-fall'
	};
	const fall: PlaybackCase = {
		id: 'moment',
		name: '',
		duration: t,
		at: () => frame,
		events: [{ id: 'lanyard-tight', t: tight, name: '' }],
		levels: [],
		learner: null
	};
	const model: PlaybackModel = {
		worker: { dRingHeight, dRingNow: dRingHeight, stature: number(all, 'stature'), posture: 'standing', standingHeight: 0, offset: 0 },
		anchorage: { height: number(all, 'anchorage'), connectorLength: 0, connectorLies: 'hanging' },
		lanyard: { length: number(all, 'lanyard') },
		cases: [fall]
	};
	return instantAt(model, fall, t, 32);
}

/** The columns in which the moments stand, with the framed one first. */
export function columnsOf(shown: Shown): { readonly framed: number | null; readonly at: (index: number) => number; readonly width: number } {
	const framed = shown.numbers['framed-dRing'] !== undefined;
	const count = shown.parts.length + (framed ? 1 : 0);
	const width = MOMENT_WIDTH / count;
	// The back, where the line hangs, needs less room than the arms.
	const within = width * 0.79;
	return { framed: framed ? within : null, at: (index) => width * (index + (framed ? 1 : 0)) + within, width };
}

export interface TermRow {
	readonly part: ShownPart;
	readonly length: number;
	/** Of the term on the tape, px. */
	readonly top: number;
	readonly bottom: number;
	/** Middle of its row beside the tape, px. */
	readonly row: number;
}

/** Height of a row beside the tape: a finger wide. */
export const ROW = 60;

/** The tape hung from the walking surface, and a row for each of its terms. */
export function termRows(shown: Shown): readonly TermRow[] {
	const view = momentView(shown);
	let top = view.y0;
	const rows = shown.parts.map((part) => {
		const length = part.numbers?.['length'] ?? 0;
		const term = { part, length, top, bottom: top + length * view.scale };
		top = term.bottom;
		return term;
	});
	const least = MOMENT_HEIGHT - 6 - ROW * rows.length;
	let at = Math.min(least, view.y0) - ROW / 2;
	return rows.map((term) => {
		at += ROW;
		return { ...term, row: at };
	});
}
