import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawBackdrop } from '../../../src/lib/scene/backdrop/draw.ts';
import { fromY, toY } from '../../../src/lib/scene/drawing/view.ts';
import { overlaps } from '../../../src/lib/scene/layout/box.ts';
import { type Elevation, type ElevationOptions, layoutElevation } from '../../../src/lib/scene/layout/elevation.ts';
import type { SiteModel } from '../../../src/lib/scene/model.ts';
import { sites } from './sites.ts';

type Sheet = Omit<ElevationOptions, 'tape' | 'scaleText' | 'backdrop'>;

const DESKTOP: Sheet = { width: 620, height: 790, textScale: 1 };
const SHEETS: readonly Sheet[] = [DESKTOP, { width: 390, height: 545, textScale: 1 }, { width: 320, height: 545, textScale: 1 }, { width: 620, height: 790, textScale: 2 }];

interface Laid {
	readonly site: SiteModel;
	readonly elevation: Elevation;
	/** What was laid out, for whoever has to see it again. */
	readonly what: string;
}

function laid(site: SiteModel, sheet: Sheet, withTape: boolean): Laid {
	const draft = { datum: { z: 0, name: 'landing' }, title: 'Your tape', zeroLabel: '0 = landing', terms: [], end: null, reach: site.lowerLevel.depth };
	const elevation = layoutElevation(site, { ...sheet, tape: withTape ? { kind: 'draft', draft } : { kind: 'none' }, scaleText: null, backdrop: drawBackdrop });
	return { site, elevation, what: JSON.stringify({ sheet, withTape, site }) };
}

/** Laid out once for all tests: sites on a desktop sheet, and sites on sheets of any kind. */
const onDesktop = fc.sample(sites, { numRuns: 70, seed: 32 }).map((site) => laid(site, DESKTOP, false));
const onAny = fc.sample(fc.tuple(sites, fc.constantFrom(...SHEETS), fc.boolean()), { numRuns: 60, seed: 31 }).map((of) => laid(...of));
const all = [...onDesktop, ...onAny];

function clashes(e: Elevation): string[] {
	const found: string[] = [];
	e.texts.forEach((a, i) => {
		e.texts.slice(i + 1).forEach((b) => {
			if (overlaps(a.box, b.box)) found.push(`"${a.text}" on "${b.text}"`);
		});
		for (const s of e.solids) {
			if (overlaps(a.box, s, -1)) found.push(`"${a.text}" on a thing`);
		}
	});
	return found;
}

describe('elevation', () => {
	test('no two words overlap, and no word stands on a thing, whatever the site and the sheet', () => {
		for (const { elevation, what } of all) {
			expect(clashes(elevation), what).toEqual([]);
			for (const { box, size } of elevation.texts) {
				expect(box.left, what).toBeGreaterThanOrEqual(0);
				expect(box.right, what).toBeLessThanOrEqual(elevation.width);
				expect(size, what).toBeGreaterThanOrEqual(13);
			}
		}
	});

	test('every given finds its place on a desktop sheet', () => {
		const missing = onDesktop.flatMap(({ elevation }) => elevation.unplaced.filter((id) => id.startsWith('dimension')));
		const givens = onDesktop.flatMap(({ site }) => site.dimensions);
		expect(missing.length / givens.length).toBeLessThan(0.01);
	});

	test('is true to scale: heights, depth and obstacles by one factor, the break apart', () => {
		for (const { site, elevation, what } of all) {
			const { view } = elevation;
			const surface = toY(view, 0);
			const dRing = site.worker.standingHeight + site.worker.dRingNow;
			expect(surface - toY(view, dRing), what).toBeCloseTo(dRing * view.scale, 6);
			const left = view.cut === null ? 0 : view.cut.upper - view.cut.lower;
			const gap = view.cut === null ? 0 : view.cut.gap;
			expect(elevation.ground.y - surface, what).toBeCloseTo((site.lowerLevel.depth - left) * view.scale + gap, 6);
		}
	});

	test('a break never lies within reach of the fall', () => {
		const broken = all.flatMap(({ site, elevation: { view }, what }) => (view.cut === null ? [] : [{ site, cut: view.cut, what }]));
		expect(broken.length).toBeGreaterThan(10);
		for (const { site, cut, what } of broken) {
			const { lanyard, anchorage, worker } = site;
			// Lanyard, connector and body at full length and 2.5 m for everything that stretches or is kept free.
			const reach = lanyard.length + anchorage.connectorLength + worker.dRingHeight + 2.5 - anchorage.height;
			expect(-cut.upper, what).toBeGreaterThan(reach);
		}
	});
});

describe('view', () => {
	test('rows go back to the heights they came from, on both sides of a break', () => {
		const view = { scale: 50, x0: 0, y0: 200, cut: { upper: -9, lower: -26, gap: 30 } };
		for (const z of [2, 0, -3.3, -8.99, -12, -20, -26.01, -30]) expect(fromY(view, toY(view, z))).toBeCloseTo(z, 9);
	});
});
