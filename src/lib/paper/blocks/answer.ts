/** Where a learner writes: a box with its unit, or boxes to tick. */
import { INK, type Pen } from '../pen.ts';
import { strokeStyle } from '../drawing/lines.ts';
import { together, type Block } from './block.ts';
import { words } from './words.ts';

/** One question of a problem. */
export interface PrintedAsk {
	/** Its number among the questions. */
	readonly ordinal: string;
	readonly question: string;
	/** Where it is measured from. */
	readonly help: string;
	/** What stands in the unit box; empty for a bare number, undefined for a decision. */
	readonly unit: string | undefined;
	/** Boxes to tick. */
	readonly ticks: readonly string[];
}

const BOX = 30;

function numberBox(pen: Pen, unit: string, size: number, width: number): Block {
	const style = { size: size * 1.15, weight: 600 } as const;
	const unitWidth = Math.max(34, pen.width(unit, style) + 14);
	return {
		height: BOX,
		gap: 4,
		draw(tag, x, y) {
			tag.content('P', () => {
				strokeStyle(pen, { width: 1.4 });
				pen.doc.rect(x + 0.7, y + 0.7, width - 1.4, BOX - 1.4).stroke();
				if (unit === '') return;
				strokeStyle(pen, { width: 0.7 });
				pen.doc.moveTo(x + width - unitWidth, y).lineTo(x + width - unitWidth, y + BOX).stroke();
				pen.print(unit, style, { x: x + width - unitWidth / 2, baseline: y + BOX / 2 + style.size * 0.34, anchor: 'middle' });
			});
		}
	};
}

function tickBox(pen: Pen, text: string, size: number, width: number, gap: number): Block {
	const style = { size, weight: 600 } as const;
	const box = 11;
	const lines = pen.wrap(text, style, width - box - 6);
	const line = size * 1.25;
	return {
		height: Math.max(box + 2, lines.length * line),
		gap,
		draw(tag, x, y) {
			tag.content('P', () => {
				strokeStyle(pen, { width: 1.2 });
				pen.doc.rect(x + 0.6, y + 0.6, box - 1.2, box - 1.2).stroke(INK);
				for (const [i, one] of lines.entries()) pen.print(one, style, { x: x + box + 6, baseline: y + i * line + size * 0.92 });
			});
		}
	};
}

/** @param size of the question, points */
export function answer(pen: Pen, ask: PrintedAsk, size: number, width: number, gap: number): Block {
	return together(
		[
			words(pen, `${ask.ordinal}  ${ask.question}`, { size, weight: 700 }, width, { kind: 'H3', leading: 1.22 }),
			words(pen, ask.help, { size: size * 0.86, weight: 400 }, width, { leading: 1.22 }),
			...(ask.unit === undefined ? [] : [numberBox(pen, ask.unit, size, width)]),
			...ask.ticks.map((text) => tickBox(pen, text, size * 0.92, width, 4))
		],
		gap
	);
}
