/** Whether every state that a scenario's facts can be drawn in comes up in a problem. */
import type { Case } from './inspect-draws.ts';
import type { Problem } from './problem.ts';
import type { Scenario } from './schema.ts';
import { factStatesOf } from './story.ts';

/** In how many drawn problems a drawn fact is in each state, by the draw's index and the state. */
export type StateTally = Map<string, number>;

/** @reason a state that so many draws should have been in is missed by chance once in twenty thousand times. */
const EXPECTED = 10;

type FactDraw = Extract<Scenario['draws'][number], { fact: string }>;

function factOf(draw: FactDraw): string {
	return draw.fact === 'obstacle' ? `obstacle:${draw.id}` : draw.fact;
}

/** Counts the states of the drawn facts of one problem. */
export function tallyStates(tally: StateTally, scenario: Scenario, problem: Problem): void {
	const states = factStatesOf(
		problem.drawn.plan,
		scenario.base.below.obstacles.map((one) => one.id)
	);
	scenario.draws.forEach((draw, i) => {
		if (!('fact' in draw)) return;
		const key = `${i} ${states.get(factOf(draw)) ?? ''}`;
		tally.set(key, (tally.get(key) ?? 0) + 1);
	});
}

/** States that a draw lists and no drawn problem is in: every plan with them is turned down. */
export function judgeStates({ scenario, measured, find }: Case, tally: StateTally): void {
	scenario.draws.forEach((draw, i) => {
		if (!('fact' in draw)) return;
		const among = draw.among.map(String);
		for (const state of new Set(among)) {
			const share = among.filter((one) => one === state).length / among.length;
			if (tally.has(`${i} ${state}`) || measured.drawn * share < EXPECTED) continue;
			find('state-never-drawn', 'warning', ['draws', i, 'among', among.indexOf(state)], { which: state });
		}
	});
}
