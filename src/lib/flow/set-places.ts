/** Which problems a practice set gives: the same on every machine, from the set, its seed, the person and the place. */
import { hashOf, seedOf } from '#lib/mastery/index.ts';
import { draw, firstDrawn, slipsShownBy, slipsWithEffect, type Ask, type DrawResult, type NumberAsk, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { mixed } from './mix.ts';
import type { SetContent, SetScenario } from './set.ts';

/** One problem of a set. */
export interface SetPlace {
	/** Id of the scenario. */
	readonly scenario: string;
	readonly version: number;
	/** Ids of what is asked, in the scenario's order. */
	readonly asks: readonly string[];
	/** A seed that gives a problem of this version. */
	readonly seed: number;
}

/** What the problems of a set are drawn from. */
export interface SetSource {
	readonly content: SetContent;
	/** The documents of all its scenarios, in the versions that it names. */
	readonly scenarios: readonly Scenario[];
	/** Of the assignment, or of a printed sheet. */
	readonly seed: string;
	/** Id of the person; it matters only where each has their own problems. */
	readonly person: string;
	/** How a seed is drawn: `draw`, or a memory of it. */
	readonly drawn?: (scenario: Scenario, seed: number) => DrawResult;
}

/** How many problems are looked at for one that a slip of the aims shows in. */
const MOST_LOOKED_AT = 60;
/** In how many tries of their draws. @reason bounds what one place costs, also of a scenario that is hard to draw: a try takes a tenth of a millisecond, shipped scenarios need under ten a draw. */
const MOST_TRIES = 800;

/** The asks of a place, as the scenario has them. */
export function asksOfPlace(scenario: Scenario, place: Pick<SetScenario, 'asks'>): readonly Ask[] {
	return scenario.asks.filter((ask) => place.asks.includes(ask.id));
}

/**
 * @param nth the place, from 0 through all rounds.
 * @returns the problem of a place. Scenarios take turns in an order of each cycle's own; with two or more, none
 * follows itself. With aims, the seed is moved on to the next whose problem a slip of the aims gives another number
 * in, if one is found soon.
 * @throws RangeError if a scenario's document is not there, or no problem of it can be drawn
 */
export function placeOf({ content, scenarios, seed, person, drawn = draw }: SetSource, nth: number): SetPlace {
	const whose = hashOf(['set', seed, content.sameForAll ? 'all' : person]);
	const { scenario: id } = mixed(content.scenarios.map((one) => one.id), whose, nth);
	const of = content.scenarios.find((one) => one.id === id);
	const scenario = scenarios.find((one) => one.id === id && one.version === of?.version);
	if (of === undefined || scenario === undefined) throw new RangeError(`the set's scenario "${id}" is not there`);
	const asks = asksOfPlace(scenario, of).filter((ask): ask is NumberAsk => ask.kind === 'number');
	const first = firstDrawn((one) => drawn(scenario, one), seedOf(whose, nth));
	return { scenario: id, version: scenario.version, asks: of.asks, seed: aimed(first, asks, content.aims, (one) => drawn(scenario, one)).seed };
}

/**
 * @param round from 0.
 * @returns the problems of a round, in order; see `placeOf`.
 */
export function placesOf(content: SetContent, scenarios: readonly Scenario[], seed: string, person: string, round: number): readonly SetPlace[] {
	return Array.from({ length: content.count }, (_, i) => placeOf({ content, scenarios, seed, person }, round * content.count + i));
}

/** The first problem, or the next after it that an aimed slip shows in. */
function aimed(first: Problem, asks: readonly NumberAsk[], aims: readonly string[], drawn: (seed: number) => DrawResult): Problem {
	const isAim = (slip: string): boolean => aims.includes(slip);
	const may = aims.length === 0 ? undefined : slipsShownBy(first.scenario);
	const asked = asks.filter((ask) => [...(may?.get(ask.id) ?? [])].some(isAim));
	if (asked.length === 0) return first;
	let tries = 0;
	for (let i = 0; i < MOST_LOOKED_AT && tries < MOST_TRIES; i += 1) {
		const result = drawn(first.seed + i);
		tries += result.tries;
		if (result.kind === 'drawn' && asked.some((ask) => slipsWithEffect(result.problem, ask).some(isAim))) return result.problem;
	}
	return first;
}
