/** Whether a scenario can be drawn as it asks: its constraints, its aims, its balance; and which field is in the way. */
import type { GivenId, LanyardPlan } from '#lib/arrest/index.ts';
import { analysisOfPlan, fieldDeciding, statusOfTopic, type Blamed } from './blame.ts';
import type { TurnedDown } from './draw.ts';
import type { FieldPath, Find } from './finding.ts';
import { blameForPair, fieldWithoutAnswer } from './inspect-answers.ts';
import type { Measured } from './inspect.ts';
import { pairKey, type Meeting, type Trials } from './inspect-trials.ts';
import { fieldOfFact } from './places.ts';
import type { Scenario } from './schema.ts';
import type { Span } from './spans.ts';

/** @reason a learner meets any seed: one in two hundred may be missing before the author must act. */
const SHARE_DRAWN = 0.995;
/** @reason a draw shall take few milliseconds (acceptance: p99 within 5 ms). */
const MEAN_TRIES = 50;
/** @reason about half of the draws fail: further off than this learners guess by habit. */
const BALANCE = { warning: 0.1, fault: 0.3 };

/** @reason an outcome that so many draws should have had is missed by chance once in twenty thousand times. */
const EXPECTED = 10;

/** What every judge looks at. */
export interface Case {
	readonly scenario: Scenario;
	readonly measured: Measured;
	readonly trials: Trials;
	readonly spans: ReadonlyMap<GivenId, Span>;
	readonly find: Find;
}

/** Judges refusals, constraints, checks, aims, how often and how evenly the scenario draws. */
export function judgeDraws(of: Case): void {
	judgeRefusals(of);
	judgeConstraints(of);
	judgeChecks(of);
	judgeAims(of);
	judgeBalance(of);
	const { measured, find } = of;
	const share = measured.drawn / measured.draws;
	if (share === 1 && measured.meanTries <= MEAN_TRIES) return;
	const which = mostTurnedDown(measured);
	const { path, also } = causeOf(of, which);
	if (share < 1) find('seldom-drawn', share < SHARE_DRAWN ? 'fault' : 'note', path, { share, which }, { also });
	if (measured.meanTries > MEAN_TRIES) {
		find('many-tries', 'warning', path, { mean: measured.meanTries, most: measured.mostTries, which }, { also });
	}
}

function judgeRefusals({ scenario, trials, find }: Case): void {
	for (const why of trials.refused.keys()) {
		const edge = why === 'line-over-edge';
		find('plan-refused', 'fault', fieldOfFact(scenario, edge ? 'edge' : 'direction'), { which: why });
	}
}

/** What no plan keeps, and what excludes nothing. Drawn plans keep every constraint: then none is in the way. */
function judgeConstraints({ scenario, measured, trials, find }: Case): void {
	if (trials.analysed === 0) return;
	let explained = false;
	scenario.constraints.forEach(({ of }, i) => {
		const tally = trials.constraints[i];
		if (tally === undefined) return;
		if (tally.kept === trials.analysed) find('constraint-never-binds', 'note', ['constraints', i], { of });
		if (measured.drawn > 0) return;
		if (tally.kept === 0) {
			explained = true;
			const { least, greatest } = tally;
			find('constraint-never-met', 'fault', ['constraints', i], { of, ...(least <= greatest ? { least, greatest } : {}) });
			return;
		}
		scenario.constraints.forEach((other, k) => {
			if (k === i || tally.keptWith[k] !== 0 || trials.constraints[k]?.kept === 0) return;
			explained = true;
			find('constraints-clash', 'fault', ['constraints', i], { of, other: other.of, with: k }, { also: [['constraints', k]] });
		});
	});
	if (measured.drawn === 0 && !explained && trials.keptAll === 0 && scenario.constraints.length > 0) {
		const all = scenario.constraints.map((_, i): FieldPath => ['constraints', i]);
		find('constraints-never-together', 'fault', ['constraints'], { count: all.length }, { also: all });
	}
}

