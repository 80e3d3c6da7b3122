/** The strip: time to the right, true height downwards. Pixels. */
import { type Point, toY, type View } from '../drawing/view.ts';
import { sharedArea } from '../layout/box.ts';
import { block, type PlacedText, setBlock } from '../layout/placer.ts';
import { textWidth, wrapText } from '../layout/text-width.ts';
import type { PlaybackCase, PlaybackModel } from '../model.ts';
import { type Mark, marksOf } from './marks.ts';

export interface StripOptions {
	readonly width: number;
	/** Height that the strip should fit in, rows of numbers included. */
	readonly height: number;
	readonly textScale: number;
	readonly timeText: (t: number) => string;
	readonly speedText: (v: number) => string;
	/** "time, s" and "speed, m/s"; the short forms "s" and "m/s" where there is little room. */
	readonly rows: readonly [time: string, speed: string];
	readonly shortRows: readonly [time: string, speed: string];
}

export interface StripMark extends Mark {
	/** Column of the soles. */
	readonly x: number;
	/** Column of the D-ring. */
	readonly ringX: number;
	readonly soles: Point;
	readonly speed: number;
	readonly numbers: readonly PlacedText[];
	readonly bold: boolean;
}

export interface StripLevel {
	readonly kind: 'surface' | 'obstacle' | 'ground';
	readonly y: number;
	readonly x1: number;
	readonly x2: number;
	readonly words: readonly PlacedText[];
}

export interface Strip {
	readonly width: number;
	readonly height: number;
	readonly view: View;
	readonly marks: readonly StripMark[];
	readonly curve: readonly Point[];
	readonly uprights: readonly { readonly x: number; readonly top: number; readonly bottom: number; readonly words: readonly PlacedText[] }[];
	readonly levels: readonly StripLevel[];
	/** Row of the structure that carries the anchorage. */
	readonly structureY: number;
	/** Whether the structure is over the head (a soffit) or lower (a chain line). */
	readonly overhead: boolean;
	/** Foot of the picture: the ground, or a break line above it. */
	readonly floor: { readonly y: number; readonly broken: boolean };
	readonly learner: { readonly y: number; readonly x1: number; readonly x2: number; readonly diamond: Point | null; readonly words: readonly PlacedText[] } | null;
	readonly rowLabels: readonly PlacedText[];
	readonly xOf: (t: number) => number;
	readonly ringShift: number;
}

const AHEAD = 0.2;

interface Heights {
	readonly top: number;
	readonly bottom: number;
	readonly broken: boolean;
}

function heights(model: PlaybackModel, cases: readonly PlaybackCase[]): Heights {
	const { worker, anchorage } = model;
	const head = worker.standingHeight + worker.dRingNow + 0.45;
	const top = Math.max(anchorage.height + 0.12, head + 0.1);
	let lowest = Infinity;
	let deepest = 0;
	for (const fall of cases) {
		for (let i = 0; i <= 24; i++) lowest = Math.min(lowest, fall.at((fall.duration * i) / 24).soles.z);
		if (fall.learner !== null) lowest = Math.min(lowest, Math.max(fall.learner.z, lowest - 1.5));
		for (const l of fall.levels) if (l.kind === 'obstacle' && l.z > lowest - 2) lowest = Math.min(lowest, l.z);
		for (const l of fall.levels) deepest = Math.min(deepest, l.z);
	}
	const broken = deepest < lowest - 1.4;
	return { top, bottom: broken ? lowest - 0.55 : Math.min(deepest, lowest), broken };
}

/** Words over the uprights: one row, or two where they would meet. */
function uprightWords(items: readonly { x: number; text: string }[], size: number, width: number): PlacedText[][] {
	const rows: number[] = [];
	return items.map(({ x, text }) => {
		const w = textWidth(text, size);
		const centre = Math.max(w / 2 + 2, Math.min(width - w / 2 - 2, x));
		let row = rows.findIndex((end) => centre - w / 2 > end + 10);
		if (row < 0) row = rows.push(-Infinity) - 1;
		rows[row] = centre + w / 2;
		return setBlock(block([{ text, size, weight: 600, tone: 'name' }]), centre, 2 + row * (size + 4), 'middle');
	});
}

