/**
 * How fast drawing, grading and the evaluation of all slip variants are, and what an answer costs from the
 * request to the disk. Ways that are compared run in turn, in the same run.
 */
import type { Bench, Figure } from '../../src/cli/figure.ts';
import { drawingTimes, gradingTimes, regradingRate, wrongAnswers, yardstick } from './simulated/marking.ts';
import { shippedScenarios } from './simulated/shipped.ts';
import { storingRates } from './simulated/storing.ts';
import { variantSpeeds } from './simulated/variants.ts';

function atMost(name: string, value: number, goal: number, unit: string): Figure {
	return { name, value, unit, goal: `≤ ${goal} ${unit}`, holds: value <= goal };
}

function atLeast(name: string, value: number, goal: number, unit: string): Figure {
	return { name, value, unit, goal: `≥ ${goal} ${unit}`.trim(), holds: value >= goal };
}

function shown(name: string, value: number, unit: string): Figure {
	return { name, value, unit, goal: '–', holds: true };
}

const bench: Bench = {
	name: 'speed',
	async run() {
		const scenarios = shippedScenarios();
		const drawing = drawingTimes(scenarios);
		const answers = wrongAnswers(scenarios);
		const grading = gradingTimes(answers);
		const variants = variantSpeeds();
		const storing = await storingRates(scenarios);
		return [
			atMost('grade with full diagnosis, p99', grading.p99, 1, 'ms'),
			shown('grade with full diagnosis, p99 of the fastest of three runs', grading.undisturbed, 'ms'),
			shown('grade with full diagnosis, median', grading.p50, 'ms'),
			atMost('draw, p99', drawing.p99, 5, 'ms'),
			shown('draw, p99 of the fastest of three runs', drawing.undisturbed, 'ms'),
			shown('draw, median', drawing.p50, 'ms'),
			atLeast('stored values graded again', regradingRate(answers), 10_000, 'a second'),
			atLeast(`${variants.variants} slip variants, faster than mathjs`, variants.mathjsWhole, 5, '×'),
			shown('right answer and single slips, faster than mathjs', variants.mathjsSingles, '×'),
			atMost('right answer and single slips, time in times of straight arithmetic', variants.engineInStraight, 5, '×'),
			atLeast('answer posted, graded and stored, rate in rates of a bare durable insert', storing.ours / storing.bare, 0.6, '×'),
			shown('the same for problems that this server never drew before', storing.unopened / storing.bare, '×'),
			shown('answers posted, graded and stored', storing.ours, 'a second'),
			shown('bare endpoint with one durable insert', storing.bare, 'a second'),
			shown('yardstick: a million square roots added up', yardstick(), 'ms')
		];
	}
};

export default bench;
