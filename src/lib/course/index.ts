/** Ids of the shipped scenarios, in the order in which they are offered. Their documents: `shipped.ts`. */
export const SHIPPED_IDS = [
	'bridge-bearing',
	'stage-grid',
	'yard-mast',
	'girder-frost',
	'tank-landing',
	'dock-sign',
	'viaduct-lamp',
	'lighting-bridge',
	'shaft-landing',
	'flat-roof-edge',
	'turbine-nacelle',
	'formwork-deck',
	'loading-dock',
	'antenna-swap',
	'silo-two-workers',
	'gutter-repair',
	'silo-weld',
	'stage-pulley',
	'silo-top',
	'telecom-mast',
	'tank-roof',
	'lift-shaft',
	'deck-stripping'
] as const;

export type ShippedId = (typeof SHIPPED_IDS)[number];

export { COURSE_CELLS, type CourseCell } from './cells.ts';
export { COURSE, NOT_COVERED, type NotCovered } from './course.ts';
export { FACTS, factOf, lessonFacts, type FactId, type LessonFact } from './facts.ts';
export {
	FALL_STAGES,
	LESSON_IDS,
	NAME_SLOTS,
	NUMBER_SLOTS,
	SWING_STAGES,
	type AskedTarget,
	type CaptionParts,
	type CoursePlace,
	type DrawnPicture,
	type DrawnPlan,
	type Example,
	type FallStage,
	type HalfDone,
	type Lesson,
	type LessonId,
	type NameSlot,
	type NumberRef,
	type NumberSlot,
	type Numbers,
	type PictureStep,
	type PlanStep,
	type SwingStage,
	type View
} from './lesson.ts';
export { LESSONS, lessonOf } from './lessons.ts';
export { EVENT_OF_STAGE, askFor, lessonNumbers, stageTime, type LessonNumber } from './numbers.ts';
export { OPEN_REASONS, TOPIC_LISTS, type OpenReason, type TopicId, type TopicList, type TopicListId } from './topics.ts';
export { CHECK_TASKS, TASKS_OF, type FindingTask, type SiteTask, type Task } from './tasks.ts';
