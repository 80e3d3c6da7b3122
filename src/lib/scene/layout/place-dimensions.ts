/** Which thing each dimension measures, and where its line may stand. Pixels. */
import { toX, toY, type View } from '../drawing/view.ts';
import type { HorizontalDimension, SiteModel, VerticalDimension } from '../model.ts';
import type { Box } from './box.ts';
import { placeRunning } from './running.ts';
import { type PlacedDimension, placeHorizontal, placeVertical, type VerticalRequest } from './dimension.ts';
import type { WordSizes } from './place-words.ts';
import type { Placer } from './placer.ts';

export interface DimensionField {
	readonly view: View;
	readonly placer: Placer;
	readonly sizes: WordSizes;
	readonly band: readonly Box[];
	/** Rightmost column. */
	readonly until: number;
	/** D-ring, m. */
	readonly dRingX: number;
	/** Right end of figure and line, px. */
	readonly clearOf: number;
	readonly figureLeft: number;
	readonly surfaceTo: number;
	/** Top of the helmet and underside of what one stands on, px. */
	readonly headTop: number;
	readonly under: number;
	readonly ground: number;
	/** How far right obstacles are drawn, m. */
	readonly right: number;
	/** Several heights from one level share a line. */
	readonly running: boolean;
	/** Collects what stands in its second best place: left of the thing. */
	readonly second: string[];
	/** Collects what found no room. */
	readonly unplaced: string[];
}

const SAME = 0.004;

function near(a: number, b: number): boolean {
	return Math.abs(a - b) < SAME;
}

function heightOf(ref: VerticalDimension['from'], site: SiteModel): number {
	if (ref === 'surface') return 0;
	if (ref === 'standing') return site.worker.standingHeight;
	if (ref === 'lower-level') return -site.lowerLevel.depth;
	return ref.z;
}

/** Right end of an obstacle as far as it is drawn, px. */
function endOf(to: number, f: DimensionField): number {
	return toX(f.view, Math.min(to, f.right));
}

interface Span {
	readonly d: VerticalDimension;
	readonly high: number;
	readonly low: number;
	readonly kind: 'obstacle' | 'upper' | 'lower';
	readonly from: number;
	readonly at: number;
}

/** Right end (px) of the thing whose height is z; null where a level line is drawn anyway. */
function thingAt(z: number, site: SiteModel, f: DimensionField): number | null {
	const { worker, anchorage } = site;
	if (near(z, 0) || near(z, f.ground) || site.levels.some((l) => near(l.z, z))) return null;
	const o = site.obstacles.find((x) => near(f.ground + x.top, z));
	if (o !== undefined) return endOf(o.to, f);
	if (near(z, worker.standingHeight + worker.dRingNow)) return toX(f.view, f.dRingX) + 4;
	if (near(z, anchorage.height) || near(z, anchorage.height - anchorage.connectorLength)) return toX(f.view, 0) + 6;
	if (near(z, worker.standingHeight)) return toX(f.view, f.dRingX) + 14;
	return z > 0 ? toX(f.view, f.dRingX) + 4 : f.surfaceTo;
}

function spanOf(d: VerticalDimension, site: SiteModel, f: DimensionField): Span {
	const a = heightOf(d.from, site);
	const high = Math.max(a, d.to.z);
	const low = Math.min(a, d.to.z);
	const o = site.obstacles.find((x) => near(f.ground + x.top, high) && near(low, f.ground));
	if (o !== undefined) {
		return { d, high, low, kind: 'obstacle', from: endOf(o.to, f) + 20, at: endOf(o.to, f) };
	}
	if (low > -SAME) return { d, high, low, kind: 'upper', from: f.clearOf + 24, at: 0 };
	const right = Math.max(f.surfaceTo, toX(f.view, 0) + 10);
	return { d, high, low, kind: 'lower', from: right + 24, at: 0 };
}

/** Every dimension of the site; the shorter nearer to the thing. One that finds no room goes first next time. */
export function placeDimensions(site: SiteModel, f: DimensionField): PlacedDimension[] {
	const vertical = site.dimensions.filter((d): d is VerticalDimension => d.axis === 'vertical');
	const horizontal = site.dimensions.filter((d): d is HorizontalDimension => d.axis === 'horizontal');
	const order = { obstacle: 0, upper: 1, lower: 2 };
	let spans = vertical
		.map((d) => spanOf(d, site, f))
		.sort((p, q) => order[p.kind] - order[q.kind] || p.high - p.low - (q.high - q.low));
	const undo = f.placer.mark();
	let best = attempt(spans, horizontal, site, f, true);
	for (let i = 0; i < 3 && best.failed.length > 0; i++) {
		const failed = best.failed;
		spans = [...spans.filter((s) => failed.includes(s.d.id)), ...spans.filter((s) => !failed.includes(s.d.id))];
		undo();
		best = attempt(spans, horizontal, site, f, i % 2 === 1);
	}
	let { placed, failed } = best;
	if (failed.length > 0) {
		// Rather over a thin outline of the backdrop than not at all.
		f.placer.relaxed = true;
		const rest = attempt(
			spans.filter((s) => failed.includes(s.d.id)),
			horizontal.filter((d) => failed.includes(d.id)),
			site,
			f,
			true
		);
		f.placer.relaxed = false;
		placed = [...placed, ...rest.placed];
		failed = rest.failed;
	}
	f.unplaced.push(...failed.map((id) => `dimension:${id}`));
	return placed;
}

