/** Where the parts of each drawing lie, px of its own box. Touch targets; every one is at least 46 by 46. */
import type { DrawingId, Shown } from '#lib/findings/index.ts';
import { columnsOf, MOMENT_HEIGHT, MOMENT_WIDTH, ROW, termRows } from './moment-layout.ts';

export interface Box {
	readonly x: number;
	readonly y: number;
	readonly w: number;
	readonly h: number;
}

export interface Layout {
	readonly width: number;
	readonly height: number;
	readonly parts: Readonly<Record<string, Box>>;
}

/** Widest drawing a phone of 390 px holds beside its page edges. */
export const WIDTH = 358;

function box(x: number, y: number, w: number, h: number): Box {
	return { x, y, w, h };
}

/** A box around a centre. */
function around(cx: number, cy: number, w: number, h: number): Box {
	return { x: cx - w / 2, y: cy - h / 2, w, h };
}

/** Cells of a board of things, from left to right and down. */
export function cellAt(index: number, columns: number, height: number): Box {
	const w = WIDTH / columns;
	return box((index % columns) * w, Math.floor(index / columns) * height, w, height);
}

function board(ids: readonly string[], columns: number, height: number): Record<string, Box> {
	return Object.fromEntries(
		ids.map((id, i) => {
			const cell = cellAt(i, columns, height);
			return [id, box(cell.x + 3, cell.y + 3, cell.w - 6, cell.h - 6)];
		})
	);
}

const numbered = (stem: string, count: number): string[] => Array.from({ length: count }, (_, i) => `${stem}-${i + 1}`);

function lanyardBoxes(stem: string, y: number): Record<string, Box> {
	return {
		[`${stem}-hook`]: box(2, y, 78, 88),
		[`${stem}-seam`]: box(82, y + 2, 58, 78),
		[`${stem}-line`]: box(142, y + 2, 70, 78),
		[`${stem}-pack`]: box(216, y, 98, 104),
		[`${stem}-tag`]: box(126, y + 96, 82, 72)
	};
}

const FIXED: Readonly<Record<Exclude<DrawingId, 'one-moment' | 'moments'>, Layout>> = {
	harness: {
		width: WIDTH,
		height: 470,
		parts: {
			'back-ring': around(179, 52, 84, 70),
			'shoulder-left': around(106, 136, 56, 84),
			'shoulder-right': around(252, 136, 56, 84),
			'chest-buckle': around(179, 206, 76, 58),
			label: around(308, 222, 78, 86),
			'stitch-left': around(100, 296, 76, 52),
			'stitch-right': around(258, 296, 76, 52),
			'leg-left': around(86, 412, 100, 62),
			'leg-right': around(272, 412, 100, 62)
		}
	},
	lanyards: { width: WIDTH, height: 376, parts: { ...lanyardBoxes('first', 14), ...lanyardBoxes('second', 202) } },
	connectors: { width: WIDTH, height: 360, parts: board(numbered('hook', 6), 3, 180) },
	swatches: { width: WIDTH, height: 390, parts: board([...numbered('strap', 4), 'seam-5', 'seam-6'], 2, 130) },
	'worn-back': {
		width: WIDTH,
		height: 470,
		parts: {
			'shoulder-left': box(92, 92, 70, 66),
			'shoulder-right': box(196, 92, 70, 66),
			'back-ring': box(142, 158, 74, 112),
			'lanyard-end': box(244, 186, 108, 150),
			'seat-strap': box(134, 272, 90, 92),
			'leg-left': box(80, 366, 92, 72),
			'leg-right': box(186, 366, 92, 72)
		}
	},
	'worn-front': {
		width: WIDTH,
		height: 470,
		parts: {
			'shoulder-left': box(88, 112, 66, 62),
			'shoulder-right': box(204, 112, 66, 62),
			'chest-strap': box(156, 98, 46, 164),
			'leg-buckle-left': box(84, 318, 58, 62),
			'leg-buckle-right': box(216, 318, 58, 62),
			'strap-end': box(164, 270, 54, 92),
			'leg-left': box(86, 380, 88, 58),
			'leg-right': box(184, 380, 88, 58)
		}
	},
	'roof-edge': {
		width: WIDTH,
		height: 470,
		parts: {
			anchorage: box(2, 130, 76, 80),
			people: box(82, 84, 66, 126),
			packs: box(148, 84, 60, 60),
			'edge-line': box(208, 176, 60, 56),
			'rescue-post': box(246, 362, 110, 96)
		}
	},
	'twin-legs': {
		width: WIDTH,
		height: 430,
		parts: {
			'leg-front': box(70, 58, 58, 56),
			'leg-back': box(70, 2, 58, 56),
			'leg-holding': box(248, 40, 60, 60),
			'leg-spare': box(186, 316, 166, 108),
			packs: box(6, 316, 166, 108)
		}
	},
	'hook-ups': { width: WIDTH, height: 498, parts: board(numbered('hook-up', 6), 2, 166) },
	restraint: {
		width: WIDTH,
		height: 380,
		parts: {
			'side-north': box(110, 66, 96, 62),
			'side-east': box(248, 140, 78, 96),
			'side-south': box(180, 282, 96, 64),
			hole: box(26, 140, 110, 72),
			people: box(128, 222, 108, 56),
			anchorage: box(140, 160, 92, 62)
		}
	},
	rescue: {
		width: WIDTH,
		height: 460,
		parts: {
			names: box(2, 266, 76, 60),
			kit: box(2, 340, 82, 92),
			helper: box(106, 324, 84, 124),
			reach: box(182, 150, 90, 190),
			way: box(192, 380, 78, 66)
		}
	},
	steel: {
		width: WIDTH,
		height: 430,
		parts: {
			'hold-first': box(20, 4, 146, 146),
			'hold-second': box(194, 4, 152, 146),
			'packs-first': box(48, 164, 74, 96),
			'packs-second': box(226, 164, 74, 96),
			'attachment-first': box(48, 264, 78, 90),
			'attachment-second': box(226, 264, 78, 90)
		}
	}
};

