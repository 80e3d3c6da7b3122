/** What an author must know of a scenario before it is published: found by drawing it many times. */
import { analyse, type Analysis, type GivenId, type Topic } from '#lib/arrest/index.ts';
import { fromSI, type Language, type UnitId } from '#lib/quantity/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { failedTopics } from './blame.ts';
import { drawSteps, type TurnedDown } from './draw.ts';
import { findingList, type Find, type InspectFinding, type Severity } from './finding.ts';
import { judgeAnswers, judgeSlips, tallyAsk, type AskTally } from './inspect-answers.ts';
import { judgeDraws } from './inspect-draws.ts';
import { judgeNumbers, tallyDecoys, type DecoyTally } from './inspect-numbers.ts';
import { culprit, impossibleIn, type Impossible } from './inspect-site.ts';
import { judgeStates, tallyStates, type StateTally } from './inspect-states.ts';
import { trialsOf, type Trials } from './inspect-trials.ts';
import { judgeWords } from './inspect-words.ts';
import { fieldOfGiven } from './places.ts';
import { numberAsks } from './problem.ts';
import { readingOf, textsOf, type Reading } from './reading.ts';
import type { Scenario } from './schema.ts';
import { spansOf } from './spans.ts';

export interface InspectOptions {
	/** How many seeds are drawn. */
	readonly draws: number;
	/** The first of them, 0 by default. */
	readonly firstSeed?: number | undefined;
}

/** How far an inspection is: draws and trials done, of all. */
export interface InspectProgress {
	readonly done: number;
	readonly of: number;
}

export interface AnswerSpread {
	readonly ask: string;
	readonly unit: UnitId;
	/** Least, first quartile, median, third quartile, greatest, in the unit; undefined if no draw gave a value. */
	readonly values: readonly [number, number, number, number, number] | undefined;
	/** Draws in which the right answer is that it cannot be stated from the label. */
	readonly notStated: number;
	/** In how many draws each slip gives another number. */
	readonly slips: Readonly<Partial<Record<SlipId, number>>>;
}

/** Two slips, or a slip and the right answer, that a number cannot tell apart. */
export interface AlikePair {
	readonly ask: string;
	readonly slips: readonly [SlipId | 'right', SlipId];
	/** Share of the tries in which they fall together, of those in which both give a number. */
	readonly share: number;
	readonly tries: number;
}

export interface Inspection {
	readonly scenario: { readonly id: string; readonly version: number };
	/** Seeds drawn: fewer than asked for where so many tries are turned down that more would only take time. */
	readonly draws: number;
	readonly firstSeed: number;
	readonly drawn: number;
	readonly meanTries: number;
	readonly mostTries: number;
	readonly turnedDown: Readonly<Partial<Record<TurnedDown, number>>>;
	readonly results: Readonly<Record<Analysis['verdict']['result'], number>>;
	/** In how many draws a check of a topic fails. */
	readonly failedBy: Readonly<Partial<Record<Topic, number>>>;
	readonly answers: readonly AnswerSpread[];
	readonly alike: readonly AlikePair[];
	/** Slips that have a place in an ask and never change its number. */
	readonly withoutEffect: readonly SlipId[];
	readonly reading: Readonly<Record<Language, Reading | undefined>>;
	readonly findings: readonly InspectFinding[];
}

/** What is measured, before it is judged. */
export type Measured = Omit<Inspection, 'findings'>;

/** @reason good scenarios need under thirty tries a draw; one that needs more is known well enough when so many are spent. */
const TRIES_A_DRAW = 60;

/**
 * @returns what drawing the scenario many times shows. Pure: the same options give the same report.
 * @throws RangeError if not even one draw is asked for.
 */
export function inspect(scenario: Scenario, options: InspectOptions): Inspection {
	const steps = inspectSteps(scenario, options);
	for (;;) {
		const step = steps.next();
		if (step.done === true) return step.value;
	}
}

/**
 * As `inspect`, in steps of a millisecond or so: yields after every draw, now and then within a long one, and
 * among the trials, so that who runs it can stop between two.
 */