function attempt(
	spans: readonly Span[],
	horizontal: readonly HorizontalDimension[],
	site: SiteModel,
	f: DimensionField,
	/** Shared lines before single ones, or after. */
	sharedFirst: boolean
): { placed: PlacedDimension[]; failed: string[] } {
	const placed: PlacedDimension[] = [];
	const failed: string[] = [];
	const take = (id: string, one: PlacedDimension | null): void => {
		if (one === null) failed.push(id);
		else placed.push(one);
	};
	for (const d of horizontal) take(d.id, horizontalOf(d, site, f));
	const done = new Set<string>();
	const share = (): void => {
		for (const group of f.running ? runningOf(spans.filter((s) => !done.has(s.d.id)), site, f) : []) {
			placed.push(group.line);
			for (const id of group.ids) done.add(id);
		}
	};
	if (sharedFirst) share();
	const alone = (s: Span): boolean => !spans.some((o) => o !== s && o.kind === s.kind && near(o.low, s.low));
	for (const s of sharedFirst || !f.running ? spans : [...spans.filter(alone), ...spans.filter((o) => !alone(o))]) {
		if (!sharedFirst && !alone(s)) share();
		if (done.has(s.d.id)) continue;
		const request: VerticalRequest = {
			id: s.d.id,
			label: s.d.label,
			name: s.d.name,
			top: toY(f.view, s.high),
			bottom: toY(f.view, s.low),
			topFrom: s.d.at === undefined ? thingAt(s.high, site, f) : toX(f.view, s.d.at),
			bottomFrom: thingAt(s.low, site, f),
			from: s.from,
			until: f.until,
			avoid: f.band,
			keepOff: [...new Set(spans.filter((o) => o !== s && o.kind === s.kind).flatMap((o) => [toY(f.view, o.high), toY(f.view, o.low)]))]
		};
		const right = placeVertical(request, f.sizes, f.placer);
		const one = right ?? leftOf(s, request, site, f);
		if (right === null && one !== null) f.second.push(s.d.id);
		take(s.d.id, one);
	}
	return { placed, failed };
}

/** Groups of heights over or under one level, two or more, each on one line. */
function runningOf(spans: readonly Span[], site: SiteModel, f: DimensionField): { ids: string[]; line: PlacedDimension }[] {
	const out: { ids: string[]; line: PlacedDimension }[] = [];
	const take = (kind: Span['kind'], base: (s: Span) => number, end: (s: Span) => number): void => {
		const bases = [...new Set(spans.filter((s) => s.kind === kind).map((s) => Math.round(base(s) * 1000)))];
		for (const b of bases) {
			const group = spans.filter((s) => s.kind === kind && Math.round(base(s) * 1000) === b);
			if (group.length < 2) continue;
			const line = placeRunning(
				{
					base: toY(f.view, b / 1000),
					ends: group.map((s) => ({ id: s.d.id, label: s.d.label, name: s.d.name, y: toY(f.view, end(s)), from: s.d.at === undefined ? thingAt(end(s), site, f) : toX(f.view, s.d.at) })),
					from: Math.min(...group.map((s) => s.from)) - 4,
					until: f.until,
					avoid: f.band
				},
				f.sizes,
				f.placer
			);
			if (line !== null) out.push({ ids: group.map((s) => s.d.id), line });
		}
	};
	take('upper', (s) => s.low, (s) => s.high);
	take('lower', (s) => s.high, (s) => s.low);
	return out;
}

/** No room on the right: the column stands left of the figure or the obstacle. */
function leftOf(s: Span, request: VerticalRequest, site: SiteModel, f: DimensionField): PlacedDimension | null {
	if (s.kind === 'lower') return null;
	const o = site.obstacles.find((x) => near(f.ground + x.top, s.high));
	const start = s.kind === 'obstacle' && o !== undefined ? toX(f.view, o.from) : f.figureLeft;
	return placeVertical(
		{ ...request, topFrom: start, bottomFrom: request.bottomFrom === null ? null : start, from: start - 22, until: f.placer.sheet.left + 12 },
		f.sizes,
		f.placer
	);
}

function horizontalOf(d: HorizontalDimension, site: SiteModel, f: DimensionField): PlacedDimension | null {
	const row = toY(f.view, d.at);
	const hook = toY(f.view, site.anchorage.height);
	const rows: { y: number; leftFrom: number; rightFrom: number }[] = [];
	// Over the head, where the anchorage is higher; else under the edge.
	for (let y = f.headTop - 14; y > hook + 12; y -= 4) rows.push({ y, leftFrom: row, rightFrom: y });
	for (let y = f.under + 26; y < f.placer.sheet.bottom - 60; y += 5) rows.push({ y, leftFrom: f.under, rightFrom: f.under });
	return placeHorizontal(
		{
			id: d.id,
			label: d.label,
			name: d.name,
			left: toX(f.view, Math.min(d.from.x, d.to.x)),
			right: toX(f.view, Math.max(d.from.x, d.to.x)),
			rows
		},
		f.sizes,
		f.placer
	);
}
