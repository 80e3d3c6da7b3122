/** Whether a scenario's asks are good ones: a number to give, spread out, on the grid, that slips change and keep apart. */
import { isGivenId, resolve, targetKey, type Absence, type Analysis, type GivenId } from '#lib/arrest/index.ts';
import { givensIn, valuesOf, type Node } from '#lib/expression/index.ts';
import { fromSI, toSI } from '#lib/quantity/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { analysisOfPlan, distinct, fieldDeciding, isUnusual, type Blamed } from './blame.ts';
import { CHANGED, inputsFor, variantsFor } from './draw.ts';
import type { FieldPath } from './finding.ts';
import type { Case } from './inspect-draws.ts';
import { pairKey, type Meeting } from './inspect-trials.ts';
import { basePlaceOf, drawOf, fieldOfGiven } from './places.ts';
import { inSteps, precisionOf, targetOf, type Problem } from './problem.ts';
import type { NumberAsk, Scenario } from './schema.ts';
import { usualOf } from './usual.ts';

/** What the draws say of one ask. */
export interface AskTally {
	readonly ask: NumberAsk;
	readonly index: number;
	readonly values: number[];
	notStated: number;
	/** Draws whose right answer does not lie on the answer grid. */
	offGrid: number;
	/** Why it has no value, with the first seed and plan of each reason. */
	readonly absent: Map<Absence['why'], { readonly seed: number; readonly given: GivenId | undefined }>;
	readonly slips: Map<SlipId, number>;
}

/** @reason fewer steps of the answer grid between the quartiles let an answer be guessed. */
const STEPS_APART = 8;
/** @reason a pair seldom alike is turned down try by try; one mostly alike makes draws rare. */
const ALIKE = { warning: 0.3, fault: 0.9 };
/** @reason who has mended the worst dozen sees the others next; keeps a hostile file cheap. */
const MOST_PAIRS = 12;
/** @reason one draw in ten off the grid is no chance any more. */
const OFF_GRID = 0.1;
/** @reason float noise of a value counted in steps. */
const GRID_NOISE = 1e-4;
/** @reason half of the draws: the number is then asked for in vain more often than not. */
const NOT_STATED = 0.5;

/** Counts one drawn problem for one ask. */
export function tallyAsk(tally: AskTally, problem: Problem, analysis: Analysis): void {
	const { ask } = tally;
	const finding = analysis.quantities.get(targetKey(targetOf(ask)));
	if (finding?.known !== true) {
		const absence = finding?.absence ?? ({ why: 'missing', givens: [] } as const);
		if (absence.why === 'outside-label') tally.notStated += 1;
		else if (!tally.absent.has(absence.why)) {
			tally.absent.set(absence.why, { seed: problem.seed, given: absence.why === 'missing' ? absence.givens[0] : undefined });
		}
		return;
	}
	tally.values.push(finding.value);
	const steps = inSteps(ask, finding.value);
	if (Math.abs(steps - Math.round(steps)) > GRID_NOISE) tally.offGrid += 1;
	const set = variantsFor(problem, ask);
	const values = valuesOf(set.singleProgram, inputsFor(problem, set));
	for (const [i, single] of set.singles.entries()) {
		const [slip] = single.slips;
		const value = values[i + 1] ?? NaN;
		if (slip === undefined || !(value > 0) || Math.abs(value - finding.value) <= CHANGED) continue;
		tally.slips.set(slip, (tally.slips.get(slip) ?? 0) + 1);
	}
}

/** Judges each ask by what the draws gave. */
export function judgeAnswers(of: Case, tallies: readonly AskTally[]): void {
	const { scenario, measured, find } = of;
	for (const [i, tally] of tallies.entries()) {
		const { ask, index, slips } = tally;
		judgeAbsence(of, tally);
		const values = measured.answers[i]?.values;
		if (values === undefined) continue;
		const [, lower, , upper] = values;
		const steps = (upper - lower) / fromSI(precisionOf(ask), ask.precision.unit);
		if (steps < STEPS_APART) {
			const { path, also } = narrowest(of, ask);
			find('narrow-answers', 'warning', path ?? ['asks', index], { ask: ask.id, steps }, { also });
		}
		if (slips.size === 0) find('ask-without-slips', 'warning', ['asks', index], { ask: ask.id });
		const share = tally.offGrid / tally.values.length;
		if (share > OFF_GRID) {
			for (const path of offGrid(scenario, ask, treeOf(of, ask))) find('off-answer-grid', 'warning', path, { ask: ask.id, share }, { also: [['asks', index, 'precision']] });
		}
	}
}

