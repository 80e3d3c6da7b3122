import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineConfig } from '@playwright/test';
import { chromiumPath } from './src/cli/chromium.ts';

/** The port of the server under test, on this machine only; E2E_PORT when several runs share a machine. */
const port = Number(process.env.E2E_PORT ?? '4313');
const executablePath = chromiumPath();
if (executablePath === null) throw new Error('No Chromium found: npm test installs it, or set CHROMIUM_PATH');

// The config is read again by every worker; only the first reading starts the server and needs a database.
process.env.E2E_DATA ??= mkdtempSync(join(tmpdir(), 'underfoot-e2e-'));

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 };

export default defineConfig({
	testDir: 'tests/e2e',
	outputDir: 'test-results',
	globalTeardown: './tests/e2e/teardown.ts',
	forbidOnly: true,
	// Two cores are shared by two browsers and the server: time for a busy machine, no measure of speed.
	timeout: 90_000,
	expect: { timeout: 15_000 },
	fullyParallel: true,
	workers: 2,
	reporter: 'list',
	use: {
		baseURL: `http://127.0.0.1:${port}`,
		launchOptions: { executablePath },
		locale: 'en-US',
		timezoneId: 'UTC',
		// Recording each step takes a sixth of the time; `npm run e2e -- --trace retain-on-failure` shows what a failed test saw.
		trace: 'off'
	},
	projects: [
		// The whole course is gone through by a phone; what it does on a computer brings its own screen. It takes longest, so it goes first.
		{ name: 'course', testMatch: ['whole-course.spec.ts'], use: PHONE },
		{
			name: 'desktop',
			// Lessons and joining are tried on the phone that they are made for; the whole course by keyboard goes through them on a computer.
			testIgnore: ['whole-course.spec.ts', 'lesson.spec.ts', 'join.spec.ts'],
			// Every site is solved in English on a computer and in Spanish on a phone.
			grepInvert: /@es\b/,
			use: { viewport: { width: 1280, height: 800 } }
		},
		{
			name: 'phone',
			// The same workings stand on the phone: they are read once. Who may do what, what addresses take, what a killed server kept, and what seeds give in a browser hangs on no screen.
			testIgnore: ['whole-course', 'formulas', 'roles', 'course-faults', 'course-killed', 'records-killed', 'attempts', 'draws', 'pictures', 'server'].map((name) => `${name}.spec.ts`),
			// What is tagged @en hangs on no screen, or brings its own; one narrow screen is as narrow as the other.
			grepInvert: /@en\b|@narrow\b/,
			use: PHONE
		}
	],
	webServer: {
		// node itself, not npm: npm does not pass on the signal that stops the server.
		command: `${process.execPath} src/cli/start.ts`,
		url: `http://127.0.0.1:${port}/health`,
		env: { PORT: String(port), DATABASE_URL: `file:${process.env.E2E_DATA}/underfoot.sqlite` },
		gracefulShutdown: { signal: 'SIGTERM', timeout: 5000 },
		timeout: 120_000
	}
});
