/**
 * The whole drawing, in px, from a site and the room there is: one scale for site and tape, chosen by the
 * height, then by the width. Nothing overlaps; what finds no room is left out of the drawing and returned in
 * `unplaced` (the list of givens always has it).
 */
import { isOverhead, type Backdrop, type BackdropFrame } from '../backdrop/backdrop.ts';
import { step } from '../backdrop/parts.ts';
import { obstacleShapes } from '../backdrop/obstacles.ts';
import type { Shape } from '../drawing/shapes.ts';
import { type Cut, toX, toY, type View } from '../drawing/view.ts';
import { figurePaths, type FigurePaths } from '../figure/paths.ts';
import type { HungLine } from '../lanyard/hang.ts';
import type { DraftTape, SiteModel, SiteObstacle, TapePairModel } from '../model.ts';
import { around, type Box } from './box.ts';
import { hatchBoxes, outlineBoxes } from './outline-boxes.ts';
import type { PlacedDimension } from './dimension.ts';
import { placeDimensions } from './place-dimensions.ts';
import { placeLevels, placeNames, type PlacedLevel, type WordSizes } from './place-words.ts';
import { block, Placer, type PlacedText, setBlock } from './placer.ts';
import { facing, inMetres, type Metres } from './site-metres.ts';
import { wrapText } from './text-width.ts';
import { type TapeRoom, tapeRoom } from './tape-room.ts';

export type TapeView =
	| { readonly kind: 'none' }
	| { readonly kind: 'draft'; readonly draft: DraftTape }
	| { readonly kind: 'pair'; readonly pair: TapePairModel };

export interface ElevationOptions {
	/** Room, px. The width is kept; the height is a wish: a deep site on a small screen is taller. */
	readonly width: number;
	readonly height: number;
	/** 1, or more when the reader has set larger text. */
	readonly textScale: number;
	readonly tape: TapeView;
	/** "2 m. Elevation to scale, lengths in metres."; null: no scale bar. The bar is 2 m, or 6 ft in US units. */
	readonly scaleText: string | null;
	/** Draws the site round the plan. */
	readonly backdrop: (frame: BackdropFrame) => Backdrop;
}

export interface Elevation {
	readonly width: number;
	readonly height: number;
	readonly view: View;
	readonly site: SiteModel;
	readonly back: readonly Shape[];
	readonly obstacles: readonly { readonly id: string; readonly shapes: readonly Shape[] }[];
	/** Column where a wide obstacle is cut off, and the rows of the cuts. */
	readonly cutOff: { readonly x: number; readonly pieces: readonly { readonly top: number; readonly bottom: number }[] };
	/** Ground: from where to where, px, and its row. */
	readonly ground: { readonly x1: number; readonly x2: number; readonly y: number };
	/** Chain lines that carry a level across the sheet. */
	readonly chains: readonly { readonly x1: number; readonly x2: number; readonly y: number }[];
	/** Plumb line of the anchorage, when the worker stands aside of it. */
	readonly plumb: { readonly x: number; readonly y1: number; readonly y2: number } | null;
	readonly figure: FigurePaths | null;
	readonly line: HungLine | null;
	readonly dimensions: readonly PlacedDimension[];
	readonly levels: readonly PlacedLevel[];
	readonly names: readonly PlacedText[];
	readonly breakBand: { readonly top: number; readonly bottom: number; readonly x1: number; readonly x2: number } | null;
	readonly tape: TapeRoom | null;
	/** Column where the level of the first thing met starts. */
	readonly levelFrom: number;
	/** Lowest row a tape may reach. */
	readonly limit: number;
	readonly scaleBar: { readonly x: number; readonly y: number; readonly half: number; readonly texts: readonly PlacedText[] } | null;
	/** Every text, for tests. */
	readonly texts: readonly PlacedText[];
	readonly solids: readonly Box[];
	/** Ids of dimensions that stand in their second best place. */
	readonly second: readonly string[];
	/** Whether heights from one level share a line. */
	readonly running: boolean;
	/** Ids of dimensions and names that found no room. */
	readonly unplaced: readonly string[];
}

