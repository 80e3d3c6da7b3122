/**
 * What 200 rendered pages print as working, read off the screen and worked out by mathjs (a general-purpose
 * library that knows nothing of this project), is the engine's value.
 */
import { expect, test } from '@playwright/test';
import { evaluate } from 'mathjs';
import { explain, rightValue, shownGivens } from '#lib/grading/index.ts';
import { evaluate as valueOf } from '#lib/expression/index.ts';
import { formula } from '#lib/arrest/index.ts';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { numberAsks, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import { answer, open, problemOf, rightEntries } from './learner.ts';

/** @reason mass is added up row by row, the force read off the label: their rows are numbers without a sum to work out. */
const WITHOUT_WORKING: readonly NumberAsk['quantity'][] = ['massAttached', 'arrestForce'];
const SCENARIOS = shippedScenarios().filter((one) => numberAsks(one).some(({ quantity }) => !WITHOUT_WORKING.includes(quantity)));

/** @reason the acceptance asks for 200 pages; each takes a browser seconds, so more scenarios mean fewer pages of each. */
const PAGES = 200;
const PAGES_A_SCENARIO = Math.ceil(PAGES / SCENARIOS.length);

/** Feet and inches as the page prints them, in feet: 5′ 3½″. */
const FEET_INCHES = /(\d+)′(?:[\s\u00a0](\d+)?([½¼¾⅛⅜⅝⅞])?″)?/g;
const PARTS: Readonly<Record<string, number>> = { '½': 0.5, '¼': 0.25, '¾': 0.75, '⅛': 0.125, '⅜': 0.375, '⅝': 0.625, '⅞': 0.875 };

/** Gravity is printed to two places; the engine counts with all of standard gravity's (CGPM 1901). */
const GRAVITY = /\b9\.81\b/g;

/** A printed working as a calculator reads it. */
function calculable(text: string): string {
	return text
		.replace(GRAVITY, '9.80665')
		.replace(FEET_INCHES, (_, feet: string, inches = '0', part = '') => String(Number(feet) + (Number(inches) + (PARTS[part] ?? 0)) / 12))
		.replaceAll('−', '-')
		.replaceAll('×', '*')
		.replaceAll('÷', '/')
		.replaceAll('²', '^2')
		.replaceAll('√(', 'sqrt(')
		.replaceAll(';', ',');
}

/** SI of one printed unit, from the exact definitions (NIST SP 811, from memory). */
function printedUnit(problem: Problem, ask: NumberAsk): number {
	const metric = problem.scenario.units === 'metric';
	switch (ask.quantity) {
		case 'massAttached':
		case 'lowestCapacity':
			return metric ? 1 : 0.45359237;
		case 'arrestForce':
			return metric ? 1000 : 4.4482216152605;
		case 'bodyWeights':
			return 1;
		default:
			return metric ? 1 : 0.3048;
	}
}

for (const scenario of SCENARIOS) {
	test(`${scenario.id}: ${PAGES_A_SCENARIO} pages print workings that come out`, async ({ page }) => {
		test.setTimeout(240_000);
		let worked = 0;
		for (let seed = 0; seed < PAGES_A_SCENARIO; seed += 1) {
			const problem = problemOf(scenario.id, 500 + seed);
			await open(page, problem);
			await answer(page, problem, rightEntries(problem));
			for (const ask of numberAsks(scenario)) worked += await workedRows(page, problem, ask);
		}
		expect(worked).toBeGreaterThanOrEqual(PAGES_A_SCENARIO);
	});
}

type Row = { readonly id: string; readonly working: string };

async function workedRows(page: Parameters<typeof open>[0], problem: Problem, ask: NumberAsk): Promise<number> {
	const right = rightValue(problem, ask);
	if (right === undefined) return 0;
	const asks = numberAsks(problem.scenario);
	if (asks.length > 1) await page.locator('.which button').nth(asks.indexOf(ask)).click();
	const rows: Row[] = await page.locator('.steps tbody tr').evaluateAll((all) =>
		all.map((row) => ({
			id: row.className.split(' ')[0] ?? '',
			working: row.querySelector('.working')?.textContent ?? ''
		}))
	);
	const { tape } = explain(problem, ask, []);
	let terms = 0;
	let worked = 0;
	for (const row of rows) {
		const expected =
			row.id === 'term' ? (tape[terms++]?.value ?? NaN) : row.id === 'sum' ? right : row.id === 'there' ? thereIs(problem, ask) : undefined;
		if (expected === undefined || !/[−+×÷√]|max|min/.test(row.working)) continue;
		const value = Number(evaluate(calculable(row.working))) * printedUnit(problem, ask);
		expect(Math.abs(value - expected), `${problem.scenario.id} ${problem.seed} ${ask.id}: ${row.working} → ${expected}`).toBeLessThanOrEqual(1e-9 + 1e-6 * Math.abs(expected));
		worked += 1;
	}
	return worked;
}

function thereIs(problem: Problem, ask: NumberAsk): number {
	if (!('datum' in ask)) return NaN;
	return valueOf(formula({ quantity: 'availableClearance', datum: ask.datum }, problem.resolved.shape), shownGivens(problem));
}
