export {
	EMPTY_ENTRY,
	answerOf,
	answersOf,
	entryOf,
	isQuery,
	isRight,
	notRight,
	sameMarks,
	type Drawing,
	type Entry,
	type FlowContext,
	type FlowEvent,
	type Grades,
	type HelpLevel,
	type SendState,
	type Sent,
	type Walk,
	type WalkedStep
} from './context.ts';
export { lastAttempt, siteProblemMachine, startContext, type FlowInput, type FlowState } from './site-problem.ts';
export { MACHINE_VERSION, readSnapshot, writeSnapshot, type Remembered, type Snapshot } from './snapshot.ts';
export { createOutbox, type Outbox, type Posted, type SendOutcome, type Shelf } from './outbox.ts';
export { mixed, type MixedProblem } from './mix.ts';
export { resume, type Regrading } from './resume.ts';
export { allRight, creditsOf, pictureCredits, skillOf } from './credits.ts';
export { foundSlips, mostFrequent } from './found-slips.ts';
export { outcomesOf, type AskOutcome, type OutcomeSlip } from './outcomes.ts';
export {
	WANTED_BEFORE_CHECK,
	WRONG_AT_RUNG,
	lessonMachine,
	type LessonContext,
	type LessonEvent,
	type LessonInput,
	type LessonPlace
} from './lesson.ts';
export { checkMachine, type CheckContext, type CheckEnd, type CheckEvent, type CheckInput, type CheckPlace } from './check.ts';
export {
	allPassed,
	bookLesson,
	lessonAtHand,
	lessonState,
	openLessons,
	replayCourse,
	startCourse,
	stepCourse,
	type BookLesson,
	type CourseBook,
	type CourseRecord,
	type CourseState,
	type LessonState,
	type LessonTask
} from './course.ts';
export {
	isPassed,
	placeAtHand,
	replaySet,
	setMachine,
	type RoundResult,
	type SetAnswer,
	type SetContent,
	type SetContext,
	type SetEvent,
	type SetInput,
	type SetRule,
	type SetScenario,
	type SetStanding,
	type SetState
} from './set.ts';
export { asksOfPlace, placeOf, placesOf, type SetPlace, type SetSource } from './set-places.ts';
