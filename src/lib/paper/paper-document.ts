/** A tagged PDF that comes out the same, byte for byte, whenever it is made from the same things. */
import PDFDocument from 'pdfkit';
import { Pen } from './pen.ts';
import { frameOf, type Frame, type PageSize } from './page.ts';

export interface PaperOptions {
	readonly size: PageSize;
	/** Language of its words, as a primary tag: `en`. */
	readonly language: string;
	readonly title: string;
	/** The time that stands in the file: when the sheet was made, not when it is printed. */
	readonly at: Date;
	/** Off for tests that read the pages. */
	readonly compress?: boolean;
}

/** An open document: pages are added, then it is ended. Its bytes come out of `pen.doc` as a stream. */
export interface PaperDocument {
	readonly pen: Pen;
	readonly frame: Frame;
}

export function openPaper({ size, language, title, at, compress = true }: PaperOptions): PaperDocument {
	const frame = frameOf(size);
	const doc = new PDFDocument({
		size: [frame.width, frame.height],
		margin: 0,
		autoFirstPage: false,
		pdfVersion: '1.7',
		tagged: true,
		lang: language,
		displayTitle: true,
		compress,
		info: { Title: title, Creator: 'Underfoot', Producer: 'Underfoot', CreationDate: at, ModDate: at }
	});
	return { pen: new Pen(doc), frame };
}