/** The hooks of twin legs, where they hang. */
function legBoxes(shown: Shown): Record<string, Box> {
	const look = (id: string): string => shown.parts.find((part) => part.id === id)?.look ?? '';
	const bothLow = look('leg-front') === 'low-eye' && look('leg-back') === 'low-eye';
	const front = look('leg-front') === 'low-eye' ? box(82, bothLow ? 214 : 222, 48, 48) : box(76, 58, 52, 50);
	const back = { hangs: box(4, 224, 56, 74), 'low-eye': bothLow ? box(82, 262, 48, 48) : box(82, 222, 48, 48) }[look('leg-back')] ?? box(76, 4, 52, 52);
	const holding = look('leg-holding') === 'low-eye' ? box(262, 222, 48, 48) : box(246, 44, 62, 60);
	return { 'leg-front': front, 'leg-back': back, 'leg-holding': holding };
}

function below(shown: Shown): boolean {
	return shown.parts.some((part) => part.look === 'on-edge');
}

/** @returns the layout of a picture. */
export function layoutOf(shown: Shown): Layout {
	switch (shown.drawing) {
		case 'one-moment':
			return {
				width: MOMENT_WIDTH,
				height: MOMENT_HEIGHT,
				parts: Object.fromEntries(termRows(shown).map(({ part, row }) => [part.id, box(224, row - ROW / 2 + 2, 132, ROW - 4)]))
			};
		case 'moments': {
			const { at, width } = columnsOf(shown);
			return {
				width: MOMENT_WIDTH,
				height: MOMENT_HEIGHT,
				parts: Object.fromEntries(shown.parts.map((part, i) => [part.id, box(at(i) - width * 0.79 + 1, 2, width - 2, MOMENT_HEIGHT - 4)]))
			};
		}
		case 'twin-legs':
			return { ...FIXED['twin-legs'], parts: { ...FIXED['twin-legs'].parts, ...legBoxes(shown) } };
		case 'restraint': {
			const near = shown.parts.some((part) => part.id === 'hole' && part.look !== 'reach-short');
			return { ...FIXED.restraint, parts: { ...FIXED.restraint.parts, hole: box(near ? 80 : 18, 142, 60, 66) } };
		}
		case 'roof-edge':
			return below(shown) ? { ...FIXED['roof-edge'], parts: { ...FIXED['roof-edge'].parts, packs: box(196, 176, 46, 56), 'edge-line': box(242, 190, 56, 56) } } : FIXED['roof-edge'];
		default:
			return FIXED[shown.drawing];
	}
}
