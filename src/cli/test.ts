/**
 * `npm test`: installs what the tests need, then checks, lints, tests, builds and drives the browser.
 * Goes on after a failure, so that one run tells everything. Says at the end what did not hold, and ends with one line:
 * `N passed, N failed`.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureChromium } from './chromium.ts';
import { ensurePostgres } from './postgres.ts';
import { ROOT } from './root.ts';
import { countPlaywright, countVitest, failuresOfPlaywright, failuresOfVitest, type Count, type Failure } from './test-count.ts';

const reports = mkdtempSync(join(tmpdir(), 'underfoot-test-'));
const failedSteps: string[] = [];
const failures: Failure[] = [];
const total: Count = { passed: 0, failed: 0 };

/** Runs one step by npm, and says whether it held. */
function step(name: string, args: readonly string[], env: Record<string, string> = {}): boolean {
	console.log(`\n── ${name}`);
	const run = spawnSync('npm', ['run', '--silent', ...args], {
		cwd: ROOT,
		env: { ...process.env, ...env },
		stdio: ['ignore', 'inherit', 'inherit']
	});
	if (run.status !== 0) failedSteps.push(name);
	return run.status === 0;
}

/** Adds what a test runner's report counts and what failed in it; a run that failed without a failed test counts as one. */
function add(held: boolean, file: string, count: (report: unknown) => Count, failuresOf: (report: unknown) => readonly Failure[]): void {
	let counted: Count = { passed: 0, failed: 0 };
	try {
		const report: unknown = JSON.parse(readFileSync(file, 'utf8'));
		counted = count(report);
		failures.push(...failuresOf(report));
	} catch (error) {
		console.error(`No report from the tests: ${String(error)}`);
	}
	total.passed += counted.passed;
	total.failed += held ? counted.failed : Math.max(1, counted.failed);
}

/** A step without tests of its own counts only when it fails. */
function plain(held: boolean): boolean {
	if (!held) total.failed += 1;
	return held;
}

try {
	ensureChromium();
	ensurePostgres();
	plain(step('check', ['check']));
	plain(step('lint', ['lint']));

	const vitestReport = join(reports, 'vitest.json');
	const vitestArgs = ['--reporter=default', '--reporter=json', `--outputFile.json=${vitestReport}`];
	add(step('unit, property and reference tests', ['unit', '--', ...vitestArgs]), vitestReport, countVitest, failuresOfVitest);

	if (plain(step('build', ['build', '--', '--logLevel', 'warn']))) {
		const playwrightReport = join(reports, 'playwright.json');
		add(
			step('browser tests', ['e2e', '--', '--reporter=list,json'], {
				PLAYWRIGHT_JSON_OUTPUT_FILE: playwrightReport
			}),
			playwrightReport,
			countPlaywright,
			failuresOfPlaywright
		);
	}
} catch (error) {
	console.error(error instanceof Error ? error.message : error);
	total.failed += 1;
} finally {
	rmSync(reports, { recursive: true, force: true });
}

/** Of a long message the beginning, which says what was expected. */
const SHOWN = 2000;

for (const { name, why } of failures) console.log(`\nFailed: ${name.replace(ROOT, '')}\n${why.slice(0, SHOWN)}`);
if (failedSteps.length > 0) console.log(`\nNot held: ${failedSteps.join('; ')}`);
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exit(total.failed === 0 ? 0 : 1);
