import * as z from 'zod';

/** How many tests of a run passed and failed. */
export interface Count {
	passed: number;
	failed: number;
}

/** A test that did not hold. */
export interface Failure {
	/** File and name. */
	readonly name: string;
	/** What the runner said of it; empty for one that was left out. */
	readonly why: string;
}

const vitestReport = z.object({
	numPassedTests: z.int(),
	numFailedTests: z.int(),
	numPendingTests: z.int(),
	numTodoTests: z.int(),
	testResults: z.array(
		z.object({
			name: z.string(),
			status: z.string(),
			message: z.string().default(''),
			assertionResults: z.array(z.object({ status: z.string(), fullName: z.string(), failureMessages: z.array(z.string()).nullish() }))
		})
	)
});

/** Counts a vitest JSON report. A test that was left out did not pass: it counts as failed. */
export function countVitest(report: unknown): Count {
	const counts = vitestReport.parse(report);
	return {
		passed: counts.numPassedTests,
		failed: counts.numFailedTests + counts.numPendingTests + counts.numTodoTests
	};
}

/** What did not hold in a vitest JSON report: tests, and files that could not be run as a whole. */
export function failuresOfVitest(report: unknown): readonly Failure[] {
	return vitestReport.parse(report).testResults.flatMap(({ name: file, status, message, assertionResults }) => {
		const tests = assertionResults
			.filter((test) => test.status !== 'passed')
			.map(({ fullName, failureMessages }) => ({ name: `${file} › ${fullName}`, why: (failureMessages ?? []).join('\n') }));
		return status === 'passed' || tests.length > 0 ? tests : [{ name: file, why: message }];
	});
}

const playwrightTest = z.object({
	status: z.enum(['expected', 'unexpected', 'flaky', 'skipped']),
	projectName: z.string(),
	results: z.array(z.object({ error: z.object({ message: z.string().default('') }).optional() }))
});

const playwrightSuite = z.object({
	specs: z.array(z.object({ file: z.string(), line: z.int(), title: z.string(), tests: z.array(playwrightTest) })),
	get suites() {
		return z.array(playwrightSuite).default([]);
	}
});

const playwrightReport = z.object({
	suites: z.array(playwrightSuite),
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

/** What did not hold in a Playwright JSON report. */
export function failuresOfPlaywright(report: unknown): readonly Failure[] {
	const { suites } = playwrightReport.parse(report);
	return suites.flatMap(function failures({ specs, suites: deeper }): readonly Failure[] {
		const own = specs.flatMap(({ file, line, title, tests }) =>
			tests
				.filter(({ status }) => status !== 'expected')
				.map(({ projectName, results }) => ({
					name: `[${projectName}] ${file}:${line} › ${title}`,
					why: results.flatMap(({ error }) => (error === undefined ? [] : [error.message])).join('\n')
				}))
		);
		return [...own, ...deeper.flatMap(failures)];
	});
}
