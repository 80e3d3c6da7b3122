import { describe, expect, test } from 'vitest';
import { addAsk, askFor, restOn, withoutAsk } from '../../../../src/routes/crew/scenarios/[scenario]/model/asks.ts';
import { aimShares, failShare, withFailShare } from '../../../../src/routes/crew/scenarios/[scenario]/model/aims.ts';
import { addDecoy, decoyAs, decoyGivens, decoyKind } from '../../../../src/routes/crew/scenarios/[scenario]/model/decoys.ts';
import { at, type Json } from '../../../../src/routes/crew/scenarios/[scenario]/model/document.ts';

const PLAN: Json = {
	units: 'metric',
	base: { margin: '1 m' },
	decoys: [],
	aims: [{ fails: 'nothing', weight: 5 }, { fails: 'clearance', weight: 4 }, { fails: 'rescue', weight: 1 }],
	asks: [
		{ id: 'free-fall', cell: 'free-fall', kind: 'number', quantity: 'freeFall', precision: { value: 0.01, unit: 'm' } },
		{ id: 'decision', cell: 'decisions', kind: 'decision', with: ['free-fall'] }
	]
};
const TABLES = { limit: 'eu.free-fall', practice: 'canada', class: 'en-355' };

describe('what is asked', () => {
	test('gets a new number before the decision, which rests on it', () => {
		const more = addAsk(PLAN, 'requiredClearance');
		expect(at(more, ['asks', 1])).toEqual({
			id: 'required-clearance',
			cell: 'required-clearance',
			kind: 'number',
			quantity: 'requiredClearance',
			datum: 'surface',
			precision: { value: 0.01, unit: 'm' }
		});
		expect(at(more, ['asks', 2, 'with'])).toEqual(['free-fall', 'required-clearance']);
		expect(at(addAsk(PLAN, 'freeFall'), ['asks', 1, 'id'])).toBe('free-fall-2');
		expect(addAsk(PLAN, 'toString')).toBe(PLAN);
	});

	test('changes its quantity: datum and step follow', () => {
		const clearance = askFor(PLAN, 0, 'availableClearance');
		expect(at(clearance, ['asks', 0])).toEqual({ id: 'free-fall', cell: 'free-fall', kind: 'number', quantity: 'availableClearance', precision: { value: 0.01, unit: 'm' }, datum: 'surface' });
		const mass = askFor(clearance, 0, 'massAttached');
		expect(at(mass, ['asks', 0, 'datum'])).toBeUndefined();
		expect(at(mass, ['asks', 0, 'precision'])).toEqual({ value: 1, unit: 'kg' });
	});

	test('loses a number, and no decision rests on it any more', () => {
		expect(at(withoutAsk(PLAN, 0), ['asks'])).toEqual([{ id: 'decision', cell: 'decisions', kind: 'decision', with: [] }]);
		expect(at(restOn(PLAN, 1, 'free-fall', false), ['asks', 1, 'with'])).toEqual([]);
		expect(restOn(PLAN, 1, 'free-fall', true)).toBe(PLAN);
	});
});

describe('how the draws come out', () => {
	test('is told in shares of all draws', () => {
		expect(aimShares(PLAN).map((one) => one.share)).toEqual([0.5, 0.4, 0.1]);
		expect(failShare(PLAN)).toBeCloseTo(0.5, 12);
	});

	test('takes another share, and what fails keeps its proportions', () => {
		const third = withFailShare(PLAN, 1 / 3);
		expect(failShare(third)).toBeCloseTo(1 / 3, 12);
		const [, clearance, rescue] = aimShares(third);
		expect((clearance?.weight ?? 0) / (rescue?.weight ?? 1)).toBe(4);
		expect(at(withFailShare(PLAN, 0), ['aims'])).toEqual([{ fails: 'nothing', weight: 1 }]);
	});

	test('where nothing failed, draws fail by clearance', () => {
		expect(at(withFailShare({ aims: [] }, 1 / 2), ['aims'])).toEqual([{ fails: 'nothing', weight: 1 }, { fails: 'clearance', weight: 1 }]);
	});
});

describe('numbers that lead astray', () => {
	test('are those that the plan has no place for, or does not state', () => {
		expect(decoyGivens(PLAN)).toContain('otherMargin');
		expect(decoyGivens(PLAN)).toContain('margin');
		expect(decoyGivens(PLAN)).not.toContain('bodyMass');
	});

	test('come out of a table where there is one, and can be amounts and ranges', () => {
		const decoy = addDecoy(PLAN, 'otherMargin', TABLES);
		expect(at(decoy, ['decoys', 0])).toEqual({ given: 'otherMargin', practice: 'canada' });
		const range = decoyAs(decoy, 0, 'range', TABLES);
		expect(decoyKind(range, 0)).toBe('range');
		expect(at(range, ['decoys', 0])).toEqual({ given: 'otherMargin', from: 1, to: 2, step: 0.05, unit: 'm' });
		expect(at(decoyAs(range, 0, 'value', TABLES), ['decoys', 0])).toEqual({ given: 'otherMargin', value: { value: 1, unit: 'm' } });
		expect(at(addDecoy(PLAN, 'freeFallLimit', TABLES), ['decoys', 0])).toEqual({ given: 'freeFallLimit', limit: 'eu.free-fall' });
	});
});