/** @returns the dimensions that found no room: they stand beside the drawing. */
export function unplacedDimensions({ unplaced, site }: Elevation): readonly { readonly id: string; readonly name: string; readonly label: string }[] {
	return unplaced.flatMap((id) => {
		const d = site.dimensions.find((one) => `dimension:${one.id}` === id);
		if (d === undefined) return [];
		const thing = d.axis === 'vertical' ? site.obstacles.find((o) => Math.abs(o.top - site.lowerLevel.depth - d.to.z) < 0.004) : undefined;
		return [{ id: d.id, name: d.name === '' ? (thing?.name ?? '') : d.name, label: d.label }];
	});
}

function sizesFor(options: ElevationOptions): WordSizes {
	const tight = options.width < 480;
	const t = options.textScale;
	return {
		number: (tight ? 17 : 18) * t,
		name: (tight ? 13 : 14) * t,
		nameWidth: (tight ? 70 : 110) * t,
		tight
	};
}

const GAP = 30;
/** Smallest scale that is tried, px a metre, and how many layouts are. */
const LEAST_SCALE = 24;
const BUDGET = 36;

function marginOf(sizes: WordSizes): number {
	return sizes.tight ? 6 : 12;
}


/** Whether a deep shaft is cut, and where: never within reach of a tape, and told by the givens alone. */
function cutFor(m: Metres, options: ElevationOptions, lowest: number): Cut | null {
	const { site } = m;
	const usual =
		site.lanyard.length + site.anchorage.connectorLength + site.worker.dRingHeight + 3.6 - Math.max(0, site.anchorage.height);
	const highest = Math.max(0, ...site.obstacles.map((o) => o.top));
	if (options.tape.kind === 'pair') {
		// The answer is known: what lies between both tapes and the first thing met may go.
		const upper = Math.min(-0.9, lowest - 0.45);
		const lower = m.ground + highest + 0.45;
		return upper - lower < 1.2 ? null : { upper, lower, gap: GAP };
	}
	const keep = Math.max(usual, 2.2 * site.lanyard.length, -lowest + 0.5);
	const lower = m.ground + highest + 0.9;
	const plain = (options.height - 110) / (m.top - m.ground);
	if (plain >= (options.width < 480 ? 40 : 52) || -keep - lower < 2.5) return null;
	return { upper: -keep, lower, gap: GAP };
}

/** Highest place of a tape, m: its datum, or more when terms taken off come first. */
function highestOf(tape: TapeView): number {
	if (tape.kind === 'none') return -Infinity;
	if (tape.kind === 'draft') return tape.draft.datum.z;
	let high = tape.pair.needed.datum.z;
	for (const one of [tape.pair.needed, tape.pair.own]) {
		if (one === null) continue;
		let at = one.datum.z;
		for (const t of one.terms) {
			at -= t.sign * t.length;
			high = Math.max(high, at);
		}
	}
	return high;
}

function lowestOf(tape: TapeView): number {
	if (tape.kind === 'draft') {
		return Math.min(0, tape.draft.datum.z);
	}
	if (tape.kind === 'pair') {
		const { needed, own, firstMet } = tape.pair;
		const room = Math.max(needed.total, firstMet === null ? 0 : needed.datum.z - firstMet.z) * 1.25 + 0.4;
		const ownLow = own === null ? 0 : Math.min(own.total, room);
		return Math.min(needed.datum.z - needed.total, needed.datum.z - ownLow);
	}
	return 0;
}

