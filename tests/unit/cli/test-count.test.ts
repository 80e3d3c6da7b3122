import { expect, it } from 'vitest';
import { countPlaywright, countVitest } from '../../../src/cli/test-count.ts';

it('counts a unit test that was left out as failed', () => {
	const report = { numPassedTests: 10, numFailedTests: 2, numPendingTests: 1, numTodoTests: 1 };
	expect(countVitest(report)).toEqual({ passed: 10, failed: 4 });
});

it('counts a browser test that was skipped, or passed only when repeated, as failed', () => {
	const report = { stats: { expected: 10, unexpected: 2, flaky: 1, skipped: 1 } };
	expect(countPlaywright(report)).toEqual({ passed: 10, failed: 4 });
});

it('does not take another text for a report', () => {
	expect(() => countVitest({})).toThrow();
	expect(() => countPlaywright({ stats: {} })).toThrow();
});
