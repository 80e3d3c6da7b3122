/** A piece of a page: how tall it is, and how it is drawn. Pages are filled with them from the top. */
import type { Tag } from '../tags.ts';

export interface Block {
	/** Points. */
	readonly height: number;
	/** Room over it, unless it is the first on its page. */
	readonly gap: number;
	/** Not the last on a page: what it belongs to comes next. */
	readonly keeps?: boolean;
	/** @param y upper edge */
	readonly draw: (tag: Tag, x: number, y: number) => void;
}

/** Height of blocks one under the other. */
export function stackHeight(blocks: readonly Block[]): number {
	return blocks.reduce((sum, block, i) => sum + block.height + (i === 0 ? 0 : block.gap), 0);
}

/** Draws blocks one under the other. */
export function drawStack(blocks: readonly Block[], tag: Tag, x: number, y: number): void {
	let at = y;
	for (const [i, block] of blocks.entries()) {
		if (i > 0) at += block.gap;
		block.draw(tag, x, at);
		at += block.height;
	}
}

/** Blocks one under the other as one that no page break parts. */
export function together(blocks: readonly Block[], gap: number): Block {
	return { height: stackHeight(blocks), gap, draw: (tag, x, y) => drawStack(blocks, tag, x, y) };
}

/** Columns side by side as one block. */
export function beside(columns: readonly { readonly x: number; readonly blocks: readonly Block[] }[], gap: number): Block {
	return {
		height: Math.max(0, ...columns.map(({ blocks }) => stackHeight(blocks))),
		gap,
		draw(tag, x, y) {
			for (const column of columns) drawStack(column.blocks, tag, x + column.x, y);
		}
	};
}

/** Blocks dealt out to pages of a height. One taller than a page has a page of its own. */
export function paginate(blocks: readonly Block[], height: number): readonly (readonly Block[])[] {
	const pages: Block[][] = [];
	let page: Block[] = [];
	for (let i = 0; i < blocks.length; ) {
		// A heading goes with what stands under it.
		let end = i;
		while (end + 1 < blocks.length && blocks[end]?.keeps === true) end += 1;
		const group = blocks.slice(i, end + 1);
		if (page.length > 0 && stackHeight([...page, ...group]) > height) {
			pages.push(page);
			page = [];
		}
		page.push(...group);
		i = end + 1;
	}
	if (page.length > 0) pages.push(page);
	return pages;
}
