/** In which asks of a scenario a slip gives another number, and how often: found by drawing. */
import { setImmediate } from 'node:timers/promises';
import { draw, numberAsks, slipsWithEffect, type Scenario } from '#lib/scenario/index.ts';
import type { SlipId } from '#lib/slips/index.ts';

/** How many seeds are drawn. @reason tells a slip that shows in most problems from one that shows in few */
export const DRAWS = 40;

/** Of an ask's draws, the share in which each slip gives another number. */
export type AskEffects = Readonly<Partial<Record<SlipId, number>>>;

/** By the id of the ask. */
export type ScenarioEffects = ReadonlyMap<string, AskEffects>;

/** A version never changes, so that each is drawn once. */
const known = new WeakMap<Scenario, Promise<ScenarioEffects>>();

/** @returns how often each slip shows in each ask of a scenario. Others are served between the draws. */
export function effectsOf(scenario: Scenario): Promise<ScenarioEffects> {
	const before = known.get(scenario);
	if (before !== undefined) return before;
	const made = drawEffects(scenario);
	known.set(scenario, made);
	return made;
}

async function drawEffects(scenario: Scenario): Promise<ScenarioEffects> {
	const asks = numberAsks(scenario);
	const counts = new Map(asks.map(({ id }) => [id, new Map<SlipId, number>()]));
	let drawn = 0;
	for (let seed = 0; seed < DRAWS; seed += 1) {
		await setImmediate();
		const result = draw(scenario, seed);
		if (result.kind === 'none') continue;
		drawn += 1;
		for (const ask of asks) {
			const own = counts.get(ask.id);
			for (const slip of slipsWithEffect(result.problem, ask)) own?.set(slip, (own.get(slip) ?? 0) + 1);
		}
	}
	return new Map([...counts].map(([ask, slips]) => [ask, Object.fromEntries([...slips].map(([slip, count]) => [slip, count / drawn]))]));
}
