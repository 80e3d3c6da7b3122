import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawBackdrop } from '../../../src/lib/scene/backdrop/draw.ts';
import { fromY, toY } from '../../../src/lib/scene/drawing/view.ts';
import { overlaps } from '../../../src/lib/scene/layout/box.ts';
import { type Elevation, type ElevationOptions, layoutElevation } from '../../../src/lib/scene/layout/elevation.ts';
import { sites } from './sites.ts';

const SHEETS: readonly Omit<ElevationOptions, 'tape' | 'scaleText' | 'backdrop'>[] = [
	{ width: 620, height: 790, textScale: 1 },
	{ width: 390, height: 545, textScale: 1 },
	{ width: 320, height: 545, textScale: 1 },
	{ width: 620, height: 790, textScale: 2 }
];

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
		fc.assert(
			fc.property(sites, fc.constantFrom(...SHEETS), fc.boolean(), (site, sheet, withTape) => {
				const draft = { datum: { z: 0, name: 'landing' }, title: 'Your tape', zeroLabel: '0 = landing', terms: [], end: null, reach: site.lowerLevel.depth };
				const e = layoutElevation(site, { ...sheet, tape: withTape ? { kind: 'draft', draft } : { kind: 'none' }, scaleText: null, backdrop: drawBackdrop });
				expect(clashes(e)).toEqual([]);
				for (const t of e.texts) {
					expect(t.box.left).toBeGreaterThanOrEqual(0);
					expect(t.box.right).toBeLessThanOrEqual(e.width);
					expect(t.size).toBeGreaterThanOrEqual(13);
				}
			}),
			{ numRuns: 90, seed: 31 }
		);
	}, 60_000);

	test('every given finds its place on a desktop sheet', () => {
		let missing = 0;
		let all = 0;
		fc.assert(
			fc.property(sites, (site) => {
				const e = layoutElevation(site, { width: 620, height: 790, textScale: 1, tape: { kind: 'none' }, scaleText: null, backdrop: drawBackdrop });
				all += site.dimensions.length;
				missing += e.unplaced.filter((id) => id.startsWith('dimension')).length;
			}),
			{ numRuns: 80, seed: 32 }
		);
		expect(missing / all).toBeLessThan(0.01);
	}, 60_000);

	test('is true to scale: heights, depth and obstacles by one factor, the break apart', () => {
		fc.assert(
			fc.property(sites, (site) => {
				const e = layoutElevation(site, { width: 620, height: 790, textScale: 1, tape: { kind: 'none' }, scaleText: null, backdrop: drawBackdrop });
				const { view } = e;
				const surface = toY(view, 0);
				expect(surface - toY(view, site.worker.standingHeight + site.worker.dRingNow)).toBeCloseTo((site.worker.standingHeight + site.worker.dRingNow) * view.scale, 6);
				const left = view.cut === null ? 0 : view.cut.upper - view.cut.lower;
				const gap = view.cut === null ? 0 : view.cut.gap;
				expect(e.ground.y - surface).toBeCloseTo((site.lowerLevel.depth - left) * view.scale + gap, 6);
			}),
			{ numRuns: 60, seed: 33 }
		);
	}, 60_000);

	test('a break never lies within reach of the fall', () => {
		fc.assert(
			fc.property(sites, (site) => {
				const e = layoutElevation(site, { width: 390, height: 545, textScale: 1, tape: { kind: 'none' }, scaleText: null, backdrop: drawBackdrop });
				if (e.view.cut === null) return;
				const { lanyard, anchorage, worker } = site;
				// Lanyard, connector and body at full length and 2.5 m for everything that stretches or is kept free.
				const reach = lanyard.length + anchorage.connectorLength + worker.dRingHeight + 2.5 - anchorage.height;
				expect(-e.view.cut.upper).toBeGreaterThan(reach);
			}),
			{ numRuns: 80, seed: 34 }
		);
	}, 60_000);
});

describe('view', () => {
	test('rows go back to the heights they came from, on both sides of a break', () => {
		const view = { scale: 50, x0: 0, y0: 200, cut: { upper: -9, lower: -26, gap: 30 } };
		for (const z of [2, 0, -3.3, -8.99, -12, -20, -26.01, -30]) expect(fromY(view, toY(view, z))).toBeCloseTo(z, 9);
	});
});
