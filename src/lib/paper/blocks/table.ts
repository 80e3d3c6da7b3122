/** Tables of names and values: label plates in a double frame, plain lists between rules. */
import { FAINT, INK, type Pen } from '../pen.ts';
import { strokePath } from '../drawing/lines.ts';
import type { Block } from './block.ts';
import { BASELINE } from './words.ts';

export interface TableRow {
	readonly name: string;
	readonly value: string;
}

export interface TableOptions {
	readonly title: string;
	readonly rows: readonly TableRow[];
	/** Sentences under the rows. */
	readonly notes?: readonly string[];
	/** A label plate has a double frame; a list has a rule over it. */
	readonly framed: boolean;
}

interface SetRow {
	readonly names: readonly string[];
	readonly values: readonly string[];
	readonly height: number;
}

const LEADING = 1.25;
/** Least share of the width for values, so that a long name leaves them room. */
const VALUES = 0.3;

function setRow(pen: Pen, { name, value }: TableRow, size: number, width: number): SetRow {
	const bold = { size, weight: 700 } as const;
	const most = Math.max(width * VALUES, Math.min(width * 0.55, pen.width(value, bold)));
	const values = pen.wrap(value, bold, most);
	const taken = Math.max(0, ...values.map((one) => pen.width(one, bold)));
	const names = pen.wrap(name, { size, weight: 400 }, width - taken - 8);
	return { names, values, height: Math.max(names.length, values.length) * size * LEADING + size * 0.35 };
}

/** @param size of the letters, points */
export function table(pen: Pen, { title, rows, notes = [], framed }: TableOptions, size: number, width: number, gap: number): Block {
	const inner = framed ? width - 14 : width;
	const pad = framed ? 7 : 4;
	const heading = { size: size * 1.08, weight: 700 } as const;
	const small = { size: size * 0.92, weight: 400 } as const;
	const titles = pen.wrap(title, heading, inner);
	const set = rows.map((row) => setRow(pen, row, size, inner));
	const said = notes.map((note) => pen.wrap(note, small, inner));
	const titleHeight = titles.length * heading.size * LEADING + 3;
	const rowsHeight = set.reduce((sum, row) => sum + row.height, 0);
	const notesHeight = said.reduce((sum, lines) => sum + lines.length * small.size * LEADING + 2, 0);
	const height = pad + titleHeight + rowsHeight + notesHeight + (framed ? pad - 3 : 0);

	return {
		height,
		gap,
		draw(tag, x, y) {
			const left = x + (framed ? 7 : 0);
			let at = y + pad;
			tag.part('Sect', (sect) => {
				sect.content('H3', () => {
					frame(pen, framed, x, y, width, height);
					for (const one of titles) {
						pen.print(one, heading, { x: left, baseline: at + heading.size * BASELINE });
						at += heading.size * LEADING;
					}
					at += 3;
				});
				sect.part('Table', (whole) => {
					for (const row of set) {
						whole.part('TR', (tr) => {
							tr.content('TH', () => {
								strokePath(pen, `M${left} ${at}H${left + inner}`, { width: 0.5, colour: FAINT });
								for (const [i, one] of row.names.entries()) pen.print(one, { size, weight: 400 }, { x: left, baseline: at + size * (BASELINE + 0.2 + i * LEADING) });
							});
							tr.content('TD', () => {
								for (const [i, one] of row.values.entries()) pen.print(one, { size, weight: 700 }, { x: left + inner, anchor: 'end', baseline: at + size * (BASELINE + 0.2 + i * LEADING) });
							});
						});
						at += row.height;
					}
				});
				for (const lines of said) {
					at += 2;
					sect.content('P', () => {
						for (const one of lines) {
							pen.print(one, small, { x: left, baseline: at + small.size * BASELINE });
							at += small.size * LEADING;
						}
					});
				}
			});
		}
	};
}

function frame(pen: Pen, framed: boolean, x: number, y: number, width: number, height: number): void {
	if (!framed) {
		strokePath(pen, `M${x} ${y}H${x + width}`, { width: 0.9 });
		return;
	}
	pen.doc.lineWidth(0.9).undash().strokeColor(INK).rect(x, y, width, height).stroke();
	pen.doc.lineWidth(0.5).rect(x + 2.4, y + 2.4, width - 4.8, height - 4.8).stroke();
}
