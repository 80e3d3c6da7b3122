import { render } from 'svelte/server';
import { describe, expect, test } from 'vitest';
import GivensTable from '../../../src/lib/scene/GivensTable.svelte';
import HatchSwatch from '../../../src/lib/scene/hatch/HatchSwatch.svelte';
import type { SiteModel, TapeModel, TermId } from '../../../src/lib/scene/model.ts';
import SiteDrawing from '../../../src/lib/scene/SiteDrawing.svelte';
import StepTable from '../../../src/lib/scene/StepTable.svelte';
import { BACKDROP_IDS } from './sites.ts';

const site = (part: Partial<SiteModel> = {}): SiteModel => ({
	units: 'metric',
	language: 'en',
	backdrop: 'bridge-bearing',
	worker: { dRingHeight: 1.5, dRingNow: 1.5, stature: 1.85, posture: 'standing', standingHeight: 0, offset: 0 },
	anchorage: { height: 2.1, connectorLength: 0, connectorLies: 'hanging' },
	lanyard: { length: 2 },
	lowerLevel: { depth: 3.7, name: 'ground' },
	obstacles: [{ id: 'panels', name: 'stacked panels', kind: 'stack', top: 1.2, from: 0, to: 1, sometimes: false, there: true }],
	dimensions: [
		{ id: 'ring', axis: 'vertical', from: 'surface', to: { z: 1.5 }, label: '1.50', name: 'D-ring' },
		{ id: 'anchor', axis: 'vertical', from: 'surface', to: { z: 2.1 }, label: '2.10', name: 'anchorage' },
		{ id: 'depth', axis: 'vertical', from: 'lower-level', to: { z: 0 }, label: '3.70', name: '' }
	],
	levels: [
		{ z: 0, name: 'landing' },
		{ z: -3.7, name: 'ground' }
	],
	...part
});

const words = { title: 'Pier 2', description: 'An elevation to scale.', scale: '2 m. Elevation to scale.' };

function drawn(model: SiteModel, more: object = {}): string {
	return render(SiteDrawing, { props: { site: model, words, width: 620, height: 780, ...more } }).body;
}

describe('site drawing', () => {
	test.each(BACKDROP_IDS)('%s is drawn in every sight without a broken number', (backdrop) => {
		const low = { height: 0.5, connectorLength: 0, connectorLies: 'hanging' as const };
		const kneeling = { ...site().worker, posture: 'kneeling' as const, dRingNow: 0.85 };
		for (const model of [site({ backdrop }), site({ backdrop, worker: { ...site().worker, offset: 1.1 } }), site({ backdrop, anchorage: low }), site({ backdrop, worker: kneeling })]) {
			const html = drawn(model);
			expect(html).not.toMatch(/NaN|undefined|Infinity/);
			expect(html).toContain('1.50');
		}
	});

	test('has a name and a description for those who do not see it', () => {
		const html = drawn(site());
		expect(html).toMatch(/role="img"/);
		expect(html).toContain('<title id=');
		expect(html).toContain('An elevation to scale.');
	});

	test('shows every given, in the drawing or under it, at any width', () => {
		for (const width of [280, 320, 390, 620]) {
			const html = drawn(site(), { width, height: 500 });
			for (const label of ['1.50', '2.10', '3.70']) expect(html).toContain(label);
		}
	});

	test('shows both tapes, what is missing, and the first thing met', () => {
		const term = (id: TermId, length: number) => ({ id, sign: 1 as const, length, name: id, label: length.toFixed(2) });
		const tape = (title: string, terms: readonly ReturnType<typeof term>[], total: number): TapeModel => ({ datum: { z: 0, name: 'landing' }, title, terms, total, totalLabel: total.toFixed(2) });
		const rest = [term('stretch', 0.3), term('margin', 0.6)];
		const html = drawn(site(), {
			tape: {
				kind: 'pair',
				pair: {
					needed: tape('Needed', [term('free-fall', 1.4), term('elongation', 1.2), ...rest], 3.5),
					own: tape('Your tape', [term('free-fall', 1.4), ...rest], 2.3),
					firstMet: { z: -2.5, label: '2.50', name: 'top of the panels' },
					notes: [{ id: 'elongation', text: '1.20 missing' }]
				}
			}
		});
		for (const text of ['Needed', '3.50', 'Your tape', '2.30', '1.20 missing', '2.50']) expect(html).toContain(text);
		expect(html).not.toMatch(/NaN|undefined/);
	});
});

describe('tables', () => {
	test('a step says in words where the two part', () => {
		const html = render(StepTable, {
			props: {
				caption: 'Steps',
				columns: ['Step', 'Needed', 'You'],
				rows: [{ id: 'elongation', kind: 'term', term: 'elongation', name: 'Elongation', working: 'lanyard label', value: '1.20', own: 'you: left out', differs: true }]
			}
		}).body;
		for (const text of ['Elongation', 'lanyard label', '1.20', 'you: left out']) expect(html).toContain(text);
	});

	test('the list of givens is a table with row heads', () => {
		const html = render(GivensTable, { props: { caption: 'All numbers', columns: ['What', 'Value'], rows: [{ id: 'l', name: 'Lanyard length', value: '2.00 m' }] } }).body;
		expect(html).toMatch(/<th scope="row"[^>]*>\s*Lanyard length/);
		expect(html).toContain('2.00 m');
	});

	test('a swatch is an ornament to a screen reader: its name stands beside it', () => {
		expect(render(HatchSwatch, { props: { term: 'margin' } }).body).toContain('aria-hidden="true"');
	});
});