export function layoutStrip(model: PlaybackModel, fall: PlaybackCase, options: StripOptions): Strip {
	const { width, textScale } = options;
	const tight = width < 480;
	const name = (tight ? 13 : 14) * textScale;
	const number = (tight ? 14 : 15) * textScale;
	const h = heights(model, model.cases);
	const eventMarks = marksOf(fall, Infinity);
	const shownEvents = eventMarks.flatMap((m) => m.events.filter((e) => e.name !== '').slice(0, 1).map((e) => ({ t: m.t, text: e.name })));

	const numberRows = 2 * (number + 7) + 6;
	const earth = 16;
	const startRoom = 0.72;
	let scale = Math.min(92, (width * 0.34) / 1.3);
	const xOf = (t: number): number => {
		const left = startRoom * scale + 4;
		const right = 0.3 * scale + 6;
		return left + (t / Math.max(0.05, fall.duration)) * (width - left - right - AHEAD * scale);
	};
	let words: PlacedText[][] = [];
	let headRows = 0;
	for (let i = 0; i < 4; i++) {
		words = uprightWords(shownEvents.map((e) => ({ x: xOf(e.t) + AHEAD * 0.5 * scale, text: e.text })), name, width);
		headRows = Math.max(name + 6, ...words.flat().map((t) => t.box.bottom + 6));
		scale = Math.max(26, Math.min(scale, (options.height - headRows - numberRows - earth) / (h.top - h.bottom)));
	}
	// Figures keep about half a metre of their own scale apart; on a phone 0.2 s at least.
	const second = (xOf(fall.duration) - xOf(0)) / Math.max(0.05, fall.duration);
	const step = (width < 400 ? [0.2, 0.25, 0.5] : [0.1, 0.2, 0.25, 0.5]).find((s) => s * second >= 0.42 * scale) ?? 0.5;
	const marks = marksOf(fall, step);
	const view: View = { scale, x0: 0, y0: headRows + h.top * scale, cut: null };
	const floorY = toY(view, h.bottom);
	const height = Math.ceil(floorY + earth + numberRows);
	const ringShift = AHEAD * scale;

	const curve: Point[] = [];
	const samples = 90;
	for (let i = 0; i <= samples; i++) {
		const t = (fall.duration * i) / samples;
		curve.push({ x: xOf(t), y: toY(view, fall.at(t).soles.z) });
	}
	// Events first: a regular mark's number gives way.
	const taken: { left: number; right: number }[] = [];
	const rowY = floorY + earth;
	const longest = Math.max(textWidth(options.rows[0], name), textWidth(options.rows[1], name));
	const firstX = xOf(marks.find((m) => m.figure && m.t > 0)?.t ?? 0) - 18;
	const rowNames = longest + 6 < firstX ? options.rows : options.shortRows;
	taken.push({ left: 0, right: Math.max(textWidth(rowNames[0], name), textWidth(rowNames[1], name)) + 4 });
	const numbersAt = new Map<number, PlacedText[]>();
	for (const m of [...marks].sort((a, b) => Number(b.events.length > 0) - Number(a.events.length > 0) || b.t - a.t)) {
		if (m.t === 0 || !m.figure) continue;
		const frame = fall.at(m.t);
		const weight = m.events.length > 0 ? 700 : 600;
		const b = block([
			{ text: options.timeText(m.t), size: number, weight, tone: 'number' },
			{ text: options.speedText(frame.speed), size: number, weight, tone: 'number' }
		]);
		const x = Math.min(width - b.width / 2 - 2, xOf(m.t));
		const room = { left: x - b.width / 2 - 5, right: x + b.width / 2 + 5 };
		if (taken.some((r) => r.left < room.right && room.left < r.right)) continue;
		taken.push(room);
		numbersAt.set(m.t, setBlock(b, x, rowY, 'middle'));
	}
	const lineOf = (row: 0 | 1, text: string): PlacedText[] => {
		const baseline = rowY + number * 0.72 + row * (number * 0.93 + 3);
		return setBlock(block([{ text, size: name, weight: 600, tone: 'name' }]), 0, baseline - name * 0.72, 'start');
	};

	const levels: StripLevel[] = [];
	const duration = fall.duration;
	for (const l of fall.levels) {
		const y = toY(view, l.z);
		if (l.kind === 'surface') levels.push({ kind: 'surface', y, x1: 0, x2: width, words: [] });
		if (l.kind === 'obstacle' && y < floorY - 4) {
			const x1 = xOf(duration * 0.66);
			const room = width - x1 - 12;
			const lines = block(wrapText(l.name, name, room).map((text) => ({ text, size: name, weight: 600, tone: 'name' })));
			const fits = floorY - y > lines.height + 14;
			const lineXs = shownEvents.map((e) => xOf(e.t));
			const start = [x1 + 8, ...lineXs.map((x) => x + 8)].find(
				(x) => x >= x1 + 8 && x + lines.width < width - 4 && !lineXs.some((u) => u > x - 4 && u < x + lines.width + 4)
			);
			levels.push({ kind: 'obstacle', y, x1, x2: width, words: fits && start !== undefined ? setBlock(lines, start, Math.max(y + 9, (y + floorY - lines.height) / 2), 'start') : [] });
		}
		if (l.kind === 'ground' && !h.broken) levels.push({ kind: 'ground', y, x1: 0, x2: width, words: [] });
	}

	return {
		width,
		height,
		view,
		marks: marks.map((m) => {
			const frame = fall.at(m.t);
			const x = xOf(m.t);
			return {
				...m,
				x,
				ringX: x + ringShift,
				soles: { x, y: toY(view, frame.soles.z) },
				speed: frame.speed,
				numbers: numbersAt.get(m.t) ?? [],
				bold: m.figure && m.events.length > 0
			};
		}),
		curve,
		uprights: shownEvents.map((e, i) => ({ x: xOf(e.t), top: headRows, bottom: rowY - 4, words: words[i] ?? [] })).filter((u) => u.x > xOf(0) + 1 || u.words.length > 0),
		levels,
		structureY: toY(view, model.anchorage.height),
		overhead: model.anchorage.height > model.worker.standingHeight + model.worker.dRingNow + 0.3,
		floor: { y: floorY, broken: h.broken },
		learner: learnerLine(fall, view, xOf, width, name, floorY),
		rowLabels: [...lineOf(0, rowNames[0]), ...lineOf(1, rowNames[1])],
		xOf,
		ringShift
	};
}

