import { describe, expect, it } from 'vitest';
import { remarkOn } from '#lib/server/records/remark.ts';

const remark = (until: string, today: string) => remarkOn({ gone: false, until, due: null, detail: '' }, until < today ? 'expired' : 'current', null, today);

// Days and whole months by hand, from a calendar. Common practice, no source.
describe('how long a training is valid, or was', () => {
	it.each([
		['2026-11-30', '2027-01-29', { kind: 'days-left', n: 60 }],
		['2026-11-30', '2027-01-30', { kind: 'months-left', n: 2 }],
		['2026-12-01', '2027-02-28', { kind: 'months-left', n: 2 }],
		// A month that has no such day ends with its last one: 31 August and six months is 28 February.
		['2026-08-31', '2027-02-28', { kind: 'months-left', n: 6 }],
		['2026-08-31', '2027-02-27', { kind: 'months-left', n: 5 }],
		['2028-02-29', '2029-02-28', { kind: 'months-left', n: 12 }],
		['2026-12-31', '2028-01-01', { kind: 'months-left', n: 12 }]
	] as const)('on %s, until %s', (today, until, told) => {
		expect(remark(until, today)).toEqual(told);
		const { kind, n } = told;
		expect(remark(today, until)).toEqual({ kind: kind === 'days-left' ? 'days-ago' : 'months-ago', n });
	});

	it('an end as late as a form takes is told in months that there are', () => {
		expect(remark('9999-12-30', '2026-11-30')).toEqual({ kind: 'months-left', n: 95_677 });
		expect(remark('9999-12-29', '2026-11-30')).toEqual({ kind: 'months-left', n: 95_676 });
	});
});
