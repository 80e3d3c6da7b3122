/** From stored values to a problem. Apart from what reads a problem, because it needs the tables that plans name. */
import { resolve } from '#lib/arrest/index.ts';
import { DRAW_VERSION, type Drawn, type Problem } from './problem.ts';
import type { Scenario } from './schema.ts';

/** @returns the problem that stored values describe. No draw is made: see `draw` for proof that they were drawn. */
export function problemOf(scenario: Scenario, drawn: Drawn, seed: number, acceptedTry: number): Problem {
	return { scenario, drawVersion: DRAW_VERSION, seed, acceptedTry, drawn, resolved: resolve(drawn.plan) };
}
