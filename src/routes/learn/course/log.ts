/** What a guest did in the course, kept on the device. It is replayed to know how far the guest is. */
import { COURSE } from '#lib/course/index.ts';
import type { CourseRecord } from '#lib/flow/index.ts';
import { recordFrom } from './record.ts';
import { fieldsOf, isCount, readStore, writeStore } from './store.ts';

export const GUEST_LOG = 'underfoot.course';
/** Raised when the form of the log changes. */
const LOG_VERSION = 1;
/** @source seeds of practice stay below 2³⁰ (mastery/seed.ts) */
const SEEDS = 2 ** 30;
/** @reason far more than the whole course takes; keeps a broken store small */
const MOST_RECORDS = 5000;
/** How many answers' slips are kept. @reason what went wrong long ago may go right by now */
const MOST_SLIPS = 100;

export interface GuestLog {
	/** The device's own number: all of its problems come from it. */
	readonly seed: number;
	readonly records: readonly CourseRecord[];
	/** Slips found in each of the last wrong answers. */
	readonly slips: readonly (readonly string[])[];
}

/** @returns the log of this device; a new one where there is none, or one of another course or form. Never throws. */
export function readLog(): GuestLog {
	const kept = fieldsOf(readStore(GUEST_LOG));
	const { log, course, version, seed, records, slips } = kept ?? {};
	if (log !== LOG_VERSION || course !== COURSE.id || version !== COURSE.version || !isCount(seed) || seed >= SEEDS) {
		return { seed: (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % SEEDS, records: [], slips: [] };
	}
	const read = Array.isArray(records) ? records.map(recordFrom) : [];
	const broken = read.indexOf(undefined);
	return {
		seed,
		// What follows a broken record may build upon it.
		records: (broken < 0 ? read : read.slice(0, broken)).filter((record) => record !== undefined),
		slips: Array.isArray(slips) ? slips.flatMap((one: unknown) => (isTexts(one) ? [one] : [])) : []
	};
}

function isTexts(value: unknown): value is readonly string[] {
	return Array.isArray(value) && value.every((one) => typeof one === 'string');
}

/** Keeps the log. @returns false where the device's store cannot take it. */
export function writeLog({ seed, records, slips }: GuestLog): boolean {
	return writeStore(
		GUEST_LOG,
		JSON.stringify({
			log: LOG_VERSION,
			course: COURSE.id,
			version: COURSE.version,
			seed,
			records: records.slice(0, MOST_RECORDS),
			slips: slips.slice(-MOST_SLIPS)
		})
	);
}

/** @returns today's date where the device is, YYYY-MM-DD. */
export function today(): string {
	const now = new Date();
	const two = (value: number): string => String(value).padStart(2, '0');
	return `${String(now.getFullYear()).padStart(4, '0')}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
