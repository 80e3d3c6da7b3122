/** The working of an answer: each step with its numbers and its value. */
import { FAINT, type Pen } from '../pen.ts';
import { strokePath } from '../drawing/lines.ts';
import type { Block } from './block.ts';
import { BASELINE } from './words.ts';

export interface PrintedStep {
	readonly name: string;
	/** The step in numbers, or where its number is read. */
	readonly working: string;
	readonly value: string;
	/** A sum stands under a rule. */
	readonly sum: boolean;
}

const LEADING = 1.28;
/** Shares of the width for the name and for the numbers. */
const NAME = 0.4;
const WORKING = 0.4;

/** @param size of the letters, points */
export function steps(pen: Pen, rows: readonly PrintedStep[], size: number, width: number, gap: number): Block {
	const set = rows.map((row) => {
		const weight = row.sum ? 700 : 400;
		const names = pen.wrap(row.name, { size, weight }, width * NAME - 8);
		const working = pen.wrap(row.working, { size, weight: 400 }, width * WORKING - 8);
		return { row, weight, names, working, height: Math.max(1, names.length, working.length) * size * LEADING + 2 } as const;
	});
	return {
		height: set.reduce((sum, one) => sum + one.height, 0),
		gap,
		draw(tag, x, y) {
			let at = y;
			tag.part('Table', (whole) => {
				for (const { row, weight, names, working, height } of set) {
					const line = (i: number): number => at + size * (BASELINE + 0.12 + i * LEADING);
					whole.part('TR', (tr) => {
						tr.content('TH', () => {
							strokePath(pen, `M${x} ${at}H${x + width}`, row.sum ? { width: 0.9 } : { width: 0.5, colour: FAINT });
							for (const [i, one] of names.entries()) pen.print(one, { size, weight }, { x, baseline: line(i) });
						});
						tr.content('TD', () => {
							for (const [i, one] of working.entries()) pen.print(one, { size, weight: 400 }, { x: x + width * NAME, baseline: line(i) });
						});
						tr.content('TD', () => pen.print(row.value, { size, weight: 700 }, { x: x + width, anchor: 'end', baseline: line(0) }));
					});
					at += height;
				}
			});
		}
	};
}
