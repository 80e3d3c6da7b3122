/** What an author must know of a scenario before it is published: found by drawing it many times. */
import { analyse, targetKey, type Analysis, type Topic } from '#lib/arrest/index.ts';
import { valuesOf } from '#lib/expression/index.ts';
import { fromSI, type Language, type UnitId } from '#lib/quantity/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { chanceOf } from './chance.ts';
import { CHANGED, draw, inputsFor, variantsFor, type TurnedDown } from './draw.ts';
import { impossibleIn, type ImpossibleSite } from './inspect-site.ts';
import { numberAsks, precisionOf, targetOf, type Problem } from './problem.ts';
import { readingOf, textsOf, type Reading } from './reading.ts';
import { problemOf } from './rebuild.ts';
import { sample } from './sample.ts';
import type { NumberAsk, Scenario } from './schema.ts';
import { toleranceOf } from './tolerance.ts';

export interface InspectOptions {
	/** How many seeds are drawn. */
	readonly draws: number;
	/** The first of them, 0 by default. */
	readonly firstSeed?: number | undefined;
}

export type FindingCode =
	| 'seldom-drawn'
	| 'many-tries'
	| 'aim-not-met'
	| 'lopsided'
	| 'ask-without-value'
	| 'ask-without-slips'
	| 'narrow-answers'
	| 'slips-alike'
	| 'declared-but-not-equal'
	| 'slip-without-effect'
	| 'impossible-site'
	| 'fact-untold'
	| 'long-sentence'
	| 'long-sentences'
	| 'hard-words';

/** A fault keeps a scenario from being published; a warning asks to look again; a note is to be known. */
export type Severity = 'fault' | 'warning' | 'note';

