/** What pages print as working, read off the screen and worked out by mathjs, is the engine's value. */
import { expect, test } from '@playwright/test';
import { numberAsks } from '#lib/scenario/index.ts';
import { WITH_WORKINGS, workedOut, type PrintedRow } from '../support/printed-workings.ts';
import { answer, open, problemOf, rightEntries } from './learner.ts';

// The same tables are rendered and worked out 200 times over in tests/reference/printed-pages.test.ts; here it is seen that a browser shows them.
for (const scenario of WITH_WORKINGS) {
	test(`${scenario.id}: a page prints workings that come out`, async ({ page }) => {
		const problem = problemOf(scenario.id, 500);
		await open(page, problem);
		await answer(page, problem, rightEntries(problem));
		const asks = numberAsks(scenario);
		let worked = 0;
		for (const ask of asks) {
			if (asks.length > 1) await page.locator('.which button').nth(asks.indexOf(ask)).click();
			const rows: PrintedRow[] = await page.locator('.steps tbody tr').evaluateAll((all) =>
				all.map((row) => ({ id: row.className.split(' ')[0] ?? '', working: row.querySelector('.working')?.textContent ?? '' }))
			);
			const out = workedOut(problem, ask, rows);
			expect(out.strayed, `${scenario.id} ${String(problem.seed)} ${ask.id}`).toEqual([]);
			worked += out.worked;
		}
		expect(worked).toBeGreaterThan(0);
	});
}
