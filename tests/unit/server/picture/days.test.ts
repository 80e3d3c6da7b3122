import { describe, expect, it } from 'vitest';
import { dayAfter, dayStart, isDay } from '#lib/server/picture/days.ts';
import { readFilter } from '#lib/server/picture/filter.ts';

/** Changes of clocks: IANA time zone database. */
describe('a day at the site', () => {
	it.each([
		['UTC', '2026-11-25', '2026-11-25T00:00:00.000Z'],
		['America/Bogota', '2026-11-25', '2026-11-25T05:00:00.000Z'],
		['Asia/Kolkata', '2026-11-25', '2026-11-24T18:30:00.000Z'],
		['Pacific/Auckland', '2026-11-25', '2026-11-24T11:00:00.000Z'],
		['America/New_York', '2026-07-04', '2026-07-04T04:00:00.000Z'],
		// The day on which clocks go forward, and the one after it.
		['America/New_York', '2026-03-08', '2026-03-08T05:00:00.000Z'],
		['America/New_York', '2026-03-09', '2026-03-09T04:00:00.000Z'],
		// There they went forward at midnight: the day began at one.
		['America/Sao_Paulo', '2018-11-04', '2018-11-04T03:00:00.000Z'],
		// And back at midnight: the day before had its last hour twice.
		['America/Sao_Paulo', '2018-02-18', '2018-02-18T03:00:00.000Z']
	])('begins in %s on %s at %s', (zone, day, at) => {
		expect(dayStart(zone, day)).toBe(at);
	});

	it('is followed by the next of the calendar', () => {
		expect(dayAfter('2028-02-28')).toBe('2028-02-29');
		expect(dayAfter('2026-12-31')).toBe('2027-01-01');
	});

	it.each(['2026-11-30', '2028-02-29'])('may be %s', (day) => expect(isDay(day)).toBe(true));
	it.each(['2026-11-31', '2026-02-29', '30.11.2026', '2026-1-1', '0000-01-01', '9999-12-31', '2026-11-30T00:00', ''])('is not “%s”', (day) => expect(isDay(day)).toBe(false));
});

describe('a filter in an address', () => {
	const read = (search: string) => readFilter(new URLSearchParams(search), { scenarios: ['silo-top'], sets: ['a-set'], zone: 'America/Bogota' });

	it('is nothing where nothing is said', () => {
		expect(read('')).toEqual({ filter: { since: null, before: null, scenario: null, set: null }, typed: { scenario: '', set: '', from: '', to: '' }, problems: {} });
	});

	it('takes the last day in', () => {
		expect(read('from=2026-11-24&to=2026-11-24').filter).toMatchObject({ since: '2026-11-24T05:00:00.000Z', before: '2026-11-25T05:00:00.000Z' });
	});

	it('tells what it cannot read, keeps it as it was typed, and leaves it out', () => {
		const asked = read('scenario=nowhere&set=a-set&from=yesterday&to=2026-11-24');
		expect(asked.problems).toEqual({ scenario: 'unknown', from: 'no-day' });
		expect(asked.typed).toEqual({ scenario: 'nowhere', set: 'a-set', from: 'yesterday', to: '2026-11-24' });
		expect(asked.filter).toEqual({ scenario: null, set: 'a-set', since: null, before: '2026-11-25T05:00:00.000Z' });
		expect(read('from=2026-11-25&to=2026-11-24')).toMatchObject({ problems: { to: 'turned-round' }, filter: { before: null } });
	});

	it('repeats no more than a field can hold', () => {
		expect(read(`scenario=${'x'.repeat(5000)}`).typed.scenario.length).toBeLessThan(100);
	});
});