/** Where the words at the learner's level keep off figures and curve: over the line or under it, left or right. */
function wordsAt(
	fall: PlaybackCase,
	view: View,
	xOf: (t: number) => number,
	width: number,
	y: number,
	w: number,
	h: number,
	floorY: number
): { x: number; top: number } {
	const spots = [6, 22].flatMap((off) => [
		{ x: 4, top: y - h - off },
		{ x: 4, top: y + off },
		{ x: width - w - 4, top: y - h - off },
		{ x: width - w - 4, top: y + off }
	]);
	const { scale } = view;
	/** How much a spot is in the way, px² over the whole fall. */
	const covered = (spot: { x: number; top: number }): number => {
		const box = { left: spot.x, right: spot.x + w, top: spot.top, bottom: spot.top + h };
		if (box.bottom > floorY - 2) return Infinity;
		let sum = 0;
		for (let i = 0; i <= 60; i++) {
			const t = (fall.duration * i) / 60;
			const x = xOf(t);
			const soles = toY(view, fall.at(t).soles.z);
			sum += sharedArea(box, { left: x - 0.16 * scale, right: x + 0.42 * scale, top: soles - 1.95 * scale, bottom: soles });
			sum += sharedArea(box, { left: x - 0.6 * scale, right: x - 0.16 * scale, top: soles - 1.9 * scale, bottom: soles - 1 * scale });
			sum += 4 * sharedArea(box, { left: x - 6, right: x + 6, top: soles - 6, bottom: soles + 6 });
		}
		return sum;
	};
	let best = spots[0] ?? { x: 4, top: y - h - 6 };
	for (const spot of spots) if (covered(spot) < covered(best)) best = spot;
	return best;
}

function learnerLine(fall: PlaybackCase, view: View, xOf: (t: number) => number, width: number, size: number, floorY: number): Strip['learner'] {
	const { learner } = fall;
	if (learner === null) return null;
	const y = toY(view, learner.z);
	if (y > floorY + 2) return null;
	let crossing: number | null = null;
	const steps = 240;
	for (let i = 1; i <= steps && crossing === null; i++) {
		const a = (fall.duration * (i - 1)) / steps;
		const b = (fall.duration * i) / steps;
		const za = fall.at(a).soles.z - learner.z;
		const zb = fall.at(b).soles.z - learner.z;
		if (za > 0 && zb <= 0) crossing = a + ((b - a) * za) / (za - zb);
	}
	const lines = block(wrapText(learner.text, size, width * 0.52).map((text) => ({ text, size, weight: 700, tone: 'own' })));
	const at = wordsAt(fall, view, xOf, width, y, lines.width, lines.height, floorY);
	return {
		y,
		x1: 4,
		x2: width,
		diamond: crossing === null ? null : { x: xOf(crossing), y },
		words: setBlock(lines, at.x, at.top, 'start')
	};
}
