/** How long drawing and grading take: single calls, and stored answers graded again in a row. */
import { gradeAsk, rightValue } from '#lib/grading/index.ts';
import { draw, problemOf, type Drawn, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { dice, noiseAnswer, slippedAnswer, tasksOf, type WrongAnswer } from './learner.ts';
import { problemsOf } from './shipped.ts';
import { median, quantile, timed } from './timing.ts';

const SEED = 77;
const PROBLEMS_EACH = 40;
const DRAWS_EACH = 200;
const ANSWERS = 20_000;
const ROUNDS = 7;

/** Wrong answers of all kinds, as the diagnosis bench makes them: most from one slip, some from two or from nothing. */
export function wrongAnswers(scenarios: readonly Scenario[]): readonly WrongAnswer[] {
	const roll = dice(SEED);
	const problems = scenarios.map((scenario) =>
		problemsOf(scenario, PROBLEMS_EACH).map((problem) =>
			tasksOf(problem, (ask) => rightValue(problem, ask) !== undefined)
		)
	);
	const answers: WrongAnswer[] = [];
	for (let turn = 0; answers.length < ANSWERS; turn += 1) {
		const ofScenario = problems[turn % problems.length] ?? [];
		const tasks = ofScenario[roll(ofScenario.length)] ?? [];
		const kind = roll(5);
		const answer =
			kind === 0 ? noiseAnswer(tasks, roll) : slippedAnswer(tasks, kind === 1 ? 2 : 1, roll);
		if (answer !== undefined) answers.push(answer);
	}
	return answers;
}

function grade(problem: Problem, ask: string, text: string): void {
	gradeAsk(problem, ask, { kind: 'number', text }, { language: 'en' });
}

export interface Quantiles {
	readonly p50: number;
	readonly p99: number;
	/** Of the fastest of three runs of each call: what the work itself takes where the machine is busy otherwise. */
	readonly undisturbed: number;
}

/** Times each call, all of them in a row; then twice more. */
function quantiles(calls: readonly (() => void)[]): Quantiles {
	const first = calls.map(timed);
	const second = calls.map(timed);
	const third = calls.map(timed);
	const fastest = first.map((time, i) => Math.min(time, second[i] ?? time, third[i] ?? time));
	return { p50: quantile(first, 0.5), p99: quantile(first, 0.99), undisturbed: quantile(fastest, 0.99) };
}

/** @returns times of grading one wrong answer with full diagnosis, ms; the first of each kind is among them. */
export function gradingTimes(answers: readonly WrongAnswer[]): Quantiles {
	return quantiles(answers.map(({ task, text }) => () => grade(task.problem, task.ask.id, text)));
}

/** Draws of other seeds before any is timed: a server that has run for a minute has made more. */
const WARM_UP_EACH = 40;

/** @returns times of one draw, all tries included, once the program is warm, ms. */
export function drawingTimes(scenarios: readonly Scenario[]): Quantiles {
	for (let i = 0; i < WARM_UP_EACH; i += 1) for (const scenario of scenarios) draw(scenario, DRAWS_EACH + i);
	return quantiles(
		Array.from({ length: DRAWS_EACH }, (_, seed) => scenarios.map((scenario) => () => void draw(scenario, seed))).flat()
	);
}

/** What is stored of an answer, as one line of text. */
interface Stored {
	readonly drawn: Drawn;
	readonly seed: number;
	readonly acceptedTry: number;
	readonly ask: string;
	readonly text: string;
}

/**
 * @returns stored answers read, set up from their stored values and graded with full diagnosis, a second,
 * on one core: the median of some rounds.
 */
export function regradingRate(answers: readonly WrongAnswer[]): number {
	const stored = answers.map(({ task, text }) => {
		const { scenario, drawn, seed, acceptedTry } = task.problem;
		const one: Stored = { drawn, seed, acceptedTry, ask: task.ask.id, text };
		return { scenario, line: JSON.stringify(one) };
	});
	const rates: number[] = [];
	for (let round = 0; round < ROUNDS; round += 1) {
		const time = timed(() => {
			for (const { scenario, line } of stored) {
				const one: Stored = JSON.parse(line);
				grade(problemOf(scenario, one.drawn, one.seed, one.acceptedTry), one.ask, one.text);
			}
		});
		rates.push((stored.length * 1000) / time);
	}
	return median(rates);
}

/** @returns the time of a million additions and square roots on this machine, ms: what the times above are to be seen against. */
export function yardstick(): number {
	const MILLION = 1_000_000;
	const times: number[] = [];
	let kept = 0;
	for (let round = 0; round < ROUNDS; round += 1) {
		times.push(
			timed(() => {
				for (let i = 1; i <= MILLION; i += 1) kept += Math.sqrt(i);
			})
		);
	}
	if (!(kept > 0)) throw new Error('the yardstick did not run');
	return median(times);
}
