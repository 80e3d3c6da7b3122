/** Names of levels and obstacles, where they have room. Pixels. */
import { toY, type View } from '../drawing/view.ts';
import type { SiteLevel, SiteObstacle } from '../model.ts';
import { type Box, overlaps } from './box.ts';
import type { DimensionSizes } from './dimension.ts';
import { block, blockBox, type PlacedText, type Placer, setBlock, type TextBlock } from './placer.ts';
import { wrapText } from './text-width.ts';

export interface WordSizes extends DimensionSizes {
	/** A phone: names are broken, margins small. */
	readonly tight: boolean;
}

export interface PlacedLevel {
	readonly id: string;
	/** The point of the datum triangle; null where only the name found room. */
	readonly tip: { readonly x: number; readonly y: number } | null;
	readonly texts: readonly PlacedText[];
}

const TRIANGLE = 9;

function words(name: string, size: number, width: number): TextBlock {
	return block(wrapText(name, size, width).map((text) => ({ text, size, weight: 600, tone: 'name' })));
}

/** The name of each obstacle, over it where there is room. */
export function placeNames(
	obstacles: readonly SiteObstacle[],
	boxOf: (o: SiteObstacle) => Box,
	placer: Placer,
	sizes: WordSizes,
	unplaced: string[]
): PlacedText[] {
	const names: PlacedText[] = [];
	for (const o of obstacles) {
		const box = boxOf(o);
		const mid = (Math.max(box.left, placer.sheet.left) + Math.min(box.right, placer.sheet.right)) / 2;
		const found = placer.secondTry(() => firstFree(o.name, box, mid, placer, sizes));
		if (found === null) {
			unplaced.push(`name:${o.id}`);
		} else {
			placer.add(found);
			names.push(...found);
		}
	}
	return names;
}

function firstFree(name: string, box: Box, mid: number, placer: Placer, sizes: WordSizes): PlacedText[] | null {
	for (const width of [200, 120, 80]) {
		const b = words(name, sizes.name, width * (sizes.name / 14));
		for (const up of [7, 16, 28, 42]) {
			for (const dx of [0, 10, -10, 22, -22, 36, -36, 54, -54]) {
				const top = box.top - b.height - up;
				if (placer.textFree(blockBox(b, mid + dx, top, 'middle'), 4)) return setBlock(b, mid + dx, top, 'middle');
			}
		}
		for (const [x, anchor] of [
			[box.right + 8, 'start'],
			[box.left - 8, 'end']
		] as const) {
			for (const top of [box.top + 4, (box.top + box.bottom - b.height) / 2, box.bottom - b.height - 14]) {
				if (placer.textFree(blockBox(b, x, top, anchor), 4)) return setBlock(b, x, top, anchor);
			}
		}
	}
	return null;
}

/**
 * A datum triangle with its name on each level. The first place with room from the left; a level other than
 * the surface also gets a chain line (pushed on `chains`).
 */
export function placeLevels(
	levels: readonly SiteLevel[],
	view: View,
	placer: Placer,
	sizes: WordSizes,
	unplaced: string[],
	surfaceTo: number
): PlacedLevel[] {
	const placed: PlacedLevel[] = [];
	for (const level of levels) {
		const y = toY(view, level.z);
		const one = placer.secondTry(() => withTriangle(level, y, placer, sizes, surfaceTo) ?? nameOnly(level, y, placer, sizes));
		if (one === null) unplaced.push(`level:${level.name}`);
		else placed.push(one);
	}
	return placed;
}

function withTriangle(level: SiteLevel, y: number, placer: Placer, sizes: WordSizes, surfaceTo: number): PlacedLevel | null {
	const b = words(level.name, sizes.name, 130);
	const { left, right } = placer.sheet;
	const columns: number[] = [];
	for (let x = left + b.width / 2 + 2; x < right - b.width / 2; x += 4) columns.push(x);
	// Rather on the structure at the left; else the far right, away from the dimension lines.
	const first = columns.filter((x) => x < surfaceTo);
	const rest = columns.filter((x) => x >= surfaceTo).reverse();
	for (const x of [...first, ...rest]) {
		const triangle = { left: x - 7, right: x + 7, top: y - TRIANGLE - 1, bottom: y - 2.5 };
		const top = y - TRIANGLE - 5 - b.height;
		const free =
			placer.textFree(blockBox(b, x, top, 'middle'), 4) &&
			!placer.solids.some((s) => overlaps(triangle, s, 2)) &&
			!placer.columns.some((s) => overlaps(triangle, s, 3)) &&
			!placer.texts.some((t) => overlaps(triangle, t.box, 3));
		if (!free) continue;
		const texts = setBlock(b, x, top, 'middle');
		placer.add(texts);
		placer.solids.push(triangle);
		return { id: level.name, tip: { x, y }, texts };
	}
	return null;
}

function nameOnly(level: SiteLevel, y: number, placer: Placer, sizes: WordSizes): PlacedLevel | null {
	const { left, right } = placer.sheet;
	for (const width of [130, 84, 56]) {
		const b = words(level.name, sizes.name, width);
		for (const top of [y - b.height - 5, y + 6, y + 18]) {
			for (let x = right - b.width - 2; x > left; x -= 4) {
				if (!placer.textFree(blockBox(b, x, top, 'start'), 4)) continue;
				const texts = setBlock(b, x, top, 'start');
				placer.add(texts);
				return { id: level.name, tip: null, texts };
			}
		}
	}
	return null;
}
