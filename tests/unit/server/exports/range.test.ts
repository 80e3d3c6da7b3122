import { describe, expect, it } from 'vitest';
import { dayIn } from '#lib/server/course/day.ts';
import { ALL_DAYS, readRange, spanOf } from '#lib/server/exports/range.ts';

describe('days of an export', () => {
	it('may be left out, on either side or on both', () => {
		expect(readRange('', ' ')).toEqual({ kind: 'read', range: ALL_DAYS });
		expect(readRange('2026-03-01', '')).toEqual({ kind: 'read', range: { from: '2026-03-01', to: '9999-12-31' } });
		expect(readRange('2026-03-01', '2026-03-01')).toEqual({ kind: 'read', range: { from: '2026-03-01', to: '2026-03-01' } });
	});

	it('are days that a calendar has, in their order', () => {
		for (const wrong of ['2026-02-29', '2026-13-01', '14.3.2026', '2026-3-1', "2026-03-01'", '0000-00-00', '2026-03-01T00:00']) {
			expect(readRange(wrong, ''), wrong).toEqual({ kind: 'refused', field: 'from', problem: 'not-a-day' });
			expect(readRange('', wrong), wrong).toEqual({ kind: 'refused', field: 'to', problem: 'not-a-day' });
		}
		expect(readRange('2026-03-02', '2026-03-01')).toEqual({ kind: 'refused', field: 'to', problem: 'ends-before' });
		// 2028 is a leap year: Gregorian calendar.
		expect(readRange('2028-02-29', '').kind).toBe('read');
	});

	// IANA time zone data: offsets of these zones, from memory; days have 23, 24 or 25 hours where clocks change.
	it('begin and end at local midnight, also where clocks change that night', () => {
		expect(spanOf('UTC', { from: '2026-03-01', to: '2026-03-31' })).toEqual({ from: '2026-03-01T00:00:00.000Z', before: '2026-04-01T00:00:00.000Z' });
		expect(spanOf('America/Denver', { from: '2026-03-08', to: '2026-03-08' })).toEqual({ from: '2026-03-08T07:00:00.000Z', before: '2026-03-09T06:00:00.000Z' });
		expect(spanOf('America/Denver', { from: '2026-11-01', to: '2026-11-01' })).toEqual({ from: '2026-11-01T06:00:00.000Z', before: '2026-11-02T07:00:00.000Z' });
		expect(spanOf('Pacific/Kiritimati', { from: '2026-01-01', to: '2026-01-01' })).toEqual({ from: '2025-12-31T10:00:00.000Z', before: '2026-01-01T10:00:00.000Z' });
		// A day that begins at one o'clock: Cairo put its clocks ahead at midnight on 26 April 2024.
		expect(spanOf('Africa/Cairo', { from: '2024-04-26', to: '2024-04-26' }).from).toBe('2024-04-25T22:00:00.000Z');
	});

	it('without a bound have no bound in time either', () => {
		expect(spanOf('America/Denver', ALL_DAYS)).toEqual({ from: null, before: null });
	});

	it('hold just what is of these days', () => {
		for (const zone of ['Asia/Kathmandu', 'America/St_Johns', 'Pacific/Chatham']) {
			const { from, before } = spanOf(zone, { from: '2026-06-10', to: '2026-06-12' });
			const days = [-1, 0].flatMap((late) => [from, before].map((at) => dayIn(zone, new Date(Date.parse(at ?? '') + late))));
			expect(days, zone).toEqual(['2026-06-09', '2026-06-12', '2026-06-10', '2026-06-13']);
		}
	});
});
