/** The shares of wrong answers week by week, placed on a chart. */

/** How the answers of one week went. */
export interface Week {
	/** Its Monday. */
	readonly week: string;
	readonly answers: number;
	readonly wrong: number;
	readonly critical: number;
}

/** A bar of the chart, px. */
export interface Bar {
	readonly week: string;
	readonly x: number;
	readonly width: number;
	/** Heights of the wrong answers, and of those on the unsafe side, which are some of them. */
	readonly wrong: number;
	readonly critical: number;
}

/** The chart, px. */
export interface Chart {
	readonly width: number;
	readonly height: number;
	/** Where the bars begin, and the line they stand on. */
	readonly left: number;
	readonly base: number;
	readonly bars: readonly Bar[];
	/** Lines across, with the share each stands for, 0 to 1. */
	readonly lines: readonly { readonly y: number; readonly share: number }[];
	/** Weeks whose Monday is written under them. */
	readonly marks: readonly { readonly x: number; readonly week: string; readonly end: boolean }[];
}

/** @reason half a year: what was before says little of now, and more bars are too thin to tell apart */
export const MOST_WEEKS = 26;

const DAY = 24 * 60 * 60 * 1000;
const WEEK = 7 * DAY;
/** On the left there is room for "100 %" in the large letters of a phone. */
const SIZE = { width: 560, height: 190, left: 92, right: 8, top: 12, base: 158 } as const;
/** Bars of a few weeks are no wider, px. */
const WIDEST = 40;
/** Part of a week's room that its bar takes. */
const FILLED = 0.72;

/** @returns the last weeks, those without answers left out. */
export function lastWeeks(weeks: readonly Week[]): readonly Week[] {
	const last = weeks.at(-1);
	if (last === undefined) return [];
	const first = Date.parse(last.week) - (MOST_WEEKS - 1) * WEEK;
	return weeks.filter(({ week }) => Date.parse(week) >= first);
}

/** The highest share that the chart has room for: a quarter, a half or all. */
function topOf(weeks: readonly Week[]): number {
	const highest = Math.max(0, ...weeks.map(({ wrong, answers }) => wrong / answers));
	return [1 / 4, 1 / 2].find((top) => highest <= top) ?? 1;
}

/** @returns the chart of some weeks in order, each with at least one answer; weeks without answers leave a gap. */
export function chartOf(weeks: readonly Week[]): Chart {
	const { width, height, left, right, top, base } = SIZE;
	const first = Date.parse(weeks[0]?.week ?? '');
	const nthOf = (week: string): number => Math.round((Date.parse(week) - first) / WEEK);
	const count = weeks.length === 0 ? 1 : nthOf(weeks.at(-1)?.week ?? '') + 1;
	const room = Math.min(WIDEST / FILLED, (width - left - right) / count);
	const highest = topOf(weeks);
	const up = (share: number): number => (share / highest) * (base - top);
	const bars = weeks.map(({ week, answers, wrong, critical }) => ({
		week,
		x: left + nthOf(week) * room + (room * (1 - FILLED)) / 2,
		width: room * FILLED,
		wrong: up(wrong / answers),
		critical: up(critical / answers)
	}));
	const marked = weeks.length < 2 ? weeks : [weeks[0], weeks.at(-1)].filter((one) => one !== undefined);
	return {
		width,
		height,
		left,
		base,
		bars,
		lines: [0, highest / 2, highest].map((share) => ({ y: base - up(share), share })),
		marks: marked.map(({ week }, i) => ({ week, x: left + nthOf(week) * room + room / 2, end: i > 0 && count * room > (width - left) / 2 }))
	};
}
