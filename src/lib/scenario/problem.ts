import type { FixedGivenId, GivenId, LanyardPlan, Resolved, Target } from '#lib/arrest/index.ts';
import { fromSI, toSI, type Language, type ReadOptions, type UnitId } from '#lib/quantity/index.ts';
import type { SlipContext } from '#lib/slips/index.ts';
import type { Ask, NumberAsk, Scenario } from './schema.ts';

/** Raised whenever the way of drawing changes; old versions stay in the code. */
export const DRAW_VERSION = 1;

/** Everything that a drawn problem is, as it is stored with each answer. SI. */
export interface Drawn {
	readonly plan: LanyardPlan;
	/** Numbers beside the plan that belong in none of its formulas. */
	readonly decoys: Readonly<Partial<Record<FixedGivenId, number>>>;
	readonly person: string;
}

/** A site problem: a scenario drawn with a seed. */
export interface Problem {
	readonly scenario: Scenario;
	readonly drawVersion: number;
	readonly seed: number;
	/** Which try of the seed was accepted, from 0. */
	readonly acceptedTry: number;
	readonly drawn: Drawn;
	readonly resolved: Resolved;
}

/** @returns the value of a number that stands in the problem, SI, or undefined. */
export function givenValue(problem: Problem, id: GivenId): number | undefined {
	const decoy = problem.drawn.decoys[id as FixedGivenId];
	return decoy ?? problem.resolved.givens.get(id)?.value;
}

/** @returns true if a number is shown to the learner: in story, drawing or on a label. */
export function isShown(problem: Problem, id: GivenId): boolean {
	if (problem.drawn.decoys[id as FixedGivenId] !== undefined) return true;
	const found = problem.resolved.givens.get(id);
	if (found === undefined) return false;
	if (id === 'tetheredMass') return found.value > 0;
	return found.origin.from !== 'practice' || id === 'margin' || id === 'dRingSlide' || id === 'stature';
}

/** @returns the targets of all number asks, for those who list them. */
export function numberAsks(scenario: Scenario): readonly NumberAsk[] {
	return scenario.asks.filter((ask): ask is NumberAsk => ask.kind === 'number');
}

/** @returns what a number ask asks for. */
export function targetOf(ask: NumberAsk): Target {
	return 'datum' in ask ? { quantity: ask.quantity, datum: ask.datum } : { quantity: ask.quantity };
}

/** @returns what the slips may look at for one ask of a problem. */
export function slipContextOf(problem: Problem, ask: NumberAsk): SlipContext {
	const { shape } = problem.resolved;
	const { obstacles } = problem.drawn.plan.below;
	return {
		target: targetOf(ask),
		shape,
		shown: (id) => isShown(problem, id),
		absentObstacles: obstacles.filter((one) => !one.there && shape.obstacles.includes(one.id)).map((one) => one.id),
		strayObstacles: obstacles.filter((one) => one.there && !shape.obstacles.includes(one.id)).map((one) => one.id)
	};
}

/** @returns the ask of an id. @throws RangeError on an id the scenario does not have. */
export function askOf(scenario: Scenario, id: string): Ask {
	const ask = scenario.asks.find((one) => one.id === id);
	if (ask === undefined) {
		throw new RangeError(`${scenario.id} has no ask "${id}"; it has ${scenario.asks.map((one) => one.id).join(', ')}`);
	}
	return ask;
}

/** @reason finer than any grid in use, coarser than float noise. */
const GRID_PLACES = 1e6;

/** @returns the nearest value on a grid of the unit, SI, free of float noise from counting up. */
export function onGrid(from: number, step: number, index: number, unit: UnitId): number {
	return toSI(Math.round((from + step * index) * GRID_PLACES) / GRID_PLACES, unit);
}

/** @returns the unit that an entry without one is read in: feet where the grid is in inches. */
export function entryUnit(ask: NumberAsk): UnitId {
	return ask.precision.unit === 'in' ? 'ft' : ask.precision.unit;
}

/** @returns how an entry for a number ask is read: marking, checks and the fields on screen read alike. */
export function readingOf(scenario: Scenario, ask: NumberAsk, language: Language): ReadOptions {
	return { expected: entryUnit(ask), language, compound: scenario.units === 'us-inch' };
}

/** @returns one step of a number ask's answer grid, SI. */
export function precisionOf(ask: NumberAsk): number {
	return toSI(ask.precision.value, ask.precision.unit);
}

/** @returns an SI value in steps of the ask's answer grid. */
export function inSteps(ask: NumberAsk, si: number): number {
	return fromSI(si, ask.precision.unit) / ask.precision.value;
}
