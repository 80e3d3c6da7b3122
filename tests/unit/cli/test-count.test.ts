import { expect, it } from 'vitest';
import { countPlaywright, countVitest, failuresOfPlaywright, failuresOfVitest } from '../../../src/cli/test-count.ts';

it('counts a unit test that was left out as failed', () => {
	const report = { numPassedTests: 10, numFailedTests: 2, numPendingTests: 1, numTodoTests: 1, testResults: [] };
	expect(countVitest(report)).toEqual({ passed: 10, failed: 4 });
});

it('counts a browser test that was skipped, or passed only when repeated, as failed', () => {
	const report = { suites: [], stats: { expected: 10, unexpected: 2, flaky: 1, skipped: 1 } };
	expect(countPlaywright(report)).toEqual({ passed: 10, failed: 4 });
});

it('does not take another text for a report', () => {
	expect(() => countVitest({})).toThrow();
	expect(() => countPlaywright({ stats: {} })).toThrow();
});

it('names the unit tests that did not hold, with what was said of them, and a file that could not be run', () => {
	const test = (status: string, fullName: string, failureMessages: string[] = []) => ({ status, fullName, failureMessages });
	const report = {
		numPassedTests: 1,
		numFailedTests: 1,
		numPendingTests: 1,
		numTodoTests: 0,
		testResults: [
			{ name: 'a.test.ts', status: 'failed', message: '', assertionResults: [test('passed', 'holds'), test('failed', 'adds up', ['expected 3', 'and 4']), test('pending', 'is left out')] },
			{ name: 'b.test.ts', status: 'failed', message: 'Cannot find module', assertionResults: [] },
			{ name: 'c.test.ts', status: 'passed', message: '', assertionResults: [test('passed', 'holds')] }
		]
	};
	expect(failuresOfVitest(report)).toEqual([
		{ name: 'a.test.ts › adds up', why: 'expected 3\nand 4' },
		{ name: 'a.test.ts › is left out', why: '' },
		{ name: 'b.test.ts', why: 'Cannot find module' }
	]);
});

it('names the browser tests that did not hold, in groups too', () => {
	const spec = (title: string, status: string, message?: string) => ({
		file: 'join.spec.ts',
		line: 7,
		title,
		tests: [{ status, projectName: 'phone', results: message === undefined ? [{}] : [{ error: { message } }] }]
	});
	const report = {
		stats: { expected: 1, unexpected: 1, flaky: 1, skipped: 1 },
		suites: [{ specs: [spec('holds', 'expected'), spec('joins', 'unexpected', 'no button')], suites: [{ specs: [spec('waits', 'flaky', 'too late'), spec('is left out', 'skipped')] }] }]
	};
	expect(failuresOfPlaywright(report)).toEqual([
		{ name: '[phone] join.spec.ts:7 › joins', why: 'no button' },
		{ name: '[phone] join.spec.ts:7 › waits', why: 'too late' },
		{ name: '[phone] join.spec.ts:7 › is left out', why: '' }
	]);
});
