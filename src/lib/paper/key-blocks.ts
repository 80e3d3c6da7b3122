/** A problem in the key: right answers, workings, verdict with its clauses. */
import { beside, together, type Block } from './blocks/block.ts';
import { steps, type PrintedStep } from './blocks/steps.ts';
import { BASELINE, words } from './blocks/words.ts';
import { strokePath } from './drawing/lines.ts';
import type { Pen } from './pen.ts';

export type KeyStep = PrintedStep;

/** The right answer to one question. */
export interface KeyAsk {
	readonly ordinal: string;
	/** What is asked for, in a word or two. */
	readonly name: string;
	/** With its unit; or what is right in place of a number. */
	readonly value: string;
	/** The formula with its numbers; empty for a decision. */
	readonly formula: string;
	readonly steps: readonly KeyStep[];
}

/** One check of the verdict. */
export interface KeyCheck {
	/** Name and outcome. */
	readonly name: string;
	readonly text: string;
	/** Clause, source and mark; empty where geometry or a label demands it. */
	readonly source: string;
}

export interface KeyProblem {
	readonly over: string;
	readonly title: string;
	readonly asks: readonly KeyAsk[];
	/** The verdict in words. */
	readonly verdict: readonly string[];
	readonly checks: readonly KeyCheck[];
}

const TEXT = 9.2;
const INDENT = 16;
const BETWEEN = 18;

function askBlocks(pen: Pen, ask: KeyAsk, width: number): readonly Block[] {
	const name = { size: TEXT * 1.1, weight: 700 } as const;
	const value = { size: TEXT * 1.35, weight: 700 } as const;
	const values = pen.wrap(ask.value, value, width * 0.58);
	const names = pen.wrap(`${ask.ordinal}  ${ask.name}`, name, width * 0.4);
	const line = value.size * 1.22;
	const heading: Block = {
		height: Math.max(names.length, values.length) * line,
		gap: 9,
		keeps: ask.steps.length > 0 || ask.formula !== '',
		draw(tag, x, y) {
			tag.content('H3', () => {
				for (const [i, one] of names.entries()) pen.print(one, name, { x, baseline: y + i * line + value.size * BASELINE });
			});
			tag.content('P', () => {
				for (const [i, one] of values.entries()) pen.print(one, value, { x: x + width, anchor: 'end', baseline: y + i * line + value.size * BASELINE });
			});
		}
	};
	return [
		heading,
		...(ask.formula === '' ? [] : [shifted(words(pen, ask.formula, { size: TEXT, weight: 600 }, width - INDENT, { gap: 1, keeps: ask.steps.length > 0 }))]),
		...(ask.steps.length === 0 ? [] : [shifted(steps(pen, ask.steps, TEXT, width - INDENT, 3))])
	];
}

function shifted(block: Block): Block {
	return { ...block, draw: (tag, x, y) => block.draw(tag, x + INDENT, y) };
}

function checkBlock(pen: Pen, { name, text, source }: KeyCheck, width: number): Block {
	return together(
		[
			words(pen, name, { size: TEXT * 0.95, weight: 700 }, width),
			words(pen, text, { size: TEXT * 0.95, weight: 400 }, width),
			...(source === '' ? [] : [words(pen, source, { size: TEXT * 0.85, weight: 400 }, width)])
		],
		4
	);
}

function title(pen: Pen, { over, title: text }: KeyProblem, width: number): Block {
	const block = words(pen, `${over}: ${text}`, { size: 13, weight: 800 }, width, { kind: 'H2', leading: 1.2 });
	return {
		height: block.height + 6,
		gap: 18,
		keeps: true,
		draw(tag, x, y) {
			block.draw(tag, x, y);
			tag.content('P', () => strokePath(pen, `M${x} ${y + block.height + 2}H${x + width}`, { width: 1.2 }));
		}
	};
}

/** @returns the pieces of a problem in the key, which pages are filled with. */
export function keyBlocks(pen: Pen, problem: KeyProblem, width: number): readonly Block[] {
	return [
		title(pen, problem, width),
		...problem.asks.flatMap((ask) => askBlocks(pen, ask, width)),
		...problem.verdict.map((text, i) => words(pen, text, { size: TEXT * 1.05, weight: i === 0 ? 700 : 400 }, width, { gap: i === 0 ? 10 : 1, keeps: i === 0 })),
		...checkRows(pen, problem.checks, width - INDENT).map(shifted)
	];
}

/** Checks in two columns, read row by row. */
function checkRows(pen: Pen, checks: readonly KeyCheck[], width: number): readonly Block[] {
	const column = (width - BETWEEN) / 2;
	const rows: Block[] = [];
	for (let i = 0; i < checks.length; i += 2) {
		rows.push(beside(checks.slice(i, i + 2).map((check, nth) => ({ x: nth * (column + BETWEEN), blocks: [checkBlock(pen, check, column)] })), 5));
	}
	return rows;
}
