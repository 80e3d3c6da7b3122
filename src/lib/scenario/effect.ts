/** Which slips show in a drawn problem: those that would give another number. */
import { analyse, targetKey } from '#lib/arrest/index.ts';
import { valuesOf } from '#lib/expression/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { CHANGED, draw, inputsFor, variantsFor } from './draw.ts';
import { numberAsks, targetOf, type Problem } from './problem.ts';
import type { NumberAsk, Scenario } from './schema.ts';

/**
 * @returns the slips that have a place in an ask of this problem and change its number; none where the right answer is
 * that the number cannot be stated.
 */
export function slipsWithEffect(problem: Problem, ask: NumberAsk): readonly SlipId[] {
	const outcome = analyse(problem.drawn.plan);
	if (outcome.kind === 'refused') return [];
	const finding = outcome.analysis.quantities.get(targetKey(targetOf(ask)));
	if (finding?.known !== true) return [];
	const set = variantsFor(problem, ask);
	const values = valuesOf(set.singleProgram, inputsFor(problem, set));
	return set.singles.flatMap(({ slips: [slip] }, i) => {
		const value = values[i + 1] ?? NaN;
		return slip !== undefined && value > 0 && Math.abs(value - finding.value) > CHANGED ? [slip] : [];
	});
}

/** How many draws are looked at. @reason a slip that shows in one draw of ten is missed once in sixty times. */
const LOOKED_AT = 40;
const shown = new WeakMap<Scenario, ReadonlyMap<string, ReadonlySet<SlipId>>>();

/** @returns by the id of the ask: the slips that show in some draws of a scenario. Found once by drawing it forty times. */
export function slipsShownBy(scenario: Scenario): ReadonlyMap<string, ReadonlySet<SlipId>> {
	const known = shown.get(scenario);
	if (known !== undefined) return known;
	const found = new Map(numberAsks(scenario).map((ask) => [ask.id, new Set<SlipId>()]));
	for (let seed = 0; seed < LOOKED_AT; seed += 1) {
		const result = draw(scenario, seed);
		if (result.kind === 'none') continue;
		for (const ask of numberAsks(scenario)) {
			for (const slip of slipsWithEffect(result.problem, ask)) found.get(ask.id)?.add(slip);
		}
	}
	shown.set(scenario, found);
	return found;
}
