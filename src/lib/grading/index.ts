export {
	analysisOf,
	gradeAsk,
	gradeProblem,
	rightValue,
	type Answer,
	type Grade,
	type GradeOptions,
	type Mark
} from './grade.ts';
export { diagnose, fitOf, variantWith, type Candidate, type Certainty, type Diagnosis } from './diagnose.ts';
export { type EntrySlip } from './entry.ts';
export { explain, shownGivens, tapeOf, type Explanation, type TapeTerm, type WorkingStep } from './explain.ts';
export { givenSteps, gradeHalfDone, gradeStep, gradeWalk, walkOf, type StepGrade, type WalkStep } from './step-through.ts';
