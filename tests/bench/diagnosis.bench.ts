/**
 * How well a wrong number is traced to the thought behind it, measured on 20,000 simulated wrong answers
 * over all shipped scenarios. The answers are worked out by hand (tests/support/by-hand), rounded and
 * typed as people do; history is off; what is ambiguous, declared equal or unexplained stays in the
 * denominator.
 */
import { gradeAsk, rightValue, type Candidate, type Grade } from '#lib/grading/index.ts';
import type { Bench, Figure } from '../../src/cli/figure.ts';
import { dice, hitsSingle, noiseAnswer, slippedAnswer, tasksOf, type Dice, type Task, type WrongAnswer } from './simulated/learner.ts';
import { problemsOf, shippedScenarios } from './simulated/shipped.ts';

const ANSWERS = 20_000;
/** 60 % one slip, 20 % two, 20 % noise (learning-and-records.md 7). */
const ONE = ANSWERS * 0.6;
const TWO = ANSWERS * 0.2;
const NOISE = ANSWERS - ONE - TWO;
const PROBLEMS_EACH = 200;
const SEED = 20_261_125;
const SHOWN_CONFUSIONS = 20;

/** Counts of one kind of answer. */
interface Tally {
	answers: number;
	/** The true cause stands first. */
	first: number;
	/** The true cause stands among the first three. */
	amongThree: number;
	/** The first explanation names the step of the true cause. */
	step: number;
	right: number;
	asserted: number;
	ambiguous: number;
	unexplained: number;
}

function tally(): Tally {
	return { answers: 0, first: 0, amongThree: 0, step: 0, right: 0, asserted: 0, ambiguous: 0, unexplained: 0 };
}

function percent(part: number, whole: number): number {
	return whole === 0 ? 0 : (100 * part) / whole;
}

function grade(answer: WrongAnswer): Grade {
	return gradeAsk(answer.task.problem, answer.task.ask.id, { kind: 'number', text: answer.text }, { language: 'en' });
}

function isRight(graded: Grade): boolean {
	return graded.kind === 'number' && (graded.mark.kind === 'right' || graded.mark.kind === 'right-by-rounding');
}

function nameOf(candidate: Candidate | undefined): string {
	if (candidate === undefined) return 'no pattern';
	return candidate.kind === 'slips' ? candidate.slips.join(' + ') : candidate.slip.entry;
}

function isCause(candidate: Candidate | undefined, answer: WrongAnswer): boolean {
	return candidate?.kind === 'slips' && candidate.slips.join() === answer.cause?.slips.join();
}

/** Counts one graded answer into a tally. @returns the explanation that stands first, by name. */
function count(into: Tally, answer: WrongAnswer, graded: Grade): string {
	into.answers += 1;
	if (isRight(graded)) {
		into.right += 1;
		return 'marked right';
	}
	const diagnosis = graded.kind === 'number' ? graded.diagnosis : undefined;
	const candidates = diagnosis?.candidates ?? [];
	const [best] = candidates;
	if (diagnosis?.certainty === 'asserted') into.asserted += 1;
	if (diagnosis?.certainty === 'ambiguous') into.ambiguous += 1;
	if (best === undefined) into.unexplained += 1;
	if (isCause(best, answer)) into.first += 1;
	if (candidates.slice(0, 3).some((one) => isCause(one, answer))) into.amongThree += 1;
	if (best?.kind === 'slips' && best.steps[0] === answer.cause?.steps[0]) into.step += 1;
	return nameOf(best);
}

/** A figure that is printed for people and has no goal. */
function shown(name: string, value: number, unit = '%'): Figure {
	return { name, value, unit, goal: '–', holds: true };
}

function atLeast(name: string, value: number, goal: number): Figure {
	return { name, value, unit: '%', goal: `≥ ${goal} %`, holds: value >= goal };
}

function atMost(name: string, value: number, goal: number, unit: string): Figure {
	return { name, value, unit, goal: goal === 0 ? '0' : `≤ ${goal} ${unit}`, holds: value <= goal };
}

/** The tally of a key, made when first asked for. */
function under(tallies: Map<string, Tally>, key: string): Tally {
	const found = tallies.get(key) ?? tally();
	tallies.set(key, found);
	return found;
}

/** All problems' asks, one list a problem, scenario by scenario. */
function pool(): readonly (readonly (readonly Task[])[])[] {
	return shippedScenarios().map((scenario) =>
		problemsOf(scenario, PROBLEMS_EACH).map((problem) =>
			tasksOf(problem, (ask) => rightValue(problem, ask) !== undefined)
		)
	);
}

