/** Where the parts of each drawing lie, px of its own box. Touch targets; every one is at least 46 by 46. */
import type { DrawingId, Shown } from '#lib/findings/index.ts';

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
			'shoulder-left': around(136, 136, 56, 58),
			'shoulder-right': around(222, 136, 56, 58),
			'back-ring': around(179, 198, 70, 62),
			'lanyard-end': box(262, 196, 92, 112),
			'seat-strap': around(179, 318, 112, 46),
			'leg-left': around(122, 384, 92, 62),
			'leg-right': around(236, 384, 92, 62)
		}
	},
	'worn-front': {
		width: WIDTH,
		height: 470,
		parts: {
			'shoulder-left': around(132, 132, 56, 50),
			'shoulder-right': around(226, 132, 56, 50),
			'chest-strap': around(179, 196, 84, 130),
			'strap-end': around(240, 282, 50, 64),
			'leg-buckle-left': around(112, 334, 60, 48),
			'leg-buckle-right': around(246, 334, 60, 48),
			'leg-left': around(128, 398, 90, 58),
			'leg-right': around(230, 398, 90, 58)
		}
	},
	'roof-edge': {
		width: WIDTH,
		height: 400,
		parts: {
			anchorage: box(24, 196, 64, 78),
			people: box(96, 96, 70, 176),
			packs: box(168, 118, 50, 78),
			'edge-line': box(214, 226, 70, 64),
			'rescue-post': box(286, 250, 70, 140)
		}
	},
	'twin-legs': {
		width: WIDTH,
		height: 430,
		parts: {
			'leg-front': box(8, 40, 60, 60),
			'leg-back': box(84, 40, 60, 60),
			'leg-holding': box(188, 40, 60, 60),
			'leg-spare': box(280, 40, 60, 60),
			packs: box(100, 200, 60, 60)
		}
	},
	'hook-ups': { width: WIDTH, height: 498, parts: board(numbered('hook-up', 6), 2, 166) },
	restraint: {
		width: WIDTH,
		height: 400,
		parts: {
			'side-north': box(120, 4, 110, 50),
			'side-east': box(300, 120, 54, 110),
			'side-south': box(120, 320, 110, 50),
			hole: box(30, 60, 80, 80),
			people: box(150, 100, 70, 60),
			anchorage: box(150, 170, 60, 60)
		}
	},
	rescue: {
		width: WIDTH,
		height: 420,
		parts: {
			names: box(4, 250, 80, 80),
			kit: box(90, 250, 60, 80),
			helper: box(150, 250, 60, 130),
			reach: box(230, 60, 110, 90),
			way: box(210, 330, 140, 70)
		}
	},
	steel: {
		width: WIDTH,
		height: 420,
		parts: {
			'hold-first': box(40, 20, 80, 70),
			'hold-second': box(220, 20, 80, 70),
			'back-first': box(40, 96, 80, 60),
			'back-second': box(220, 96, 80, 60),
			'packs-first': box(60, 170, 60, 70),
			'packs-second': box(240, 170, 60, 70)
		}
	}
};

/** @returns the layout of a picture. */
export function layoutOf(shown: Shown): Layout {
	switch (shown.drawing) {
		case 'one-moment':
			return { width: WIDTH, height: 470, parts: {} };
		case 'moments':
			return { width: WIDTH, height: 470, parts: {} };
		default:
			return FIXED[shown.drawing];
	}
}