function judgeAbsence(of: Case, { ask, index, notStated, absent }: AskTally): void {
	const { measured, find } = of;
	for (const [which, { seed, given }] of absent) {
		const cause = given === undefined ? fieldWithoutAnswer(of, index) : { path: basePlaceOf(of.scenario, given), also: [] };
		find('ask-without-value', 'fault', cause.path, { which, ask: ask.id, given: given ?? '' }, { seed, also: [...cause.also, ['asks', index]] });
	}
	// Plans that lack it are turned down: no drawn problem shows it.
	for (const given of of.trials.missing.get(ask.id) ?? []) {
		if (absent.has('missing')) break;
		find('ask-without-value', 'warning', basePlaceOf(of.scenario, given), { which: 'missing', ask: ask.id, given }, { also: [['asks', index]] });
	}
	const share = notStated / Math.max(1, measured.drawn);
	if (share > NOT_STATED) find('often-not-stated', 'warning', ['asks', index], { ask: ask.id, share });
}

/** The field that keeps an ask from having a number: what is missing, else what would give it one; else the ask. */
export function fieldWithoutAnswer({ scenario, spans, trials }: Case, index: number): Blamed {
	const self: Blamed = { path: ['asks', index], also: [] };
	const ask = scenario.asks[index];
	if (ask?.kind !== 'number') return self;
	const valueIn = (analysis: Analysis | undefined) => analysis?.quantities.get(targetKey(targetOf(ask)));
	const lacking = trials.plans.find((plan) => {
		const finding = valueIn(analysisOfPlan(plan));
		return finding?.known !== true || !(finding.value > 0);
	});
	if (lacking === undefined) return self;
	const finding = valueIn(analysisOfPlan(lacking));
	if (finding?.known === false && finding.absence.why === 'missing') {
		const [given] = finding.absence.givens;
		return given === undefined ? self : { path: basePlaceOf(scenario, given), also: [self.path] };
	}
	const without = trials.plans.filter((plan) => valueIn(analysisOfPlan(plan))?.known !== true || plan === lacking);
	const cause = fieldDeciding(scenario, spans, without, (plan) => {
		const found = valueIn(analysisOfPlan(plan));
		return found?.known === true && found.value > 0;
	});
	return cause ?? self;
}

/** @returns the tree of an ask's right answer for the first trial; undefined if no trial is analysed. */
export function treeOf({ trials }: Pick<Case, 'trials'>, ask: NumberAsk): Node | undefined {
	const [plan] = trials.plans;
	const analysis = plan === undefined ? undefined : analysisOfPlan(plan);
	return analysis?.quantities.get(targetKey(targetOf(ask)))?.tree;
}

/** Givens that a tree reads, and those from which the ranges of these count. */
function feeding(scenario: Scenario, tree: Node | undefined): readonly GivenId[] {
	const found = new Set<GivenId>();
	const add = (id: GivenId): void => {
		if (found.has(id)) return;
		found.add(id);
		const draw = scenario.draws[drawOf(scenario, id) ?? -1];
		if (draw !== undefined && 'above' in draw && draw.above !== undefined) add(draw.above);
	};
	for (const id of tree === undefined ? [] : givensIn(tree)) if (isGivenId(id)) add(id);
	return [...found];
}

/** The draw that feeds an answer and moves least of what is usual; without such a draw, no path. */
function narrowest(of: Case, ask: NumberAsk): { readonly path: FieldPath | undefined; readonly also: readonly FieldPath[] } {
	const { scenario, spans } = of;
	const moving = feeding(scenario, treeOf(of, ask)).flatMap((id) => {
		const draw = drawOf(scenario, id);
		const span = spans.get(id);
		const usual = usualOf(id);
		if (draw === undefined || span === undefined || usual === undefined) return [];
		return [{ path: ['draws', draw] as FieldPath, share: (span.greatest - span.least) / (usual.greatest - usual.least) }];
	});
	moving.sort((a, b) => a.share - b.share);
	const [first, ...others] = distinct(moving.map((one) => one.path));
	return { path: first, also: others };
}

/** Whether a tree only adds, so that inputs on a grid give answers on it. */
function onlyAdds(node: Node): boolean {
	switch (node.kind) {
		case 'given':
		case 'constant':
			return true;
		case 'named':
			return onlyAdds(node.of);
		case 'sum':
			return node.terms.every((term) => onlyAdds(term.of));
		case 'extreme':
			return node.among.every((one) => onlyAdds(one.of));
		default:
			return false;
	}
}

