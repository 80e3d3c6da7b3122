/** Which problem comes next: kinds interleave, and neighbours differ. */
import { chanceOf } from '#lib/scenario/index.ts';

export interface MixedProblem {
	readonly scenario: string;
	readonly seed: number;
}

/** @reason as many seeds as stay short in an address. */
const SEEDS = 1_000_000_000;

/**
 * @param scenarios ids to choose from, at least one.
 * @param device a number of this device, so that two people get different problems.
 * @param counter how many problems came before, from 0.
 * @returns the problem of that place. Every scenario comes once in each round, in an order of the round's own;
 * with two scenarios or more, no scenario follows itself.
 */
export function mixed(scenarios: readonly string[], device: number, counter: number): MixedProblem {
	const round = Math.floor(counter / scenarios.length);
	const order = roundOf(scenarios, device, round);
	const scenario = order[counter % scenarios.length] ?? scenarios[0];
	if (scenario === undefined) throw new RangeError('a mix needs at least one scenario');
	return { scenario, seed: chanceOf(['mix', device, counter, 'seed']).below(SEEDS) };
}

/**
 * The order of a round; its first is never the last of the round before. Exchanging the first two leaves the
 * last where the shuffle put it, as long as there are three; two take turns.
 */
function roundOf(scenarios: readonly string[], device: number, round: number): readonly string[] {
	if (scenarios.length < 3) return shuffled(scenarios, device, 0);
	const order = shuffled(scenarios, device, round);
	const before = round === 0 ? undefined : shuffled(scenarios, device, round - 1).at(-1);
	const [first, second, ...rest] = order;
	return first === before && first !== undefined && second !== undefined ? [second, first, ...rest] : order;
}

function shuffled(scenarios: readonly string[], device: number, round: number): readonly string[] {
	const chance = chanceOf(['mix', device, round, 'order']);
	const order = [...scenarios];
	for (let i = order.length - 1; i > 0; i -= 1) {
		const j = chance.below(i + 1);
		const a = order[i];
		const b = order[j];
		if (a === undefined || b === undefined) continue;
		order[i] = b;
		order[j] = a;
	}
	return order;
}
