import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawBackdrop } from '../../../src/lib/scene/backdrop/draw.ts';
import { toY, type View } from '../../../src/lib/scene/drawing/view.ts';
import { overlaps } from '../../../src/lib/scene/layout/box.ts';
import type { PlacedText } from '../../../src/lib/scene/layout/placer.ts';
import { tapeRoom } from '../../../src/lib/scene/layout/tape-room.ts';
import type { DraftTape, TapeModel, TapePairModel, TapeTerm, TermId } from '../../../src/lib/scene/model.ts';
import { bandOf, ticks } from '../../../src/lib/scene/tape/band.ts';
import { layoutDraft } from '../../../src/lib/scene/tape/draft-layout.ts';
import { legendRows } from '../../../src/lib/scene/tape/legend.ts';
import { compareBands, layoutPair } from '../../../src/lib/scene/tape/pair-layout.ts';

const view: View = { scale: 80, x0: 100, y0: 300, cut: null };
const datum = { z: 0, name: 'landing' };

function term(id: TermId, length: number, sign: 1 | -1 = 1): TapeTerm {
	return { id, sign, length, name: id, label: length.toFixed(2) };
}

function tape(title: string, ...terms: TapeTerm[]): TapeModel {
	const total = terms.reduce((s, t) => s + t.sign * t.length, 0);
	return { datum, terms, total, totalLabel: total.toFixed(2), title };
}

function overlapping(texts: readonly PlacedText[]): string[] {
	return texts.flatMap((a, i) => texts.slice(i + 1).filter((b) => overlaps(a.box, b.box)).map((b) => `"${a.text}" on "${b.text}"`));
}

// The worked plan of the look: free fall 1.40, elongation 1.20, slide 0.30, margin 0.60 (common practice, no source).
const needed = tape('Needed', term('free-fall', 1.4), term('elongation', 1.2), term('stretch', 0.3), term('margin', 0.6));

describe('band', () => {
	test('every term is as long as its number says, at the scale of the drawing', () => {
		const band = bandOf(datum, needed.terms, needed.total, view, 2000);
		expect(band.segments.map((s) => (s.y2 - s.y1) / view.scale)).toEqual([1.4, 1.2, 0.3, 0.6].map((n) => expect.closeTo(n, 9)));
		expect(band.bottom).toBeCloseTo(toY(view, -3.5), 9);
	});

	test('a term taken off goes back up', () => {
		const band = bandOf(datum, [term('lanyard', 2), term('standing', 0.5, -1)], 1.5, view, 2000);
		expect(band.segments[1]).toMatchObject({ back: true, y1: toY(view, -1.5), y2: toY(view, -2) });
	});

	test('a tape longer than the sheet is cut off, not squeezed', () => {
		const band = bandOf(datum, [term('free-fall', 35)], 35, view, 700);
		expect(band).toMatchObject({ cutOff: true, bottom: 700 });
	});

	test('is graduated every 0.05 m, longest at the metre, with figures there only', () => {
		const marks = ticks(datum, toY(view, -2.02), 'metric', view);
		expect(marks).toHaveLength(40);
		expect(marks.filter((t) => t.figure !== '').map((t) => t.figure)).toEqual(['1', '2']);
		expect(marks[19]?.length).toBeGreaterThan(marks[9]?.length ?? 0);
	});

	test('in feet it is graduated every 3 inches', () => {
		const marks = ticks(datum, toY(view, -0.3048 * 2.2), 'us-decimal', view);
		expect(marks).toHaveLength(8);
		expect(marks[3]).toMatchObject({ figure: '1', y: toY(view, -0.3048) });
	});
});

