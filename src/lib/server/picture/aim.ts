/** A practice set aimed at what a crew gets wrong most. */
import type { SetContent, SetScenario } from '#lib/flow/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { slipOf, type SlipId } from '#lib/slips/index.ts';
import { answerersOf, findTaughtCrew, slipsOfPeople, type OutcomeFilter } from '../db/outcomes.ts';
import type { Database } from '../db/open.ts';
import type { Person } from '../people/who.ts';
import { makeSet } from '../sets/make.ts';
import type { SetRefused } from '../sets/problem.ts';
import { effectsOf, type ScenarioEffects } from './effects.ts';
import { countSlips, type SlipRow } from './picture.ts';

/** Slips that a set aims at. @reason a few minutes' talk: what more than three went wrong in is another set */
export const MOST_AIMED = 3;
/** Problems of a set. @reason a quarter of an hour's work */
export const PROBLEMS = 8;
/** Right ones to pass. @reason three of four, none on the unsafe side */
const RULE = { right: 6, critical: 0 };
/** Scenarios for each slip. @reason so that the same site does not come again and again */
const SCENARIOS_EACH = 4;
/** Share of draws in which a slip has to show. @reason in most of them */
const MOST_DRAWS = 0.5;
/** How many scenarios are looked at. @reason all that are shipped and some dozens of own ones: it bounds how long it takes */
const LOOKED_AT = 60;

/** @returns the slips that a set is aimed at: the first of the list that change a number. */
export function aimedSlips(slips: readonly SlipRow[]): readonly SlipId[] {
	return slips.flatMap(({ slip }) => slipOf(slip)?.id ?? []).slice(0, MOST_AIMED);
}

/** A scenario with how its slips show. */
interface Candidate {
	readonly scenario: Scenario;
	readonly effects: ScenarioEffects;
}

/** How much an ask, or a scenario's best one, brings a slip out: the share of draws in which it shows. */
function shareOf({ scenario, effects }: Candidate, slip: SlipId): number {
	return Math.max(0, ...scenario.asks.map(({ id }) => effects.get(id)?.[slip] ?? 0));
}

/**
 * Chooses scenarios and asks in which slips show in most draws.
 * @param units scenarios in these units come first: `metric` or `us`
 * @returns the scenarios, each slip's best ones in turn; none if no slip shows anywhere
 */
export async function scenariosForSlips(scenarios: readonly Scenario[], slips: readonly SlipId[], units: string): Promise<readonly SetScenario[]> {
	const candidates: Candidate[] = [];
	for (const scenario of scenarios.slice(0, LOOKED_AT)) {
		candidates.push({ scenario, effects: await effectsOf(scenario) });
	}
	const inUnits = ({ scenario }: Candidate): number => Number((scenario.units === 'metric') === (units === 'metric'));
	const best = slips.map((slip) =>
		candidates
			.filter((one) => shareOf(one, slip) >= MOST_DRAWS)
			.sort((a, b) => inUnits(b) - inUnits(a) || shareOf(b, slip) - shareOf(a, slip))
			.slice(0, SCENARIOS_EACH)
	);
	const chosen = new Set<Candidate>();
	for (let turn = 0; turn < SCENARIOS_EACH; turn += 1) {
		for (const list of best) {
			const next = list[turn];
			if (next !== undefined && chosen.size < PROBLEMS) chosen.add(next);
		}
	}
	return [...chosen].map(({ scenario, effects }) => ({
		id: scenario.id,
		version: scenario.version,
		asks: scenario.asks.filter(({ id }) => slips.some((slip) => (effects.get(id)?.[slip] ?? 0) >= MOST_DRAWS)).map(({ id }) => id)
	}));
}

/** What became of making the set. */
export type Aiming =
	| { readonly kind: 'made'; readonly id: string }
	| { readonly kind: 'not-found' }
	/** Nobody's answer looks like one slip. */
	| { readonly kind: 'no-slip' }
	/** No scenario brings them out. */
	| { readonly kind: 'no-scenario' }
	| SetRefused;

/**
 * Makes a set aimed at the slips that stand first in the picture of a crew that this person teaches.
 * @param nameOf the set's name, told from the slips
 * @param from the scenarios to choose from, and the organisation's units
 */
export async function makeAimedSet(
	db: Database,
	who: Person,
	crew: string,
	filter: OutcomeFilter,
	from: { readonly scenarios: readonly Scenario[]; readonly units: string },
	nameOf: (slips: readonly SlipId[]) => string,
	now: Date
): Promise<Aiming> {
	if ((await findTaughtCrew(db, who, crew)) === null) return { kind: 'not-found' };
	const people = await answerersOf(db, who, crew);
	const slips = aimedSlips(countSlips(await slipsOfPeople(db, people, null, filter)).slips);
	if (slips.length === 0) return { kind: 'no-slip' };
	const scenarios = await scenariosForSlips(from.scenarios, slips, from.units);
	if (scenarios.length === 0) return { kind: 'no-scenario' };
	const content: SetContent = { scenarios, count: PROBLEMS, rule: RULE, sameForAll: false, language: null, aims: slips };
	return makeSet(db, who, { name: nameOf(slips), content }, now);
}