/** The drawing of a site in the room there is. */
export function layoutElevation(given: SiteModel, options: ElevationOptions): Elevation {
	const sizes = sizesFor(options);
	const whole = inMetres(facing(given), options.tape.kind === 'pair' ? 1.15 : sizes.tight ? 1.3 : 2.2, options.tape.kind !== 'pair');
	// On a phone both tapes come first: of the site only what stands beside them is kept, at a larger scale.
	const beside = options.tape.kind === 'pair' && options.width < 560;
	const m: Metres =
		options.tape.kind !== 'pair'
			? whole
			: beside
				? { ...whole, top: Math.min(whole.top, options.tape.pair.needed.datum.z + 0.1) }
				: { ...whole, least: whole.sight === 'profile' ? 0.86 : whole.least };
	const lowest = lowestOf(options.tape);
	const cut = cutFor(m, options, lowest);
	const bottom = Math.min(m.ground, lowest);
	const metres = m.top - bottom - (cut === null ? 0 : cut.upper - cut.lower);
	const footer = (options.scaleText === null ? 0 : 34) + 16 + sizes.name + 12;
	const head = options.tape.kind === 'none' ? 0 : options.tape.kind === 'pair' ? 74 * options.textScale : 30 + 18 * options.textScale * (sizes.tight ? 2 : 1);
	const datum = highestOf(options.tape);
	const padFor = (s: number): number => Math.max(10, head - (m.top - datum) * s);
	const room = options.height - footer - (cut === null ? 0 : cut.gap);
	const most = options.tape.kind === 'pair' ? 112 : 150;
	let scale = Math.min(most, (room - 10) / metres);
	for (let i = 0; i < 8; i++) scale = Math.min(most, (room - padFor(scale)) / metres);
	scale = Math.max(scale, sizes.tight ? 30 : 26);
	if (beside) {
		const pad = padFor(scale);
		const height = Math.ceil(pad + metres * scale + footer + (cut === null ? 0 : cut.gap));
		return layoutAt(m, options, sizes, scale, null, pad, height, cut, false);
	}

	let best: Elevation | null = null;
	// Smaller until the site fits beside the tape; only a little smaller for the sake of a word.
	let spared = 0;
	let stale = 0;
	let budget = BUDGET;
	for (let attempt = 0; attempt < 40 && spared < 11 && stale < 6 && budget > 0; attempt++) {
		const before: number = best === null ? Infinity : cost(best);
		const pad = padFor(scale);
		const height = Math.ceil(pad + metres * scale + footer + (cut === null ? 0 : cut.gap));
		const tape = tapeRoom(options, sizes.tight, scale);
		const siteEnd = options.width - marginOf(sizes) - (tape === null ? 0 : tape.width);
		const last = scale * 0.955 < LEAST_SCALE;
		for (const left of [m.likes, (m.likes + m.least) / 2, m.least]) {
			// Where the site cannot stand beside the tape, nothing is tried; at the least scale it is cut off.
			const fits = marginOf(sizes) + (left + m.right) * scale <= siteEnd + 1;
			if (!fits && !(last && left === m.least)) continue;
			for (const running of [false, true]) {
				budget -= 1;
				const tried = layoutAt(m, options, sizes, scale, left, pad, height, cut, running);
				if (best === null || cost(tried) < cost(best)) best = tried;
				if (cost(tried) === 0) return tried;
			}
		}
		if (best !== null) {
			spared += 1;
			stale = cost(best) < before ? 0 : stale + 1;
		}
		scale *= 0.955;
		if (scale < LEAST_SCALE) break;
	}
	if (best === null) throw new RangeError('layoutElevation: no layout was tried');
	return best;
}

function cost(e: Elevation): number {
	return e.unplaced.reduce((sum, id) => sum + (id === 'site' ? 100 : 2), 0) + e.second.length + (e.running ? 0.5 : 0);
}

