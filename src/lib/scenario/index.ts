export {
	CHANGED,
	TRIES_PER_AIM,
	draw,
	drawTry,
	firstDrawn,
	inputsFor,
	variantsFor,
	type DrawResult,
	type TurnedDown,
	type TurnedDownCounts
} from './draw.ts';
export { chanceOf, type Chance } from './chance.ts';
export { slipsShownBy, slipsWithEffect } from './effect.ts';
export {
	DRAW_VERSION,
	askOf,
	entryUnit,
	givenValue,
	inSteps,
	isShown,
	numberAsks,
	onGrid,
	precisionOf,
	readingOf,
	slipContextOf,
	targetOf,
	type Drawn,
	type Problem
} from './problem.ts';
export { PLAN_PLACES } from './places.ts';
export { problemOf } from './rebuild.ts';
export { inspect, inspectSteps, type AlikePair, type AnswerSpread, type InspectOptions, type InspectProgress, type Inspection } from './inspect.ts';
export { FINDING_CODES, type FieldPath, type FindingCode, type FindingDetails, type InspectFinding, type Severity } from './finding.ts';
export {
	SENTENCES,
	constraintOf,
	sentenceNamed,
	sentenceOf,
	type Amount,
	type Constraint,
	type Sentence,
	type SentenceId,
	type ToldBound
} from './sentences.ts';
export { aimsFor, shareFailing, type Aim, type AimTopic } from './balance.ts';
export type { ImpossibleSite } from './inspect-site.ts';
export type { Reading } from './reading.ts';
export { sample } from './sample.ts';
export { factStatesOf, storyOf, type FactId, type Story } from './story.ts';
export { bandOf, toleranceOf, type Tolerance } from './tolerance.ts';
export type { Ask, BackdropId, Cell, DecisionAsk, NumberAsk, Scenario, ScenarioDocument } from './schema.ts';
