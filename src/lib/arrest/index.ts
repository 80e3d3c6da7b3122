export * from './given.ts';
export { plausibleOf, type Range } from './plausible.ts';
export * from './shape.ts';
export { formula } from './formula.ts';
export { QUANTITIES, isQuantityId, targetKey, type PlainQuantityId, type QuantityId, type Target } from './quantities.ts';
export { FIXED_GIVEN_IDS, obstaclesOnPath, resolve, type Origin, type Resolved, type ResolvedGiven } from './resolve.ts';
export {
	analyse,
	givensOf,
	outsideLabel,
	refusalOf,
	targetsOf,
	verdictOf,
	type Absence,
	type Analysis,
	type AnalyseOptions,
	type Finding,
	type Outcome,
	type Refusal,
	type Verdict
} from './analyse.ts';
export type { Check, CheckId, CheckStatus, OwnCheckId, Topic } from './checks.ts';
export type { LanyardPlan, Plan, PlanDocument, RefusedPlan } from './schema.ts';
export {
	simulate,
	simulateFall,
	type FallEvent,
	type FallEventId,
	type FallFrame,
	type FallOutcome,
	type Place,
	type PlayedFall,
	type SimulateOptions,
	type Simulation
} from './simulate.ts';
export { LOWER_LEVEL } from './simulate-contact.ts';
export { fallOf, type Fall, type FallObstacle, type FallSource, type SimulationRefusal } from './simulate-fall.ts';
export type { FallPhase } from './simulate-track.ts';
