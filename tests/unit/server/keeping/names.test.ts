/** Which backups a folder keeps. */
import { describe, expect, it } from 'vitest';
import { MONTHS, NEWEST, backupName, dispensable, unfinishedName } from '#lib/server/keeping/names.ts';

const DAY = 24 * 60 * 60 * 1000;
const NOW = new Date('2026-11-30T13:00:00.000Z');

/** Daily backups, the newest first. @param ago days */
function daily(days: number, from = NOW): string[] {
	return Array.from({ length: days }, (_, i) => backupName('sqlite', new Date(from.getTime() - i * DAY)));
}

const kept = (names: readonly string[], now = NOW): readonly string[] => {
	const gone = new Set(dispensable(names, now));
	return names.filter((name) => !gone.has(name));
};

describe('a folder of backups', () => {
	it('keeps the newest fourteen, and the newest of each of twelve months', () => {
		const names = daily(500);
		const left = kept(names);
		expect(left.slice(0, NEWEST)).toEqual(names.slice(0, NEWEST));
		// Worked by hand: the newest of November is among the fourteen; the others are the last days of eleven months.
		expect(left.slice(NEWEST).map((name) => name.slice(10, 18))).toEqual([
			'20261031', '20260930', '20260831', '20260731', '20260630', '20260531', '20260430', '20260331', '20260228', '20260131', '20251231'
		]);
		expect(left).toHaveLength(NEWEST + MONTHS - 1);
	});

	it('comes to the same when it is cleared every day as when it is cleared once', () => {
		let there: readonly string[] = [];
		for (const name of daily(500).toReversed()) {
			const at = new Date(`${name.slice(10, 14)}-${name.slice(14, 16)}-${name.slice(16, 18)}T13:00:00.000Z`);
			there = kept([...there, name], at);
		}
		expect(there.toReversed()).toEqual(kept(daily(500)));
	});

	it('loses with each backup what stands beside it, and nothing else', () => {
		const names = daily(16).flatMap((name) => [name, `${name}.json`]);
		const others = ['notes.txt', 'underfoot.sqlite', 'underfoot.sqlite-wal', 'underfoot-20200101T000000000Z.sqlite.bak', 'underfoot-2020.sqlite', 'copy of underfoot-20200101T000000000Z.sqlite', 'underfoot-20209901T000000000Z.sqlite'];
		// The sixteenth newest is of 15 November; that of October does not exist.
		expect(dispensable([...names, ...others], NOW)).toEqual(names.slice(28));
	});

	it('never loses one from the future, nor counts it: a clock was wrong', () => {
		const future = daily(20, new Date(NOW.getTime() + 400 * DAY));
		const names = daily(NEWEST);
		expect(dispensable([...future, ...names], NOW)).toEqual([]);
	});

	it('loses what was never finished, once nobody can be at it any more', () => {
		const [today = '', before = ''] = [backupName('postgres', new Date(NOW.getTime() - DAY / 2)), backupName('sqlite', new Date(NOW.getTime() - 2 * DAY))];
		expect(dispensable([unfinishedName(today), unfinishedName(before), `${unfinishedName(before)}-journal`], NOW)).toEqual([unfinishedName(before), `${unfinishedName(before)}-journal`]);
	});
});
