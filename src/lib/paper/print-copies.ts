/** Whole copies of a sheet, one after the other, as the bytes of one PDF. */
import { setImmediate as breathe } from 'node:timers/promises';
import { drawStack, paginate, type Block } from './blocks/block.ts';
import { BASELINE, words } from './blocks/words.ts';
import { strokePath } from './drawing/lines.ts';
import { keyBlocks, type KeyProblem } from './key-blocks.ts';
import type { Frame } from './page.ts';
import { openPaper, type PaperDocument, type PaperOptions } from './paper-document.ts';
import type { Pen } from './pen.ts';
import { problemPages, type PrintedProblem } from './problem-page.ts';
import { artifact, section } from './tags.ts';

/** What stands on every page, in words. */
export interface PaperWords {
	/** What is written by hand on the first page: name, number, date. */
	readonly fill: readonly [name: string, number: string, date: string];
	/** How answers are written. */
	readonly how: string;
	/** At the foot: "K7QM-2XWD-03, page 1 of 4". */
	readonly page: (parts: { readonly code: string; readonly n: string; readonly of: string }) => string;
	readonly caution: string;
}

interface CopyHead {
	/** Code of the sheet with the number of the copy. */
	readonly code: string;
	/** Name of the set; over a key, what it is the key of. */
	readonly title: string;
}

/** A copy to be worked on: its problems come one by one, for each takes some work to draw. */
export interface SheetCopy extends CopyHead {
	readonly kind: 'sheet';
	readonly problems: Iterable<PrintedProblem>;
}

/** A copy of the key. */
export interface KeyCopy extends CopyHead {
	readonly kind: 'key';
	readonly problems: Iterable<KeyProblem>;
}

export type Copy = SheetCopy | KeyCopy;

type Pages = readonly (readonly Block[])[];

/** The lines for name, number and date, and how answers are written. */
function fillIn(pen: Pen, { fill, how }: PaperWords, width: number): Block {
	const style = { size: 10, weight: 700 } as const;
	const note = words(pen, how, { size: 9, weight: 400 }, width);
	const shares = [0.5, 0.27, 0.23];
	return {
		height: 22 + note.height + 8,
		gap: 0,
		keeps: true,
		draw(tag, x, y) {
			let left = x;
			for (const [i, text] of fill.entries()) {
				const room = width * (shares[i] ?? 0);
				const from = left;
				tag.content('P', () => {
					const end = from + pen.width(text, style) + 5;
					pen.print(text, style, { x: from, baseline: y + 13 });
					strokePath(pen, `M${end} ${y + 15}H${from + room - (i === fill.length - 1 ? 0 : 12)}`, { width: 0.9 });
				});
				left += room;
			}
			note.draw(tag, x, y + 22);
		}
	};
}

async function sheetPages({ pen, frame }: PaperDocument, text: PaperWords, copy: SheetCopy, stopped: () => boolean): Promise<Pages> {
	const pages: (readonly Block[])[] = [];
	for (const problem of copy.problems) {
		if (stopped()) return [];
		const first = pages.length === 0 ? [fillIn(pen, text, frame.right - frame.left)] : [];
		pages.push(...problemPages(pen, frame, problem, first));
		await breathe();
	}
	return pages;
}

async function keyPages({ pen, frame }: PaperDocument, copy: KeyCopy, stopped: () => boolean): Promise<Pages> {
	const blocks: Block[] = [];
	for (const problem of copy.problems) {
		if (stopped()) return [];
		blocks.push(...keyBlocks(pen, problem, frame.right - frame.left));
		await breathe();
	}
	return paginate(blocks, frame.bottom - frame.top);
}

function drawPage({ pen, frame }: PaperDocument, text: PaperWords, { code, title }: CopyHead, page: readonly Block[], n: number, of: number): void {
	pen.doc.addPage();
	section(pen, (tag) => {
		tag.content('H1', () => drawHead(pen, frame, code, title));
		drawStack(page, tag, frame.left, frame.top);
		tag.content('P', () => drawFoot(pen, frame, text.caution, text.page({ code, n: String(n), of: String(of) })));
	});
	artifact(pen, () => {
		strokePath(pen, `M${frame.left} ${frame.head + 6}H${frame.right}`, { width: 1.4 });
		strokePath(pen, `M${frame.left} ${frame.bottom + 8}H${frame.right}`, { width: 0.9 });
	});
}

function drawHead(pen: Pen, frame: Frame, code: string, title: string): void {
	const strong = { size: 12, weight: 800 } as const;
	const room = frame.right - frame.left - pen.width(code, strong) - 16;
	const plain = { size: 9, weight: 600 } as const;
	const lines = pen.wrap(title, plain, room);
	const shown = lines.length > 1 ? `${lines[0] ?? ''} …` : (lines[0] ?? '');
	pen.print(shown, plain, { x: frame.left, baseline: frame.head });
	pen.print(code, strong, { x: frame.right, baseline: frame.head, anchor: 'end' });
}

function drawFoot(pen: Pen, frame: Frame, caution: string, page: string): void {
	const small = { size: 7.6, weight: 400 } as const;
	const strong = { size: 8.6, weight: 700 } as const;
	const right = pen.width(page, strong);
	const top = frame.bottom + 11;
	for (const [i, line] of pen.wrap(caution, small, frame.right - frame.left - right - 20).entries()) {
		pen.print(line, small, { x: frame.left, baseline: top + small.size * BASELINE + i * small.size * 1.25 });
	}
	pen.print(page, strong, { x: frame.right, baseline: top + strong.size * BASELINE, anchor: 'end' });
}

async function write(paper: PaperDocument, text: PaperWords, copies: Iterable<Copy>, stopped: () => boolean): Promise<void> {
	for (const copy of copies) {
		if (stopped()) return;
		const pages = copy.kind === 'sheet' ? await sheetPages(paper, text, copy, stopped) : await keyPages(paper, copy, stopped);
		for (const [i, page] of pages.entries()) {
			if (stopped()) return;
			drawPage(paper, text, copy, page, i + 1, pages.length);
			await breathe();
		}
	}
}

/** Done when nothing is printed any more. @reason a long sheet takes hundreds of MB and most of the machine for some seconds: no two do so at once */
let idle: Promise<void> = Promise.resolve();

/**
 * Prints copies, each beginning on a page of its own. What else the server has to do goes on between the pages; one
 * PDF is made after the other.
 * @returns the bytes of a PDF as they come; they stop where reading stops, and fail where a copy does
 */
export function printCopies(options: PaperOptions, text: PaperWords, copies: Iterable<Copy>): ReadableStream<Uint8Array> {
	let stopped = false;
	const print = async (controller: ReadableStreamDefaultController<Uint8Array>): Promise<void> => {
		if (stopped) return;
		const paper = openPaper(options);
		const { doc } = paper.pen;
		doc.on('data', (bytes: Uint8Array) => {
			if (!stopped) controller.enqueue(bytes);
		});
		doc.on('end', () => {
			if (!stopped) controller.close();
		});
		await write(paper, text, copies, () => stopped);
		doc.end();
	};
	return new ReadableStream<Uint8Array>({
		start(controller) {
			idle = idle
				.then(() => print(controller))
				.catch((error: unknown) => {
					if (!stopped) controller.error(error);
					stopped = true;
				});
		},
		cancel() {
			stopped = true;
		}
	});
}
