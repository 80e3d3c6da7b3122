/**
 * Simulated learners: wrong answers that come from slips worked out by hand, and answers that come from
 * nothing at all. Nothing here asks the engine what a slip would give.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { numberAsks, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import { byHand, mistakesIn, type HandMistake, type HandMistakes, type HandTarget, type HandValues } from '../../support/by-hand/index.ts';
import { handTargetOf, handValuesOf } from '../../support/by-hand/from-problem.ts';
import { gridOf, gridPoint, stepwise, stylesOf, typed, type Style } from './writing.ts';

/** Whole numbers from 0 to `count − 1`. */
export type Dice = (count: number) => number;

/** @returns dice that a seed fixes. */
export function dice(seed: number): Dice {
	const generator = xoroshiro128plus(seed);
	return (count) => uniformInt(generator, 0, count - 1);
}

/** An ask of a problem, with all that can go wrong in it. */
export interface Task {
	readonly problem: Problem;
	readonly ask: NumberAsk;
	readonly values: HandValues;
	readonly target: HandTarget;
	readonly mistakes: HandMistakes;
}

/** One wrong answer, typed, and what it came from. */
export interface WrongAnswer {
	readonly task: Task;
	readonly text: string;
	/** Undefined for an answer out of nothing. */
	readonly cause: HandMistake | undefined;
	readonly style: Style;
	/** SI value of what was typed. */
	readonly value: number;
}

/** @returns the number asks of a problem whose right answer is a number. */
export function tasksOf(problem: Problem, canBeStated: (ask: NumberAsk) => boolean): readonly Task[] {
	return numberAsks(problem.scenario)
		.filter(canBeStated)
		.map((ask) => {
			const values = handValuesOf(problem);
			const target = handTargetOf(ask);
			return { problem, ask, values, target, mistakes: mistakesIn(values, target) };
		});
}

function answered(task: Task, cause: HandMistake | undefined, style: Style, point: number, roll: Dice): WrongAnswer {
	return { task, text: typed(point, task.ask, roll(12)), cause, style, value: point * gridOf(task.ask) };
}

/**
 * @param count 1 or 2 slips. @param tasks the asks of one problem.
 * @returns an answer whose slips are drawn uniformly from all that apply in the problem; undefined if none does.
 */
export function slippedAnswer(tasks: readonly Task[], count: 1 | 2, roll: Dice): WrongAnswer | undefined {
	const all = tasks.flatMap((task) =>
		(count === 1 ? task.mistakes.singles : task.mistakes.pairs).map((cause) => ({ task, cause }))
	);
	if (all.length === 0) return undefined;
	const drawn = all[roll(all.length)];
	if (drawn === undefined) return undefined;
	const { task, cause } = drawn;
	const styles = stylesOf(task.ask);
	const style = styles[roll(styles.length)] ?? 'at the end';
	const value =
		style === 'at each step'
			? byHand(task.values, task.target, cause.slips, stepwise(task.problem.scenario, task.ask))
			: cause.value;
	return answered(task, cause, style, gridPoint(value ?? cause.value, task.ask, style), roll);
}

/** Where answers out of nothing lie, as shares of the right answer. */
export const NOISE_FROM = 0.4;
export const NOISE_TO = 1.6;

/** @returns an answer from anywhere on the answer grid about the right one; whether it is right is not looked at. */
export function noiseAnswer(tasks: readonly Task[], roll: Dice): WrongAnswer | undefined {
	const task = tasks.length === 0 ? undefined : tasks[roll(tasks.length)];
	const right = task?.mistakes.right;
	if (task === undefined || right === undefined) return undefined;
	const grid = gridOf(task.ask);
	const low = Math.ceil((NOISE_FROM * right) / grid);
	const high = Math.floor((NOISE_TO * right) / grid);
	return answered(task, undefined, 'at the end', low + roll(high - low + 1), roll);
}

/** @returns whether a single slip's value lies within half a step of the grid from an answer. */
export function hitsSingle(answer: WrongAnswer): boolean {
	const half = gridOf(answer.task.ask) / 2;
	return answer.task.mistakes.singles.some((one) => Math.abs(one.value - answer.value) <= half + 1e-9);
}