/** Checks that come out one way in every plan, though an aim wants them another way. */
function judgeChecks(of: Case): void {
	const { scenario, measured, trials, find } = of;
	if (trials.analysed === 0) return;
	for (const [topic, tally] of trials.topics) {
		const others = scenario.aims.some((aim) => aim.fails !== topic);
		const failsInDraws = measured.failedBy[topic as keyof typeof measured.failedBy] ?? 0;
		if (tally.failed === trials.analysed && others && failsInDraws === measured.drawn) {
			const cause = decided(of, (plan) => statusIn(plan, topic) !== 'failed');
			find('check-always-fails', 'fault', cause?.path ?? ['base'], { which: topic }, { also: cause?.also });
		}
		if (tally.failed === 0 && failsInDraws === 0 && scenario.aims.some((aim) => aim.fails === topic)) {
			const cause = decided(of, (plan) => statusIn(plan, topic) === 'failed');
			if (cause !== undefined) find('check-never-fails', 'fault', cause.path, { which: topic }, { also: cause.also });
		}
		const passWanted = scenario.aims.some((aim) => aim.fails === 'nothing') && measured.results.passes === 0;
		if (tally.unknown === trials.analysed && passWanted) {
			const cause = fieldDeciding(scenario, of.spans, trials.plans, (plan) => statusIn(plan, topic) !== 'unknown', false);
			find('check-never-known', 'fault', cause?.path ?? ['base'], { which: topic }, { also: cause?.also });
		}
	}
}

function statusIn(plan: LanyardPlan, topic: string): ReturnType<typeof statusOfTopic> {
	const analysis = analysisOfPlan(plan);
	return analysis === undefined ? undefined : statusOfTopic(analysis, topic);
}

function decided({ scenario, spans, trials }: Case, wanted: (plan: LanyardPlan) => boolean): Blamed | undefined {
	return fieldDeciding(scenario, spans, trials.plans, wanted);
}

/** How many draws came out as an aim asks. */
function metBy(measured: Measured, fails: string): number {
	if (fails === 'nothing') return measured.results.passes;
	if (fails === 'unknown') return measured.results['cannot-be-shown'];
	return (measured.failedBy as Readonly<Record<string, number | undefined>>)[fails] ?? 0;
}

function judgeAims({ scenario, measured, trials, find }: Case): void {
	const total = scenario.aims.reduce((sum, aim) => sum + aim.weight, 0);
	scenario.aims.forEach(({ fails, weight }, i) => {
		if (metBy(measured, fails) > 0) return;
		const topic = trials.topics.get(fails);
		const ever = fails === 'nothing' ? trials.passes : fails === 'unknown' ? trials.cannotBeShown : (topic?.failed ?? 0);
		const alone = topic === undefined ? ever : topic.alone;
		const why = ever === 0 ? 'never' : alone === 0 ? 'not-alone' : 'turned-down';
		// A light aim may go unmet by chance.
		if (why === 'turned-down' && (measured.drawn * weight) / total < EXPECTED && measured.drawn > 0) return;
		find('aim-not-met', 'fault', ['aims', i], { which: fails, why });
	});
}

/** Draws that nearly all pass, or nearly all fail: by the weights, or because an aim is seldom met. */
function judgeBalance({ scenario, measured, find }: Case): void {
	if (measured.drawn === 0) return;
	const passing = measured.results.passes / measured.drawn;
	const off = Math.abs(passing - 1 / 2);
	if (off <= BALANCE.warning) return;
	const total = scenario.aims.reduce((sum, aim) => sum + aim.weight, 0);
	const asked = scenario.aims.reduce((sum, aim) => sum + (aim.fails === 'nothing' ? aim.weight : 0), 0) / total;
	const byWeight = Math.abs(asked - 1 / 2) > BALANCE.warning;
	const worst = scenario.aims
		.map((aim, i) => ({ i, by: byWeight ? aim.weight : aim.weight / total - metBy(measured, aim.fails) / measured.drawn }))
		.reduce((most, one) => (one.by > most.by ? one : most));
	find('lopsided', off > BALANCE.fault ? 'fault' : 'warning', ['aims', worst.i], { passing });
}

