/** Plans of a scenario that nobody picked: what they are like before slips, constraints and aims choose among them. */
import { targetKey, type Analysis, type GivenId, type LanyardPlan, type Refusal, type Topic } from '#lib/arrest/index.ts';
import { valuesOf } from '#lib/expression/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { analysisOfPlan, failedTopics, statusOfTopic } from './blame.ts';
import { chanceOf } from './chance.ts';
import { CHANGED, constrained, inputsFor, keeps, variantsFor } from './draw.ts';
import { culprit, impossibleIn, type Impossible } from './inspect-site.ts';
import { numberAsks, targetOf, type Problem } from './problem.ts';
import { problemOf } from './rebuild.ts';
import { sample } from './sample.ts';
import type { NumberAsk, Scenario } from './schema.ts';
import type { Span } from './spans.ts';
import { toleranceOf } from './tolerance.ts';

/** Two numbers of one ask over the trials: how often both are numbers, near, and the same. */
export interface Meeting {
	readonly ask: NumberAsk;
	readonly slips: readonly [SlipId | 'right', SlipId];
	both: number;
	near: number;
	same: number;
	/** The first trials in which they are near. */
	readonly examples: Problem[];
}

/** What the trials say of one constraint. */
export interface ConstraintTally {
	kept: number;
	/** SI; turned round if no trial has a value. */
	least: number;
	greatest: number;
	/** Trials in which each of the other constraints is kept as well, by index. */
	readonly keptWith: number[];
}

/** What the trials say of one topic. */
export interface TopicTally {
	failed: number;
	held: number;
	unknown: number;
	/** Trials in which it fails and nothing else does. */
	alone: number;
}

export interface Trials {
	readonly count: number;
	/** The first trials that are analysed. */
	readonly plans: LanyardPlan[];
	analysed: number;
	passes: number;
	cannotBeShown: number;
	/** Trials that keep all constraints. */
	keptAll: number;
	/** Trials in which a limit from memory fails. */
	fromMemory: number;
	readonly refused: Map<Refusal['why'], number>;
	readonly constraints: readonly ConstraintTally[];
	readonly topics: ReadonlyMap<string, TopicTally>;
	/** By the ask's id: trials that give it a right answer. */
	readonly answered: Map<string, number>;
	/** By the ask's id: what its answer lacks in some trial. */
	readonly missing: Map<string, Set<GivenId>>;
	/** What is impossible in the trials, by kind and given at fault. */
	readonly impossible: Map<string, { readonly found: Impossible; readonly given: GivenId; count: number }>;
	readonly meetings: ReadonlyMap<string, Meeting>;
	/** Slips that have a place in an ask, with the ask. */
	readonly placed: ReadonlyMap<SlipId, NumberAsk>;
	/** Slips that change an answer. */
	readonly effective: ReadonlySet<SlipId>;
}

/** @reason a slice of a millisecond or so. */
const TRIALS_A_STEP = 8;
/** @reason as many as are tried to find the field behind a finding, and a few over. */
const EXAMPLES = 8;

/** @returns what `count` plans of the scenario are like. Yields now and then with how many it has looked at. */
export function* trialsOf(scenario: Scenario, spans: ReadonlyMap<GivenId, Span>, count: number, firstSeed: number): Generator<number, Trials, void> {
	const tally = {
		count,
		plans: [] as LanyardPlan[],
		analysed: 0,
		passes: 0,
		cannotBeShown: 0,
		keptAll: 0,
		fromMemory: 0,
		refused: new Map<Refusal['why'], number>(),
		constraints: scenario.constraints.map((): ConstraintTally => ({ kept: 0, least: Infinity, greatest: -Infinity, keptWith: scenario.constraints.map(() => 0) })),
		topics: new Map<string, TopicTally>(),
		answered: new Map<string, number>(),
		missing: new Map<string, Set<GivenId>>(),
		impossible: new Map<string, { readonly found: Impossible; readonly given: GivenId; count: number }>(),
		meetings: new Map<string, Meeting>(),
		placed: new Map<SlipId, NumberAsk>(),
		effective: new Set<SlipId>()
	};
	const asks = numberAsks(scenario);
	for (let i = 0; i < count; i += 1) {
		const problem = problemOf(scenario, sample(scenario, chanceOf([scenario.id, scenario.version, 'inspect', firstSeed + i])), i, 0);
		for (const ask of asks) tallySlips(tally, scenario, problem, ask);
		tallyPlan(tally, scenario, problem, asks);
		for (const found of impossibleIn(problem)) {
			const given = culprit(found, problem, spans);
			const key = `${found.site} ${given}`;
			const before = tally.impossible.get(key);
			if (before === undefined) tally.impossible.set(key, { found, given, count: 1 });
			else before.count += 1;
		}
		if (i % TRIALS_A_STEP === TRIALS_A_STEP - 1) yield i + 1;
	}
	return tally;
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] };
type Tally = Mutable<Omit<Trials, 'meetings' | 'placed' | 'effective' | 'topics'>> & {
	readonly meetings: Map<string, Meeting>;
	readonly placed: Map<SlipId, NumberAsk>;
	readonly effective: Set<SlipId>;
	readonly topics: Map<string, TopicTally>;
};