function layoutAt(
	m: Metres,
	options: ElevationOptions,
	sizes: WordSizes,
	scale: number,
	/** Metres kept left of the plumb line; null: the site is cut off at the left, its right end at the tapes. */
	left: number | null,
	pad: number,
	height: number,
	cut: Cut | null,
	running: boolean
): Elevation {
	const { site } = m;
	const unplaced: string[] = [];
	const second: string[] = [];
	const margin = marginOf(sizes);
	const tape = tapeRoom(options, sizes.tight, scale);
	const siteEnd = options.width - margin - (tape === null ? 0 : tape.width);
	const x0 = left === null ? siteEnd - Math.max(m.right, 0.1) * scale : margin + left * scale;
	const view: View = { scale, x0, y0: pad + m.top * scale, cut };
	const X = (x: number): number => toX(view, x);
	const Y = (z: number): number => toY(view, z);
	// The tape hangs at the right end of the sheet; the site may use what is left of it.
	const siteRight = siteEnd;
	const bodyShown = left !== null || m.dRing.z + 0.5 < m.top;
	const placer = new Placer({ left: margin, top: 2, right: siteRight, bottom: height - 2 });
	const groundY = Y(m.ground);

	const figure = figurePaths(m.shape, view, m.dRing, -1);
	const rightMetres = (siteRight - view.x0) / scale;
	if (left !== null && m.right * scale + view.x0 > siteRight + 1) unplaced.push('site');
	const leftMetres = (0 - view.x0) / scale;
	const backdrop: Backdrop = options.backdrop({
		site,
		sight: m.sight,
		left: leftMetres,
		right: Math.max(m.right, Math.min(rightMetres, m.right + 1.2)),
		top: Math.max(m.top, site.anchorage.height + 0.46),
		edge: m.edge,
		ground: m.ground,
		front: m.front,
		overhead: isOverhead(site) ? site.anchorage.height + 0.1 : null
	});

	// Solid things.
	for (const group of m.shape.groups) {
		for (const outline of group.outlines) {
			placer.solids.push(around(outline.map((s) => ({ x: X(m.dRing.x - s.u), y: Y(m.dRing.z + s.v) }))));
		}
	}
	placer.solids.push(around(m.shape.helmet.map((s) => ({ x: X(m.dRing.x - s.u), y: Y(m.dRing.z + s.v) }))));
	const chainPoints = m.line.all;
	for (let i = 0; i < chainPoints.length; i += 6) {
		placer.solids.push(around(chainPoints.slice(i, i + 7).map((p) => ({ x: X(p.x), y: Y(p.z) })), 3));
	}
	const obstacleBox = (o: SiteObstacle): Box => ({ left: X(o.from), right: X(Math.min(o.to, m.right)), top: Y(m.ground + o.top), bottom: groundY });
	const shown = site.obstacles.filter((o) => o.from < m.right - 0.05);
	for (const o of shown) placer.solids.push(obstacleBox(o));
	for (const [l, b, r, t] of backdrop.busy) {
		placer.solids.push({ left: Math.max(0, X(l)), right: X(r), top: Y(t), bottom: Y(b) });
	}
	const standing = step(m.dRing.x - 0.47, m.dRing.x - 0.02, site.worker.standingHeight);
	if (standing.length > 0) placer.solids.push({ left: X(m.dRing.x - 0.55), right: X(m.dRing.x - 0.02), top: Y(site.worker.standingHeight), bottom: Y(0) });
	placer.lines.push(...hatchBoxes(backdrop.shapes, view));
	placer.addOutlines(outlineBoxes(backdrop.shapes, view));
	const band = cut === null ? [] : [{ left: 0, right: siteRight, top: Y(cut.upper) - 4, bottom: Y(cut.lower) + 4 }];

	// Lines that words keep off.
	const surfaceY = Y(0);
	placer.lines.push({ left: X(leftMetres), right: siteRight + 40, top: surfaceY - 1.5, bottom: surfaceY + 1.5 });
	placer.lines.push({ left: 0, right: siteRight, top: groundY - 1.5, bottom: groundY + 12 });
	const plumb =
		Math.abs(site.worker.offset) > 0.005
			? { x: X(0), y1: Y(site.anchorage.height), y2: Math.max(surfaceY, Y(backdrop.under ?? 0)) }
			: null;
	if (plumb !== null) placer.lines.push({ left: plumb.x - 1, right: plumb.x + 1, top: plumb.y1, bottom: plumb.y2 });
	for (const b of band) placer.lines.push(b);

	// Levels between surface and ground are carried across.
	const between = site.levels.filter((l) => Math.abs(l.z) > 0.004 && Math.abs(l.z - m.ground) > 0.004);
	for (const l of between) placer.lines.push({ left: X(leftMetres), right: siteRight, top: Y(l.z) - 1.5, bottom: Y(l.z) + 1.5 });

	const names = placeNames(shown, obstacleBox, placer, sizes, unplaced);
	const dimensions = options.tape.kind === 'pair' ? [] : placeDimensions(site, { view, placer, sizes, band, until: siteRight - 8, dRingX: m.dRing.x, clearOf: Math.max(...m.line.all.map((p) => X(p.x)), X(0), figure.box.right), figureLeft: figure.box.left, surfaceTo: X(backdrop.surfaceTo), headTop: figure.box.top, under: Y(backdrop.under ?? -0.2), ground: m.ground, right: m.right, running, second, unplaced });

	const chains: { x1: number; x2: number; y: number }[] = [];
	// Up to the tape that hangs from this level; else it keeps off the tape's figures.
	const datumZ = options.tape.kind === 'pair' ? options.tape.pair.needed.datum.z : options.tape.kind === 'draft' ? options.tape.draft.datum.z : Infinity;
	const hungHere = Math.abs(datumZ) < 0.005;
	const tapeX = tape === null ? siteRight : hungHere ? siteRight + tape.bandLeft : siteRight + 8;
	if (tapeX - X(backdrop.surfaceTo) > 30) chains.push({ x1: X(backdrop.surfaceTo) + 4, x2: tapeX, y: surfaceY });
	for (const l of between) chains.push({ x1: Math.max(0, X(m.sight === 'profile' ? backdrop.surfaceTo : leftMetres)), x2: siteRight - 4, y: Y(l.z) });
	const levels = placeLevels(site.levels, view, placer, sizes, unplaced, X(backdrop.surfaceTo));

	for (const l of levels) {
		if (l.tip !== null && l.tip.x < X(backdrop.surfaceTo)) chains.push({ x1: l.tip.x - 14, x2: X(backdrop.surfaceTo), y: l.tip.y });
	}

	const used = Math.max(
		X(m.right) + 16,
		...placer.texts.map((t) => t.box.right + 6),
		...dimensions.flatMap((d) => d.lines.map((l) => Math.max(l.x1, l.x2) + 12))
	);
	const scaleBar = placeScaleBar(site, options, view, height, sizes);
	return {
		width: options.width,
		height,
		view,
		site,
		back: [...backdrop.shapes, ...standing],
		obstacles: shown.map((o) => ({ id: o.id, shapes: obstacleShapes(o, m.ground) })),
		cutOff: {
			x: X(m.right),
			pieces: shown.filter((o) => o.to > m.right + 0.01).map((o) => ({ top: Y(m.ground + o.top), bottom: groundY }))
		},
		ground: { x1: Math.max(0, X(leftMetres)), x2: Math.min(siteRight, used), y: groundY },
		chains,
		plumb,
		figure: bodyShown ? figure : null,
		line: bodyShown ? m.line : null,
		dimensions,
		levels,
		names,
		breakBand: cut === null ? null : { top: Y(cut.upper), bottom: Y(cut.lower), x1: 0, x2: Math.min(siteRight + 8, used + 10) },
		tape: tape === null ? null : { ...tape, left: siteRight },
		levelFrom: levelStart(m, options, view),
		limit: height - (options.scaleText === null ? 8 : 40),
		scaleBar,
		texts: [...placer.texts, ...(scaleBar === null ? [] : scaleBar.texts)],
		solids: placer.solids,
		running,
		second,
		unplaced
	};
}

function placeScaleBar(site: SiteModel, options: ElevationOptions, view: View, height: number, sizes: WordSizes): Elevation['scaleBar'] {
	if (options.scaleText === null) return null;
	const half = (site.units === 'metric' ? 1 : 3 * 0.3048) * view.scale;
	const x = 14;
	const y = height - 14;
	const left = x + 2 * half + 12;
	const lines = wrapText(options.scaleText, sizes.name, Math.max(90, options.width - left - 8));
	const words = block(lines.map((text) => ({ text, size: sizes.name, weight: 600, tone: 'name' })));
	return { x, y, half, texts: setBlock(words, left, y + sizes.name * 0.3 - words.height + (lines.length > 1 ? 4 : 0), 'start') };
}

/** The level of the first thing met starts at the thing itself, or where the ground is drawn. */
function levelStart(m: Metres, options: ElevationOptions, view: View): number {
	if (options.tape.kind !== 'pair' || options.tape.pair.firstMet === null) return 0;
	const { z } = options.tape.pair.firstMet;
	const thing = m.site.obstacles.find((o) => Math.abs(m.ground + o.top - z) < 0.01);
	return Math.max(0, toX(view, thing === undefined ? m.right : Math.min(thing.from, m.right)));
}