/** Fields of an answer's numbers that do not lie on its grid. */
function offGrid(scenario: Scenario, ask: NumberAsk, tree: Node | undefined): readonly FieldPath[] {
	if (tree === undefined || !onlyAdds(tree)) return [];
	const step = precisionOf(ask);
	const lies = (si: number): boolean => Math.abs(si / step - Math.round(si / step)) <= GRID_NOISE;
	const known = resolve(scenario.base).givens;
	return feeding(scenario, tree).flatMap((id): FieldPath[] => {
		const at = drawOf(scenario, id);
		const draw = at === undefined ? undefined : scenario.draws[at];
		if (at === undefined || draw === undefined || 'fact' in draw) {
			const base = known.get(id);
			return base === undefined || base.origin.from !== 'plan' || lies(base.value) ? [] : [fieldOfGiven(scenario, id)];
		}
		const path: FieldPath = ['draws', at];
		if ('among' in draw) return draw.among.flatMap((one, k): FieldPath[] => (lies(toSI(one.value, one.unit)) ? [] : [[...path, 'among', k]]));
		return [...(lies(toSI(draw.step, draw.unit)) ? [] : [[...path, 'step']]), ...(lies(toSI(draw.from, draw.unit)) ? [] : [[...path, 'from']])];
	});
}

/** Judges slips: those that fall together, those declared equal, those without effect. */
export function judgeSlips(of: Case): void {
	const { scenario, measured, trials, find } = of;
	const declared = new Set(scenario.equalSlips.map(pairKey));
	const alike = [...trials.meetings.values()]
		.map((meeting) => ({ meeting, share: meeting.near / Math.max(1, meeting.both) }))
		.filter(({ meeting, share }) => share >= ALIKE.warning && !declared.has(pairKey(meeting.slips)))
		.sort((a, b) => b.share - a.share);
	for (const { meeting, share } of alike.slice(0, MOST_PAIRS)) {
		const { path, also } = blameForPair(of, meeting);
		find('slips-alike', share >= ALIKE.fault ? 'fault' : 'warning', path, { which: pairKey(meeting.slips), ask: meeting.ask.id, share }, { also });
	}
	const same = new Set([...trials.meetings.values()].filter((one) => one.same === one.both).map((one) => pairKey(one.slips)));
	scenario.equalSlips.forEach((pair, i) => {
		if (!same.has(pairKey(pair))) find('declared-but-not-equal', 'fault', ['equalSlips', i], { which: pairKey(pair) });
	});
	for (const slip of measured.withoutEffect) {
		const ask = trials.placed.get(slip);
		find('slip-without-effect', 'note', ask === undefined ? ['asks'] : ['asks', scenario.asks.indexOf(ask)], { which: slip });
	}
}

/** @reason moves a number off any coincidence, and no sign with it. */
const NUDGE = 0.013;

/** @returns the field that makes two numbers of an ask alike: of those that their difference hangs on, one that is not usual, else the one with fewest values. */
export function blameForPair({ scenario, spans }: Pick<Case, 'scenario' | 'spans'>, { ask, slips, examples }: Meeting): Blamed {
	const self: Blamed = { path: ['asks', scenario.asks.indexOf(ask)], also: [] };
	const deciding = new Map<GivenId, number>();
	for (const problem of examples) {
		const set = variantsFor(problem, ask);
		const inputs = inputsFor(problem, set);
		const between = (values: Float64Array): number => {
			const numbers = valuesOf(set.singleProgram, values);
			const numberOf = (slip: string): number => numbers[slip === 'right' ? 0 : 1 + set.singles.findIndex((single) => single.slips[0] === slip)] ?? NaN;
			return numberOf(slips[0]) - numberOf(slips[1]);
		};
		const now = between(inputs);
		set.inputs.forEach((id, i) => {
			const moved = Float64Array.from(inputs);
			moved[i] = (moved[i] ?? 0) * (1 + NUDGE) + NUDGE;
			const changed = Math.abs(between(moved) - now) > CHANGED;
			if (changed && isGivenId(id)) deciding.set(id, (deciding.get(id) ?? 0) + 1);
		});
	}
	const fields = [...deciding]
		.filter(([, count]) => count > examples.length / 2)
		.map(([id]) => ({ path: fieldOfGiven(scenario, id), values: valuesOfGiven(scenario, id), unusual: isUnusual(id, spans) }));
	// Of equally many values the later in the document: a reader of it would change that one.
	fields.reverse();
	fields.sort((a, b) => Number(b.unusual) - Number(a.unusual) || a.values - b.values);
	const [first, ...others] = distinct(fields.map((one) => one.path));
	return first === undefined ? self : { path: first, also: [...others, self.path] };
}

/** How many values a given can have by its draw; one from the base plan. */
function valuesOfGiven(scenario: Scenario, id: GivenId): number {
	const draw = scenario.draws[drawOf(scenario, id) ?? -1];
	if (draw === undefined || 'fact' in draw) return 1;
	return 'among' in draw ? new Set(draw.among.map((one) => toSI(one.value, one.unit))).size : Math.round((draw.to - draw.from) / draw.step) + 1;
}
