/** The problems of a copy, drawn again from the sheet whenever they are needed. */
import { placeOf, type SetContent } from '#lib/flow/index.ts';
import type { Ask, Problem, Scenario } from '#lib/scenario/index.ts';
import { problemOfSeed } from '../attempts/mark.ts';
import type { Sheet } from './sheets.ts';

/** One problem on paper. */
export interface PaperPlace {
	/** From 0. */
	readonly place: number;
	readonly problem: Problem;
	/** What is asked of it, in the scenario's order. */
	readonly asks: readonly Ask[];
}

/** The numbers of a sheet's copies, from 1. */
export function copiesOf({ copies }: Pick<Sheet, 'copies'>): readonly number[] {
	return Array.from({ length: copies }, (_, i) => i + 1);
}

/**
 * @param scenarios the documents of the set's scenarios
 * @returns the problem at a place of a copy: the same whenever it is asked for
 * @throws RangeError if a scenario's document is not there
 */
export function paperPlace(content: SetContent, scenarios: readonly Scenario[], sheet: Pick<Sheet, 'seed' | 'alike'>, copy: number, place: number): PaperPlace {
	const source = { content: { ...content, sameForAll: sheet.alike }, scenarios, seed: sheet.seed, person: `copy ${copy}`, drawn: problemOfSeed };
	const { scenario: id, version, asks, seed } = placeOf(source, place);
	const scenario = scenarios.find((one) => one.id === id && one.version === version);
	const result = scenario === undefined ? undefined : problemOfSeed(scenario, seed);
	if (scenario === undefined || result?.kind !== 'drawn') throw new RangeError(`place ${place} of copy ${copy} cannot be drawn`);
	return { place, problem: result.problem, asks: scenario.asks.filter((ask) => asks.includes(ask.id)) };
}

/** The problems of a copy, each drawn when it is asked for. */
export function* paperPlaces(content: SetContent, scenarios: readonly Scenario[], sheet: Pick<Sheet, 'seed' | 'alike'>, copy: number): Generator<PaperPlace> {
	for (let place = 0; place < content.count; place += 1) yield paperPlace(content, scenarios, sheet, copy, place);
}
