import * as z from 'zod';

/** How many tests of a run passed and failed. */
export interface Count {
	passed: number;
	failed: number;
}

const vitestReport = z.object({
	numPassedTests: z.int(),
	numFailedTests: z.int(),
	numPendingTests: z.int(),
	numTodoTests: z.int()
});

/** Counts a vitest JSON report. A test that was left out did not pass: it counts as failed. */
export function countVitest(report: unknown): Count {
	const counts = vitestReport.parse(report);
	return {
		passed: counts.numPassedTests,
		failed: counts.numFailedTests + counts.numPendingTests + counts.numTodoTests
	};
}

const playwrightReport = z.object({
	stats: z.object({
		expected: z.int(),
		unexpected: z.int(),
		flaky: z.int(),
		skipped: z.int()
	})
});

/** Counts a Playwright JSON report. A test that was skipped, or passed only when repeated, counts as failed. */
export function countPlaywright(report: unknown): Count {
	const { stats } = playwrightReport.parse(report);
	return { passed: stats.expected, failed: stats.unexpected + stats.flaky + stats.skipped };
}
