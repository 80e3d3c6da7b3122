import fc from 'fast-check';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NO_END, addDays, addMonths, daysBetween } from '#lib/records/index.ts';
import type { TestDatabase } from '../server/databases.ts';
import { startPostgres } from '../server/postgres-server.ts';

describe('days', () => {
	/** @source PostgreSQL manual, table of date operators: 2001-01-31 + 1 month is 2001-02-28; java.time.LocalDate.plusMonths: 2007-03-31 + 1 month is 2007-04-30. From memory. */
	it.each([
		['2001-01-31', 1, '2001-02-28'],
		['2007-03-31', 1, '2007-04-30'],
		// Leap years, worked by hand; common practice, no source.
		['2024-02-29', 12, '2025-02-28'],
		['2024-02-29', 24, '2026-02-28'],
		['2024-02-29', 48, '2028-02-29'],
		['1999-02-28', 12, '2000-02-28'],
		['2096-02-29', 48, '2100-02-28'],
		['2026-11-30', 3, '2027-02-28'],
		['2026-12-31', 1, '2027-01-31'],
		['2026-01-15', -1, '2025-12-15'],
		['2026-03-31', -1, '2026-02-28'],
		['2026-11-25', 0, '2026-11-25']
	])('%s and %i months is %s', (day, months, then) => {
		expect(addMonths(day, months)).toBe(then);
	});

	/** Worked by hand; common practice, no source. */
	it.each([
		['2028-02-28', 1, '2028-02-29'],
		['2027-02-28', 1, '2027-03-01'],
		['2026-12-31', 1, '2027-01-01'],
		['2026-01-01', -1, '2025-12-31'],
		// Clocks go forward and back in between, in most zones of the north.
		['2026-03-28', 2, '2026-03-30'],
		['2026-10-24', 2, '2026-10-26']
	])('%s and %i days is %s, and as many lie between', (day, days, then) => {
		expect(addDays(day, days)).toBe(then);
		expect(daysBetween(day, then)).toBe(days);
	});

	it('no end is after every other', () => {
		expect('9999-12-30' < NO_END && addDays('9999-12-30', 1) === NO_END).toBe(true);
	});
});

/** A general-purpose calendar: PostgreSQL's own date arithmetic. */
describe('days, against PostgreSQL', () => {
	let server: TestDatabase;
	let client: pg.Client;

	beforeAll(async () => {
		server = await startPostgres();
		client = new pg.Client({ connectionString: server.address });
		await client.connect();
	});

	afterAll(async () => {
		await client.end();
		server.stop();
	});

	it('some months and some days later are the same day there', async () => {
		const day = fc.date({ min: new Date('1990-01-01'), max: new Date('2199-12-31'), noInvalidDate: true }).map((date) => date.toISOString().slice(0, 10));
		const cases = fc.sample(fc.tuple(day, fc.integer({ min: -240, max: 240 })), { numRuns: 2000, seed: 5 });
		const { rows } = await client.query<{ months: string; days: string; between: number }>(
			`select to_char(day + make_interval(months => n), 'YYYY-MM-DD') as months, to_char(day + n, 'YYYY-MM-DD') as days, (day - date '2026-11-25') as between
			 from unnest($1::date[], $2::int[]) with ordinality as t(day, n, i) order by i`,
			[cases.map(([one]) => one), cases.map(([, n]) => n)]
		);
		expect(rows).toEqual(cases.map(([one, n]) => ({ months: addMonths(one, n), days: addDays(one, n), between: daysBetween('2026-11-25', one) })));
	});
});
