/** A certificate on one page: the words come in from outside, the tape at its side is an ornament and states no number. */
import { drawStack, stackHeight, together, type Block } from './blocks/block.ts';
import { BASELINE, words } from './blocks/words.ts';
import { ornament } from './drawing/ornament.ts';
import { strokePath } from './drawing/lines.ts';
import { openPaper, type PaperDocument, type PaperOptions } from './paper-document.ts';
import { FAINT, INK, type Pen } from './pen.ts';
import { artifact, section, type Tag } from './tags.ts';

/** A row of the certificate: in bold, or small where it is long and stands for checking only. */
export interface CertificateRow {
	readonly name: string;
	readonly value: string;
	readonly small?: boolean;
}

/** All that stands on a certificate, in words. */
export interface PrintedCertificate {
	readonly heading: string;
	readonly name: string;
	/** Under the name: number, and an earlier name. */
	readonly known: readonly string[];
	/** What the person did. */
	readonly said: string;
	readonly rows: readonly CertificateRow[];
	/** Large, across the sheet, where it is not worth what it seems. */
	readonly across: string | null;
	/** Over and under the line for the signature. */
	readonly signature: { readonly name: string; readonly lines: readonly string[] };
	readonly qr: { readonly size: number; readonly path: string; readonly label: string };
	/** Beside the QR code: what to do with it, and the address. */
	readonly verify: readonly string[];
	/** In groups. */
	readonly code: string;
	/** Place in the chain, hashes, what is claimed, cautions. */
	readonly foot: readonly string[];
}

/** Distance of the frame from the edge of the paper. @reason printers leave about 5 mm blank */
const EDGE = 22;
/** Between frame and words. */
const PAD = 20;
/** Width of the tape, and what is free beside it. */
const TAPE = 26;
const BESIDE = 22;
const QR = 96;
/** Its quiet zone, in modules, which may reach over the edge of the words. */
const QUIET = 4;
const BETWEEN = 14;
/** Share of the width that names of rows take. */
const NAMES = 0.24;
/** How much smaller words are tried, until all stand on the page. */
const STEPS = [1.3, 1.24, 1.18, 1.12, 1.06, 1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5];

function nameSize(pen: Pen, name: string, width: number): number {
	const size = 30;
	return Math.max(15, Math.min(size, (size * width) / Math.max(1, pen.width(name, { size, weight: 800 }))));
}

function rowBlock(pen: Pen, { name, value, small = false }: CertificateRow, size: number, width: number): Block {
	const left = { size, weight: 400 } as const;
	const right = { size: small ? size * 0.84 : size, weight: small ? 400 : 700 } as const;
	const at = width * NAMES;
	const names = pen.wrap(name, left, at - 8);
	const values = pen.wrap(value, right, width - at);
	const [nameLine, valueLine] = [left.size * 1.2, right.size * 1.22];
	const height = Math.max(names.length * nameLine, values.length * valueLine) + size * 0.56;
	return {
		height,
		gap: 0,
		draw(tag, x, y) {
			const top = y + size * 0.3;
			tag.part('TR', (row) => {
				row.content('TH', () => {
					strokePath(pen, `M${x} ${y}H${x + width}`, { width: 0.5, colour: FAINT });
					for (const [i, one] of names.entries()) pen.print(one, left, { x, baseline: top + left.size * BASELINE + i * nameLine });
				});
				row.content('TD', () => {
					for (const [i, one] of values.entries()) pen.print(one, right, { x: x + at, baseline: top + left.size * BASELINE + i * valueLine });
				});
			});
		}
	};
}

function rowsBlock(pen: Pen, rows: readonly CertificateRow[], size: number, width: number): Block {
	const blocks = rows.map((row) => rowBlock(pen, row, size, width));
	return {
		height: stackHeight(blocks),
		gap: 10,
		draw(tag, x, y) {
			tag.part('Table', (table) => drawStack(blocks, table, x, y));
		}
	};
}

function headBlocks(pen: Pen, sheet: PrintedCertificate, t: number, width: number): readonly Block[] {
	const size = nameSize(pen, sheet.name, width) * t;
	return [
		words(pen, sheet.heading, { size: 15 * t, weight: 600 }, width, { kind: 'H1' }),
		words(pen, sheet.name, { size, weight: 800 }, width, { kind: 'H2', gap: 5 * t, leading: 1.14 }),
		...sheet.known.map((line) => words(pen, line, { size: 9.5 * t, weight: 600 }, width, { gap: 1 })),
		words(pen, sheet.said, { size: 11 * t, weight: 400 }, width, { gap: 4 * t })
	];
}

/** A hash stands on one line. */
function sizeOfLine(pen: Pen, line: string, size: number, width: number): number {
	const longest = Math.max(1, ...line.split(' ').map((word) => pen.width(word, { size, weight: 400 })));
	return Math.min(size, (size * width) / longest) * 0.999;
}

