import { describe, expect, it } from 'vitest';
import { REFRESH_DAYS, cellOf, refreshersAhead, refreshersDue, type Mastery } from '#lib/mastery/index.ts';
import { dayNumber, daysAfter } from '#lib/mastery/day.ts';
import { CELL, after, outcome, tries } from '../../support/outcomes.ts';

// Source of the days: learning-and-records.md 5 (fixed 1, 7, 30 days, then every 90).

/** A cell that became ready on a day. */
function readyOn(day: string, cell = CELL): Mastery {
	return after(tries('emh', { day, cell }));
}

/** The first day on which something is due, looked for day by day. */
function firstDue(known: Mastery, from: string): string {
	for (let days = 0; days < 200; days += 1) {
		const today = daysAfter(from, days);
		if (refreshersDue(known, today).length > 0) return today;
	}
	throw new Error('nothing became due within 200 days');
}

describe('the ladder', () => {
	it('has rungs of 1, 7 and 30 days, then of 90', () => {
		expect(REFRESH_DAYS).toEqual([1, 7, 30, 90]);
	});

	it('goes up by each refresher answered right on its day, over the ends of months and years', () => {
		let day = '2025-12-30';
		let known = readyOn(day);
		// Worked by hand: +1, +7, +30, +90, +90, +90 from 30 December 2025.
		for (const next of ['2025-12-31', '2026-01-07', '2026-02-06', '2026-05-07', '2026-08-05', '2026-11-03']) {
			expect(firstDue(known, day)).toBe(next);
			day = next;
			known = after(tries('m', { day }), known);
			expect(refreshersDue(known, day)).toEqual([]);
		}
	});

	it('counts from the day of the answer when a refresher is late', () => {
		const late = after(tries('m', { day: '2026-03-20' }), readyOn('2026-03-02'));
		expect(firstDue(late, '2026-03-20')).toBe('2026-03-27');
	});

	it('starts again from every rung after a wrong answer, on the day or off it', () => {
		for (let rungs = 0; rungs <= 4; rungs += 1) {
			let day = '2026-01-31';
			let known = readyOn(day);
			for (let rung = 0; rung < rungs; rung += 1) {
				day = firstDue(known, day);
				known = after(tries('m', { day }), known);
			}
			for (const on of [firstDue(known, day), daysAfter(day, 0)]) {
				const wrong = after(tries('M', { day: on }), known);
				expect(firstDue(wrong, on)).toBe(daysAfter(on, 1));
				const right = after(tries('m', { day: daysAfter(on, 1) }), wrong);
				expect(firstDue(right, daysAfter(on, 1))).toBe(daysAfter(on, 8));
			}
		}
	});

	it('is not moved by what is right before the day, nor by an aided answer on it', () => {
		const known = readyOn('2026-03-02');
		expect(firstDue(after(tries('mm', { day: '2026-03-02' }), known), '2026-03-02')).toBe('2026-03-03');
		const aided = after([outcome({ day: '2026-03-03', aided: true })], known);
		expect(refreshersDue(aided, '2026-03-03')).toHaveLength(1);
		const aidedWrong = after([outcome({ day: '2026-03-03', aided: true, right: false })], known);
		expect(refreshersDue(aidedWrong, '2026-03-04')).toEqual([{ cell: CELL, since: '2026-03-03', overdue: 1 }]);
	});

	it('takes one rung a day, however many are right on it', () => {
		const known = after(tries('mhm', { day: '2026-03-03' }), readyOn('2026-03-02'));
		expect(firstDue(known, '2026-03-03')).toBe('2026-03-10');
	});

	it('is not begun by a cell that was never ready', () => {
		const known = after(tries('emHEeM'));
		expect(cellOf(known, CELL).refresh).toBeNull();
		expect(refreshersDue(known, '2030-01-01')).toEqual([]);
	});

	it('brings nothing forward when a clock is set back', () => {
		const known = readyOn('2026-03-02');
		expect(firstDue(after(tries('M', { day: '2026-02-01' }), known), '2026-02-01')).toBe('2026-03-03');
	});
});

describe('what is due', () => {
	const cells = after(
		[
			...tries('emh', { day: '2024-02-28', cell: 'swing' }),
			...tries('emh', { day: '2024-02-25', cell: 'force' }),
			...tries('emh', { day: '2024-02-25', cell: 'decisions' }),
			...tries('emh', { day: '2024-02-29', cell: 'stages' })
		]
	);

	it('comes with the longest overdue first', () => {
		// 2024 is a leap year: 29 February is the day after the 28th.
		expect(refreshersDue(cells, '2024-02-29')).toEqual([
			{ cell: 'decisions', since: '2024-02-26', overdue: 3 },
			{ cell: 'force', since: '2024-02-26', overdue: 3 },
			{ cell: 'swing', since: '2024-02-29', overdue: 0 }
		]);
	});

	it('stays due until it is answered', () => {
		expect(refreshersDue(cells, '2025-02-28').map((due) => due.overdue)).toEqual([368, 368, 365, 364]);
	});

	it('is known ahead', () => {
		expect(refreshersAhead(cells)).toEqual([
			{ cell: 'decisions', on: '2024-02-26' },
			{ cell: 'force', on: '2024-02-26' },
			{ cell: 'swing', on: '2024-02-29' },
			{ cell: 'stages', on: '2024-03-01' }
		]);
	});

	it('asks for a date', () => {
		expect(() => refreshersDue(cells, '29.2.2024')).toThrow('write it as YYYY-MM-DD');
	});
});

describe('days', () => {
	it('follow each other as in the calendar of the platform, leap years and ends of centuries included', () => {
		for (const start of ['1899-12-25', '1999-12-25', '2026-01-01', '2099-12-25']) {
			let day = start;
			for (let count = 0; count < 1500; count += 1) {
				const next = new Date(Date.parse(day) + 86_400_000).toISOString().slice(0, 10);
				expect(daysAfter(day, 1)).toBe(next);
				expect(dayNumber(next) - dayNumber(day)).toBe(1);
				day = next;
			}
			expect(daysAfter(start, 1500)).toBe(day);
		}
	});
});
