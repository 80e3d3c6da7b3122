/** Measuring time: quantiles of single calls, and ratios of two ways run in turn. */

/** @returns the value below which this share of the times lies. @param share 0 to 1. */
export function quantile(times: readonly number[], share: number): number {
	const sorted = [...times].sort((a, b) => a - b);
	return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

/** @returns the middle of some numbers. */
export function median(numbers: readonly number[]): number {
	return quantile(numbers, 0.5);
}

/**
 * @returns how long one call takes, ms, by the clock: the processor time that Linux tells of a thread is too
 * coarse for single calls. On a machine that is busy otherwise the highest times are the scheduler's.
 */
export function timed(work: () => void): number {
	const start = performance.now();
	work();
	return performance.now() - start;
}

/**
 * Runs each way in turn, so that whatever else the machine does meets all alike.
 * @param ways each does the same amount of work. @returns the median time of each, ms, in their order.
 */
export function inTurn(ways: readonly (() => void)[], rounds: number): readonly number[] {
	const times = ways.map((): number[] => []);
	for (const way of ways) way();
	for (let round = 0; round < rounds; round += 1) {
		ways.forEach((way, i) => times[i]?.push(timed(way)));
	}
	return times.map(median);
}
