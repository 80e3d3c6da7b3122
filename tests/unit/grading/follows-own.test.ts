import { expect, test } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { gradeProblem, rightValue } from '#lib/grading/index.ts';
import { draw, numberAsks } from '#lib/scenario/index.ts';
import { fromSI } from '#lib/quantity/index.ts';

/** Every number of a problem that is off by so much, in the unit asked. */
function offBy(scenario: ReturnType<typeof shippedScenarios>[number], seed: number, more: number) {
	const drawn = draw(scenario, seed);
	if (drawn.kind === 'none') return undefined;
	const { problem } = drawn;
	const answers = new Map(
		numberAsks(scenario).map((ask) => {
			const unit = ask.precision.unit === 'in' ? 'ft' : ask.precision.unit;
			const right = rightValue(problem, ask) ?? 1;
			const text = String(Math.round(1000 * (fromSI(right, unit) + more)) / 1000);
			return [ask.id, { kind: 'number' as const, text: unit === '1' ? text : `${text} ${unit}` }] as const;
		})
	);
	return gradeProblem(problem, answers, { language: 'en' });
}

test.each(shippedScenarios().map((scenario) => [scenario.id, scenario] as const))(
	'%s: wrong numbers of any kind, one after the other, are all graded',
	(_, scenario) => {
		for (const more of [0.9, 7, 33]) {
			const grades = offBy(scenario, 5, more);
			expect([...(grades ?? [])].map(([, grade]) => grade.kind)).toEqual(numberAsks(scenario).map(() => 'number'));
		}
	}
);
