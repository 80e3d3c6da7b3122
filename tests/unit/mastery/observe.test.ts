import { describe, expect, it } from 'vitest';
import {
	NOTHING_KNOWN,
	STUCK_AFTER,
	cellOf,
	isMastered,
	isReady,
	isStuck,
	observe,
	readySince,
	rowOf,
	skillOf,
	type Credit
} from '#lib/mastery/index.ts';
import { CELL, after, outcome, tries } from '../../support/outcomes.ts';

// Source of all rules here: learning-and-records.md 5 and 5.1, DESIGN 6, or common practice, no source.

function credit(cell: string, skills: readonly string[], right: boolean, guess?: number): Credit {
	return { cell, skills, right, ...(guess === undefined ? {} : { guess }) };
}

describe('one problem with several asks', () => {
	const both = (first: boolean, second: boolean) =>
		after([
			outcome({ credits: [credit('mass', ['tools'], first), credit('mass', ['capacity'], second), credit('force', ['peak'], true)] })
		]);

	it('is one observation of a cell, right only if all its asks are', () => {
		expect(cellOf(both(true, true), 'mass').p).toBeCloseTo(0.904, 3);
		expect(cellOf(both(true, false), 'mass').p).toBeCloseTo(0.18, 2);
		expect(cellOf(both(false, false), 'mass').p).toBeCloseTo(0.18, 2);
		expect(cellOf(both(true, true), 'mass').seen).toBe(1);
	});

	it('credits every cell that it asks for', () => {
		expect(cellOf(both(false, true), 'force').p).toBeCloseTo(0.904, 3);
		expect(cellOf(both(false, true), 'swing')).toEqual(cellOf(NOTHING_KNOWN, 'swing'));
	});

	it('keeps the finer skill of the right ask clear of the wrong one', () => {
		const known = both(true, false);
		expect(skillOf(known, 'tools').p).toBeCloseTo(0.904, 3);
		expect(skillOf(known, 'capacity').p).toBeCloseTo(0.18, 2);
	});

	it('blames the least certain skill and leaves the proven one as it was', () => {
		const proven = after(tries('em'));
		const known = observe(proven, outcome({ credits: [credit(CELL, ['subtract-heights', 'connector'], false)] }));
		expect(skillOf(known, 'connector').p).toBeCloseTo(0.18, 2);
		expect(skillOf(known, 'subtract-heights')).toEqual({ ...skillOf(proven, 'subtract-heights'), seen: 3 });
	});

	it('blames all that are as uncertain, and speaks for all when right', () => {
		const asked = (right: boolean) => after([outcome({ credits: [credit(CELL, ['connector', 'offset'], right)] })]);
		for (const skill of ['connector', 'offset']) {
			expect(skillOf(asked(false), skill).p).toBeCloseTo(0.18, 2);
			expect(skillOf(asked(true), skill).p).toBeCloseTo(0.904, 3);
		}
	});

	it('takes the lowest estimate for a skill that two asks need', () => {
		const known = after([outcome({ credits: [credit('a', ['datum'], true), credit('b', ['datum'], false)] })]);
		expect(skillOf(known, 'datum').p).toBeCloseTo(0.18, 2);
		expect(skillOf(known, 'datum').seen).toBe(1);
	});

	it('is no evidence of anything when nothing is credited', () => {
		const known = after([outcome({ task: 'x', kind: 'y', credits: [] })]);
		expect(known).toEqual({ ...NOTHING_KNOWN, last: { task: 'x', kind: 'y' } });
	});
});

describe('help', () => {
	it('keeps the estimate when right and lowers it when wrong', () => {
		const before = after(tries('em'));
		const right = observe(before, outcome({ aided: true }));
		const wrong = observe(before, outcome({ aided: true, right: false }));
		expect(cellOf(right, CELL).p).toBe(cellOf(before, CELL).p);
		expect(cellOf(wrong, CELL).p).toBeLessThan(cellOf(before, CELL).p);
	});

	it('does not count toward the row, nor break it when right', () => {
		const known = after([...tries('em'), outcome({ aided: true, difficulty: 'hard' })]);
		expect(rowOf(known, CELL)).toEqual({ right: 2, needed: 3 });
		expect(isReady(known, CELL)).toBe(false);
		expect(isReady(after(tries('h'), known), CELL)).toBe(true);
	});

	it('ends the row and readiness when the answer is wrong in spite of it', () => {
		const known = after([...tries('emh'), outcome({ aided: true, right: false })]);
		expect(isReady(known, CELL)).toBe(false);
		expect(rowOf(known, CELL).right).toBe(0);
	});

	it('never makes ready, however often', () => {
		const known = after(Array.from({ length: 200 }, () => outcome({ aided: true, difficulty: 'hard' })));
		expect(isReady(known, CELL)).toBe(false);
		expect(cellOf(known, CELL).p).toBe(0.3);
	});
});

