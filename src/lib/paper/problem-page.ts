/** A problem on paper: story, drawing, labels, answers; on one page wherever it fits. */
import { drawBackdrop, layoutElevation, unplacedDimensions, type SiteModel } from '#lib/scene/print.ts';
import { answer, type PrintedAsk } from './blocks/answer.ts';
import { beside, paginate, stackHeight, together, type Block } from './blocks/block.ts';
import { table, type TableOptions } from './blocks/table.ts';
import { words } from './blocks/words.ts';
import { drawElevation } from './drawing/elevation.ts';
import type { Frame } from './page.ts';
import type { Pen } from './pen.ts';

/** All that is printed of a problem, in words and numbers. */
export interface PrintedProblem {
	/** Over the title: "Site problem 2". */
	readonly over: string;
	readonly title: string;
	readonly story: readonly string[];
	readonly site: SiteModel;
	/** Beside the scale bar. */
	readonly scaleText: string;
	/** The drawing in words, with its numbers. */
	readonly drawingText: string;
	/** Label plates, then lists: what is known besides, what holds here. */
	readonly tables: readonly TableOptions[];
	readonly asks: readonly PrintedAsk[];
}

/** Size of running text, points. */
const TEXT = 10.2;
/** How much smaller text is tried, before a problem takes a second page. */
const STEPS = [1, 0.95, 0.9, 0.85];
/** Points a px of the drawing at most: its numbers are then as large as running text. */
const PX = 0.58;
/** A drawing lower than this is hard to read, points. */
const LEAST_DRAWING = 270;
/** A drawing taller than this leaves no room to work by hand. */
const MOST_DRAWING = 450;
const BETWEEN = 16;
/** Share of the width that the drawing takes. */
const DRAWING = 0.61;
const LAYER = 12;

/** Laying a drawing out is the most work of a page: each room is tried once. */
type Drawing = (width: number, height: number) => Block;

function drawings(pen: Pen, problem: PrintedProblem): Drawing {
	const made = new Map<string, Block>();
	return (width, height) => {
		const key = `${width.toFixed(1)} ${height.toFixed(1)}`;
		const before = made.get(key);
		if (before !== undefined) return before;
		const block = drawing(pen, problem, width, height);
		made.set(key, block);
		return block;
	};
}

/** The drawing in a room, with those of its givens under it that found no place in it. */
function drawing(pen: Pen, { site, scaleText, drawingText }: PrintedProblem, width: number, height: number): Block {
	const e = layoutElevation(site, {
		width: Math.round(width / PX),
		height: Math.round(height / PX),
		textScale: 1,
		tape: { kind: 'none' },
		scaleText,
		backdrop: drawBackdrop
	});
	const left = unplacedDimensions(e).map(({ name, label }) => words(pen, `${name}: ${label}`, { size: TEXT * 0.9, weight: 700 }, width, { gap: 1 }));
	const room = height - (left.length === 0 ? 0 : stackHeight(left) + 4);
	const scale = Math.min(PX, room / e.height, width / e.width);
	const picture: Block = {
		height: e.height * scale,
		gap: 0,
		draw(tag, x, y) {
			tag.content('Figure', () => drawElevation(pen, e, x, y, scale), drawingText);
		}
	};
	return left.length === 0 ? picture : together([picture, together(left, 4)], LAYER);
}

function head(pen: Pen, problem: PrintedProblem, width: number, t: number): readonly Block[] {
	const text = { size: TEXT * t, weight: 400 } as const;
	return [
		words(pen, problem.over, { size: TEXT * 0.92 * t, weight: 600 }, width, { keeps: true }),
		words(pen, problem.title, { size: 17 * t, weight: 800 }, width, { kind: 'H2', keeps: true, leading: 1.15 }),
		...problem.story.map((paragraph) => words(pen, paragraph, text, width, { gap: 4 * t }))
	];
}

function asksOf(pen: Pen, asks: readonly PrintedAsk[], width: number, t: number): readonly Block[] {
	const column = (width - BETWEEN) / 2;
	const blocks = asks.map((ask) => answer(pen, ask, TEXT * t, column, 0));
	const rows: Block[] = [];
	for (let i = 0; i < blocks.length; i += 2) {
		const pair = blocks.slice(i, i + 2);
		rows.push(beside(pair.map((block, nth) => ({ x: nth * (column + BETWEEN), blocks: [block] })), LAYER * t));
	}
	return rows;
}

/**
 * Lays a problem out.
 * @param over what stands over it on its first page
 * @returns its pages: one, unless its words are too many for one
 */
export function problemPages(pen: Pen, frame: Frame, problem: PrintedProblem, over: readonly Block[]): readonly (readonly Block[])[] {
	const width = frame.right - frame.left;
	const height = frame.bottom - frame.top;
	const draw = drawings(pen, problem);
	const picture = width * DRAWING;
	let last: readonly Block[] = [];
	for (const t of STEPS) {
		const plates = problem.tables.map((one) => table(pen, one, 8.8 * t, width - picture - BETWEEN, 7 * t));
		const above = [...over, ...head(pen, problem, width, t)];
		const below = asksOf(pen, problem.asks, width, t);
		const middle = (room: number): Block => beside([{ x: 0, blocks: [draw(picture, room)] }, { x: picture + BETWEEN, blocks: plates }], LAYER * t);
		const room = height - stackHeight([...above, { height: 0, gap: LAYER * t, draw: () => undefined }, ...below]);
		if (room >= Math.max(LEAST_DRAWING, stackHeight(plates))) return [[...above, middle(Math.min(MOST_DRAWING, room)), ...below]];
		last = [...above, middle(Math.max(LEAST_DRAWING, Math.min(MOST_DRAWING, height * 0.5))), ...below];
	}
	return paginate(last, height);
}