/** Answers, scenario by scenario in turn, until there are as many as wanted. */
function* answers(
	count: number,
	problems: readonly (readonly (readonly Task[])[])[],
	roll: Dice,
	make: (tasks: readonly Task[]) => WrongAnswer | undefined
): Generator<WrongAnswer> {
	const mostIdle = 1000 * problems.length;
	let idle = 0;
	for (let made = 0, turn = 0; made < count; turn += 1) {
		const ofScenario = problems[turn % problems.length] ?? [];
		const answer = make(ofScenario[roll(ofScenario.length)] ?? []);
		idle = answer === undefined ? idle + 1 : 0;
		if (idle > mostIdle) throw new Error('no shipped scenario lets such an answer be made');
		if (answer === undefined) continue;
		made += 1;
		yield answer;
	}
}

interface Measured {
	readonly all: Tally;
	readonly byAsk: ReadonlyMap<string, Tally>;
	readonly byScenario: ReadonlyMap<string, Tally>;
	readonly byStyle: ReadonlyMap<string, Tally>;
	readonly confusions: ReadonlyMap<string, number>;
}

function measureSlips(
	slips: 1 | 2,
	wanted: number,
	problems: readonly (readonly (readonly Task[])[])[],
	roll: Dice
): Measured {
	const all = tally();
	const byAsk = new Map<string, Tally>();
	const byScenario = new Map<string, Tally>();
	const byStyle = new Map<string, Tally>();
	const confusions = new Map<string, number>();
	for (const answer of answers(wanted, problems, roll, (tasks) => slippedAnswer(tasks, slips, roll))) {
		const { problem, ask } = answer.task;
		const graded = grade(answer);
		const found = count(all, answer, graded);
		count(under(byScenario, problem.scenario.id), answer, graded);
		count(under(byAsk, `${problem.scenario.id}/${ask.id}`), answer, graded);
		count(under(byStyle, answer.style), answer, graded);
		const cause = answer.cause?.slips.join(' + ') ?? '';
		if (found !== cause) {
			const confusion = `${cause} → ${found}`;
			confusions.set(confusion, (confusions.get(confusion) ?? 0) + 1);
		}
	}
	return { all, byAsk, byScenario, byStyle, confusions };
}

function measureNoise(problems: readonly (readonly (readonly Task[])[])[], roll: Dice): { all: Tally; hits: number } {
	const all = tally();
	let hits = 0;
	const wrong = (tasks: readonly Task[]): WrongAnswer | undefined => {
		const answer = noiseAnswer(tasks, roll);
		return answer === undefined || isRight(grade(answer)) ? undefined : answer;
	};
	for (const answer of answers(NOISE, problems, roll, wrong)) {
		count(all, answer, grade(answer));
		if (hitsSingle(answer)) hits += 1;
	}
	return { all, hits };
}

function details(kind: string, measured: Measured, share: (of: Tally) => number): Figure[] {
	const rows = [...measured.byScenario, ...measured.byAsk, ...measured.byStyle].map(([key, of]) =>
		shown(`${kind} · ${key} (${of.answers})`, share(of))
	);
	const confusions = [...measured.confusions].sort((a, b) => b[1] - a[1]).slice(0, SHOWN_CONFUSIONS);
	return [
		...rows,
		shown(`${kind} · ambiguous`, percent(measured.all.ambiguous, measured.all.answers)),
		shown(`${kind} · no pattern`, percent(measured.all.unexplained, measured.all.answers)),
		...confusions.map(([confusion, times]) => shown(`${kind} · taken for another: ${confusion}`, times, 'times'))
	];
}

const bench: Bench = {
	name: 'diagnosis',
	run() {
		const roll = dice(SEED);
		const problems = pool();
		const one = measureSlips(1, ONE, problems, roll);
		const two = measureSlips(2, TWO, problems, roll);
		const noise = measureNoise(problems, roll);
		const first = (of: Tally): number => percent(of.first, of.answers);
		const amongThree = (of: Tally): number => percent(of.amongThree, of.answers);
		return Promise.resolve([
			atLeast('one slip: true cause first', first(one.all), 97),
			atLeast('one slip: step right', percent(one.all.step, one.all.answers), 98),
			atMost('one slip: marked right', one.all.right, 0, 'answers'),
			atLeast('two slips: true pair among the first three', amongThree(two.all), 85),
			atMost('noise: a cause asserted', percent(noise.all.asserted, NOISE), 8, '%'),
			shown('noise: chance level, grid points within half a step of a single slip', percent(noise.hits, NOISE)),
			shown('two slips: true pair first', first(two.all)),
			shown('two slips: marked right', two.all.right, 'answers'),
			shown('noise: no pattern', percent(noise.all.unexplained, NOISE)),
			...details('one slip, first', one, first),
			...details('two slips, among three', two, amongThree)
		]);
	}
};

export default bench;
