/** What screen readers are told of a page: parts with their kinds; what says nothing is left out. */
import type { Pen } from './pen.ts';

/** Kinds of parts, as PDF calls them. */
export type TagKind = 'Sect' | 'H1' | 'H2' | 'H3' | 'P' | 'Figure' | 'Table' | 'TR' | 'TH' | 'TD' | 'L' | 'LI' | 'LBody';

/** A part of the document that other parts may be put into. */
export interface Tag {
	/** A part within, and what is drawn as its content. */
	readonly content: (kind: TagKind, draw: () => void, alt?: string) => void;
	/** A part within that holds further parts. */
	readonly part: (kind: TagKind, fill: (tag: Tag) => void) => void;
}

/** Adds a part to the document. */
export function section(pen: Pen, fill: (tag: Tag) => void): void {
	const { doc } = pen;
	const root = doc.struct('Sect');
	doc.addStructure(root);
	fill(tagOf(pen, root));
	root.end();
}

function tagOf(pen: Pen, element: PDFKit.PDFStructureElement): Tag {
	const { doc } = pen;
	return {
		content(kind, draw, alt) {
			element.add(doc.struct(kind, alt === undefined ? {} : { alt }, draw));
		},
		part(kind, fill) {
			const inner = doc.struct(kind);
			element.add(inner);
			fill(tagOf(pen, inner));
			inner.end();
		}
	};
}

/** Draws what carries no meaning: rules, heads and feet that come on every page. */
export function artifact(pen: Pen, draw: () => void): void {
	pen.doc.markContent('Artifact', { type: 'Layout' });
	draw();
	pen.doc.endMarkedContent();
}