function signatureBlock(pen: Pen, { name, lines }: PrintedCertificate['signature'], t: number, width: number): Block {
	const room = 20 * t;
	const text = together(
		[words(pen, name, { size: 13 * t, weight: 700 }, width), ...lines.map((line) => words(pen, line, { size: sizeOfLine(pen, line, 7.6 * t, width), weight: 400 }, width, { gap: 1 }))],
		0
	);
	return {
		height: room + text.height + 4,
		gap: 0,
		draw(tag, x, y) {
			tag.content('P', () => strokePath(pen, `M${x} ${y + room}H${x + width}`, { width: 0.9 }));
			text.draw(tag, x, y + room + 4);
		}
	};
}

function qrBlock(pen: Pen, { qr, code, verify }: PrintedCertificate, t: number, width: number): Block {
	const style = { size: 7.6 * t, weight: 400 } as const;
	const text = together(
		[...verify.map((line) => words(pen, line, style, width, { gap: 1 })), words(pen, code, { size: 8.6 * t, weight: 700 }, width, { gap: 2 })],
		0
	);
	return {
		height: QR + 3 + text.height,
		gap: 0,
		draw(tag, x, y) {
			tag.content(
				'Figure',
				() => {
					pen.doc.save();
					pen.doc.translate(x - QUIET * (QR / qr.size), y).scale(QR / qr.size);
					pen.doc.path(qr.path).fill(INK);
					pen.doc.restore();
				},
				qr.label
			);
			text.draw(tag, x, y + QR + 3);
		}
	};
}

/** What stands at the bottom: signature and code side by side, then the small lines. */
function footBlock(pen: Pen, sheet: PrintedCertificate, t: number, width: number): Block {
	const code = Math.max(QR, 138 * t);
	const signature = signatureBlock(pen, sheet.signature, t, width - code - BETWEEN);
	const qr = qrBlock(pen, sheet, t, code);
	const small = together(sheet.foot.map((line) => words(pen, line, { size: 6.9 * t, weight: 400 }, width, { gap: 1.2, leading: 1.24 })), 0);
	const row = Math.max(signature.height, qr.height);
	return {
		height: row + 7 + small.height,
		gap: 12,
		draw(tag, x, y) {
			signature.draw(tag, x, y + row - signature.height);
			qr.draw(tag, x + width - code, y);
			small.draw(tag, x, y + row + 7);
		}
	};
}

/** The largest that stands on one page. */
function fitted(pen: Pen, sheet: PrintedCertificate, width: number, height: number): { readonly top: readonly Block[]; readonly foot: Block } {
	const tried = STEPS.map((t) => () => {
		const top = [...headBlocks(pen, sheet, t, width), rowsBlock(pen, sheet.rows, 9.4 * t, width)];
		return { top, foot: footBlock(pen, sheet, t, width) };
	});
	let last = tried[0]?.() ?? { top: [], foot: footBlock(pen, sheet, 1, width) };
	for (const make of tried) {
		last = make();
		if (stackHeight([...last.top, last.foot]) <= height) break;
	}
	return last;
}

function drawAcross(pen: Pen, text: string, { frame }: PaperDocument, tag: Tag): void {
	const [x, y] = [frame.width / 2, frame.height / 2];
	const weight = 800;
	const size = Math.min(110, (110 * frame.width * 0.86) / pen.width(text, { size: 110, weight }));
	tag.content('P', () => {
		pen.doc.save();
		pen.doc.translate(x, y).rotate(-32);
		pen.doc.opacity(0.2);
		pen.print(text, { size, weight }, { x: 0, baseline: size * 0.36, anchor: 'middle' });
		pen.doc.restore();
	});
}

function draw(paper: PaperDocument, sheet: PrintedCertificate): void {
	const { pen, frame } = paper;
	pen.doc.addPage();
	const box = { x: EDGE, y: EDGE, width: frame.width - 2 * EDGE, height: frame.height - 2 * EDGE };
	const left = box.x + PAD + TAPE + BESIDE;
	const [top, bottom] = [box.y + PAD, box.y + box.height - PAD + 4];
	const width = box.x + box.width - PAD - left;
	const { top: blocks, foot } = fitted(pen, sheet, width, bottom - top);
	artifact(pen, () => {
		pen.doc.lineWidth(1.4).undash().strokeColor(INK).rect(box.x, box.y, box.width, box.height).stroke();
		ornament(pen, box.x + PAD - 2, top + 2, TAPE, bottom - top - 6);
	});
	section(pen, (tag) => {
		if (sheet.across !== null) drawAcross(pen, sheet.across, paper, tag);
		drawStack(blocks, tag, left, top);
		foot.draw(tag, left, bottom - foot.height);
	});
}

/** @returns the bytes of a PDF of one page: the same whenever it is made of the same. */
export async function printCertificate(options: PaperOptions, sheet: PrintedCertificate): Promise<Uint8Array> {
	const paper = openPaper(options);
	const { doc } = paper.pen;
	const parts: Uint8Array[] = [];
	const ended = new Promise<void>((done, failed) => {
		doc.on('data', (bytes: Uint8Array) => parts.push(bytes));
		doc.on('end', done);
		doc.on('error', failed);
	});
	draw(paper, sheet);
	doc.end();
	await ended;
	return Buffer.concat(parts);
}
