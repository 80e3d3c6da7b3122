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
export { DIFFICULTIES_AMONG, READY_AT, TRIES_IN_A_ROW, observe } from './observe.ts';
export { STUCK_AFTER, isMastered, isReady, isStuck, readySince, rowOf } from './ready.ts';
export { nextTask, type NextTask, type TaskFacts, type Turn } from './next.ts';
export { REFRESH_DAYS, refreshersAhead, refreshersDue, type Due } from './refresh.ts';