/** One thing found, without words: a code, the field it concerns, and what belongs to it. */
export interface InspectFinding {
	readonly code: FindingCode;
	readonly severity: Severity;
	/** Where in the document. */
	readonly path: readonly (string | number)[];
	/** A seed that shows it, where one does. */
	readonly seed?: number | undefined;
	/** Numbers and ids that a message about it needs. */
	readonly detail: Readonly<Record<string, string | number>>;
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

/** @reason a learner meets any seed: one in two hundred may be missing before the author must act. */
const SHARE_DRAWN = 0.995;
/** @reason a draw shall take few milliseconds (acceptance: p99 within 5 ms). */
const MEAN_TRIES = 50;
/** @reason about half of the draws fail: further off than this learners guess by habit. */
const BALANCE = { warning: 0.1, fault: 0.3 };
/** @reason fewer steps of the answer grid between the quartiles let an answer be guessed. */
const STEPS_APART = 8;
/** @reason a pair seldom alike is turned down try by try; one mostly alike makes draws rare. */
const ALIKE = { warning: 0.3, fault: 0.9 };
/** @source plain-language guidance of the project's reference (learning-and-records.md 9.3): mean at most 15 words, longest 20. */
const SENTENCE = { mean: 15, longest: 20 };
/** @source same place: Flesch–Kincaid grade at most 8 in English, Fernández-Huerta at least 70 in Spanish; from memory. */
const EASY = { en: 8, es: 70 };
const LANGUAGES = ['en', 'es'] as const;

interface AskTally {
	readonly ask: NumberAsk;
	readonly index: number;
	readonly values: number[];
	notStated: number;
	readonly slips: Map<SlipId, number>;
}

/**
 * @returns what drawing the scenario many times shows. Pure: the same options give the same report.
 * @throws RangeError if not even one draw is asked for.
 */
export function inspect(scenario: Scenario, options: InspectOptions): Inspection {
	const { draws, firstSeed = 0 } = options;
	if (!Number.isInteger(draws) || draws < 1) throw new RangeError(`draws must be a whole number from 1 up, not ${draws}`);
	const findings: InspectFinding[] = [];
	const seen = new Set<string>();
	/** Tells each thing once a field, with the first seed that shows it. */
	const find = (finding: InspectFinding): void => {
		const key = `${finding.code} ${finding.path.join('.')} ${finding.detail['which'] ?? ''}`;
		if (seen.has(key)) return;
		seen.add(key);
		findings.push(finding);
	};

	const turnedDown: Partial<Record<TurnedDown, number>> = {};
	const results = { passes: 0, fails: 0, 'cannot-be-shown': 0 };
	const failedBy: Partial<Record<Topic, number>> = {};
	const tallies = numberAsks(scenario).map((ask): AskTally => {
		return { ask, index: scenario.asks.indexOf(ask), values: [], notStated: 0, slips: new Map() };
	});
	let drawn = 0;
	let tries = 0;
	let mostTries = 0;
	for (let seed = firstSeed; seed < firstSeed + draws; seed += 1) {
		const result = draw(scenario, seed);
		tries += result.tries;
		mostTries = Math.max(mostTries, result.tries);
		for (const [reason, count] of Object.entries(result.reasons) as [TurnedDown, number][]) {
			turnedDown[reason] = (turnedDown[reason] ?? 0) + count;
		}
		if (result.kind === 'none') continue;
		drawn += 1;
		const outcome = analyse(result.problem.drawn.plan);
		if (outcome.kind === 'refused') continue;
		const { analysis } = outcome;
		results[analysis.verdict.result] += 1;
		for (const topic of failedTopics(analysis)) failedBy[topic] = (failedBy[topic] ?? 0) + 1;
		for (const tally of tallies) tallyAsk(tally, result.problem, analysis, find);
		for (const { site, given } of impossibleIn(result.problem)) {
			find({ code: 'impossible-site', severity: 'fault', path: ['draws'], seed, detail: { which: site, given } satisfies { which: ImpossibleSite; given: string } });
		}
	}

	const trials = trialsOf(scenario, draws, firstSeed);
	const answers = tallies.map(spreadOf);
	const reading = Object.fromEntries(LANGUAGES.map((language) => [language, readingOf(textsOf(scenario, language), language)]));
	const inspection = {
		scenario: { id: scenario.id, version: scenario.version },
		draws,
		firstSeed,
		drawn,
		meanTries: tries / draws,
		mostTries,
		turnedDown,
		results,
		failedBy,
		answers,
		...trials,
		reading: reading as Inspection['reading']
	};
	judgeDraws(scenario, inspection, find);
	judgeAnswers(scenario, tallies, inspection, find);
	judgeSlips(scenario, inspection, find);
	judgeFacts(scenario, find);
	judgeReading(inspection.reading, find);
	return { ...inspection, findings };
}

type Find = (finding: InspectFinding) => void;
type Measured = Omit<Inspection, 'findings'>;

function failedTopics(analysis: Analysis): ReadonlySet<Topic> {
	return new Set(analysis.checks.filter((check) => check.decides && check.status === 'failed').map((check) => check.topic));
}

function tallyAsk(tally: AskTally, problem: Problem, analysis: Analysis, find: Find): void {
	const { ask, index } = tally;
	const finding = analysis.quantities.get(targetKey(targetOf(ask)));
	if (finding?.known !== true) {
		const why = finding?.absence.why ?? 'missing';
		if (why === 'outside-label') tally.notStated += 1;
		else find({ code: 'ask-without-value', severity: 'fault', path: ['asks', index], seed: problem.seed, detail: { which: why } });
		return;
	}
	tally.values.push(finding.value);
	const set = variantsFor(problem, ask);
	const values = valuesOf(set.singleProgram, inputsFor(problem, set));
	for (const [i, single] of set.singles.entries()) {
		const [slip] = single.slips;
		const value = values[i + 1] ?? NaN;
		if (slip === undefined || !(value > 0) || Math.abs(value - finding.value) <= CHANGED) continue;
		tally.slips.set(slip, (tally.slips.get(slip) ?? 0) + 1);
	}
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

/** Two numbers of one ask over many tries that nobody picked: how often both are numbers, near, and the same. */
interface Meeting {
	readonly ask: NumberAsk;
	readonly slips: readonly [SlipId | 'right', SlipId];
	both: number;
	near: number;
	same: number;
}

interface Trials {
	readonly alike: readonly AlikePair[];
	readonly withoutEffect: readonly SlipId[];
	/** Keys of declared pairs that are the same in every try of some ask in which both have a place. */
	readonly same: ReadonlySet<string>;
}

function trialsOf(scenario: Scenario, count: number, firstSeed: number): Trials {
	const meetings = new Map<string, Meeting>();
	const placed = new Set<SlipId>();
	const effective = new Set<SlipId>();
	for (let i = 0; i < count; i += 1) {
		const problem = problemOf(scenario, sample(scenario, chanceOf([scenario.id, scenario.version, 'inspect', firstSeed + i])), i, 0);
		for (const ask of numberAsks(scenario)) {
			const set = variantsFor(problem, ask);
			const values = valuesOf(set.singleProgram, inputsFor(problem, set));
			const right = values[0] ?? NaN;
			if (!(right > 0)) continue;
			const tolerance = toleranceOf(scenario, ask, right);
			const numbers: { id: SlipId | 'right'; value: number }[] = [{ id: 'right', value: right }];
			for (const [at, single] of set.singles.entries()) {
				const [slip] = single.slips;
				const value = values[at + 1] ?? NaN;
				if (slip === undefined) continue;
				placed.add(slip);
				if (!(value > 0) || Math.abs(value - right) <= CHANGED) continue;
				effective.add(slip);
				numbers.push({ id: slip, value });
			}
			meet(meetings, ask, numbers, (first) => 2 * (first === 'right' ? tolerance.cautious : tolerance.apart));
		}
	}
	const alike = [...meetings.values()]
		.filter((one) => one.near > 0)
		.map((one): AlikePair => ({ ask: one.ask.id, slips: one.slips, share: one.near / one.both, tries: one.near }))
		.sort((a, b) => b.tries - a.tries);
	const same = new Set([...meetings.values()].filter((one) => one.same === one.both).map((one) => pairKey(one.slips)));
	return { alike, withoutEffect: [...placed].filter((slip) => !effective.has(slip)), same };
}

function pairKey(slips: readonly [string, string]): string {
	return [...slips].sort().join(' ');
}

function meet(
	meetings: Map<string, Meeting>,
	ask: NumberAsk,
	numbers: readonly { readonly id: SlipId | 'right'; readonly value: number }[],
	apart: (first: SlipId | 'right') => number
): void {
	for (const [i, first] of numbers.entries()) {
		for (const second of numbers.slice(i + 1)) {
			if (second.id === 'right') continue;
			const key = `${ask.id} ${first.id} ${second.id}`;
			let meeting = meetings.get(key);
			if (meeting === undefined) {
				meeting = { ask, slips: [first.id, second.id], both: 0, near: 0, same: 0 };
				meetings.set(key, meeting);
			}
			const difference = Math.abs(first.value - second.value);
			meeting.both += 1;
			if (difference <= apart(first.id)) meeting.near += 1;
			if (difference <= CHANGED) meeting.same += 1;
		}
	}
}

function judgeDraws(scenario: Scenario, of: Measured, find: Find): void {
	const share = of.drawn / of.draws;
	if (share < 1) {
		find({ code: 'seldom-drawn', severity: share < SHARE_DRAWN ? 'fault' : 'note', path: ['draws'], detail: { share } });
	}
	if (of.meanTries > MEAN_TRIES) {
		find({ code: 'many-tries', severity: 'warning', path: ['draws'], detail: { mean: of.meanTries, most: of.mostTries } });
	}
	scenario.aims.forEach((aim, i) => {
		const met =
			aim.fails === 'nothing' ? of.results.passes : aim.fails === 'unknown' ? of.results['cannot-be-shown'] : ((of.failedBy as Readonly<Record<string, number | undefined>>)[aim.fails] ?? 0);
		if (met === 0) find({ code: 'aim-not-met', severity: 'fault', path: ['aims', i], detail: { which: aim.fails } });
	});
	if (of.drawn === 0) return;
	const passing = of.results.passes / of.drawn;
	const off = Math.abs(passing - 1 / 2);
	if (off > BALANCE.warning) {
		find({ code: 'lopsided', severity: off > BALANCE.fault ? 'fault' : 'warning', path: ['aims'], detail: { passing } });
	}
}

function judgeAnswers(scenario: Scenario, tallies: readonly AskTally[], of: Measured, find: Find): void {
	for (const [i, { ask, index, slips }] of tallies.entries()) {
		const values = of.answers[i]?.values;
		if (values === undefined) continue;
		const [, lower, , upper] = values;
		const steps = (upper - lower) / fromSI(precisionOf(ask), ask.precision.unit);
		if (steps < STEPS_APART) {
			find({ code: 'narrow-answers', severity: 'warning', path: ['asks', index], detail: { ask: ask.id, steps } });
		}
		if (slips.size === 0) {
			find({ code: 'ask-without-slips', severity: 'warning', path: ['asks', index], detail: { ask: ask.id } });
		}
	}
}

function judgeSlips(scenario: Scenario, of: Measured & Trials, find: Find): void {
	const declared = new Set(scenario.equalSlips.map(pairKey));
	for (const pair of of.alike) {
		if (pair.share < ALIKE.warning || declared.has(pairKey(pair.slips))) continue;
		find({
			code: 'slips-alike',
			severity: pair.share >= ALIKE.fault ? 'fault' : 'warning',
			path: ['asks', scenario.asks.findIndex((ask) => ask.id === pair.ask)],
			detail: { which: pairKey(pair.slips), share: pair.share }
		});
	}
	scenario.equalSlips.forEach((pair, i) => {
		if (of.same.has(pairKey(pair))) return;
		find({ code: 'declared-but-not-equal', severity: 'fault', path: ['equalSlips', i], detail: { which: pairKey(pair) } });
	});
	for (const slip of of.withoutEffect) {
		find({ code: 'slip-without-effect', severity: 'note', path: ['asks'], detail: { which: slip } });
	}
}

/** A drawn fact that no sentence tells cannot be known by the learner. */
function judgeFacts(scenario: Scenario, find: Find): void {
	for (const draw of scenario.draws) {
		if (!('fact' in draw)) continue;
		const fact = draw.fact === 'obstacle' ? `obstacle:${draw.id}` : draw.fact;
		for (const language of LANGUAGES) {
			const sentences = scenario.words[language].facts[fact];
			for (const state of new Set(draw.among.map(String))) {
				if (sentences?.[state] !== undefined) continue;
				find({ code: 'fact-untold', severity: 'fault', path: ['words', language, 'facts', fact, state], detail: { which: state } });
			}
		}
	}
}

function judgeReading(reading: Inspection['reading'], find: Find): void {
	for (const language of LANGUAGES) {
		const of = reading[language];
		if (of === undefined) continue;
		if (of.wordsPerSentence > SENTENCE.mean) {
			find({ code: 'long-sentences', severity: 'fault', path: ['words', language], detail: { mean: of.wordsPerSentence } });
		}
		if (of.longest.words > SENTENCE.longest) {
			find({ code: 'long-sentence', severity: 'warning', path: of.longest.path, detail: { words: of.longest.words } });
		}
		if (language === 'en' ? of.measure > EASY.en : of.measure < EASY.es) {
			find({ code: 'hard-words', severity: 'warning', path: ['words', language], detail: { measure: of.measure } });
		}
	}
}
