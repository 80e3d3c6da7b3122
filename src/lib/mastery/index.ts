export {
	DIFFICULTIES,
	NOTHING_KNOWN,
	cellOf,
	skillOf,
	type CellState,
	type Credit,
	type Difficulty,
	type FirstTry,
	type LastProblem,
	type Mastery,
	type Outcome,
	type Refresh,
	type SkillState
} from './state.ts';
export { TRACING, type Tracing } from './estimate.ts';
export {
	DIFFICULTIES_AMONG,
	GUESS,
	READY_AT,
	ROW_BY_CHANCE,
	STUCK_AFTER,
	TRIES_IN_A_ROW,
	observe
} from './observe.ts';
export { isMastered, isReady, isStuck, readySince, rowOf, type Row } from './ready.ts';
export { nextTask, type NextTask, type TaskFacts, type Turn } from './next.ts';
export { REFRESH_DAYS, refreshersAhead, refreshersDue, type Due } from './refresh.ts';
export { dayNumber, daysAfter, monthsAfter } from './day.ts';
export { hashOf, seedOf } from './seed.ts';
export { LESSON_RULE, OWN_RULE, PASS_RULES, baseOf, cellsOf, passRule, ruleForCell, type From, type Slot } from './rule.ts';
export type { PassRule } from './schema.ts';
export { firstPage, longestForm, standing, type FailReason, type ItemOutcome, type Standing } from './judge.ts';
export {
	FLOOR,
	WORKERS,
	countsAlone,
	overTries,
	passRate,
	rateTable,
	withinFloor,
	type Floor,
	type Rate,
	type RateRow,
	type Worker
} from './rates.ts';
export { CLUSTER, UNSAFE_SHARES, floorWorker, remediesOf, toldRates, type Passes, type Remedy, type ToldRate } from './told.ts';
export {
	BAND,
	fillSlots,
	hardnessOf,
	itemKey,
	tasksFor,
	type CheckTask,
	type Drivers,
	type FormItem,
	type FormOptions
} from './form.ts';
