/** Numbers of a scenario that an author should look at again: far from usual, the same in every draw, drawn twice, decoys that are none. */
import { givenDimension, isGivenId, targetKey, type Analysis, type GivenId } from '#lib/arrest/index.ts';
import { givensIn } from '#lib/expression/index.ts';
import { sameDimension, toSI } from '#lib/quantity/index.ts';
import { isUnusual } from './blame.ts';
import { CHANGED } from './draw.ts';
import { treeOf } from './inspect-answers.ts';
import type { Case } from './inspect-draws.ts';
import { givenValue, numberAsks, precisionOf, targetOf, type Problem } from './problem.ts';
import { isDecoy } from './sample.ts';
import type { Scenario } from './schema.ts';
import { usualOf } from './usual.ts';

/** How often each decoy equals something that it should not, by the decoy's index and what it equals. */
export type DecoyTally = Map<string, { readonly decoy: number; readonly which: string; count: number }>;

/** @reason a decoy that is right by chance now and then still misleads; in three draws of ten it teaches a wrong reading. */
const DECOY_ALIKE = 0.3;

/** Counts what the decoys of one drawn problem equal: right answers of their dimension, and numbers that these answers are made of. */
export function tallyDecoys(tally: DecoyTally, scenario: Scenario, problem: Problem, analysis: Analysis): void {
	scenario.decoys.forEach(({ given }, decoy) => {
		const value = problem.drawn.decoys[given as keyof Problem['drawn']['decoys']];
		if (value === undefined) return;
		const count = (which: string): void => {
			const key = `${decoy} ${which}`;
			const before = tally.get(key);
			if (before === undefined) tally.set(key, { decoy, which, count: 1 });
			else before.count += 1;
		};
		for (const ask of numberAsks(scenario)) {
			const half = precisionOf(ask) / 2;
			const finding = analysis.quantities.get(targetKey(targetOf(ask)));
			if (finding?.known !== true || !sameDimension(finding.tree.dimension, givenDimension(given))) continue;
			if (Math.abs(finding.value - value) <= half) count(ask.id);
			for (const id of givensIn(finding.tree)) {
				if (isGivenId(id) && Math.abs((givenValue(problem, id) ?? NaN) - value) <= CHANGED) count(id);
			}
		}
	});
}

/** Judges the numbers of a scenario. */
export function judgeNumbers(of: Case, decoys: DecoyTally): void {
	judgeUsual(of);
	judgeRanges(of.scenario, of.find);
	const { scenario, measured, find } = of;
	for (const { decoy, which, count } of decoys.values()) {
		const share = count / Math.max(1, measured.drawn);
		if (share >= DECOY_ALIKE) find('decoy-alike', 'warning', ['decoys', decoy], { which, share });
	}
	const read = new Set(numberAsks(scenario).flatMap((ask) => {
		const tree = treeOf(of, ask);
		return tree === undefined ? [] : givensIn(tree);
	}));
	scenario.decoys.forEach(({ given }, i) => {
		if (!isDecoy(given) && read.has(given)) find('decoy-counts', 'fault', ['decoys', i], { given });
	});
}

/** Numbers outside of what is usual; of a chain of ranges that count from each other, the first that is. */
function judgeUsual({ scenario, spans, find }: Case): void {
	for (const [given, span] of spans) {
		const usual = usualOf(given);
		if (usual === undefined || !isUnusual(given, spans)) continue;
		// Where no posture is stated the D-ring is where it is standing.
		if (given === 'dRingNow' && scenario.base.worker.dRingNow === undefined && span.least === span.greatest) continue;
		const below = usual.least - span.least > span.greatest - usual.greatest;
		find('unusual-value', 'warning', below ? span.leastAt : span.greatestAt, {
			given,
			value: below ? span.least : span.greatest,
			least: usual.least,
			greatest: usual.greatest
		});
	}
}

function judgeRanges(scenario: Scenario, find: Case['find']): void {
	const setBy = new Map<GivenId, number>();
	scenario.draws.forEach((draw, i) => {
		if ('fact' in draw) return;
		const [given] = draw.sets;
		if (given !== undefined) {
			if ('among' in draw && new Set(draw.among.map((one) => toSI(one.value, one.unit))).size === 1) find('one-value', 'warning', ['draws', i, 'among'], { given });
			if ('from' in draw && Math.round((draw.to - draw.from) / draw.step) === 0) find('one-value', 'warning', ['draws', i, draw.to > draw.from ? 'step' : 'to'], { given });
		}
		for (const id of draw.sets) {
			const before = setBy.get(id);
			if (before !== undefined) find('drawn-twice', 'warning', ['draws', i], { given: id, with: before }, { also: [['draws', before]] });
			setBy.set(id, i);
		}
	});
}