describe('ready', () => {
	it('needs three in a row over two difficulties', () => {
		expect(isReady(after(tries('em')), CELL)).toBe(false);
		expect(isReady(after(tries('eee')), CELL)).toBe(false);
		expect(isReady(after(tries('eem')), CELL)).toBe(true);
		expect(isReady(after(tries('emE')), CELL)).toBe(false);
		expect(isReady(after(tries('emHmm')), CELL)).toBe(false);
		expect(isReady(after(tries('emHemm')), CELL)).toBe(true);
	});

	it('is reached by three in a row from the lowest estimate', () => {
		const low = after(Array.from({ length: 10 }, () => outcome({ right: false, aided: true, task: 'again' })), after(tries('E')));
		expect(cellOf(low, CELL).p).toBeLessThan(1e-6);
		expect(isReady(after(tries('emh'), low), CELL)).toBe(true);
	});

	it('is not lost by a right answer, and is by a wrong one', () => {
		expect(isReady(after(tries('emhhhhh')), CELL)).toBe(true);
		expect(isReady(after(tries('emhH')), CELL)).toBe(false);
	});

	it('leaves open what it opened when it is lost', () => {
		const known = after([...tries('emh'), ...tries('H', { day: '2026-03-05' })]);
		expect(readySince(known, CELL)).toBe('2026-03-02');
		expect(readySince(after(tries('em')), CELL)).toBeUndefined();
	});

	it('needs a longer row of answers that are easy to guess', () => {
		const guess = 0.3;
		const easy = (count: number) =>
			Array.from({ length: count }, (_, i) =>
				outcome({ difficulty: i % 2 === 0 ? 'easy' : 'middle', credits: [credit(CELL, [], true, guess)] })
			);
		// 0.3 to the ninth is 2 in 100,000, to the tenth 6 in a million; the bound is one in 100,000.
		expect(isReady(after(easy(9)), CELL)).toBe(false);
		expect(isReady(after(easy(10)), CELL)).toBe(true);
		// 0.3 · 0.02 · 0.02 is 1.2 in 10,000: one more number is needed.
		expect(rowOf(after(easy(1)), CELL)).toEqual({ right: 1, needed: 4 });
		expect(isReady(after([...easy(1), ...tries('mh')]), CELL)).toBe(false);
		expect(isReady(after([...easy(1), ...tries('mhm')]), CELL)).toBe(true);
	});

	it('counts two numbers of one problem as harder to guess, and still as one of the row', () => {
		const both = [credit(CELL, [], true), credit(CELL, [], true)];
		const known = after([outcome({ credits: both }), outcome({ credits: both, difficulty: 'hard' })]);
		expect(rowOf(known, CELL)).toEqual({ right: 2, needed: 3 });
		expect(isReady(known, CELL)).toBe(false);
	});

	it('is told cell by cell', () => {
		const known = after(tries('emh'));
		expect(isReady(known, 'swing')).toBe(false);
	});
});

describe('mastered', () => {
	const ready = after(tries('emh'));

	it('needs a right answer alone on a later day', () => {
		expect(isMastered(ready, CELL)).toBe(false);
		expect(isMastered(after(tries('hhh'), ready), CELL)).toBe(false);
		expect(isMastered(after(tries('h', { day: '2026-03-03' }), ready), CELL)).toBe(true);
		expect(isMastered(after([outcome({ day: '2026-03-03', aided: true })], ready), CELL)).toBe(false);
	});

	it('is lost by a wrong answer and won back by a whole row', () => {
		const lost = after(tries('hH', { day: '2026-03-03' }), ready);
		expect(isMastered(lost, CELL)).toBe(false);
		expect(isMastered(after(tries('em', { day: '2026-03-03' }), lost), CELL)).toBe(false);
		expect(isMastered(after(tries('emh', { day: '2026-03-03' }), lost), CELL)).toBe(true);
	});

	it('is not gained by a clock set back', () => {
		expect(isMastered(after(tries('h', { day: '2026-03-01' }), ready), CELL)).toBe(false);
	});
});

describe('stuck', () => {
	const wrong = (count: number) => after(Array.from({ length: count }, () => outcome({ right: false })));

	it('is a cell after more than 25 problems without being ready', () => {
		expect(isStuck(wrong(STUCK_AFTER), CELL)).toBe(false);
		expect(isStuck(wrong(STUCK_AFTER + 1), CELL)).toBe(true);
	});

	it('does not count the same problem tried again', () => {
		const again = Array.from({ length: 40 }, () => outcome({ right: false, aided: true }));
		expect(isStuck(after([outcome({ right: false }), ...again]), CELL)).toBe(false);
	});

	it('asks for a row of four', () => {
		const known = wrong(STUCK_AFTER + 1);
		expect(rowOf(known, CELL)).toEqual({ right: 0, needed: 4 });
		expect(isReady(after(tries('emh'), known), CELL)).toBe(false);
		expect(isReady(after(tries('emhh'), known), CELL)).toBe(true);
		expect(isStuck(after(tries('emhh'), known), CELL)).toBe(false);
	});

	it('is never said of a cell that was ready once', () => {
		const known = after([...tries('emh'), ...Array.from({ length: 40 }, () => outcome({ right: false }))]);
		expect(isStuck(known, CELL)).toBe(false);
	});
});

describe('what comes in', () => {
	it('is refused when its day is no date', () => {
		for (const day of ['2026-02-29', '2026-13-01', '2026-1-1', 'today', '2026-03-02T10:00', '2026-00-10', '2026-04-31']) {
			expect(() => observe(NOTHING_KNOWN, outcome({ day }))).toThrow(RangeError);
		}
	});

	it('may name cells as it likes', () => {
		for (const cell of ['constructor', '__proto__', 'toString', '']) {
			const known = after(tries('emh', { cell }));
			expect(isReady(known, cell)).toBe(true);
			expect(cellOf(NOTHING_KNOWN, cell).seen).toBe(0);
		}
	});
});
