/** 200 tables of steps as the pages render them, worked out by mathjs (a general-purpose library that knows nothing of this project). */
import { render } from 'svelte/server';
import { expect, test } from 'vitest';
import { explain, rightValue } from '#lib/grading/index.ts';
import { numberAsks, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import { StepTable } from '#lib/scene/index.ts';
import { messages } from '#lib/text/index.ts';
import { stepRows } from '../../src/routes/learn/problem/model/steps.ts';
import { writerFor } from '../../src/routes/learn/problem/model/writing.ts';
import { problemOf } from '../support/answered.ts';
import { WITH_WORKINGS, workedOut, type PrintedRow } from '../support/printed-workings.ts';

/** @reason the acceptance of the site problem asks for 200 rendered pages. */
const PAGES = 200;
const PAGES_A_SCENARIO = Math.ceil(PAGES / WITH_WORKINGS.length);

const ENTITIES: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' };

/** The rows of the table, read from the page's text. */
async function printedRows(problem: Problem, ask: NumberAsk): Promise<readonly PrintedRow[]> {
	const m = await messages('en');
	const rows = stepRows({ problem, language: 'en', m }, writerFor(problem.scenario, 'en'), ask, rightValue(problem, ask), explain(problem, ask, []));
	const { body } = render(StepTable, { props: { caption: 'Steps', columns: ['Step', 'Value', 'You'], rows } });
	return [...body.matchAll(/<tr class="([a-z]+)[^"]*">(.*?)<\/tr>/gs)].map(([, id = '', inner = '']) => {
		const working = /<span class="working[^"]*">(.*?)<\/span>/s.exec(inner)?.[1] ?? '';
		return { id, working: working.replace(/<[^>]*>/g, '').replace(/&\w+;/g, (entity) => ENTITIES[entity] ?? entity) };
	});
}

test.each(WITH_WORKINGS.map((scenario) => [scenario.id, scenario] as const))('%s prints workings that come out', async (id, scenario) => {
	let worked = 0;
	for (let seed = 0; seed < PAGES_A_SCENARIO; seed += 1) {
		const problem = problemOf(id, 500 + seed);
		for (const ask of numberAsks(scenario)) {
			const out = workedOut(problem, ask, await printedRows(problem, ask));
			expect(out.strayed, `${id} ${String(problem.seed)} ${ask.id}`).toEqual([]);
			worked += out.worked;
		}
	}
	expect(worked).toBeGreaterThanOrEqual(PAGES_A_SCENARIO);
});