/** Why most tries were turned down. */
function mostTurnedDown({ turnedDown }: Measured): TurnedDown {
	const counts = Object.entries(turnedDown) as [TurnedDown, number][];
	return counts.reduce<readonly [TurnedDown, number]>((most, one) => (one[1] > most[1] ? one : most), ['other-outcome', 0])[0];
}

/** The field behind a reason for turning tries down; the draws together where no one field can be named. */
function causeOf(of: Case, why: TurnedDown): Blamed {
	const { scenario, trials, measured } = of;
	const together: Blamed = { path: ['draws'], also: [] };
	switch (why) {
		case 'constraint': {
			const least = trials.constraints.map(({ kept }, i) => ({ kept, i })).reduce<{ kept: number; i: number } | undefined>((a, b) => (a !== undefined && a.kept < b.kept ? a : b), undefined);
			return least === undefined ? together : { path: ['constraints', least.i], also: [] };
		}
		case 'slip-looks-right':
		case 'slips-look-alike': {
			const worst = mostAlike(scenario, trials);
			return worst === undefined ? together : blameForPair(of, worst);
		}
		case 'no-answer': {
			const ask = scenario.asks.findIndex((one) => one.kind === 'number' && (trials.answered.get(one.id) ?? 0) < trials.count);
			return ask < 0 ? together : fieldWithoutAnswer(of, ask);
		}
		case 'refused':
			return { path: fieldOfFact(scenario, trials.refused.has('line-over-edge') ? 'edge' : 'direction'), also: [] };
		case 'from-memory':
			return decided(of, (plan) => analysisOfPlan(plan)?.checks.every((check) => check.decides || check.status !== 'failed') ?? false) ?? { path: ['base', 'rules'], also: [] };
		case 'other-outcome':
			return causeOfOutcome(of);
		case 'near-limit':
			return measured.drawn === 0 ? together : (aimLeastMet(of) ?? together);
	}
}

/** The check that fails in most plans though no aim wants it, else the aim that is least met. */
function causeOfOutcome(of: Case): Blamed {
	const { scenario, trials } = of;
	const unwanted = [...trials.topics]
		.filter(([topic, tally]) => tally.failed > trials.analysed / 2 && !scenario.aims.every((aim) => aim.fails === topic))
		.reduce<readonly [string, number] | undefined>((most, [topic, { failed }]) => (most !== undefined && most[1] >= failed ? most : [topic, failed]), undefined);
	if (unwanted !== undefined) {
		const failing = trials.plans.filter((plan) => statusIn(plan, unwanted[0]) === 'failed');
		const cause = fieldDeciding(scenario, of.spans, failing, (plan) => statusIn(plan, unwanted[0]) !== 'failed');
		if (cause !== undefined) return cause;
	}
	return aimLeastMet(of) ?? { path: ['aims'], also: [] };
}

function aimLeastMet({ scenario, measured }: Case): Blamed | undefined {
	const counts = scenario.aims.map((aim, i) => ({ met: metBy(measured, aim.fails) / aim.weight, i }));
	const least = counts.reduce<{ met: number; i: number } | undefined>((a, b) => (a !== undefined && a.met <= b.met ? a : b), undefined);
	return least === undefined ? undefined : { path: ['aims', least.i], also: [] };
}

function mostAlike(scenario: Scenario, trials: Trials): Meeting | undefined {
	const declared = new Set(scenario.equalSlips.map(pairKey));
	return [...trials.meetings.values()]
		.filter((one) => !declared.has(pairKey(one.slips)) && one.near > 0)
		.reduce<Meeting | undefined>((most, one) => (most !== undefined && most.near >= one.near ? most : one), undefined);
}