describe('comparison', () => {
	const compare = (own: TapeModel): ReturnType<typeof compareBands> =>
		compareBands(bandOf(datum, needed.terms, needed.total, view, 2000), bandOf(datum, own.terms, own.total, view, 2000));

	test('a term left out narrows to a point where it should have begun; the rest is joined', () => {
		const { wedges, joins } = compare(tape('Your tape', term('free-fall', 1.4), term('stretch', 0.3), term('margin', 0.6)));
		expect(wedges).toHaveLength(1);
		expect(wedges[0]).toMatchObject({ kind: 'missing', term: 'elongation', left: [toY(view, -1.4), toY(view, -2.6)] });
		expect(wedges[0]?.right[0]).toBe(wedges[0]?.right[1]);
		expect(joins).toHaveLength(3);
	});

	test('a doubled term opens towards the learner', () => {
		const { wedges } = compare(tape('Your tape', term('free-fall', 1.4), term('elongation', 1.2), term('stretch', 0.3), term('stretch', 0.3), term('margin', 0.6)));
		expect(wedges).toHaveLength(1);
		expect(wedges[0]).toMatchObject({ kind: 'extra', term: 'stretch' });
		expect(wedges[0]?.left[0]).toBe(wedges[0]?.left[1]);
	});

	test('a wrong value is a band with unequal ends', () => {
		const { wedges } = compare(tape('Your tape', term('free-fall', 2), term('elongation', 1.2), term('stretch', 0.3), term('margin', 0.6)));
		expect(wedges.map((w) => [w.kind, w.term])).toEqual([['unequal', 'free-fall']]);
	});

	test('equal tapes part nowhere', () => {
		expect(compare(needed).wedges).toEqual([]);
	});
});

const IDS: readonly TermId[] = ['free-fall', 'elongation', 'stretch', 'margin', 'body', 'lanyard', 'connector', 'swing-drop', 'other'];
const terms = fc.array(fc.record({ id: fc.constantFrom(...IDS), length: fc.integer({ min: 5, max: 220 }) }), { minLength: 1, maxLength: 7 }).map((list) => list.map((t) => term(t.id, t.length / 100)));

describe('words beside the tapes', () => {
	test('no two overlap, however short the terms', () => {
		fc.assert(
			fc.property(terms, terms, fc.constantFrom(390, 620), fc.constantFrom(1, 1.3), (a, b, width, textScale) => {
				const pair: TapePairModel = {
					needed: tape('Needed', ...a),
					own: tape('Your tape', ...b),
					firstMet: { z: -2.5, label: '2.50', name: 'top of the panels' },
					notes: a[0] === undefined ? [] : [{ id: a[0].id, text: '1.20 missing' }]
				};
				const room = tapeRoom({ width, height: 700, textScale, tape: { kind: 'pair', pair }, scaleText: null, backdrop: drawBackdrop }, width < 480, view.scale);
				if (room === null) throw new Error('a pair of tapes needs room');
				const t = layoutPair(pair, { ...room, left: 0 }, view, 'metric', 3000);
				expect(overlapping(t.texts)).toEqual([]);
			}),
			{ numRuns: 200, seed: 41 }
		);
	});

	test('no two overlap on the tape in work', () => {
		fc.assert(
			fc.property(terms, fc.integer({ min: 10, max: 900 }), fc.constantFrom(390, 620), (list, end, width) => {
				const draft: DraftTape = { datum, title: 'Your tape', zeroLabel: '0 = landing', terms: list, end: { length: end / 100, label: String(end / 100), name: 'Needed' }, reach: 6 };
				const room = tapeRoom({ width, height: 700, textScale: 1, tape: { kind: 'draft', draft }, scaleText: null, backdrop: drawBackdrop }, width < 480, view.scale);
				if (room === null) throw new Error('a tape needs room');
				const t = layoutDraft(draft, room, view, 'metric', 900);
				expect(overlapping([...t.title, ...t.labels.flatMap((l) => l.texts)])).toEqual([]);
			}),
			{ numRuns: 120, seed: 42 }
		);
	});
});

describe('legend', () => {
	test('lists the terms of both tapes once each, in the order of the first', () => {
		const own = tape('Your tape', term('free-fall', 2), term('connector', 0.6));
		expect(legendRows(needed, own).map((r) => [r.term, r.first, r.second])).toEqual([
			['free-fall', '1.40', '2.00'],
			['elongation', '1.20', ''],
			['stretch', '0.30', ''],
			['margin', '0.60', ''],
			['connector', '', '0.60']
		]);
	});
});

describe('a number that no chain explains', () => {
	test('is drawn beside the needed tape without a wedge', () => {
		const own = bandOf(datum, [term('other', 1.2)], 1.2, view, 2000);
		expect(compareBands(bandOf(datum, needed.terms, needed.total, view, 2000), own)).toEqual({ wedges: [], joins: [] });
	});
});

describe('a chain that begins above its datum', () => {
	test('hangs from its highest row, so that its title is not written over', () => {
		const band = bandOf(datum, [term('free-fall', 0.93, -1), term('elongation', 0.95)], 0.02, view, 2000);
		expect(band.hang).toBeCloseTo(toY(view, 0.93), 9);
		expect(band.top).toBeCloseTo(toY(view, 0), 9);
	});
});
