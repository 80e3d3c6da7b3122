import { describe, expect, test } from 'vitest';
import { toY } from '../../../src/lib/scene/drawing/view.ts';
import { overlaps } from '../../../src/lib/scene/layout/box.ts';
import type { PlaybackCase, PlaybackModel } from '../../../src/lib/scene/model.ts';
import { instantAt } from '../../../src/lib/scene/playback/instant.ts';
import { marksOf } from '../../../src/lib/scene/playback/marks.ts';
import { layoutStrip, type StripOptions } from '../../../src/lib/scene/playback/strip-layout.ts';

const G = 9.80665;
const TIGHT = Math.sqrt((2 * 1.4) / G);

/** Free fall of 1.40 m, then a steady stop over 1.20 m in which the ring slides 0.30 m: made up for the test. */
function fall(duration: number): PlaybackCase {
	const v = G * TIGHT;
	const slow = (v * v) / (2 * 1.2);
	return {
		id: 'site',
		name: 'This site',
		duration,
		at: (t) => {
			const s = Math.min(Math.max(0, t - TIGHT), v / slow);
			const deployed = t <= TIGHT ? 0 : v * s - (slow * s * s) / 2;
			const down = t <= TIGHT ? (G * t * t) / 2 : 1.4 + deployed;
			const slid = (0.3 * deployed) / 1.2;
			return {
				dRing: { x: 0, z: 1.5 - down },
				soles: { x: 0, z: -down - slid },
				speed: t <= TIGHT ? G * t : v - slow * s,
				deployed,
				slid,
				phase: t < TIGHT ? 'free-fall' : 'stopping'
			};
		},
		events: [
			{ id: 'start', t: 0, name: '' },
			{ id: 'lanyard-tight', t: TIGHT, name: 'lanyard tight' },
			{ id: 'contact', t: duration, name: 'feet on panels' }
		],
		levels: [
			{ z: 0, name: 'landing', kind: 'surface' },
			{ z: -2.5, name: 'panels', kind: 'obstacle' },
			{ z: -3.7, name: 'ground', kind: 'ground' }
		],
		learner: { z: -2.3, text: 'your 2.30 m: still 3.3 m/s' }
	};
}

const model: PlaybackModel = {
	worker: { dRingHeight: 1.5, dRingNow: 1.5, stature: 1.85, posture: 'standing', standingHeight: 0, offset: 0 },
	anchorage: { height: 2.1, connectorLength: 0, connectorLies: 'hanging' },
	lanyard: { length: 2 },
	cases: [fall(0.78)]
};

const options: StripOptions = {
	width: 420,
	height: 420,
	textScale: 1,
	timeText: (t) => t.toFixed(2),
	speedText: (v) => v.toFixed(1),
	rows: ['time, s', 'speed, m/s'],
	shortRows: ['s', 'm/s']
};

describe('marks', () => {
	test('every event is a mark, and regular marks keep half a step from them', () => {
		const marks = marksOf(fall(0.81), 0.1);
		const times = marks.map((m) => m.t);
		expect(times[0]).toBe(0);
		expect(times).toContain(TIGHT);
		expect(times[times.length - 1]).toBe(0.81);
		for (const m of marks.filter((x) => x.events.length === 0)) {
			expect(Math.abs(m.t - TIGHT)).toBeGreaterThan(0.049);
		}
		expect([...times].sort((a, b) => a - b)).toEqual(times);
	});

	test('where the learner level is passed there is a stop for the scrubber, but no figure', () => {
		const base = fall(0.81);
		const marks = marksOf({ ...base, events: [...base.events, { id: 'passes-learner-level', t: 0.68, name: '' }] }, 0.1);
		expect(marks.find((m) => m.t === 0.68)?.figure).toBe(false);
	});
});

describe('strip', () => {
	const strip = layoutStrip(model, fall(0.78), options);

	test('heights are true to scale and the soles lie on the curve', () => {
		for (const m of strip.marks) {
			expect(m.soles.y).toBeCloseTo(toY(strip.view, fall(0.78).at(m.t).soles.z), 9);
		}
		const surface = strip.levels.find((l) => l.kind === 'surface');
		const ground = strip.levels.find((l) => l.kind === 'ground');
		expect((ground?.y ?? 0) - (surface?.y ?? 0)).toBeCloseTo(3.7 * strip.view.scale, 9);
	});

	test('the diamond stands where the soles pass the learner level', () => {
		const { diamond } = strip.learner ?? { diamond: null };
		expect(diamond?.y).toBeCloseTo(toY(strip.view, -2.3), 9);
		const t = strip.marks.map((m) => m.t);
		expect(diamond?.x).toBeGreaterThan(strip.xOf(TIGHT));
		expect(diamond?.x).toBeLessThan(strip.xOf(t[t.length - 1] ?? 0));
	});

	test.each([320, 390, 460, 700])('at %i px no two numbers or names overlap', (width) => {
		const s = layoutStrip(model, fall(0.78), { ...options, width });
		const texts = [...s.marks.flatMap((m) => m.numbers), ...s.rowLabels, ...s.uprights.flatMap((u) => u.words)];
		texts.forEach((a, i) => {
			for (const b of texts.slice(i + 1)) expect(overlaps(a.box, b.box), `"${a.text}" on "${b.text}"`).toBe(false);
		});
		for (const t of texts) {
			expect(t.box.right).toBeLessThanOrEqual(width);
			expect(t.box.left).toBeGreaterThanOrEqual(0);
		}
	});
});

describe('instant', () => {
	test('the soles of the figure are where the simulation has them, at every time', () => {
		for (const t of [0, 0.1, 0.3, 0.5, TIGHT, 0.6, 0.7, 0.78]) {
			const i = instantAt(model, fall(0.78), t);
			const lowest = Math.min(...i.shape.extent.map((s) => s.v)) + i.dRing.z;
			expect(lowest).toBeCloseTo(i.frame.soles.z, 6);
		}
	});

	test('the line is slack before it is tight and straight after', () => {
		expect(instantAt(model, fall(0.78), 0.2).slack.length).toBeGreaterThan(2);
		expect(instantAt(model, fall(0.78), 0.7).slack).toEqual([]);
		expect(instantAt(model, fall(0.78), 0.7).zigzag.length).toBeGreaterThan(2);
	});
});