function tallyPlan(tally: Tally, scenario: Scenario, problem: Problem, asks: readonly NumberAsk[]): void {
	const { plan } = problem.drawn;
	const analysis = analysisOfPlan(plan);
	if (analysis === undefined) {
		const why: Refusal['why'] = plan.lineMeetsEdge ? 'line-over-edge' : 'away-from-edge';
		tally.refused.set(why, (tally.refused.get(why) ?? 0) + 1);
		return;
	}
	tally.analysed += 1;
	if (tally.plans.length < EXAMPLES) tally.plans.push(plan);
	if (analysis.verdict.result === 'passes') tally.passes += 1;
	if (analysis.verdict.result === 'cannot-be-shown') tally.cannotBeShown += 1;
	if (analysis.checks.some((check) => !check.decides && check.status === 'failed')) tally.fromMemory += 1;
	tallyTopics(tally.topics, analysis);
	for (const ask of asks) {
		const finding = analysis.quantities.get(targetKey(targetOf(ask)));
		if (finding?.known !== false || finding.absence.why !== 'missing') continue;
		const missing = tally.missing.get(ask.id) ?? new Set();
		tally.missing.set(ask.id, missing);
		for (const given of finding.absence.givens) missing.add(given);
	}
	const kept = scenario.constraints.map((constraint, i) => {
		const value = constrained(problem, analysis, constraint.of);
		const of = tally.constraints[i];
		if (of !== undefined && value !== undefined) {
			of.least = Math.min(of.least, value);
			of.greatest = Math.max(of.greatest, value);
		}
		return keeps(constraint, value);
	});
	if (kept.every(Boolean)) tally.keptAll += 1;
	kept.forEach((one, i) => {
		const of = tally.constraints[i];
		if (!one || of === undefined) return;
		of.kept += 1;
		kept.forEach((other, k) => {
			if (other) of.keptWith[k] = (of.keptWith[k] ?? 0) + 1;
		});
	});
}

function tallyTopics(topics: Map<string, TopicTally>, analysis: Analysis): void {
	const failed = failedTopics(analysis);
	const all = new Set<Topic>(analysis.checks.filter((check) => check.decides).map((check) => check.topic));
	for (const topic of all) {
		const status = statusOfTopic(analysis, topic);
		if (status === undefined) continue;
		const of = topics.get(topic) ?? { failed: 0, held: 0, unknown: 0, alone: 0 };
		topics.set(topic, of);
		of[status] += 1;
		if (failed.has(topic) && failed.size === 1) of.alone += 1;
	}
}

function tallySlips(tally: Tally, scenario: Scenario, problem: Problem, ask: NumberAsk): void {
	const set = variantsFor(problem, ask);
	const values = valuesOf(set.singleProgram, inputsFor(problem, set));
	const right = values[0] ?? NaN;
	if (!(right > 0)) return;
	tally.answered.set(ask.id, (tally.answered.get(ask.id) ?? 0) + 1);
	const tolerance = toleranceOf(scenario, ask, right);
	const numbers: { id: SlipId | 'right'; value: number }[] = [{ id: 'right', value: right }];
	for (const [at, single] of set.singles.entries()) {
		const [slip] = single.slips;
		const value = values[at + 1] ?? NaN;
		if (slip === undefined) continue;
		if (!tally.placed.has(slip)) tally.placed.set(slip, ask);
		if (!(value > 0) || Math.abs(value - right) <= CHANGED) continue;
		tally.effective.add(slip);
		numbers.push({ id: slip, value });
	}
	for (const [i, first] of numbers.entries()) {
		const apart = 2 * (first.id === 'right' ? tolerance.cautious : tolerance.apart);
		for (let k = i + 1; k < numbers.length; k += 1) {
			const second = numbers[k];
			if (second === undefined || second.id === 'right') continue;
			const meeting = meetingOf(tally.meetings, ask, first.id, second.id);
			const difference = Math.abs(first.value - second.value);
			meeting.both += 1;
			if (difference <= CHANGED) meeting.same += 1;
			if (difference > apart) continue;
			meeting.near += 1;
			if (meeting.examples.length < EXAMPLES) meeting.examples.push(problem);
		}
	}
}

function meetingOf(meetings: Map<string, Meeting>, ask: NumberAsk, first: SlipId | 'right', second: SlipId): Meeting {
	const key = `${ask.id} ${first} ${second}`;
	const before = meetings.get(key);
	if (before !== undefined) return before;
	const meeting: Meeting = { ask, slips: [first, second], both: 0, near: 0, same: 0, examples: [] };
	meetings.set(key, meeting);
	return meeting;
}

/** @returns both ids of a pair, in order, with a space. */
export function pairKey(slips: readonly [string, string]): string {
	return [...slips].sort().join(' ');
}
