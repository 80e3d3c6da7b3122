import { addDays } from '#lib/records/index.ts';
import { dayIn } from '../course/day.ts';

/** Local days lie within so many hours of the day by UTC. @source zones are at most 14 hours ahead and 12 behind; from memory */
const AROUND = 15 * 3600;

/**
 * @param zone an IANA zone
 * @param day YYYY-MM-DD
 * @returns the last second of a local day: what is valid until a day is valid until then. Clocks that are put forward or back at midnight are counted with.
 */
export function lastSecondOf(zone: string, day: string): Date {
	const next = Date.parse(`${addDays(day, 1)}T00:00:00Z`) / 1000;
	let [within, beyond] = [next - AROUND - 1, next + AROUND];
	while (beyond - within > 1) {
		const middle = Math.floor((within + beyond) / 2);
		if (dayIn(zone, new Date(middle * 1000)) <= day) within = middle;
		else beyond = middle;
	}
	return new Date(within * 1000);
}
