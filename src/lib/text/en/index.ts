import { absences, ownChecks, refusals, ruleChecks, status, systems, verdict } from './checks.ts';
import { checkPage } from './check-page.ts';
import { common, turnedDown } from './common.ts';
import { crew, join } from './crew.ts';
import { certainty, diagnosis, entrySlips } from './diagnosis.ts';
import { findings } from './findings.ts';
import { givens, obstacleAside, obstacleTop } from './givens.ts';
import { help } from './help.ts';
import { learn } from './learn.ts';
import { lessonPage } from './lesson-page.ts';
import { lessons } from './lessons/index.ts';
import { marking } from './marking.ts';
import { method } from './method.ts';
import { page } from './page.ts';
import { people } from './people.ts';
import { labelFields, plan } from './plan.ts';
import { playback, tape } from './playback.ts';
import { asks, availableAsks, customs, datums, decision, quantities, requiredAsks } from './quantities.ts';
import { questions, reading, unreadable } from './reading.ts';
import { rules } from './rules.ts';
import { screen } from './screen.ts';
import { slips } from './slips.ts';
import { steps } from './steps.ts';
import { terms } from './terms.ts';
import { topics } from './topics.ts';

/** The catalogue in English: the language in which texts are written first. */
export const en = Object.freeze({
	absences,
	asks,
	availableAsks,
	certainty,
	checkPage,
	common,
	crew,
	customs,
	datums,
	decision,
	diagnosis,
	entrySlips,
	findings,
	givens,
	join,
	labelFields,
	help,
	learn,
	lessonPage,
	lessons,
	marking,
	method,
	obstacleAside,
	obstacleTop,
	ownChecks,
	page,
	people,
	plan,
	playback,
	quantities,
	questions,
	reading,
	refusals,
	requiredAsks,
	ruleChecks,
	rules,
	screen,
	slips,
	status,
	steps,
	systems,
	tape,
	terms,
	topics,
	turnedDown,
	unreadable,
	verdict
});

/** What every language holds. */
export type Messages = typeof en;