export function* inspectSteps(scenario: Scenario, options: InspectOptions): Generator<InspectProgress, Inspection, void> {
	const { draws, firstSeed = 0 } = options;
	if (!Number.isInteger(draws) || draws < 1) throw new RangeError(`draws must be a whole number from 1 up, not ${draws}`);
	const of = 2 * draws;
	const { find, findings } = findingList();
	const spans = spansOf(scenario);
	const turnedDown: Partial<Record<TurnedDown, number>> = {};
	const results = { passes: 0, fails: 0, 'cannot-be-shown': 0 };
	const failedBy: Partial<Record<Topic, number>> = {};
	const decoys: DecoyTally = new Map();
	const states: StateTally = new Map();
	const tallies = numberAsks(scenario).map((ask): AskTally => {
		return { ask, index: scenario.asks.indexOf(ask), values: [], notStated: 0, offGrid: 0, absent: new Map(), slips: new Map() };
	});
	let made = 0;
	let drawn = 0;
	let tries = 0;
	let mostTries = 0;
	for (; made < draws && tries < TRIES_A_DRAW * draws; made += 1) {
		const seed = firstSeed + made;
		const steps = drawSteps(scenario, seed);
		let step = steps.next();
		for (; step.done !== true; step = steps.next()) yield { done: made, of };
		const result = step.value;
		tries += result.tries;
		mostTries = Math.max(mostTries, result.tries);
		for (const [reason, count] of Object.entries(result.reasons) as [TurnedDown, number][]) {
			turnedDown[reason] = (turnedDown[reason] ?? 0) + count;
		}
		if (result.kind === 'drawn') {
			drawn += 1;
			const { problem } = result;
			const outcome = analyse(problem.drawn.plan);
			if (outcome.kind === 'analysed') {
				const { analysis } = outcome;
				results[analysis.verdict.result] += 1;
				for (const topic of failedTopics(analysis)) failedBy[topic] = (failedBy[topic] ?? 0) + 1;
				for (const tally of tallies) tallyAsk(tally, problem, analysis);
				tallyDecoys(decoys, scenario, problem, analysis);
			}
			for (const found of impossibleIn(problem)) tellImpossible(scenario, found, culprit(found, problem, spans), 'fault', find, seed);
			tallyStates(states, scenario, problem);
		}
		yield { done: made + 1, of };
	}

	const trying = trialsOf(scenario, spans, draws, firstSeed);
	let tried = trying.next();
	for (; tried.done !== true; tried = trying.next()) yield { done: draws + tried.value, of };
	const trials = tried.value;
	const measured: Measured = {
		scenario: { id: scenario.id, version: scenario.version },
		draws: made,
		firstSeed,
		drawn,
		meanTries: tries / made,
		mostTries,
		turnedDown,
		results,
		failedBy,
		answers: tallies.map(spreadOf),
		alike: alikePairs(trials),
		withoutEffect: [...trials.placed.keys()].filter((slip) => !trials.effective.has(slip)),
		reading: readings(scenario)
	};
	const judged = { scenario, measured, trials, spans, find };
	for (const { found, given, count } of trials.impossible.values()) {
		if (count > draws / 2) tellImpossible(scenario, found, given, 'warning', find);
	}
	const judges: readonly (() => void)[] = [
		() => judgeDraws(judged),
		() => judgeAnswers(judged, tallies),
		() => judgeSlips(judged),
		() => judgeNumbers(judged, decoys),
		() => judgeStates(judged, states),
		() => judgeWords(judged)
	];
	for (const judge of judges) {
		judge();
		yield { done: of, of };
	}
	return { ...measured, findings };
}

function tellImpossible(scenario: Scenario, { site, givens }: Impossible, given: GivenId, severity: Severity, find: Find, seed?: number): void {
	const also = givens.filter((one) => one !== given).map((one) => fieldOfGiven(scenario, one));
	find('impossible-site', severity, fieldOfGiven(scenario, given), { which: site, given }, { seed, also });
}

function readings(scenario: Scenario): Inspection['reading'] {
	const read = (language: Language): Reading | undefined => readingOf(textsOf(scenario, language), language);
	return { en: read('en'), es: read('es') };
}

function alikePairs(trials: Trials): readonly AlikePair[] {
	return [...trials.meetings.values()]
		.filter((one) => one.near > 0)
		.map((one): AlikePair => ({ ask: one.ask.id, slips: one.slips, share: one.near / one.both, tries: one.near }))
		.sort((a, b) => b.tries - a.tries);
}

function spreadOf(tally: AskTally): AnswerSpread {
	const { unit } = tally.ask.precision;
	const sorted = [...tally.values].sort((a, b) => a - b);
	const at = (share: number): number => fromSI(sorted[Math.round(share * (sorted.length - 1))] ?? NaN, unit);
	return {
		ask: tally.ask.id,
		unit,
		values: sorted.length === 0 ? undefined : [at(0), at(1 / 2 / 2), at(1 / 2), at(1 - 1 / 2 / 2), at(1)],
		notStated: tally.notStated,
		slips: Object.fromEntries(tally.slips)
	};
}
